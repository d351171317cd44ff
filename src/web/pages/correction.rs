//! Correcting the record of visits: taking one back, moving one to another child; and their history in words.

pub mod moving;

use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::child_code::ChildCode;
use domain::fault::Faults;
use domain::follow_up::FollowUp;
use maud::Markup;

use crate::args;
use crate::clock::day_in;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::child_file::ChildFile;
use crate::service::corrections::About;
use crate::service::corrections::Done;
use crate::service::corrections::HistoryLine;
use crate::service::corrections::OtherRecord;
use crate::service::corrections::Told;
use crate::service::corrections::effect::Effect;
use crate::service::corrections::void_visit;
use crate::service::corrections::void_visit::ToVoid;
use crate::service::once::Sent;
use crate::store::visits::VisitRecord;
use crate::view::child::CorrectionLine;
use crate::view::child::VisitLine;
use crate::view::correction as view;
use crate::view::correction::EffectLine;
use crate::view::correction::EffectShown;
use crate::view::correction::Sending;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::parts::not_saved_title;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::supervise::food_name;
use crate::web::pages::visit::code_of;

/// A page of a correction in its frame.
pub(super) fn framed(signed: &Signed, title: String, faults: &Faults, body: Markup) -> Markup {
    let title = if faults.is_empty() { title } else { not_saved_title(signed.words(), &title) };
    layout::page(&signed.shell(&title), body)
}

/// What would change, in words.
pub(super) fn effect(signed: &Signed, called: &str, effect: &Effect) -> EffectShown {
    let w = signed.words();
    let food = food_name(signed);
    let line = |f: &FollowUp| EffectLine {
        class: f.class,
        why: explain(f.rule, &f.evidence, w, &food),
        due: format::day_near(w, f.due_on, signed.visitor.today),
    };
    EffectShown {
        called: called.to_owned(),
        closes: effect.closes.iter().map(line).collect(),
        opens: effect.opens.iter().map(line).collect(),
        changes: effect.changes.iter().map(line).collect(),
    }
}

/// A visit in one line; `by` is who entered it.
pub(super) fn visit_line<'a>(record: &'a VisitRecord, by: &'a str) -> VisitLine<'a> {
    VisitLine {
        seq: record.entry_seq,
        on: record.visit.on,
        contact: record.visit.contact,
        weight_g: record.visit.weight.map(domain::units::Weight::grams),
        length_mm: record.visit.length.map(domain::units::Length::mm),
        arm_mm: record.visit.muac.map(domain::units::Muac::mm),
        by,
        version: record.version,
        voided: record.voided_at.is_some(),
        note: record.note.as_deref(),
    }
}

/// Name of who entered a visit.
pub(super) async fn recorder(signed: &Signed, file: &ChildFile, visit: &VisitRecord) -> Result<String, Failure> {
    let names = crate::service::child_visits::recorders(&signed.context(), file).await?;
    Ok(names.get(&visit.recorded_by).cloned().unwrap_or_default())
}

/// The page that says that the visit is not here any more.
pub(super) fn gone(signed: &Signed, code: &ChildCode) -> HttpResponse {
    let w = signed.words();
    let page = signed.visitor.page(&w.say("correction-gone-title"), view::gone(w, code.as_str()));
    Html(StatusCode::CONFLICT, page).response()
}

/// What was sent, what is wrong with it, and whether somebody was first.
pub(super) struct Wrong<'a> {
    pub(super) filled: &'a Filled,
    pub(super) faults: Faults,
    pub(super) changed: bool,
}

impl Wrong<'_> {
    pub(super) fn status(&self) -> StatusCode {
        if self.changed { StatusCode::CONFLICT } else { StatusCode::UNPROCESSABLE_ENTITY }
    }
}

