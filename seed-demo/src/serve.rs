//! Serves the demo as the program itself would, with the demo's own key beside the database.

use std::net::SocketAddr;
use std::net::TcpListener;
use std::sync::Arc;

use domain::protocol::Protocols;
use spoonround::cli::serve::keep_up;
use spoonround::clock::Clock;
use spoonround::config::Config;
use spoonround::store::Db;
use spoonround::web::secret::Secret;
use spoonround::web::server;
use spoonround::web::state::App;

use crate::options::Options;
use crate::target;

/// Whether the address is free: asked before anything is built or any password changed, as another demo may be running there.
///
/// # Errors
/// A sentence that says what to do.
pub fn can_listen(address: SocketAddr) -> Result<(), String> {
    TcpListener::bind(address)
        .map(drop)
        .map_err(|e| format!("cannot serve on {address} ({e}); if a demo is running there, stop it, or choose another with --listen"))
}

/// Serves until interrupted.
///
/// # Errors
/// A sentence that says what to do.
pub async fn serve(db: Db, protocols: Protocols, clock: Arc<dyn Clock>, options: &Options) -> Result<(), String> {
    let config = Config {
        database: options.database.to_string_lossy().into_owned(),
        listen: options.listen,
        secret_file: options.database.with_extension("key"),
        ..Config::default()
    };
    let secret = Secret::from_file(&config.secret_file).map_err(|e| e.to_string())?;
    let app = App::new(db.clone(), clock, secret, protocols, &config).await.map_err(|e| target::told(&e))?;
    let app = server::shared(app);
    let (running, address) = server::listen(app.clone(), config.listen).map_err(|e| e.to_string())?;
    let keeper = tokio::spawn(keep_up(app));
    println!("Open http://{address} in a browser. Stop with Ctrl+C.");
    running.await.map_err(|e| e.to_string())?;
    keeper.abort();
    db.close().await.map_err(|e| target::told(&e))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_port_in_use_is_told_with_what_to_do() {
        let taken = TcpListener::bind("127.0.0.1:0").expect("a free port");
        let address = taken.local_addr().expect("an address");
        let told = can_listen(address).expect_err("taken");
        assert!(told.contains(&address.to_string()) && told.contains("--listen"), "{told}");
        drop(taken);
        assert_eq!(can_listen(address), Ok(()));
    }
}
