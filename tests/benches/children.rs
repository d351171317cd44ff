//! Ten-visit children for the benches: ordinary ones of many kinds, the same in every run. It measures nothing.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::child::Child;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::food::Texture;
use domain::growth::ReferenceTable;
use domain::growth::table_value;
use domain::ids::VisitId;
use domain::rule::RuleId;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::DangerSign;
use domain::visit::FoodOffer;
use domain::visit::LowValue;
use domain::visit::Outcome;
use domain::visit::SwallowTrouble;
use domain::visit::ToldOutcome;
use domain::visit::Visit;

/// A child with its visits and the day it is judged on.
pub struct Story {
    pub child: Child,
    pub visits: Vec<Visit>,
    pub as_of: NaiveDate,
}

/// Ages of the visits in days: about the slots of the protocol, with one early and one late.
const AGES: [i32; 10] = [9, 43, 99, 152, 186, 214, 246, 279, 330, 371];

/// Foods of the shipped protocol that are offered from six months on.
const FOODS: [&str; 10] =
    ["animal_milk", "beans", "cassava", "egg", "groundnut_paste", "mango", "millet_porridge", "pumpkin", "small_dried_fish", "wheat_bread"];

/// Numbers from a seed: a linear congruential generator (constants by Knuth, MMIX).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % below
    }

    fn one_in(&mut self, many: u64) -> bool {
        self.roll(many) == 0
    }

    /// An answer; in one of twelve cases the question was left out.
    fn answer<T>(&mut self, make: impl FnOnce(&mut Self) -> T) -> Option<T> {
        if self.one_in(12) { None } else { Some(make(self)) }
    }

    fn small(&mut self, below: u64) -> u8 {
        u8::try_from(self.roll(below)).expect("small")
    }

    /// About a bell of standard deviation 1 (twelve even draws, central limit).
    fn bell(&mut self) -> f64 {
        (0..12).map(|_| f64::from(u32::try_from(self.roll(1_000)).expect("small")) / 1_000.0).sum::<f64>() - 6.0
    }
}

/// So many different children, each with ten visits, as in a programme where many are undernourished.
pub fn many(count: u64) -> Vec<Story> {
    (0..count).map(|number| one(&mut Dice(number.wrapping_mul(0x9e37_79b9_7f4a_7c15)))).collect()
}

fn one(dice: &mut Dice) -> Story {
    let born = add_days(NaiveDate::from_ymd_opt(2025, 1, 10).expect("a date"), i32::from(dice.small(200)));
    let child = Child {
        sex: if dice.one_in(2) { Sex::Female } else { Sex::Male },
        born,
        birth_day_known: true,
        gestation_days: dice.answer(|dice| if dice.one_in(9) { 230 + u16::from(dice.small(28)) } else { 260 + u16::from(dice.small(30)) }),
        birth_weight: dice.answer(|dice| 2_300 + u32::from(dice.small(150)) * 10).and_then(|grams| Weight::from_grams(grams).ok()),
        registered_on: add_days(born, i32::from(dice.small(9))),
        ever_breastfed: Some(true),
        severe_eczema: Some(false),
        known_food_allergy: None,
        status: ChildStatus::Active,
        looks_like_another: false,
    };
    let family = Family {
        weight_z: dice.bell() - 0.8,
        length_z: dice.bell() - 1.0,
        arm_mm: dice.bell() * 9.0 + 138.0,
        gives: [dice.one_in(8), dice.one_in(8), dice.one_in(5), dice.one_in(6), dice.one_in(12), dice.one_in(15)],
        few_foods: dice.one_in(3),
    };
    let visits = AGES.into_iter().zip(1..).map(|(age, number)| visit(&child, &family, number, age, dice)).collect();
    Story { visits, as_of: add_days(born, AGES[9] + i32::from(dice.small(30))), child }
}

/// What stays much the same from visit to visit: the lines a child grows along, and what the family is used to.
struct Family {
    weight_z: f64,
    length_z: f64,
    arm_mm: f64,
    /// Bottle, sweet drinks, tea, water early, formula, no breast.
    gives: [bool; 6],
    few_foods: bool,
}

