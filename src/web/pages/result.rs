//! What to do now, after a visit: the judgement's findings as the page says them.

use actix_web::web;
use domain::assess::VisitAssessment;
use domain::calendar::completed_months;
use domain::draft::questions::LastTime;
use domain::draft::unchecked::nothing_checked;
use domain::draft::unchecked::unchecked;
use domain::evidence::Evidence;
use domain::feeding::thickness::thicker_helps;
use domain::follow_up::EventKind;
use domain::follow_up::FollowUp;
use domain::follow_up::scale_error;
use domain::protocol::Protocol;
use domain::protocol::Stage;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::rule::Theme;
use domain::visit::Outcome;
use domain::visit::Visit;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::i18n::scale;
use crate::service::household;
use crate::service::meals;
use crate::store::visits::VisitRecord;
use crate::view::child::sentence;
use crate::view::emergency;
use crate::view::emergency::Kind;
use crate::view::household::Also;
use crate::view::layout;
use crate::view::result as view;
use crate::view::result::Advice;
use crate::view::result::Found;
use crate::view::result::NextVisit;
use crate::view::result::ResultPage;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::household::also;
use crate::web::pages::talk::words_of;
use crate::web::pages::visit::code_of;
use crate::web::pages::visit::desk::Danger;
use crate::web::pages::visit::desk::Desk;

/// `GET /children/{code}/visits/{seq}/now`
///
/// # Errors
/// [`Failure`].
pub async fn show(path: web::Path<(String, i64)>, signed: Signed) -> Result<Html, Failure> {
    let (code, seq) = path.into_inner();
    let desk = Desk::open(&signed, &code_of(&code)?).await?;
    let mut gathered = Gathered::of(&desk, seq, None)?;
    let on = gathered.record.visit.on;
    let others = household::others(&signed.context(), &desk.file, on).await?;
    gathered.here = also(&signed, &others, signed.visitor.today);
    let page = gathered.page(&desk);
    let title = page.title();
    let mut shell = signed.shell(&title);
    shell.urgent = page.worst() == Some(Class::Now);
    Ok(Html::ok(layout::page(&shell, view::body(&page))))
}

/// What stands above a form whose danger was saved before its faults were mended. `least`: how urgent the ticks are at the least, for
/// what the judgement cannot know.
///
/// # Errors
/// [`Failure::NotFound`] when there is no such visit.
pub fn block(desk: &Desk<'_>, seq: i64, least: Option<Class>) -> Result<Option<Danger>, Failure> {
    let gathered = Gathered::of(desk, seq, least)?;
    let page = gathered.page(desk);
    Ok(view::block(&page).zip(page.worst()).map(|(block, class)| Danger { class, block }))
}

/// What the page borrows.
struct Gathered<'a> {
    record: &'a VisitRecord,
    found: Vec<Found>,
    still_open: Vec<Found>,
    closed: Vec<String>,
    here: Vec<Also>,
    agreed: Vec<String>,
    advice: Option<Advice>,
    kinds: Vec<Kind>,
    seen: Vec<String>,
    gain: Option<(i64, chrono::NaiveDate)>,
    unchecked: Vec<domain::draft::unchecked::Unchecked>,
    nothing_checked: bool,
}

