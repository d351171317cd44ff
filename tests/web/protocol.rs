//! The protocol as a document, rehearsing another, adopting it: who sees what, and that nothing is kept until it is adopted.

use actix_web::test::TestRequest;
use domain::rule::RuleId;
use spoonround::files::protocol_toml::DEFAULT_TEXT;
use spoonround::store::audit;
use spoonround::store::people;
use spoonround::store::protocols;

use crate::checks;
use crate::harness::Browser;
use crate::site::Site;

/// The built-in protocol as another version with one place changed.
fn changed(from: &str, to: &str) -> String {
    assert!(DEFAULT_TEXT.contains(from), "the built-in protocol holds {from:?}");
    DEFAULT_TEXT.replacen("version = \"1", "version = \"7.0.0\"\n# was 1", 1).replacen(from, to, 1)
}

async fn rehearse<'b>(browser: &'b mut Browser, text: &str) -> &'b mut Browser {
    browser.open("/protocol/rehearse").await.submit("main form", &[("text", text)]).await
}

async fn adopted(site: &Site) -> Vec<(String, String)> {
    let all = protocols::all(site.db.db.direct()).await.expect("readable");
    all.into_iter().map(|record| (record.version, record.effective_from.to_string())).collect()
}

#[actix_web::test]
async fn everybody_signed_in_reads_the_protocol_with_its_figures_and_a_place_to_sign() {
    let site = Site::new().await;
    for name in ["mireni", "olani", "bemu", "teveli"] {
        let mut browser = site.signed_in(name).await;
        browser.open("/protocol").await.is(200);
        browser.says("Feeding protocol default-6-23, version 1.").says("Not approved by a clinician.");
        browser.says("upper arm under 115 mm").says("Source: WHO/UNICEF 2009: 115 mm and -3").says("Signature").says("Changes wanted");
        browser.says("2 to 3 tablespoons, rising to half of a 250 ml cup").says("At 9 months below");
        browser.says("Closes: at the first visit on a later day at which this is so: Weight for age −3.00 or above.");
        browser.says("at the second of two visits, 7 days or more apart, at which this is so: Both feet looked at and not swollen.");
        browser.says("Energy from: USDA FoodData Central").does_not_say("Water: 0 ml").does_not_say("From 9 to 9");
        browser.says("Honey: Source:");
        assert_eq!(
            browser.attrs("main nav.jump a", "href").len(),
            browser.texts("main .doc h2[id]").len(),
            "{:?}",
            browser.texts("main h2")
        );
        let rules = browser.texts("main h3");
        for rule in RuleId::ALL {
            assert!(rules.iter().any(|heading| heading.ends_with(&format!("({})", rule.code()))), "{} for {name}", rule.code());
        }
        let may_change = matches!(name, "olani" | "teveli");
        let links = browser.attrs("main a", "href");
        assert_eq!(links.iter().any(|href| href == "/protocol/rehearse"), may_change, "{name}");
        assert_eq!(links.iter().any(|href| href.ends_with("/file")), may_change, "{name}: {links:?}");
    }
    let mut browser = site.signed_in("olani").await;
    browser.open("/protocol").await;
    let file = browser.attrs("main a", "href").into_iter().find(|href| href.ends_with("/file")).expect("its file");
    browser.open(&file).await.is(200);
    assert_eq!(browser.body, DEFAULT_TEXT, "the file as it was adopted");
    browser.open("/protocol/adopted/1").await.is(200).says("version 1.");
    browser.open("/protocol/adopted/77").await.is(404);
    browser.open("/protocol/adopted/x").await.is(404);
}

#[actix_web::test]
async fn a_file_that_cannot_be_used_shows_every_fault_and_keeps_the_text() {
    let site = Site::new().await;
    let text = DEFAULT_TEXT.replacen("muac_mm = 5", "muac_mm = 0", 1).replacen("id = \"bottle.used\"", "id = \"bottle.use\"", 1);
    let text = text.replacen("start_age_days", "strat_age_days", 1);
    for name in ["olani", "teveli"] {
        let mut browser = site.signed_in(name).await;
        rehearse(&mut browser, &text).await.is(422);
        let line = text.lines().position(|line| line == "muac_mm = 0").expect("a line") + 1;
        browser.says(&format!("Line {line}, tolerance.muac_mm: must be a whole number from 1 to 50"));
        browser.says("unknown rule: \"bottle.use\"").says("the rule \"bottle.used\" is missing").says("strat_age_days: is not a known key");
        browser.says("Nothing was changed.");
        assert_eq!(browser.filled("main form", &[]).1.iter().find(|(name, _)| name == "text").map(|(_, t)| t.trim()), Some(text.trim()));
        rehearse(&mut browser, "version = ").await.is(422).says("Line 1:").says("not valid TOML");
        rehearse(&mut browser, "").await.is(422).says("protocol: is missing");
    }
    assert_eq!(adopted(&site).await.len(), 1);
}

