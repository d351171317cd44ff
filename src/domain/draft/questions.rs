//! Which questions of a visit stand open on the page and which wait one tap away, by age, stage, what was told before and what
//! is open. Every question can be reached at every age: this decides only what is seen first. It knows no text and no layout.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::calendar::completed_months;
use crate::calendar::days_between;
use crate::child::Child;
use crate::draft::visit::also::Also;
use crate::food::FoodCode;
use crate::food::Texture;
use crate::growth::stage_months;
use crate::rule::RuleId;
use crate::rule::Theme;
use crate::units::HeadCircumference;
use crate::units::Length;
use crate::units::Muac;
use crate::units::Weight;
use crate::visit::DangerSign;
use crate::visit::Visit;

/// What is known before the visit.
#[derive(Clone, Copy)]
pub struct Before<'a> {
    /// The child.
    pub child: &'a Child,
    /// Visits before this one, by date; later ones are ignored.
    pub visits: &'a [Visit],
    /// Rules with an open follow-up.
    pub open: &'a BTreeSet<RuleId>,
    /// The day of the visit.
    pub on: NaiveDate,
}

/// What stands open on the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Questions {
    /// Chronological age in completed months.
    pub months: u32,
    /// Under 2 months: the signs of young infants come first.
    pub young: bool,
    /// Under 6 months: one question opens all that is not breast milk.
    pub infant: bool,
    /// The arm is measured from 6 weeks on (WHO 2023 gives a limit from that age; from memory).
    pub arm: bool,
    /// The day solids began.
    pub started: bool,
    /// Signs of being ready for solids.
    pub readiness: bool,
    /// What a clinic's plan covers.
    pub plans: bool,
    /// Days of poor appetite.
    pub appetite: bool,
    /// Lines of the list of quick ticks.
    pub also: Vec<Also>,
    /// Signs, the most telling at this age first. Every sign of danger that any rule asks for at this age is in it.
    pub signs: Vec<DangerSign>,
    /// What was found last time.
    pub last: LastTime,
}

/// The latest earlier value of each measure and of what is shown beside a question, with its day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LastTime {
    /// The latest earlier visit.
    pub visit: Option<NaiveDate>,
    /// Weight.
    pub weight: Option<(Weight, NaiveDate)>,
    /// Length.
    pub length: Option<(Length, NaiveDate)>,
    /// Upper arm.
    pub arm: Option<(Muac, NaiveDate)>,
    /// Head.
    pub head: Option<(HeadCircumference, NaiveDate)>,
    /// Meals.
    pub meals: Option<(u8, NaiveDate)>,
    /// Usual texture.
    pub texture: Option<(Texture, NaiveDate)>,
    /// Whether the child was breastfed.
    pub breastfed: Option<bool>,
    /// Whether solids are known to have begun.
    pub solids: bool,
    /// The stated start of solids.
    pub started_on: Option<NaiveDate>,
}

impl LastTime {
    /// From the visits dated before `on`.
    #[must_use]
    pub fn of(visits: &[Visit], on: NaiveDate) -> Self {
        let mut earlier: Vec<&Visit> = visits.iter().filter(|v| v.on < on).collect();
        earlier.sort_by_key(|v| v.on);
        let mut last = Self::default();
        for v in earlier {
            last.visit = Some(v.on);
            last.weight = v.weight.map(|x| (x, v.on)).or(last.weight);
            last.length = v.length.map(|x| (x, v.on)).or(last.length);
            last.arm = v.muac.map(|x| (x, v.on)).or(last.arm);
            last.head = v.head.map(|x| (x, v.on)).or(last.head);
            last.meals = v.meals.map(|x| (x, v.on)).or(last.meals);
            last.texture = v.texture_usual.map(|x| (x, v.on)).or(last.texture);
            last.breastfed = v.breastfed.or(last.breastfed);
            last.started_on = v.solids_started_on.or(last.started_on);
            last.solids |= v.solids_started_on.is_some() || v.solids_yesterday == Some(true) || v.meals.is_some_and(|n| n > 0);
        }
        last
    }
}

