//! Both engines end with the same tables, columns, types, nullability and indexes.

use std::collections::BTreeSet;

use sea_orm::ConnectionTrait;
use sea_orm::Statement;
use spoonround::store::Db;
use spoonround::store::testing::TestDb;

use crate::cluster::Cluster;

async fn lines(db: &Db, sql: &str) -> BTreeSet<String> {
    let c = db.connection();
    let rows = c.query_all_raw(Statement::from_string(c.get_database_backend(), sql)).await.expect("a good statement");
    rows.iter().map(|row| row.try_get_by_index(0).expect("text")).collect()
}

#[tokio::test]
async fn both_engines_end_with_the_same_columns() {
    let cluster = Cluster::start();
    let server = Db::open(&cluster.address()).await.expect("open");
    server.migrate().await.expect("migrated");
    let file = TestDb::new().await;
    let on_server = lines(
        &server,
        "SELECT c.table_name || '.' || c.column_name || ' ' ||
           CASE c.data_type WHEN 'uuid' THEN 'BLOB' WHEN 'bytea' THEN 'BLOB' WHEN 'text' THEN 'TEXT' WHEN 'date' THEN 'TEXT'
             WHEN 'timestamp with time zone' THEN 'TEXT' WHEN 'boolean' THEN 'INTEGER' WHEN 'integer' THEN 'INTEGER'
             WHEN 'bigint' THEN 'INTEGER' ELSE c.data_type END || ' ' || c.is_nullable
         FROM information_schema.columns c WHERE c.table_schema = 'public' AND c.table_name <> 'seaql_migrations'",
    )
    .await;
    let in_file = lines(
        &file.db,
        "SELECT t.name || '.' || c.name || ' ' || c.type || ' ' || CASE WHEN c.\"notnull\" = 1 OR c.pk > 0 THEN 'NO' ELSE 'YES' END
         FROM sqlite_master t JOIN pragma_table_info(t.name) c
         WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite_%' AND t.name <> 'seaql_migrations'",
    )
    .await;
    assert!(in_file.len() > 150, "{} columns", in_file.len());
    assert_eq!(in_file.symmetric_difference(&on_server).collect::<Vec<_>>(), Vec::<&String>::new());
}

#[tokio::test]
async fn both_engines_end_with_the_same_indexes() {
    let cluster = Cluster::start();
    let server = Db::open(&cluster.address()).await.expect("open");
    server.migrate().await.expect("migrated");
    let file = TestDb::new().await;
    let on_server = lines(
        &server,
        "SELECT i.indexname::text FROM pg_indexes i WHERE i.schemaname = 'public'
         AND NOT EXISTS (SELECT 1 FROM pg_constraint k WHERE k.conname = i.indexname)",
    )
    .await;
    let in_file = lines(&file.db, "SELECT name FROM sqlite_master WHERE type = 'index' AND name NOT LIKE 'sqlite_autoindex%'").await;
    assert!(in_file.len() > 20, "{} indexes", in_file.len());
    assert_eq!(in_file.symmetric_difference(&on_server).collect::<Vec<_>>(), Vec::<&String>::new());
}

#[tokio::test]
async fn migrating_a_server_twice_changes_nothing_and_a_newer_schema_is_told_apart() {
    let cluster = Cluster::start();
    let server = Db::open(&cluster.address()).await.expect("open");
    assert!(server.needs_migration().await.expect("readable"));
    server.migrate().await.expect("migrated");
    server.migrate().await.expect("nothing to do");
    assert!(!server.needs_migration().await.expect("readable"));
    let step = "INSERT INTO seaql_migrations (version, applied_at) VALUES ('m20990101_000001_new_world', 0)";
    server.connection().execute_unprepared(step).await.expect("a step");
    let again = Db::open(&cluster.address()).await;
    assert!(matches!(&again, Err(spoonround::store::StoreError::Newer { step }) if step == "m20990101_000001_new_world"), "{again:?}");
}
