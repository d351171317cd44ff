//! What the reports are counted from: plain rows of children, contacts, slots and follow-ups, without names or addresses.
//! `None` is "not known" or "not asked", never "no".

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::completed_months;
use crate::child::{ChildStatus, Sex};
use crate::food::{FoodGroup, Texture};
use crate::ids::{AreaId, ChildId, PersonId, VisitId};
use crate::rule::{Class, CloseReason, FollowUpState, RuleId};
use crate::units::{Length, Muac, Weight};
use crate::visit::Contact;

/// An area and its code in files.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportArea {
    /// Key.
    pub id: AreaId,
    /// Code or name as printed.
    pub code: String,
}

/// Where a child belongs from a day on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Placement {
    /// First day.
    pub from: NaiveDate,
    /// Area.
    pub area: AreaId,
    /// Worker.
    pub worker: PersonId,
}

/// A child as the reports see it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportChild {
    /// Key; never printed.
    pub id: ChildId,
    /// Sex.
    pub sex: Sex,
    /// Birth date; never printed.
    pub born: NaiveDate,
    /// Known to be born before 37 weeks (259 days) of pregnancy.
    pub preterm: bool,
    /// Days by which growth age is corrected: 280 less the days of pregnancy, for those born early; else 0.
    pub correction_days: u16,
    /// Known to be born with less than 2,500 g.
    pub low_birth_weight: bool,
    /// First day in the programme.
    pub registered_on: NaiveDate,
    /// Changes of status after registration, by day; the last of a day counts.
    pub statuses: Vec<(NaiveDate, ChildStatus)>,
    /// Where it belonged, by day; the first holds from registration.
    pub placements: Vec<Placement>,
    /// The last visit at home or clinic up to the end of the month.
    pub last_visit_on: Option<NaiveDate>,
    /// Ever breastfed.
    pub ever_breastfed: Option<bool>,
    /// Put to the breast within an hour of birth.
    pub breastfed_within_hour: Option<bool>,
    /// Nothing but breast milk in the first two days.
    pub only_breast_milk_two_days: Option<bool>,
}

impl ReportChild {
    /// The status at the end of the day; `None` before registration.
    #[must_use]
    pub fn status_on(&self, day: NaiveDate) -> Option<ChildStatus> {
        if day < self.registered_on {
            return None;
        }
        Some(self.statuses.iter().rfind(|(on, _)| *on <= day).map_or(ChildStatus::Active, |(_, status)| *status))
    }

    /// The place at the end of the day.
    #[must_use]
    pub fn place_on(&self, day: NaiveDate) -> Option<Placement> {
        self.placements.iter().rfind(|place| place.from <= day).or_else(|| self.placements.first()).copied()
    }
}

/// A z-score of a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReportZ {
    /// Hundredths, rounded as shown.
    pub hundredths: i32,
    /// Outside the plausible limits.
    pub flagged: bool,
    /// What it rests on was measured again and kept.
    pub confirmed: bool,
}

impl ReportZ {
    /// Whether it counts: plausible, or confirmed.
    #[must_use]
    pub const fn counts(self) -> bool {
        !self.flagged || self.confirmed
    }
}

/// The answers of a visit that the feeding indicators use.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReportAnswers {
    /// Breastfed yesterday.
    pub breastfed: Option<bool>,
    /// Nothing but breast milk yesterday.
    pub breast_only: Option<bool>,
    /// Formula feeds yesterday.
    pub formula_times: Option<u8>,
    /// Animal milk feeds yesterday.
    pub animal_milk_times: Option<u8>,
    /// Drinkable yoghurt feeds yesterday.
    pub drink_yogurt_times: Option<u8>,
    /// Semi-solid yoghurt feeds yesterday.
    pub spoon_yogurt_times: Option<u8>,
    /// Any solid food yesterday.
    pub solids_yesterday: Option<bool>,
    /// Whether solids have been started by this visit.
    pub solids_started: Option<bool>,
    /// Solid feeds yesterday.
    pub meals: Option<u8>,
    /// Groups eaten yesterday.
    pub groups: Option<BTreeSet<FoodGroup>>,
    /// Sweet drink yesterday.
    pub sweet_drink: Option<bool>,
    /// A listed unhealthy food yesterday.
    pub unhealthy_food: Option<bool>,
    /// Bottle with a teat yesterday.
    pub bottle: Option<bool>,
    /// Most advanced texture taken without trouble.
    pub texture_best: Option<Texture>,
    /// The texture that the child's stage asks for at this visit; `None` while milk is all.
    pub texture_expected: Option<Texture>,
}

