//! The follow-up list of a day for the command line: open follow-ups and visits due, for the office that works without a
//! browser. It names children by code only.

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::protocol::Protocols;
use domain::rule::RuleId;

use crate::files::csv_text;
use crate::service::reassess::judge;
use crate::store::Db;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::areas;
use crate::store::children;
use crate::store::follow_ups;
use crate::store::lists;
use crate::store::lists::Sought;
use crate::store::people;
use crate::store::visits;

/// The columns.
pub const HEADER: [&str; 10] =
    ["as_of", "child_code", "area", "worker", "age_months", "rule", "class", "due_on", "days_late", "protocol_version"];

/// Children read at a time.
const AT_A_TIME: u64 = 200;

/// One line of the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DueLine {
    as_of: NaiveDate,
    child: String,
    area: String,
    worker: String,
    months: u32,
    rule: RuleId,
    class: String,
    due_on: NaiveDate,
    days_late: i32,
    version: String,
}

impl DueLine {
    /// As written to CSV, in the order of [`HEADER`].
    #[must_use]
    pub fn fields(&self) -> [String; 10] {
        [
            self.as_of.to_string(),
            self.child.clone(),
            csv_text::text(&self.area),
            csv_text::text(&self.worker),
            self.months.to_string(),
            self.rule.code().to_owned(),
            self.class.clone(),
            self.due_on.to_string(),
            self.days_late.to_string(),
            csv_text::text(&self.version),
        ]
    }
}

/// The codes of all areas, by which a list can be narrowed.
///
/// # Errors
/// [`StoreError`].
pub async fn area_codes(db: &Db) -> Result<Vec<String>, StoreError> {
    Ok(areas::list(db.direct()).await?.into_iter().map(|area| area.code).collect())
}

/// The list as of a day, most urgent first: visits dated up to the day, with the corrections known now.
///
/// # Errors
/// [`StoreError`].
pub async fn due(db: &Db, protocols: &Protocols, as_of: NaiveDate, area: Option<&str>) -> Result<Vec<DueLine>, StoreError> {
    let places: std::collections::BTreeMap<_, _> = areas::list(db.direct()).await?.into_iter().map(|a| (a.id, a.code)).collect();
    let mut workers = std::collections::BTreeMap::new();
    for person in people::active_of_role(db.direct(), domain::role::Role::Worker).await? {
        workers.insert(person.id, person.sign_in_name);
    }
    let mut lines = Vec::new();
    let mut after: Option<(String, String)> = None;
    loop {
        let sought = Sought::default();
        let from = after.as_ref().map(|(key, code)| (key.as_str(), code.as_str()));
        let page = lists::find(db.direct(), Scope::Everything, &sought, from, AT_A_TIME).await?;
        let Some(last) = page.last() else { break };
        after = Some((last.name_key.clone(), last.code.clone()));
        let ids: Vec<_> = page.iter().map(|row| row.child).collect();
        let records = children::by_ids(db.direct(), &ids).await?;
        let mut stories = visits::of_children_up_to(db.direct(), &ids, as_of).await?;
        for child in records {
            let place = places.get(&child.area).cloned().unwrap_or_default();
            if child.facts.registered_on > as_of || area.is_some_and(|code| code != place) {
                continue;
            }
            let story = stories.remove(&child.id).unwrap_or_default();
            let stored = follow_ups::of_child(db.direct(), child.id).await?;
            let a = judge(protocols, &child, &story, &stored, as_of);
            let worker = workers.get(&child.worker).cloned().unwrap_or_default();
            let line = |rule, class: String, due_on| DueLine {
                as_of,
                child: child.code.clone(),
                area: place.clone(),
                worker: worker.clone(),
                months: a.now.completed_months,
                rule,
                class,
                due_on,
                days_late: days_between(due_on, as_of).max(0),
                version: a.now.protocol.version.clone(),
            };
            for f in a.open() {
                lines.push((f.class as u8, line(f.rule, f.class.code().to_owned(), f.due_on)));
            }
            for l in &a.lists {
                lines.push((9, line(l.rule, "list".to_owned(), l.counted_from)));
            }
        }
    }
    lines.sort_by(|(a, x), (b, y)| {
        (a, std::cmp::Reverse(x.days_late), &x.child, x.rule).cmp(&(b, std::cmp::Reverse(y.days_late), &y.child, y.rule))
    });
    Ok(lines.into_iter().map(|(_, line)| line).collect())
}
