//! What is known at each visit before any rule looks: ages, z-scores, what is suspect, solids, plans. It knows no rule.

use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::NaiveDate;

use crate::assess::Suspect;
use crate::calendar::{add_days, completed_months, days_between};
use crate::child::Child;
use crate::feeding::Solids;
use crate::growth::{
    GrowthAge, Indicator, Measured, Score, Scores, ZHundredths, adjusted_length, correction_days, growth_age, outside_limits, scores,
    stage_months,
};
use crate::protocol::{Protocol, Protocols, StageId};
use crate::rule::RuleId;
use crate::units::Weight;
use crate::visit::{Contact, Measurement, Visit};

/// A visit with what is known at it.
pub(crate) struct Facts<'a> {
    /// As recorded.
    pub visit: &'a Visit,
    /// The protocol that judges it.
    pub protocol: &'a Arc<Protocol>,
    /// Where its day begins among the visits: all before are on earlier days.
    pub day_start: usize,
    /// Chronological age in days.
    pub age_days: i32,
    /// Chronological age in completed months.
    pub months: u32,
    /// Growth age.
    pub growth: GrowthAge,
    /// Stage age in completed months.
    pub stage_months: Option<u32>,
    /// As computed.
    pub scores: Scores,
    /// What is taken as missing.
    pub suspect: Suspect,
    /// Weight-for-age, not suspect.
    pub waz: Option<ZHundredths>,
    /// Length-for-age, not suspect.
    pub laz: Option<ZHundredths>,
    /// Weight-for-length, not suspect.
    pub wlz: Option<ZHundredths>,
    /// Grams; recorded, without oedema, not suspect.
    pub weight_g: Option<i64>,
    /// Millimetres on the scale of the age; recorded, not suspect.
    pub length_mm: Option<i32>,
    /// Whether solids were given since the visit before.
    pub solids_given: Option<bool>,
    /// Whether they have been started.
    pub solids: Solids,
    /// The newest answer about a clinic's plans.
    pub plans: Option<&'a BTreeSet<RuleId>>,
}

impl Facts<'_> {
    /// The day.
    pub fn on(&self) -> NaiveDate {
        self.visit.on
    }

    /// Whether a measurement was taken again and kept.
    pub fn confirmed(&self, measurement: Measurement) -> bool {
        self.visit.confirmed.contains(&measurement)
    }

    /// Whether it was a home or clinic visit.
    pub fn in_person(&self) -> bool {
        self.visit.contact != Contact::Phone
    }

    /// Whether a clinic's plan covers a rule.
    pub fn planned(&self, rule: RuleId) -> bool {
        self.plans.is_some_and(|plans| plans.contains(&rule))
    }

    /// Whether solids are known to have been started.
    pub const fn started(&self) -> bool {
        matches!(self.solids, Solids::Started(_))
    }

    /// Whether the stated start of solids lies only a few days back.
    pub fn settling_in(&self) -> bool {
        settling_in(self.protocol, self.solids, self.on())
    }

    /// Whether feeding rules apply at this age.
    pub fn feeding_age(&self) -> bool {
        self.months < self.protocol.ages.exit_age_months
    }

    /// The stage.
    pub fn stage(&self) -> Option<StageId> {
        stage(self.protocol, self.months, self.stage_months, self.solids, self.on())
    }
}

/// Whether the stated start of solids lies only a few days before a day.
fn settling_in(protocol: &Protocol, solids: Solids, on: NaiveDate) -> bool {
    matches!(solids, Solids::Started(Some(start)) if days_between(start, on) < protocol.ages.settling_in_days)
}

/// The stage on a day: that of the age, or the first tastes while solids are not started or new.
pub(crate) fn stage(protocol: &Protocol, months: u32, stage_months: Option<u32>, solids: Solids, on: NaiveDate) -> Option<StageId> {
    if months >= protocol.ages.exit_age_months {
        return None;
    }
    let Some(stage_months) = stage_months else { return Some(StageId::MilkOnly) };
    let first = protocol.stages.first_tastes();
    let tasting = solids == Solids::NotStarted || settling_in(protocol, solids, on);
    if tasting && first.from_months <= stage_months && stage_months < first.to_months {
        return Some(first.id);
    }
    protocol.stages.at(stage_months).map(|stage| stage.id)
}

/// The last day of the settling in, where it lies ahead.
pub(crate) fn settled_on(protocol: &Protocol, solids: Solids) -> Option<NaiveDate> {
    match solids {
        Solids::Started(Some(start)) => Some(add_days(start, protocol.ages.settling_in_days)),
        _ => None,
    }
}

/// All visits of a child up to a day, by date, then in the order given.
pub(crate) struct Story<'a> {
    /// The child.
    pub child: &'a Child,
    /// Weight-for-age at birth, where it may be compared with later ones.
    pub birth_waz: Option<ZHundredths>,
    /// Its visits.
    pub visits: Vec<Facts<'a>>,
}