/// A contact as the reports see it. Deleted ones and earlier versions are not given.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportVisit {
    /// Key; never printed.
    pub id: VisitId,
    /// Order of entry: of two visits on a day the one entered later is the later.
    pub entry: i64,
    /// The child.
    pub child: ChildId,
    /// Its sex.
    pub sex: Sex,
    /// Its birth date.
    pub born: NaiveDate,
    /// The area at the visit.
    pub area: AreaId,
    /// The worker at the visit.
    pub worker: PersonId,
    /// The day.
    pub on: NaiveDate,
    /// Where or how.
    pub contact: Contact,
    /// Weight, not suspect.
    pub weight: Option<Weight>,
    /// Length, not suspect.
    pub length: Option<Length>,
    /// Arm circumference.
    pub muac: Option<Muac>,
    /// Swelling of both feet.
    pub oedema: Option<bool>,
    /// Weight-for-age.
    pub waz: Option<ReportZ>,
    /// Weight-for-length.
    pub wlz: Option<ReportZ>,
    /// Length-for-age.
    pub laz: Option<ReportZ>,
    /// Growth age was corrected for early birth.
    pub age_corrected: bool,
    /// Slow gain, no gain or loss against an earlier valid weight; `None` without such a pair.
    pub slow_or_lost: Option<bool>,
    /// The slot that it belongs to; `None` for a phone contact.
    pub slot: Option<String>,
    /// It is the visit that filled the slot.
    pub fills_slot: bool,
    /// Feeding answers.
    pub answers: ReportAnswers,
}

impl ReportVisit {
    /// Completed months at the visit, chronological, also for babies born early.
    #[must_use]
    pub fn months(&self) -> u32 {
        completed_months(self.born, self.on).unwrap_or(0)
    }

    /// Age in days at the visit, chronological.
    #[must_use]
    pub fn days(&self) -> i32 {
        crate::calendar::days_between(self.born, self.on)
    }
}

/// What became of an expected visit slot by the end of the month in which its window closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SlotEnd {
    /// Filled within the window.
    OnTime,
    /// Filled before it opened or after it closed.
    EarlyOrLate,
    /// Not filled, but a later one was.
    Skipped,
    /// Not filled.
    Overdue,
}

/// An expected slot whose window closed in the month.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportSlot {
    /// The child's area on the target day.
    pub area: AreaId,
    /// Its worker on the target day.
    pub worker: PersonId,
    /// Code of the slot, e.g. `m06`.
    pub slot: String,
    /// Last day of its window.
    pub closes: NaiveDate,
    /// What became of it.
    pub end: SlotEnd,
}

/// A follow-up as the reports see it. Days after the end of the month may be given; what lies after it is not counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportFollowUp {
    /// The child.
    pub child: ChildId,
    /// The area at opening.
    pub area: AreaId,
    /// The worker at opening.
    pub worker: PersonId,
    /// The rule.
    pub rule: RuleId,
    /// Its class at opening.
    pub class: Class,
    /// The day it opened.
    pub opened_on: NaiveDate,
    /// When it is due, as it stood at the end of the month or when it was closed.
    pub due_on: NaiveDate,
    /// The due day that stood until it was first followed up.
    pub first_due_on: NaiveDate,
    /// The first visit after opening at which its rule was tested.
    pub followed_up_on: Option<NaiveDate>,
    /// The first outcome of any kind.
    pub outcome_on: Option<NaiveDate>,
    /// The first outcome that says the child reached care.
    pub reached_on: Option<NaiveDate>,
    /// The day it was closed.
    pub closed_on: Option<NaiveDate>,
    /// Its state now.
    pub state: FollowUpState,
    /// Why it is no longer open.
    pub reason: Option<CloseReason>,
}
