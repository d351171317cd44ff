//! How the program is told where things are: defaults, then a TOML file, then `SPOONROUND_…` variables.
//! An unknown key is refused, because a misspelt one would silently keep its default.

use std::net::SocketAddr;
use std::path::Path;
use std::path::PathBuf;

use figment::Figment;
use figment::providers::Env;
use figment::providers::Format;
use figment::providers::Serialized;
use figment::providers::Toml;
use serde::Deserialize;
use serde::Serialize;

/// The file read when none is named and it is there.
pub const USUAL_FILE: &str = "spoonround.toml";

/// Everything that can be configured outside the database.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Config {
    /// Where the data is: a path for the embedded database, or `postgres://…`.
    pub database: String,
    /// The address and port to serve on.
    pub listen: SocketAddr,
    /// The address people type, e.g. `https://spoonround.example`; needed behind a proxy that rewrites the host.
    pub public_origin: Option<String>,
    /// A file that holds the key for form tokens; made on the first start if it is not there.
    pub secret_file: PathBuf,
    /// The programme's own feeding protocol; the built-in one if absent.
    pub protocol_file: Option<PathBuf>,
    /// How many proxies stand in front, for reading the visitor's address.
    pub proxy_hops: u8,
    /// What is logged, e.g. `info` or `spoonround=debug`.
    pub log: String,
    /// `text` or `json`.
    pub log_format: LogFormat,
}

/// The shape of a log line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum LogFormat {
    /// For people.
    Text,
    /// For machines.
    Json,
}

impl Default for Config {
    fn default() -> Self {
        Self {
            database: "data/spoonround.db".to_owned(),
            listen: SocketAddr::from(([127, 0, 0, 1], 8080)),
            public_origin: None,
            secret_file: PathBuf::from("data/secret.key"),
            protocol_file: None,
            proxy_hops: 0,
            log: "info".to_owned(),
            log_format: LogFormat::Text,
        }
    }
}

/// What is wrong with the configuration, every fault at once.
#[derive(Debug, thiserror::Error)]
#[error("{}", .0.join("\n"))]
pub struct ConfigFaults(pub Vec<String>);

impl Config {
    /// Reads defaults, the file (if named, it must be there) and the environment.
    ///
    /// # Errors
    /// [`ConfigFaults`], each naming the key, where it stands and what to do.
    pub fn read(file: Option<&Path>) -> Result<Self, ConfigFaults> {
        let mut figment = Figment::from(Serialized::defaults(Self::default()));
        match file {
            Some(path) if !path.is_file() => {
                return Err(ConfigFaults(vec![format!(
                    "{}: there is no such file; name an existing one or leave --config out",
                    path.display()
                )]));
            }
            Some(path) => figment = figment.merge(Toml::file_exact(path)),
            None if Path::new(USUAL_FILE).is_file() => figment = figment.merge(Toml::file_exact(USUAL_FILE)),
            None => {}
        }
        let config: Self = figment.merge(Env::prefixed("SPOONROUND_").ignore(&["config", "bin"])).extract().map_err(|error| {
            ConfigFaults(
                error
                    .into_iter()
                    .map(|e| {
                        let place = e.metadata.as_ref().map_or_else(String::new, |m| {
                            m.source.as_ref().map_or_else(|| format!(" ({})", m.name), |s| format!(" ({s})"))
                        });
                        let key = if e.path.is_empty() { String::new() } else { format!("{}: ", e.path.join(".")) };
                        format!(
                            "configuration{place}: {key}{}; mend or remove it (`spoonround serve --check` shows what is in force)",
                            e.kind
                        )
                    })
                    .collect(),
            )
        })?;
        config.checked()
    }

    fn checked(self) -> Result<Self, ConfigFaults> {
        let mut faults = Vec::new();
        if self.database.trim().is_empty() {
            faults.push("configuration: database: is empty; give a path such as data/spoonround.db or a postgres:// address".to_owned());
        }
        // Taken for a path, another engine's address would become a file that is named by its password.
        if let Some((scheme, _)) = self.database.split_once("://")
            && !matches!(scheme, "sqlite" | "postgres" | "postgresql")
        {
            faults.push(format!(
                "configuration: database: {scheme}:// is no engine of ours; give a path such as data/spoonround.db or a postgres:// address"
            ));
        }
        if let Some(origin) = &self.public_origin
            && (!(origin.starts_with("https://") || origin.starts_with("http://")) || origin.ends_with('/'))
        {
            faults.push(format!(
                "configuration: public_origin: {origin:?} must begin with https:// (or http://) and have no slash at the end"
            ));
        }
        if faults.is_empty() { Ok(self) } else { Err(ConfigFaults(faults)) }
    }

