//! How a plot is told: a calm, healthy life up to some day, then what the plot says. It knows no rule.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::child::ChildStatus;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::draft::child::NewChild;
use domain::food::FoodCode;
use domain::food::Response;
use domain::ids::VisitId;
use domain::rule::RuleId;
use domain::units::Length;
use domain::units::Muac;
use domain::units::Weight;
use domain::visit::Contact;
use domain::visit::FoodOffer;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use domain::visit::Visit;

use crate::story::Closing;
use crate::story::Correction;
use crate::story::Exit;
use crate::story::PutRight;
use crate::story::Story;
use crate::story::Told;
use crate::story::cast::Cast;
use crate::story::dice::Dice;
use crate::story::growth::kg;
use crate::story::infant::Infant;
use crate::story::infant::correction;
use crate::story::plots;
use crate::story::plots::Plot;
use crate::story::plots::homes::Family;
use crate::story::slots;

/// A plot being told.
pub struct Telling {
    today: NaiveDate,
    /// Whom it is about.
    pub infant: Infant,
    registered_on: NaiveDate,
    child_facts: Vec<fn(&mut NewChild)>,
    family: Option<(&'static Family, bool)>,
    visits: Vec<Told>,
    corrections: Vec<Correction>,
    closings: Vec<Closing>,
    exit: Option<Exit>,
    put_right: Vec<PutRight>,
    /// Numbers of the children with the next plot and the one before.
    neighbours: Option<(u32, u32)>,
}

/// Tells a plot up to today.
pub fn tell(plot: &'static Plot, number: u32, cast: &Cast, today: NaiveDate) -> Story {
    let infant = Infant::aged(300, today, cast, Dice::of(number));
    let mut telling = Telling {
        today,
        infant,
        registered_on: today,
        child_facts: Vec::new(),
        family: None,
        visits: Vec::new(),
        corrections: Vec::new(),
        closings: Vec::new(),
        exit: None,
        put_right: Vec::new(),
        neighbours: plots::neighbours(number),
    };
    (plot.tell)(&mut telling);
    telling.into_story(plot, number)
}

impl Telling {
    /// A girl of this age in days, born at term.
    pub fn girl(&mut self, age: i32) -> &mut Self {
        self.aged(Sex::Female, age)
    }

    /// A boy of this age in days, born at term.
    pub fn boy(&mut self, age: i32) -> &mut Self {
        self.aged(Sex::Male, age)
    }

    fn aged(&mut self, sex: Sex, age: i32) -> &mut Self {
        self.infant.born = add_days(self.today, -age);
        self.infant.at_term(sex);
        self.infant.feeding.solids_from = 183;
        self.infant.feeding.texture_shift = 0;
        self.infant.feeding.weaned_at = None;
        self.infant.feeding.told_again = false;
        let track = &mut self.infant.track;
        (track.swing, track.scale_g) = (0.03, 10.0);
        self.channel(-0.3, -0.3);
        self.registered_on = Ord::max(add_days(self.infant.born, 10), add_days(Cast::started_on(self.today), 12));
        self
    }

    /// Grows in these channels of weight and length for age, with a birth weight to match.
    pub fn channel(&mut self, waz: f64, laz: f64) -> &mut Self {
        let track = &mut self.infant.track;
        (track.waz, track.laz, track.arm_z) = (waz, laz, 0.7 * waz);
        track.birth_weight_g = (kg(track.sex, 0, waz) * 100.0).round() * 10.0;
        self
    }

    /// With this birth weight.
    pub fn birth_weight(&mut self, grams: i32) -> &mut Self {
        self.infant.track.birth_weight_g = f64::from(grams);
        self
    }

    /// Born after so many days of pregnancy, by the card.
    pub fn gestation(&mut self, days: u16) -> &mut Self {
        self.infant.gestation_days = Some(days);
        self.infant.gestation_source = GestationSource::Card;
        self.infant.track.correction = correction(Some(days));
        self
    }

    /// Registered so many days ago.
    pub fn registered(&mut self, days_ago: i32) -> &mut Self {
        self.registered_on = self.day(days_ago);
        self
    }

    /// A child of this worker.
    pub fn with(&mut self, worker: usize, cast_village: usize) -> &mut Self {
        (self.infant.worker, self.infant.village) = (worker, cast_village);
        self
    }

    /// Changes facts of registration.
    pub fn fact(&mut self, change: fn(&mut NewChild)) -> &mut Self {
        self.child_facts.push(change);
        self
    }

    /// A child of this family; `linked`: known to share the home with the family's other children.
    pub fn of_family(&mut self, family: &'static Family, linked: bool) -> &mut Self {
        self.family = Some((family, linked));
        self.with(family.worker, family.village)
    }

    /// Calm visits at registration and at every slot since, up to so many days ago.
    pub fn calm_until(&mut self, days_ago: i32) -> &mut Self {
        let until = self.day(days_ago);
        let mut days = vec![self.registered_on];
        days.extend(slots::targets(self.infant.born).into_iter().filter(|&target| target > add_days(self.registered_on, 4)));
        let from = self.visits.last().map_or(NaiveDate::MIN, |told| add_days(told.visit.on, 4));
        for day in days.into_iter().filter(|&day| day >= from && day <= until) {
            let visit = self.usual(day);
            self.push(visit, None);
        }
        self
    }

    /// A visit so many days ago, as calm as the others but for what the plot changes.
    pub fn visit(&mut self, days_ago: i32, change: impl FnOnce(&mut Visit)) -> &mut Self {
        let mut visit = self.usual(self.day(days_ago));
        change(&mut visit);
        self.push(visit, None);
        self
    }

