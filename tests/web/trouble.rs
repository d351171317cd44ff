//! What people meet when something does not work: every page of it speaks through the translator, is sound, and never shows what went on
//! inside; our own trouble has a number that finds it in the log.

use std::sync::Arc;
use std::sync::Mutex;

use actix_web::test::TestRequest;
use sea_orm::ConnectionTrait;
use spoonround::web::routes::TABLE;
use tracing::subscriber;

use crate::checks;
use crate::every_page::no_words;
use crate::every_page::speak;
use crate::families::child;
use crate::families::code;
use crate::families::register;
use crate::harness::Browser;
use crate::reach::Corner;
use crate::reach::two_corners;
use crate::site::PASSWORD;
use crate::site::Site;

const PSEUDO: &str = "en-x-pseudo";

/// Pages in the language that shows what never passed a translator, with whatever is wrong with them.
#[derive(Default)]
struct Read {
    pages: Vec<(u16, String)>,
    faults: Vec<String>,
}

impl Read {
    fn page(&mut self, browser: &Browser, status: u16) {
        let at = format!("{} {}", browser.status.as_u16(), browser.path);
        if browser.status.as_u16() != status {
            self.faults.push(format!("{at}: not {status}: {}", browser.text()));
        }
        // Otherwise the whole page would count as quoted English, and nothing would be looked at.
        assert_eq!(browser.attrs("html", "lang"), [PSEUDO], "{at}");
        self.faults.extend(checks::structure(&browser.body).into_iter().map(|fault| format!("{at}: {fault}")));
        let literal = checks::literal_words(&browser.body).into_iter().filter(|text| !no_words(text));
        self.faults.extend(literal.map(|text| format!("{at}: never translated: {text}")));
        self.pages.push((status, browser.path.clone()));
    }

    #[track_caller]
    fn is_sound(&self) {
        assert!(self.faults.is_empty(), "\n{}", self.faults.join("\n"));
    }
}

/// A browser of somebody not signed in who chose the language.
async fn stranger(site: &Site) -> Browser {
    let mut browser = site.browser();
    browser.open("/sign-in").await.submit("form[action='/language']", &[("language", PSEUDO)]).await.is(200);
    browser
}

/// A site whose people all read the pseudo-language.
async fn a_site() -> (Site, [Corner; 2]) {
    let site = Site::new().await;
    let corners = two_corners(&site).await;
    for name in ["mireni", "olani", "bemu", "teveli"] {
        speak(&site, name, PSEUDO).await;
    }
    (site, corners)
}

fn posted(path: &str, pairs: &[(&str, &str)]) -> TestRequest {
    TestRequest::post().uri(path).set_form(pairs).insert_header(("sec-fetch-site", "same-origin"))
}

#[actix_web::test]
async fn every_refusal_speaks_through_the_translator() {
    let (site, [corner, _]) = a_site().await;
    let mut read = Read::default();
    let mut worker = site.signed_in("mireni").await;
    for (path, status) in [("/people", 403), ("/no-such-page", 404), ("/round?as_of=yesterday", 400), ("/children/22222222", 404)] {
        worker.peek(path).await;
        read.page(&worker, status);
    }
    let new = format!("/children/{}/visits/new", corner.code);
    // A form of somebody else's page, of an earlier session, of no page of ours, and one that no page holds.
    worker.request(posted(&new, &[]), &new).await;
    read.page(&worker, 403);
    let mut earlier = site.signed_in("mireni").await;
    let old = earlier.open(&new).await.filled("main form", &[("weight", "7,35")]).1;
    worker.send(&new, &old).await;
    read.page(&worker, 403);
    let token = worker.open(&new).await.attrs("input[name=token]", "value").remove(0);
    worker.request(posted(&new, &[("token", &token)]), &new).await;
    read.page(&worker, 400);
    worker.request(posted(&new, &[("token", &token), ("note", &"long ".repeat(20_000))]), &new).await;
    read.page(&worker, 413);
    // Sent before, with other content.
    let (_, sent) = worker.open(&new).await.filled("main form", &[("weight", "7,20")]);
    worker.send(&new, &sent).await.is(200);
    let changed: Vec<(String, String)> =
        sent.iter().map(|(name, value)| (name.clone(), if name == "weight" { "7,30".to_owned() } else { value.clone() })).collect();
    worker.send(&new, &changed).await;
    read.page(&worker, 409);
    // The session ended in mid-form; and nobody was ever signed in.
    let mut ended = stranger(&site).await;
    ended.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await.is(200);
    let (_, open) = ended.open(&new).await.filled("main form", &[("weight", "7,35")]);
    let other = ended.clone();
    ended.submit("form[action='/sign-out']", &[]).await;
    let mut late = other;
    late.send(&new, &open).await;
    read.page(&late, 401);
    let mut nobody = stranger(&site).await;
    nobody.peek("/no-such-page").await;
    read.page(&nobody, 404);
    for _ in 0..6 {
        nobody.open("/sign-in").await.submit("main form", &[("name", "mireni"), ("password", "wrong wrong wrong")]).await;
        read.page(&nobody, 422);
    }
    nobody.submit("main form", &[("name", "mireni"), ("password", PASSWORD)]).await;
    read.page(&nobody, 429);
    read.is_sound();
}

