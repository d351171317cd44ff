//! Merging two records of one child over HTTP: choosing the other, comparing, saying what is right, merging.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use actix_web::http::StatusCode;
use actix_web::web;
use domain::fault::Faults;
use domain::record::Contradiction;
use domain::record::Question;
use maud::Markup;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::Refusal;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::corrections::merge_children;
use crate::service::corrections::merge_children::Merging;
use crate::service::corrections::merge_children::ToMerge;
use crate::service::once::Sent;
use crate::view::correction::EffectLine;
use crate::view::correction::Sending;
use crate::view::filled::Filled;
use crate::view::merge as view;
use crate::view::merge::Asked;
use crate::view::merge::Compared;
use crate::view::pick_child::PickChild;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::extract::query_value;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::correction::Wrong;
use crate::web::pages::correction::framed;
use crate::web::pages::find::found;
use crate::web::pages::find::looked_for;
use crate::web::pages::find::printed;
use crate::web::pages::supervise::food_name;
use crate::web::pages::visit::code_of;

fn contradiction(w: &Words, found: Contradiction) -> String {
    let (id, day) = match found {
        Contradiction::VisitBeforeBirth(day) => ("merge-visit-before-birth", Some(day)),
        Contradiction::RegisteredBeforeBirth(day) => ("merge-registered-before-birth", Some(day)),
        Contradiction::OneDied => ("merge-one-died", None),
        Contradiction::DiedOnOtherDays => ("merge-died-on-other-days", None),
        Contradiction::VisitAfterDeath(day) => ("merge-visit-after-death", Some(day)),
    };
    match day {
        Some(day) => w.say_with(id, args!["date" => format::day_and_year(w, day)]),
        None => w.say(id),
    }
}

/// What a record says to a question, or of a fact.
fn said(w: &Words, file: &ChildFile, question: Question) -> String {
    let facts = &file.record.facts;
    let unknown = || w.say("common-not-known");
    match question {
        Question::Born => {
            let day = format::day_and_year(w, facts.born);
            if facts.birth_day_known { day } else { format!("{day} ({})", w.say("child-day-estimated")) }
        }
        Question::Sex => codes::sex(w, facts.sex),
        Question::BirthWeight => facts.birth_weight.map_or_else(unknown, |weight| format::kg(w, i64::from(weight.grams()))),
        Question::Gestation => {
            facts.gestation_days.map_or_else(unknown, |days| w.say_with("merge-weeks", args!["weeks" => days / 7, "days" => days % 7]))
        }
        Question::Status => {
            let status = codes::child_status(w, facts.status);
            file.record.left_on.map_or_else(|| status.clone(), |on| format!("{status}, {}", format::day_and_year(w, on)))
        }
    }
}

fn facts(w: &Words, a: &ChildFile, b: &ChildFile) -> Vec<Compared> {
    let none = || w.say("common-not-known");
    let text = |value: Option<&String>| value.cloned().unwrap_or_else(none);
    let row = |id: &str, telling: bool, of: &dyn Fn(&ChildFile) -> String| Compared { label: w.say(id), values: [of(a), of(b)], telling };
    let visits = |file: &ChildFile| {
        let span = file.visits.first().zip(file.visits.last());
        span.map_or_else(
            || w.say("child-no-visits"),
            |(first, last)| {
                let (from, to) = (format::day_and_year(w, first.visit.on), format::day_and_year(w, last.visit.on));
                w.say_with("merge-visits", args!["count" => file.visits.len(), "from" => from, "to" => to])
            },
        )
    };
    let weight = |file: &ChildFile| {
        let last = file.visits.iter().rev().find_map(|v| Some((v.visit.weight?, v.visit.on)));
        last.map_or_else(none, |(weight, on)| format!("{}, {}", format::kg(w, i64::from(weight.grams())), format::day_and_year(w, on)))
    };
    vec![
        row("merge-name", true, &|f| f.record.name.clone()),
        row("merge-known-as", false, &|f| text(f.record.known_as.as_ref())),
        row("merge-right-sex", true, &|f| said(w, f, Question::Sex)),
        row("merge-right-born", true, &|f| said(w, f, Question::Born)),
        row("merge-caregiver", true, &|f| f.record.caregiver_name.clone()),
        row("merge-phone", true, &|f| text(f.record.phone.as_ref())),
        row("merge-village", true, &|f| f.area_name.clone()),
        row("merge-worker", false, &|f| f.worker_name.clone()),
        row("merge-registered", false, &|f| format::day_and_year(w, f.record.facts.registered_on)),
        row("merge-right-birth-weight", true, &|f| said(w, f, Question::BirthWeight)),
        row("merge-right-gestation", true, &|f| said(w, f, Question::Gestation)),
        row("merge-right-status", true, &|f| said(w, f, Question::Status)),
        row("merge-visited", false, &visits),
        row("merge-last-weight", false, &weight),
        row("merge-open", false, &|f| f.assessment.open().len().to_string()),
    ]
}

