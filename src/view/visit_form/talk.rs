//! What was agreed last time, asked first; and near the end what to say and what to agree now. Lines about danger stand open, the
//! others one tap away. It knows words and choices as they were given to it, and chooses none.

use chrono::NaiveDate;
use domain::counsel::Place;
use domain::counsel::StepAnswer;
use domain::counsel::StepId;
use domain::draft::visit::talk::step_field;
use domain::draft::visit::talk::told_field;
use domain::draft::visit::talk::way_field;
use domain::draft::visit::talk::words_field;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Ask;
use crate::view::parts::Choice;
use crate::view::parts::Field;
use crate::view::parts::part;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::fold;

/// A step that was agreed before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AskedStep {
    /// Which.
    pub id: StepId,
    /// The day on which it was agreed.
    pub agreed_on: NaiveDate,
    /// The step in words.
    pub words: String,
}

/// A coaching line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// Its key.
    pub key: String,
    /// Its words.
    pub words: String,
    /// About danger.
    pub danger: bool,
}

/// What the page asks and offers.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TalkPart {
    /// Steps agreed last time.
    pub last: Vec<AskedStep>,
    /// Older ones that nobody asked about.
    pub earlier: Vec<AskedStep>,
    /// Lines to tell, danger first.
    pub lines: Vec<Line>,
    /// What a step can be taken from: value and words.
    pub choices: Vec<(String, String)>,
}

/// What became of the steps of last time.
pub(super) fn asked(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let talk = f.talk;
    if talk.last.is_empty() && talk.earlier.is_empty() {
        return Markup::default();
    }
    part(
        "agreed",
        &w.say("talk-last"),
        &html! {
            @for line in &talk.last { (step(f, ask, line)) }
            @if !talk.earlier.is_empty() {
                (fold(f, &w.say_with("talk-earlier", args!["count" => talk.earlier.len()]), &html! {
                    @for line in &talk.earlier { (step(f, ask, line)) }
                }))
            }
        },
    )
}

fn step(f: &VisitForm<'_>, ask: Ask<'_>, line: &AskedStep) -> Markup {
    let w = f.w;
    let (told, way) = (told_field(line.id), way_field(line.id));
    let choice = Choice::one(&told, &line.words)
        .hint(w.say_with("talk-agreed-on", args!["date" => format::day_near(w, line.agreed_on, f.today)]))
        .chosen(f.filled.all(&told))
        .fault(ask.faults.of(&told).map(|fault| codes::fault(w, fault)))
        .stands(ask.stands(&told))
        .tight();
    let choice = StepAnswer::ALL.iter().fold(choice, |choice, answer| choice.option(answer.code(), codes::step_answer(w, *answer)));
    // A reason that is there already is always seen.
    let css = if f.filled.one(&way).trim().is_empty() { "when-way" } else { "way" };
    html! {
        div.step-ask {
            (choice.option("", w.say("common-not-asked")))
            div class=(css) { (ask.typed(&way, Field::text(&way, w.say("talk-in-the-way")))) }
        }
    }
}

/// What to say and what to agree.
pub(super) fn part_of(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let (danger, others): (Vec<&Line>, Vec<&Line>) = f.talk.lines.iter().partition(|line| line.danger);
    let [first, rest @ ..] = Place::ALL;
    part(
        "talk",
        &w.say("talk-heading"),
        &html! {
            @if !danger.is_empty() { (lines(ask, &danger, "talk-say-danger")) }
            @if !others.is_empty() {
                (fold(f, &w.say_with("talk-say-more", args!["count" => others.len()]), &lines(ask, &others, "talk-say")))
            }
            p.hint { (w.say("talk-agree-hint")) }
            (place(f, ask, first))
            (fold(f, &w.say("talk-more-steps"), &html! { @for at in rest { (place(f, ask, at)) } }))
        },
    )
}

fn lines(ask: Ask<'_>, lines: &[&Line], legend: &str) -> Markup {
    let keys: Vec<&str> = lines.iter().map(|line| line.key.as_str()).collect();
    let choice = ask.many_of("coach", legend).stands(ask.stands("coach").map(|stands| stands.among(&keys))).rows();
    html! { div.list { (lines.iter().fold(choice, |choice, line| choice.option(&line.key, &line.words))) } }
}

fn place(f: &VisitForm<'_>, ask: Ask<'_>, place: Place) -> Markup {
    let w = f.w;
    let (choice, words) = (step_field(place), words_field(place));
    let number = args!["number" => u32::from(place.number())];
    let select = crate::view::parts::Select::new(&choice, w.say_with("talk-step", number))
        .value(f.filled.one(&choice))
        .fault(ask.faults.of(&choice).map(|fault| codes::fault(w, fault)))
        .stands(ask.stands(&choice))
        .option("", w.say("talk-no-step"))
        .options(f.talk.choices.iter().cloned());
    html! {
        div.step-ask {
            (select)
            (ask.typed(&words, Field::text(&words, w.say("talk-own-words")).hint(w.say("talk-own-words-hint"))))
        }
    }
}
