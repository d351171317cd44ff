//! What an invented infant eats, how and when it began, and what goes amiss for a while. It knows no weight.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::Response;
use domain::food::Texture;
use domain::visit::FoodOffer;
use domain::visit::LowValue;
use domain::visit::ReadinessSign;
use domain::visit::SwallowTrouble;
use domain::visit::Visit;

use crate::story::dice::Dice;

/// Foods of the lake and the hills in the order families begin them: code, group, days after the first solids.
const TABLE: [(&str, FoodGroup, i32); 18] = [
    ("millet_porridge", FoodGroup::GrainsRoots, 0),
    ("pumpkin", FoodGroup::VitA, 4),
    ("beans", FoodGroup::PulsesNuts, 9),
    ("small_dried_fish", FoodGroup::Flesh, 14),
    ("mango", FoodGroup::VitA, 20),
    ("groundnut_paste", FoodGroup::PulsesNuts, 27),
    ("cassava", FoodGroup::GrainsRoots, 34),
    ("egg", FoodGroup::Eggs, 41),
    ("banana", FoodGroup::OtherFv, 49),
    ("green_leaves", FoodGroup::VitA, 57),
    ("tomato", FoodGroup::OtherFv, 66),
    ("yogurt", FoodGroup::Dairy, 78),
    ("liver", FoodGroup::Flesh, 92),
    ("rice", FoodGroup::GrainsRoots, 108),
    ("sesame_paste", FoodGroup::PulsesNuts, 126),
    ("wheat_bread", FoodGroup::GrainsRoots, 150),
    ("fish", FoodGroup::Flesh, 180),
    ("meat", FoodGroup::Flesh, 205),
];

/// Something that goes amiss for a while.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Amiss {
    /// Water besides breast milk.
    Water,
    /// Few kinds of food.
    FewGroups,
    /// No fish, meat or other source of iron.
    NoIron,
    /// Neither fruit nor vegetable.
    NoGreens,
    /// Too few meals.
    FewMeals,
    /// Textures of a younger baby.
    Smooth,
    /// Thin gruel.
    Watery,
    /// Sweet drinks.
    Sweet,
    /// A bottle with a teat.
    Bottle,
    /// Tea, or salt in the pot.
    LowValue,
    /// Sore breasts or worry about milk.
    BreastTrouble,
    /// Refuses food for days.
    Appetite,
}

impl Amiss {
    /// The youngest and the oldest age, in days, at which it happens.
    #[must_use]
    pub const fn ages(self) -> (i32, i32) {
        match self {
            Self::Water => (40, 175),
            Self::BreastTrouble => (5, 120),
            Self::Bottle => (60, 500),
            Self::FewMeals => (215, 640),
            Self::NoIron | Self::NoGreens => (225, 640),
            Self::FewGroups => (255, 640),
            Self::Smooth => (290, 520),
            Self::Watery => (200, 420),
            Self::Appetite => (240, 600),
            Self::Sweet | Self::LowValue => (300, 680),
        }
    }

    /// All, the commoner ones more than once.
    pub const USUAL: [Self; 15] = [
        Self::Water,
        Self::FewGroups,
        Self::FewGroups,
        Self::NoIron,
        Self::NoIron,
        Self::NoGreens,
        Self::FewMeals,
        Self::FewMeals,
        Self::Smooth,
        Self::Watery,
        Self::Sweet,
        Self::Bottle,
        Self::LowValue,
        Self::BreastTrouble,
        Self::Appetite,
    ];
}

/// How an infant is fed.
#[derive(Debug, Clone, PartialEq)]
pub struct Feeding {
    /// Age in days at the first solids.
    pub solids_from: i32,
    /// Days by which textures are behind or ahead of most.
    pub texture_shift: i32,
    /// Age in days at which breastfeeding stopped.
    pub weaned_at: Option<i32>,
    /// Whether foods begun earlier are told again at later visits.
    pub told_again: bool,
    /// What is amiss, from one age to another.
    pub amiss: Vec<(Amiss, i32, i32)>,
}

/// Ages on a day, in days and completed months.
#[derive(Debug, Clone, Copy)]
pub struct Ages {
    /// Days since birth.
    pub days: i32,
    /// Completed months, corrected for early birth.
    pub stage_months: u32,
}

impl Feeding {
    /// A usual family's: solids from about 6 months, corrected.
    pub fn usual(correction: i32, dice: &mut Dice) -> Self {
        let usually = 182 + dice.between(0, 9) + correction;
        Self {
            solids_from: if dice.chance(0.03) { usually - dice.between(20, 50) } else { usually },
            texture_shift: dice.between(-12, 6),
            weaned_at: dice.chance(0.05).then(|| dice.between(430, 680)),
            told_again: true,
            amiss: Vec::new(),
        }
    }

    /// Whether something is amiss at an age.
    #[must_use]
    pub fn is(&self, what: Amiss, age: i32) -> bool {
        self.amiss.iter().any(|&(found, from, to)| found == what && (from..=to).contains(&age))
    }

