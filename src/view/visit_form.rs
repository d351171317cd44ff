//! The page of a visit, in the order a visit happens. It knows which questions stand open (given to it), what was typed and what is
//! wrong with it; it decides no rule and reads no store. Sub-questions open by style where their answer is chosen.

mod changed;
mod feeding;
mod foods;
mod labels;
pub mod measure;
mod open;
mod signs;
pub mod talk;

use chrono::NaiveDate;
use domain::child::Sex;
use domain::draft::questions::Questions;
use domain::fault::Faults;
use domain::food::FoodGroup;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::unusual::Unusual;
use domain::visit::Visit;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::details;
use crate::view::parts::fault_summary;
use crate::view::parts::fault_summary_below;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::part;
use crate::view::visit_form::talk::TalkPart;

/// An open follow-up, to be asked about first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenLine {
    /// Its rule.
    pub rule: RuleId,
    /// Its class.
    pub class: Class,
    /// When it was opened.
    pub opened_on: NaiveDate,
    /// Why, in one line.
    pub why: String,
    /// Opened before this visit: then this visit can tell what became of it.
    pub from_before: bool,
}

/// A food that the page offers by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodLine {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Can choke in some form.
    pub choking: bool,
    /// On hold since a reaction.
    pub on_hold: bool,
}

/// A visit that was saved and is being corrected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Correcting<'a> {
    /// Its number in links.
    pub seq: i64,
    /// Its day.
    pub on: NaiveDate,
    /// Saved a moment ago because of danger, with the rest still to be mended: the reason is then given.
    pub unfinished: bool,
    /// The page of what to do now.
    pub result: &'a str,
    /// The version that the form is shown at.
    pub version: u32,
    /// What somebody else made of the visit since the form was shown first.
    pub newest: Option<Newest<'a>>,
}

/// A visit that was changed since a form of it was shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Newest<'a> {
    /// The visit as it stands, as its form would send it.
    pub filled: &'a Filled,
    /// Who changed it last.
    pub by: &'a str,
    /// Why.
    pub reason: &'a str,
    /// Danger in it that the form did not say, as the field that says it and what it says: ticked in the form by now.
    pub danger: &'a [(String, String)],
    /// Danger that the form itself said was saved.
    pub saved: bool,
}

/// A recipe of the programme.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecipeLine {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// The foods that naming it ticks.
    pub foods: Vec<String>,
    /// A food in it is on hold.
    pub held: bool,
}

/// Everything the page shows.
pub struct VisitForm<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// Where the form goes.
    pub action: &'a str,
    /// The form's token.
    pub token: &'a str,
    /// The submission key.
    pub key: &'a str,
    /// The child's name.
    pub name: &'a str,
    /// Boy or girl.
    pub sex: Sex,
    /// The child's code.
    pub code: &'a str,
    /// Birth date.
    pub born: NaiveDate,
    /// The programme's day.
    pub today: NaiveDate,
    /// What stands open on the page.
    pub questions: &'a Questions,
    /// Open follow-ups, most urgent first.
    pub open: &'a [OpenLine],
    /// Steps agreed before, lines to tell, steps to choose from.
    pub talk: &'a TalkPart,
    /// Foods offered by name: being tried, next, on hold, or told at the visit that is corrected.
    pub foods: &'a [FoodLine],
    /// Recipes that can be named.
    pub recipes: &'a [RecipeLine],
    /// Foods of the programme that stand for a group, in words; `None`: it has none.
    pub examples: &'a dyn Fn(FoodGroup) -> Option<String>,
    /// Every food, code and name.
    pub all_foods: &'a [(String, String)],
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// What is unusual about it, with the visit as it was understood.
    pub unusual: Option<(&'a [Unusual], &'a Visit)>,
    /// The block that stands above everything when danger was ticked beside a fault.
    pub danger: Option<Markup>,
    /// Recipes are all that was said of food: what else was eaten is asked before saving.
    pub rest: bool,
    /// Whether a saved visit is corrected.
    pub correcting: Option<Correcting<'a>>,
    /// The visit that was corrected was taken back or moved meanwhile: this is a new one.
    pub gone: bool,
}

/// The title of the page, without what is wrong.
#[must_use]
pub fn title(w: &Words, name: &str, correcting: bool) -> String {
    w.say_with(if correcting { "visit-title-correct" } else { "visit-title" }, args!["name" => name])
}

