//! A form has one effect, however often a phone on a bad line sends it.

use domain::ids::SubmissionKey;
use sha2::Digest;
use sha2::Sha256;

use crate::service::Context;
use crate::service::Refusal;
use crate::store::Tx;
use crate::store::submissions;
use crate::store::submissions::Submission;

/// One sending of a form.
#[derive(Debug, Clone, Copy)]
pub struct Sent {
    /// The key that the form was shown with.
    pub key: SubmissionKey,
    /// SHA-256 of everything typed.
    pub hash: [u8; 32],
}

impl Sent {
    /// From the pairs of a form; tokens and keys do not count as content.
    #[must_use]
    pub fn of(key: SubmissionKey, pairs: &[(String, String)]) -> Self {
        let mut hasher = Sha256::new();
        for (name, value) in pairs.iter().filter(|(name, _)| !matches!(name.as_str(), "token" | "key")) {
            // Lengths first, so that no two forms read the same.
            hasher.update(u64::try_from(name.len()).unwrap_or(0).to_be_bytes());
            hasher.update(name.as_bytes());
            hasher.update(u64::try_from(value.len()).unwrap_or(0).to_be_bytes());
            hasher.update(value.as_bytes());
        }
        Self { key, hash: hasher.finalize().into() }
    }
}

/// The outcome of the same form sent before, if it was. Call it first inside the writing transaction.
///
/// # Errors
/// [`Refusal::Conflict`] when the same key came with other content, [`Refusal::NotFound`] when it is somebody else's.
pub async fn before(tx: &Tx, ctx: &Context, sent: Sent) -> Result<Option<String>, Refusal> {
    match submissions::find(tx, sent.key).await? {
        None => Ok(None),
        Some(earlier) if earlier.person != ctx.actor.person => Err(Refusal::NotFound),
        Some(earlier) if earlier.payload_hash == sent.hash => Ok(Some(earlier.outcome)),
        Some(earlier) => Err(Refusal::Conflict(earlier.outcome)),
    }
}

/// Remembers that the form had its effect, and where to look at it. Call it last inside the same transaction.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn remember(tx: &Tx, ctx: &Context, sent: Sent, outcome: &str) -> Result<(), Refusal> {
    let submission =
        Submission { key: sent.key, person: ctx.actor.person, payload_hash: sent.hash, outcome: outcome.to_owned(), created_at: ctx.now };
    Ok(submissions::insert(tx, &submission).await?)
}
