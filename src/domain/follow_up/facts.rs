//! What is known at each visit before any rule looks: ages, z-scores, what is suspect, solids, plans. It knows no rule.

use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::NaiveDate;

use super::offered::Offered;
use crate::assess::Suspect;
use crate::calendar::{add_days, days_between};
use crate::child::Child;
use crate::feeding::Solids;
use crate::growth::{
    AgesOn, GrowthAge, Indicator, Measured, VisitScores, ZHundredths, adjusted_length, ages_on, correction_days, outside_limits,
};
use crate::protocol::{Protocol, Protocols, StageId};
use crate::rule::RuleId;
use crate::schedule::{Slot, planned};
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
    pub scores: VisitScores,
    /// One of the three indices that the rules use lies outside the plausible limits, kept or not.
    pub outside: bool,
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
    /// The foods offered.
    pub offered: Offered,
    /// The greatest age in completed months that the local protocol waits for with any food given too early so far.
    pub local_wait_months: Option<u32>,
    /// Honey was given so far.
    pub honey_so_far: bool,
    /// A reaction to a food followed so far.
    pub reaction_so_far: bool,
    /// Whether solids were given since the visit before: any food offered that is no drink; else the answer for yesterday; else the
    /// meals of yesterday.
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

    /// Days from an earlier visit to this one.
    pub const fn days_since(&self, before: &Self) -> i32 {
        self.age_days - before.age_days
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
    /// The protocol of the day up to which it goes.
    pub protocol: &'a Arc<Protocol>,
    /// The visit slots by that protocol, not filled.
    pub slots: Vec<Slot>,
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
        let protocol = protocols.on(as_of);
        let slots = planned(&protocol.schedule, child.born, child.registered_on);
        let mut story = Self { child, protocol, slots, birth_waz: birth_waz(child), visits: Vec::with_capacity(in_order.len()) };
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

    /// The first day aimed at after a visit, by its protocol.
    pub fn first_target_after(&self, facts: &Facts<'_>) -> Option<NaiveDate> {
        if Arc::ptr_eq(facts.protocol, self.protocol) {
            self.slots.iter().find(|slot| slot.age_days > facts.age_days).map(|slot| slot.window.target)
        } else {
            facts.protocol.schedule.first_target_after(self.child.born, facts.on())
        }
    }

    fn facts(&self, visit: &'a Visit, protocol: &'a Arc<Protocol>, day_start: usize) -> Facts<'a> {
        let before = self.visits.last();
        let AgesOn { days: age_days, months, growth, stage_months } = ages_on(self.child, visit.on);
        let months = months.unwrap_or(0);
        let scores = VisitScores::of(Measured {
            sex: self.child.sex,
            age_days: growth.days,
            weight: visit.weight,
            length: visit.length,
            position: visit.position,
            muac: visit.muac,
            head: visit.head,
            oedema: visit.oedema,
        });
        let [waz, laz, wlz] = [scores.waz.rounded(), scores.laz.rounded(), scores.wlz.rounded()];
        let [waz_outside, laz_outside, wlz_outside] =
            [(Indicator::Waz, waz), (Indicator::Laz, laz), (Indicator::Wlz, wlz)].map(|(of, z)| z.is_some_and(|z| outside_limits(of, z)));
        let kept = |measurement| visit.confirmed.contains(&measurement);
        let (weight_kept, length_kept) = (kept(Measurement::Weight), kept(Measurement::Length));
        let weight = waz_outside && !weight_kept;
        let length = laz_outside && !length_kept;
        let suspect = Suspect { weight, length, wlz: weight || length || (wlz_outside && !(weight_kept && length_kept)) };
        let offered = Offered::at(visit, protocol, months);
        // Earlier foods are judged by the protocol of this visit.
        let waited_for = match before {
            Some(before) if Arc::ptr_eq(before.protocol, protocol) => before.local_wait_months,
            _ => self.visits.iter().filter_map(|facts| Offered::at(facts.visit, protocol, facts.months).local_wait_months).max(),
        };
        let solids_given = if offered.solid { Some(true) } else { visit.solids_yesterday.or_else(|| visit.meals.map(|meals| meals > 0)) };
        Facts {
            visit,
            protocol,
            day_start,
            age_days,
            months,
            growth,
            stage_months,
            scores,
            outside: waz_outside || laz_outside || wlz_outside,
            suspect,
            waz: waz.filter(|_| !suspect.weight),
            laz: laz.filter(|_| !suspect.length),
            wlz: wlz.filter(|_| !suspect.wlz),
            weight_g: visit.weight.filter(|_| visit.oedema != Some(true) && !suspect.weight).map(grams),
            length_mm: visit
                .length
                .filter(|_| !suspect.length)
                .map(|length| i32::from(adjusted_length(length, visit.position, growth.days).mm())),
            offered,
            local_wait_months: offered.local_wait_months.max(waited_for),
            honey_so_far: offered.honey || before.is_some_and(|before| before.honey_so_far),
            reaction_so_far: offered.reaction || before.is_some_and(|before| before.reaction_so_far),
            solids_given,
            solids: solids(visit, solids_given, before),
            plans: visit.plans.as_ref().or_else(|| before?.plans),
        }
    }
}

/// Grams as a number that can go below 0.
pub(crate) fn grams(weight: Weight) -> i64 {
    i64::from(weight.grams())
}

/// The z of an index if it lies outside the plausible limits.
pub(crate) fn outside(scores: &VisitScores, indicator: Indicator) -> Option<ZHundredths> {
    scores.get(indicator).rounded().filter(|z| outside_limits(indicator, *z))
}

/// The newest statement counts, also one of the same day; what was once given stays started.
fn solids(visit: &Visit, given: Option<bool>, before: Option<&Facts<'_>>) -> Solids {
    let started = match before.map(|before| before.solids) {
        Some(Solids::Started(stated)) => Some(stated),
        _ => None,
    };
    let stated = visit.solids_started_on.or(started.flatten());
    if stated.is_some() || given == Some(true) || started.is_some() {
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
    VisitScores::of(measured).waz.rounded().filter(|z| !outside_limits(Indicator::Waz, *z))
}