/// The page.
#[must_use]
pub fn body(f: &VisitForm<'_>) -> Markup {
    let w = f.w;
    let page = fields(f);
    let newest = f.correcting.and_then(|correcting| correcting.newest);
    html! {
        @if let Some(danger) = &f.danger { section id="danger" tabindex="-1" autofocus { (danger) } } @else { (back(w, &format!("/children/{}", f.code), &w.say("visit-back"))) }
        @if let Some(newest) = newest { (changed::note_of(f, newest, &page)) }
        @if f.gone { (note(NoteWeight::Look, Icon::Ask, &html! { p { (w.say("visit-gone")) } })) }
        (summary(f, &page))
        @if f.danger.is_some() && newest.is_none_or(|newest| newest.saved) {
            p { strong { (w.say("visit-danger-saved")) } }
        } @else {
            (heading(f))
        }
        @if let Some((unusual, _)) = f.unusual.filter(|(unusual, _)| !unusual.is_empty()) { (look_again(w, unusual)) }
        @if f.rest { (rest(w)) }
        (form(f.action, f.token, Some(f.key), &page))
    }
}

fn heading(f: &VisitForm<'_>) -> Markup {
    let w = f.w;
    let who = format!("{}, {}", codes::sex(w, f.sex), format::age_exact(w, f.born, f.today));
    html! {
        h1 { (w.say(if f.correcting.is_some() { "visit-heading-correct" } else { "visit-heading" })) " " (name(f.name)) }
        @if let Some(correcting) = f.correcting {
            p.lede { (w.say_with("visit-correct-lede", args!["date" => format::day_near(w, correcting.on, f.today)])) }
            @if !correcting.unfinished { (other_ways(f, correcting.seq)) }
        } @else {
            p.lede.quiet { (w.say_with("visit-lede", args!["who" => who, "sex" => f.sex.code()])) }
            ul.plain.first-look {
                li { a.link.danger href={ "/children/" (f.code) "/emergency" } { (Icon::Now.draw("u")) (w.say("visit-emergency")) } }
                li { a.link href="#signs" { (w.say("visit-to-signs")) } }
            }
        }
    }
}

/// A visit that is not wrong in its answers, but wrong altogether.
fn other_ways(f: &VisitForm<'_>, seq: i64) -> Markup {
    html! {
        ul.plain {
            @for (id, way) in [("correction-move-way", "move"), ("correction-void-way", "void")] {
                li { a.link href={ "/children/" (f.code) "/visits/" (seq) "/" (way) } { (f.w.say(id)) } }
            }
        }
    }
}

/// What is wrong, in the order of the page: a fault stands where its field stands.
fn summary(f: &VisitForm<'_>, page: &Markup) -> Markup {
    let mut items: Vec<(usize, (String, String, String))> = f
        .faults
        .iter()
        .map(|(field, fault)| {
            let id = labels::id_of(field);
            let at = page.0.find(&format!("id=\"{id}\"")).unwrap_or(usize::MAX);
            (at, (id, labels::label(f, field), codes::fault(f.w, fault)))
        })
        .collect();
    items.sort_by_key(|(at, _)| *at);
    let items: Vec<_> = items.into_iter().map(|(_, item)| item).collect();
    // The page opens at what has the focus: with danger above, that is never what is wrong with the form.
    if f.danger.is_some() { fault_summary_below(f.w, &items) } else { fault_summary(f.w, &items) }
}

/// What else was eaten beside the recipe: a recipe alone would read as all of it.
fn rest(w: &Words) -> Markup {
    note(
        NoteWeight::Look,
        Icon::Ask,
        &html! {
            h2 { (w.say("visit-recipes-rest")) }
            p { (w.say("visit-recipes-rest-text")) }
            p { a href="#groups" { (w.say("visit-groups")) } }
        },
    )
}

fn look_again(w: &Words, unusual: &[Unusual]) -> Markup {
    let first = unusual.first().map_or("weight", |u| measure::field_of(u.measurement));
    note(
        NoteWeight::Look,
        Icon::Ask,
        &html! {
            h2 { (w.say("visit-unusual-heading")) }
            p { (w.say("visit-unusual-text")) }
            p { a href={ "#" (first) } { (w.say("visit-unusual-link")) } }
        },
    )
}