/// Who sends what is wrong with a form, from which page; `None`: a single button, with nothing in it that could be wrong.
type Wrong = (&'static str, String, &'static str, &'static [(&'static str, &'static str)]);

fn wrong(pattern: &str, of: &str, visit: &str) -> Option<Wrong> {
    let page = |tail: &str| format!("/children/{of}{tail}");
    Some(match pattern {
        // Before and after a session: their faults are read above.
        "/sign-in" | "/sign-out" | "/language" => return None,
        "/children/{code}/home/unlink" | "/team/{name}/cover/end" | "/team/{name}/code" | "/children/{code}/note/{note}/done" => {
            return None;
        }
        "/people/{name}/code" | "/people/{name}/sign-out" | "/people/{name}/activate" | "/people/{name}/cover/end" => return None,
        "/password" => ("mireni", "/password".to_owned(), "main form", &[]),
        "/children/new" => ("mireni", pattern.to_owned(), "main form", &[("born_day", "32")]),
        "/children/{code}/visits/new" => ("mireni", page("/visits/new"), "main form", &[("weight", "735"), ("arm", "x")]),
        "/children/{code}/visits/{seq}/correct" => {
            ("mireni", page(&format!("/visits/{visit}/correct")), "main form", &[("weight", "735"), ("other1_taken", "refused")])
        }
        "/children/{code}/visits/{seq}/void" => ("mireni", page(&format!("/visits/{visit}/void")), "main form", &[]),
        "/children/{code}/visits/{seq}/move" => {
            ("mireni", page(&format!("/visits/{visit}/move?to={}", code(3))), "main form:not([role])", &[])
        }
        "/children/{code}/merge" => ("olani", page(&format!("/merge?with={}", code(3))), "main form:not([role])", &[]),
        "/children/{code}/home/link" => ("mireni", page("/home"), "form[action$='/home/link']", &[("other", "nothing")]),
        "/team/{name}/give" => ("olani", "/team/mireni".to_owned(), "form[action$='/give']", &[]),
        "/team/{name}/cover" => ("olani", "/team/mireni".to_owned(), "form[action$='/cover']", &[]),
        "/children/{code}/why/{rule}/{seq}/close" => ("olani", page("/why/meals.few/1"), "form[action$='/close']", &[]),
        "/children/{code}/move" => ("olani", page("/move"), "main form", &[]),
        "/children/{code}/note" => ("olani", page("/note"), "main form", &[]),
        "/children/{code}/leave" => ("mireni", page("/leave"), "main form", &[]),
        "/protocol/rehearse" => ("teveli", pattern.to_owned(), "form[action='/protocol/rehearse']", &[("text", "no = 1")]),
        "/protocol/adopt" => ("teveli", "/protocol/rehearse".to_owned(), "form[action='/protocol/rehearse']", &[]),
        "/people/new" => ("teveli", pattern.to_owned(), "main form", &[]),
        "/people/{name}" => ("teveli", "/people/mireni".to_owned(), "main form", &[("full_name", "")]),
        "/people/{name}/deactivate" => ("teveli", "/people/teveli".to_owned(), "form[action$='/deactivate']", &[]),
        "/people/{name}/cover" => ("teveli", "/people/mireni".to_owned(), "form[action$='/cover']", &[]),
        "/areas" => ("teveli", pattern.to_owned(), "form[action='/areas']", &[]),
        "/areas/{area}" => ("teveli", "/areas/ulopi".to_owned(), "main form", &[("name", "")]),
        "/settings" => ("teveli", pattern.to_owned(), "main form", &[("time_zone", "nowhere")]),
        _ => panic!("say how {pattern} is sent with something wrong, or that nothing in it can be"),
    })
}

#[actix_web::test]
async fn every_form_with_faults_speaks_through_the_translator() {
    let (site, [corner, _]) = a_site().await;
    // Somebody to move a visit to.
    register(&site, &child(3, "Talani", site.ulopi, site.mireni), |line| line).await;
    let mut read = Read::default();
    for route in TABLE.iter().filter(|route| route.method == "POST") {
        let Some((name, page, form, changes)) = wrong(route.pattern, &corner.code, &corner.visit) else { continue };
        let mut browser = site.signed_in(name).await;
        browser.open(&page).await.is(200);
        browser.submit(form, changes).await;
        read.page(&browser, 422);
    }
    read.is_sound();
}

/// The log of this thread.
#[derive(Clone, Default)]
struct Log(Arc<Mutex<Vec<u8>>>);

impl std::io::Write for Log {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().expect("no test died here").extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

impl Log {
    fn text(&self) -> String {
        String::from_utf8(self.0.lock().expect("no test died here").clone()).expect("text")
    }
}

/// What the page says of our own trouble: a number, and nothing of what went on inside.
#[track_caller]
fn tells_only_a_number(browser: &Browser, log: &Log) {
    browser.is(500);
    let numbers: Vec<String> = browser.texts("main p.quiet .ltr");
    let [number] = &numbers[..] else { panic!("one number: {}", browser.text()) };
    assert!(number.len() == 8 && number.chars().all(|c| c.is_ascii_hexdigit()), "{number}");
    let log = log.text();
    let line = log.lines().find(|line| line.contains(number)).unwrap_or_else(|| panic!("{number} is not in the log:\n{log}"));
    assert!(line.contains("ERROR") && line.contains("request failed") && line.contains("no such table"), "{line}");
    for inner in ["no such table", "sqlite", "SQL", "store", "visits_gone", "sessions", "panicked", "src/"] {
        assert!(!browser.body.contains(inner), "{inner:?} is told to a visitor: {}", browser.body);
    }
    assert!(browser.attrs("main a", "href").contains(&"/".to_owned()), "a way out: {}", browser.text());
    assert_eq!(browser.headers.get("x-content-type-options").map(String::as_str), Some("nosniff"));
}

#[actix_web::test]
async fn our_own_trouble_is_told_by_a_number_that_the_log_knows() {
    let (site, [corner, _]) = a_site().await;
    let log = Log::default();
    let writer = log.clone();
    let _kept = subscriber::set_default(tracing_subscriber::fmt().with_ansi(false).with_writer(move || writer.clone()).finish());
    let mut read = Read::default();
    let mut worker = site.signed_in("mireni").await;
    let new = format!("/children/{}/visits/new", corner.code);
    let (_, form) = worker.open(&new).await.filled("main form", &[("weight", "7,35")]);
    site.db.db.direct().execute_unprepared("ALTER TABLE visits RENAME TO visits_gone").await.expect("renamed");
    worker.peek(&format!("/children/{}", corner.code)).await;
    read.page(&worker, 500);
    tells_only_a_number(&worker, &log);
    let first = worker.texts("main p.quiet .ltr");
    worker.send(&new, &form).await;
    read.page(&worker, 500);
    tells_only_a_number(&worker, &log);
    assert_ne!(worker.texts("main p.quiet .ltr"), first, "each failure has a number of its own");
    read.is_sound();
    // So deep that not even who asks can be read: the browser's language decides.
    site.db.db.direct().execute_unprepared("ALTER TABLE sessions RENAME TO sessions_gone").await.expect("renamed");
    worker.request(TestRequest::get().uri("/round").insert_header(("accept-language", "fr")), "/round").await;
    tells_only_a_number(&worker, &log);
    assert_eq!(worker.attrs("html", "lang"), ["fr"]);
}

#[actix_web::test]
async fn a_database_that_is_held_asks_to_try_again() {
    let (site, [corner, _]) = a_site().await;
    let mut read = Read::default();
    let mut worker = site.signed_in("mireni").await;
    let new = format!("/children/{}/visits/new", corner.code);
    let (_, form) = worker.open(&new).await.filled("main form", &[("weight", "7,35")]);
    site.db
        .db
        .write::<_, spoonround::store::StoreError, _>(async |_| {
            worker.send(&new, &form).await;
            Ok(())
        })
        .await
        .expect("nothing written");
    read.page(&worker, 503);
    assert_eq!(worker.headers.get("retry-after").map(String::as_str), Some("5"));
    read.is_sound();
    // What was refused can be sent again as it was.
    worker.send(&new, &form).await.is(200);
}