fn visit(child: &Child, family: &Family, number: u128, age: i32, dice: &mut Dice) -> Visit {
    let contact = if dice.one_in(5) { Contact::Clinic } else { Contact::Home };
    let age = age + i32::from(dice.small(7));
    let mut visit = Visit::empty(VisitId(number), add_days(child.born, age), contact);
    // Most lines fall a little in the second half-year.
    let faltering = f64::from(age - 180).clamp(0.0, 200.0) / 400.0;
    let at = |table, z| table_value(table, child.sex, age, z).expect("an age of the table");
    let kg = at(ReferenceTable::WeightForAge, family.weight_z - faltering + dice.bell() * 0.15);
    let cm = at(ReferenceTable::LengthForAge, family.length_z - faltering / 2.0 + dice.bell() * 0.1);
    visit.weight = dice.answer(|_| Weight::from_grams((kg * 100.0) as u32 * 10).ok()).flatten();
    visit.length = dice.answer(|_| Length::from_mm((cm * 10.0) as u16).ok()).flatten();
    visit.muac = dice.answer(|dice| (family.arm_mm + dice.bell() * 2.0) as u16).and_then(|mm| Muac::from_mm(mm).ok());
    visit.oedema = Some(false);
    visit.danger_signs = dice.answer(|dice| if dice.one_in(15) { [DangerSign::FeverOrCold].into() } else { [].into() });
    visit.ill = dice.answer(|dice| dice.one_in(6));
    milk(&mut visit, family, age, dice);
    visit.solids_yesterday = dice.answer(|dice| age > 180 || (age > 120 && dice.one_in(12)));
    if age > 180 {
        meals(&mut visit, family, age, dice);
    }
    // Every third visit tells what became of an earlier follow-up, every fourth refers.
    if dice.one_in(3) {
        let rule = [RuleId::WeightSlowGain, RuleId::DangerOther, RuleId::WeightLow, RuleId::ReactionMild][usize::from(dice.small(4))];
        visit.outcomes.push(ToldOutcome { rule, outcome: Outcome::ALL[usize::from(dice.small(8))] });
    }
    if dice.one_in(4) {
        visit.referrals.insert(RuleId::WeightLow);
    }
    visit
}

fn milk(visit: &mut Visit, family: &Family, age: i32, dice: &mut Dice) {
    let [bottle, sweet, tea, water, formula, no_breast] = family.gives;
    visit.breastfed = dice.answer(|_| !(no_breast && age > 90));
    visit.breastfeeding_trouble = dice.answer(|dice| age < 100 && dice.one_in(8));
    visit.breast_only = dice.answer(|_| age < 180 && !water && !formula);
    visit.formula_times = dice.answer(|_| if formula || (no_breast && age > 90) { 5 } else { 0 });
    visit.animal_milk_times = dice.answer(|dice| if age > 270 && dice.one_in(3) { 1 } else { 0 });
    visit.other_drink = dice.answer(|_| water);
    visit.bottle = dice.answer(|_| bottle);
    visit.sweet_drink = dice.answer(|_| sweet && age > 150);
    visit.low_value = dice.answer(|_| if tea && age > 200 { [LowValue::TeaCoffee].into() } else { [].into() });
    visit.swallow_trouble = dice.answer(|dice| if dice.one_in(60) { SwallowTrouble::Repeated } else { SwallowTrouble::None });
}

fn meals(visit: &mut Visit, family: &Family, age: i32, dice: &mut Dice) {
    let later = u8::from(age > 270);
    visit.meals = dice.answer(|dice| 2 + later + dice.small(2) - u8::from(dice.one_in(6)));
    visit.texture_usual = dice.answer(|dice| 1 + later + dice.small(2)).and_then(Texture::new);
    visit.texture_best = dice.answer(|dice| 2 + later + dice.small(2)).and_then(Texture::new);
    let eaten = if family.few_foods { 2 } else { 5 };
    visit.groups = dice.answer(|dice| FoodGroup::ALL.iter().copied().filter(|_| !dice.one_in(eaten)).collect());
    visit.iron_source = dice.answer(|dice| dice.one_in(3));
    visit.appetite_poor_days = dice.answer(|dice| if dice.one_in(15) { 4 } else { 0 });
    let first = usize::from(dice.small(7));
    for code in &FOODS[first..first + 3] {
        let response = dice.answer(|dice| match dice.roll(60) {
            0 => Response::Reaction,
            1..10 => Response::Refused,
            _ => Response::Accepted,
        });
        let reacted = response == Some(Response::Reaction);
        visit.foods.push(FoodOffer {
            code: FoodCode((*code).to_owned()),
            offers: 1 + u16::from(dice.small(3)),
            response,
            unsafe_form: dice.answer(|dice| dice.one_in(20)),
            signs: reacted.then(|| [ReactionSign::RashLocal].into()),
            minutes_after: reacted.then_some(30),
            hold_lifted: false,
        });
    }
}
