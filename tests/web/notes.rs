//! What a supervisor writes to the worker about a child.

use spoonround::store::audit;
use spoonround::store::summaries::SlotDays;
use spoonround::store::summaries::SummaryRecord;

use crate::families::child;
use crate::families::code;
use crate::families::d;
use crate::families::register;
use crate::site::Site;

async fn a_child_due() -> (Site, String) {
    let site = Site::new().await;
    let open = SlotDays { target: d("2026-12-01"), opens: d("2026-11-24"), closes: d("2026-12-11") };
    register(&site, &child(1, "Fanu", site.ulopi, site.mireni), |line| SummaryRecord { slot: Some(open), ..line }).await;
    (site, format!("/children/{}", code(1)))
}

const WORDS: &str = "Look at the feet, and ask who cooks at noon.";
const DAY: [(&str, &str); 3] = [("together_day", "3"), ("together_month", "12"), ("together_year", "2026")];

#[actix_web::test]
async fn a_note_waits_on_the_round_and_the_child_until_the_worker_sets_it_aside() {
    let (site, path) = a_child_due().await;
    let mut worker = site.signed_in("mireni").await;
    worker.open("/round").await.is(200).does_not_say("A word from the supervisor");

    let mut desk = site.signed_in("olani").await;
    desk.open(&format!("{path}/note")).await.submit("main form", &[&[("words", WORDS)][..], &DAY].concat()).await;
    desk.is(200).says("The word is left for the worker.").says(WORDS);

    worker.open("/round").await.says("A word from the supervisor");
    worker.open(&path).await.says(WORDS).says("Olani comes along on Thursday 3 December.");
    worker.submit("main form[action$='/done']", &[]).await.is(200).does_not_say(WORDS);
    worker.open("/round").await.does_not_say("A word from the supervisor");
    // Whoever wrote it sees for a while that it was read.
    desk.open(&path).await.says("Note of Olani, read on 25 November by Mireni:").says(WORDS);
    let day = |text: &str| text.parse::<chrono::NaiveDate>().expect("a day").and_hms_opt(12, 0, 0).expect("noon").and_utc();
    for (on, shown) in [("2026-12-09", true), ("2026-12-10", false)] {
        site.clock.set(day(on));
        let mut desk = site.signed_in("olani").await;
        desk.open(&path).await.is(200);
        assert_eq!(desk.text().contains("read on 25 November"), shown, "{on}");
    }
    let done = audit::of_object(site.db.db.direct(), "child", &code(1), None, 9).await.expect("readable");
    let actions: Vec<&str> = done.iter().rev().map(|(_, entry)| entry.action.as_str()).collect();
    assert_eq!(actions, ["note.write", "note.done"]);
}

#[actix_web::test]
async fn a_note_needs_words_and_a_day_ahead_and_keeps_what_was_typed() {
    let (site, path) = a_child_due().await;
    let mut desk = site.signed_in("olani").await;
    let yesterday = [("words", "Come early"), ("together_day", "24"), ("together_month", "11"), ("together_year", "2026")];
    desk.open(&format!("{path}/note")).await.submit("main form", &yesterday).await.is(422);
    assert_eq!(desk.texts("textarea[name=words]"), ["Come early"]);
    desk.open(&format!("{path}/note")).await.submit("main form", &[]).await.is(422);
}

#[actix_web::test]
async fn nobody_writes_or_reads_about_a_child_of_another_area() {
    let (site, path) = a_child_due().await;
    site.signed_in("olani").await.open(&format!("{path}/note")).await.submit("main form", &[("words", WORDS)]).await.is(200);
    for (name, address) in [("hembo", format!("{path}/note")), ("tamsi", path.clone()), ("hembo", path.clone())] {
        site.signed_in(name).await.open(&address).await.is(404).does_not_say(WORDS);
    }
    // A worker reads, and writes none.
    site.signed_in("mireni").await.open(&format!("{path}/note")).await.is(403);
}