/// Honey is watched for 30 days: signs of infant botulism may come 3 to 30 days after it (public health pages on infant botulism).
const HONEY_DAYS: i32 = 30;

impl Questions {
    /// For a visit on a day.
    #[must_use]
    pub fn of(before: &Before<'_>) -> Self {
        let Before { child, visits, open, on } = *before;
        let months = completed_months(child.born, on).unwrap_or(0);
        let age_days = days_between(child.born, on);
        let stage = stage_months(child, on);
        let last = LastTime::of(visits, on);
        let near_start = months >= 5 && !last.solids && last.started_on.is_none();
        let small = child.birth_weight.is_some_and(|w| w.grams() < 2_500) || child.gestation_days.is_some_and(|days| days < 259);
        let honey = open.contains(&RuleId::FoodHoney)
            || visits.iter().any(|v| {
                (0..=HONEY_DAYS).contains(&days_between(v.on, on))
                    && v.foods.iter().any(|f| f.code.as_str() == FoodCode::HONEY && f.offers > 0)
            });
        let any_open = |rules: &[RuleId]| rules.iter().any(|rule| open.contains(rule));
        Self {
            months,
            young: months < 2,
            infant: months < 6,
            arm: age_days >= 42,
            started: near_start || any_open(&[RuleId::SolidsEarly, RuleId::SolidsLate]),
            readiness: (near_start && stage.is_some_and(|m| (5..8).contains(&m))) || open.contains(&RuleId::SolidsLate),
            plans: any_open(&[RuleId::SolidsEarly, RuleId::MilkAnimalEarly, RuleId::BirthLow, RuleId::BreastfeedingStopped])
                || (small && age_days < 62),
            appetite: open.contains(&RuleId::AppetitePoor) || open.iter().any(|rule| rule.theme() == Theme::Growth),
            also: also(months, last.breastfed),
            signs: signs(months < 2, honey),
            last,
        }
    }
}

fn also(months: u32, breastfed: Option<bool>) -> Vec<Also> {
    let mut lines = Vec::new();
    if months >= 6 {
        lines.extend([Also::IronSource, Also::SweetDrink, Also::UnhealthyFood, Also::TeaCoffee, Also::Salt, Also::Sugar]);
    }
    lines.push(Also::Bottle);
    if months < 12 {
        lines.push(Also::Honey);
    }
    if breastfed != Some(false) {
        lines.push(Also::BreastfeedingTrouble);
    }
    lines.push(Also::Ill);
    lines
}

/// The general danger signs of IMCI (Integrated Management of Childhood Illness, WHO) first; for young infants their own list first.
/// The signs asked after honey close the list; hard stools alone are no sign of danger and are asked only then.
fn signs(young: bool, honey: bool) -> Vec<DangerSign> {
    use DangerSign as S;
    let mut signs = if young {
        vec![
            S::NotFeedingWell,
            S::CannotFeed,
            S::FitsNow,
            S::FitsInIllness,
            S::FastBreathing,
            S::ChestIndrawing,
            S::FeverOrCold,
            S::MovesOnlyWhenTouched,
            S::Lethargic,
            S::Unconscious,
            S::TroubleBreathing,
            S::VomitsEverything,
        ]
    } else {
        vec![
            S::CannotFeed,
            S::VomitsEverything,
            S::FitsNow,
            S::FitsInIllness,
            S::Lethargic,
            S::Unconscious,
            S::TroubleBreathing,
            S::MovesOnlyWhenTouched,
            S::FastBreathing,
            S::ChestIndrawing,
            S::FeverOrCold,
            S::NotFeedingWell,
        ]
    };
    signs.extend([
        S::StridorCalm,
        S::SunkenEyesSlowPinch,
        S::StiffNeck,
        S::BloodInStool,
        S::WeakCry,
        S::Floppy,
        S::PoorSuck,
        S::DroopyLids,
    ]);
    if honey {
        signs.push(S::Constipation);
    }
    signs
}

#[cfg(test)]
mod tests;
