//! Adding somebody from the command line, so that a programme can begin without a default account.

use chrono::DateTime;
use chrono::Duration;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::PersonId;
use domain::role::Role;

use crate::service::sign_in::code_hash;
use crate::service::sign_in::one_time_code;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::people;
use crate::store::people::PersonRecord;

/// How long a one-time code is good.
pub const CODE_HOURS: i64 = 72;

/// Why nobody was added.
#[derive(Debug, thiserror::Error)]
pub enum AddFault {
    /// The name to sign in with has other signs.
    #[error("--sign-in {0:?}: use 2 to 40 small letters, digits, points or hyphens, such as mireni or mireni.t")]
    SignInName(String),
    /// No name.
    #[error("--name is empty; give the full name as colleagues know it")]
    Name,
    /// Somebody signs in so already.
    #[error("--sign-in {0:?} is taken; choose another")]
    Taken(String),
    /// The system gives no random numbers.
    #[error("this system gives no random numbers")]
    NoRandom,
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
}

/// Whether a text can be signed in with.
#[must_use]
pub fn good_sign_in_name(name: &str) -> bool {
    (2..=40).contains(&name.len()) && name.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || matches!(b, b'.' | b'-'))
}

/// Adds somebody and answers the one-time code, which is kept as a hash only.
///
/// # Errors
/// [`AddFault`] with what to do.
pub async fn add(db: &Db, now: DateTime<Utc>, today: NaiveDate, name: &str, sign_in: &str, role: Role) -> Result<String, AddFault> {
    if name.trim().is_empty() {
        return Err(AddFault::Name);
    }
    if !good_sign_in_name(sign_in) {
        return Err(AddFault::SignInName(sign_in.to_owned()));
    }
    let code = one_time_code().ok_or(AddFault::NoRandom)?;
    let person = PersonRecord {
        id: PersonId(uuid::Uuid::now_v7().as_u128()),
        sign_in_name: sign_in.to_owned(),
        full_name: name.trim().to_owned(),
        role,
        language: None,
        phone: None,
        password_hash: None,
        must_change_password: true,
        one_time_code_hash: Some(code_hash(&code)),
        one_time_code_expires_at: Some(now + Duration::hours(CODE_HOURS)),
        active: true,
        started_on: today,
        ended_on: None,
        failed_sign_ins: 0,
        locked_until: None,
        created_at: now,
    };
    db.write(async |tx| {
        if people::by_sign_in_name(tx, sign_in).await?.is_some() {
            return Err(AddFault::Taken(sign_in.to_owned()));
        }
        Ok(people::insert(tx, &person).await?)
    })
    .await?;
    Ok(code)
}
