//! Tests of the frame.

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;
use scraper::Html;
use scraper::Selector;

fn select(page: &Html, css: &str) -> Vec<String> {
    let selector = Selector::parse(css).expect("a selector");
    page.select(&selector).map(|e| e.text().collect::<String>()).collect()
}

fn shown(shell: &Shell<'_>) -> Html {
    Html::parse_document(&page(shell, html! { h1 { "Work" } }).0)
}

fn frame(role: Role) -> Shell<'static> {
    let mut shell = Shell::new(words(Lang::En), "Work");
    shell.role = Some(role);
    shell.person = Some("Mireni");
    shell.token = "abc".to_owned();
    shell.path = "/round?as_of=2026-01-02&page=2";
    shell.protocol = Some(ProtocolLine { id: "default-6-23", version: "1.0.0", approved_by: None, local_name: None });
    shell
}

#[test]
fn each_role_has_its_own_ways_to_go() {
    for (role, ways) in [
        (Role::Worker, vec!["Round", "Find", "Add child"]),
        (Role::Supervisor, vec!["Late", "Find", "Add child", "Workers", "Reports"]),
        (Role::Manager, vec!["Reports"]),
        (Role::Administrator, vec!["People", "Areas", "Protocol", "Settings"]),
    ] {
        assert_eq!(select(&shown(&frame(role)), "nav.reach a"), ways, "{role:?}");
    }
    assert!(select(&shown(&Shell::new(words(Lang::En), "x")), "nav.reach").is_empty());
}

#[test]
fn all_eight_cautions_are_on_every_page() {
    let page = shown(&Shell::new(words(Lang::Fr), "x"));
    assert_eq!(select(&page, "details.cautions ol li").len(), 8);
    assert!(select(&page, ".foot > p").iter().any(|p| p.contains("ne pose pas de diagnostic")));
}

#[test]
fn approval_is_missing_until_somebody_signs() {
    let mut shell = frame(Role::Worker);
    assert_eq!(select(&shown(&shell), ".foot strong"), ["Not yet approved by a clinician."]);
    for (by, signed) in [("  ", false), ("Dr Anwe", true)] {
        shell.protocol = Some(ProtocolLine { id: "d", version: "1", approved_by: Some(by), local_name: Some("Lake district") });
        assert_eq!(select(&shown(&shell), ".foot strong").is_empty(), signed, "{by:?}");
    }
}

#[test]
fn an_emergency_puts_the_call_within_reach() {
    let mut shell = frame(Role::Worker);
    shell.urgent = true;
    assert_eq!(select(&shown(&shell), "nav.reach"), ["Call your local emergency number"]);
    shell.emergency_number = Some("44 0");
    let html = page(&shell, html! {}).0;
    assert!(html.contains(r#"href="tel:440""#), "{html}");
}

#[test]
fn a_past_day_is_said_and_can_be_left() {
    let mut shell = frame(Role::Worker);
    shell.as_of = NaiveDate::from_ymd_opt(2026, 1, 2);
    let html = page(&shell, html! {}).0;
    assert!(html.contains("You see 2 January 2026"));
    assert!(html.contains(r#"href="/round?page=2""#), "{html}");
}

#[test]
fn values_cannot_break_out_of_their_places() {
    let mut shell = frame(Role::Worker);
    shell.path = "/find?q=\"><script>";
    shell.person = Some("<b>Mireni</b>");
    let html = page(&shell, html! {}).0;
    assert!(!html.contains("<script") && !html.contains("<b>Mireni"), "{html}");
}

#[test]
fn no_page_carries_style_or_script_of_its_own() {
    let html = page(&frame(Role::Supervisor), html! {}).0;
    for banned in ["style=", "<style", "<script", "onclick", "http://", "https://"] {
        assert!(!html.contains(banned), "{banned}");
    }
}

#[test]
fn beside_a_form_another_language_opens_in_a_place_of_its_own() {
    let beside = |shell: &Shell<'_>, body: Markup| {
        let page = Html::parse_document(&page(shell, body).0);
        let selector = Selector::parse("footer form[action='/language']").expect("a selector");
        page.select(&selector).next().and_then(|form| form.value().attr("target").map(str::to_owned))
    };
    let form = || crate::view::parts::form("/children/new", "abc", None, &html! {});
    assert_eq!(beside(&frame(Role::Worker), form()), Some("_blank".to_owned()));
    assert_eq!(beside(&frame(Role::Worker), html! { h1 { "Work" } }), None);
    assert_eq!(beside(&Shell::new(words(Lang::En), "Sign in"), form()), None, "nobody has typed anything yet");
}
