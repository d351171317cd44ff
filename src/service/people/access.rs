//! Letting people in and shutting them out: one-time codes, sessions, signing in taken away and given back.

use chrono::DateTime;
use chrono::Duration;
use chrono::Utc;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::service::people::is_last_administrator;
use crate::service::people::key;
use crate::service::people::path;
use crate::service::sign_in;
use crate::store::Tx;
use crate::store::people;
use crate::store::people::PersonRecord;
use crate::store::sessions;

/// A code is good this long (our own choice: a worker may be two days' walk away).
pub const CODE_HOURS: i64 = 72;

/// A code to hand over in person.
#[derive(Debug, Clone)]
pub struct Code {
    /// The signs, in groups of four.
    pub signs: String,
    /// When it ends.
    pub until: DateTime<Utc>,
}

impl Code {
    /// A new one.
    ///
    /// # Errors
    /// [`Refusal::Broken`] when there are no random numbers.
    pub fn fresh(now: DateTime<Utc>) -> Result<Self, Refusal> {
        let signs = sign_in::one_time_code().ok_or_else(|| Refusal::Broken("no random numbers".to_owned()))?;
        Ok(Self { signs, until: now + Duration::hours(CODE_HOURS) })
    }

    /// Makes it this person's; an earlier one ends. Waiting after wrong passwords ends too: the person is being helped.
    pub fn give_to(&self, person: &mut PersonRecord) {
        person.one_time_code_hash = Some(sign_in::code_hash(&self.signs));
        person.one_time_code_expires_at = Some(self.until);
        person.failed_sign_ins = 0;
        person.locked_until = None;
    }
}

/// A code made for somebody; `None` when the same form was sent before, because a code is shown once.
pub type Given = (PersonRecord, Option<Code>);

/// Makes a code for a person who may sign in.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn new_code(ctx: &Context, sent: Sent, sign_in_name: &str) -> Result<Given, Refusal> {
    ctx.needs(Action::Administer)?;
    let code = Code::fresh(ctx.now)?;
    ctx.db
        .write(async |tx| {
            let person = people::by_sign_in_name(tx, sign_in_name).await?.filter(|p| p.active).ok_or(Refusal::NotFound)?;
            hand_over(ctx, tx, sent, person, &code).await
        })
        .await
}

/// Gives the code, once a form.
pub(crate) async fn hand_over(ctx: &Context, tx: &Tx, sent: Sent, mut person: PersonRecord, code: &Code) -> Result<Given, Refusal> {
    if once::before(tx, ctx, sent).await?.is_some() {
        return Ok((person, None));
    }
    code.give_to(&mut person);
    people::update(tx, &person).await?;
    audit::note(tx, ctx, "person.code", "person", &key(&person), &["one_time_code"]).await?;
    once::remember(tx, ctx, sent, &path(&person)).await?;
    Ok((person, Some(code.clone())))
}

/// What an administrator does to somebody's access.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Act {
    /// Ends every session.
    SignOut,
    /// Takes signing in away and ends every session.
    Deactivate,
    /// Gives it back.
    Activate,
}

impl Act {
    const fn code(self) -> &'static str {
        match self {
            Self::SignOut => "person.sign_out",
            Self::Deactivate => "person.deactivate",
            Self::Activate => "person.activate",
        }
    }
}

/// Does it; answers the person's page.
///
/// # Errors
/// [`Refusal::Invalid`] when nobody could manage people any more; [`Refusal::NotFound`], [`Refusal::Forbidden`],
/// [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn act(ctx: &Context, sent: Sent, sign_in_name: &str, act: Act) -> Result<String, Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if let Some(outcome) = once::before(tx, ctx, sent).await? {
                return Ok(outcome);
            }
            let mut person = people::by_sign_in_name(tx, sign_in_name).await?.ok_or(Refusal::NotFound)?;
            if act == Act::Deactivate && is_last_administrator(tx, &person).await? {
                return Err(Refusal::Invalid(Faults::one("active", Fault::LastAdministrator)));
            }
            if act != Act::Activate {
                sessions::end_all_of(tx, person.id, None).await?;
            }
            if act != Act::SignOut {
                person.active = act == Act::Activate;
                if act == Act::Deactivate {
                    (person.one_time_code_hash, person.one_time_code_expires_at) = (None, None);
                }
                people::update(tx, &person).await?;
            }
            audit::note(tx, ctx, act.code(), "person", &key(&person), &[]).await?;
            once::remember(tx, ctx, sent, &path(&person)).await?;
            Ok(path(&person))
        })
        .await
}
