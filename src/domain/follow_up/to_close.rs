//! What still has to happen before an open follow-up closes: its way, the numbers of its test, what is behind already and what the newest
//! visit left open. It closes nothing; [`super::clearing`] does.

use chrono::NaiveDate;

use super::clearing::{Way, way};
use super::types::{FollowUp, TestResult};
use crate::assess::Assessment;
use crate::calendar::{add_days, add_months};
use crate::child::Child;
use crate::code::codes;
use crate::evidence::{Evidence, EvidenceKey as K, Quantity};
use crate::growth::ZHundredths;
use crate::ids::VisitId;
use crate::protocol::Protocol;
use crate::rule::RuleId;
use crate::visit::Visit;

codes! {
    /// Something a clearing test has to know.
    Needed, "needed answer" {
        /// Weight.
        Weight => "weight",
        /// Length.
        Length => "length",
        /// Arm.
        Arm => "arm",
        /// Both feet looked at.
        Feet => "feet",
        /// Danger signs.
        Signs => "signs",
        /// Whether solid food was given.
        Solids => "solids",
        /// Best texture.
        TextureBest => "texture_best",
        /// Usual texture.
        TextureUsual => "texture_usual",
        /// Meals.
        Meals => "meals",
        /// Food groups.
        Groups => "groups",
        /// Another source of iron.
        Iron => "iron",
        /// Whether breastfed.
        Breastfed => "breastfed",
        /// Trouble with breastfeeding.
        BreastTrouble => "breast_trouble",
        /// Other drinks.
        OtherDrink => "other_drink",
        /// Animal milk.
        AnimalMilk => "animal_milk",
        /// Sweet drinks.
        SweetDrink => "sweet_drink",
        /// Bottle.
        Bottle => "bottle",
        /// Tea, coffee, salt, sugar.
        LowValue => "low_value",
        /// Foods offered and their form.
        Foods => "foods",
        /// Appetite.
        Appetite => "appetite",
    }
}

impl Needed {
    fn known(self, visit: &Visit) -> bool {
        match self {
            Self::Weight => visit.weight.is_some(),
            Self::Length => visit.length.is_some(),
            Self::Arm => visit.muac.is_some(),
            Self::Feet => visit.oedema.is_some(),
            Self::Signs => visit.danger_signs.is_some(),
            Self::Solids => visit.solids_yesterday.is_some() || visit.meals.is_some() || !visit.foods.is_empty(),
            Self::TextureBest => visit.texture_best.is_some(),
            Self::TextureUsual => visit.texture_usual.is_some(),
            Self::Meals => visit.meals.is_some(),
            Self::Groups => visit.groups.is_some(),
            Self::Iron => visit.iron_source.is_some(),
            Self::Breastfed => visit.breastfed.is_some(),
            Self::BreastTrouble => visit.breastfeeding_trouble.is_some(),
            Self::OtherDrink => visit.other_drink.is_some() || visit.breast_only.is_some(),
            Self::AnimalMilk => visit.animal_milk_times.is_some(),
            Self::SweetDrink => visit.sweet_drink.is_some(),
            Self::Bottle => visit.bottle.is_some(),
            Self::LowValue => visit.low_value.is_some(),
            Self::Foods => !visit.foods.is_empty(),
            Self::Appetite => visit.appetite_poor_days.is_some(),
        }
    }
}

/// What the clearing test of a rule has to know at a visit.
const fn needs(rule: RuleId) -> &'static [Needed] {
    use Needed as N;
    use RuleId as R;
    match rule {
        R::DangerGeneral | R::DangerYoungInfant | R::DangerOther | R::FoodHoney => &[N::Signs],
        R::OedemaBothFeet => &[N::Feet],
        R::WastingSevere | R::WastingModerate | R::WastingYoung => &[N::Arm, N::Feet],
        R::WeightVeryLow
        | R::WeightLow
        | R::WeightLoss
        | R::WeightStatic
        | R::WeightSlowGain
        | R::WeightDrop
        | R::WeightDrift
        | R::BirthWeightNotRegained
        | R::DataWeightJump
        | R::DataSameAgain
        | R::MeasureMissing => &[N::Weight],
        R::LengthLow | R::DataLengthShrunk | R::DataLengthJump => &[N::Length],
        R::WeightHigh | R::DataZOutside => &[N::Weight, N::Length],
        R::SolidsEarly | R::SolidsLate | R::DataConflict => &[N::Solids],
        R::LiquidsEarly => &[N::OtherDrink],
        R::MilkAnimalEarly => &[N::AnimalMilk],
        R::TextureBehind => &[N::TextureBest],
        R::TextureWatery => &[N::TextureUsual],
        R::MealsFew => &[N::Meals, N::Breastfed],
        R::MilkFew | R::BreastfeedingStopped => &[N::Breastfed],
        R::DiversityLow | R::AnimalFoodNone | R::VegFruitNone => &[N::Groups],
        R::IronNone => &[N::Groups, N::Iron],
        R::DrinkSweet => &[N::SweetDrink],
        R::BottleUsed => &[N::Bottle],
        R::FoodChoking => &[N::Foods],
        R::FoodLowValue => &[N::LowValue],
        R::BreastfeedingTrouble => &[N::BreastTrouble],
        R::AppetitePoor => &[N::Appetite],
        R::ReactionSevere
        | R::ReactionSpreading
        | R::ReactionMild
        | R::ReactionGivenAgain
        | R::FeedingSwallowTrouble
        | R::BirthLow
        | R::FoodLocalWait
        | R::DataAgeProblem
        | R::DataTwinRecord
        | R::VisitOverdue
        | R::VisitLost
        | R::ReferralNoOutcome => &[],
    }
}

