//! A worker's children given to a colleague at once, and somebody standing in.

use domain::evidence::Evidence;
use domain::rule::Class;
use domain::rule::RuleId;
use spoonround::store::children;
use spoonround::store::people;
use spoonround::store::people::PersonRecord;
use spoonround::store::placements;
use spoonround::store::summaries::SlotDays;
use spoonround::store::summaries::SummaryRecord;
use spoonround::store::summaries::TopFollowUp;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::site::Site;

fn opens(day: &str) -> impl FnOnce(SummaryRecord) -> SummaryRecord {
    let slot = SlotDays { target: d("2026-12-20"), opens: d(day), closes: d("2026-12-28") };
    move |line| SummaryRecord { slot: Some(slot), ..line }
}

/// The last day of somebody.
async fn leaves(site: &Site, name: &str, last: &str) {
    let person = people::by_sign_in_name(site.db.db.direct(), name).await.expect("readable").expect("somebody");
    people::update(site.db.db.direct(), &PersonRecord { ended_on: Some(d(last)), ..person }).await.expect("written");
}

/// The form for a stand-in, from and to a day of November 2026.
fn away<'a>(who: &'a str, from: &'a str, to: &'a str) -> [(&'a str, &'a str); 7] {
    let [month, year] = [["from_month", "to_month"], ["from_year", "to_year"]];
    [("covered_by", who), ("from_day", from), (month[0], "11"), (year[0], "2026"), ("to_day", to), (month[1], "11"), (year[1], "2026")]
}

/// Three children of Mireni in Ulopi: two are due within seven days, the third one day later.
async fn three() -> Site {
    let site = Site::new().await;
    for (n, name, day) in [(1, "Fanu", "2026-11-20"), (2, "Sela", "2026-12-02"), (3, "Rumi", "2026-12-03")] {
        register(&site, &child(n, name, site.ulopi, site.mireni), opens(day)).await;
    }
    site
}

async fn with(site: &Site, n: u128) -> domain::ids::PersonId {
    let all = children::by_ids(site.db.db.direct(), &[child(n, "", site.ulopi, site.mireni).id]).await.expect("readable");
    all[0].worker
}

const REASON: &str = "Tamsi lives on that side of the hill.";

#[actix_web::test]
async fn ticked_children_go_over_together_and_where_they_were_stays() {
    let site = three().await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await.is(200).says("3 children; within 7 days something is due for 2.");
    assert_eq!(desk.texts("select[name=colleague] option"), ["Choose", "Tamsi: 0 children, 0 due within 7 days"]);
    let ticked = [("child", &*format!("{}~1", code(1))), ("child", &format!("{}~1", code(3))), ("colleague", "tamsi"), ("reason", REASON)];
    desk.submit("form[action$='/give']", &ticked).await.is(200).says("2 children are with Tamsi now.").says("One child; within 7 days");
    for (n, whose) in [(1, site.tamsi), (2, site.mireni), (3, site.tamsi)] {
        assert_eq!(with(&site, n).await, whose, "child {n}");
    }
    let places = placements::of_child(site.db.db.direct(), child(1, "", site.ulopi, site.mireni).id).await.expect("readable");
    let told: Vec<_> = places.iter().map(|p| (p.worker, p.area, p.reason.as_str())).collect();
    assert_eq!(told.last(), Some(&(site.tamsi, site.ulopi, REASON)));
    site.signed_in("tamsi").await.open("/round").await.says("Fanu").does_not_say("Sela");
}

#[actix_web::test]
async fn who_shares_out_children_sees_the_hours_on_foot_where_somebody_wrote_down_the_way() {
    let site = three().await;
    let elsewhere = child(4, "Deko", site.mbiro, site.mireni);
    register(&site, &elsewhere, opens("2026-11-20")).await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await.is(200).says("The way to them: way not known.");
    let mut office = site.signed_in("teveli").await;
    office.open("/areas/ulopi").await.submit("main form", &[("walk", "6oo")]).await.is(422);
    assert_eq!(office.attrs("#walk", "value"), ["6oo"], "kept as typed");
    office.submit("main form", &[("walk", "600000")]).await.is(422).says("between 0 and 600 min.");
    office.submit("main form", &[("walk", "٤٥")]).await.is(200);
    office.says("ulopi , 45 minutes on foot").says("mbiro , minutes on foot not written yet");
    office.open("/areas/ulopi").await;
    assert_eq!(office.attrs("#walk", "value"), ["45"]);
    // Two are due in Ulopi, 45 minutes each, and one on Mbiro Hill.
    desk.open("/team/mireni").await.says("The way to them: at least 2 hours on foot, way known in part.");
    office.open("/areas/mbiro").await.submit("main form", &[("walk", "75")]).await.is(200);
    // 90 and 75 minutes are 165, nearer to three hours than to two.
    desk.open("/team/mireni").await.says("something is due for 3. The way to them: about 3 hours on foot.");
    register(&site, &child(5, "Kiva", site.ulopi, site.tamsi), opens("2026-11-20")).await;
    desk.open("/team/mireni").await;
    assert_eq!(desk.texts("select[name=colleague] option")[1], "Tamsi: one child, 1 due within 7 days, about one hour on foot, in Ulopi");
}

