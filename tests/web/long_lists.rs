//! Lists too long for one page: the way through all pages of each, every line once and in its order, whatever came in between.

use std::collections::BTreeSet;

use domain::counsel::Place;
use domain::counsel::Step;
use domain::counsel::StepAnswer;
use domain::counsel::StepId;
use domain::counsel::Told;
use domain::evidence::Evidence;
use domain::ids::VisitId;
use domain::rule::Class;
use domain::rule::RuleId;
use domain::visit::Outcome;
use domain::visit::ToldOutcome;
use spoonround::store::summaries::SummaryRecord;
use spoonround::store::summaries::TopFollowUp;
use spoonround::store::testing::a_visit;
use spoonround::store::visits;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::harness::Browser;
use crate::site::Site;

/// More than two pages of fifty.
const MANY: u128 = 115;

/// Children sent to care, with a food on hold, not seen since summer; each told what became of a referral, and of three steps.
async fn crowded() -> Site {
    let site = Site::new().await;
    for n in 1..=MANY {
        let one = child(n, &format!("Child{n:03}"), site.ulopi, site.mireni);
        let back = i64::try_from(n % 7).expect("small");
        let day = |text: &str| d(text) - chrono::Days::new(back.unsigned_abs());
        let top =
            TopFollowUp { class: Class::Today, rule: RuleId::WastingSevere, due_on: day("2026-11-20"), evidence: Evidence::default() };
        register(&site, &one, |plain| SummaryRecord {
            top: Some(top),
            open_count: 1,
            urgent_unanswered_since: Some(day("2026-11-18")),
            hold_since: Some(day("2026-10-20")),
            last_seen_on: Some(day("2026-07-20")),
            ..plain
        })
        .await;
        tell(&site, n, day("2026-11-15")).await;
    }
    site
}

/// A visit that told of an outcome and of three steps.
async fn tell(site: &Site, n: u128, on: chrono::NaiveDate) {
    let one = child(n, &format!("Child{n:03}"), site.ulopi, site.mireni);
    let mut record = a_visit(n, &one, on);
    record.visit.id = VisitId(n);
    record.visit.outcomes = vec![ToldOutcome { rule: RuleId::WeightLow, outcome: Outcome::Seen }];
    for place in Place::ALL {
        let step = StepId { visit: VisitId(n), place };
        record.talk.agreed.insert(place, Step::Own { words: format!("step {} of {n}", place.number()) });
        record.talk.told.insert(step, Told::of(Some(StepAnswer::Not), None).expect("told"));
    }
    visits::insert(site.db.db.direct(), &record).await.expect("recorded");
}

/// What a list shows on its pages, from the first to the last; `between` is done after each.
async fn walked(
    browser: &mut Browser,
    first: &str,
    on_it: impl Fn(&Browser) -> Vec<String>,
    next: &str,
    mut between: impl AsyncFnMut(),
) -> Vec<String> {
    let (mut lines, mut at) = (Vec::new(), first.to_owned());
    for page in 0.. {
        browser.open(&at).await.is(200);
        assert_eq!(browser.text().contains("First page"), page > 0, "{at}");
        lines.extend(on_it(browser));
        let onward = browser.attrs("main a.link", "href").into_iter().find(|href| href.starts_with(next));
        match onward {
            Some(path) => at = path.split('#').next().expect("a path").to_owned(),
            None => break,
        }
        assert!(page < 9, "{first} never ends");
        between().await;
    }
    lines
}

#[actix_web::test]
async fn every_line_of_a_long_list_stands_on_one_page_and_no_more() {
    let site = crowded().await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/late").await.is(200).says("More than 20 urgent referrals have no answer yet");
    let wholes = ["/late/urgent", "/late/unseen", "/late/held"];
    let links = desk.attrs("main a.link", "href");
    assert!(wholes.iter().all(|path| links.contains(&(*path).to_owned())), "{links:?}");
    for (path, css) in [
        ("/late/urgent", "main .rows a.link[href*='/why/']"),
        ("/late/unseen", "main .rows a.link"),
        ("/late/held", "main .rows a.link"),
        ("/referrals", "tbody a[href$='/referral']"),
    ] {
        let lines = walked(&mut desk, path, |page| page.attrs(css, "href"), &format!("{path}?after="), async || ()).await;
        let each: BTreeSet<&String> = lines.iter().collect();
        assert_eq!((lines.len(), each.len()), (115, 115), "{path}");
    }
    // Nobody else's.
    let mut other = site.signed_in("hembo").await;
    for path in wholes {
        other.open(path).await.is(200).says("None on this page").does_not_say("Child001");
    }
    for path in ["/late/unseen?after=x", "/late/held?after=2026-11-01", "/referrals?told_after=1~2~3", "/agreed-steps?after=~"] {
        desk.open(path).await.is(400);
    }
}

#[actix_web::test]
async fn what_is_told_meanwhile_neither_doubles_nor_drops_a_line_of_the_later_pages() {
    let site = crowded().await;
    let mut desk = site.signed_in("olani").await;
    let mut n = MANY;
    let mut late_news = async || {
        n += 1;
        let one = child(n, "Newcomer", site.ulopi, site.mireni);
        register(&site, &one, |plain| plain).await;
        tell(&site, n, d("2026-11-24")).await;
    };
    let told_steps = |page: &Browser| page.texts("main .rows p").into_iter().filter(|text| text.starts_with("step ")).collect();
    let steps = walked(&mut desk, "/agreed-steps", told_steps, "/agreed-steps?after=", &mut late_news).await;
    let each: BTreeSet<&String> = steps.iter().collect();
    assert_eq!((steps.len(), each.len()), (345, 345), "three steps of each child");
    assert_eq!(desk.texts("h1"), ["Further steps that were difficult"], "the last page does not count its own lines as all");
    desk.open("/agreed-steps").await;
    assert_eq!(desk.texts("h1"), ["More than 50 steps were difficult"]);
    let told_of = |page: &Browser| page.attrs("#told ~ table tbody th a, #told ~ * table tbody th a", "href");
    let told = walked(&mut desk, "/referrals", told_of, "/referrals?told_after=", late_news).await;
    let each: BTreeSet<&String> = told.iter().collect();
    assert_eq!(each.len(), told.len(), "no outcome stands on two pages");
    let at_first: BTreeSet<String> = (1..=MANY).map(|n| format!("/children/{}", code(n))).collect();
    assert!(at_first.iter().all(|path| each.contains(path)), "and none on no page");
}

#[actix_web::test]
async fn a_child_that_the_family_calls_otherwise_has_both_names_on_every_list() {
    let site = Site::new().await;
    let one =
        spoonround::store::children::ChildRecord { known_as: Some("Hemb".to_owned()), ..child(1, "Hembomi", site.ulopi, site.mireni) };
    let top = TopFollowUp { class: Class::Today, rule: RuleId::WastingSevere, due_on: d("2026-11-20"), evidence: Evidence::default() };
    let (urgent, held) = (Some(d("2026-11-18")), Some(d("2026-10-20")));
    register(&site, &one, |plain| SummaryRecord {
        top: Some(top),
        open_count: 1,
        urgent_unanswered_since: urgent,
        hold_since: held,
        ..plain
    })
    .await;
    tell(&site, 1, d("2026-11-15")).await;
    let mut desk = site.signed_in("olani").await;
    for path in ["/late", "/late/urgent", "/late/unseen", "/late/held", "/referrals", "/agreed-steps", "/team/mireni"] {
        desk.open(path).await.is(200).says("Hembomi · Hemb");
    }
}
