//! Children put straight into the database, for tests of pages that show them.

use chrono::NaiveDate;
use domain::child_code::ChildCode;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::units::Weight;
use spoonround::service::name_key::skeleton;
use spoonround::store::children;
use spoonround::store::children::ChildRecord;
use spoonround::store::summaries;
use spoonround::store::summaries::SummaryRecord;
use spoonround::store::testing::a_child;
use spoonround::store::testing::a_summary;
use spoonround::store::testing::a_visit;
use spoonround::store::visits;
use spoonround::store::visits::VisitRecord;

use crate::site::Site;
use crate::site::TODAY;

/// A day.
pub fn d(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

/// The code of the n-th test child.
pub fn code(n: u128) -> String {
    ChildCode::from_random(u64::try_from(n).expect("small") * 7_919).as_str().to_owned()
}

/// A child of this worker, born on 1 March 2026.
pub fn child(n: u128, name: &str, area: AreaId, worker: PersonId) -> ChildRecord {
    ChildRecord {
        code: code(n),
        name: name.to_owned(),
        name_key: skeleton(name),
        caregiver_name: "Anwe".to_owned(),
        ..a_child(n, area, worker)
    }
}

/// Registers a child with its line of the lists.
pub async fn register(site: &Site, child: &ChildRecord, line: impl FnOnce(SummaryRecord) -> SummaryRecord) {
    children::insert(site.db.db.direct(), child).await.expect("registered");
    summaries::upsert(site.db.db.direct(), &line(a_summary(child, TODAY))).await.expect("a line");
}

/// Records a visit at which the child was weighed.
pub async fn weigh(site: &Site, n: u128, child: &ChildRecord, on: &str, grams: u32) -> VisitRecord {
    let mut record = a_visit(n, child, d(on));
    record.visit.id = VisitId(n);
    record.visit.weight = Weight::from_grams(grams).ok();
    record.entry_seq = visits::insert(site.db.db.direct(), &record).await.expect("recorded");
    record
}
