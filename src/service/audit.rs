//! One line of the audit for each change: who, what, which thing, which fields, never a value.

use crate::service::Context;
use crate::store::Connection;
use crate::store::StoreError;
use crate::store::audit;
use crate::store::audit::AuditEntry;

/// Notes a change in the transaction that makes it.
///
/// # Errors
/// [`StoreError`].
pub async fn note(
    c: &impl Connection,
    ctx: &Context,
    action: &str,
    object_kind: &str,
    object_id: &str,
    fields: &[&str],
) -> Result<(), StoreError> {
    let entry = AuditEntry {
        at: ctx.now,
        actor: Some(ctx.actor.person),
        action: action.to_owned(),
        object_kind: object_kind.to_owned(),
        object_id: object_id.to_owned(),
        fields: fields.iter().map(|f| (*f).to_owned()).collect(),
    };
    audit::append(c, &entry).await
}