    /// The effective configuration as TOML, a password in the database address left out.
    #[must_use]
    pub fn shown(&self) -> String {
        let shown = self;
        let mut text = String::new();
        // Hand-written rather than serialised, so that absent keys are shown too.
        let quoted = |s: &str| format!("{s:?}");
        let optional = |s: Option<String>| s.map_or_else(|| "# not set".to_owned(), |s| format!("{s:?}"));
        for (key, value) in [
            ("database", quoted(&self.database_shown())),
            ("listen", quoted(&shown.listen.to_string())),
            ("public_origin", optional(shown.public_origin.clone())),
            ("secret_file", quoted(&shown.secret_file.display().to_string())),
            ("protocol_file", optional(shown.protocol_file.as_ref().map(|p| p.display().to_string()))),
            ("proxy_hops", shown.proxy_hops.to_string()),
            ("log", quoted(&shown.log)),
            ("log_format", quoted(if shown.log_format == LogFormat::Json { "json" } else { "text" })),
        ] {
            if value.starts_with('#') {
                text.push_str(&format!("# {key} is not set\n"));
            } else {
                text.push_str(&format!("{key} = {value}\n"));
            }
        }
        text
    }

    /// The database address for people, a password left out.
    #[must_use]
    pub fn database_shown(&self) -> String {
        without_password(&self.database)
    }

    /// The database address in the form the store opens.
    #[must_use]
    pub fn database_url(&self) -> String {
        if self.database.contains("://") || self.database.starts_with("sqlite:") {
            self.database.clone()
        } else {
            format!("sqlite://{}", self.database)
        }
    }

    /// Whether cookies may travel without TLS: only when nobody outside this machine can reach the server.
    #[must_use]
    pub fn plain_loopback(&self) -> bool {
        match &self.public_origin {
            Some(origin) => {
                origin.starts_with("http://127.0.0.1") || origin.starts_with("http://localhost") || origin.starts_with("http://[::1]")
            }
            None => self.listen.ip().is_loopback(),
        }
    }
}

fn without_password(address: &str) -> String {
    let Some((scheme, rest)) = address.split_once("://") else { return address.to_owned() };
    // Behind the question mark a password may stand too, or the question mark in a password: then nothing tells where it ends.
    let (rest, options) = match rest.split_once('?') {
        Some((_, options)) if options.contains('@') => return format!("{scheme}://…"),
        Some((rest, _)) => (rest, "?…"),
        None => (rest, ""),
    };
    match rest.rsplit_once('@') {
        Some((user, host)) => format!("{scheme}://{}:…@{host}{options}", user.split(':').next().unwrap_or_default()),
        None => format!("{scheme}://{rest}{options}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Config, ConfigFaults> {
        let dir = tempfile::tempdir().expect("a folder");
        let file = dir.path().join("c.toml");
        std::fs::write(&file, text).expect("written");
        Config::read(Some(&file))
    }

    #[test]
    fn an_unknown_key_is_refused_and_named() {
        let faults = read("listn = \"127.0.0.1:1\"").expect_err("refused");
        assert!(faults.to_string().contains("listn"), "{faults}");
        assert!(faults.to_string().contains("c.toml"), "{faults}");
    }

    #[test]
    fn a_wrong_type_is_named_by_its_key() {
        let faults = read("proxy_hops = \"many\"").expect_err("refused");
        assert!(faults.to_string().contains("proxy_hops"), "{faults}");
    }

    #[test]
    fn a_password_is_never_shown() {
        let config = read("database = \"postgres://app:hunter2@db/spoon\"").expect("read");
        assert!(!config.shown().contains("hunter2"), "{}", config.shown());
        assert!(config.shown().contains("postgres://app:…@db/spoon"));
        for (address, shown) in [
            ("postgres://app:hunter2@db/spoon?sslmode=require", "postgres://app:…@db/spoon?…"),
            ("postgres://db/spoon?user=app&password=hunter2", "postgres://db/spoon?…"),
            ("postgres://app:hunter?2@db/spoon", "postgres://…"),
            ("postgres://db/spoon?password=hunter@2", "postgres://…"),
            ("postgres://db/spoon", "postgres://db/spoon"),
            ("data/100%?.db", "data/100%?.db"),
        ] {
            assert_eq!(without_password(address), shown, "{address}");
        }
    }

    #[test]
    fn an_address_of_another_engine_is_no_path() {
        let faults = read("database = \"mysql://app:hunter2@db/spoon\"").expect_err("refused").to_string();
        assert!(faults.contains("database: mysql://") && faults.contains("postgres://") && !faults.contains("hunter2"), "{faults}");
        assert!(read("database = \"sqlite://data/own.db\"").is_ok());
    }

    #[test]
    fn a_named_file_must_be_there() {
        assert!(Config::read(Some(Path::new("no-such-file.toml"))).expect_err("refused").to_string().contains("no-such-file.toml"));
    }

    #[test]
    fn cookies_need_tls_unless_on_loopback() {
        assert!(Config::default().plain_loopback());
        assert!(!read("listen = \"0.0.0.0:80\"").expect("read").plain_loopback());
        assert!(!read("public_origin = \"https://spoon.example\"").expect("read").plain_loopback());
        assert!(read("listen = \"0.0.0.0:80\"\npublic_origin = \"http://localhost:80\"").expect("read").plain_loopback());
    }
}
