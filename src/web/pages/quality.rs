//! How well measuring goes in a supervisor's team.

use actix_web::HttpRequest;
use domain::calendar::Month;

use crate::i18n::format;
use crate::service::quality as service;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::quality as view;
use crate::web::extract::Signed;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;

/// Months that can be chosen.
const MONTHS: usize = 12;

/// `GET /quality`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let asked = query_value(&req, "month").filter(|text| !text.is_empty());
    let month = asked.map(|text| Month::parse(&text).ok_or(Failure::BadAddress("month"))).transpose()?;
    let found = service::open(&signed.context(), &signed.visitor.settings, month).await?;
    let w = signed.words();
    let months = std::iter::successors(Some(Month::of(signed.visitor.today)), |month| Some(month.previous())).take(MONTHS);
    let page = view::QualityPage {
        days: [format::day_and_year(w, found.days.0), format::day_and_year(w, found.days.1)],
        months: months.map(|month| (month.to_string(), format::month(w, month))).collect(),
        month: month.map(|month| month.to_string()).unwrap_or_default(),
        all: &found.all,
        workers: &found.workers,
    };
    let title = w.say("quality-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}