    /// The same with a note.
    pub fn noted(&mut self, days_ago: i32, note: &str, change: impl FnOnce(&mut Visit)) -> &mut Self {
        let mut visit = self.usual(self.day(days_ago));
        change(&mut visit);
        self.push(visit, Some(note.to_owned()));
        self
    }

    /// A call so many days ago, at which nothing else is asked.
    pub fn call(&mut self, days_ago: i32, change: impl FnOnce(&mut Visit)) -> &mut Self {
        let mut visit = Visit::empty(VisitId(self.infant.dice.key()), self.day(days_ago), Contact::Phone);
        change(&mut visit);
        self.push(visit, None);
        self
    }

    /// The last visit is told anew, so many days ago.
    pub fn corrected(&mut self, days_ago: i32, reason: &'static str, change: impl FnOnce(&mut Visit)) -> &mut Self {
        let on = self.day(days_ago);
        if let Some(told) = self.visits.last() {
            let mut becomes = told.visit.clone();
            change(&mut becomes);
            self.corrections.push(Correction { visit: self.visits.len() - 1, becomes, on, reason });
        }
        self
    }

    /// A supervisor closes a follow-up, so many days ago.
    pub fn closed(&mut self, days_ago: i32, rule: RuleId, category: &'static str, note: &'static str) -> &mut Self {
        let on = self.day(days_ago);
        self.closings.push(Closing { rule, on, category, note });
        self
    }

    /// A visit so many days ago at which nothing but a weight was written down.
    pub fn weighed(&mut self, days_ago: i32, weight_g: u32) -> &mut Self {
        let mut visit = Visit::empty(VisitId(self.infant.dice.key()), self.day(days_ago), Contact::Home);
        grams(&mut visit, weight_g);
        self.push(visit, None);
        self
    }

    /// Today the last visit is taken back.
    pub fn void(&mut self, reason: &'static str, note: &'static str) -> &mut Self {
        if let Some(visit) = self.visits.len().checked_sub(1) {
            self.put_right.push(PutRight::Void { visit, reason, note });
        }
        self
    }

    /// Today the last visit goes to the child of the next plot.
    pub fn move_to_next(&mut self, note: &'static str) -> &mut Self {
        if let (Some(visit), Some((to, _))) = (self.visits.len().checked_sub(1), self.neighbours) {
            self.put_right.push(PutRight::Move { visit, to, note });
        }
        self
    }

    /// Today the record is merged into that of the plot before.
    pub fn merge_into_the_one_before(&mut self, note: &'static str) -> &mut Self {
        if let Some((_, into)) = self.neighbours {
            self.put_right.push(PutRight::Merge { into, note });
        }
        self
    }

    /// The child leaves, so many days ago.
    pub fn leaves(&mut self, days_ago: i32, status: ChildStatus, note: Option<&'static str>) -> &mut Self {
        let by_supervisor = status == ChildStatus::Died;
        self.exit = Some(Exit { status, on: self.day(days_ago), note, by_supervisor });
        self
    }

    /// The child reaches the end of its last slot; its age must be past that today.
    pub fn grows_out(&mut self) -> &mut Self {
        let on = add_days(slots::last_day(self.infant.born), 1);
        self.exit = Some(Exit { status: ChildStatus::AgedOut, on, note: None, by_supervisor: false });
        self
    }

    fn day(&self, days_ago: i32) -> NaiveDate {
        add_days(self.today, -days_ago)
    }

    fn usual(&mut self, on: NaiveDate) -> Visit {
        let last = self.visits.last().map(|told| told.visit.on);
        let mut visit = self.infant.visit(on, last);
        if last.is_some_and(|last| days_between(last, on) < 12) {
            visit.length = None;
        }
        visit
    }

    fn push(&mut self, visit: Visit, note: Option<String>) {
        let mut told = self.infant.told(visit, self.today);
        told.note = note;
        told.entered.days_later = 0;
        self.visits.push(told);
    }

    fn into_story(mut self, plot: &'static Plot, number: u32) -> Story {
        let mut child = self.infant.registration();
        child.birth_day_known = true;
        child.birth_weight = Weight::from_grams(self.infant.track.birth_weight_g as u32).ok();
        child.severe_eczema = Some(false);
        let mut home = None;
        if let Some((family, linked)) = self.family {
            family.settle(&mut child, plots::round_of(number));
            home = linked.then(|| family.home(plots::round_of(number)));
        }
        for change in self.child_facts {
            change(&mut child);
        }
        Story {
            number,
            id: self.infant.id,
            code: self.infant.code,
            plot: Some(plot.name),
            child,
            home,
            registered_on: self.registered_on,
            worker: self.infant.worker,
            village: self.infant.village,
            moves: Vec::new(),
            visits: self.visits,
            corrections: self.corrections,
            closings: self.closings,
            exit: self.exit,
            put_right: self.put_right,
        }
    }
}

/// Sets the weight.
pub fn grams(v: &mut Visit, grams: u32) {
    v.weight = Weight::from_grams(grams).ok();
}

/// Sets the length.
pub fn mm(v: &mut Visit, mm: u16) {
    v.length = Length::from_mm(mm).ok();
}

/// Sets the arm circumference.
pub fn arm(v: &mut Visit, mm: u16) {
    v.muac = Muac::from_mm(mm).ok();
}

/// What became of an earlier follow-up.
pub fn outcome(v: &mut Visit, rule: RuleId, outcome: Outcome) {
    v.outcomes.push(ToldOutcome { rule, outcome });
}

/// A food that is put on the list of the visit in place of what stood there for it.
pub fn food(v: &mut Visit, code: &str, change: impl FnOnce(&mut FoodOffer)) {
    v.foods.retain(|offered| offered.code != FoodCode(code.to_owned()));
    let mut offered = crate::story::feeding::offer(code, 1, Response::Accepted);
    change(&mut offered);
    v.foods.push(offered);
}