fn side_by_side<'a>(signed: &Signed, both: &'a ToMerge, wrong: &BTreeSet<Contradiction>) -> view::SideBySide<'a> {
    let w = signed.words();
    let food = food_name(signed);
    let (a, b) = (&both.first, &both.second);
    let line = |f: &domain::follow_up::FollowUp| EffectLine {
        class: f.class,
        why: explain(f.rule, &f.evidence, w, &food),
        due: format::day_near(w, f.due_on, signed.visitor.today),
    };
    let days: Vec<String> = both.same_days.iter().map(|day| format::day_near(w, *day, signed.visitor.today)).collect();
    view::SideBySide {
        codes: [(printed(&a.record.code), &a.record.code), (printed(&b.record.code), &b.record.code)],
        names: [&a.record.name, &b.record.name],
        versions: (a.record.version, b.record.version),
        facts: facts(w, a, b),
        asked: both.questions.iter().map(|q| Asked { question: *q, values: [said(w, a, *q), said(w, b, *q)] }).collect(),
        contradictions: both.contradictions.union(wrong).map(|c| contradiction(w, *c)).collect(),
        refused: !both.contradictions.is_empty(),
        same_days: (!days.is_empty()).then(|| format::list(w, &days)),
        open_then: both.open_then.as_ref().map(|open| open.iter().map(line).collect()),
    }
}

struct Shown<'a> {
    file: &'a ChildFile,
    other: Result<view::SideBySide<'a>, PickChild<'a>>,
}

fn page(signed: &Signed, shown: Shown<'_>, wrong: Option<&Wrong<'_>>) -> Markup {
    let w = signed.words();
    let (empty, none, fresh, token) = (Filled::default(), Faults::new(), fresh_key(), signed.visitor.token());
    let faults = wrong.map_or(&none, |wrong| &wrong.faults);
    let page = view::MergePage {
        code: &shown.file.record.code,
        called: shown.file.called(),
        other: shown.other,
        sending: Sending {
            filled: wrong.map_or(&empty, |wrong| wrong.filled),
            faults,
            version: shown.file.record.version,
            changed: wrong.is_some_and(|wrong| wrong.changed),
            token: &token,
            key: wrong.filter(|wrong| !wrong.changed).map_or(fresh.as_str(), |wrong| wrong.filled.one("key")),
        },
    };
    let title = w.say_with("merge-title", args!["name" => shown.file.called()]);
    framed(signed, title, faults, view::page(w, &page))
}

/// `GET /children/{code}/merge`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let ctx = signed.context();
    let code = code_of(&code)?;
    if let Some(with) = query_value(&req, "with") {
        let Some(both) = merge_children::open(&ctx, code.as_str(), &with).await? else {
            return Ok(see_other(&format!("/children/{}", code.as_str())));
        };
        let other = Ok(side_by_side(&signed, &both, &BTreeSet::new()));
        return Ok(Html::ok(page(&signed, Shown { file: &both.first, other }, None)).response());
    }
    let file = child_file::open(&ctx, &code, ctx.today).await?;
    // Whoever is the same child most often has the same name.
    let asked = query_value(&req, "q").unwrap_or_else(|| file.record.name.clone());
    let (rows, more) = looked_for(&signed, asked.trim(), file.record.id).await?;
    let path = format!("/children/{}/merge", file.record.code);
    let pick = PickChild {
        path: &path,
        choice: "with",
        asked: asked.trim(),
        found: rows.iter().map(|row| found(row, signed.actor.role, &BTreeMap::new())).collect(),
        more,
        day: signed.visitor.today,
    };
    Ok(Html::ok(page(&signed, Shown { file: &file, other: Err(pick) }, None)).response())
}

/// `POST /children/{code}/merge`
///
/// # Errors
/// [`Failure`].
pub async fn save(posted: Posted, code: web::Path<String>) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let number = |name: &str| form.one(name).parse::<u32>().map_err(|_| Failure::BadForm);
    let versions = (number("version_first")?, number("version_second")?);
    let with = form.one("with").to_owned();
    let ctx = signed.context();
    let mut contradicts = BTreeSet::new();
    let (faults, changed) = match merge_children::merge(&ctx, Sent::of(key, &form.0), (&code, &with), versions, &form.0).await {
        Ok(Merging::Done(path)) => return Ok(see_other(&path)),
        Ok(Merging::Already(path)) => return Ok(already(&signed, &path)),
        Ok(Merging::Changed) => (Faults::new(), true),
        Ok(Merging::Contradicts(found)) => {
            contradicts = found;
            (Faults::new(), false)
        }
        Err(Refusal::Invalid(faults)) => (faults, false),
        Err(other) => return Err(other.into()),
    };
    let wrong = Wrong { filled: &form, faults, changed };
    match merge_children::open(&ctx, &code, &with).await? {
        None => Ok(already(&signed, &format!("/children/{}", code.as_str()))),
        Some(both) => {
            let other = Ok(side_by_side(&signed, &both, &contradicts));
            Ok(Html(wrong.status(), page(&signed, Shown { file: &both.first, other }, Some(&wrong))).response())
        }
    }
}

fn already(signed: &Signed, path: &str) -> HttpResponse {
    let w = signed.words();
    Html(StatusCode::CONFLICT, signed.visitor.page(&w.say("merge-already-title"), view::already(w, path))).response()
}
