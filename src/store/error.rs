//! What can go wrong with the database, in the terms of those who call it. It knows no sentence for visitors.

use sea_orm::DbErr;
use sea_orm::RuntimeErr;
use sea_orm::SqlErr;
use sea_orm::sqlx;

/// A failure of the store. Texts are for developers and logs.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Somebody else changed or made the same thing first: a stale version, or a key that is taken.
    #[error("{what} was changed or made by somebody else")]
    Conflict {
        /// The table, and where the engine names it the key.
        what: String,
    },
    /// A stored row that no longer means anything.
    #[error("row {id} of {table} cannot be read: {what}")]
    Corrupt {
        /// The table.
        table: &'static str,
        /// The row's key.
        id: String,
        /// What does not parse.
        what: String,
    },
    /// Another writer held the database for longer than we wait, or a transaction has to be tried again.
    #[error("the database is busy")]
    Busy,
    /// The file or folder cannot be made, opened or written.
    #[error("the database {path} cannot be opened or written")]
    Unwritable {
        /// Where it is.
        path: String,
        /// What the system said.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },
    /// The address of the server cannot be read. It is not repeated here: it may hold a password.
    #[error("the address of the database server cannot be read")]
    Address(#[source] sqlx::Error),
    /// The server does not answer, or does not let us in.
    #[error("the database server {place} cannot be reached")]
    Unreachable {
        /// Host, port and database.
        place: String,
        /// What it or the system said.
        #[source]
        source: sqlx::Error,
    },
    /// Made by a newer version of the program.
    #[error("the database was made by a newer version of the program (it has the schema step {step})")]
    Newer {
        /// A schema step that this program does not know.
        step: String,
    },
    /// Anything else.
    #[error("the database refused")]
    Db(#[source] DbErr),
}

impl StoreError {
    /// A row that cannot be read.
    pub(crate) fn corrupt(table: &'static str, id: impl ToString, what: impl ToString) -> Self {
        Self::Corrupt { table, id: id.to_string(), what: what.to_string() }
    }
}

/// Result codes of SQLite: the low byte is the primary code. 5 is BUSY, 6 LOCKED, 8 READONLY, 10 IOERR, 13 FULL, 14 CANTOPEN.
const SQLITE_BUSY: [u32; 2] = [5, 6];
const SQLITE_UNWRITABLE: [u32; 4] = [8, 10, 13, 14];
/// PostgreSQL: serialization failure, deadlock found, lock not available.
const POSTGRES_AGAIN: [&str; 3] = ["40001", "40P01", "55P03"];

impl From<DbErr> for StoreError {
    fn from(error: DbErr) -> Self {
        if let Some(SqlErr::UniqueConstraintViolation(what)) = error.sql_err() {
            return Self::Conflict { what };
        }
        match &error {
            DbErr::ConnectionAcquire(_) => return Self::Busy,
            DbErr::Conn(RuntimeErr::SqlxError(e)) | DbErr::Exec(RuntimeErr::SqlxError(e)) | DbErr::Query(RuntimeErr::SqlxError(e)) => {
                if let Some(code) = database_code(e) {
                    let primary = code.parse::<u32>().ok().map(|n| n & 0xff);
                    if primary.is_some_and(|n| SQLITE_BUSY.contains(&n)) || POSTGRES_AGAIN.contains(&code.as_str()) {
                        return Self::Busy;
                    }
                    if primary.is_some_and(|n| SQLITE_UNWRITABLE.contains(&n)) {
                        return Self::Unwritable { path: "file".to_owned(), source: Box::new(error) };
                    }
                }
            }
            _ => {}
        }
        Self::Db(error)
    }
}

/// The engine's own code: a decimal number on SQLite; five characters on PostgreSQL.
fn database_code(error: &sqlx::Error) -> Option<String> {
    let database = error.as_database_error()?;
    let code = database.code()?.into_owned();
    // A PostgreSQL code may look like a number too; its five characters tell it from SQLite's.
    let sqlite = database.try_downcast_ref::<sqlx::sqlite::SqliteError>().is_some();
    Some(if sqlite { code } else { format!("{code:0>5}") })
}
