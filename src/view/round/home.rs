//! One home of the round in words: urgency and day, name and age, the reason.

use chrono::NaiveDate;
use domain::calendar::days_between;
use domain::errand::Errand;
use domain::errand::FollowUpDue;
use domain::errand::VisitAge;
use domain::errand::VisitDue;
use domain::errand::visit_age;
use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::view::household::also_here;
use crate::view::parts::Icon;
use crate::view::parts::call_link;
use crate::view::parts::cls;
use crate::view::parts::name;
use crate::view::pieces::list::class_css;
use crate::view::round::Check;
use crate::view::round::Home;
use crate::view::round::RoundPage;
use crate::view::round::SeenHome;
use crate::view::round::way;

/// Days are called by their weekday up to here; further ones by their date.
const WEEKDAY_REACH: i32 = 6;

/// The mark of an errand and its CSS class.
pub fn mark(errand: &Errand) -> (Icon, &'static str) {
    errand.class().map_or((Icon::Home, "visit"), |class| (Icon::of_class(class), class_css(class)))
}

/// A home on the trail.
pub fn line(w: &Words, page: &RoundPage<'_>, home: &Home<'_>) -> Markup {
    let (icon, css) = mark(home.errand);
    html! {
        li {
            (way())
            span class={ "dot " (css) } { (icon.draw("u")) }
            p class={ "when " (css) } { (when(w, page.day, home.errand)) }
            a.home href={ "/children/" (home.code) (page.query) } { (name(home.name)) }
            " " span.quiet {
                (format::age(w, home.born, page.day))
                @if let Some(known_as) = home.known_as { " · " (name(known_as)) }
            }
            p.why { (why(w, page, home)) }
            (also_here(w, &home.also))
            @if home.noted { p.where { (Icon::Info.draw("u")) " " (w.say("desk-note-on-round")) } }
            // A pressing home carries its village; for the others the village is a resting place on the trail.
            @if home.errand.is_pressing() { p.where { (name(home.village)) } }
            @if let Some(phone) = home.phone { (call(w, home.name, phone)) }
        }
    }
}

fn call(w: &Words, child: &str, phone: &str) -> Markup {
    call_link(phone, "call", &html! { span.vh { (w.say_with("round-call", args!["name" => child])) } })
}

/// A home whose day is further off.
pub fn later(w: &Words, page: &RoundPage<'_>, home: &Home<'_>) -> Markup {
    html! {
        p { @if let Some(class) = home.errand.class() { (cls(w, class)) " · " } (due(w, page.day, home.errand.day())) }
        p { a.link href={ "/children/" (home.code) (page.query) } { (name(home.name)) } " " span.quiet { (format::age(w, home.born, page.day)) " · " (name(home.village)) } }
        p { (why(w, page, home)) }
    }
}

/// A home seen on the day: what was found, and what nobody looked at.
pub fn seen(w: &Words, page: &RoundPage<'_>, home: &SeenHome<'_>) -> Markup {
    html! {
        li.done {
            (way())
            span.dot { (Icon::Done.draw("u")) }
            p.when { (w.say("class-done")) }
            a.home href={ "/children/" (home.code) (page.query) } { (name(home.name)) }
            " " span.quiet { (format::age(w, home.born, page.day)) }
            p.why { (seen_words(w, page, home)) }
        }
    }
}

fn seen_words(w: &Words, page: &RoundPage<'_>, home: &SeenHome<'_>) -> String {
    let found = match home.errand {
        Some(Errand::FollowUp { first, .. }) => {
            let class = codes::class_word(w, first.class);
            let why = explain(first.rule, &first.evidence, w, page.food);
            w.say_with("round-seen-follow-up", args!["why" => why, "class" => class, "due" => due(w, page.day, first.due_on)])
        }
        _ if home.not_checked.len() == Check::ALL.len() => return w.say("round-seen-nothing-checked"),
        _ => w.say("round-seen-no-concern"),
    };
    if home.not_checked.is_empty() {
        return found;
    }
    let named: Vec<String> = home.not_checked.iter().map(|check| check.words(w)).collect();
    w.say_with("round-seen-not-checked", args!["found" => found, "list" => format::list(w, &named)])
}