/// The rehearsal form with a file chosen, as a browser sends it.
async fn choose<'b>(browser: &'b mut Browser, name: &str, bytes: &[u8], pasted: &str) -> &'b mut Browser {
    let (_, pairs) = browser.open("/protocol/rehearse").await.filled("main form", &[("text", pasted), ("file", "")]);
    assert_eq!(browser.attrs("main form", "enctype"), ["multipart/form-data"]);
    let mut body = Vec::new();
    for (field, value) in pairs.iter().filter(|(field, _)| field != "file") {
        body.extend(format!("--edge\r\nContent-Disposition: form-data; name=\"{field}\"\r\n\r\n{value}\r\n").bytes());
    }
    let head = format!("--edge\r\nContent-Disposition: form-data; name=\"file\"; filename=\"{name}\"\r\nContent-Type: text/plain\r\n\r\n");
    body.extend(head.bytes().chain(bytes.iter().copied()).chain(*b"\r\n--edge--\r\n"));
    let request = TestRequest::post()
        .uri("/protocol/rehearse")
        .insert_header(("content-type", "multipart/form-data; boundary=edge"))
        .insert_header(("sec-fetch-site", "same-origin"))
        .set_payload(body);
    browser.request(request, "/protocol/rehearse").await;
    browser
}

#[actix_web::test]
async fn a_chosen_file_is_rehearsed_and_one_that_is_no_protocol_gets_one_clear_sentence() {
    let site = Site::new().await;
    let text = changed("muac_below_mm = 115", "muac_below_mm = 112");
    let mut browser = site.signed_in("teveli").await;
    choose(&mut browser, "ours.toml", text.replace('\n', "\r\n").as_bytes(), "").await.is(200).says("Under default-6-23 7.0.0");
    adopt(&mut browser, &form("2026-12-01")).await.is(200).says("Adopted.");
    let kept = protocols::all(site.db.db.direct()).await.expect("readable").into_iter().find(|p| p.version == "7.0.0").expect("kept");
    assert_eq!(kept.body, text, "as its author wrote it");
    // A mark before the text as some editors write it, no file, a file with faults.
    choose(&mut browser, "ours.toml", format!("\u{feff}{text}").as_bytes(), "").await.is(200).says("Under default-6-23 7.0.0");
    choose(&mut browser, "", b"", &text).await.is(200).says("Under default-6-23 7.0.0");
    choose(&mut browser, "ours.toml", text.replacen("muac_mm = 5", "muac_mm = 0", 1).as_bytes(), "pasted").await.is(422);
    browser.says("ours.toml").says("tolerance.muac_mm: must be a whole number from 1 to 50, not 0");
    assert!(browser.texts("main textarea")[0].contains("muac_mm = 0"), "the file's text is there to be mended");
    choose(&mut browser, "empty.toml", b"", "").await.is(422).says("protocol: is missing");
    // Not text, too large, far too large: what was pasted stays, and nothing was looked at.
    choose(&mut browser, "ours.pdf", &[0x25, 0xff, 0xfe, 0x00], &text).await.is(422).says("not a text in UTF-8. Save it as UTF-8");
    browser.does_not_say("The file cannot be used");
    assert!(browser.texts("main textarea")[0].contains("muac_below_mm = 112"), "what was pasted stays");
    assert_eq!(browser.attrs("#file", "aria-invalid"), ["true"]);
    choose(&mut browser, "big.toml", &vec![b'#'; 512 * 1024 + 1], "pasted").await.is(422).says("larger than 512 kB");
    choose(&mut browser, "full.toml", &vec![b'#'; 512 * 1024], "").await.is(422).says("protocol: is missing");
    choose(&mut browser, "huge.toml", &vec![b'#'; 5 * 1024 * 1024], "").await.is(413);
    // Pasted text has room for a file of that size however it is encoded, and not without end.
    rehearse(&mut browser, &"é".repeat(256 * 1024)).await.is(422).says("not valid TOML");
    rehearse(&mut browser, &"#".repeat(2 * 1024 * 1024)).await.is(413);
    let mut browser = site.signed_in("mireni").await;
    let request = TestRequest::post().uri("/find").insert_header(("content-type", "multipart/form-data; boundary=edge"));
    browser.request(request.set_payload("--edge--"), "/find").await;
    assert!(browser.status.is_client_error(), "no other page takes a file");
}

