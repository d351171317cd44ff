//! A PostgreSQL server of its own, gone when dropped. It knows nothing of the store.

use std::net::TcpListener;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Stdio;

/// A running server; each test makes its own database in its own server, so that none disturbs another.
pub struct Cluster {
    folder: PathBuf,
    binaries: PathBuf,
    port: u16,
}

impl Cluster {
    /// Makes and starts one.
    pub fn start() -> Self {
        let binaries = binaries();
        let made = output(as_owner("mktemp").args(["-d", "-t", "spoonround-pg-XXXXXX"]));
        let folder = PathBuf::from(made.trim());
        let data = folder.join("data");
        run(as_owner(binaries.join("initdb"))
            .args(["-A", "trust", "-U", "app", "--no-sync", "-E", "UTF8", "--locale=C.UTF-8", "-D"])
            .arg(&data));
        // The port may be taken between here and the start; the start then fails and says so.
        let port = TcpListener::bind("127.0.0.1:0").and_then(|free| free.local_addr()).expect("a free port").port();
        let options = format!(
            "-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={} -c fsync=off -c synchronous_commit=off -c full_page_writes=off",
            folder.display()
        );
        let cluster = Self { folder, binaries, port };
        run(as_owner(cluster.binaries.join("pg_ctl"))
            .args(["-w", "start", "-o", &options, "-l"])
            .arg(cluster.folder.join("log"))
            .arg("-D")
            .arg(&data));
        cluster
    }

    /// The address of its first database.
    pub fn address(&self) -> String {
        format!("postgres://app@127.0.0.1:{}/postgres", self.port)
    }
}

impl Drop for Cluster {
    fn drop(&mut self) {
        let stop = as_owner(self.binaries.join("pg_ctl"))
            .args(["-m", "immediate", "stop", "-D"])
            .arg(self.folder.join("data"))
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status();
        let removed = std::fs::remove_dir_all(&self.folder);
        if stop.is_err() || removed.is_err() {
            eprintln!("the server in {} was not cleared away: {stop:?}, {removed:?}", self.folder.display());
        }
    }
}

/// The newest server installed.
fn binaries() -> PathBuf {
    let mut found: Vec<(u32, PathBuf)> = std::fs::read_dir("/usr/lib/postgresql")
        .into_iter()
        .flatten()
        .flatten()
        .filter_map(|entry| Some((entry.file_name().to_str()?.parse().ok()?, entry.path().join("bin"))))
        .filter(|(_, bin)| bin.join("initdb").exists())
        .collect();
    found.sort();
    found.pop().map(|(_, bin)| bin).expect("PostgreSQL is installed (Debian package `postgresql`)")
}

/// The server refuses to run as root: then its own user runs it.
fn as_owner(program: impl AsRef<Path>) -> Command {
    let root = output(Command::new("id").arg("-u")).trim() == "0";
    let mut command = if root { Command::new("runuser") } else { Command::new(program.as_ref()) };
    if root {
        command.args(["-u", "postgres", "--"]).arg(program.as_ref());
    }
    command.current_dir("/").stdin(Stdio::null());
    command
}

fn output(command: &mut Command) -> String {
    let done = command.output().expect("the program is there");
    assert!(done.status.success(), "{command:?}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8(done.stdout).expect("text")
}

fn run(command: &mut Command) {
    // A server started with an inherited pipe would hold it open, so nothing is piped.
    let status = command.stdout(Stdio::null()).stderr(Stdio::null()).status().expect("the program is there");
    assert!(status.success(), "{command:?}");
}
