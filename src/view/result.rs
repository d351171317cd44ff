//! What to do now, straight after saving: the most urgent first and one clear act. While something presses, the advice of the visit
//! waits on the child's page. It decides no rule; findings come with their class and words.

mod advice;
mod onward;
mod referral;

use chrono::NaiveDate;
use domain::child::Sex;
use domain::draft::unchecked::Unchecked;
use domain::rule::Class;
use domain::visit::Visit;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::emergency;
use crate::view::emergency::Emergency;
use crate::view::household::Also;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::cls;
use crate::view::parts::label;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::rows;
use crate::view::parts::steps;
use crate::view::scale;
use crate::view::visit_form::measure::arm;

pub use crate::view::result::advice::Advice;

/// Something the rules found, or that is still open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Its class.
    pub class: Class,
    /// The short name of its rule.
    pub name: String,
    /// Why, in one line with its numbers.
    pub why: String,
    /// Beside a gain, loss or drop: how far it could be the scale.
    pub scale: Option<String>,
    /// What to do and what to tell the family.
    pub act: String,
    /// When it is to be looked at again.
    pub due: Option<NaiveDate>,
    /// What a health worker made of it since it was last seen, in words, and the day that was told.
    pub told: Option<(String, NaiveDate)>,
    /// Asks to measure again rather than to worry anybody.
    pub about_data: bool,
}

/// The next visit: the day to aim at and the window round it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextVisit {
    /// First day.
    pub opens: NaiveDate,
    /// Last day.
    pub closes: NaiveDate,
}

/// Everything the page shows.
pub struct ResultPage<'a> {
    /// The words of the page.
    pub w: &'a Words,
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
    /// The visit's number among the child's visits.
    pub seq: i64,
    /// The visit as it was understood.
    pub visit: &'a Visit,
    /// What this visit found, most urgent first.
    pub found: &'a [Found],
    /// What is open from before and was not found again.
    pub still_open: &'a [Found],
    /// What was closed by this visit, by name.
    pub closed: &'a [String],
    /// The acts, if the most urgent is class *now*.
    pub emergency: Option<Emergency<'a>>,
    /// What was seen, in words, for the referral note.
    pub seen: &'a [String],
    /// What was not looked at.
    pub unchecked: &'a [Unchecked],
    /// Nothing at all was measured or checked.
    pub nothing_checked: bool,
    /// Weight gained or lost since a day.
    pub gain: Option<(i64, NaiveDate)>,
    /// How far two weighings may lie apart, in grams.
    pub tolerance_g: i64,
    /// By how many days ages are corrected for early birth; 0: not.
    pub corrected_by_days: u16,
    /// The other children of the home.
    pub here: &'a [Also],
    /// Steps agreed with the family at this visit, in words.
    pub agreed: &'a [String],
    /// What fits the stage.
    pub advice: Option<&'a Advice>,
    /// The next visit by the schedule.
    pub next: Option<NextVisit>,
    /// The programme's emergency number.
    pub number: Option<&'a str>,
    /// Where the child lives.
    pub area: &'a str,
    /// Who saw the child.
    pub worker: &'a str,
}

impl ResultPage<'_> {
    /// The most urgent class of this visit's findings.
    #[must_use]
    pub fn worst(&self) -> Option<Class> {
        self.found.iter().map(|f| f.class).min()
    }

    /// The title of the page.
    #[must_use]
    pub fn title(&self) -> String {
        let id = match self.worst() {
            Some(Class::Now) => "emergency-title",
            Some(Class::Today) => "result-title-today",
            _ => "result-title",
        };
        self.w.say_with(id, args!["name" => self.name])
    }

    fn sex(&self) -> &'static str {
        self.sex.code()
    }
}

/// The page.
#[must_use]
pub fn body(p: &ResultPage<'_>) -> Markup {
    match (p.worst(), &p.emergency) {
        (Some(Class::Now), Some(emergency)) => now(p, emergency),
        (Some(Class::Now | Class::Today), _) => today(p),
        _ => usual(p),
    }
}

/// What stands above a form that was saved for its danger alone.
#[must_use]
pub fn block(p: &ResultPage<'_>) -> Option<Markup> {
    match (p.worst(), &p.emergency) {
        (Some(Class::Now), Some(emergency)) => Some(emergency::block(p.w, emergency)),
        (Some(Class::Now | Class::Today), _) => Some(html! { (refer(p)) }),
        _ => None,
    }
}

