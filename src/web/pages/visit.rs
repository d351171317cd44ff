//! Recording and correcting a visit. Danger outranks a typing fault: what could be read is saved at once, and the rest of the form
//! goes on as a correction of that visit, so that nothing is doubled.

pub mod desk;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::web;
use domain::child_code::ChildCode;
use domain::draft::MOST_NOTE;
use domain::draft::fill::pairs_of;
use domain::draft::pressing::pressing;
use domain::draft::visit::VisitRead;
use domain::draft::visit::talk;
use domain::fault::Fault;
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
    if !read.has_danger() && desk.asks_again(&form, &read) {
        let action = format!("/children/{}/visits/new", code.as_str());
        return Ok(Html::unprocessable(desk.page(&Form::fresh(&action, form.one("key")).with(&form, &read))).response());
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
    let action = correct_path(code, seq);
    let danger = result::block(&desk, seq, pressing(read))?;
    let shown = Form::fresh(&action, &fresh_key()).with(form, read).correcting(seq, true).under(danger);
    Ok(Html::unprocessable(desk.page(&shown)).response())
}

fn correct_path(code: &ChildCode, seq: i64) -> String {
    format!("/children/{}/visits/{seq}/correct", code.as_str())
}

/// `GET /children/{code}/visits/{seq}/correct`
///
/// # Errors
/// [`Failure`].
pub async fn show_correct(path: web::Path<(String, i64)>, signed: Signed) -> Result<Html, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let desk = Desk::open(&signed, &code).await?;
    let record = desk.file.visit(seq).ok_or(Failure::NotFound)?;
    let mut pairs = pairs_of(&record.visit, record.note.as_deref(), signed.visitor.today);
    pairs.extend(talk::pairs_of(&record.talk));
    let filled = Filled(pairs);
    let read = desk.read(&filled, record.visit.id);
    let form = Form::fresh(&correct_path(&code, seq), &fresh_key()).with(&filled, &read).correcting(seq, false).quietly();
    Ok(Html::ok(desk.page(&form)))
}

/// `POST /children/{code}/visits/{seq}/correct`
///
/// # Errors
/// [`Failure`].
pub async fn save_correct(path: web::Path<(String, i64)>, posted: Posted) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let ctx = signed.context();
    let w = signed.words();
    let desk = Desk::open(&signed, &code).await?;
    let stored = desk.file.visit(seq).ok_or(Failure::NotFound)?;
    let sent = Sent::of(key, &form.0);
    let mut read = desk.read(&form, stored.visit.id);
    let reason = form.one("reason").trim();
    if reason.is_empty() {
        read.faults.add("reason", Fault::Missing);
    } else if reason.chars().count() > MOST_NOTE {
        read.faults.add("reason", Fault::TooLong { most: MOST_NOTE });
    }
    let goes_on = form.one("unfinished") == "yes";
    if !read.faults.is_empty() {
        if read.has_danger() {
            let with_danger = danger_into(&stored.visit, &read.visit);
            if with_danger != stored.visit {
                let why = w.say("visit-reason-unfinished");
                let kept = Written { visit: &with_danger, talk: &stored.talk, note: stored.note.as_deref() };
                record_visit::correct(&ctx, sent, &code, seq, kept, &why).await?;
            }
            return unfinished(&signed, &code, seq, &form, &read).await;
        }
        let shown = Form::fresh(&correct_path(&code, seq), form.one("key")).with(&form, &read).correcting(seq, goes_on);
        return Ok(Html::unprocessable(desk.page(&shown)).response());
    }
    if !read.has_danger() && desk.asks_again(&form, &read) {
        let shown = Form::fresh(&correct_path(&code, seq), form.one("key")).with(&form, &read).correcting(seq, goes_on);
        return Ok(Html::unprocessable(desk.page(&shown)).response());
    }
    match record_visit::correct(&ctx, sent, &code, seq, written(&read), reason).await {
        Ok(saved) => Ok(see_other(&outcome_path(&code, saved.seq))),
        Err(Refusal::Invalid(faults)) => {
            let read = VisitRead { faults, ..read };
            let shown = Form::fresh(&correct_path(&code, seq), form.one("key")).with(&form, &read).correcting(seq, goes_on);
            Ok(Html::unprocessable(desk.page(&shown)).response())
        }
        Err(other) => Err(other.into()),
    }
}

/// A stored visit with the danger of a form that cannot be saved as a whole yet: nothing that was known is lost.
fn danger_into(stored: &Visit, typed: &Visit) -> Visit {
    let mut visit = stored.clone();
    if let Some(signs) = typed.danger_signs.as_ref().filter(|signs| !signs.is_empty()) {
        visit.danger_signs.get_or_insert_default().extend(signs.iter().copied());
    }
    if typed.oedema == Some(true) {
        visit.oedema = Some(true);
    }
    visit.swallow_trouble = visit.swallow_trouble.max(typed.swallow_trouble);
    for food in typed.foods.iter().filter(|f| f.response == Some(domain::food::Response::Reaction)) {
        visit.foods.retain(|known| known.code != food.code);
        visit.foods.push(food.clone());
    }
    visit
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

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use domain::visit::DangerSign;
    use domain::visit::SwallowTrouble;

    use super::*;

    #[test]
    fn danger_is_added_and_nothing_known_is_lost() {
        let day = "2026-11-25".parse().expect("a date");
        let mut stored = Visit::empty(VisitId(1), day, Contact::Clinic);
        stored.meals = Some(3);
        stored.danger_signs = Some(BTreeSet::from([DangerSign::BloodInStool]));
        let mut typed = Visit::empty(VisitId(1), day, Contact::Home);
        typed.danger_signs = Some(BTreeSet::from([DangerSign::FitsNow]));
        typed.swallow_trouble = Some(SwallowTrouble::Blue);
        let both = danger_into(&stored, &typed);
        assert_eq!(both.danger_signs, Some(BTreeSet::from([DangerSign::BloodInStool, DangerSign::FitsNow])));
        assert_eq!((both.meals, both.contact, both.swallow_trouble), (Some(3), Contact::Clinic, Some(SwallowTrouble::Blue)));
        typed.danger_signs = Some(BTreeSet::new());
        assert_eq!(danger_into(&stored, &typed).danger_signs, stored.danger_signs, "none of these takes nothing away");
    }
}
