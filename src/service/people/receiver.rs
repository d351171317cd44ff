//! Who may be given children or days: an active worker whose last day is not over, so that no child is left with nobody.

use chrono::NaiveDate;
use domain::fault::Fault;
use domain::role::Role;

use crate::store::Connection;
use crate::store::StoreError;
use crate::store::people;
use crate::store::people::PersonRecord;

/// The worker with this sign-in name, or what keeps them from taking over anything on `today`.
pub(crate) async fn receiver(c: &impl Connection, sign_in_name: &str, today: NaiveDate) -> Result<Result<PersonRecord, Fault>, StoreError> {
    let found = people::by_sign_in_name(c, sign_in_name).await?.filter(|p| p.active && p.role == Role::Worker);
    Ok(found.ok_or(Fault::UnknownChoice).and_then(|person| match person.ended_on {
        Some(last) if last < today => Err(Fault::HasLeft { name: person.full_name, last }),
        _ => Ok(person),
    }))
}
