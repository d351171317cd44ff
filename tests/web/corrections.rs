//! Correcting the record: taking a visit back. Each has one effect, however often it is sent, and none from a stale page.

use domain::child_code::ChildCode;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use spoonround::store::Scope;
use spoonround::store::children;
use spoonround::store::children::ChildRecord;
use spoonround::store::corrections;
use spoonround::store::follow_ups;
use spoonround::store::visits;

use crate::harness::Browser;
use crate::site::Site;

pub async fn child(site: &Site, code: &str) -> ChildRecord {
    let code = ChildCode::parse(code).expect("a code");
    children::by_code_in_scope(site.db.db.direct(), Scope::Everything, code.as_str()).await.expect("readable").expect("a child")
}

/// The rules of what is open, and of what was closed because the record was corrected.
pub async fn standing(site: &Site, child: &ChildRecord) -> (Vec<RuleId>, Vec<RuleId>) {
    let all = follow_ups::of_child(site.db.db.direct(), child.id).await.expect("readable");
    let mut open: Vec<RuleId> = all.iter().filter(|f| f.closing.is_none()).map(|f| f.rule).collect();
    let corrected = |f: &&follow_ups::FollowUpRecord| f.closing.as_ref().is_some_and(|c| c.reason == CloseReason::RecordCorrected);
    let mut closed: Vec<RuleId> = all.iter().filter(corrected).map(|f| f.rule).collect();
    open.sort();
    closed.sort();
    (open, closed)
}

/// The form of a page sent from another session: with that session's own token.
pub async fn send_as(sender: &mut Browser, path: &str, pairs: &[(String, String)]) {
    sender.open("/children/new").await;
    let token = sender.filled("main form", &[]).1.into_iter().find(|(name, _)| name == "token").expect("a token");
    let pairs: Vec<_> = pairs.iter().filter(|(name, _)| name != "token").cloned().chain([token]).collect();
    sender.send(path, &pairs).await;
}

const REASON: [(&str, &str); 2] = [("reason", "wrong_child"), ("note", "It was her cousin, same name.")];

#[actix_web::test]
async fn a_visit_taken_back_closes_what_it_caused_and_stays_on_record() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let record = child(&site, &code).await;
    let (open, _) = standing(&site, &record).await;
    assert!(open.contains(&RuleId::WastingSevere), "{open:?}");
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/correct")).await.is(200);
    let ways = browser.attrs("main ul.plain a", "href");
    assert!(ways.contains(&format!("/children/{code}/visits/{seq}/void")), "{ways:?}");
    browser.open(&format!("/children/{code}/visits/{seq}/void")).await.is(200);
    browser.says("7.10 kg").says("entered by Mireni").says("An urgent follow-up would close").says("113 mm");
    browser.submit("main form", &[]).await.is(422);
    assert_eq!(browser.attrs("#summary a", "href"), ["#reason", "#note"]);
    browser.submit("main form", &[("note", "too short")]).await.is(422);
    assert_eq!(browser.texts("textarea[name=note]"), ["too short"]);
    let (path, pairs) = browser.filled("main form", &REASON);
    browser.send(&path, &pairs).await.is(200).says("The visit was taken back").says("No visits yet");
    browser.says("was taken back: Entered for the wrong child").says("It was her cousin, same name.").says("Mireni, 25 November");
    assert_eq!(standing(&site, &record).await, (Vec::new(), open));
    // The same form once more is the same act.
    browser.send(&path, &pairs).await.is(200).says("The visit was taken back");
    let made = corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable");
    assert_eq!(made.len(), 1, "{made:?}");
    let kept = visits::voided_of_child(site.db.db.direct(), record.id).await.expect("readable");
    assert_eq!(kept.iter().map(|v| v.visit.weight.map(domain::units::Weight::grams)).collect::<Vec<_>>(), [Some(7100)]);
    let versions = visits::versions_of(site.db.db.direct(), kept[0].visit.id).await.expect("readable");
    assert!(versions.len() == 1 && versions[0].content.contains("weight_g\t7100"), "{versions:?}");
    // It stays readable, with who took it back and why.
    browser
        .open(&format!("/children/{code}/visits"))
        .await
        .is(200)
        .says("taken back")
        .says("7.10 kg")
        .says("It was her cousin, same name.");
    let answers = browser.texts("main details ul.plain li").join(" ");
    assert!(answers.contains("113 mm") && answers.contains("7.10 kg"), "{answers}");
    assert!(!browser.attrs("main a", "href").iter().any(|href| href.ends_with("/correct")), "nothing is left to correct");
    browser.open(&format!("/children/{code}")).await;
    // What it caused is still told of, and is not mistaken for what a later visit opens.
    let reasons = |browser: &Browser| browser.attrs("main a[href*='/why/wasting.severe/']", "href");
    let closed = reasons(&browser);
    assert_eq!(closed, [format!("/children/{code}/why/wasting.severe/1")]);
    browser.open(&closed[0]).await.is(200).says("the record was corrected");
    browser.open(&format!("/children/{code}/visits/new")).await.submit("main form", &[("arm", "112")]).await.is(200);
    browser.open(&format!("/children/{code}")).await;
    let all = reasons(&browser);
    assert!(all.contains(&format!("/children/{code}/why/wasting.severe/2")), "{all:?}");
    browser.open(&format!("/children/{code}/why/wasting.severe/2")).await.is(200).says("112 mm").does_not_say("the record was corrected");
}

