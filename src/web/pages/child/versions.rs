//! All visits of a child, with what corrections replaced.

use chrono::NaiveDate;

use crate::clock::day_in;
use crate::service::child_file::ChildFile;
use crate::service::child_visits::Replaced;
use crate::service::child_visits::answers;
use crate::store::visits::content;
use crate::view::child as view;
use crate::web::extract::Signed;
use crate::web::pages::child::shown::line;

/// All visits with what corrections replaced.
pub fn visits<'a>(file: &'a ChildFile, replaced: &'a Replaced, signed: &Signed, query: &'a str) -> view::VisitsPage<'a> {
    let day = |at| -> NaiveDate { day_in(signed.visitor.settings.time_zone, at) };
    let visits = file.visits.iter().rev().map(|record| {
        let mut after = content(record);
        let mut earlier = Vec::new();
        for version in replaced.versions.get(&record.visit.id).map(Vec::as_slice).unwrap_or_default() {
            let (changed, others) = difference(&version.content, &after);
            after.clone_from(&version.content);
            earlier.push(view::EarlierVersion {
                version: version.version,
                replaced_on: day(version.replaced_at),
                by: replaced.names.get(&version.replaced_by).map_or("", String::as_str),
                reason: &version.reason,
                changed,
                others,
            });
        }
        (line(record, &replaced.names), earlier)
    });
    view::VisitsPage { code: &file.record.code, name: &file.record.name, day: file.as_of, query, visits: visits.collect() }
}

/// What nobody answered: who and when, and what the program worked out.
const NOT_ANSWERS: [&str; 21] = [
    "id",
    "entry_seq",
    "child_id",
    "area_id",
    "worker_id",
    "recorded_by",
    "sex",
    "age_days",
    "recorded_at",
    "version",
    "voided_at",
    "waz_h",
    "laz_h",
    "wlz_h",
    "bmiz_h",
    "mauz_h",
    "hcz_h",
    "suspect",
    "protocol_id",
    "protocol_version",
    "stage",
];

/// The measurements as they stood where a correction changed them, and how many other answers it changed.
fn difference(before: &str, after: &str) -> (Vec<view::Changed>, usize) {
    let (before, after) = (answers(before), answers(after));
    let names: std::collections::BTreeSet<&str> = before.keys().chain(after.keys()).copied().collect();
    let mut changed = Vec::new();
    let mut others = 0;
    for name in names.into_iter().filter(|name| !NOT_ANSWERS.contains(name) && before.get(name) != after.get(name)) {
        let stood = before.get(name).and_then(|value| value.parse().ok());
        match name {
            "weight_g" => changed.push(view::Changed::Weight(stood)),
            "length_mm" => changed.push(view::Changed::Length(stood)),
            "muac_mm" => changed.push(view::Changed::Arm(stood)),
            _ => others += 1,
        }
    }
    (changed, others)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_correction_s_difference_names_measurements_and_counts_the_rest() {
        let before = "id\tx\nweight_g\t6900\nmuac_mm\t121\nmeals\t2\nwaz_h\t-100\nversion\t1\n";
        let after = "id\tx\nweight_g\t7900\nmuac_mm\t121\nlength_mm\t700\nmeals\t3\nnote\tseen twice\nwaz_h\t20\nversion\t2\n";
        let (changed, others) = difference(before, after);
        assert_eq!(changed, [view::Changed::Length(None), view::Changed::Weight(Some(6900))]);
        assert_eq!(others, 2, "meals and note");
        assert_eq!(difference(after, after), (Vec::new(), 0));
    }
}
