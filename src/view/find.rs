//! Finding a child by name or code, and the list of all of one's children. Knows what was asked and what was found.

use chrono::NaiveDate;
use domain::child::ChildStatus;
use domain::child::Sex;
use domain::rule::Class;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::household::also_here;
use crate::view::layout::Nav;
use crate::view::parts::Choice;
use crate::view::parts::Field;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::cls;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::note;

/// What is wrong with something that was meant as a code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CodeSlip {
    /// The check sign does not fit.
    Check,
    /// A sign that no code has.
    Sign,
}

/// A child that was found.
#[derive(Debug, Clone)]
pub struct Found<'a> {
    /// Code in links.
    pub code: &'a str,
    /// Code as printed.
    pub printed: String,
    /// Name.
    pub name: &'a str,
    /// What the family calls the child.
    pub known_as: Option<&'a str>,
    /// Sex.
    pub sex: Sex,
    /// Birth date.
    pub born: NaiveDate,
    /// Village.
    pub village: &'a str,
    /// Caregiver.
    pub caregiver: &'a str,
    /// Worker, where the reader has several.
    pub worker: Option<&'a str>,
    /// In the programme, or how it left.
    pub status: ChildStatus,
    /// The others of the home, by code and name.
    pub also: Vec<(String, String)>,
    /// Urgency of what is open.
    pub class: Option<Class>,
}

/// The page.
#[derive(Debug)]
pub struct FindPage<'a> {
    /// What was typed; empty: all children.
    pub asked: &'a str,
    /// Whether children who left are sought too.
    pub also_left: bool,
    /// Something meant as a code that is none.
    pub slip: Option<CodeSlip>,
    /// What was found.
    pub found: Vec<Found<'a>>,
    /// Whether this page goes on from an earlier one.
    pub continues: bool,
    /// Where the list goes on.
    pub more: Option<String>,
    /// The day ages are counted for.
    pub day: NaiveDate,
}

/// The page. The heading is the answer.
#[must_use]
pub fn body(w: &Words, page: &FindPage<'_>) -> Markup {
    html! {
        h1 { (heading(w, page)) }
        (ask(w, page))
        @if let Some(slip) = page.slip { (slip_note(w, slip)) }
        @if !page.found.is_empty() {
            ul.rows.found { @for child in &page.found { li { (line(w, page, child)) } } }
        }
        @if let Some(more) = &page.more { (acts(&link_button(more, &html! { (w.say("find-more")) }, true))) }
        @if page.found.is_empty() && page.slip.is_none() {
            @if !page.asked.is_empty() { p { (w.say("find-none-hint")) } }
            (acts(&link_button(Nav::Add.path(), &html! { (w.say("find-add")) }, true)))
        }
    }
}

fn heading(w: &Words, page: &FindPage<'_>) -> String {
    let count = page.found.len();
    if page.slip.is_some() {
        return w.say("find-code-slip");
    }
    match (page.asked.is_empty(), count, page.more.is_some(), page.continues) {
        (true, 0, _, false) => w.say("find-none-at-all"),
        (true, _, false, false) => w.say_with("find-all", args!["count" => count]),
        (true, ..) => w.say("find-all-over"),
        (false, 0, ..) => w.say_with("find-none", args!["q" => page.asked]),
        (false, _, _, true) => w.say_with("find-further", args!["q" => page.asked]),
        (false, _, true, false) => w.say_with("find-found-over", args!["q" => page.asked, "count" => count]),
        (false, _, false, false) => w.say_with("find-found", args!["q" => page.asked, "count" => count]),
    }
}

fn ask(w: &Words, page: &FindPage<'_>) -> Markup {
    let left = Choice::many("left", w.say("find-title")).option("yes", w.say("find-left-too"));
    let left = if page.also_left { left.chosen(["yes"]) } else { left };
    html! {
        form.find method="get" action="/find" role="search" {
            (Field::search("q", w.say("find-label")).hint(w.say("find-hint")).value(page.asked).plain_letters())
            div.bare { (left.render()) }
            (acts(&html! { button type="submit" { (w.say("find-do")) } }))
        }
    }
}

