//! One sign-in for each role, with a password that is new at each start and is kept nowhere but on the screen.

use std::fmt::Write;

use domain::role::Role;
use spoonround::service::passwords;
use spoonround::store::Db;
use spoonround::store::StoreError;
use spoonround::store::people;
use spoonround::store::sessions;
use spoonround::web::secret::random_bytes;

use crate::story::cast::Cast;

/// Small letters and digits without look-alikes (no l, o, 0, 1): thirty-two, so that each is as likely as the others.
const SIGNS: &[u8; 32] = b"abcdefghijkmnpqrstuvwxyz23456789";
/// Groups of four signs.
const GROUPS: usize = 5;

/// A sign-in to be printed.
pub struct SignIn {
    /// The role.
    pub role: Role,
    /// Name at sign-in.
    pub name: String,
    /// Password.
    pub password: String,
    /// Full name.
    pub full_name: String,
}

/// Gives the demo's accounts new passwords and ends what was open with the old ones. The caller has made sure that the database
/// is a demo.
///
/// # Errors
/// A sentence for whoever starts the demo.
pub async fn renew(db: &Db, cast: &Cast) -> Result<Vec<SignIn>, String> {
    let shown = [cast.workers.first(), cast.supervisors.first(), Some(&cast.manager), Some(&cast.administrator)];
    let mut sign_ins = Vec::new();
    for person in shown.into_iter().flatten() {
        let password = new_password().ok_or("the system gives no random numbers; no password can be made")?;
        let hash = passwords::hash(password.clone()).await?;
        let known = db
            .write(async |tx| {
                let Some(mut record) = people::by_sign_in_name(tx, &person.sign_in_name).await? else { return Ok(false) };
                record.password_hash = Some(hash);
                record.must_change_password = false;
                record.active = true;
                record.failed_sign_ins = 0;
                record.locked_until = None;
                people::update(tx, &record).await?;
                sessions::end_all_of(tx, record.id, None).await?;
                Ok::<_, StoreError>(true)
            })
            .await
            .map_err(|e| e.to_string())?;
        if !known {
            return Err(format!("the demo has no account {}; build it anew with --fresh", person.sign_in_name));
        }
        sign_ins.push(SignIn { role: person.role, name: person.sign_in_name.clone(), password, full_name: person.full_name.clone() });
    }
    Ok(sign_ins)
}

/// Twenty random signs in groups of four: a hundred bits.
fn new_password() -> Option<String> {
    let bytes: [u8; 4 * GROUPS] = random_bytes()?;
    let groups: Vec<String> =
        bytes.chunks(4).map(|group| group.iter().map(|byte| char::from(SIGNS[usize::from(byte % 32)])).collect()).collect();
    Some(groups.join("-"))
}

/// What each role sees first.
const fn sees(role: Role) -> &'static str {
    match role {
        Role::Worker => "the day's round: who is due, why and by when",
        Role::Supervisor => "what is late, without word, or not seen, by worker and village",
        Role::Manager => "the monthly summary and its files; never a child",
        Role::Administrator => "people, villages and settings; never a child",
    }
}

/// The sign-ins as a table.
#[must_use]
pub fn table(sign_ins: &[SignIn]) -> String {
    let wide = |of: fn(&SignIn) -> usize, least: usize| sign_ins.iter().map(of).max().unwrap_or(0).max(least);
    let role = wide(|s| s.role.code().len(), 4);
    let name = wide(|s| s.name.len(), 4);
    let password = wide(|s| s.password.len(), 8);
    let mut text = format!("  {:role$}  {:name$}  {:password$}  Sees first\n", "Role", "Name", "Password");
    for s in sign_ins {
        let _ = writeln!(text, "  {:role$}  {:name$}  {:password$}  {}", s.role.code(), s.name, s.password, sees(s.role));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn passwords_are_long_enough_for_the_programs_own_rule_and_differ() {
        let (one, other) = (new_password().expect("random"), new_password().expect("random"));
        assert_ne!(one, other);
        for password in [one, other] {
            assert_eq!(passwords::fault_of(&password, "teveli"), None, "{password}");
        }
    }

    #[test]
    fn the_table_lines_up() {
        let one = |role, name: &str| SignIn { role, name: name.to_owned(), password: "abcd-efgh".to_owned(), full_name: String::new() };
        let text = table(&[one(Role::Worker, "teveli"), one(Role::Administrator, "fanuri")]);
        let columns: Vec<Option<usize>> = text.lines().skip(1).map(|line| line.find("abcd")).collect();
        assert_eq!(columns, [Some(25), Some(25)], "{text}");
    }
}
