//! Where a page of a list in the order of visits ended, latest first: the next one goes on after it, whatever was recorded since.

use chrono::NaiveDate;
use sea_orm::ColumnTrait;
use sea_orm::Condition;

use crate::store::entity::visit;

/// The last line of a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LatestKey {
    /// The day of the visit.
    pub on: NaiveDate,
    /// Its place in the order of entry.
    pub entry_seq: i64,
    /// The place of the line within the visit.
    pub place: i32,
}

impl LatestKey {
    /// What comes after this key: earlier days, or the same day and entered earlier, or the same visit and a later place.
    pub(super) fn further(self, place: impl ColumnTrait) -> Condition {
        use visit::Column::EntrySeq;
        use visit::Column::VisitedOn;
        let of_visit = Condition::all().add(EntrySeq.eq(self.entry_seq)).add(place.gt(self.place));
        let of_day = Condition::all().add(VisitedOn.eq(self.on)).add(Condition::any().add(EntrySeq.lt(self.entry_seq)).add(of_visit));
        Condition::any().add(VisitedOn.lt(self.on)).add(of_day)
    }
}
