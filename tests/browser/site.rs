//! A real server on a free port with a database of its own, on a fixed day. It ends with the test process.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc;

use domain::protocol::Protocols;
use spoonround::clock::Clock;
use spoonround::clock::FixedClock;
use spoonround::config::Config;
use spoonround::service::protocols;
use spoonround::store::Db;
use spoonround::web::secret::Secret;
use spoonround::web::server;
use spoonround::web::state::App;
use tempfile::TempDir;

/// The day on which walks happen.
pub const TODAY: &str = "2026-11-25";

/// A served site.
pub struct Site {
    /// What stands before each path.
    pub base: String,
    _folder: TempDir,
}

impl Site {
    /// Serves a database that `fill` has prepared, a migrated one, by the protocols it answers.
    ///
    /// # Panics
    /// When it cannot be served.
    pub fn serve<F>(fill: F) -> Self
    where
        F: AsyncFnOnce(&Db, &dyn Clock) -> Protocols + Send + 'static,
    {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let file: PathBuf = folder.path().join("walk.db");
        let (tell, told) = mpsc::channel();
        std::thread::spawn(move || {
            server::block_on(async move {
                let clock: Arc<dyn Clock> = Arc::new(FixedClock::noon(TODAY.parse().expect("a date")));
                let db = Db::open(&file.to_string_lossy()).await.expect("a new database");
                db.migrate().await.expect("a new schema");
                let protocols = fill(&db, &*clock).await;
                let secret = Secret::random().expect("randomness");
                let app = App::new(db, clock, secret, protocols, &Config::default()).await.expect("an app");
                let (running, address) =
                    server::listen(server::shared(app), "127.0.0.1:0".parse().expect("an address")).expect("a free port");
                tell.send(format!("http://{address}")).expect("the test waits");
                running.await.expect("served");
            });
        });
        let base = told.recv().expect("the site is served; the message above says why not");
        Self { base, _folder: folder }
    }
}

/// The protocol of the program, adopted.
///
/// # Panics
/// When the database refuses.
pub async fn built_in(db: &Db, clock: &dyn Clock) -> Protocols {
    protocols::adopt(db, None, clock.now()).await.expect("the built-in protocol")
}