async fn void_page(signed: &Signed, open: &ToVoid, wrong: Option<&Wrong<'_>>) -> Result<Markup, Failure> {
    let w = signed.words();
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let by = recorder(signed, &open.file, &open.visit).await?;
    let date = format::day_near(w, open.visit.visit.on, signed.visitor.today);
    let faults = wrong.map_or(&none, |wrong| &wrong.faults);
    let page = view::VoidPage {
        code: &open.file.record.code,
        called: open.file.called(),
        visit: visit_line(&open.visit, &by),
        effect: effect(signed, open.file.called(), &open.effect),
        sending: Sending {
            filled: wrong.map_or(&empty, |wrong| wrong.filled),
            faults,
            version: open.visit.version,
            changed: wrong.is_some_and(|wrong| wrong.changed),
            token: &token,
            // After a change by somebody else it is another form: what was sent had no effect.
            key: wrong.filter(|wrong| !wrong.changed).map_or(fresh.as_str(), |wrong| wrong.filled.one("key")),
        },
        date: date.clone(),
    };
    let title = w.say_with("void-title", args!["name" => open.file.called(), "date" => date]);
    Ok(framed(signed, title, faults, view::void_page(w, &page)))
}

/// `GET /children/{code}/visits/{seq}/void`
///
/// # Errors
/// [`Failure`].
pub async fn show_void(path: web::Path<(String, i64)>, signed: Signed) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    match void_visit::open(&signed.context(), &code, seq).await? {
        None => Ok(gone(&signed, &code)),
        Some(open) => Ok(Html::ok(void_page(&signed, &open, None).await?).response()),
    }
}

/// `POST /children/{code}/visits/{seq}/void`
///
/// # Errors
/// [`Failure`].
pub async fn void(path: web::Path<(String, i64)>, posted: Posted) -> Result<HttpResponse, Failure> {
    let (code, seq) = path.into_inner();
    let code = code_of(&code)?;
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let about = About { code: &code, seq, version: version_of(&form)? };
    let ctx = signed.context();
    let (faults, changed) = match void_visit::void(&ctx, Sent::of(key, &form.0), about, &form.0).await {
        Ok(Done::At(path)) => return Ok(see_other(&path)),
        Ok(Done::Gone) => return Ok(gone(&signed, &code)),
        Ok(Done::Changed) => (Faults::new(), true),
        Err(Refusal::Invalid(faults)) => (faults, false),
        Err(other) => return Err(other.into()),
    };
    let wrong = Wrong { filled: &form, faults, changed };
    match void_visit::open(&ctx, &code, seq).await? {
        None => Ok(gone(&signed, &code)),
        Some(open) => Ok(Html(wrong.status(), void_page(&signed, &open, Some(&wrong)).await?).response()),
    }
}

/// The version that the form was shown at.
pub(super) fn version_of(form: &Filled) -> Result<u32, Failure> {
    form.one("version").parse().map_err(|_| Failure::BadForm)
}

/// The history of a record's corrections, in words.
pub(super) fn history(signed: &Signed, lines: Vec<HistoryLine>) -> Vec<CorrectionLine> {
    lines.into_iter().map(|line| history_line(signed, line)).collect()
}

/// One of them.
pub(super) fn history_line(signed: &Signed, line: HistoryLine) -> CorrectionLine {
    let w = signed.words();
    let date = format::day_near(w, line.from_on, signed.visitor.today);
    let link = |other: Option<OtherRecord>| other.map(|other| (other.code, other.name));
    let (what, other) = match line.told {
        Told::Void(reason) => {
            let reason = domain::draft::correction::VoidReason::from_code(&reason).map_or(reason, |r| codes::void_reason(w, r));
            (w.say_with("history-void", args!["date" => date, "reason" => reason]), None)
        }
        Told::MovedTo(other) => {
            let id = if other.is_some() { "history-moved-to" } else { "history-moved-to-other" };
            (w.say_with(id, args!["date" => date]), link(other))
        }
        Told::MovedFrom(other) => {
            let id = if other.is_some() { "history-moved-from" } else { "history-moved-from-other" };
            (w.say_with(id, args!["date" => date]), link(other))
        }
        Told::Merged(other) => {
            let code = crate::web::pages::find::printed(&other.code);
            (w.say_with("history-merged", args!["code" => code, "name" => other.name]), None)
        }
    };
    let on = format::day_near(w, day_in(signed.visitor.settings.time_zone, line.at), signed.visitor.today);
    CorrectionLine { what, other, note: line.note, by: line.by, on }
}