/// The newest visit after the rule last fired.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Newest {
    /// Which.
    pub visit: VisitId,
    /// Its day.
    pub on: NaiveDate,
    /// What the clearing test said; `None`: the rule was silenced there, or a same-day visit, at which no test counts.
    pub result: Option<TestResult>,
    /// What the test has to know and this visit does not.
    pub lacking: Vec<Needed>,
}

/// The way of an open follow-up to its end.
#[derive(Debug, Clone, PartialEq)]
pub struct ToClose {
    /// How its rule clears.
    pub way: Way,
    /// Whether the rule's test for young infants stands (thinness under 6 months has two).
    pub young: bool,
    /// The numbers of the test, by the protocol in force.
    pub numbers: Evidence,
    /// Where two clear visits are needed, at least so many days lie between them.
    pub days_apart: i32,
    /// The first clear visit of an unbroken row.
    pub first_clear_on: Option<NaiveDate>,
    /// The day from which the second counts.
    pub second_from: Option<NaiveDate>,
    /// A care outcome was told since the rule last fired.
    pub care_told: bool,
    /// The newest visit since the rule last fired; `None`: nobody was there since.
    pub newest: Option<Newest>,
}

/// What is still to happen before a follow-up closes, on the day of the judgement; `None` for a closed one. `visit` gives a visit of
/// the story by its key.
#[must_use]
pub fn to_close<'v>(
    follow_up: &FollowUp,
    child: &Child,
    judged: &Assessment,
    visit: impl Fn(VisitId) -> Option<&'v Visit>,
) -> Option<ToClose> {
    if !follow_up.is_open() {
        return None;
    }
    let protocol = &judged.now.protocol;
    let way = way(follow_up.rule);
    let progress = follow_up.progress;
    let days_apart = protocol.clearing.two_visits_days_apart;
    let last = judged.visits.last().filter(|last| last.visit != follow_up.last_fired_by);
    let newest = last.map(|last| {
        let tested = progress.last_test.filter(|test| test.visit == last.visit);
        let unclear = tested.is_none_or(|test| test.result != TestResult::Met);
        let lacking = visit(last.visit)
            .filter(|_| unclear)
            .map_or_else(Vec::new, |recorded| needs(follow_up.rule).iter().copied().filter(|needed| !needed.known(recorded)).collect());
        Newest { visit: last.visit, on: last.on, result: tested.map(|test| test.result), lacking }
    });
    Some(ToClose {
        way,
        young: follow_up.rule == RuleId::WastingYoung && judged.now.completed_months < protocol.rules.wasting_young.limits.under_months,
        numbers: numbers(follow_up, child, judged, protocol).into(),
        days_apart,
        first_clear_on: progress.first_clear_on,
        second_from: progress.first_clear_on.map(|first| add_days(first, days_apart)),
        care_told: progress.care_told,
        newest,
    })
}

