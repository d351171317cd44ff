//! Registering a child: faults, what was understood, likely duplicates, sending twice.

use crate::site::Site;

const CHILD: [(&str, &str); 11] = [
    ("name", "Neruka"),
    ("sex", "F"),
    ("born_day", "14"),
    ("born_month", "3"),
    ("born_year", "2026"),
    ("birth_weight", "3,10"),
    ("weeks", "40"),
    ("gestation_source", "card"),
    ("caregiver", "Maruli"),
    ("area", "ulopi"),
    ("consent", "yes"),
];

fn changed<'a>(changes: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let kept = CHILD.into_iter().filter(|(name, _)| !changes.iter().any(|(changed, _)| changed == name));
    kept.chain(changes.iter().copied()).collect()
}

#[actix_web::test]
async fn a_child_is_looked_at_before_it_is_saved() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/children/new").await.is(200);
    browser.submit("main form", &CHILD).await.is(422).says("is this right?").says("3.10 kg").says("40 weeks");
    browser.submit("main form", &[]).await;
    let code = browser.path.strip_prefix("/children/").expect("the child's page").to_owned();
    browser.says("Neruka is registered.");
    browser.open(&format!("/children/{code}/visits/new")).await.is(200).says("Neruka").says("8 months");
}

#[actix_web::test]
async fn all_faults_come_at_once_and_nothing_typed_is_lost() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/children/new").await;
    let wrong = changed(&[("name", ""), ("born_month", "13"), ("birth_weight", "3100"), ("consent", ""), ("directions", "by the <mill>")]);
    browser.submit("main form", &wrong).await.is(422);
    let links = browser.attrs("#summary a", "href");
    assert_eq!(links, ["#name", "#born", "#birth_weight", "#consent"], "{}", browser.text());
    assert_eq!(browser.texts("p.fault").len(), 4);
    let (_, kept) = browser.filled("main form", &[]);
    for pair in [("born_month", "13"), ("birth_weight", "3100"), ("directions", "by the <mill>"), ("caregiver", "Maruli")] {
        assert!(kept.contains(&(pair.0.to_owned(), pair.1.to_owned())), "{pair:?} was lost");
    }
    browser.submit("main form", &[("name", "Neruka"), ("born_month", "3"), ("birth_weight", "3.1"), ("consent", "yes")]).await;
    browser.is(422).says("is this right?");
}

#[actix_web::test]
async fn a_likely_duplicate_is_shown_and_the_worker_decides() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/children/new").await.submit("main form", &CHILD).await.submit("main form", &[]).await;
    let first = browser.path.clone();
    browser.open("/children/new").await.submit("main form", &changed(&[("name", "Neruca"), ("born_day", "15")])).await;
    browser.is(422).says("already registered");
    assert!(browser.attrs(".note a", "href").contains(&first), "the other child's page is one tap away: {}", browser.text());
    browser.submit("main form", &[]).await.is(422).says("already registered");
    browser.submit("main form", &[("other_child", "yes")]).await;
    assert!(browser.path.starts_with("/children/") && browser.path != first, "{}", browser.path);
}

#[actix_web::test]
async fn a_change_after_the_look_is_looked_at_again() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/children/new").await.submit("main form", &CHILD).await.is(422);
    browser.submit("main form", &[("birth_weight", "1,30")]).await.is(422).says("1.30 kg");
    browser.submit("main form", &[]).await;
    assert!(browser.path.starts_with("/children/") && browser.path != "/children/new", "{}", browser.path);
}

#[actix_web::test]
async fn a_form_sent_twice_registers_once() {
    let site = Site::new().await;
    let mut browser = site.signed_in("mireni").await;
    browser.open("/children/new").await.submit("main form", &CHILD).await;
    let (path, pairs) = browser.filled("main form", &[]);
    let first = browser.send(&path, &pairs).await.path.clone();
    assert_eq!(browser.send(&path, &pairs).await.path, first);
    let mut other = pairs.clone();
    other.iter_mut().filter(|(name, _)| name == "caregiver").for_each(|(_, value)| "Anzi".clone_into(value));
    browser.send(&path, &other).await.is(409);
}

#[actix_web::test]
async fn a_supervisor_names_the_worker() {
    let site = Site::new().await;
    let mut browser = site.signed_in("olani").await;
    browser.open("/children/new").await.submit("main form", &CHILD).await.is(422);
    assert_eq!(browser.attrs("#summary a", "href"), ["#worker"], "{}", browser.text());
    browser.submit("main form", &[("worker", "mireni")]).await.submit("main form", &[]).await;
    let child = browser.path.clone();
    let mut worker = site.signed_in("mireni").await;
    worker.open(&format!("{child}/visits/new")).await.is(200);
    let mut stranger = site.signed_in("tamsi").await;
    stranger.open(&format!("{child}/visits/new")).await.is(404);
}