#[actix_web::test]
async fn the_day_of_a_follow_up_is_the_last_to_look_and_not_the_day_it_happens() {
    let site = three().await;
    let emergency = TopFollowUp { class: Class::Now, rule: RuleId::DangerGeneral, due_on: d("2026-11-29"), evidence: Evidence::default() };
    register(&site, &child(4, "Deko", site.ulopi, site.mireni), |plain| SummaryRecord { top: Some(emergency), open_count: 1, ..plain })
        .await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await.is(200).says("Emergency, check by 29 November").does_not_say("Emergency, 29");
}

#[actix_web::test]
async fn one_changed_child_keeps_all_where_they_are_and_nothing_typed_is_lost() {
    let site = three().await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await;
    let mut other = site.signed_in("olani").await;
    let moved = [("worker", "tamsi"), ("area", "ulopi"), ("reason", "Asked for by the family")];
    other.open(&format!("/children/{}/move", code(3))).await.submit("main form", &moved).await.is(200);
    let ticked = [("child", &*format!("{}~1", code(1))), ("child", &format!("{}~1", code(3))), ("colleague", "tamsi"), ("reason", REASON)];
    desk.submit("form[action$='/give']", &ticked).await.is(409).says("Rumi was changed by somebody else");
    assert_eq!(desk.texts("textarea[name=reason]"), [REASON]);
    assert_eq!(with(&site, 1).await, site.mireni);
    desk.open("/team/mireni").await.submit("form[action$='/give']", &[("reason", "short")]).await.is(422);
    desk.says("Which children: Tick at least one child.");
    assert_eq!(desk.texts("textarea[name=reason]"), ["short"]);
}

#[actix_web::test]
async fn a_supervisor_finds_a_stand_in_for_the_own_team_only() {
    let site = three().await;
    let mut desk = site.signed_in("olani").await;
    let days = [("from_day", "25"), ("from_month", "11"), ("from_year", "2026"), ("to_day", "30"), ("to_month", "11"), ("to_year", "2026")];
    let typed: Vec<(&str, &str)> = [("covered_by", "tamsi")].into_iter().chain(days).collect();
    desk.open("/team/mireni").await.submit("form[action$='/cover']", &typed).await.is(200).says("Tamsi");
    assert_eq!(desk.path, "/team/mireni?stands_in=tamsi&from=2026-11-25");
    desk.says("Saved: Tamsi stands in from 25 November to 30 November.");
    site.signed_in("tamsi").await.open("/round").await.says("Fanu");
    // Who is away is marked where somebody looks for a receiver or a stand-in of another.
    register(&site, &child(5, "Kiva", site.ulopi, site.tamsi), |plain| plain).await;
    desk.open("/team/tamsi").await;
    for select in ["select[name=colleague] option", "select[name=covered_by] option"] {
        assert_eq!(desk.texts(select)[1], "Mireni: 3 children, 2 due within 7 days, way not known, in Ulopi, away until 30 November");
    }
    desk.open("/team/mireni").await;
    assert!(!desk.texts("select[name=colleague] option")[1].contains("away"), "who stands in is here");
    desk.submit("form[action$='/cover/end']", &[]).await.is(200);
    site.signed_in("tamsi").await.open("/round").await.does_not_say("Fanu");
    // Without a stand-in named, or with days that are over, nothing is written.
    desk.open("/team/mireni").await.submit("form[action$='/cover']", &days).await.is(422);
    // Neither the page nor the acts reach a worker of another team.
    let mut other = site.signed_in("hembo").await;
    other.open("/team/mireni").await.is(404);
    site.signed_in("mireni").await.open("/team/mireni").await.is(403);
}