fn now(p: &ResultPage<'_>, e: &Emergency<'_>) -> Markup {
    let w = p.w;
    let urgent: Vec<&Found> = p.found.iter().filter(|f| f.class == Class::Now).collect();
    html! {
        (emergency::block(w, e))
        (acts(&html! {
            (link_button("#note", &html! { (w.say("result-note")) }, true))
            (link_button(&correct(p), &html! { (w.say("result-write-rest")) }, true))
        }))
        h2 { (w.say("result-why")) }
        @for found in &urgent { p { (found.why) } (scale::said(&found.scale)) }
        (also_found(p, Class::Now))
        (referral::note(p))
        p.quiet { (saved(p)) " " (w.say("result-later-advice")) }
        (unchecked(p))
        (onward::here(p))
    }
}

fn today(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    html! {
        p.quiet { (saved(p)) }
        (refer(p))
        (acts(&html! {
            (link_button("#note", &html! { (w.say("result-note")) }, false))
            (link_button(&format!("/children/{}", p.code), &html! { (w.say("result-child-page")) }, true))
        }))
        h2 { (w.say("result-say")) }
        p { (w.say_with("result-say-today", args!["name" => p.name, "sex" => p.sex()])) }
        (also_found(p, Class::Today))
        (referral::note(p))
        (unchecked(p))
        (onward::leave(p))
        p.quiet { (w.say("result-later-advice")) }
    }
}

/// Refer today: what, why, and the acts in order.
fn refer(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let urgent: Vec<&Found> = p.found.iter().filter(|f| f.class.is_urgent()).collect();
    let step = |id: &str| html! { b { (w.say_with(&format!("result-today-{id}-do"), args!["sex" => p.sex()])) } (w.say(&format!("result-today-{id}-how"))) };
    html! {
        p { (cls(w, Class::Today)) }
        h1 { (w.say_with("result-today-heading", args!["name" => p.name])) }
        @for found in &urgent { p.lede { (found.why) } (scale::said(&found.scale)) }
        (steps(&[
            html! { b { (w.say("result-today-signs-do")) } (emergency_call(p)) },
            step("travel"),
            step(if p.visit.breastfed == Some(false) { "milk" } else { "feed" }),
            step("note"),
        ]))
        @for found in &urgent { p { (found.act) } }
    }
}

fn emergency_call(p: &ResultPage<'_>) -> Markup {
    let href = format!("/children/{}/emergency", p.code);
    html! { a href=(href) { (p.w.say_with("result-today-signs-how", args!["number" => p.number.map_or_else(|| p.w.say("result-local-number"), str::to_owned)])) } }
}

fn usual(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    html! {
        p.quiet { (saved(p)) }
        (still_urgent(p))
        @if let Some(first) = p.found.first() {
            p { (cls(w, first.class)) }
            h1 { (label(w, &first.name)) " " (name(p.name)) }
            p.lede { (first.why) }
            (scale::said(&first.scale))
            (act_of(p, first))
            @if p.found.len() > 1 {
                h2 { (w.say("result-also")) }
                (rows(&p.found[1..].iter().map(|f| html! { p { (cls(w, f.class)) } p { (f.why) } (scale::said(&f.scale)) (act_of(p, f)) }).collect::<Vec<_>>()))
            }
        } @else {
            (nothing_found(p))
        }
        (unchecked(p))
        (gain(p))
        (still_open(p))
        (onward::agreed(p))
        @if let Some(advice) = p.advice { (advice::part(p, advice)) }
        (onward::next_visit(p))
        (onward::leave(p))
        @if !p.found.is_empty() { p { a.link href="#note" { (w.say("result-note")) } } (referral::note(p)) }
        p.quiet { (w.say("common-caution-6")) " " (w.say("result-sources-differ")) }
    }
}

/// No finding. What was never looked at is not called fine, and neither is a child for whom something urgent is still open.
fn nothing_found(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let urgent: Vec<String> = p.still_open.iter().filter(|f| f.class.is_urgent()).map(|f| f.name.clone()).collect();
    let open = format::list(w, &urgent);
    html! {
        @match (p.nothing_checked, urgent.is_empty()) {
            (true, none) => {
                h1 { (w.say_with("result-nothing-checked", args!["name" => p.name])) }
                @if !none { p.lede { (w.say_with("result-open-are", args!["open" => open])) } }
            }
            (false, false) => h1 { (w.say_with("result-open-for", args!["name" => p.name, "open" => open])) }
            (false, true) => h1 { (w.say_with("result-no-concern", args!["name" => p.name])) }
        }
    }
}

