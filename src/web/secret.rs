//! The server's own key: form tokens bound to a session, and forms carried through a sign-in.
//!
//! It knows nothing of requests; sessions are given as bytes.

use std::io::Write;
use std::path::Path;

use chacha20poly1305::KeyInit;
use chacha20poly1305::XChaCha20Poly1305;
use chacha20poly1305::XNonce;
use chacha20poly1305::aead::Aead;
use hmac::Hmac;
use hmac::Mac;
use sha2::Digest;
use sha2::Sha256;
use subtle::ConstantTimeEq;

/// 256 bits known to this server only.
#[derive(Clone)]
pub struct Secret([u8; 32]);

/// The key file cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum SecretFault {
    /// It cannot be read or written.
    #[error("secret_file {path}: {source}; check that the folder exists and that this user may write there")]
    File {
        /// The file.
        path: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// It holds something else.
    #[error(
        "secret_file {0}: must hold exactly 64 hexadecimal digits; delete the file to have a new key made (everybody then signs in again)"
    )]
    Content(String),
    /// The system gives no randomness.
    #[error("this system gives no random numbers")]
    NoRandom,
}

impl Secret {
    /// Reads the key file, or makes it, readable by this user only.
    ///
    /// # Errors
    /// [`SecretFault`] with the path and what to do.
    pub fn from_file(path: &Path) -> Result<Self, SecretFault> {
        let file_fault = |source| SecretFault::File { path: path.display().to_string(), source };
        match std::fs::read_to_string(path) {
            Ok(text) => {
                let bytes = from_hex(text.trim()).ok_or_else(|| SecretFault::Content(path.display().to_string()))?;
                Ok(Self(bytes))
            }
            Err(error) if matches!(error.kind(), std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory) => {
                if let Some(folder) = path.parent() {
                    crate::files::folder::make(folder).map_err(file_fault)?;
                }
                let secret = Self::random().ok_or(SecretFault::NoRandom)?;
                let mut options = std::fs::OpenOptions::new();
                options.write(true).create_new(true);
                #[cfg(unix)]
                std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
                let mut file = options.open(path).map_err(file_fault)?;
                writeln!(file, "{}", to_hex(&secret.0)).map_err(file_fault)?;
                Ok(secret)
            }
            Err(error) => Err(file_fault(error)),
        }
    }

    /// A new key.
    #[must_use]
    pub fn random() -> Option<Self> {
        random_bytes().map(Self)
    }

    /// A token for forms shown in this session. Different each time, so that compressed pages give nothing away.
    #[must_use]
    pub fn token(&self, session: &[u8]) -> String {
        let salt: [u8; 16] = random_bytes().unwrap_or([0; 16]);
        format!("{}{}", to_hex(&salt), to_hex(&self.seal(session, &salt)))
    }

    /// Whether the token was made for this session.
    #[must_use]
    pub fn token_fits(&self, session: &[u8], token: &str) -> bool {
        let Some((salt, seal)) = token.split_at_checked(32) else { return false };
        let (Some(salt), Some(seal)) = (from_hex::<16>(salt), from_hex::<32>(seal)) else { return false };
        self.seal(session, &salt).ct_eq(&seal).into()
    }

    fn seal(&self, session: &[u8], salt: &[u8; 16]) -> [u8; 32] {
        let mut mac =
            <Hmac<Sha256> as hmac::KeyInit>::new_from_slice(&self.0).unwrap_or_else(|_| unreachable!("HMAC takes a key of any length"));
        mac.update(b"form token");
        // Lengths first, so that no two pairs of session and salt read the same.
        mac.update(&u64::try_from(session.len()).unwrap_or(0).to_be_bytes());
        mac.update(session);
        mac.update(salt);
        mac.finalize().into_bytes().into()
    }

    /// Seals a text so that only this server can read it, and only for the same purpose.
    #[must_use]
    pub fn hide(&self, purpose: &str, text: &str) -> Option<String> {
        let nonce: [u8; 24] = random_bytes()?;
        let cipher = self.cipher(purpose)?;
        let hidden = cipher.encrypt(&XNonce::from(nonce), text.as_bytes()).ok()?;
        Some(format!("{}{}", to_hex(&nonce), to_hex(&hidden)))
    }

    /// Opens what [`Secret::hide`] sealed.
    #[must_use]
    pub fn reveal(&self, purpose: &str, hidden: &str) -> Option<String> {
        let (nonce, hidden) = hidden.split_at_checked(48)?;
        let nonce: [u8; 24] = from_hex(nonce)?;
        let hidden = vec_from_hex(hidden)?;
        let plain = self.cipher(purpose)?.decrypt(&XNonce::from(nonce), hidden.as_slice()).ok()?;
        String::from_utf8(plain).ok()
    }

    fn cipher(&self, purpose: &str) -> Option<XChaCha20Poly1305> {
        let key: [u8; 32] = Sha256::new().chain_update(self.0).chain_update(purpose.as_bytes()).finalize().into();
        XChaCha20Poly1305::new_from_slice(&key).ok()
    }
}

/// Bytes from the system's generator; `None` if it has none.
#[must_use]
pub fn random_bytes<const N: usize>() -> Option<[u8; N]> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).ok()?;
    Some(bytes)
}

/// Lower-case hexadecimal.
#[must_use]
pub fn to_hex(bytes: &[u8]) -> String {
    use std::fmt::Write as _;
    bytes.iter().fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

fn vec_from_hex(text: &str) -> Option<Vec<u8>> {
    if !text.len().is_multiple_of(2) || !text.is_ascii() {
        return None;
    }
    (0..text.len()).step_by(2).map(|at| u8::from_str_radix(&text[at..at + 2], 16).ok()).collect()
}

/// Reads exactly `N` bytes of hexadecimal.
#[must_use]
pub fn from_hex<const N: usize>(text: &str) -> Option<[u8; N]> {
    vec_from_hex(text)?.try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn secret() -> Secret {
        Secret([7; 32])
    }

    #[test]
    fn a_token_fits_its_own_session_only() {
        let token = secret().token(b"mine");
        assert!(secret().token_fits(b"mine", &token));
        assert!(!secret().token_fits(b"yours", &token));
        assert!(!Secret([8; 32]).token_fits(b"mine", &token));
        assert!(!secret().token_fits(b"mine", ""));
        assert!(!secret().token_fits(b"mine", &token[..token.len() - 2]));
        assert_ne!(token, secret().token(b"mine"), "two pages carry two tokens");
    }

    #[test]
    fn a_hidden_form_opens_for_its_purpose_only() {
        let hidden = secret().hide("a", "weight=7.4").expect("randomness");
        assert_eq!(secret().reveal("a", &hidden).as_deref(), Some("weight=7.4"));
        assert_eq!(secret().reveal("b", &hidden), None);
        assert_eq!(secret().reveal("a", "zz"), None);
        assert!(!hidden.contains("weight"));
    }

    #[test]
    fn the_key_file_is_made_once_and_read_again() {
        let dir = tempfile::tempdir().expect("a folder");
        let path = dir.path().join("deep").join("secret.key");
        let first = Secret::from_file(&path).expect("made");
        let again = Secret::from_file(&path).expect("read");
        assert_eq!(first.0, again.0);
        std::fs::write(&path, "not a key").expect("written");
        assert!(matches!(Secret::from_file(&path), Err(SecretFault::Content(_))));
    }
}
