//! Recording a visit. Danger outranks a typing fault: what could be read is saved at once, and the rest of the form goes on as a
//! correction of that visit, so that nothing is doubled.

pub mod amend;
pub mod desk;
mod foods;
mod recipes;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;
use domain::child_code::ChildCode;
use domain::draft::fill::pairs_of;
use domain::draft::pressing::pressing;
use domain::draft::visit::VisitRead;
use domain::ids::VisitId;
use domain::visit::Contact;
use domain::visit::Visit;

use crate::service::Refusal;
use crate::service::once::Sent;
use crate::service::record_visit;
use crate::service::record_visit::Written;
use crate::service::record_visit::outcome_path;
use crate::view::filled::Filled;
use crate::view::visit_form::measure::was_asked;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::result;
use crate::web::pages::visit::desk::Desk;
use crate::web::pages::visit::desk::Form;

/// The code in an address.
///
/// # Errors
/// [`Failure::NotFound`] for what is no code.
pub fn code_of(text: &str) -> Result<ChildCode, Failure> {
    ChildCode::parse(text).map_err(|_| Failure::NotFound)
}

/// `GET /children/{code}/visits/new`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, path: web::Path<String>, signed: Signed) -> Result<Html, Failure> {
    let desk = Desk::open(&signed, &code_of(&path)?).await?;
    let action = format!("/children/{}/visits/new", desk.code());
    Ok(Html::ok(desk.page(&Form::fresh(&action, &fresh_key()).beginning(carried(&req, &desk)))))
}

/// Day and place of the visit to another child of the home, where they are possible for this one.
fn carried(req: &HttpRequest, desk: &Desk<'_>) -> Filled {
    let today = desk.signed.visitor.today;
    let on = query_value(req, "on").and_then(|text| text.parse().ok()).filter(|on| (desk.file.record.facts.born..=today).contains(on));
    let contact = query_value(req, "contact").and_then(|code| Contact::from_code(&code).ok());
    // Only what the address says is filled in; the form's own first choices stay.
    let blank = Visit::empty(NOT_YET, on.unwrap_or(today), contact.unwrap_or(Contact::Home));
    let pairs = pairs_of(&blank, None, today).into_iter();
    Filled(pairs.filter(|(name, _)| name == "day" || name.starts_with("on_") || name == "contact").collect())
}

/// `POST /children/{code}/visits/new`
///
/// # Errors
/// [`Failure`].
pub async fn save(path: web::Path<String>, posted: Posted) -> Result<HttpResponse, Failure> {
    let code = code_of(&path)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    let desk = Desk::open(&signed, &code).await?;
    let sent = Sent::of(key, &form.0);
    let id = record_visit::visit_id(sent);
    let read = desk.read(&form, id);
    if !read.faults.is_empty() {
        if read.has_danger() {
            let saved = record_visit::record(&ctx, sent, &code, written(&read)).await?;
            return unfinished(&signed, &code, saved.seq, &form, &read).await;
        }
        let action = format!("/children/{}/visits/new", code.as_str());
        return Ok(Html::unprocessable(desk.page(&Form::fresh(&action, form.one("key")).with(&form, &read))).response());
    }
    if !read.has_danger() && (read.only_recipes || desk.asks_again(&form, &read)) {
        let action = format!("/children/{}/visits/new", code.as_str());
        let shown = Form::fresh(&action, form.one("key")).with(&recipes::ticked(&form, &read), &read);
        return Ok(Html::unprocessable(desk.page(&shown)).response());
    }
    match record_visit::record(&ctx, sent, &code, written(&read)).await {
        Ok(saved) => Ok(see_other(&outcome_path(&code, saved.seq))),
        Err(Refusal::Invalid(faults)) => {
            let action = format!("/children/{}/visits/new", code.as_str());
            let read = VisitRead { faults, ..read };
            Ok(Html::unprocessable(desk.page(&Form::fresh(&action, form.one("key")).with(&form, &read))).response())
        }
        Err(other) => Err(other.into()),
    }
}

fn written(read: &VisitRead) -> Written<'_> {
    Written { visit: &read.visit, talk: &read.talk, note: read.note.as_deref() }
}

/// The form once more, above it what to do about the danger that is saved, and below it everything typed.
async fn unfinished(signed: &Signed, code: &ChildCode, seq: i64, form: &Filled, read: &VisitRead) -> Result<HttpResponse, Failure> {
    let desk = Desk::open(signed, code).await?;
    let action = amend::path_of(code, seq);
    let danger = result::block(&desk, seq, pressing(read))?;
    let shown = Form::fresh(&action, &fresh_key()).with(form, read).correcting(seq, true).under(danger);
    Ok(Html::unprocessable(desk.page(&shown)).response())
}

/// `GET /children/{code}/emergency`
///
/// # Errors
/// [`Failure`].
pub async fn emergency(path: web::Path<String>, signed: Signed) -> Result<Html, Failure> {
    let desk = Desk::open(&signed, &code_of(&path)?).await?;
    Ok(Html::ok(desk.emergency_page()))
}

impl Desk<'_> {
    /// Whether a value must be measured again before it is saved; one that was asked about already, or is confirmed, must not.
    fn asks_again(&self, form: &Filled, read: &VisitRead) -> bool {
        let odd = self.unusual(read);
        !was_asked(form.one("asked_again"), &odd, &read.visit)
    }
}

/// A visit id for a page that shows a form nobody has sent yet.
pub(crate) const NOT_YET: VisitId = VisitId(0);
