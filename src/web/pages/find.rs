//! Finding a child.

use std::collections::BTreeMap;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use domain::child_code::ChildCode;
use domain::child_code::ChildCodeFault;
use domain::ids::ChildId;
use domain::ids::HouseholdId;
use domain::role::Role;

use crate::service::find as service;
use crate::service::find::Found;
use crate::store::households::Named;
use crate::store::lists::RoundRow;
use crate::view::find as view;
use crate::view::find::CodeSlip;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::household::also_of;

/// `GET /find`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<HttpResponse, Failure> {
    let asked = query_value(&req, "q").unwrap_or_default().trim().to_owned();
    let also_left = query_value(&req, "left").as_deref() == Some("yes");
    let name = query_value(&req, "name");
    let code = query_value(&req, "code");
    let after = name.as_deref().zip(code.as_deref());
    let (rows, more, named, slip) = match service::find(&signed.context(), &asked, also_left, after).await? {
        Found::One(row) => return Ok(see_other(&format!("/children/{}", row.code))),
        Found::Page { rows, more, named } => (rows, more, named, None),
        Found::Slip(ChildCodeFault::Sign) => (Vec::new(), None, BTreeMap::new(), Some(CodeSlip::Sign)),
        Found::Slip(_) => (Vec::new(), None, BTreeMap::new(), Some(CodeSlip::Check)),
    };
    let left = if also_left { "&left=yes" } else { "" };
    let page = view::FindPage {
        asked: &asked,
        also_left,
        slip,
        found: rows.iter().map(|row| found(row, signed.actor.role, &named)).collect(),
        continues: after.is_some(),
        more: more.map(|(name, code)| format!("/find?q={}{left}&name={}&code={}", encoded(&asked), encoded(&name), encoded(&code))),
        day: signed.visitor.today,
    };
    let w = signed.words();
    let title = w.say("find-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Find);
    Ok(Html::ok(layout::page(&shell, view::body(w, &page))).response())
}

/// Children shown to choose from before anything is sought.
const FEW: usize = 8;

/// Children to choose from for a correction, also those who left, without the one it is about; and whether there are more.
///
/// # Errors
/// [`Failure`].
pub(super) async fn looked_for(signed: &Signed, asked: &str, except: ChildId) -> Result<(Vec<RoundRow>, bool), Failure> {
    let (mut rows, more) = match service::find(&signed.context(), asked, true, None).await? {
        Found::One(row) => (vec![*row], false),
        Found::Page { rows, more, .. } => (rows, more.is_some()),
        Found::Slip(_) => (Vec::new(), false),
    };
    rows.retain(|row| row.child != except);
    // Nothing asked is no reason for a list of everybody.
    let few = asked.is_empty() && rows.len() > FEW;
    if few {
        rows.truncate(FEW);
    }
    Ok((rows, more || few))
}

pub(super) fn found<'a>(row: &'a RoundRow, role: Role, named: &BTreeMap<HouseholdId, Vec<Named>>) -> view::Found<'a> {
    view::Found {
        code: &row.code,
        printed: printed(&row.code),
        name: &row.name,
        known_as: row.known_as.as_deref(),
        sex: row.sex,
        born: row.born,
        village: &row.area_name,
        caregiver: &row.caregiver_name,
        worker: (role == Role::Supervisor).then_some(row.worker_name.as_str()),
        status: row.status,
        also: also_of(row, named),
        class: row.top.as_ref().map(|top| top.class),
    }
}

/// A code as printed; one that was stored otherwise is shown as it is.
pub fn printed(code: &str) -> String {
    ChildCode::parse(code).map_or_else(|_| code.to_owned(), |code| code.printed())
}
