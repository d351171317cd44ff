//! What every page that a walk comes past is checked for, on a phone and a laptop, light and dark; each leaves pictures. Knows no
//! page.

use std::path::PathBuf;

use serde_json::json;
use thirtyfour::WebDriver;

use crate::driver::run_scripts;

/// Evaluated in the page.
const MEASURE: &str = include_str!("measure.js");
/// The same for paper.
const PAPER: &str = include_str!("paper.js");
/// Runs axe and hands its findings to the driver.
const AXE: &str = "const done = arguments[0];
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    // Beyond AA: the screens are read in the sun, so text has 7:1 (WCAG 2.2, 1.4.6).
    const rules = { 'color-contrast-enhanced': { enabled: true } };
    axe.run(document, { runOnly: { type: 'tag', values: tags }, rules, resultTypes: ['violations'] })
      .then(r => done(r.violations.map(v => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | ')}`)),
            e => done(['axe broke: ' + e]));";
/// Smallest side of a target in CSS pixels: WCAG 2.2 asks for 24 (2.5.8, AA) and 44 (2.5.5, AAA); 44 is ours.
const TARGET_PX: u32 = 44;
/// The narrowest screen that must do: 320 CSS px, which is 1280 at 400 % (WCAG 2.2, 1.4.10).
const NARROW: Screen = Screen { width: 320, height: 640, dark: false };
/// A laptop on which everything is twice as large: 200 % zoom (WCAG 2.2, 1.4.4).
const ZOOMED: Screen = Screen { width: LAPTOP.width / 2, height: LAPTOP.height / 2, dark: false };
/// The page that the stylesheet names for a sheet, if it names one.
const PAGE: &str = "return [...document.querySelectorAll('body, body *')].map(e => getComputedStyle(e).page).find(p => p !== 'auto') ?? ''";

/// How a page is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Screen {
    /// CSS pixels.
    pub width: u32,
    /// CSS pixels.
    pub height: u32,
    /// Dark scheme.
    pub dark: bool,
}

/// A cheap phone.
pub const PHONE: Screen = Screen { width: 360, height: 640, dark: false };
/// A laptop.
pub const LAPTOP: Screen = Screen { width: 1280, height: 800, dark: false };

impl Screen {
    /// The same in the dark scheme.
    #[must_use]
    pub const fn dark(self) -> Self {
        Self { dark: true, ..self }
    }

    /// Makes the window so.
    ///
    /// # Panics
    /// When the browser refuses.
    pub async fn put_on(self, window: &WebDriver) {
        let size = json!({ "width": self.width, "height": self.height, "deviceScaleFactor": 1, "mobile": false });
        window.cdp().send_raw("Emulation.setDeviceMetricsOverride", size).await.expect("a size");
        let scheme = if self.dark { "dark" } else { "light" };
        // Colours that are still on their way would be measured as they pass.
        let still = json!({ "name": "prefers-reduced-motion", "value": "reduce" });
        let features = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }, still] });
        window.cdp().send_raw("Emulation.setEmulatedMedia", features).await.expect("a scheme");
    }
}

impl std::fmt::Display for Screen {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}x{}-{}", self.width, self.height, if self.dark { "dark" } else { "light" })
    }
}

/// The checker's source.
///
/// # Panics
/// When it is not there, with what to do: a check that is left out in silence checks nothing.
#[must_use]
pub fn axe_source() -> String {
    let file = target().join("browser-tools/node_modules/axe-core/axe.min.js");
    std::fs::read_to_string(&file).unwrap_or_else(|error| {
        panic!(
            "axe-core is not at {} ({error}): run tests/run, which installs it with npm, or: npm ci --prefix target/browser-tools after \
             copying tests/browser/package.json and package-lock.json there",
            file.display()
        )
    })
}

