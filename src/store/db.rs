//! Opening the database and its transactions. It knows no table.

use std::path::Path;

use migrations::Migrator;
use sea_orm::ConnectionTrait;
use sea_orm::DatabaseConnection;
use sea_orm::DatabaseTransaction;
use sea_orm::DbBackend;
use sea_orm::DbErr;
use sea_orm::IsolationLevel;
use sea_orm::SqliteTransactionMode;
use sea_orm::Statement;
use sea_orm::TransactionOptions;
use sea_orm::TransactionTrait;
use sea_orm_migration::MigratorTrait;

use crate::store::connect::connect_file;
use crate::store::connect::connect_server;
use crate::store::connect::unwritable;
use crate::store::error::StoreError;

/// A running transaction. Pass it down; never open a second one while it runs.
pub type Tx = DatabaseTransaction;

/// The open database. Clones share its connections.
#[derive(Debug, Clone)]
pub struct Db {
    connection: DatabaseConnection,
    place: String,
}

impl Db {
    /// Opens a file (`data/spoonround.db`, made if absent, its folder too) or a server (`postgres://…`). The schema is left
    /// as it is: see [`Db::migrate`].
    ///
    /// # Errors
    /// [`StoreError::Unwritable`] when the file or folder cannot be made or opened or is no database,
    /// [`StoreError::Address`] and [`StoreError::Unreachable`] of a server, [`StoreError::Newer`] when a newer program made it.
    pub async fn open(database: &str) -> Result<Self, StoreError> {
        let server = database.starts_with("postgres:") || database.starts_with("postgresql:");
        let (connection, place) = if server { connect_server(database).await? } else { connect_file(database).await? };
        let db = Self { connection, place };
        if let Some(step) = db.unknown_step().await? {
            return Err(StoreError::Newer { step });
        }
        Ok(db)
    }

    /// Has each statement of this handle and of its later clones told, for tests that hold a page to its number of questions.
    #[cfg(any(test, feature = "testing"))]
    pub fn on_each_statement(&mut self, tell: impl Fn(&str) + Send + Sync + 'static) {
        self.connection.set_metric_callback(move |info| tell(&info.statement.sql));
    }

    /// Brings the schema up to this program's. Does nothing when it is.
    ///
    /// # Errors
    /// [`StoreError`]; the step that failed leaves nothing behind.
    pub async fn migrate(&self) -> Result<(), StoreError> {
        Migrator::up(&self.connection, None).await.map_err(|e| self.place_of(e.into()))
    }