#[actix_web::test]
async fn faults_of_a_file_are_told_in_the_language_of_the_page() {
    let site = Site::new().await;
    let mut person = people::by_sign_in_name(site.db.db.direct(), "olani").await.expect("read").expect("there");
    person.language = Some("fr".to_owned());
    site.db.db.write(async |tx| people::update(tx, &person).await).await.expect("written");
    let mut browser = site.signed_in("olani").await;
    let text = DEFAULT_TEXT.replacen("muac_mm = 5", "muac_mm = \"5\"", 1).replacen("group = \"eggs\"", "group = \"egg\"", 1);
    rehearse(&mut browser, &text.replacen("start_age_days", "strat_age_days", 1)).await.is(422);
    browser.says("tolerance.muac_mm : doit être un nombre entier de 1 à 50, et non le texte \"5\"");
    browser.says("inconnu comme groupe d’aliments : \"egg\" ; corrigez l’orthographe");
    browser.says("ages.start_age_days : manque ; ajoutez un nombre entier de 119 à 184").says("n’est pas une clé connue ; corrigez-la");
    // What the parser says of faulty writing is English: said so, and marked so.
    let faulty = DEFAULT_TEXT.replacen("muac_mm = 5", "muac_mm = 5 6", 1);
    let line = faulty.lines().position(|line| line == "muac_mm = 5 6").expect("a line") + 1;
    rehearse(&mut browser, &faulty).await.is(422);
    browser.says(&format!("Ligne {line} : écriture fautive à la ligne {line}, colonne 11 : ce n’est pas du TOML valable"));
    browser.says("L’analyseur dit, en anglais :").does_not_say("not valid TOML");
    let words = browser.texts("#summary span[lang=en]");
    assert!(!words.is_empty() && words.iter().all(|words| words.len() > 5), "{words:?}");
    rehearse(&mut browser, "").await.is(422).says("protocol : manque ; ajoutez une table [protocol], comme dans le protocole fourni");
}

#[actix_web::test]
async fn a_supervisor_sees_the_children_of_the_own_area_and_an_administrator_counts_only() {
    let site = Site::new().await;
    // An arm of 113 mm: severely thin at 115 mm, too thin only at 110 mm.
    let (code, _) = site.a_child_with_a_visit().await;
    let text = changed("muac_below_mm = 115", "muac_below_mm = 110").replacen("muac_from_mm = 115", "muac_from_mm = 110", 1);
    let mut browser = site.signed_in("olani").await;
    rehearse(&mut browser, &text).await.is(200);
    browser.says("Under default-6-23 7.0.0 something would change for 1 of 1 child.");
    browser.says("as if the new protocol had been in force throughout").says("The children behind these numbers");
    assert!(browser.attrs("main details a", "href").contains(&format!("/children/{code}")), "{}", browser.text());
    browser.says("Ulopi, Mireni: would be on the list: Within 7 days").says("would not be on the list; now Refer today");
    assert!(browser.attrs("main form", "action").is_empty(), "a supervisor does not adopt");
    // The supervisor of another area sees neither the child nor its count.
    let mut browser = site.signed_in("hembo").await;
    rehearse(&mut browser, &text).await.is(200).says("nothing would change for the 0 children looked at").does_not_say("Neruka");
    let mut browser = site.signed_in("teveli").await;
    rehearse(&mut browser, &text).await.is(200).says("something would change for 1 of 1 child.");
    browser.says("shown to their supervisor only").says("By worker").does_not_say("Neruka");
    assert!(!browser.body.contains(&code), "never a child");
    for name in ["mireni", "bemu"] {
        let mut browser = site.signed_in(name).await;
        browser.open("/protocol/rehearse").await.is(403);
    }
    assert_eq!(adopted(&site).await.len(), 1, "nothing is kept");
}

