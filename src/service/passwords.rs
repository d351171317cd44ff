//! Hashing and judging passwords. Costs are the argon2 crate's defaults: 19 MiB, two passes, one lane, the least that
//! the OWASP password storage guidance (2023) asks for.

use argon2::Argon2;
use argon2::password_hash::PasswordHasher;
use argon2::password_hash::PasswordVerifier;
use domain::fault::Fault;
use tokio::sync::Semaphore;

/// Fewest characters: the length asked for where no second factor is used (NIST SP 800-63B-4, 2025; from memory).
pub const LEAST_CHARACTERS: usize = 15;
/// Most bytes, so that nobody can make the server hash a book.
pub const MOST_BYTES: usize = 256;

/// Runs at most this many hashes at once: each needs 19 MiB and a core.
static AT_ONCE: Semaphore = Semaphore::const_new(2);

/// A hash that fits no password; verified when a name is unknown, so that timing tells nothing.
const NOBODY: &str = "$argon2id$v=19$m=19456,t=2,p=1$c3Bvb25yb3VuZC1ub2JvZHk$6VBB0zXWjA0cI8Oq1cNzOoIhHb2fXHLFC2vVfQ5hQ9Y";

/// Words that a password of this programme must not consist of alone (compared without case, digits and blanks).
const OBVIOUS: [&str; 12] = [
    "spoonround",
    "password",
    "motdepasse",
    "worker",
    "supervisor",
    "manager",
    "administrator",
    "admin",
    "programme",
    "welcome",
    "bienvenue",
    "qwertyuiop",
];

/// Hashes a password with a fresh salt.
///
/// # Errors
/// The hasher's or the system's own trouble, for the log.
pub async fn hash(password: String) -> Result<String, String> {
    let _permit = AT_ONCE.acquire().await.map_err(|e| e.to_string())?;
    tokio::task::spawn_blocking(move || {
        Argon2::default().hash_password(password.as_bytes()).map(|h| h.to_string()).map_err(|e| e.to_string())
    })
    .await
    .map_err(|e| e.to_string())?
}

/// Whether the password fits. Without a stored hash the same work is done and the answer is no.
///
/// # Errors
/// The system's own trouble, for the log.
pub async fn fits(password: String, stored: Option<String>) -> Result<bool, String> {
    let _permit = AT_ONCE.acquire().await.map_err(|e| e.to_string())?;
    let known = stored.is_some();
    let stored = stored.unwrap_or_else(|| NOBODY.to_owned());
    let fits = tokio::task::spawn_blocking(move || Argon2::default().verify_password(password.as_bytes(), stored.as_str()).is_ok())
        .await
        .map_err(|e| e.to_string())?;
    Ok(fits && known)
}

/// What is wrong with a new password, if anything.
#[must_use]
pub fn fault_of(password: &str, sign_in_name: &str) -> Option<Fault> {
    if password.chars().count() < LEAST_CHARACTERS {
        return Some(Fault::TooShort { least: LEAST_CHARACTERS });
    }
    if password.len() > MOST_BYTES {
        return Some(Fault::TooLong { most: MOST_BYTES });
    }
    let mut rest: String = password.to_lowercase().chars().filter(|c| c.is_alphabetic()).collect();
    for word in OBVIOUS.iter().copied().chain([sign_in_name]) {
        let word: String = word.to_lowercase().chars().filter(|c| c.is_alphabetic()).collect();
        if !word.is_empty() {
            rest = rest.replace(&word, "");
        }
    }
    let different = rest.chars().collect::<std::collections::BTreeSet<_>>().len();
    (different < 5).then_some(Fault::EasyPassword)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_password_is_long_and_not_made_of_obvious_words() {
        assert_eq!(fault_of("short", "a"), Some(Fault::TooShort { least: 15 }));
        assert_eq!(fault_of("spoonround spoonround 2026", "a"), Some(Fault::EasyPassword));
        assert_eq!(fault_of("mireni mireni mireni 12", "mireni"), Some(Fault::EasyPassword));
        assert_eq!(fault_of("aaaaaaaaaaaaaaaaaaaaaa", "a"), Some(Fault::EasyPassword));
        assert_eq!(fault_of(&"lake heron basket ".repeat(20), "a"), Some(Fault::TooLong { most: 256 }));
        assert_eq!(fault_of("lake heron basket", "a"), None);
        assert_eq!(fault_of("мама мыла раму синюю", "a"), None);
    }

    #[tokio::test]
    async fn only_the_right_password_fits_and_nobody_fits_nothing() {
        let stored = hash("lake heron basket".to_owned()).await.expect("hashed");
        assert!(fits("lake heron basket".to_owned(), Some(stored.clone())).await.expect("checked"));
        assert!(!fits("lake heron baskets".to_owned(), Some(stored.clone())).await.expect("checked"));
        assert!(!fits("lake heron basket".to_owned(), None).await.expect("checked"));
        assert_ne!(stored, hash("lake heron basket".to_owned()).await.expect("hashed"), "a fresh salt each time");
    }

    #[test]
    fn the_hash_of_nobody_is_well_formed() {
        // Otherwise an unknown name would be answered at once, and timing would tell who exists.
        let parsed = argon2::password_hash::phc::PasswordHash::new(NOBODY).expect("a PHC string");
        assert_eq!(parsed.params.get_decimal("m"), Some(19_456));
    }
}
