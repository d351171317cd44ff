//! Registering a child: faults first, then what was understood and who may be the same child, then it is saved.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use chrono::Datelike;
use domain::child::GestationSource;
use domain::child_code::ChildCode;
use domain::draft::child::NewChild;
use domain::draft::child::read_child;
use domain::fault::Fault;
use domain::fault::Faults;

use crate::service::Refusal;
use crate::service::child_file;
use crate::service::choices;
use crate::service::household;
use crate::service::household::Sibling;
use crate::service::once::Sent;
use crate::service::register_child;
use crate::service::register_child::SimilarChild;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::view::register as view;
use crate::view::register::Check;
use crate::view::register::Similar;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;

/// `GET /children/new`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let code = query_value(&req, "home").unwrap_or_default();
    let sibling = household::sibling(&signed.context(), &code).await?;
    if !code.is_empty() && sibling.is_none() {
        return Err(Failure::NotFound);
    }
    let twin = query_value(&req, "twin").as_deref() == Some("yes");
    let filled = sibling.as_ref().map_or_else(Filled::default, |sibling| shared(sibling, twin));
    Ok(Html::ok(page(&signed, &fresh_key(), &filled, &Faults::new(), None).await?))
}

/// What the children of a home share; twins also the birth. Consent is asked for each.
fn shared(sibling: &Sibling, twin: bool) -> Filled {
    let child = &sibling.record;
    let or_empty = |text: &Option<String>| text.clone().unwrap_or_default();
    let mut filled = Filled::default()
        .with("home_code", child.code.as_str())
        .with("home_of", "yes")
        .with("caregiver", child.caregiver_name.as_str())
        .with("relation", or_empty(&child.caregiver_relation))
        .with("phone", or_empty(&child.phone))
        .with("directions", or_empty(&child.directions))
        .with("area", sibling.area.as_str())
        .with("worker", sibling.worker.as_str());
    if twin {
        let born = child.facts.born;
        filled = filled.with("twin", "yes").with("born_month", born.month().to_string()).with("born_year", born.year().to_string());
        if child.facts.birth_day_known {
            filled = filled.with("born_day", born.day().to_string());
        }
        if let Some(days) = child.facts.gestation_days {
            filled = filled.with("weeks", (days / 7).to_string()).with("weeks_days", (days % 7).to_string());
        }
        if child.gestation_source != GestationSource::Unknown {
            filled = filled.with("gestation_source", child.gestation_source.code());
        }
    }
    filled
}

/// `POST /children/new`
///
/// # Errors
/// [`Failure`].
pub async fn save(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    let again =
        async |faults: Faults| page(&signed, form.one("key"), &form, &faults, None).await.map(|page| Html::unprocessable(page).response());
    let worker = Some(form.one("worker")).filter(|name| !name.is_empty());
    let needs_worker = !choices::workers(&ctx).await?.is_empty() && worker.is_none();
    let child = match read_child(&form.0, signed.visitor.today) {
        Ok(child) if !needs_worker => child,
        Ok(_) => return again(Faults::one("worker", Fault::Missing)).await,
        Err(mut faults) => {
            if needs_worker {
                faults.add("worker", Fault::Missing);
            }
            return again(faults).await;
        }
    };
    // The child of this very form, if it was sent before, is not a duplicate of itself.
    let sent = Sent::of(key, &form.0);
    // Who moved out of reach meanwhile keeps nobody from being registered; whoever reaches both links them then.
    let sibling = household::sibling(&ctx, form.one("home_code")).await?.filter(|_| form.one("home_of") == "yes");
    let similar = match register_child::similar(&ctx, &child, sibling.as_ref()).await {
        Ok(similar) => similar,
        Err(Refusal::Invalid(faults)) => return again(faults).await,
        Err(other) => return Err(other.into()),
    };
    let looked_at = form.one("understood") == view::understood(&child) && (similar.is_empty() || child.other_child);
    if !looked_at && !was_sent(&signed, sent).await? {
        let page = page(&signed, form.one("key"), &form, &Faults::new(), Some((&child, &similar))).await?;
        return Ok(Html::unprocessable(page).response());
    }
    let looks_like = similar.first().map(|s| s.child);
    match register_child::register(&ctx, sent, &child, worker, looks_like, sibling.as_ref()).await {
        Ok(code) => Ok(see_other(&format!("/children/{}", code.as_str()))),
        Err(Refusal::Invalid(faults)) => again(faults).await,
        Err(other) => Err(other.into()),
    }
}

/// Whether this form had its effect before: then it has it again, whatever else is similar by now.
async fn was_sent(signed: &Signed, sent: Sent) -> Result<bool, Failure> {
    let ctx = signed.context();
    let before = ctx.db.read(async |tx| crate::service::once::before(tx, &ctx, sent).await).await?;
    Ok(before.is_some())
}

async fn page(
    signed: &Signed,
    key: &str,
    filled: &Filled,
    faults: &Faults,
    check: Option<(&NewChild, &[SimilarChild])>,
) -> Result<maud::Markup, Failure> {
    let w = signed.words();
    let ctx = signed.context();
    let villages = choices::villages(&ctx).await?;
    let workers = choices::workers(&ctx).await?;
    let similar = match check {
        Some((_, found)) => shown(signed, found).await?,
        None => Vec::new(),
    };
    let area = check.map_or("", |(child, _)| villages.iter().find(|(code, _)| *code == child.area).map_or("", |(_, name)| name.as_str()));
    let sibling = household::sibling(&ctx, filled.one("home_code")).await?;
    let home = sibling.as_ref().map(|s| (s.record.code.as_str(), s.record.known_as.as_deref().unwrap_or(&s.record.name)));
    let token = signed.visitor.token();
    let body = view::body(&view::RegisterForm {
        home,
        w,
        token: &token,
        key,
        today: signed.visitor.today,
        areas: &villages,
        workers: &workers,
        filled,
        faults,
        check: check.map(|(child, _)| Check { child, area, similar: &similar }),
    });
    let title = w.say("register-title");
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Add);
    shell.without_reach = true;
    Ok(layout::page(&shell, body))
}

/// Similar children as shown: a link only where the child is in the visitor's scope.
async fn shown(signed: &Signed, found: &[SimilarChild]) -> Result<Vec<Similar>, Failure> {
    let ctx = signed.context();
    let mut similar = Vec::with_capacity(found.len());
    for child in found {
        let in_scope = child_file::by_id(&ctx, child.child).await?.is_some() && ChildCode::parse(&child.code).is_ok();
        similar.push(Similar {
            code: child.code.clone(),
            name: child.name.clone(),
            born: child.born,
            caregiver: child.caregiver.clone(),
            in_scope,
        });
    }
    Ok(similar)
}