fn slip_note(w: &Words, slip: CodeSlip) -> Markup {
    let hint = w.say(match slip {
        CodeSlip::Check => "find-code-slip-hint",
        CodeSlip::Sign => "find-code-sign-hint",
    });
    note(NoteWeight::Look, Icon::Ask, &html! { h2 { (w.say("common-look-again")) } p { (hint) } })
}

fn line(w: &Words, page: &FindPage<'_>, child: &Found<'_>) -> Markup {
    let age = format::age(w, child.born, page.day);
    html! {
        a.home href={ "/children/" (child.code) } { (name(child.name)) }
        @if let Some(known_as) = child.known_as { " · " (name(known_as)) }
        span.quiet.ltr.code { (child.printed) }
        p { (w.say_with("find-child", args!["sex" => codes::sex(w, child.sex), "age" => age])) " · " (name(child.village)) " · " (w.say_with("find-mother", args!["name" => child.caregiver])) }
        (also_here(w, &child.also))
        @if let Some(worker) = child.worker { p.quiet { (name(worker)) } }
        @if child.status != ChildStatus::Active { p.quiet { (codes::child_status(w, child.status)) } }
        @else if let Some(class) = child.class { p { (cls(w, class)) } }
    }
}

#[cfg(test)]
mod tests {
    use scraper::Html;
    use scraper::Selector;

    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    fn page<'a>(asked: &'a str, found: Vec<Found<'a>>) -> FindPage<'a> {
        FindPage {
            asked,
            also_left: false,
            slip: None,
            found,
            continues: false,
            more: None,
            day: NaiveDate::from_ymd_opt(2026, 11, 25).expect("a date"),
        }
    }

    fn sela<'a>() -> Found<'a> {
        Found {
            code: "K7QF2MZC",
            printed: "K7QF-2MZC".to_owned(),
            name: "Sela <b>",
            known_as: None,
            sex: Sex::Female,
            born: NaiveDate::from_ymd_opt(2026, 1, 20).expect("a date"),
            village: "Ulopi",
            caregiver: "Teveli",
            worker: None,
            status: ChildStatus::Active,
            also: Vec::new(),
            class: Some(Class::Today),
        }
    }

    fn texts(page: &FindPage<'_>, css: &str) -> Vec<String> {
        let html = Html::parse_fragment(&body(words(Lang::En), page).0);
        html.select(&Selector::parse(css).expect("a selector")).map(|e| e.text().collect::<String>().trim().to_owned()).collect()
    }

    #[test]
    fn the_heading_is_the_answer() {
        let mut over = page("se", vec![sela()]);
        over.more = Some("/find?q=se&after=x".to_owned());
        let mut slip = page("K7QF2MZD", Vec::new());
        slip.slip = Some(CodeSlip::Check);
        for (page, heading) in [
            (page("", Vec::new()), "No children yet"),
            (page("", vec![sela()]), "1 child of yours"),
            (page("xx", Vec::new()), "No child for “xx”"),
            (page("se", vec![sela(), sela()]), "2 children for “se”"),
            (over, "More than 1 children for “se”"),
            (slip, "This code has a slip"),
        ] {
            assert_eq!(texts(&page, "h1"), [heading]);
        }
    }

    #[test]
    fn nothing_found_leaves_a_way_on() {
        let html = body(words(Lang::En), &page("xx", Vec::new())).0;
        assert!(html.contains(r#"href="/children/new""#), "{html}");
        let found = body(words(Lang::En), &page("se", vec![sela()])).0;
        assert!(!found.contains(r#"href="/children/new""#), "{found}");
    }

    #[test]
    fn a_line_leads_to_the_child_and_says_the_urgency_in_words() {
        let page = page("se", vec![sela()]);
        assert_eq!(texts(&page, ".found .home"), ["Sela <b>"]);
        assert_eq!(texts(&page, ".found .cls"), ["Refer today"]);
        assert!(body(words(Lang::En), &page).0.contains(r#"href="/children/K7QF2MZC""#));
    }
}