impl<'a> Story<'a> {
    /// Reads the visits up to a day.
    pub fn new(child: &'a Child, visits: &'a [Visit], protocols: &'a Protocols, as_of: NaiveDate) -> Self {
        let mut in_order: Vec<&Visit> = visits.iter().filter(|visit| visit.on <= as_of).collect();
        // Stable: visits of one day stay in the order of entry.
        in_order.sort_by_key(|visit| visit.on);
        let mut story = Self { child, birth_waz: birth_waz(child), visits: Vec::with_capacity(in_order.len()) };
        let mut day_start = 0;
        for (at, visit) in in_order.iter().enumerate() {
            if at > 0 && in_order[at - 1].on != visit.on {
                day_start = at;
            }
            let facts = story.facts(visit, protocols.on(visit.on), day_start);
            story.visits.push(facts);
        }
        story
    }

    /// Visits on earlier days, latest first; of one day the last entered first.
    pub fn earlier(&self, at: usize) -> impl Iterator<Item = &Facts<'a>> {
        self.visits[..self.visits[at].day_start].iter().rev()
    }

    fn facts(&self, visit: &'a Visit, protocol: &'a Arc<Protocol>, day_start: usize) -> Facts<'a> {
        let child = self.child;
        let growth = growth_age(child, visit.on);
        let measured = Measured {
            sex: child.sex,
            age_days: growth.days,
            weight: visit.weight,
            length: visit.length,
            position: visit.position,
            muac: visit.muac,
            head: visit.head,
            oedema: visit.oedema,
        };
        let scores = scores(&measured);
        let suspect = suspect(&scores, visit);
        let usable = |score: Score, suspect: bool| if suspect { None } else { score.rounded() };
        let solids_given = solids_given(visit, protocol);
        Facts {
            visit,
            protocol,
            day_start,
            age_days: days_between(child.born, visit.on),
            months: completed_months(child.born, visit.on).unwrap_or(0),
            growth,
            stage_months: stage_months(child, visit.on),
            waz: usable(scores.waz, suspect.weight),
            laz: usable(scores.laz, suspect.length),
            wlz: usable(scores.wlz, suspect.wlz),
            weight_g: visit.weight.filter(|_| visit.oedema != Some(true) && !suspect.weight).map(grams),
            length_mm: visit
                .length
                .filter(|_| !suspect.length)
                .map(|length| i32::from(adjusted_length(length, visit.position, growth.days).mm())),
            scores,
            suspect,
            solids: solids(visit, solids_given, &self.visits),
            solids_given,
            plans: visit.plans.as_ref().or_else(|| self.visits.iter().rev().find_map(|before| before.visit.plans.as_ref())),
        }
    }
}

/// Grams as a number that can go below 0.
pub(crate) fn grams(weight: Weight) -> i64 {
    i64::from(weight.grams())
}

/// The z of an index if it lies outside the plausible limits.
pub(crate) fn outside(scores: &Scores, indicator: Indicator) -> Option<ZHundredths> {
    scores.get(indicator).rounded().filter(|z| outside_limits(indicator, *z))
}

fn suspect(scores: &Scores, visit: &Visit) -> Suspect {
    let kept = |measurement| visit.confirmed.contains(&measurement);
    let weight = outside(scores, Indicator::Waz).is_some() && !kept(Measurement::Weight);
    let length = outside(scores, Indicator::Laz).is_some() && !kept(Measurement::Length);
    let both_kept = kept(Measurement::Weight) && kept(Measurement::Length);
    let wlz = weight || length || (outside(scores, Indicator::Wlz).is_some() && !both_kept);
    Suspect { weight, length, wlz }
}

/// Any food offered that is no drink; else the answer for yesterday; else the meals of yesterday.
fn solids_given(visit: &Visit, protocol: &Protocol) -> Option<bool> {
    let solid = |offer: &crate::visit::FoodOffer| offer.offers > 0 && !protocol.food(&offer.code).is_some_and(|food| food.drink);
    if visit.foods.iter().any(solid) {
        return Some(true);
    }
    visit.solids_yesterday.or_else(|| visit.meals.map(|meals| meals > 0))
}

/// The newest statement counts, also one of the same day; what was once given stays started.
fn solids(visit: &Visit, given: Option<bool>, so_far: &[Facts<'_>]) -> Solids {
    let before = || so_far.iter().rev();
    let stated = visit.solids_started_on.or_else(|| before().find_map(|facts| facts.visit.solids_started_on));
    if stated.is_some() || given == Some(true) || before().any(|facts| facts.solids_given == Some(true)) {
        Solids::Started(stated)
    } else if given == Some(false) {
        Solids::NotStarted
    } else {
        Solids::Unknown
    }
}

/// The z of the birth weight at day 0: for a child not born early, with a plausible birth weight.
fn birth_waz(child: &Child) -> Option<ZHundredths> {
    if correction_days(child) > 0 {
        return None;
    }
    let measured = Measured {
        sex: child.sex,
        age_days: 0,
        weight: Some(child.birth_weight?),
        length: None,
        position: None,
        muac: None,
        head: None,
        oedema: None,
    };
    scores(&measured).waz.rounded().filter(|z| !outside_limits(Indicator::Waz, *z))
}
