//! Signing in and out. A session is a random key in a cookie; the database keeps only its hash, so that a copy of the
//! database opens nothing and a lost phone can be shut out.

use chrono::DateTime;
use chrono::Duration;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::PersonId;
use domain::ids::SubmissionKey;
use domain::role::Role;
use sha2::Digest;
use sha2::Sha256;

use crate::service::Actor;
use crate::service::passwords;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::people;
use crate::store::sessions;
use crate::store::sessions::SessionRecord;
use crate::store::submissions;
use crate::store::submissions::Submission;

/// Wrong passwords in a row that cost nothing; then each doubles the wait (OWASP authentication guidance; from memory).
const FREE_TRIES: u32 = 5;
/// The longest wait: a stranger must not lock a worker out for good.
const LONGEST_WAIT_SECONDS: i64 = 15 * 60;
/// A phone on a bad line sends twice, and the first answer with its cookie may never arrive: for so long the form in which a one-time
/// code was used lets the same person in once more (our own choice).
const SENT_AGAIN_MINUTES: i64 = 10;
/// A session's last use is written down at most this often.
const TOUCH_AFTER_SECONDS: i64 = 300;

/// How long a session lasts without use, and at most. Workers are out all day and offline for long; desks are shared.
#[must_use]
pub fn lifetime(role: Role) -> (Duration, Duration) {
    match role {
        Role::Worker => (Duration::days(3), Duration::days(14)),
        Role::Supervisor => (Duration::hours(2), Duration::hours(12)),
        Role::Manager | Role::Administrator => (Duration::minutes(30), Duration::hours(12)),
    }
}

/// A session that is still good.
#[derive(Debug, Clone)]
pub struct Live {
    /// Who.
    pub actor: Actor,
    /// The language chosen, if any.
    pub language: Option<String>,
    /// A one-time code was used: a password must be set before anything else.
    pub must_change_password: bool,
    /// Names the session in the database and anchors its form tokens.
    pub key_hash: [u8; 32],
}

/// The outcome of a try.
#[derive(Debug)]
pub enum Entered {
    /// In; the key goes into the cookie.
    In {
        /// Session key, hexadecimal.
        key: String,
        /// Who.
        actor: Actor,
    },
    /// Name or password do not fit; which of the two is not said.
    Wrong,
    /// Too many wrong tries for this name: wait.
    Wait {
        /// Seconds left.
        seconds: i64,
    },
}

/// Trouble that is nobody's fault.
#[derive(Debug, thiserror::Error)]
pub enum SignInTrouble {
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
    /// Hashing failed.
    #[error("hashing: {0}")]
    Hashing(String),
    /// No random numbers.
    #[error("no random numbers")]
    NoRandom,
}

/// The hash under which a session is stored.
#[must_use]
pub fn key_hash(key: &str) -> [u8; 32] {
    Sha256::digest(key.as_bytes()).into()
}

/// Tries a name with a password or a one-time code. `form` is the key of the form, if it came from one: a code is good once a form, not
/// once a sending. A password needs no key: sent again it opens a session that is like the first.
///
/// # Errors
/// [`SignInTrouble`].
pub async fn enter(
    db: &Db,
    now: DateTime<Utc>,
    form: Option<SubmissionKey>,
    name: &str,
    password: String,
) -> Result<Entered, SignInTrouble> {
    let name = name.trim().to_lowercase();
    let person = people::by_sign_in_name(db.direct(), &name).await?.filter(|p| p.active && !is_over(p.ended_on, now));
    if let Some(until) = person.as_ref().and_then(|p| p.locked_until)
        && until > now
    {
        return Ok(Entered::Wait { seconds: (until - now).num_seconds().max(1) });
    }
    let password = if password.len() > passwords::MOST_BYTES { String::new() } else { password };
    let by_code = person.as_ref().is_some_and(|p| {
        p.one_time_code_expires_at.is_some_and(|until| until > now)
            && p.one_time_code_hash.as_deref() == Some(code_hash(&password).as_str())
    });
    let code = code_digest(&password);
    let by_code_again = match (&person, form) {
        // Neither after a password was chosen nor after another code was handed over.
        (Some(person), Some(form)) if person.must_change_password && person.one_time_code_hash.is_none() => {
            used_with(db, now, form, person.id, code).await?
        }
        _ => false,
    };
    let stored = person.as_ref().and_then(|p| p.password_hash.clone());
    let by_password = passwords::fits(password, stored).await.map_err(SignInTrouble::Hashing)?;
    let Some(mut person) = person else { return Ok(Entered::Wrong) };
    if !by_code && !by_code_again && !by_password {
        let failed = person.failed_sign_ins + 1;
        let until = (failed > FREE_TRIES).then(|| {
            let seconds = 1_i64.checked_shl(failed - FREE_TRIES - 1).unwrap_or(LONGEST_WAIT_SECONDS).clamp(1, LONGEST_WAIT_SECONDS);
            now + Duration::seconds(seconds)
        });
        person.failed_sign_ins = failed;
        person.locked_until = until;
        db.write(async |tx| people::update(tx, &person).await).await?;
        return Ok(Entered::Wrong);
    }
    let key = random_hex().ok_or(SignInTrouble::NoRandom)?;
    let expires = now + lifetime(person.role).1;
    let session = SessionRecord { key_hash: key_hash(&key), person: person.id, created_at: now, last_seen_at: now, expires_at: expires };
    person.failed_sign_ins = 0;
    person.locked_until = None;
    if by_code {
        person.must_change_password = true;
        person.one_time_code_hash = None;
        person.one_time_code_expires_at = None;
    }
    db.write(async |tx| {
        people::update(tx, &person).await?;
        if let Some(key) = form.filter(|_| by_code)
            && submissions::find(tx, key).await?.is_none()
        {
            let outcome = "/password".to_owned();
            submissions::insert(tx, &Submission { key, person: person.id, payload_hash: code, outcome, created_at: now }).await?;
        }
        sessions::forget_expired(tx, now).await?;
        sessions::insert(tx, &session).await
    })
    .await?;
    Ok(Entered::In { key, actor: Actor { person: person.id, name: person.full_name, role: person.role } })
}