    /// Whether this program knows steps that the database does not have yet.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn needs_migration(&self) -> Result<bool, StoreError> {
        Ok(!Migrator::get_pending_migrations_read_only(&self.connection).await?.is_empty())
    }

    /// Runs `work` as one writing transaction, from its first statement on: it happens wholly or not at all.
    ///
    /// On SQLite writers queue (`BEGIN IMMEDIATE`), so that reading before writing never fails half-way; on PostgreSQL the
    /// transaction is serializable.
    ///
    /// # Errors
    /// What `work` returned, after undoing it; or the store's own failure, [`StoreError::Busy`] when it has to be tried again.
    pub async fn write<T, E, F>(&self, work: F) -> Result<T, E>
    where
        F: AsyncFnOnce(&Tx) -> Result<T, E>,
        E: From<StoreError>,
    {
        let options = match self.backend() {
            DbBackend::Sqlite => {
                TransactionOptions { sqlite_transaction_mode: Some(SqliteTransactionMode::Immediate), ..TransactionOptions::default() }
            }
            _ => TransactionOptions { isolation_level: Some(IsolationLevel::Serializable), ..TransactionOptions::default() },
        };
        self.within(options, work).await
    }

    /// Runs `work` on one unchanging view of the database: what it reads agrees with itself. It must not write.
    ///
    /// # Errors
    /// What `work` returned, or the store's own failure.
    pub async fn read<T, E, F>(&self, work: F) -> Result<T, E>
    where
        F: AsyncFnOnce(&Tx) -> Result<T, E>,
        E: From<StoreError>,
    {
        let options = match self.backend() {
            DbBackend::Sqlite => TransactionOptions::default(),
            _ => TransactionOptions { isolation_level: Some(IsolationLevel::RepeatableRead), ..TransactionOptions::default() },
        };
        self.within(options, work).await
    }

    /// Writes a consistent copy of an embedded database to a new file, while it is in use.
    ///
    /// # Errors
    /// [`StoreError::Unwritable`] when the target exists or cannot be written.
    pub async fn copy_to(&self, target: &Path) -> Result<(), StoreError> {
        let sql = Statement::from_sql_and_values(self.backend(), "VACUUM INTO ?", [target.to_string_lossy().into_owned().into()]);
        self.connection.execute_raw(sql).await.map(drop).map_err(|e| unwritable(target, e))
    }

    /// Lets the engine count its rows, so that it chooses the right index: after filling a database, and once a day.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn refresh_statistics(&self) -> Result<(), StoreError> {
        self.connection.execute_unprepared("ANALYZE").await.map(drop).map_err(|e| self.place_of(e.into()))
    }

    /// Closes every connection, so that the file is whole without its side files.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn close(self) -> Result<(), StoreError> {
        Ok(self.connection.close().await?)
    }

    /// For a question that needs no transaction.
    #[must_use]
    pub fn direct(&self) -> &impl ConnectionTrait {
        &self.connection
    }

    /// The engine.
    pub(crate) fn backend(&self) -> DbBackend {
        self.connection.get_database_backend()
    }

    /// The connections themselves, for tests of the schema.
    #[cfg(any(test, feature = "testing"))]
    #[must_use]
    pub const fn connection(&self) -> &DatabaseConnection {
        &self.connection
    }

    async fn within<T, E, F>(&self, options: TransactionOptions, work: F) -> Result<T, E>
    where
        F: AsyncFnOnce(&Tx) -> Result<T, E>,
        E: From<StoreError>,
    {
        let tx = self.connection.begin_with_options(options).await.map_err(|e| self.place_of(e.into()))?;
        match work(&tx).await {
            Ok(value) => {
                tx.commit().await.map_err(|e| self.place_of(e.into()))?;
                Ok(value)
            }
            Err(error) => {
                // The first failure is the one worth telling; a connection that cannot even undo is dropped by the pool.
                let _ = tx.rollback().await;
                Err(error)
            }
        }
    }

    /// A schema step in the database that this program does not know.
    async fn unknown_step(&self) -> Result<Option<String>, StoreError> {
        let known: Vec<String> = Migrator::migrations().iter().map(|m| m.name().to_owned()).collect();
        let table = Statement::from_string(
            self.backend(),
            match self.backend() {
                DbBackend::Sqlite => "SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'seaql_migrations'",
                _ => "SELECT 1 FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = 'seaql_migrations'",
            },
        );
        let unreadable = |e: DbErr| match self.backend() {
            DbBackend::Sqlite => unwritable(Path::new(&self.place), e),
            _ => e.into(),
        };
        if self.connection.query_one_raw(table).await.map_err(unreadable)?.is_none() {
            return Ok(None);
        }
        let steps = Statement::from_string(self.backend(), "SELECT version FROM seaql_migrations ORDER BY version");
        for row in self.connection.query_all_raw(steps).await? {
            let step: String = row.try_get("", "version")?;
            if !known.contains(&step) {
                return Ok(Some(step));
            }
        }
        Ok(None)
    }

    /// Names the file in a failure that does not know it.
    fn place_of(&self, error: StoreError) -> StoreError {
        match error {
            StoreError::Unwritable { source, .. } => StoreError::Unwritable { path: self.place.clone(), source },
            other => other,
        }
    }
}

#[cfg(test)]
mod tests {
    use sea_orm::ConnectionTrait;

    use super::*;
    use crate::store::areas;
    use crate::store::connect::CONNECTIONS;
    use crate::store::settings;
    use crate::store::testing::TestDb;
    use crate::store::testing::an_area;

    async fn text(db: &Db, sql: &str) -> String {
        let row = db.connection.query_one_raw(Statement::from_string(db.backend(), sql)).await.expect("a good statement").expect("a row");
        row.try_get_by_index::<String>(0).or_else(|_| row.try_get_by_index::<i64>(0).map(|n| n.to_string())).expect("text or number")
    }

    #[tokio::test]
    async fn every_connection_waits_syncs_fully_and_checks_keys() {
        let test = TestDb::new().await;
        let mut open = Vec::new();
        for _ in 0..CONNECTIONS {
            let tx = test.db.connection.begin().await.expect("a connection");
            for (pragma, value) in [("journal_mode", "wal"), ("synchronous", "2"), ("busy_timeout", "5000"), ("foreign_keys", "1")] {
                let sql = Statement::from_string(DbBackend::Sqlite, format!("PRAGMA {pragma}"));
                let row = tx.query_one_raw(sql).await.expect("a pragma").expect("a row");
                let found =
                    row.try_get_by_index::<String>(0).or_else(|_| row.try_get_by_index::<i64>(0).map(|n| n.to_string())).expect("a value");
                assert_eq!(found, value, "{pragma}");
            }
            open.push(tx);
        }
    }

