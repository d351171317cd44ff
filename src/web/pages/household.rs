//! The home of a child: who lives there, who comes next, linking and unlinking.

use std::collections::BTreeMap;

use actix_web::HttpResponse;
use actix_web::web;
use domain::fault::Faults;
use domain::food::FoodCode;
use domain::ids::HouseholdId;
use maud::Markup;

use crate::args;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::household as service;
use crate::service::household::HomeChild;
use crate::service::once::Sent;
use crate::store::households::Named;
use crate::store::lists::RoundRow;
use crate::view::filled::Filled;
use crate::view::household as view;
use crate::view::layout;
use crate::view::parts::not_saved_title;
use crate::view::round::home;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;

/// `GET /children/{code}/home`
///
/// # Errors
/// [`Failure::NotFound`] outside the scope.
pub async fn show(signed: Signed, code: web::Path<String>) -> Result<Html, Failure> {
    Ok(Html::ok(page(&signed, &code, &Filled::default(), &Faults::new()).await?))
}

async fn page(signed: &Signed, code: &str, filled: &Filled, faults: &Faults) -> Result<Markup, Failure> {
    let found = service::open(&signed.context(), code).await?;
    let w = signed.words();
    let day = signed.visitor.today;
    let token = signed.visitor.token();
    let from = &found.from;
    let called = from.known_as.as_deref().unwrap_or(&from.name);
    let body = view::page(
        w,
        &view::HomePage {
            from: (&from.code, called),
            caregiver: &from.caregiver_name,
            village: &from.area_name,
            directions: from.directions.as_deref(),
            phone: from.phone.as_deref(),
            children: found.children.iter().map(|child| line(signed, child, from)).collect(),
            left: found.left.iter().map(other).collect(),
            likely: found.likely.iter().map(other).collect(),
            day,
            filled,
            faults,
            token: &token,
            key: &fresh_key,
        },
    );
    let title = w.say_with("household-title", args!["name" => &from.caregiver_name]);
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    Ok(layout::page(&signed.shell(&title), body))
}

fn line<'a>(signed: &Signed, child: &'a HomeChild, from: &RoundRow) -> view::HomeLine<'a> {
    let w = signed.words();
    let day = signed.visitor.today;
    let lang = w.lang().code();
    let food = |code: &str| signed.visitor.protocol().food_name(&FoodCode(code.to_owned()), lang).to_owned();
    let row = &child.row;
    let (why, when) = child.errand.as_ref().map_or_else(Default::default, |errand| {
        (home::reason(w, day, errand, row.born, row.last_seen_on, &food), home::by_when(w, day, errand))
    });
    view::HomeLine {
        code: &row.code,
        called: child.called(),
        born: row.born,
        elsewhere: (row.area != from.area).then_some(row.area_name.as_str()),
        errand: child.errand.as_ref(),
        why,
        when,
        due: child.is_due(day),
        seen: child.seen,
    }
}

fn other(row: &RoundRow) -> view::OtherLine<'_> {
    view::OtherLine { code: &row.code, name: &row.name, born: row.born, caregiver: &row.caregiver_name, status: row.status }
}

/// The other children of a home, as the page of one child names them.
pub fn also(signed: &Signed, others: &[HomeChild], day: chrono::NaiveDate) -> Vec<view::Also> {
    let w = signed.words();
    let one = |child: &HomeChild| view::Also {
        code: child.row.code.clone(),
        called: child.called().to_owned(),
        age: format::age(w, child.row.born, day),
        when: child.errand.as_ref().map(|errand| home::when(w, day, errand)).unwrap_or_default(),
        seen: child.seen,
        waits: child.is_due(day) && !child.seen,
    };
    others.iter().map(one).collect()
}

/// The others of a row's home, by code and name.
pub fn also_of(row: &RoundRow, named: &BTreeMap<HouseholdId, Vec<Named>>) -> Vec<(String, String)> {
    let others = row.household.and_then(|home| named.get(&home)).into_iter().flatten().filter(|child| child.child != row.child);
    others.map(|child| (child.code.clone(), child.called.clone())).collect()
}

/// `POST /children/{code}/home/link`
///
/// # Errors
/// [`Failure`].
pub async fn link(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    match service::link(&signed.context(), Sent::of(key, &form.0), &code, form.one("other")).await {
        Ok(()) => Ok(see_other(&format!("/children/{}/home", code.as_str()))),
        Err(Refusal::Invalid(faults)) => Ok(Html::unprocessable(page(&signed, &code, &form, &faults).await?).response()),
        Err(other) => Err(other.into()),
    }
}

/// `POST /children/{code}/home/unlink`
///
/// # Errors
/// [`Failure`].
pub async fn unlink(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    service::unlink(&signed.context(), Sent::of(key, &form.0), &code, form.one("other")).await?;
    Ok(see_other(&format!("/children/{}/home", code.as_str())))
}
