//! The supervisor's start: what is late, on a day, narrowed by what stands in the address.

pub mod meeting;
pub mod whole;

use actix_web::HttpRequest;
use domain::food::FoodCode;
use domain::rule::Class;
use domain::rule::RuleId;
use maud::Markup;

use crate::args;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::supervise as service;
use crate::service::supervise::Desk;
use crate::service::supervise::DeskChild;
use crate::service::supervise::Reason;
use crate::service::supervise::Sieve;
use crate::service::supervise::waiting;
use crate::service::supervise::waiting::Held;
use crate::service::supervise::waiting::Part;
use crate::service::supervise::waiting::Unanswered;
use crate::service::supervise::waiting::Unseen;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::supervise as view;
use crate::view::supervise::hand::HandRow;
use crate::view::supervise::hand::Hands;
use crate::view::supervise::waiting::HeldLine;
use crate::view::supervise::waiting::Short;
use crate::view::supervise::waiting::UnseenLine;
use crate::view::supervise::waiting::UrgentLine;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::page_key::PageKey;
use crate::web::page_key::page_key;
use crate::web::pages::team::unattended;

/// The name of a food by its code, in the language of the page.
pub(crate) fn food_name(signed: &Signed) -> impl Fn(&str) -> String {
    let protocol = std::sync::Arc::clone(signed.visitor.protocols.on(signed.as_of));
    let lang = signed.words().lang().code();
    move |code| protocol.food_name(&FoodCode(code.to_owned()), lang).to_owned()
}

/// What the address narrows the list to.
fn sieve_of(req: &HttpRequest) -> Result<Sieve, Failure> {
    let value = |name: &str| query_value(req, name).filter(|v| !v.is_empty());
    Ok(Sieve {
        worker: value("worker"),
        area: value("area"),
        class: value("class").map(|code| Class::from_code(&code).map_err(|_| Failure::BadAddress("class"))).transpose()?,
        rule: value("rule").map(|code| RuleId::from_code(&code).map_err(|_| Failure::BadAddress("rule"))).transpose()?,
        days: value("days").map(|days| days.parse().map_err(|_| Failure::BadAddress("days"))).transpose()?,
    })
}

/// `GET /late`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let value = |name: &str| query_value(&req, name).filter(|v| !v.is_empty());
    let after = page_key(&req, "after")?;
    let sieve = sieve_of(&req)?;
    let desk = service::open(&signed.context(), &sieve, after.as_ref(), signed.as_of).await?;
    let flash = moved(&signed, &desk, value("moved"), value("to"));
    let page = page_of(&signed, &desk, &sieve, after.is_some());
    Ok(Html::ok(framed(&signed, &page, flash.as_deref())))
}