    #[tokio::test]
    async fn two_writers_that_read_first_both_succeed() {
        let test = TestDb::new().await;
        settings::set(&test.db.connection, "count", "0").await.expect("a setting");
        let add_one = || {
            test.db.write(async |tx| {
                let count: u32 = settings::get(tx, "count").await?.and_then(|n| n.parse().ok()).unwrap_or(0);
                // Lets the other writer start between reading and writing.
                tokio::task::yield_now().await;
                settings::set(tx, "count", &(count + 1).to_string()).await
            })
        };
        let all = futures_util::future::join_all((0..20).map(|_| add_one())).await;
        assert!(all.iter().all(Result::is_ok), "{all:?}");
        assert_eq!(settings::get(&test.db.connection, "count").await.expect("readable").as_deref(), Some("20"));
    }

    #[tokio::test]
    async fn a_failed_transaction_leaves_nothing() {
        let test = TestDb::new().await;
        let failed: Result<(), StoreError> = test
            .db
            .write(async |tx| {
                areas::insert(tx, &an_area(1)).await?;
                areas::insert(tx, &an_area(1)).await
            })
            .await;
        assert!(matches!(failed, Err(StoreError::Conflict { .. })), "{failed:?}");
        assert_eq!(areas::list(&test.db.connection).await.expect("readable"), []);
    }

    #[tokio::test]
    async fn a_reader_sees_one_unchanging_state() {
        let test = TestDb::new().await;
        test.db
            .read(async |tx| {
                assert_eq!(areas::list(tx).await?.len(), 0);
                test.db.write(async |writer| areas::insert(writer, &an_area(1)).await).await?;
                assert_eq!(areas::list(tx).await?.len(), 0, "written meanwhile by another");
                Ok::<_, StoreError>(())
            })
            .await
            .expect("readable");
        assert_eq!(areas::list(&test.db.connection).await.expect("readable").len(), 1);
    }

    #[tokio::test]
    async fn a_database_of_a_newer_program_is_told_apart() {
        let test = TestDb::new().await;
        test.db
            .connection
            .execute_unprepared("INSERT INTO seaql_migrations (version, applied_at) VALUES ('m20990101_000001_new_world', 0)")
            .await
            .expect("a step");
        let again = Db::open(&test.file().to_string_lossy()).await;
        assert!(matches!(&again, Err(StoreError::Newer { step }) if step == "m20990101_000001_new_world"), "{again:?}");
    }

    #[tokio::test]
    async fn a_file_that_is_no_database_and_a_folder_that_cannot_be_are_named() {
        let test = TestDb::new().await;
        let note = test.file().with_file_name("note.txt");
        std::fs::write(&note, "not a database, but long enough to have a header of a hundred bytes; ".repeat(4)).expect("writable");
        let beneath = note.join("data.db");
        for path in [note, beneath] {
            let opened = Db::open(&path.to_string_lossy()).await;
            assert!(
                matches!(&opened, Err(StoreError::Unwritable { path: named, .. }) if *named == path.display().to_string()),
                "{opened:?}"
            );
        }
    }

    #[tokio::test]
    async fn migrating_twice_changes_nothing() {
        let test = TestDb::new().await;
        let schema = "SELECT group_concat(sql, ';') FROM (SELECT sql FROM sqlite_master ORDER BY name)";
        let before = text(&test.db, schema).await;
        assert!(!test.db.needs_migration().await.expect("readable"));
        test.db.migrate().await.expect("nothing to do");
        assert_eq!(text(&test.db, schema).await, before);
    }

    #[tokio::test]
    async fn the_engine_knows_its_rows_after_counting() {
        let test = TestDb::new().await;
        areas::insert(test.db.direct(), &an_area(1)).await.expect("an area");
        test.db.refresh_statistics().await.expect("counted");
        assert_eq!(text(&test.db, "SELECT count(*) > 0 FROM sqlite_stat1 WHERE tbl = 'areas' AND stat LIKE '1 %'").await, "1");
    }

    #[tokio::test]
    async fn a_copy_of_a_running_database_opens() {
        let test = TestDb::new().await;
        areas::insert(&test.db.connection, &an_area(1)).await.expect("an area");
        let target = test.file().with_file_name("copy.db");
        test.db.copy_to(&target).await.expect("a copy");
        let copy = Db::open(&target.to_string_lossy()).await.expect("the copy opens");
        assert_eq!(areas::list(&copy.connection).await.expect("readable"), [an_area(1)]);
        assert!(matches!(test.db.copy_to(&target).await, Err(StoreError::Unwritable { .. })), "an existing file is never overwritten");
    }
}
