//! A connection that counts the statements sent through it, for tests that hold a page to its number of questions.

use std::sync::atomic::AtomicUsize;
use std::sync::atomic::Ordering;

use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::DbErr;
use sea_orm::ExecResult;
use sea_orm::QueryResult;
use sea_orm::Statement;

/// Passes everything on, and counts.
#[derive(Debug)]
pub struct Counting<'a, C> {
    inner: &'a C,
    sent: AtomicUsize,
}

impl<'a, C: ConnectionTrait> Counting<'a, C> {
    /// Nothing sent yet.
    pub const fn new(inner: &'a C) -> Self {
        Self { inner, sent: AtomicUsize::new(0) }
    }

    /// Statements sent so far.
    pub fn sent(&self) -> usize {
        self.sent.load(Ordering::SeqCst)
    }

    fn count(&self) {
        self.sent.fetch_add(1, Ordering::SeqCst);
    }
}

#[sea_orm::prelude::async_trait::async_trait]
impl<C: ConnectionTrait> ConnectionTrait for Counting<'_, C> {
    fn get_database_backend(&self) -> DbBackend {
        self.inner.get_database_backend()
    }

    async fn execute_raw(&self, statement: Statement) -> Result<ExecResult, DbErr> {
        self.count();
        self.inner.execute_raw(statement).await
    }

    async fn execute_unprepared(&self, sql: &str) -> Result<ExecResult, DbErr> {
        self.count();
        self.inner.execute_unprepared(sql).await
    }

    async fn query_one_raw(&self, statement: Statement) -> Result<Option<QueryResult>, DbErr> {
        self.count();
        self.inner.query_one_raw(statement).await
    }

    async fn query_all_raw(&self, statement: Statement) -> Result<Vec<QueryResult>, DbErr> {
        self.count();
        self.inner.query_all_raw(statement).await
    }
}