impl<'a> Gathered<'a> {
    fn of(desk: &'a Desk<'_>, seq: i64, least: Option<Class>) -> Result<Self, Failure> {
        let w = desk.signed.words();
        let record = desk.file.visit(seq).ok_or(Failure::NotFound)?;
        let visit = &record.visit;
        let judged = desk.file.assessment.visit(visit.id);
        let mut found = judged.map_or_else(Vec::new, |judged| findings(desk, judged));
        let dangers =
            |judged: &VisitAssessment| judged.standing().iter().any(|f| matches!(f.rule.theme(), Theme::Danger | Theme::Reaction));
        // A reaction whose food was forgotten stands in no finding.
        if let Some(class) = least.filter(|_| !judged.is_some_and(dangers)) {
            found.insert(0, told_only(w, class));
        }
        let standing: Vec<_> = judged.map_or_else(Vec::new, |j| j.standing().iter().map(|f| f.rule).collect());
        let still_open = desk
            .file
            .assessment
            .open()
            .into_iter()
            .filter(|f| !standing.contains(&f.rule))
            .map(|f| Found {
                class: f.class,
                name: codes::rule_name(w, f.rule),
                why: explain(f.rule, &f.evidence, w, &|code| desk.food_name(code)),
                scale: beside(desk, f.rule, &f.evidence, f.last_fired_on, &f.protocol),
                act: codes::rule_do(w, f.rule),
                due: Some(f.due_on),
                told: answered(w, f),
                about_data: f.rule.theme() == Theme::Data,
            })
            .collect();
        let closed = judged.map_or_else(Vec::new, |judged| {
            let closed = judged.events.iter().filter(|e| matches!(e.kind, EventKind::Closed(_)));
            closed.map(|e| codes::rule_name(w, e.rule)).collect()
        });
        let questions = desk.questions(visit.on, visit.id);
        Ok(Self {
            record,
            found,
            still_open,
            closed,
            here: Vec::new(),
            agreed: record.talk.agreed.values().map(|step| words_of(step, &desk.signed.visitor.protocols, w)).collect(),
            advice: advice(desk, visit, judged),
            kinds: Kind::of(visit),
            seen: emergency::seen(w, visit, &|code| desk.food_name(code)),
            gain: gain(&questions.last, visit),
            unchecked: unchecked(visit, &questions),
            nothing_checked: nothing_checked(visit, &questions),
        })
    }

    fn page<'p>(&'p self, desk: &'p Desk<'_>) -> ResultPage<'p> {
        let record = &desk.file.record;
        let urgent = self.found.iter().any(|f| f.class == Class::Now);
        ResultPage {
            w: desk.signed.words(),
            name: desk.file.called(),
            sex: record.facts.sex,
            code: &record.code,
            born: record.facts.born,
            today: desk.signed.visitor.today,
            seq: self.record.entry_seq,
            visit: &self.record.visit,
            found: &self.found,
            still_open: &self.still_open,
            closed: &self.closed,
            emergency: urgent.then(|| desk.emergency(self.kinds.clone(), self.seen.clone())),
            seen: &self.seen,
            unchecked: &self.unchecked,
            nothing_checked: self.nothing_checked,
            gain: self.gain,
            tolerance_g: desk.signed.visitor.protocols.on(self.record.visit.on).tolerance.weight_g,
            corrected_by_days: desk.file.assessment.now.corrected_by_days,
            here: &self.here,
            agreed: &self.agreed,
            advice: self.advice.as_ref(),
            next: desk.file.assessment.next_visit.map(|slot| NextVisit { opens: slot.window.opens(), closes: slot.window.closes() }),
            number: desk.signed.visitor.settings.emergency_number.as_deref(),
            area: &desk.file.area_name,
            worker: &desk.signed.actor.name,
        }
    }
}

fn findings(desk: &Desk<'_>, judged: &VisitAssessment) -> Vec<Found> {
    let w = desk.signed.words();
    let due = |rule| desk.file.assessment.open().into_iter().find(|f| f.rule == rule).map(|f| f.due_on);
    judged
        .standing()
        .into_iter()
        .map(|finding| Found {
            class: finding.class,
            name: codes::rule_name(w, finding.rule),
            why: explain(finding.rule, &finding.evidence, w, &|code| desk.food_name(code)),
            scale: beside(desk, finding.rule, &finding.evidence, judged.on, &judged.protocol),
            act: codes::rule_do(w, finding.rule),
            due: due(finding.rule),
            told: None,
            about_data: finding.rule.theme() == Theme::Data,
        })
        .collect()
}

/// What a health worker or somebody who may decide made of it since it was last seen. That the family did not go is no answer.
fn answered(w: &Words, follow_up: &FollowUp) -> Option<(String, chrono::NaiveDate)> {
    let last = follow_up.outcomes.last().filter(|_| follow_up.outcome_since_fired)?;
    let answer = !matches!(last.outcome, Outcome::Refused | Outcome::NotReached);
    answer.then(|| (codes::outcome(w, last.outcome), last.on))
}

