//! The file a demo lives in: made, used again, or left alone because it is not a demo.

use std::path::Path;
use std::path::PathBuf;

use spoonround::service::settings::Settings;
use spoonround::store::Db;
use spoonround::store::StoreError;
use spoonround::store::settings;

/// Set when a demo has been built to the end: how many children, and the day.
pub const BUILT: &str = "demo_built";

/// A database ready for the demo.
pub struct Target {
    /// Open, with its schema up to date.
    pub db: Db,
    /// The finished demo in it, if there is one.
    pub built: Option<Built>,
}

/// What a finished demo remembers of its making.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Built {
    /// How many children were made.
    pub children: u32,
    /// The day their stories end.
    pub on: chrono::NaiveDate,
}

/// Why the file is not used.
#[derive(Debug, thiserror::Error)]
pub enum TargetFault {
    /// There is data in it that nobody called a demo.
    #[error("{} holds data that is not marked as a demo, and is left as it is; name another file with --database", .0.display())]
    NotADemo(PathBuf),
    /// The old demo cannot be taken away.
    #[error("the old demo {} cannot be removed ({source}); stop the program that uses it, or name another file with --database", file.display())]
    Undeletable {
        /// The file.
        file: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// The store's own trouble.
    #[error("{}", told(.0))]
    Store(#[from] StoreError),
}

/// Opens the file for the demo. With `fresh`, or when the last building was broken off, an old demo is taken away first.
///
/// # Errors
/// [`TargetFault`], each with what to do. A file that is not marked as a demo is never changed.
pub async fn open(file: &Path, fresh: bool) -> Result<Target, TargetFault> {
    // An empty file is as good as none.
    if std::fs::metadata(file).is_ok_and(|about| about.len() > 0) {
        let db = Db::open(&file.to_string_lossy()).await?;
        let found = found(&db).await?;
        match found {
            Found::Other => {
                db.close().await?;
                return Err(TargetFault::NotADemo(file.to_owned()));
            }
            Found::Demo(built) if fresh || built.is_none() => {
                db.close().await?;
                remove(file)?;
            }
            Found::Demo(built) => {
                db.migrate().await?;
                return Ok(Target { db, built });
            }
            Found::Nothing => db.close().await?,
        }
    }
    let db = Db::open(&file.to_string_lossy()).await?;
    db.migrate().await?;
    Ok(Target { db, built: None })
}

/// Remembers that a demo is whole.
///
/// # Errors
/// [`StoreError`].
pub async fn finished(db: &Db, built: &Built) -> Result<(), StoreError> {
    settings::set(db.direct(), BUILT, &format!("{} children on {}", built.children, built.on)).await
}

enum Found {
    /// No tables, or none with anything in it.
    Nothing,
    /// A demo, finished or not.
    Demo(Option<Built>),
    /// Something else.
    Other,
}

async fn found(db: &Db) -> Result<Found, StoreError> {
    // Without a table of settings it is no database of ours.
    let Ok(stored) = settings::all(db.direct()).await else { return Ok(Found::Other) };
    if !Settings::from_stored(&stored).demo {
        let used = !stored.is_empty() || !spoonround::store::people::list(db.direct(), None, 1).await?.is_empty();
        return Ok(if used { Found::Other } else { Found::Nothing });
    }
    Ok(Found::Demo(stored.get(BUILT).and_then(|text| parse(text))))
}

fn parse(text: &str) -> Option<Built> {
    let (children, on) = text.split_once(" children on ")?;
    Some(Built { children: children.parse().ok()?, on: on.parse().ok()? })
}

fn remove(file: &Path) -> Result<(), TargetFault> {
    for end in ["", "-wal", "-shm"] {
        let mut name = file.as_os_str().to_owned();
        name.push(end);
        match std::fs::remove_file(&name) {
            Err(source) if source.kind() != std::io::ErrorKind::NotFound => {
                return Err(TargetFault::Undeletable { file: file.to_owned(), source });
            }
            _ => {}
        }
    }
    Ok(())
}

/// A store's failure as a sentence that says what to do.
#[must_use]
pub fn told(error: &StoreError) -> String {
    match error {
        StoreError::Unwritable { path, source } => {
            format!("{path} cannot be opened or written ({source}); check the folder, or name another file with --database")
        }
        StoreError::Newer { .. } => {
            "the database was made by a newer version of Spoonround; start that one, or name another file with --database".to_owned()
        }
        StoreError::Busy => "the database is held by another program; stop that one, or name another file with --database".to_owned(),
        StoreError::Db(source) => format!("the database refused: {source}"),
        other => other.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    async fn a_demo(file: &Path, built: Option<&Built>) {
        let target = open(file, false).await.expect("a new file");
        assert_eq!(target.built, None);
        for (name, value) in crate::programme::demo_settings().to_stored() {
            settings::set(target.db.direct(), &name, &value).await.expect("set");
        }
        if let Some(built) = built {
            finished(&target.db, built).await.expect("marked");
        }
        target.db.close().await.expect("closed");
    }

    #[tokio::test]
    async fn a_finished_demo_is_used_again_and_a_broken_one_or_a_fresh_start_begins_anew() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("data").join("demo.db");
        let built = Built { children: 240, on: "2026-11-25".parse().expect("a date") };
        a_demo(&file, Some(&built)).await;
        let again = open(&file, false).await.expect("a demo");
        assert_eq!(again.built, Some(built));
        again.db.close().await.expect("closed");
        let fresh = open(&file, true).await.expect("a demo");
        assert_eq!(fresh.built, None);
        assert!(settings::all(fresh.db.direct()).await.expect("readable").is_empty());
        fresh.db.close().await.expect("closed");
        a_demo(&file, None).await;
        let broken_off = open(&file, false).await.expect("a demo");
        assert!(settings::all(broken_off.db.direct()).await.expect("readable").is_empty());
    }

    #[tokio::test]
    async fn data_that_is_not_a_demo_is_left_alone_even_with_fresh() {
        let folder = tempfile::tempdir().expect("a folder");
        let programme = folder.path().join("programme.db");
        let db = Db::open(&programme.to_string_lossy()).await.expect("a new file");
        db.migrate().await.expect("migrated");
        settings::set(db.direct(), settings::PROGRAMME_NAME, "A real one").await.expect("set");
        db.close().await.expect("closed");
        let notes = folder.path().join("notes.db");
        std::fs::write(&notes, "not a database at all, but long enough to look like a page of one; ".repeat(4)).expect("written");
        for (file, fresh) in [(&programme, false), (&programme, true), (&notes, false), (&notes, true)] {
            let before = std::fs::read(file).expect("there");
            assert!(open(file, fresh).await.is_err(), "{} {fresh}", file.display());
            assert_eq!(std::fs::read(file).expect("still there"), before, "{} {fresh}", file.display());
        }
        let Err(refused) = open(&programme, true).await else { unreachable!("refused above") };
        assert!(refused.to_string().contains("not marked as a demo") && refused.to_string().contains("--database"), "{refused}");
    }
}