fn framed(signed: &Signed, page: &view::LatePage, flash: Option<&str>) -> Markup {
    let w = signed.words();
    let title = w.say("late-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Late);
    shell.wide = true;
    shell.flash = flash;
    layout::page(&shell, view::page(w, page))
}

/// What has just been moved; names come from what is stored, not from the address.
fn moved(signed: &Signed, desk: &Desk, worker: Option<String>, area: Option<String>) -> Option<String> {
    let (worker, area) = (worker?, area?);
    let worker = desk.team.workers.values().find(|p| p.sign_in_name == worker).map_or(worker, |p| p.full_name.clone());
    let village = desk.team.areas.values().find(|a| a.code == area).map_or(area, |a| a.name.clone());
    Some(signed.words().say_with("move-done", args!["worker" => worker, "village" => village]))
}

/// The address of the list with these parts.
fn address(signed: &Signed, page: &str, sieve: &Sieve, after: Option<&str>) -> String {
    let days = sieve.days.map(|days| days.to_string());
    let as_of = (signed.as_of != signed.visitor.today).then(|| signed.as_of.to_string());
    let parts = [
        ("worker", sieve.worker.as_deref()),
        ("area", sieve.area.as_deref()),
        ("class", sieve.class.map(Class::code)),
        ("rule", sieve.rule.map(RuleId::code)),
        ("days", days.as_deref()),
        ("as_of", as_of.as_deref()),
        ("after", after),
    ];
    let query: Vec<String> = parts.iter().filter_map(|(name, value)| value.map(|v| format!("{name}={}", encoded(v)))).collect();
    if query.is_empty() { page.to_owned() } else { format!("{page}?{}", query.join("&")) }
}

fn page_of(signed: &Signed, desk: &Desk, sieve: &Sieve, later_page: bool) -> view::LatePage {
    let w = signed.words();
    let as_of = signed.as_of;
    let food = food_name(signed);
    let child = |child: &DeskChild| {
        let phone = desk.team.workers.get(&child.worker).and_then(|p| p.phone.clone());
        view::DeskChild { phone, ..desk_child(signed, child) }
    };
    let late = desk
        .late
        .iter()
        .map(|l| view::LateLine {
            child: child(&l.child),
            class: l.reason.class,
            why: explain(l.reason.rule, &l.reason.evidence, w, &food),
            why_path: why_path(&l.child, &l.reason),
            days: l.days,
        })
        .collect();
    let urgent =
        short(signed, ("/late/urgent", &whose(sieve)), &desk.urgent, |u| UrgentLine { child: child(&u.child), ..urgent_line(signed, u) });
    let count = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    let children = desk.team.tallies.iter().filter(|t| t.class.is_none()).map(|t| t.count).sum();
    view::LatePage {
        day: format::weekday(w, as_of),
        unattended: if as_of == signed.visitor.today { unattended(signed, &desk.team) } else { Vec::new() },
        scope: [count(desk.team.areas.len()), count(desk.team.workers.len()), children],
        urgent,
        late,
        late_in_all: desk.late_in_all(),
        next: desk.next.as_ref().map(|key| address(signed, "/late", sieve, Some(&key.written()))),
        first: later_page.then(|| address(signed, "/late", sieve, None)),
        meeting: address(signed, "/late/meeting", sieve, None),
        unseen: short(signed, ("/late/unseen", &Sieve::default()), &desk.unseen, |u| unseen_line(signed, u)),
        not_seen_days: desk.not_seen_days,
        held: short(signed, ("/late/held", &Sieve::default()), &desk.held, |h| held_line(signed, h)),
        held_days: waiting::HELD_DAYS,
        sieve: view_sieve(signed, desk, sieve),
        hand: hands(desk),
    }
}

/// Worker and area alone: no more hides a referral that waits for an answer.
fn whose(sieve: &Sieve) -> Sieve {
    Sieve { worker: sieve.worker.clone(), area: sieve.area.clone(), ..Sieve::default() }
}

/// The first lines of a list, and where the whole of it stands when there is more.
fn short<L, K, V>(signed: &Signed, (path, sieve): (&str, &Sieve), part: &Part<L, K>, line: impl Fn(&L) -> V) -> Short<V> {
    let whole = part.next.as_ref().map(|_| address(signed, path, sieve, None));
    Short { lines: part.lines.iter().map(line).collect(), whole }
}

fn desk_child(signed: &Signed, child: &DeskChild) -> view::DeskChild {
    view::DeskChild {
        path: address(signed, &format!("/children/{}", child.code), &Sieve::default(), None),
        called: child.called.clone(),
        age: format::age(signed.words(), child.born, signed.as_of),
        village: child.area_name.clone(),
        worker: child.worker_name.clone(),
        phone: None,
    }
}

fn why_path(child: &DeskChild, reason: &Reason) -> String {
    format!("/children/{}/why/{}/open", child.code, reason.rule.code())
}

fn urgent_line(signed: &Signed, u: &Unanswered) -> UrgentLine {
    let w = signed.words();
    let why = |reason: &Reason| explain(reason.rule, &reason.evidence, w, &food_name(signed));
    UrgentLine {
        child: desk_child(signed, &u.child),
        class: u.reason.as_ref().map_or(Class::Today, |reason| reason.class),
        why: u.reason.as_ref().map(why).unwrap_or_default(),
        why_path: u.reason.as_ref().map_or_else(|| format!("/children/{}", u.child.code), |reason| why_path(&u.child, reason)),
        write_path: format!("/children/{}/visits/new", u.child.code),
        since: u.since.map(|day| format::day(w, day)),
    }
}

fn unseen_line(signed: &Signed, u: &Unseen) -> UnseenLine {
    UnseenLine { child: desk_child(signed, &u.child), days: u.days, ever: u.ever }
}

fn held_line(signed: &Signed, h: &Held) -> HeldLine {
    HeldLine { child: desk_child(signed, &h.child), since: format::day_near(signed.words(), h.since, signed.as_of) }
}

fn view_sieve(signed: &Signed, desk: &Desk, sieve: &Sieve) -> view::Sieve {
    let mut workers: Vec<_> = desk.team.workers.values().map(|p| (p.sign_in_name.clone(), p.full_name.clone())).collect();
    workers.sort_by(|a, b| a.1.cmp(&b.1));
    let mut villages: Vec<_> = desk.team.areas.values().map(|a| (a.code.clone(), a.name.clone())).collect();
    villages.sort_by(|a, b| a.1.cmp(&b.1));
    view::Sieve {
        workers,
        worker: sieve.worker.clone().unwrap_or_default(),
        villages,
        village: sieve.area.clone().unwrap_or_default(),
        class: sieve.class.map(|c| c.code().to_owned()).unwrap_or_default(),
        rules: RuleId::ALL.iter().map(|rule| (rule.code().to_owned(), codes::rule_name(signed.words(), *rule))).collect(),
        rule: sieve.rule.map(|rule| rule.code().to_owned()).unwrap_or_default(),
        days: sieve.days.map(|days| days.to_string()).unwrap_or_default(),
        as_of: if signed.as_of == signed.visitor.today { String::new() } else { signed.as_of.to_string() },
        today: signed.visitor.today.to_string(),
    }
}

fn hands(desk: &Desk) -> Hands {
    let rows = |named: Vec<(u128, String)>, of: &dyn Fn(&crate::store::follow_ups::desk::Tally) -> u128| {
        let mut rows: Vec<HandRow> = named
            .into_iter()
            .map(|(id, name)| {
                let mut row = HandRow { name, ..HandRow::default() };
                for tally in desk.team.tallies.iter().filter(|t| of(t) == id) {
                    match tally.class {
                        None => row.children += tally.count,
                        Some(class) => {
                            row.open += tally.count;
                            row.late[class as usize] += tally.late;
                        }
                    }
                }
                row
            })
            .collect();
        rows.sort_by(|a, b| a.name.cmp(&b.name));
        rows
    };
    let workers = rows(desk.team.workers.values().map(|p| (p.id.0, p.full_name.clone())).collect(), &|t| t.worker.0);
    let villages = rows(desk.team.areas.values().map(|a| (a.id.0, a.name.clone())).collect(), &|t| t.area.0);
    let late = |row: &HandRow| row.late.iter().sum::<u64>();
    let most = workers.iter().max_by_key(|row| late(row)).filter(|row| late(row) > 0).map(|row| row.name.clone());
    Hands { workers, villages, most }
}