fn form(from: &str) -> Vec<(&'static str, String)> {
    let parts: Vec<&str> = from.split('-').collect();
    vec![
        ("approved_by", "Dr Oru Saneth".to_owned()),
        ("from_day", parts[2].to_owned()),
        ("from_month", parts[1].to_owned()),
        ("from_year", parts[0].to_owned()),
        ("reason", "The district lowered the limit of the arm".to_owned()),
    ]
}

async fn adopt<'b>(browser: &'b mut Browser, fields: &[(&'static str, String)]) -> &'b mut Browser {
    let fields: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (*name, value.as_str())).collect();
    browser.submit("form[action='/protocol/adopt']", &fields).await
}

#[actix_web::test]
async fn adopting_is_an_administrators_logged_act_and_counts_from_its_day() {
    let site = Site::new().await;
    let text = changed("muac_below_mm = 115", "muac_below_mm = 112");
    let mut browser = site.signed_in("teveli").await;
    rehearse(&mut browser, &text).await.is(200);
    let mut wrong = form("2026-11-24");
    wrong[0].1.clear();
    adopt(&mut browser, &wrong).await.is(422).says("This day is over already").says("Not saved yet: 2 things to correct");
    assert_eq!(adopted(&site).await.len(), 1, "nothing was half adopted");
    adopt(&mut browser, &form("2026-12-01")).await.is(200).says("Adopted.").says("to come").says("Dr Oru Saneth");
    browser.says("It counts from 1 December 2026 on; until that day the lists stay as they are.").does_not_say("within minutes");
    browser.says("The district lowered the limit of the arm").says("in force today");
    assert_eq!(adopted(&site).await.last().map(|(version, from)| (version.as_str(), from.as_str())), Some(("7.0.0", "2026-12-01")));
    let noted = audit::of_object(site.db.db.direct(), "protocol", "default-6-23 7.0.0", None, 10).await.expect("readable");
    let teveli = people::by_sign_in_name(site.db.db.direct(), "teveli").await.expect("read").expect("there");
    assert_eq!(noted.iter().map(|(_, e)| (e.action.as_str(), e.actor)).collect::<Vec<_>>(), [("protocol.adopt", Some(teveli.id))]);
    // The same version cannot be adopted again, also by another form.
    rehearse(&mut browser, &text).await;
    adopt(&mut browser, &form("2026-12-05")).await.is(422).says("Not saved yet");
    assert_eq!(adopted(&site).await.len(), 2);
    // Until its day the old one judges, from then on the new one; the server knows without being started again.
    browser.open("/protocol").await.says("upper arm under 115 mm");
    site.clock.set("2026-12-01T12:00:00Z".parse().expect("an instant"));
    let mut browser = site.signed_in("teveli").await;
    browser.open("/protocol").await.says("version 7.0.0").says("upper arm under 112 mm").says("Approved by Dr Oru Saneth.");
    browser.open("/protocol/adopted/1").await.says("upper arm under 115 mm");
}

#[actix_web::test]
async fn a_long_file_travels_whole_and_the_results_speak_through_the_translator() {
    let site = Site::new().await;
    site.a_child_with_a_visit().await;
    let text =
        format!("{}\n{}", changed("muac_below_mm = 115", "muac_below_mm = 110"), "# A remark that makes the file long.\n".repeat(4_000));
    for name in ["olani", "teveli"] {
        let mut person = people::by_sign_in_name(site.db.db.direct(), name).await.expect("read").expect("there");
        person.language = Some("en-x-pseudo".to_owned());
        site.db.db.write(async |tx| people::update(tx, &person).await).await.expect("written");
        let mut browser = site.signed_in(name).await;
        for (text, status) in [(text.as_str(), 200), ("x = 1", 422)] {
            rehearse(&mut browser, text).await.is(status);
            assert_eq!(browser.attrs("html", "lang"), ["en-x-pseudo"]);
            let faults = checks::structure(&browser.body);
            assert!(faults.is_empty(), "{faults:?}");
            let literal: Vec<String> = checks::literal_words(&browser.body)
                .into_iter()
                .filter(|text| !["Ulopi", "Mireni", "Olani", "Teveli", "English", "Français"].contains(&text.trim()))
                .collect();
            assert!(literal.is_empty(), "{name}: {literal:?}");
        }
    }
}
