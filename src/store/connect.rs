//! Where the database is: a file that is opened, or a server that is reached, and why it cannot be.

use std::path::Path;
use std::path::PathBuf;
use std::time::Duration;

use sea_orm::ConnectOptions;
use sea_orm::Database;
use sea_orm::DatabaseConnection;
use sea_orm::sqlx;
use sea_orm::sqlx::Connection;
use sea_orm::sqlx::postgres::PgConnectOptions;
use sea_orm::sqlx::postgres::PgConnection;
use sea_orm::sqlx::sqlite::SqliteConnectOptions;
use sea_orm::sqlx::sqlite::SqliteJournalMode;
use sea_orm::sqlx::sqlite::SqliteSynchronous;

use crate::files::folder;
use crate::store::error::StoreError;

/// How long a writer waits for another one.
const BUSY: Duration = Duration::from_secs(5);
/// Open connections: one writes at a time, the others read.
pub(super) const CONNECTIONS: u32 = 4;

/// Opens a file, made if absent, its folder too; answers what it is called in a failure.
///
/// # Errors
/// [`StoreError::Unwritable`].
pub(super) async fn connect_file(database: &str) -> Result<(DatabaseConnection, String), StoreError> {
    let path = PathBuf::from(database.strip_prefix("sqlite://").or_else(|| database.strip_prefix("sqlite:")).unwrap_or(database));
    if let Some(folder) = path.parent().filter(|f| !f.as_os_str().is_empty()) {
        folder::make(folder).map_err(|e| unwritable(&path, e))?;
    }
    let mut options = ConnectOptions::new("sqlite:");
    options.max_connections(CONNECTIONS).acquire_timeout(BUSY * 2).sqlx_logging(false);
    let file = path.clone();
    // The closure replaces what the address says, so that a path is never read as an address (a `?` in it stays a `?`).
    options.map_sqlx_sqlite_opts(move |_| {
        SqliteConnectOptions::new()
            .filename(&file)
            .create_if_missing(true)
            .journal_mode(SqliteJournalMode::Wal)
            .synchronous(SqliteSynchronous::Full)
            .busy_timeout(BUSY)
            .foreign_keys(true)
    });
    let connection = Database::connect(options).await.map_err(|e| match StoreError::from(e) {
        StoreError::Db(e) => unwritable(&path, e),
        StoreError::Unwritable { source, .. } => StoreError::Unwritable { path: path.display().to_string(), source },
        other => other,
    })?;
    Ok((connection, path.display().to_string()))
}

/// Connects to a server.
///
/// # Errors
/// [`StoreError::Address`], [`StoreError::Unreachable`].
pub(super) async fn connect_server(database: &str) -> Result<(DatabaseConnection, String), StoreError> {
    let address: PgConnectOptions = database.parse().map_err(StoreError::Address)?;
    let mut options = ConnectOptions::new(database);
    options.max_connections(CONNECTIONS).acquire_timeout(BUSY * 2).sqlx_logging(false);
    match Database::connect(options).await {
        Ok(connection) => Ok((connection, "server".to_owned())),
        Err(error) => Err(unreachable(&address).await.unwrap_or_else(|| error.into())),
    }
}

/// Why a server is not reached. The pool waits for one that is about to start, and then only says that its time is up; one more try
/// has the reason.
async fn unreachable(address: &PgConnectOptions) -> Option<StoreError> {
    let place = format!("{}:{}/{}", address.get_host(), address.get_port(), address.get_database().unwrap_or_default());
    let source = match tokio::time::timeout(BUSY, PgConnection::connect_with(address)).await {
        Ok(Ok(_)) => return None,
        Ok(Err(source)) => source,
        Err(_) => sqlx::Error::Io(std::io::ErrorKind::TimedOut.into()),
    };
    Some(StoreError::Unreachable { place, source })
}

/// A file that the system refuses.
pub(super) fn unwritable(path: &Path, source: impl std::error::Error + Send + Sync + 'static) -> StoreError {
    StoreError::Unwritable { path: path.display().to_string(), source: Box::new(source) }
}