#[actix_web::test]
async fn nobody_is_given_children_after_their_last_day_and_nothing_typed_is_lost() {
    let site = three().await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await;
    let mut mover = site.signed_in("olani").await;
    mover.open(&format!("/children/{}/move", code(1))).await;
    let mut adds = site.signed_in("olani").await;
    adds.open("/children/new").await;
    let mut late = site.signed_in("olani").await;
    late.open("/team/mireni").await;
    // The forms are open; meanwhile the last day of who stands in them is over.
    leaves(&site, "tamsi", "2026-11-24").await;
    let told = "The last day of Tamsi was 24 November 2026. Choose a colleague who still works in the programme.";
    let ticked = [("child", &*format!("{}~1", code(1))), ("colleague", "tamsi"), ("reason", REASON)];
    desk.submit("form[action$='/give']", &ticked).await.is(422).says(told);
    assert_eq!(desk.texts("textarea[name=reason]"), [REASON]);
    desk.open("/team/mireni").await;
    assert_eq!(desk.texts("select[name=colleague] option"), ["Choose"], "who has left is not offered any more");
    mover.submit("main form", &[("worker", "tamsi"), ("area", "ulopi"), ("reason", REASON)]).await.is(422).says(told);
    assert_eq!(mover.texts("textarea[name=reason]"), [REASON]);
    late.submit("form[action$='/cover']", &away("tamsi", "25", "30")).await.is(422).says(told);
    assert_eq!(late.attrs("#from", "value"), ["25"]);
    let infant = [
        ("name", "Neruka"),
        ("sex", "F"),
        ("born_day", "14"),
        ("born_month", "3"),
        ("born_year", "2026"),
        ("caregiver", "Teveli"),
        ("area", "ulopi"),
        ("worker", "tamsi"),
        ("consent", "yes"),
    ];
    adds.submit("main form", &infant).await.submit("main form", &[("worker", "tamsi")]).await.is(422).says(told);
    assert_eq!(with(&site, 1).await, site.mireni);
}

#[actix_web::test]
async fn children_whose_worker_has_left_are_named_until_somebody_has_them() {
    let site = three().await;
    let mut desk = site.signed_in("olani").await;
    let told = "3 children are with Mireni, whose last day was 24 November. Nobody stands in.";
    leaves(&site, "mireni", "2026-11-25").await;
    desk.open("/late").await.is(200).does_not_say("whose last day");
    leaves(&site, "mireni", "2026-11-24").await;
    for page in ["/late", "/team"] {
        desk.open(page).await.is(200).says(told);
        assert!(desk.attrs("main a", "href").contains(&"/team/mireni#give".to_owned()), "{page}");
    }
    // What happened may still be recorded.
    desk.open(&format!("/children/{}/visits/new", code(1))).await.is(200);
    // The child's form offers no one who has left, and chooses nobody by itself.
    desk.open(&format!("/children/{}/move", code(1))).await;
    assert_eq!(desk.texts("select[name=worker] option"), ["Choose", "Tamsi"]);
    desk.open("/team/mireni").await.submit("form[action$='/cover']", &away("tamsi", "25", "30")).await.is(200);
    desk.open("/late").await.does_not_say("whose last day");
    desk.open("/team").await.does_not_say("whose last day").says("Tamsi stands in");
}

#[actix_web::test]
async fn a_stand_in_is_there_on_all_the_days_and_is_the_only_one() {
    let site = three().await;
    let mut office = site.signed_in("teveli").await;
    // Tamsi is away herself from the 28th on.
    let form = "form[action$='/cover']";
    office.open("/people/tamsi").await.submit(form, &away("mireni", "28", "30")).await.is(200);
    office.says("Saved: Mireni stands in from 28 November to 30 November.");
    let mut desk = site.signed_in("olani").await;
    desk.open("/team/mireni").await.submit(form, &away("tamsi", "25", "28")).await.is(422);
    desk.says("Tamsi is away from 28 November 2026 to 30 November 2026. Choose a colleague who is here on all of these days");
    assert_eq!((desk.attrs("#from", "value"), desk.attrs("#to", "value")), (vec!["25".to_owned()], vec!["28".to_owned()]));
    desk.submit(form, &away("tamsi", "25", "27")).await.is(200);
    desk.open("/team/mireni").await.submit(form, &away("tamsi", "27", "27")).await.is(422);
    desk.says("Tamsi stands in from 25 November 2026 to 27 November 2026 already.");
    leaves(&site, "tamsi", "2026-11-26").await;
    desk.open("/team/mireni").await.submit("form[action$='/cover/end']", &[]).await.is(200);
    desk.open("/team/mireni").await.submit(form, &away("tamsi", "25", "27")).await.is(422);
    desk.says("The last day of Tamsi is 26 November 2026, before these days are over.");
    // Whoever stood in and is away as well: the children are with nobody.
    desk.submit(form, &away("tamsi", "25", "26")).await.is(200);
    desk.open("/late").await.does_not_say("not there either");
    office.open("/people/tamsi").await.submit(form, &away("mireni", "25", "26")).await.is(422).says("Mireni is away");
}