/// The error of measuring beside a finding of a day.
fn beside(desk: &Desk<'_>, rule: RuleId, evidence: &Evidence, on: chrono::NaiveDate, protocol: &Protocol) -> Option<String> {
    let error = scale_error(rule, evidence, &desk.file.record.facts, on, protocol)?;
    Some(scale::sentences(desk.signed.words(), &error).join(" "))
}

fn told_only(w: &Words, class: Class) -> Found {
    Found {
        class,
        name: w.say("result-told"),
        why: w.say("result-told-why"),
        scale: None,
        act: String::new(),
        due: None,
        told: None,
        about_data: false,
    }
}

/// Grams since the latest earlier weight; nothing where the feet are swollen, since water is weighed too.
fn gain(last: &LastTime, visit: &Visit) -> Option<(i64, chrono::NaiveDate)> {
    let (before, since) = last.weight?;
    let now = visit.weight.filter(|_| visit.oedema != Some(true))?;
    Some((i64::from(now.grams()) - i64::from(before.grams()), since))
}

fn advice(desk: &Desk<'_>, visit: &Visit, judged: Option<&VisitAssessment>) -> Option<Advice> {
    let w = desk.signed.words();
    let facts = &desk.file.record.facts;
    let stages = &desk.protocol.stages;
    let by_age = || completed_months(domain::growth::corrected_birth_date(facts, visit.on), visit.on).and_then(|m| stages.at(m));
    let stage = judged.and_then(|j| j.stage).and_then(|id| stages.get(id)).or_else(by_age)?;
    let breastfed = visit.breastfed.or_else(|| LastTime::of(&desk.visits, visit.on).breastfed);
    let texture = stage.texture_expected.map(|(from, _)| from);
    let next = desk.next_foods();
    Some(Advice {
        stage: codes::stage(w, stage.id.code()),
        texture,
        meals: if breastfed == Some(false) { stage.meals_expected_nbf } else { stage.meals_expected_bf },
        snacks: stage.snacks,
        amount: amount(w, stage),
        breastfed,
        thickness: thickness(desk, visit, stage),
        new_food: texture.and(next.first()).map(|food| (desk.food_name(food.code.as_str()), food.group)),
    })
}

/// What the thickness of the food changes, reckoned with what was known at the visit.
fn thickness(desk: &Desk<'_>, visit: &Visit, stage: &Stage) -> Option<String> {
    let told = meals::told(&desk.file, visit.on);
    let meals = told.by_thickness(&desk.protocol, stage).ok()?;
    let helps = thicker_helps(&meals, stage, told.usual)?;
    Some(sentence(desk.signed.words(), &helps, meals[0].breastfed))
}

/// An amount a meal in words, and as a share of a cup for the drawing (a tablespoon is 15 ml, the cup 250 ml).
fn amount(w: &Words, stage: &Stage) -> Option<(String, f64)> {
    let spoons = stage.tablespoons.map(|(from, to)| w.say_with("result-spoons", args!["from" => from, "to" => to]));
    let cups = stage.cups.map(|(from, to)| {
        if (from - to).abs() < f64::EPSILON {
            w.say_with("result-cup", args!["share" => share(w, to)])
        } else {
            w.say_with("result-cup-range", args!["from" => share(w, from), "to" => share(w, to)])
        }
    });
    let drawn = stage.cups.map(|(_, to)| to).or_else(|| stage.tablespoons.map(|(_, to)| f64::from(to) * 15.0 / 250.0))?;
    let words = match (spoons, cups) {
        (Some(spoons), Some(cups)) => w.say_with("result-spoons-then-cup", args!["spoons" => spoons, "cups" => cups]),
        (spoons, cups) => spoons.or(cups)?,
    };
    Some((words, drawn))
}

/// A share of a cup as people write it.
fn share(w: &Words, cups: f64) -> String {
    [(0.25, "¼"), (0.5, "½"), (0.75, "¾")]
        .iter()
        .find(|(value, _)| (value - cups).abs() < 0.01)
        .map_or_else(|| format::number(w, cups, usize::from(cups.fract() > 0.01)), |(_, text)| (*text).to_owned())
}
