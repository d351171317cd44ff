//! Registering a child: one page, likely duplicates and what was understood shown before saving. It knows no store and no rule.

use chrono::NaiveDate;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::draft::child::NewChild;
use domain::fault::Faults;
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
use crate::view::parts::facts;
use crate::view::parts::fault_summary;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::part;
use crate::view::parts::rows;

/// A child already registered that may be the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Similar {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Birth date.
    pub born: NaiveDate,
    /// The caregiver's name.
    pub caregiver: String,
    /// Whether its page may be opened by who asks.
    pub in_scope: bool,
}

/// What stands above a form that could be saved but is shown once more.
#[derive(Debug, Clone, Copy)]
pub struct Check<'a> {
    /// The child as it was understood.
    pub child: &'a NewChild,
    /// The area by name.
    pub area: &'a str,
    /// Children that may be the same.
    pub similar: &'a [Similar],
}

/// Everything the page shows.
pub struct RegisterForm<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// The form's token.
    pub token: &'a str,
    /// The submission key.
    pub key: &'a str,
    /// The programme's day.
    pub today: NaiveDate,
    /// The child whose home the new one shares: code and what it is called.
    pub home: Option<(&'a str, &'a str)>,
    /// Villages: code and name.
    pub areas: &'a [(String, String)],
    /// Workers to choose from, for a supervisor; empty for a worker, whose own child it becomes.
    pub workers: &'a [(String, String)],
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// What was understood, before it is saved.
    pub check: Option<Check<'a>>,
}

/// What was understood, so that saving it as it stands saves it, and a change is shown again.
#[must_use]
pub fn understood(child: &NewChild) -> String {
    format!("{}:{}:{}:{}", child.born, child.sex.code(), child.birth_weight.map_or(0, |w| w.grams()), child.gestation_days.unwrap_or(0))
}

/// The page.
#[must_use]
pub fn body(f: &RegisterForm<'_>) -> Markup {
    let w = f.w;
    let page = fields(f);
    html! {
        @match f.home {
            Some((code, called)) => { (back(w, &format!("/children/{code}/home"), called)) }
            None => { (back(w, "/round", &w.say("common-nav-round"))) }
        }
        (summary(f, &page))
        @match &f.check {
            Some(check) => { (checked(f, check)) }
            None => {
                h1 { (w.say("register-heading")) }
                (lede(f))
            }
        }
        (form("/children/new", f.token, Some(f.key), &page))
    }
}

/// What the page asks; from another child's page, what its home shares is there already.
fn lede(f: &RegisterForm<'_>) -> Markup {
    let w = f.w;
    html! {
        @match f.home {
            Some((code, called)) => {
                p.lede.quiet { (w.say_with("household-register-lede", args!["name" => f.filled.one("caregiver")])) }
                @if f.filled.one("twin") != "yes" {
                    p { a.link href={ "/children/new?home=" (code) "&twin=yes" } { (w.say_with("household-register-twin", args!["name" => called])) } }
                }
            }
            None => { p.lede.quiet { (w.say("register-lede")) } }
        }
    }
}

fn summary(f: &RegisterForm<'_>, page: &Markup) -> Markup {
    let mut items: Vec<(usize, (String, String, String))> = f
        .faults
        .iter()
        .map(|(field, fault)| {
            let id = id_of(field);
            let at = page.0.find(&format!("id=\"{id}\"")).unwrap_or(usize::MAX);
            (at, (id, label(f.w, field), codes::fault(f.w, fault)))
        })
        .collect();
    items.sort_by_key(|(at, _)| *at);
    fault_summary(f.w, &items.into_iter().map(|(_, item)| item).collect::<Vec<_>>())
}

/// The box that a fault points to: the first of three for a day, else the part that is wrong.
fn id_of(field: &str) -> String {
    for base in ["born", "work"] {
        if let Some(part) = field.strip_prefix(base).and_then(|rest| rest.strip_prefix('_')) {
            return if part == "day" { base.to_owned() } else { format!("{base}-{part}") };
        }
    }
    field.to_owned()
}

fn label(w: &Words, field: &str) -> String {
    let base = ["_day", "_month", "_year"].iter().find_map(|tail| field.strip_suffix(tail)).unwrap_or(field);
    let id = codes::id("register", base);
    if w.has(&id) { w.say(&id) } else { w.say("register-answer") }
}

fn checked(f: &RegisterForm<'_>, check: &Check<'_>) -> Markup {
    let w = f.w;
    let child = check.child;
    let mut lines = vec![
        (w.say("register-name"), html! { (name(&child.name)) }),
        (w.say("register-sex"), html! { (codes::sex(w, child.sex)) }),
        (
            w.say("register-born"),
            html! {
                (format::day_and_year(w, child.born)) " (" (format::age(w, child.born, f.today)) ")"
                @if !child.birth_day_known { " " (w.say("register-day-estimated")) }
            },
        ),
        (
            w.say("register-birth-weight"),
            html! { (child.birth_weight.map_or_else(|| w.say("common-not-known"), |x| format::kg(w, i64::from(x.grams())))) },
        ),
        (
            w.say("register-weeks"),
            html! { (child.gestation_days.map_or_else(|| w.say("register-not-corrected"), |days| format::gestation(w, u32::from(days)))) },
        ),
        (w.say("register-area"), html! { (check.area) }),
    ];
    lines.push((w.say("register-caregiver"), html! { (name(&child.caregiver)) }));
    html! {
        h1 { (w.say("register-check-heading")) }
        p.lede { (w.say("register-check-lede")) }
        (facts(&lines))
        @if !check.similar.is_empty() {
            (note(NoteWeight::Look, Icon::Ask, &html! {
                h2 { (w.say_with("register-similar", args!["count" => check.similar.len()])) }
                (rows(&check.similar.iter().map(|s| similar(f, s)).collect::<Vec<_>>()))
                p { a href="#other_child" { (w.say("register-similar-decide")) } }
            }))
        }
    }
}

