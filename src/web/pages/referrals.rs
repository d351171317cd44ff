//! Referrals: the note that goes along, and the list followed to its end.

use std::collections::BTreeMap;

use actix_web::HttpRequest;
use actix_web::web;
use domain::child::both_names;
use domain::child_code::ChildCode;
use domain::food::FoodCode;

use crate::args;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::child_file;
use crate::service::referrals as service;
use crate::store::lists::RoundRow;
use crate::store::outcomes::OutcomeLine;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::referral_note;
use crate::view::referrals as view;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::page_key::PageKey;
use crate::web::page_key::page_key;
use crate::web::pages::child::query;
use crate::web::pages::child::shown;
use crate::web::pages::supervise::food_name;

/// `GET /children/{code}/referral`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn note(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    let code = ChildCode::parse(&code).map_err(|_| Failure::NotFound)?;
    let file = child_file::open(&signed.context(), &code, signed.as_of).await?;
    let w = signed.words();
    let food = |code: &str| file.assessment.now.protocol.food_name(&FoodCode(code.to_owned()), w.lang().code()).to_owned();
    let (names, query) = (BTreeMap::new(), query(&signed));
    let page = shown::page(&file, &names, &signed, &query, &food, Vec::new());
    let title = w.say_with("referral-title", args!["name" => file.called()]);
    let (name, phone) = service::answer_to(&signed.context(), file.record.worker).await?;
    let body = referral_note::body(w, &page, &signed.actor.name, (&name, phone.as_deref()));
    Ok(Html::ok(layout::page(&signed.shell(&title), body)))
}

/// `GET /referrals`
///
/// # Errors
/// [`Failure`].
pub async fn list(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after: Option<String> = page_key(&req, "after")?;
    let told_after = page_key(&req, "told_after")?;
    let found = service::open(&signed.context(), after.as_deref(), told_after).await?;
    let w = signed.words();
    let waiting: Vec<view::WaitingLine> = found.waiting.iter().map(|row| waiting(&signed, row)).collect();
    let told: Vec<view::ToldLine> = found.told.iter().map(|line| told(&signed, line)).collect();
    let title = w.say("referrals-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Late);
    shell.wide = true;
    let since = format::day_near(w, found.since, signed.visitor.today);
    let page = view::ReferralsPage {
        waiting,
        first_waiting: after.map(|_| "/referrals".to_owned()),
        next_waiting: found.more_waiting.map(|key| format!("/referrals?after={}", encoded(&key))),
        told,
        first_told: told_after.map(|_| "/referrals#told".to_owned()),
        next_told: found.more_told.map(|key| format!("/referrals?told_after={}#told", encoded(&key.written()))),
        since,
    };
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}

fn waiting(signed: &Signed, row: &RoundRow) -> view::WaitingLine {
    let w = signed.words();
    let today = signed.visitor.today;
    let waits = match (row.urgent_unanswered_since, row.referral_due_on) {
        (Some(since), _) => w.say_with("late-held-since", args!["date" => format::day_near(w, since, today)]),
        (None, Some(by)) if by < today => w.say_with("referrals-expected", args!["date" => format::day_near(w, by, today)]),
        (None, Some(by)) => w.say_with("referrals-by", args!["date" => format::day_near(w, by, today)]),
        (None, None) => String::new(),
    };
    view::WaitingLine {
        code: row.code.clone(),
        who: [
            both_names(&row.name, row.known_as.as_deref()),
            format::age(w, row.born, today),
            row.area_name.clone(),
            row.worker_name.clone(),
        ],
        class: row.top.as_ref().map(|top| top.class),
        why: row.top.as_ref().map(|top| explain(top.rule, &top.evidence, w, &food_name(signed))).unwrap_or_default(),
        waits,
    }
}

fn told(signed: &Signed, line: &OutcomeLine) -> view::ToldLine {
    let w = signed.words();
    let today = signed.visitor.today;
    view::ToldLine {
        code: line.code.clone(),
        who: [line.called.clone(), format::age(w, line.born, today), line.area_name.clone(), line.worker_name.clone()],
        about: codes::rule_name(w, line.rule),
        outcome: codes::outcome(w, line.outcome),
        on: format::day_near(w, line.told_on, today),
    }
}
