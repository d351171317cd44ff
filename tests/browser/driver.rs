//! A browser and its driver, both ended when dropped, so that a failing walk leaves nothing behind. Knows no site.

use std::io::Read;
use std::io::Write;
use std::net::TcpListener;
use std::net::TcpStream;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;
use std::time::Duration;
use std::time::Instant;

use thirtyfour::ChromiumLikeCapabilities;
use thirtyfour::DesiredCapabilities;
use thirtyfour::WebDriver;

/// Long enough for a loaded machine; a browser that needs longer is broken.
const PATIENCE: Duration = Duration::from_secs(30);

/// A running driver. Windows opened by it end with it.
pub struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts the driver on a free port.
    ///
    /// # Panics
    /// When it is not installed or does not answer: `tests/run` installs it.
    #[must_use]
    pub fn start() -> Self {
        let port = free_port();
        let process = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            // Its output would keep a test's standard output open after a panic.
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts (Debian package chromium-driver; tests/run installs it)");
        let driver = Self { process, port };
        let begun = Instant::now();
        while begun.elapsed() < PATIENCE {
            if TcpStream::connect(("127.0.0.1", port)).is_ok() {
                return driver;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        panic!("chromedriver does not answer on port {port}");
    }

    /// Opens a window in which pages run no script: the whole main job must work so.
    ///
    /// # Panics
    /// When the browser does not start.
    pub async fn window(&self) -> WebDriver {
        let mut capabilities = DesiredCapabilities::chrome();
        for arg in [
            "--headless=new",
            // Tests may run as root in a container, where the sandbox cannot.
            "--no-sandbox",
            "--disable-dev-shm-usage",
            "--disable-gpu",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--hide-scrollbars",
            "--force-color-profile=srgb",
            "--window-size=1400,1000",
        ] {
            capabilities.add_arg(arg).expect("a capability");
        }
        let preferences = serde_json::json!({ "intl.accept_languages": "en", "credentials_enable_service": false });
        capabilities.add_experimental_option("prefs", preferences).expect("a capability");
        let address = format!("http://127.0.0.1:{}", self.port);
        let window = WebDriver::new(&address, capabilities).await.expect("chromium starts (Debian package chromium)");
        // Left to the driver, which ends all its windows at once; thirtyfour's own ending waits two minutes inside a runtime.
        window.clone().leak().expect("a window that has not ended");
        run_scripts(&window, false).await;
        window
    }
}

/// Lets pages run scripts, or not. What the driver evaluates runs in both cases, but its timers do not.
///
/// # Panics
/// When the browser refuses.
pub async fn run_scripts(window: &WebDriver, allowed: bool) {
    let disabled = serde_json::json!({ "value": !allowed });
    window.cdp().send_raw("Emulation.setScriptExecutionDisabled", disabled).await.expect("scripts switched");
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Asked first, so that it ends its browsers too; a killed driver would leave them running.
        if let Ok(mut asking) = TcpStream::connect(("127.0.0.1", self.port)) {
            let _ = asking.set_read_timeout(Some(Duration::from_secs(10)));
            let _ = asking.write_all(b"GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");
            let _ = asking.read_to_end(&mut Vec::new());
        }
        let begun = Instant::now();
        while begun.elapsed() < Duration::from_secs(10) {
            if matches!(self.process.try_wait(), Ok(Some(_))) {
                return;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// A port nobody listens on.
fn free_port() -> u16 {
    TcpListener::bind(("127.0.0.1", 0)).and_then(|l| l.local_addr()).map(|a| a.port()).expect("a free port")
}
