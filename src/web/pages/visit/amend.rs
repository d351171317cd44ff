//! Correcting a visit. A form shown before somebody else changed the visit has no effect and comes back beside what stands now;
//! danger in it is saved all the same, added to what is known. Nothing typed is lost.

use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::child_code::ChildCode;
use domain::draft::MOST_NOTE;
use domain::draft::fill::pairs_of;
use domain::draft::pressing::pressing;
use domain::draft::visit::FoodFields;
use domain::draft::visit::VisitRead;
use domain::draft::visit::foods::OTHER_FOODS;
use domain::draft::visit::foods::other_food;
use domain::draft::visit::talk;
use domain::fault::Fault;
use domain::food::Response;
use domain::ids::SubmissionKey;
use domain::visit::FoodOffer;
use domain::visit::SwallowTrouble;
use domain::visit::Visit;

use crate::service::Refusal;
use crate::service::child_visits;
use crate::service::corrections;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::once::Sent;
use crate::service::record_visit;
use crate::service::record_visit::Written;
use crate::store::visits::VisitRecord;
use crate::view::filled::Filled;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::correction::gone;
use crate::web::pages::correction::version_of;
use crate::web::pages::result;
use crate::web::pages::visit::NOT_YET;
use crate::web::pages::visit::code_of;
use crate::web::pages::visit::desk::Desk;
use crate::web::pages::visit::desk::Form;
use crate::web::pages::visit::desk::Newest;
use crate::web::pages::visit::recipes;
use crate::web::pages::visit::written;

/// How often danger is tried to be saved while others change the same visit at the same moment.
const TRIES: usize = 3;

/// Where the form of a visit goes.
pub(super) fn path_of(code: &ChildCode, seq: i64) -> String {
    format!("/children/{}/visits/{seq}/correct", code.as_str())
}

/// A stored visit as its form would send it.
fn stored_form(signed: &Signed, record: &VisitRecord) -> Filled {
    let mut pairs = pairs_of(&record.visit, record.note.as_deref(), signed.visitor.today);
    pairs.extend(talk::pairs_of(&record.talk));
    Filled(pairs)
}

/// `GET /children/{code}/visits/{seq}/correct`
///
/// # Errors
/// [`Failure`].
pub async fn show(path: web::Path<(String, i64)>, signed: Signed) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let desk = Desk::open(&signed, &code).await?;
    let Some(record) = desk.file.visit(seq) else {
        corrections::was_of(&signed.context(), &desk.file.record, seq).await?;
        return Ok(gone(&signed, &code));
    };
    let filled = stored_form(&signed, record);
    let read = desk.read(&filled, record.visit.id);
    let form = Form::fresh(&path_of(&code, seq), &fresh_key()).with(&filled, &read).correcting(seq, false).quietly();
    Ok(Html::ok(desk.page(&form)).response())
}

/// `POST /children/{code}/visits/{seq}/correct`
///
/// # Errors
/// [`Failure`].
pub async fn save(path: web::Path<(String, i64)>, posted: Posted) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let about = About { code: &code, seq, version: version_of(&form)? };
    let desk = Desk::open(&signed, &code).await?;
    let Some(stored) = desk.file.visit(seq) else { return instead(&desk, seq, &form).await };
    let sent = Sent::of(key, &form.0);
    let mut read = desk.read(&form, stored.visit.id);
    let reason = form.one("reason").trim();
    if reason.is_empty() {
        read.faults.add("reason", Fault::Missing);
    } else if reason.chars().count() > MOST_NOTE {
        read.faults.add("reason", Fault::TooLong { most: MOST_NOTE });
    }
    let asks = read.only_recipes || desk.asks_again(&form, &read);
    if read.faults.is_empty() && (read.has_danger() || !asks) {
        match record_visit::correct(&signed.context(), sent, about, written(&read), reason).await {
            Ok(Done::At(path)) => return Ok(see_other(&path)),
            Ok(Done::Changed | Done::Gone) => {}
            Err(Refusal::Invalid(faults)) => read.faults = faults,
            Err(other) => return Err(other.into()),
        }
    }
    again(&signed, about, &form, &read).await
}

/// The form once more: with what is wrong, beside what somebody else made of the visit, under what to do about danger.
async fn again(signed: &Signed, about: About<'_>, form: &Filled, read: &VisitRead) -> Result<HttpResponse, Failure> {
    let (code, seq) = (about.code, about.seq);
    let mut desk = Desk::open(signed, code).await?;
    // Not counting what this form itself is about to add.
    let mut by = changed_by(&desk, about).await?;
    if read.has_danger() {
        (desk, by) = with_danger(desk, about, form, read).await?;
    }
    let Some(stored) = desk.file.visit(seq) else { return instead(&desk, seq, form).await };
    let standing = stored_form(signed, stored);
    // Danger that somebody else wrote is not taken back by a form that was shown before: it comes back ticked.
    let kept = if by.is_some() { standing_danger(&stored.visit, &read.visit) } else { Vec::new() };
    let form = &recipes::ticked(&with_standing_danger(form, &standing, &kept), read);
    let saved = read.has_danger();
    let read = &VisitRead { faults: read.faults.clone(), ..desk.read(form, stored.visit.id) };
    let newest = by.map(|(by, reason)| Newest { filled: standing, by, reason, danger: kept, saved });
    let danger = if read.has_danger() { result::block(&desk, seq, pressing(read))? } else { None };
    // Beside another version it is another form: what was sent had no effect.
    let key = if newest.is_some() { fresh_key() } else { form.one("key").to_owned() };
    let status = if newest.is_some() && read.faults.is_empty() { StatusCode::CONFLICT } else { StatusCode::UNPROCESSABLE_ENTITY };
    let shown = Form::fresh(&path_of(code, seq), &key).with(form, read).correcting(seq, form.one("unfinished") == "yes");
    Ok(Html(status, desk.page(&shown.beside(newest).under(danger))).response())
}

