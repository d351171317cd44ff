//! The round of a day, on screen and on paper.

use actix_web::HttpRequest;
use chrono::NaiveDate;
use domain::errand::Errand;
use domain::food::FoodCode;
use domain::ids::PersonId;
use domain::protocol::Protocol;

use crate::service::round as service;
use crate::service::round::Round;
use crate::store::lists::Checked;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::round as view;
use crate::view::round::Check;
use crate::view::round::sheet;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::pages::household::also_of;

/// `GET /round`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    answer(&req, &signed, false).await
}

/// `GET /round/print`
///
/// # Errors
/// [`Failure`].
pub async fn print(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    answer(&req, &signed, true).await
}

async fn answer(req: &HttpRequest, signed: &Signed, on_paper: bool) -> Result<Html, Failure> {
    let worker = match query_value(req, "worker").filter(|text| !text.is_empty()) {
        Some(text) => Some(PersonId(uuid::Uuid::parse_str(&text).map_err(|_| Failure::BadAddress("worker"))?.as_u128())),
        None => None,
    };
    let after = query_value(req, "after").filter(|text| !text.is_empty());
    let asked = service::Asked { worker, after };
    let round = service::round(&signed.context(), &asked, signed.as_of).await?;
    let day = signed.as_of;
    let kept = Kept { worker, as_of: (day != signed.visitor.today).then_some(day) };
    let checks: Vec<Vec<Check>> = round.seen.iter().map(|home| not_checked(home.checked)).collect();
    let query = kept.address("", None);
    let lang = signed.words().lang().code();
    let protocol = signed.visitor.protocols.on(day);
    let food = |code: &str| protocol.food_name(&FoodCode(code.to_owned()), lang).to_owned();
    let page = shown(&round, &checks, (day, protocol), &kept, asked.after.as_deref(), &query, &food);
    let w = signed.words();
    let title = view::title(w, &page);
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Round);
    shell.wide = true;
    let number = signed.visitor.settings.emergency_number.as_deref();
    let body = if on_paper { sheet::body(w, &page, number) } else { view::body(w, &page) };
    Ok(Html::ok(layout::page(&shell, body)))
}

/// What the links of the page carry on.
struct Kept {
    worker: Option<PersonId>,
    as_of: Option<NaiveDate>,
}

impl Kept {
    fn address(&self, path: &str, after: Option<&str>) -> String {
        let worker = if path.is_empty() { None } else { self.worker };
        let pairs: Vec<String> = [
            worker.map(|id| format!("worker={}", uuid::Uuid::from_u128(id.0))),
            self.as_of.map(|day| format!("as_of={day}")),
            after.map(|key| format!("after={}", encoded(key))),
        ]
        .into_iter()
        .flatten()
        .collect();
        if pairs.is_empty() { path.to_owned() } else { format!("{path}?{}", pairs.join("&")) }
    }
}

fn shown<'a>(
    round: &'a Round,
    checks: &'a [Vec<Check>],
    (day, protocol): (NaiveDate, &Protocol),
    kept: &Kept,
    after: Option<&str>,
    query: &'a str,
    food: &'a dyn Fn(&str) -> String,
) -> view::RoundPage<'a> {
    view::RoundPage {
        day,
        whose: round.whose.as_deref(),
        homes: round.homes.iter().map(|left| home(left, round)).collect(),
        later: round.later.iter().map(|left| home(left, round)).collect(),
        seen: round
            .seen
            .iter()
            .zip(checks)
            .map(|(seen, checks)| view::SeenHome {
                code: &seen.row.code,
                name: &seen.row.name,
                born: seen.row.born,
                not_checked: checks,
                errand: seen.errand.as_ref().filter(|errand| matches!(errand, Errand::FollowUp { .. })),
            })
            .collect(),
        next_due: round.next_due.as_ref().and_then(|row| row.slot.map(|slot| (row.name.as_str(), slot.opens))),
        continues: after.is_some(),
        more: round.more.as_deref().map(|key| kept.address("/round", Some(key))),
        print: kept.address("/round/print", after),
        query,
        arms: view::sheet::ArmLimits::of(protocol),
        food,
    }
}

fn home<'a>(home: &'a service::Home, round: &Round) -> view::Home<'a> {
    view::Home {
        code: &home.row.code,
        name: &home.row.name,
        known_as: home.row.known_as.as_deref(),
        born: home.row.born,
        village: &home.row.area_name,
        phone: home.row.phone.as_deref(),
        errand: &home.errand,
        last_seen_on: home.row.last_seen_on,
        household: home.row.household,
        also: also_of(&home.row, &round.named),
        noted: home.row.noted,
    }
}

fn not_checked(checked: Checked) -> Vec<Check> {
    let done = |check: Check| match check {
        Check::Weight => checked.weight,
        Check::Length => checked.length,
        Check::Arm => checked.arm,
        Check::Feet => checked.feet,
        Check::Signs => checked.signs,
    };
    Check::ALL.into_iter().filter(|check| !done(*check)).collect()
}