#[actix_web::test]
async fn what_a_correction_replaced_is_told_answer_by_answer_with_danger_first() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/correct")).await;
    let changes = [("arm", "131"), ("meals", "2"), ("danger", "fits_now"), ("feet", "no"), ("reason", "written to the wrong line")];
    browser.submit("main form", &changes).await.is(200);
    browser.open(&format!("/children/{code}/visits")).await.is(200).says("written to the wrong line");
    let told = browser.texts("main details ul.plain li");
    assert!(told[0].starts_with("Signs today") && told[0].ends_with("Has fits now"), "{told:?}");
    assert!(told[1].starts_with("Both feet swollen?"), "{told:?}");
    assert!(told.iter().any(|line| line.contains("113 mm → 131 mm")), "{told:?}");
}

#[actix_web::test]
async fn the_same_key_with_other_words_is_refused() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/void")).await;
    let (path, pairs) = browser.filled("main form", &REASON);
    let other: Vec<_> =
        pairs.iter().map(|(k, v)| (k.clone(), if k == "note" { "Quite another reason.".to_owned() } else { v.clone() })).collect();
    browser.send(&path, &pairs).await.is(200);
    browser.send(&path, &other).await.is(409);
    let record = child(&site, &code).await;
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable").len(), 1);
}

#[actix_web::test]
async fn a_page_shown_before_somebody_corrected_the_visit_changes_nothing() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let record = child(&site, &code).await;
    let (mut first, mut second) = (site.signed_in("mireni").await, site.signed_in("olani").await);
    let page = format!("/children/{code}/visits/{seq}/void");
    first.open(&page).await;
    let (path, stale) = first.filled("main form", &REASON);
    second.open(&format!("/children/{code}/visits/{seq}/correct")).await;
    second.submit("main form", &[("arm", "140"), ("reason", "a digit was misread")]).await.is(200);
    first.send(&path, &stale).await.is(409).says("Somebody changed this visit meanwhile").says("arm 140");
    assert_eq!(first.texts("textarea[name=note]"), [REASON[1].1], "nothing typed is lost");
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable"), []);
    first.submit("main form", &[]).await.is(200).says("The visit was taken back");
    // And whoever comes after that finds no visit to take back.
    second.open(&page).await.is(409).says("Somebody took it back or moved it");
    first.send(&path, &stale).await.is(409).says("Nothing was changed by you");
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable").len(), 1);
}

#[actix_web::test]
async fn nobody_takes_back_a_visit_of_a_child_they_do_not_look_after() {
    let site = Site::new().await;
    let (code, seq) = site.a_child_with_a_visit().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open(&format!("/children/{code}/visits/{seq}/void")).await;
    let (path, pairs) = browser.filled("main form", &REASON);
    for name in ["tamsi", "hembo"] {
        let mut stranger = site.signed_in(name).await;
        stranger.open(&path).await.is(404);
        send_as(&mut stranger, &path, &pairs).await;
        stranger.is(404);
    }
    // Nor through the address of a child that the stranger does look after.
    let own = a_child_of(&site, "tamsi", "Lomi", "mbiro").await;
    let mut stranger = site.signed_in("tamsi").await;
    stranger.open(&format!("/children/{own}/visits/{seq}/void")).await.is(404);
    let record = child(&site, &code).await;
    assert_eq!(corrections::of_children(site.db.db.direct(), &[record.id]).await.expect("readable"), []);
}

/// A child registered by this worker, born 14 March 2026; its code.
pub async fn a_child_of(site: &Site, worker: &str, name: &str, area: &str) -> String {
    let mut browser = site.signed_in(worker).await;
    let fields = [
        ("name", name),
        ("sex", "F"),
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("caregiver", name),
        ("area", area),
        ("consent", "yes"),
    ];
    browser.open("/children/new").await.submit("main form", &fields).await.submit("main form", &[]).await;
    let at = browser.path.strip_prefix("/children/").unwrap_or_else(|| panic!("registered: {} {}", browser.path, browser.text()));
    at.split(['/', '?']).next().unwrap_or_default().to_owned()
}