/// All faults of the page that the window shows: measured at four widths, then by axe, light and dark. The window is a phone
/// afterwards.
///
/// # Panics
/// When the browser does not answer.
pub async fn faults(window: &WebDriver, axe: &str) -> Vec<String> {
    let mut found = Vec::new();
    for screen in [NARROW, ZOOMED, LAPTOP, PHONE] {
        screen.put_on(window).await;
        let limit = if screen == LAPTOP { 0 } else { TARGET_PX };
        let faults = window.execute(MEASURE, vec![json!(limit)]).await.expect("measured");
        found.extend(faults.convert::<Vec<String>>().expect("sentences").into_iter().map(|fault| format!("{screen}: {fault}")));
    }
    // axe waits by timers, which need scripts allowed; the page itself has none.
    run_scripts(window, true).await;
    window.execute(axe, Vec::new()).await.expect("axe is read");
    for screen in [LAPTOP.dark(), LAPTOP, PHONE.dark(), PHONE] {
        screen.put_on(window).await;
        let faults = window.execute_async(AXE, Vec::new()).await.expect("axe answers");
        found.extend(faults.convert::<Vec<String>>().expect("sentences").into_iter().map(|fault| format!("{screen}: {fault}")));
    }
    run_scripts(window, false).await;
    found
}

/// All faults of the page as it comes out of a printer. It leaves a picture under `target/screens`; the window is a phone afterwards.
///
/// # Panics
/// When the browser does not answer or the folder cannot be written.
pub async fn paper_faults(window: &WebDriver, name: &str) -> Vec<String> {
    let paper = json!({ "media": "print", "features": [] });
    window.cdp().send_raw("Emulation.setEmulatedMedia", paper.clone()).await.expect("paper");
    let page = window.execute(PAGE, Vec::new()).await.expect("asked").convert::<String>().expect("a name");
    // The stylesheet's pages without their margins, at 96 px to the inch.
    let millimetres = match page.as_str() {
        "card" => 148 - 2 * 9,
        "sheet" => 297 - 2 * 10,
        "wall" => 210 - 2 * 11,
        _ => 210 - 2 * 12,
    };
    let sheet = Screen { width: millimetres * 960 / 254, ..LAPTOP };
    sheet.put_on(window).await;
    window.cdp().send_raw("Emulation.setEmulatedMedia", paper.clone()).await.expect("paper");
    let faults = window.execute(PAPER, Vec::new()).await.expect("measured");
    let faults = faults.convert::<Vec<String>>().expect("sentences").into_iter().map(|fault| format!("on paper: {fault}")).collect();
    let height = height(window).await;
    Screen { height, ..sheet }.put_on(window).await;
    window.cdp().send_raw("Emulation.setEmulatedMedia", paper).await.expect("paper");
    window.screenshot(&screens().join(format!("{name}-paper.png"))).await.expect("a picture");
    window.cdp().send_raw("Emulation.setEmulatedMedia", json!({ "media": "" })).await.expect("the screen again");
    PHONE.put_on(window).await;
    faults
}

/// Leaves pictures of the page under `target/screens`: the whole page on a phone and a laptop, light and dark, and what a phone
/// shows first. The window is a phone afterwards.
///
/// # Panics
/// When the browser refuses or the folder cannot be written.
pub async fn pictures(window: &WebDriver, name: &str) {
    let folder = screens();
    for screen in [LAPTOP.dark(), LAPTOP, PHONE.dark(), PHONE] {
        screen.put_on(window).await;
        let height = height(window).await.max(screen.height);
        Screen { height, ..screen }.put_on(window).await;
        window.screenshot(&folder.join(format!("{name}-{screen}.png"))).await.expect("a picture");
    }
    PHONE.put_on(window).await;
    window.screenshot(&folder.join(format!("{name}-first-{PHONE}.png"))).await.expect("a picture");
}

/// The height of the whole page, as far as a picture can be high.
async fn height(window: &WebDriver) -> u32 {
    let height = window.execute("return document.documentElement.scrollHeight", Vec::new()).await.expect("measured");
    height.convert::<u32>().expect("pixels").min(12_000)
}

fn screens() -> PathBuf {
    let folder = target().join("screens");
    std::fs::create_dir_all(&folder).expect("a folder for pictures");
    folder
}

/// Takes away the pictures of an earlier run of this walk: its pages may have had other numbers.
pub fn forget_pictures(walk: &str) {
    let Ok(folder) = std::fs::read_dir(target().join("screens")) else { return };
    for picture in folder.flatten().filter(|picture| picture.file_name().to_string_lossy().starts_with(&format!("{walk}-"))) {
        let _ = std::fs::remove_file(picture.path());
    }
}

fn target() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../target")
}