/// The numbers of the clearing test, each with the key under which its sentence names it.
fn numbers(f: &FollowUp, child: &Child, judged: &Assessment, protocol: &Protocol) -> Vec<(K, Quantity)> {
    use RuleId as R;
    let rules = &protocol.rules;
    let z = |z: ZHundredths| Quantity::ZHundredths(z.hundredths());
    let mm = |mm: u32| Quantity::Millimetres(i64::from(mm));
    let aged_days = |days: i32| (K::Date, Quantity::On(add_days(child.born, days)));
    let aged_months = |months: u32| (K::Date, Quantity::On(add_months(child.born, months)));
    let told = |key: K| f.evidence.get(key).map(|quantity| (key, quantity.clone()));
    let now = &judged.now;
    match f.rule {
        R::WastingYoung if now.completed_months < rules.wasting_young.limits.under_months => {
            let limits = &rules.wasting_young.limits;
            vec![(K::Muac, mm(limits.muac_below_mm)), (K::Wlz, z(limits.below_z))]
        }
        R::WastingSevere | R::WastingModerate | R::WastingYoung => {
            let limits = &rules.wasting_severe.limits;
            vec![(K::Muac, mm(limits.clear_muac_from_mm)), (K::Wlz, z(limits.clear_z_from))]
        }
        R::WeightVeryLow => vec![(K::Limit, z(rules.weight_very_low.limits.below_z))],
        R::WeightLow => vec![(K::Limit, z(rules.weight_low.limits.below_z))],
        R::WeightLoss => {
            let above = match f.evidence.get(K::Weight) {
                Some(Quantity::Grams(lowest)) => Some((K::Weight, Quantity::Grams(lowest + protocol.tolerance.weight_g))),
                _ => None,
            };
            let from = add_days(f.last_fired_on, rules.weight_loss.limits.clear_after_days);
            above.into_iter().chain([(K::Date, Quantity::On(from))]).collect()
        }
        R::WeightStatic => {
            let limits = &rules.weight_static.limits;
            let apart = match now.completed_months {
                0..6 => limits.interval_days_under_6m,
                6..12 => limits.interval_days_6_to_11m,
                _ => limits.interval_days_from_12m,
            };
            vec![(K::Days, Quantity::Days(apart.least))]
        }
        R::WeightSlowGain => {
            let apart = (K::Days, Quantity::Days(rules.weight_slow_gain.limits.interval_days.least));
            std::iter::once(apart).chain(told(K::Floor)).chain(told(K::IntervalDays)).collect()
        }
        // A fall is told without its sign.
        R::WeightDrop => vec![(K::Limit, Quantity::ZHundredths(-rules.weight_drop.limits.change_z.hundredths()))],
        R::WeightDrift => match (f.evidence.get(K::ZBefore), f.evidence.get(K::Limit)) {
            (Some(Quantity::ZHundredths(start)), Some(Quantity::ZHundredths(fall))) => vec![(K::Waz, Quantity::ZHundredths(start - fall))],
            _ => Vec::new(),
        },
        R::BirthWeightNotRegained => told(K::BirthWeight).into_iter().collect(),
        R::BirthLow => vec![aged_days(rules.birth_low.limits.under_age_days)],
        R::LengthLow => vec![(K::Limit, z(rules.length_low.limits.below_z))],
        R::WeightHigh => vec![(K::Limit, z(rules.weight_high.limits.above_z))],
        R::SolidsEarly => vec![aged_days(protocol.ages.start_age_days)],
        R::LiquidsEarly => vec![aged_days(rules.liquids_early.limits.under_age_days)],
        R::MilkAnimalEarly => vec![aged_months(rules.milk_animal_early.limits.under_months)],
        R::TextureBehind => {
            let months = now.stage_months.unwrap_or(0);
            let steps = rules.texture_behind.limits.steps.iter().filter(|step| (step.from_months..step.to_months).contains(&months));
            steps.map(|step| step.below).max().map(|level| (K::TextureExpected, Quantity::Texture(level))).into_iter().collect()
        }
        R::MealsFew => told(K::Least).into_iter().collect(),
        R::MilkFew => {
            let least = if now.completed_months < 6 {
                Some(rules.milk_few.limits.least_under_6m)
            } else {
                protocol.stages.at(now.completed_months).map(|stage| u32::from(stage.milk_feeds_min_nbf))
            };
            least.map(|least| (K::Least, Quantity::Count(least))).into_iter().collect()
        }
        R::DiversityLow => vec![(K::Least, Quantity::Count(rules.diversity_low.limits.least))],
        R::FoodHoney => match f.evidence.get(K::Date) {
            Some(Quantity::On(day)) => vec![(K::Date, Quantity::On(add_days(*day, rules.food_honey.limits.watch_days)))],
            _ => Vec::new(),
        },
        R::FoodLocalWait => {
            let Some(Quantity::Codes(foods)) = f.evidence.get(K::Foods) else { return Vec::new() };
            let wait = |code: &String| protocol.food(&crate::food::FoodCode(code.clone())).map(|food| food.local_wait_months);
            foods.iter().filter_map(wait).max().map(aged_months).into_iter().collect()
        }
        R::AppetitePoor => vec![(K::Days, Quantity::Count(rules.appetite_poor.limits.least_days))],
        _ => Vec::new(),
    }
}
