//! What leaves the program is written to the audit: who, when, which file of which release.

use crate::service::report::Office;
use crate::service::report::Report;
use crate::service::report::State;
use crate::store::StoreError;
use crate::store::audit;
use crate::store::audit::AuditEntry;

/// Writes to the audit that these files of a report were given out.
///
/// # Errors
/// [`StoreError`]: then they must not be given out.
pub async fn note(office: Office<'_>, report: &Report, files: &[&str]) -> Result<(), StoreError> {
    let period = report.release.period;
    let fields = match report.state {
        State::Provisional { .. } => "provisional".to_owned(),
        State::Released { revision } => format!("revision-{revision}"),
    };
    office
        .db
        .write(async |tx| {
            for file in files {
                let entry = AuditEntry {
                    at: office.now,
                    actor: office.by,
                    action: "report.download".to_owned(),
                    object_kind: "report".to_owned(),
                    object_id: format!("{period}/{file}"),
                    fields: vec![fields.clone()],
                };
                audit::append(tx, &entry).await?;
            }
            Ok(())
        })
        .await
}
