//! How measuring goes, for a supervisor's team.

use spoonround::store::audit;

use crate::families::child;
use crate::families::d;
use crate::families::register;
use crate::families::weigh;
use crate::site::Site;

#[actix_web::test]
async fn heaped_weights_ask_to_look_again_with_something_to_try_and_rank_nobody() {
    let site = Site::new().await;
    let fanu = child(1, "Fanu", site.ulopi, site.mireni);
    register(&site, &fanu, |line| line).await;
    // Fifty visits that read to half a kilogram on a scale that can show 10 g (one weight says so), each unlike the one before.
    for n in 0..50_u32 {
        let on = d("2026-09-15") + chrono::Days::new(u64::from(n));
        let grams = if n == 0 { 6_980 } else { 7_000 + n % 2 * 500 };
        weigh(&site, u128::from(100 + n), &fanu, &on.to_string(), grams).await;
    }
    let mut desk = site.signed_in("olani").await;
    desk.open("/quality")
        .await
        .is(200)
        .says("How measuring goes: 50 visits")
        .says("For support, not ranking")
        .says("Internal, not for sharing.")
        .says("Back to Workers");
    // 49 of 50 end in 0 and one in 8: half the sum of |98−10|, |2−10| and eight times 10 is 88.
    desk.says("88 look again").says("Read the scale to its last digit");
    desk.does_not_say("Same weight as before, %: ").does_not_say("Weigh anew at each visit");
    desk.says("How far z-scores lie apart");
    // The file has everybody, the area and the worker, by codes; who took it is written down.
    desk.peek("/quality.csv").await.is(200);
    let text = desk.body.clone();
    let lines: Vec<Vec<&str>> = text.lines().map(|line| line.split(',').collect()).collect();
    let at = |line: usize, column: &str| {
        let place = lines[0].iter().position(|name| *name == column).unwrap_or_else(|| panic!("a column {column}"));
        lines[line][place]
    };
    assert_eq!(lines.len(), 4);
    let whose: Vec<(&str, &str)> = (1..4).map(|line| (at(line, "area"), at(line, "worker_code"))).collect();
    assert_eq!(whose, [("all", "all"), ("ulopi", "all"), ("all", "mireni")]);
    for line in 1..4 {
        assert_eq!((at(line, "n_weight"), at(line, "n_length"), at(line, "digit_spread_weight")), ("50", "0", "88.0"));
        assert_eq!((at(line, "complete_length_pct"), at(line, "sd_waz"), at(line, "period")), ("0.0", "", "to-2026-11-25"));
        assert_eq!(at(line, "look_again"), "\"digits_weight;complete_length;complete_arm\"");
    }
    assert!(!text.contains("Fanu") && !text.contains("Mireni"), "codes only");
    let taken = audit::of_object(site.db.db.direct(), "report", "to-2026-11-25", None, 5).await.expect("readable");
    assert_eq!(taken.iter().map(|(_, entry)| entry.action.as_str()).collect::<Vec<_>>(), ["quality.download"]);
    site.signed_in("mireni").await.peek("/quality.csv").await.is(403);
    site.signed_in("bemu").await.peek("/quality.csv").await.is(403);
    // In one month are fewer than fifty: nothing is judged.
    desk.open("/quality?month=2026-10").await.is(200).says("31 visits").says("too few").does_not_say("look again Days");
    assert!(desk.texts("h2").iter().all(|heading| heading != "What to try together"), "{:?}", desk.texts("h2"));
    desk.open("/quality?month=2026-12").await.is(404);
    desk.open("/quality?month=soon").await.is(400);
    site.signed_in("hembo").await.open("/quality").await.is(200).says("0 visits");
    site.signed_in("mireni").await.open("/quality").await.is(403);
}
