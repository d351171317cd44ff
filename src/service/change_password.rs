//! Changing one's own password. All other sessions of the person end, so that a lost phone is shut out.

use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::SubmissionKey;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::passwords;
use crate::store::people;
use crate::store::sessions;

/// The three boxes as typed.
#[derive(Debug, Clone)]
pub struct PasswordDraft<'a> {
    /// The present password; not asked when signed in with a one-time code.
    pub present: &'a str,
    /// The new one.
    pub new: &'a str,
    /// The new one again.
    pub again: &'a str,
}

/// Where a password is changed, to be seen by whoever sent a form twice with other content.
const PLACE: &str = "/password";

/// Who changes a password, from where, with which form.
#[derive(Debug, Clone, Copy)]
pub struct Session<'a> {
    /// The session that stays; all others of the person end.
    pub hash: &'a [u8; 32],
    /// Whether it began with a one-time code.
    pub by_code: bool,
    /// The key that the form was shown with.
    pub key: SubmissionKey,
}

/// Sets a new password, once a form: the same form sent again finds its own new password and changes nothing.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::Conflict`] when the form was sent before with another new password.
pub async fn change_password(ctx: &Context, session: Session<'_>, draft: &PasswordDraft<'_>) -> Result<(), Refusal> {
    // Nothing typed goes into what is remembered of a form: a quick hash of a password would be easy to guess from.
    let sent = Sent::of(session.key, &[]);
    if ctx.db.read(async |tx| once::before(tx, ctx, sent).await).await?.is_some() {
        return sent_again(ctx, draft).await;
    }
    let mut person = people::by_id(ctx.db.direct(), ctx.actor.person).await?.ok_or(Refusal::NotFound)?;
    let mut faults = Faults::new();
    if !session.by_code {
        let fits = passwords::fits(draft.present.to_owned(), person.password_hash.clone()).await.map_err(Refusal::Broken)?;
        if draft.present.is_empty() {
            faults.add("present", Fault::Missing);
        } else if !fits {
            faults.add("present", Fault::WrongPassword);
        }
    }
    if draft.new.is_empty() {
        faults.add("new", Fault::Missing);
    } else if let Some(fault) = passwords::fault_of(draft.new, &person.sign_in_name) {
        faults.add("new", fault);
    }
    if draft.new != draft.again {
        faults.add("again", Fault::NotTheSame);
    }
    if !faults.is_empty() {
        return Err(Refusal::Invalid(faults));
    }
    person.password_hash = Some(passwords::hash(draft.new.to_owned()).await.map_err(Refusal::Broken)?);
    person.must_change_password = false;
    let sent_meanwhile = ctx
        .db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok::<_, Refusal>(true);
            }
            people::update(tx, &person).await?;
            sessions::end_all_of(tx, person.id, Some(session.hash)).await?;
            once::remember(tx, ctx, sent, PLACE).await?;
            Ok(false)
        })
        .await?;
    if sent_meanwhile { sent_again(ctx, draft).await } else { Ok(()) }
}

/// Whether a form that had its effect says the same once more: its new password is the one that holds.
async fn sent_again(ctx: &Context, draft: &PasswordDraft<'_>) -> Result<(), Refusal> {
    let person = people::by_id(ctx.db.direct(), ctx.actor.person).await?.ok_or(Refusal::NotFound)?;
    let same = passwords::fits(draft.new.to_owned(), person.password_hash).await.map_err(Refusal::Broken)?;
    if same && draft.new == draft.again { Ok(()) } else { Err(Refusal::Conflict(PLACE.to_owned())) }
}
