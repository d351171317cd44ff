//! The supervisor's start: what is late, on a day, narrowed by what stands in the address.

pub mod meeting;

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
use crate::service::supervise::read_key;
use crate::service::supervise::written_key;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::supervise as view;
use crate::view::supervise::hand::HandRow;
use crate::view::supervise::hand::Hands;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;

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
    let after = value("after").map(|text| read_key(&text).ok_or(Failure::BadAddress("after"))).transpose()?;
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
    let past = if as_of == signed.visitor.today { String::new() } else { format!("?as_of={as_of}") };
    let child = |c: &DeskChild| view::DeskChild {
        path: format!("/children/{}{past}", c.code),
        called: c.called.clone(),
        age: format::age(w, c.born, as_of),
        village: c.area_name.clone(),
        worker: c.worker_name.clone(),
        phone: desk.team.workers.get(&c.worker).and_then(|p| p.phone.clone()),
    };
    let why = |r: &Reason| explain(r.rule, &r.evidence, w, &food);
    let why_path = |c: &DeskChild, r: &Reason| format!("/children/{}/why/{}/open", c.code, r.rule.code());
    let urgent = desk
        .urgent
        .iter()
        .map(|u| view::UrgentLine {
            child: child(&u.child),
            class: u.reason.as_ref().map_or(Class::Today, |r| r.class),
            why: u.reason.as_ref().map(&why).unwrap_or_default(),
            why_path: u.reason.as_ref().map_or_else(|| format!("/children/{}", u.child.code), |r| why_path(&u.child, r)),
            write_path: format!("/children/{}/visits/new", u.child.code),
            since: u.since.map(|day| format::day(w, day)),
        })
        .collect();
    let late = desk
        .late
        .iter()
        .map(|l| view::LateLine {
            child: child(&l.child),
            class: l.reason.class,
            why: why(&l.reason),
            why_path: why_path(&l.child, &l.reason),
            days: l.days,
        })
        .collect();
    let unseen = desk.unseen.iter().map(|u| view::UnseenLine { child: child(&u.child), days: u.days, ever: u.ever }).collect();
    let count = |n: usize| u64::try_from(n).unwrap_or(u64::MAX);
    let children = desk.team.tallies.iter().filter(|t| t.class.is_none()).map(|t| t.count).sum();
    view::LatePage {
        day: format::weekday(w, as_of),
        scope: [count(desk.team.areas.len()), count(desk.team.workers.len()), children],
        urgent,
        late,
        late_in_all: desk.late_in_all,
        next: desk.next.as_ref().map(|key| address(signed, "/late", sieve, Some(&written_key(key)))),
        first: later_page.then(|| address(signed, "/late", sieve, None)),
        meeting: address(signed, "/late/meeting", sieve, None),
        unseen,
        more_unseen: desk.more_unseen,
        held: desk.held.iter().map(|h| view::HeldLine { child: child(&h.child), since: format::day_near(w, h.since, as_of) }).collect(),
        more_held: desk.more_held,
        held_days: service::HELD_DAYS,
        sieve: view_sieve(signed, desk, sieve),
        hand: hands(desk),
    }
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
