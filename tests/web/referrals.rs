//! Referrals: the note that goes along, and the list followed to its end.

use spoonround::store::people;
use spoonround::store::people::PersonRecord;

use crate::site::Site;

#[actix_web::test]
async fn a_referral_waits_on_the_list_until_somebody_writes_what_became_of_it() {
    let site = Site::new().await;
    let (code, _) = site.a_child_with_a_visit().await;
    let mut desk = site.signed_in("olani").await;
    desk.open("/referrals").await.is(200).says("One child was sent and has no answer yet").says("Much too thin: arm 113 mm, below 115 mm.");
    assert_eq!(desk.texts("table.stack").len(), 1, "nothing was told yet");

    let mut worker = site.signed_in("mireni").await;
    worker.open(&format!("/children/{code}/visits/new")).await;
    worker.submit("main form", &[("outcome_wasting.severe", "admitted")]).await.is(200);
    desk.open("/referrals").await.says("No referral waits for an answer").says("Admitted").says("Neruka");
    // Another supervisor has neither.
    site.signed_in("hembo").await.open("/referrals").await.is(200).does_not_say("Neruka");
}

#[actix_web::test]
async fn the_note_tells_why_with_the_numbers_and_leaves_room_for_the_answer() {
    let site = Site::new().await;
    let (code, _) = site.a_child_with_a_visit().await;
    let mut worker = site.signed_in("mireni").await;
    worker.open(&format!("/children/{code}/referral")).await.is(200);
    worker.says("Neruka").says("With Teveli, Ulopi").says("Sent by Mireni on 25 November 2026").says("Much too thin: arm 113 mm");
    worker
        .says("25 November 2026: 7.10 kg, weight-for-age")
        .says("arm 113 mm")
        .says("Answer of the clinic")
        .says("not a diagnosis")
        .says("Tell Mireni");
    let mireni = people::by_id(site.db.db.direct(), site.mireni).await.expect("readable").expect("somebody");
    let phone = Some("+00 555 0142".to_owned());
    people::update(site.db.db.direct(), &PersonRecord { phone, ..mireni }).await.expect("written");
    site.signed_in("olani")
        .await
        .open(&format!("/children/{code}/referral"))
        .await
        .says("Sent by Olani")
        .says("Tell Mireni , +00 555 0142");
    site.signed_in("tamsi").await.open(&format!("/children/{code}/referral")).await.is(404);
    site.signed_in("bemu").await.open(&format!("/children/{code}/referral")).await.is(403);
}