fn similar(f: &RegisterForm<'_>, s: &Similar) -> Markup {
    let w = f.w;
    html! {
        p { strong { (name(&s.name)) } ", " (w.say_with("register-similar-born", args!["date" => format::day_and_year(w, s.born)])) }
        p { (w.say_with("register-similar-where", args!["caregiver" => &s.caregiver])) }
        @if s.in_scope { p { a.link href={ "/children/" (s.code) } { (w.say("register-similar-open")) } } }
    }
}

fn fields(f: &RegisterForm<'_>) -> Markup {
    let w = f.w;
    let ask = Ask::new(w, f.filled, f.faults);
    let choose = |select: crate::view::parts::Select, options: &[(String, String)]| {
        select.option("", w.say("common-choose")).options(options.iter().cloned())
    };
    html! {
        @if let Some(check) = &f.check {
            (hidden("understood", &understood(check.child)))
            @if !check.similar.is_empty() {
                (ask.many_of("other_child", "register-other-child").rows().option("yes", w.say("register-other-child-yes")))
            }
            (acts(&button(&w.say("register-save-checked"), false)))
            h2 { (w.say("register-change")) }
        }
        (part("child", &w.say("register-child"), &child_fields(f, ask)))
        (part("birth", &w.say("register-birth"), &birth_fields(f, ask)))
        (part("family", &w.say("register-family"), &html! {
            @if let Some((code, called)) = f.home {
                (hidden("home_code", code))
                (ask.many_of("home_of", "household-same").rows().option("yes", w.say_with("household-same-yes", args!["name" => called])))
            }
            (ask.text("caregiver", "register-caregiver").hint(w.say("register-caregiver-hint")))
            (ask.text("relation", "register-relation").hint(w.say("register-relation-hint")))
            (ask.phone("phone", "register-phone").hint(w.say("common-optional")))
            (choose(ask.select("area", "register-area"), f.areas))
            (ask.text_area("directions", "register-directions").hint(w.say("register-directions-hint")).rows(2))
            @if !f.workers.is_empty() { (choose(ask.select("worker", "register-worker"), f.workers)) }
            (ask.many_of("consent", "register-consent").hint(w.say("register-consent-hint")).rows().option("yes", w.say("register-consent-yes")))
            (ask.text("consent_by", "register-consent-by").hint(w.say("register-consent-by-hint")))
        }))
        (part("history", &w.say("register-history"), &history(f, ask)))
        (acts(&button(&w.say(if f.check.is_some() { "register-save-checked" } else { "register-save" }), f.check.is_some())))
    }
}

fn child_fields(f: &RegisterForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    html! {
        (ask.text("name", "register-name").hint(w.say("register-name-hint")))
        (ask.text("known_as", "register-known-as").hint(w.say("common-optional")))
        (Sex::ALL.iter().fold(ask.one_of("sex", "register-sex").tight(), |c, sex| c.option(sex.code(), codes::sex(w, *sex))))
        (ask.day("born", "register-born").hint(w.say("register-born-hint")).fault(date_fault(ask, "born")))
    }
}

fn date_fault(ask: Ask<'_>, base: &str) -> Option<String> {
    ["day", "month", "year"].iter().find_map(|part| ask.faults.of(&format!("{base}_{part}"))).map(|fault| codes::fault(ask.w, fault))
}

fn birth_fields(f: &RegisterForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let source = GestationSource::ALL.iter().fold(ask.one_of("gestation_source", "register-gestation-source").tight(), |c, s| {
        c.option(s.code(), codes::gestation_source(w, *s))
    });
    html! {
        (ask.decimal("birth_weight", "register-birth-weight").hint(w.say("register-birth-weight-hint")).unit(w.say("visit-kg")))
        (ask.whole("weeks", "register-weeks").hint(w.say("register-weeks-hint")).unit(w.say("register-weeks-unit")))
        (ask.whole("weeks_days", "register-weeks-days").unit(w.say("visit-days")))
        (source)
    }
}

/// Asked once, at registration; each may be not known.
fn history(f: &RegisterForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let known = |field: &str, legend: &str| {
        ask.one_of(field, legend)
            .tight()
            .option("yes", w.say("common-yes"))
            .option("no", w.say("common-no"))
            .option("", w.say("common-not-known"))
    };
    let seldom = ["early_breastfeeding", "first_days_milk_only", "work_day", "work_month", "work_year"];
    let open = seldom.iter().any(|field| !f.filled.one(field).is_empty() || f.faults.of(field).is_some());
    html! {
        (known("ever_breastfed", "register-ever-breastfed"))
        (known("severe_eczema", "register-severe-eczema"))
        (known("food_allergy", "register-food-allergy"))
        (details(&w.say("register-more"), open, &html! {
            (known("early_breastfeeding", "register-early-breastfeeding"))
            (known("first_days_milk_only", "register-first-days-milk-only"))
            (ask.day("work", "register-work").hint(w.say("register-work-hint")).fault(date_fault(ask, "work")))
        }))
    }
}

#[cfg(test)]
mod tests;