/// The file with the danger of this form in the visit as it stands, and whether somebody else had changed the visit.
async fn with_danger<'a>(
    mut desk: Desk<'a>,
    about: About<'_>,
    form: &Filled,
    read: &VisitRead,
) -> Result<(Desk<'a>, Option<(String, String)>), Failure> {
    let signed = desk.signed;
    let why = signed.words().say("visit-reason-unfinished");
    let mut by = None;
    for _ in 0..TRIES {
        let Some(stored) = desk.file.visit(about.seq) else { break };
        by = changed_by(&desk, about).await?;
        let added = danger_into(&stored.visit, &read.visit);
        if added == stored.visit {
            break;
        }
        let now = About { version: stored.version, ..about };
        let kept = Written { visit: &added, talk: &stored.talk, note: stored.note.as_deref() };
        // A key of its own: the form that was sent is still to be saved.
        let sent = Sent::of(SubmissionKey(uuid::Uuid::now_v7().as_u128()), &form.0);
        let done = record_visit::correct(&signed.context(), sent, now, kept, &why).await?;
        desk = Desk::open(signed, about.code).await?;
        if matches!(done, Done::At(_)) {
            break;
        }
    }
    Ok((desk, by))
}

/// Who made the visit what it is, and why, if that was after the form was shown.
async fn changed_by(desk: &Desk<'_>, about: About<'_>) -> Result<Option<(String, String)>, Failure> {
    let Some(stored) = desk.file.visit(about.seq).filter(|stored| stored.version != about.version) else { return Ok(None) };
    let replaced = child_visits::replaced(&desk.signed.context(), &desk.file).await?;
    let last = replaced.versions.get(&stored.visit.id).and_then(|versions| versions.first());
    let by = last.and_then(|last| replaced.names.get(&last.replaced_by)).cloned().unwrap_or_default();
    let reason = last.map_or_else(String::new, |last| last.reason.clone());
    Ok(Some((by, reason)))
}

/// Danger in the visit as it stands that a form does not say: each as the field of the form that says it, and what it says.
fn standing_danger(stored: &Visit, typed: &Visit) -> Vec<(String, String)> {
    let mut kept = Vec::new();
    let mut keep = |name: &str, value: &str| kept.push((name.to_owned(), value.to_owned()));
    let ticked = typed.danger_signs.as_ref();
    for sign in stored.danger_signs.iter().flatten().filter(|sign| ticked.is_none_or(|ticked| !ticked.contains(sign))) {
        keep("danger", sign.code());
    }
    if stored.oedema == Some(true) && typed.oedema != Some(true) {
        keep("feet", "yes");
    }
    if let Some(trouble) =
        stored.swallow_trouble.filter(|trouble| *trouble != SwallowTrouble::None && typed.swallow_trouble < Some(*trouble))
    {
        keep("swallow_trouble", trouble.code());
    }
    let reacted = |food: &&FoodOffer| food.response == Some(Response::Reaction);
    for food in stored.foods.iter().filter(reacted) {
        if !typed.foods.iter().filter(reacted).any(|told| told.code == food.code) {
            keep(&FoodFields::of_code(food.code.as_str()).response, Response::Reaction.code());
        }
    }
    kept
}

/// A form with such danger ticked as it stands. Everything else stays as it was typed.
fn with_standing_danger(form: &Filled, standing: &Filled, kept: &[(String, String)]) -> Filled {
    let mut filled = form.clone();
    for (field, value) in kept {
        match field.strip_prefix("food_") {
            // A reaction is told with all that belongs to it.
            Some(code) => {
                let of = FoodFields::of_code(code);
                let fields = [&of.response, &of.offers, &of.unsafe_form, &of.signs, &of.no_signs, &of.minutes, &of.lifted];
                filled.0.retain(|(name, _)| !fields.contains(&name) && name != "new_food");
                filled.0.extend(standing.0.iter().filter(|(name, _)| fields.contains(&name)).cloned());
                filled = filled.with("new_food", "yes");
                for at in 1..=OTHER_FOODS {
                    if form.one(&other_food(at)) == code {
                        filled.0.retain(|(name, _)| !name.starts_with(&format!("other{at}_")));
                    }
                }
            }
            None => {
                filled.0.retain(|(name, _)| *name != format!("{field}_none") && (field == "danger" || name != field));
                filled = filled.with(field, value);
            }
        }
    }
    filled
}

/// What was typed, as a new visit: the one it was about was taken back or moved meanwhile.
async fn instead(desk: &Desk<'_>, seq: i64, form: &Filled) -> Result<HttpResponse, Failure> {
    corrections::was_of(&desk.signed.context(), &desk.file.record, seq).await?;
    let read = desk.read(form, NOT_YET);
    let shown = Form::fresh(&format!("/children/{}/visits/new", desk.code()), &fresh_key()).with(form, &read).instead();
    Ok(Html(StatusCode::CONFLICT, desk.page(&shown)).response())
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

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use domain::ids::VisitId;
    use domain::visit::Contact;
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