fn act_of(p: &ResultPage<'_>, found: &Found) -> Markup {
    let w = p.w;
    html! {
        p { (found.act) }
        @if let Some(due) = found.due { p.quiet { (w.say_with("result-due", args!["date" => format::weekday(w, due)])) } }
    }
}

/// What the visit recorded, as it was understood.
fn saved(p: &ResultPage<'_>) -> String {
    let w = p.w;
    let v = p.visit;
    let mut parts = vec![w.say_with("result-saved", args!["date" => format::day_near(w, v.on, p.today)])];
    parts.extend(measured(w, v));
    parts.join(" · ")
}

/// Each measurement with its unit.
fn measured(w: &Words, v: &Visit) -> Vec<String> {
    let mut parts = Vec::new();
    parts.extend(v.weight.map(|x| format::kg(w, i64::from(x.grams()))));
    parts.extend(v.length.map(|x| format::cm(w, i64::from(x.mm()))));
    parts.extend(v.muac.map(|x| w.say_with("result-arm", args!["value" => arm(w, i64::from(x.mm()))])));
    if v.oedema == Some(true) {
        parts.push(w.say("result-feet-swollen"));
    }
    parts
}

fn unchecked(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let parts: Vec<String> = p.unchecked.iter().map(|part| w.say(&codes::id("unchecked", part.code()))).collect();
    html! { @if !parts.is_empty() { p { (w.say_with("result-unchecked", args!["parts" => format::list(w, &parts)])) } } }
}

fn gain(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let growing = !p.found.iter().any(|f| f.about_data);
    html! {
        @if let Some((grams, since)) = p.gain.filter(|(grams, _)| *grams > 0 && growing) {
            p { (w.say_with("result-gain", args![
                "gain" => format::weight_change(w, grams), "date" => format::day(w, since), "sex" => p.sex(), "name" => p.name
            ])) " " (scale::beside_change(w, grams, p.tolerance_g)) }
        }
        @if p.corrected_by_days > 0 {
            p.quiet { (w.say_with("result-corrected", args!["weeks" => p.corrected_by_days / 7, "days" => p.corrected_by_days % 7])) }
        }
    }
}

/// Other findings, without their coaching while something presses.
fn also_found(p: &ResultPage<'_>, worst: Class) -> Markup {
    let w = p.w;
    let rest: Vec<Markup> = p
        .found
        .iter()
        .filter(|f| f.class > worst)
        .map(|f| html! { p { (cls(w, f.class)) } p { (f.why) } (scale::said(&f.scale)) })
        .collect();
    html! { @if !rest.is_empty() { h2 { (w.say("result-also")) } (rows(&rest)) } }
}

/// Urgent and unresolved from before: it stands above whatever this visit found.
fn still_urgent(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let urgent: Vec<&Found> = p.still_open.iter().filter(|f| f.class.is_urgent()).collect();
    html! {
        @if !urgent.is_empty() {
            (note(NoteWeight::Stop, Icon::of_class(urgent[0].class), &html! {
                h2 { (w.say("result-still-urgent")) }
                @for f in &urgent {
                    p { (cls(w, f.class)) " " (f.why)
                        @if let Some((outcome, on)) = &f.told { " " (w.say_with("result-still-urgent-told", args!["outcome" => outcome, "date" => format::day_near(w, *on, p.today)])) } }
                }
                @if urgent.iter().any(|f| f.told.is_none()) { p { (w.say("result-still-urgent-do")) } }
                @else { p { (w.say("result-still-urgent-answered")) } }
            }))
        }
    }
}

fn still_open(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let open: Vec<Markup> =
        p.still_open.iter().filter(|f| !f.class.is_urgent()).map(|f| html! { p { (cls(w, f.class)) } p { (f.why) } }).collect();
    html! {
        @if !p.closed.is_empty() { p { (w.say_with("result-closed", args!["names" => format::list(w, p.closed)])) } }
        @if !open.is_empty() { h2 { (w.say("result-still-open")) } (rows(&open)) }
    }
}

fn correct(p: &ResultPage<'_>) -> String {
    format!("/children/{}/visits/{}/correct", p.code, p.seq)
}

#[cfg(test)]
mod tests;