/// Whether this code was used by this person in this very form, a moment ago.
async fn used_with(db: &Db, now: DateTime<Utc>, form: SubmissionKey, person: PersonId, code: [u8; 32]) -> Result<bool, StoreError> {
    let earlier = submissions::find(db.direct(), form).await?;
    Ok(earlier.is_some_and(|earlier| {
        earlier.person == person && earlier.payload_hash == code && now - earlier.created_at < Duration::minutes(SENT_AGAIN_MINUTES)
    }))
}

/// The session behind a cookie's key, if it is still good. Role and name are read anew each time.
///
/// # Errors
/// [`StoreError`].
pub async fn recall(db: &Db, key: &str, now: DateTime<Utc>) -> Result<Option<Live>, StoreError> {
    let key_hash = key_hash(key);
    let Some((session, person)) = sessions::find_live(db.direct(), &key_hash, now).await? else { return Ok(None) };
    let (idle, _) = lifetime(person.role);
    if session.last_seen_at + idle < now || is_over(person.ended_on, now) {
        return Ok(None);
    }
    if (now - session.last_seen_at).num_seconds() >= TOUCH_AFTER_SECONDS {
        db.write(async |tx| sessions::touch(tx, &key_hash, now).await).await?;
    }
    Ok(Some(Live {
        actor: Actor { person: person.id, name: person.full_name, role: person.role },
        language: person.language,
        must_change_password: person.must_change_password,
        key_hash,
    }))
}

/// Whether a last day is over everywhere on earth, so that no time zone is needed to say so.
fn is_over(last_day: Option<NaiveDate>, now: DateTime<Utc>) -> bool {
    last_day.is_some_and(|day| day < (now - Duration::hours(12)).date_naive())
}

/// Whose session this key opened, even if it has ended by time: a form left open belongs to that person.
///
/// # Errors
/// [`StoreError`].
pub async fn owner(db: &Db, key: &str) -> Result<Option<PersonId>, StoreError> {
    sessions::owner_of(db.direct(), &key_hash(key)).await
}

/// Keeps the language a person chose.
///
/// # Errors
/// [`StoreError`].
pub async fn choose_language(db: &Db, person: PersonId, language: &str) -> Result<(), StoreError> {
    db.write(async |tx| {
        let Some(mut person) = people::by_id(tx, person).await? else { return Ok(()) };
        person.language = Some(language.to_owned());
        people::update(tx, &person).await
    })
    .await
}

/// Ends the session behind a key.
///
/// # Errors
/// [`StoreError`].
pub async fn leave(db: &Db, key: &str) -> Result<(), StoreError> {
    db.write(async |tx| sessions::end(tx, &key_hash(key)).await).await
}

/// A new one-time code: 4 groups of 4 signs, 79 bits, told once and kept as a hash.
#[must_use]
pub fn one_time_code() -> Option<String> {
    const SIGNS: &[u8; 31] = b"23456789ABCDEFGHJKMNPQRSTUVWXYZ";
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes).ok()?;
    let signs: String = bytes.iter().map(|b| char::from(SIGNS[usize::from(*b) % SIGNS.len()])).collect();
    Some(signs.as_bytes().chunks(4).map(|c| String::from_utf8_lossy(c).into_owned()).collect::<Vec<_>>().join("-"))
}

/// The hash under which a one-time code is kept. Its 79 random bits need no slow hash.
#[must_use]
pub fn code_hash(code: &str) -> String {
    code_digest(code).iter().fold(String::new(), |mut text, byte| {
        text.push_str(&format!("{byte:02x}"));
        text
    })
}

fn code_digest(code: &str) -> [u8; 32] {
    let plain: String = code.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect();
    Sha256::digest(plain.as_bytes()).into()
}

fn random_hex() -> Option<String> {
    let mut bytes = [0_u8; 32];
    getrandom::fill(&mut bytes).ok()?;
    Some(bytes.iter().fold(String::with_capacity(64), |mut text, byte| {
        text.push_str(&format!("{byte:02x}"));
        text
    }))
}