/// `Within 2 days · 7 days late`, `Visit · until Monday`
pub fn when(w: &Words, day: NaiveDate, errand: &Errand) -> String {
    match errand {
        // An emergency and a referral of today say their day by their name.
        Errand::FollowUp { first, .. } if first.class.is_urgent() && first.due_on >= day => codes::class_word(w, first.class),
        Errand::FollowUp { first, .. } => joined(w, &codes::class_word(w, first.class), &due(w, day, first.due_on)),
        Errand::Visit(visit) => joined(w, &w.say("class-visit"), &visit_when(w, day, *visit)),
    }
}

fn joined(w: &Words, left: &str, right: &str) -> String {
    w.say_with("round-dot", args!["left" => left, "right" => right])
}

fn visit_when(w: &Words, day: NaiveDate, visit: VisitDue) -> String {
    match visit {
        VisitDue::Late { closed_on } => w.say_with("round-late", args!["count" => days_between(closed_on, day).max(0)]),
        VisitDue::Open { until, .. } => w.say_with("round-until", args!["day" => near(w, day, until)]),
    }
}

/// `7 days late`, `due today`, `due tomorrow`, `by Friday`, `by 4 December`
pub fn due(w: &Words, day: NaiveDate, due_on: NaiveDate) -> String {
    match days_between(day, due_on) {
        late if late < 0 => w.say_with("round-late", args!["count" => -late]),
        0 => w.say("round-due-today"),
        1 => w.say("round-due-tomorrow"),
        _ => w.say_with("round-due-by", args!["day" => near(w, day, due_on)]),
    }
}

fn near(w: &Words, day: NaiveDate, on: NaiveDate) -> String {
    match days_between(day, on) {
        0 => w.say("round-today"),
        1 => w.say("round-tomorrow"),
        n if (2..=WEEKDAY_REACH).contains(&n) => format::weekday_name(w, on),
        _ => w.say_with("round-date", args!["day" => format::day_near(w, on, day)]),
    }
}

/// `due tomorrow`, `Visit · until Monday`: without the class, which stands beside it.
pub fn by_when(w: &Words, day: NaiveDate, errand: &Errand) -> String {
    match errand {
        Errand::FollowUp { first, .. } => due(w, day, first.due_on),
        Errand::Visit(visit) => joined(w, &w.say("class-visit"), &visit_when(w, day, *visit)),
    }
}

/// Why the home is on the round, in a line.
pub fn why(w: &Words, page: &RoundPage<'_>, home: &Home<'_>) -> String {
    reason(w, page.day, home.errand, home.born, home.last_seen_on, page.food)
}

/// Why a child is to be seen, in a line.
pub fn reason(
    w: &Words,
    day: NaiveDate,
    errand: &Errand,
    born: NaiveDate,
    last_seen_on: Option<NaiveDate>,
    food: &dyn Fn(&str) -> String,
) -> String {
    match errand {
        Errand::FollowUp { first, visit } => {
            let mut parts = vec![explain(first.rule, &first.evidence, w, food)];
            if asks_outcome(first, day) {
                parts.push(w.say("round-did-they-reach"));
            }
            if first.open_count > 1 {
                parts.push(w.say_with("round-and-more", args!["count" => first.open_count - 1]));
            }
            if let Some(visit) = visit {
                parts.push(w.say_with("round-visit-too", args!["when" => visit_when(w, day, *visit)]));
            }
            parts.join(" ")
        }
        Errand::Visit(VisitDue::Open { target, .. }) => w.say_with("round-visit-of", args!["age" => slot_age(w, born, *target)]),
        Errand::Visit(VisitDue::Late { .. }) => match last_seen_on {
            Some(on) => w.say_with("round-last-seen", args!["day" => format::day_near(w, on, day)]),
            None => w.say("round-never-seen"),
        },
    }
}

/// Whether it is time to ask what became of a referral: not on the day itself.
fn asks_outcome(first: &FollowUpDue, day: NaiveDate) -> bool {
    matches!(first.class, Class::Now | Class::Today) && first.unanswered_since.is_some_and(|since| since < day)
}

fn slot_age(w: &Words, born: NaiveDate, target: NaiveDate) -> String {
    match visit_age(born, target) {
        VisitAge::Months(months) => w.say_with("common-months", args!["count" => months]),
        VisitAge::Weeks(weeks) => w.say_with("common-weeks", args!["count" => weeks]),
        VisitAge::Days(days) => w.say_with("common-days", args!["count" => days]),
        VisitAge::MonthsAndDays(months, days) => {
            let whole = w.say_with("common-months", args!["count" => months]);
            let rest = w.say_with("common-days", args!["count" => days]);
            w.say_with("common-age-and", args!["whole" => whole, "rest" => rest])
        }
    }
}
