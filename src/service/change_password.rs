//! Changing one's own password. All other sessions of the person end, so that a lost phone is shut out.

use domain::fault::Fault;
use domain::fault::Faults;

use crate::service::Context;
use crate::service::Refusal;
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

/// Sets a new password. `by_code` is true for somebody who came in with a one-time code.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault.
pub async fn change_password(ctx: &Context, session_hash: &[u8; 32], by_code: bool, draft: &PasswordDraft<'_>) -> Result<(), Refusal> {
    let mut person = people::by_id(ctx.db.direct(), ctx.actor.person).await?.ok_or(Refusal::NotFound)?;
    let mut faults = Faults::new();
    if !by_code {
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
    ctx.db
        .write(async |tx| {
            people::update(tx, &person).await?;
            sessions::end_all_of(tx, person.id, Some(session_hash)).await
        })
        .await?;
    Ok(())
}
