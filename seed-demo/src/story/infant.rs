//! One invented infant: facts of birth, growth and food put together into what a worker finds on a day. It knows no plan of visits.

use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::completed_months;
use domain::calendar::days_between;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::child_code::ChildCode;
use domain::counsel::Talk;
use domain::draft::child::NewChild;
use domain::growth::TERM_DAYS;
use domain::ids::ChildId;
use domain::ids::VisitId;
use domain::units::HeadCircumference;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::Visit;

use crate::story::Entered;
use crate::story::Told;
use crate::story::cast::Cast;
use crate::story::cast::VILLAGES;
use crate::story::dice::Dice;
use crate::story::feeding::Ages;
use crate::story::feeding::Feeding;
use crate::story::growth::Track;
use crate::story::names;

/// An infant whose life is being told.
pub struct Infant {
    /// Key.
    pub id: ChildId,
    /// Code in links.
    pub code: ChildCode,
    /// Birth date.
    pub born: NaiveDate,
    /// Days of pregnancy.
    pub gestation_days: Option<u16>,
    /// How that is known.
    pub gestation_source: GestationSource,
    /// Growth.
    pub track: Track,
    /// Food.
    pub feeding: Feeding,
    /// Number of the worker.
    pub worker: usize,
    /// Number of the village.
    pub village: usize,
    /// Its chances.
    pub dice: Dice,
}

impl Infant {
    /// A healthy infant of this age, born at term or, rarely, a little early.
    pub fn aged(days: i32, today: NaiveDate, cast: &Cast, mut dice: Dice) -> Self {
        let (id, code) = (ChildId(dice.key()), ChildCode::from_random(dice.bits()));
        let worker = cast.worker(&mut dice);
        let sex = if dice.chance(0.49) { Sex::Female } else { Sex::Male };
        let (gestation_days, gestation_source) = gestation(&mut dice);
        let correction = correction(gestation_days);
        let track = Track::healthy(sex, correction, &mut dice);
        let feeding = Feeding::usual(correction, &mut dice);
        let village = cast.village_of(worker);
        Self { id, code, born: add_days(today, -days), gestation_days, gestation_source, track, feeding, worker, village, dice }
    }

    /// Makes it one born at term, of this sex, growing healthily.
    pub fn at_term(&mut self, sex: Sex) {
        self.gestation_days = Some(TERM_DAYS);
        self.gestation_source = GestationSource::Card;
        self.track = Track::healthy(sex, 0, &mut self.dice);
        self.feeding = Feeding::usual(0, &mut self.dice);
    }

    /// Age in days on a day.
    #[must_use]
    pub fn age(&self, on: NaiveDate) -> i32 {
        days_between(self.born, on)
    }

    /// Ages as the feeding stages count them.
    #[must_use]
    pub fn ages(&self, on: NaiveDate) -> Ages {
        let due = add_days(self.born, self.track.correction);
        Ages { days: self.age(on), stage_months: completed_months(due, on).unwrap_or(0) }
    }

    /// A visit at home with everything measured and asked, as this infant's life has it on that day.
    pub fn visit(&mut self, on: NaiveDate, last: Option<NaiveDate>) -> Visit {
        let (age, ages) = (self.age(on), self.ages(on));
        let last = last.map(|last| self.age(last));
        let dice = &mut self.dice;
        let mut v = Visit::empty(VisitId(dice.key()), on, Contact::Home);
        v.weight = Weight::from_grams(self.track.weighed(age, dice)).ok();
        v.length = Length::from_mm(self.track.measured(age, dice)).ok();
        if age >= 184 {
            v.muac = Muac::from_mm(self.track.taped(age, dice)).ok();
            v.oedema = Some(false);
        } else if age >= 42 && dice.chance(0.2) {
            // A head grows from about 35 to 43 cm in half a year, from memory.
            v.head = HeadCircumference::from_mm(u16::try_from(358 + age * 5 / 12).unwrap_or(400)).ok();
        }
        v.danger_signs = Some(BTreeSet::new());
        v.ill = Some(false);
        self.feeding.answer(&mut v, self.born, ages, last, dice);
        v
    }

    /// How a contact was entered: the same day, and rarely up to three days later.
    pub fn entered(&mut self, on: NaiveDate, today: NaiveDate) -> Entered {
        let late = if self.dice.chance(0.06) { self.dice.between(1, 3) } else { 0 };
        let days_later = u8::try_from(late.min(days_between(on, today))).unwrap_or(0);
        Entered { days_later, minute: u16::try_from(self.dice.between(7 * 60 + 30, 17 * 60 + 30)).unwrap_or(720) }
    }

    /// A contact entered as usual, without a note.
    pub fn told(&mut self, visit: Visit, today: NaiveDate) -> Told {
        let entered = self.entered(visit.on, today);
        Told { visit, talk: Talk::default(), note: None, entered }
    }

    /// The facts of registration, with an invented name and family.
    pub fn registration(&mut self) -> NewChild {
        let dice = &mut self.dice;
        let house = names::house(dice);
        let given = names::given(dice);
        let caregiver = format!("{} {house}", names::given(dice));
        let birth_day_known = !dice.chance(0.03) || self.track.correction > 0;
        NewChild {
            known_as: dice.chance(0.1).then(|| given.chars().take(4).collect()),
            name: format!("{given} {house}"),
            sex: self.track.sex,
            born: self.born,
            birth_day_known,
            birth_weight: if self.track.correction > 0 || dice.chance(0.9) {
                Weight::from_grams(self.track.birth_weight_g as u32).ok()
            } else {
                None
            },
            gestation_days: self.gestation_days,
            gestation_source: self.gestation_source,
            consent_by: caregiver.clone(),
            caregiver,
            relation: Some(names::relation(dice).to_owned()),
            phone: dice.chance(0.72).then(|| names::phone(dice)),
            directions: Some(names::way(dice).to_owned()),
            area: VILLAGES[self.village].code.to_owned(),
            ever_breastfed: Some(true),
            early_breastfeeding: dice.chance(0.85).then(|| dice.chance(0.7)),
            first_days_milk_only: dice.chance(0.85).then(|| dice.chance(0.75)),
            severe_eczema: dice.chance(0.9).then_some(false),
            food_allergy: dice.chance(0.9).then_some(false),
            returns_to_work_on: None,
            other_child: false,
        }
    }
}

/// How long the pregnancy was, and how that is known: 6 % a little early, one in six not known.
fn gestation(dice: &mut Dice) -> (Option<u16>, GestationSource) {
    if dice.chance(0.17) {
        return (None, GestationSource::Unknown);
    }
    let source = *dice.pick(&[GestationSource::Card, GestationSource::Card, GestationSource::LastPeriod, GestationSource::Scan]);
    let days = if dice.chance(0.06) { dice.between(236, 258) } else { dice.between(262, 289) };
    (u16::try_from(days).ok(), source)
}

/// Days by which ages are corrected.
pub fn correction(gestation_days: Option<u16>) -> i32 {
    gestation_days.filter(|&days| days < 259).map_or(0, |days| i32::from(TERM_DAYS) - i32::from(days))
}
