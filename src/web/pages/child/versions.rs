//! All visits of a child, with what corrections replaced and those that were taken back.

use std::cmp::Reverse;

use chrono::NaiveDate;

use crate::clock::day_in;
use crate::service::child_file::ChildFile;
use crate::service::child_visits::Replaced;
use crate::service::corrections::HistoryLine;
use crate::service::corrections::Told;
use crate::store::visits::VisitRecord;
use crate::store::visits::content;
use crate::view::child as view;
use crate::web::extract::Signed;
use crate::web::pages::child::answers::Telling;
use crate::web::pages::child::shown::line;
use crate::web::pages::correction;

/// All visits; `history` is that of the record's corrections, latest first.
pub fn visits<'a>(
    file: &'a ChildFile,
    replaced: &'a Replaced,
    history: &[HistoryLine],
    signed: &Signed,
    query: &'a str,
) -> view::VisitsPage<'a> {
    let mut all: Vec<&VisitRecord> = file.visits.iter().chain(&replaced.voided).collect();
    all.sort_by_key(|record| Reverse((record.visit.on, record.entry_seq)));
    let visits = all.into_iter().map(|record| kept(file, record, replaced, history, signed)).collect();
    view::VisitsPage { code: &file.record.code, name: &file.record.name, day: file.as_of, query, visits }
}

fn kept<'a>(file: &ChildFile, record: &'a VisitRecord, replaced: &'a Replaced, history: &[HistoryLine], signed: &Signed) -> view::Kept<'a> {
    let day = |at| -> NaiveDate { day_in(signed.visitor.settings.time_zone, at) };
    let telling = Telling { w: signed.words(), protocols: &signed.visitor.protocols, day: file.as_of };
    let voided = record.voided_at.is_some();
    let now = content(record);
    let mut after = now.clone();
    let mut earlier = Vec::new();
    let versions = replaced.versions.get(&record.visit.id).map(Vec::as_slice).unwrap_or_default();
    // Taking back keeps a version too, but replaces nothing.
    for version in versions.iter().skip(usize::from(voided)) {
        let changed = telling.changed(&version.content, &after);
        after.clone_from(&version.content);
        earlier.push(view::EarlierVersion {
            version: version.version,
            replaced_on: day(version.replaced_at),
            by: replaced.names.get(&version.replaced_by).map_or("", String::as_str),
            reason: &version.reason,
            changed,
        });
    }
    let about = |line: &&HistoryLine| {
        line.visit == Some(record.visit.id)
            && if voided { matches!(line.told, Told::Void(_)) } else { matches!(line.told, Told::MovedFrom(_)) }
    };
    view::Kept {
        line: line(record, &replaced.names),
        earlier,
        came: history.iter().find(about).map(|line| correction::history_line(signed, line.clone())),
        answers: if voided { telling.all(&now) } else { Vec::new() },
    }
}
