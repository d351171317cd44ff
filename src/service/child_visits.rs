//! Who wrote the visits of a child, and what corrections replaced.

use std::collections::BTreeMap;

use domain::ids::PersonId;
use domain::ids::VisitId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::child_file::ChildFile;
use crate::store::people;
use crate::store::visits;
use crate::store::visits::VersionRecord;
use crate::store::visits::VisitRecord;

/// The names of those who entered the visits of a file. No question is asked while all of them are the child's own worker.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn recorders(ctx: &Context, file: &ChildFile) -> Result<BTreeMap<PersonId, String>, Refusal> {
    let own = file.record.worker;
    let others: Vec<PersonId> = file.visits.iter().map(|visit| visit.recorded_by).filter(|by| *by != own).collect();
    let mut names = if others.is_empty() { BTreeMap::new() } else { people::names(ctx.db.direct(), &others).await? };
    names.insert(own, file.worker_name.clone());
    Ok(names)
}

/// What corrections replaced, for each corrected visit of a file, latest first; and the names of those who corrected.
#[derive(Debug, Clone, Default)]
pub struct Replaced {
    /// Visits that were taken back: no judgement sees them, and they stay readable.
    pub voided: Vec<VisitRecord>,
    /// By visit.
    pub versions: BTreeMap<VisitId, Vec<VersionRecord>>,
    /// Names.
    pub names: BTreeMap<PersonId, String>,
}

/// Reads what corrections replaced.
///
/// # Errors
/// [`Refusal::Store`].
pub async fn replaced(ctx: &Context, file: &ChildFile) -> Result<Replaced, Refusal> {
    let mut replaced = Replaced::default();
    if file.corrected {
        replaced.voided = visits::voided_of_child(ctx.db.direct(), file.record.id).await?;
        replaced.voided.retain(|visit| visit.visit.on <= file.as_of);
    }
    for visit in file.visits.iter().chain(&replaced.voided).filter(|visit| visit.version > 1) {
        let mut versions = visits::versions_of(ctx.db.direct(), visit.visit.id).await?;
        versions.sort_by_key(|version| std::cmp::Reverse(version.version));
        replaced.versions.insert(visit.visit.id, versions);
    }
    let mut ids: Vec<PersonId> = file.visits.iter().chain(&replaced.voided).map(|visit| visit.recorded_by).collect();
    ids.extend(replaced.versions.values().flatten().map(|version| version.replaced_by));
    replaced.names = people::names(ctx.db.direct(), &ids).await?;
    Ok(replaced)
}

/// The answers of a kept version by column.
#[must_use]
pub fn answers(content: &str) -> BTreeMap<&str, &str> {
    content.lines().filter_map(|line| line.split_once('\t')).collect()
}
