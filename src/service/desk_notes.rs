//! A supervisor writes to the worker about a child; whoever looks after the child reads it and sets it aside.

use chrono::Duration;
use domain::draft::desk_note::read_note;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::child_file::ChildFile;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::why;
use crate::store::children::ChildRecord;
use crate::store::desk_notes;
use crate::store::desk_notes::DeskNote;
use crate::store::desk_notes::ReadNote;
use crate::store::people;

/// Days for which a supervisor sees that a note was read (our own choice: until the meeting after the next).
const READ_DAYS: i64 = 14;

/// The notes on a child that wait, each with the name of who wrote it. A child without one asks nothing.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn waiting(ctx: &Context, file: &ChildFile) -> Result<Vec<(DeskNote, String)>, Refusal> {
    if !file.noted {
        return Ok(Vec::new());
    }
    Ok(desk_notes::open_of_child(ctx.db.direct(), file.record.id).await?)
}

/// For a supervisor, the notes on a child that were read lately, each with the names of who wrote and who read
/// it: whoever wrote it need not ask.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn read_lately(ctx: &Context, file: &ChildFile) -> Result<Vec<(ReadNote, String, String)>, Refusal> {
    if ctx.needs(Action::Supervise).is_err() {
        return Ok(Vec::new());
    }
    let c = ctx.db.direct();
    let notes = desk_notes::read_since(c, file.record.id, ctx.now - Duration::days(READ_DAYS)).await?;
    if notes.is_empty() {
        return Ok(Vec::new());
    }
    let ids: Vec<_> = notes.iter().flat_map(|note| [note.by, note.read_by]).collect();
    let names = people::names(c, &ids).await?;
    let named = |id| names.get(&id).cloned().unwrap_or_default();
    Ok(notes.into_iter().map(|note| (note.clone(), named(note.by), named(note.read_by))).collect())
}

/// The child a note is to be written about.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn about(ctx: &Context, code: &str) -> Result<ChildRecord, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db.read(async |tx| why::child(tx, ctx, code).await).await
}

/// Writes a note; where to look at it.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn write(ctx: &Context, sent: Sent, code: &str, pairs: &[(String, String)]) -> Result<String, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let child = why::child(tx, ctx, code).await?;
            let form = read_note(pairs, ctx.today).map_err(Refusal::Invalid)?;
            let note = DeskNote {
                id: uuid::Uuid::now_v7().as_u128(),
                child: child.id,
                by: ctx.actor.person,
                at: ctx.now,
                words: form.words,
                together_on: form.together_on,
            };
            desk_notes::insert(tx, &note).await?;
            audit::note(tx, ctx, "note.write", "child", &child.code, &["words", "together_on"]).await?;
            let path = format!("/children/{}?done=noted", child.code);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(path)
        })
        .await
}

/// Sets a note aside; where to look. One that was set aside before stays so.
///
/// # Errors
/// [`Refusal::NotFound`] outside the scope; [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn set_aside(ctx: &Context, sent: Sent, code: &str, note: u128) -> Result<String, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let child = why::child(tx, ctx, code).await?;
            if desk_notes::done(tx, child.id, note, ctx.actor.person, ctx.now).await? {
                audit::note(tx, ctx, "note.done", "child", &child.code, &[]).await?;
            }
            let path = format!("/children/{}", child.code);
            once::remember(tx, ctx, sent, &path).await?;
            Ok(path)
        })
        .await
}