    /// Answers every question of a visit. `last` is the age at the visit before.
    pub fn answer(&self, v: &mut Visit, born: NaiveDate, ages: Ages, last: Option<i32>, dice: &mut Dice) {
        let age = ages.days;
        let breastfed = self.weaned_at.is_none_or(|at| age < at);
        let solids = age >= self.solids_from;
        v.breastfed = Some(breastfed);
        v.breastfeeding_trouble = breastfed.then(|| self.is(Amiss::BreastTrouble, age));
        v.formula_times = Some(0);
        v.animal_milk_times = Some(if breastfed { 0 } else { 3 });
        v.drink_yogurt_times = Some(0);
        v.spoon_yogurt_times = Some(0);
        let water = self.is(Amiss::Water, age) || age >= 185;
        v.other_drink = Some(water);
        v.breast_only = Some(breastfed && !solids && !water);
        v.sweet_drink = Some(self.is(Amiss::Sweet, age));
        v.bottle = Some(self.is(Amiss::Bottle, age));
        if age >= 150 {
            v.readiness_signs = Some(ReadinessSign::ALL.iter().copied().filter(|_| age >= 165 || dice.chance(0.6)).collect());
        }
        v.solids_yesterday = Some(solids);
        v.meals = Some(0);
        if solids {
            self.table(v, ages, breastfed, dice);
            v.foods = self.offers(age, last, dice);
            if last.is_none_or(|last| last < self.solids_from) {
                v.solids_started_on = Some(add_days(born, self.solids_from));
            }
        }
    }

    /// Meals, textures and groups of a child that eats.
    fn table(&self, v: &mut Visit, ages: Ages, breastfed: bool, dice: &mut Dice) {
        let age = ages.days;
        let least = if age < 273 { 2 } else { 3 };
        let meals = if self.is(Amiss::FewMeals, age) { least - 1 } else { least + dice.between(0, 1) + i32::from(!breastfed) };
        v.meals = u8::try_from(meals).ok();
        let level = if self.is(Amiss::Smooth, age) { 1 } else { usual_texture(ages, self.texture_shift) };
        v.texture_best = Texture::new(level);
        v.texture_usual = Texture::new(if self.is(Amiss::Watery, age) {
            0
        } else if level > 1 && dice.chance(0.4) {
            level - 1
        } else {
            level
        });
        v.iron_source = Some(false);
        v.unhealthy_food = Some(self.is(Amiss::Sweet, age));
        v.low_value = Some(if self.is(Amiss::LowValue, age) {
            BTreeSet::from([*dice.pick(&[LowValue::TeaCoffee, LowValue::Salt])])
        } else {
            BTreeSet::new()
        });
        v.swallow_trouble = Some(SwallowTrouble::None);
        v.appetite_poor_days = Some(if self.is(Amiss::Appetite, age) { 4 } else { 0 });
        v.groups = Some(self.groups(age, breastfed, dice));
    }

    /// The groups eaten yesterday: one food of most groups known so far.
    fn groups(&self, age: i32, breastfed: bool, dice: &mut Dice) -> BTreeSet<FoodGroup> {
        let begun: BTreeSet<FoodGroup> =
            TABLE.iter().filter(|(_, _, after)| age >= self.solids_from + after).map(|&(_, group, _)| group).collect();
        let mut eaten = begun.clone();
        // Of what is not eaten daily, some is left out on most days; five groups of eight remain from 8 months.
        for group in [FoodGroup::Dairy, FoodGroup::OtherFv, FoodGroup::Eggs] {
            if dice.chance(0.55) && eaten.len() > usize::from(breastfed).abs_diff(5) {
                eaten.remove(&group);
            }
        }
        if self.is(Amiss::NoIron, age) {
            eaten.remove(&FoodGroup::Flesh);
            eaten.extend(begun.iter().filter(|&&group| group != FoodGroup::Flesh));
        }
        if self.is(Amiss::NoGreens, age) {
            eaten.remove(&FoodGroup::VitA);
            eaten.remove(&FoodGroup::OtherFv);
            eaten.extend(begun.iter().filter(|group| matches!(group, FoodGroup::Eggs | FoodGroup::Flesh)));
        }
        if self.is(Amiss::FewGroups, age) {
            eaten.retain(|group| matches!(group, FoodGroup::GrainsRoots | FoodGroup::Flesh | FoodGroup::VitA));
        }
        if breastfed {
            eaten.insert(FoodGroup::BreastMilk);
        } else {
            eaten.insert(FoodGroup::Dairy);
        }
        eaten
    }

    /// Foods begun since the last visit, and one or two that go on.
    fn offers(&self, age: i32, last: Option<i32>, dice: &mut Dice) -> Vec<FoodOffer> {
        let since = last.unwrap_or(age - 14);
        let mut offers = Vec::new();
        for (code, _, after) in TABLE {
            let begun = self.solids_from + after;
            if begun > age {
                break;
            }
            let new = begun > since;
            if new || (self.told_again && dice.chance(0.12)) {
                let times = if new { dice.between(2, 6) } else { dice.between(1, 4) };
                let refused = new && dice.chance(0.1);
                offers.push(offer(code, times, if refused { Response::Refused } else { Response::Accepted }));
            }
        }
        offers
    }
}

/// The texture most babies of a stage age take without trouble, a little before or after.
fn usual_texture(ages: Ages, shift: i32) -> u8 {
    // A child that is ahead reads as one some days older; completed months decide near the limits of the stages.
    let ahead = if shift < -6 { 1 } else { 0 };
    match ages.stage_months + ahead {
        0..=6 => 1,
        7..=9 => 2,
        10..=13 => 3,
        _ => 4,
    }
}

/// A food offered so many times.
#[must_use]
pub fn offer(code: &str, times: i32, response: Response) -> FoodOffer {
    FoodOffer {
        code: FoodCode(code.to_owned()),
        offers: u16::try_from(times).unwrap_or(1),
        response: Some(response),
        unsafe_form: matches!(code, "fish" | "meat").then_some(false),
        signs: None,
        minutes_after: None,
        hold_lifted: false,
    }
}