fn fields(f: &VisitForm<'_>) -> Markup {
    let w = f.w;
    let ask = Ask::new(w, f.filled, f.faults).beside(f.correcting.and_then(|correcting| correcting.newest).map(|newest| newest.filled));
    html! {
        @if let Some((unusual, understood)) = f.unusual { (hidden("asked_again", &measure::asked_again(unusual, understood))) }
        (when_where(f, ask))
        // What presses is asked first, then what was agreed, then the rest of what is open.
        @let pressing = f.open.iter().any(|line| line.class.is_urgent());
        @if pressing { (open::part_of(f, ask)) }
        (talk::asked(f, ask))
        @if !pressing { (open::part_of(f, ask)) }
        (part("measure", &w.say("visit-measure"), &measure::fields(f, ask)))
        (part("yesterday", &w.say("visit-yesterday"), &feeding::fields(f, ask)))
        @if !f.questions.infant { (foods::part_of(f, ask)) }
        (part("signs", &w.say("visit-signs"), &signs::fields(f, ask)))
        (more(f, ask))
        (talk::part_of(f, ask))
        (ask.text_area("note", "visit-note").hint(w.say("visit-note-hint")).rows(2))
        @if let Some(correcting) = f.correcting {
            (hidden("version", &correcting.version.to_string()))
            @if correcting.unfinished { (hidden("unfinished", "yes")) (hidden("reason", &w.say("visit-reason-unfinished"))) }
            @else { (ask.text("reason", "visit-reason").hint(w.say("visit-reason-hint"))) }
        }
        (acts(&button(&w.say(if f.correcting.is_some() { "visit-save-correct" } else { "visit-save" }), false)))
    }
}

/// The day and the place, as one closed line: most visits are today, at home.
fn when_where(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let day = match f.filled.one("day") {
        "yesterday" => w.say("common-yesterday"),
        "other" => w.say("common-another-day"),
        _ => format!("{}, {}", w.say("common-today"), format::day(w, f.today)),
    };
    let place = match f.filled.one("contact") {
        "clinic" => w.say("visit-at-clinic"),
        "phone" => w.say("visit-by-phone"),
        _ => w.say("visit-at-home"),
    };
    let or = |name: &str, value: &str| if f.filled.one(name).is_empty() { value.to_owned() } else { f.filled.one(name).to_owned() };
    let wrong = ["day", "on_day", "contact"].iter().any(|field| f.faults.of(field).is_some());
    let body = html! {
        (ask.one_of("day", "visit-day").tight().chosen([or("day", "today")])
            .option("today", w.say("common-today")).option("yesterday", w.say("common-yesterday")).option("other", w.say("common-another-day")))
        div.when-other-day { (ask.day("on", "visit-on").fault(labels::date_fault(ask, "on"))) }
        (ask.one_of("contact", "visit-contact").tight().chosen([or("contact", "home")])
            .option("home", w.say("contact-home")).option("clinic", w.say("contact-clinic")).option("phone", w.say("contact-phone")))
    };
    details(
        &w.say_with("visit-when-where", args!["day" => day, "place" => place]),
        wrong || f.filled.one("day") == "other" || body.0.contains(STANDS),
        &body,
    )
}

/// The mark of a line that says what stands now.
const STANDS: &str = "\"hint stands\"";

/// Questions one tap away: open where something was typed into one, is wrong with it, or was saved by somebody else meanwhile.
fn fold(f: &VisitForm<'_>, summary: &str, body: &Markup) -> Markup {
    let mut names = body.0.split(" name=\"").skip(1).filter_map(|rest| rest.split('"').next());
    let marked = body.0.contains("\"field bad\"") || body.0.contains(STANDS);
    let open = marked || names.any(|name| f.filled.all(name).iter().any(|value| !value.trim().is_empty()));
    details(summary, open, body)
}

/// What most visits do not need.
fn more(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let q = f.questions;
    let rest = html! {
        @if !q.plans { (signs::plans(f, ask)) }
        @if !q.readiness { (feeding::readiness(f, ask)) }
        @if !q.started && !q.infant { (feeding::started(f, ask)) }
        @if !q.appetite { (signs::appetite(f, ask)) }
    };
    html! { @if !rest.0.is_empty() { (fold(f, &w.say("visit-more"), &rest)) } }
}

#[cfg(test)]
mod tests;
