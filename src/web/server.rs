//! Puts the pieces together and listens. Tests build the same application in process.

use std::net::SocketAddr;

use actix_web::App as Application;
use actix_web::HttpServer;
use actix_web::body::MessageBody;
use actix_web::dev::Server;
use actix_web::dev::ServiceFactory;
use actix_web::dev::ServiceRequest;
use actix_web::dev::ServiceResponse;
use actix_web::middleware::Compress;
use actix_web::middleware::from_fn;
use actix_web::web;

use crate::web::form::FORM_LIMIT_BYTES;
use crate::web::guard;
use crate::web::routes;
use crate::web::state::App;

/// The application that both the server and the tests run.
///
/// Middlewares wrap from the inside out: the guard sees every answer, the compressor comes last.
pub fn build_app(
    app: web::Data<App>,
) -> Application<
    impl ServiceFactory<
        ServiceRequest,
        Config = (),
        Response = ServiceResponse<impl MessageBody + use<>>,
        Error = actix_web::Error,
        InitError = (),
    >,
> {
    Application::new()
        .app_data(app)
        .app_data(web::FormConfig::default().limit(FORM_LIMIT_BYTES))
        .app_data(web::PayloadConfig::default().limit(FORM_LIMIT_BYTES))
        .configure(routes::configure)
        .wrap(from_fn(guard::around))
        .wrap(Compress::default())
}

/// What all requests share, counted by reference.
pub type Shared = web::Data<App>;

/// Makes the state shareable.
#[must_use]
pub fn shared(app: App) -> Shared {
    web::Data::new(app)
}

/// The address cannot be served on.
#[derive(Debug, thiserror::Error)]
pub enum ServeFault {
    /// Another program has the port.
    #[error("{0} is in use by another program; stop that one, or choose another with --listen or SPOONROUND_LISTEN")]
    InUse(SocketAddr),
    /// Not allowed, or not this machine's.
    #[error("cannot serve on {address}: {source}; choose another with --listen or SPOONROUND_LISTEN")]
    Refused {
        /// The address.
        address: SocketAddr,
        /// What the system said.
        source: std::io::Error,
    },
}

/// Binds the address; the server runs when awaited and stops on an interrupt, letting requests finish.
///
/// # Errors
/// [`ServeFault`] with what to do.
pub fn listen(app: web::Data<App>, address: SocketAddr) -> Result<(Server, SocketAddr), ServeFault> {
    let refused = |source: std::io::Error| match source.kind() {
        std::io::ErrorKind::AddrInUse => ServeFault::InUse(address),
        _ => ServeFault::Refused { address, source },
    };
    let server = HttpServer::new(move || build_app(app.clone())).shutdown_timeout(20).bind(address).map_err(refused)?;
    let bound = server.addrs().first().copied().unwrap_or(address);
    Ok((server.run(), bound))
}

/// Runs a future on the server's own kind of runtime.
pub fn block_on<T>(work: impl Future<Output = T>) -> T {
    actix_web::rt::System::new().block_on(work)
}
