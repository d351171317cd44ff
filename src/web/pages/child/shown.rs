//! From a child's file to the values its pages show.

use std::collections::BTreeMap;

use domain::calendar::add_days;
use domain::calendar::add_months;
use domain::calendar::completed_months;
use domain::calendar::days_between;
use domain::counsel;
use domain::feeding::FoodState;
use domain::follow_up::FollowUp;
use domain::food::FoodCode;
use domain::growth;
use domain::growth::Indicator;
use domain::ids::PersonId;
use domain::ids::VisitId;
use domain::protocol::Protocol;
use domain::protocol::Stage;
use domain::protocol::StageId;
use domain::role::Action;
use domain::role::may;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use domain::visit::Measurement;

use crate::service::child_file::ChildFile;
use crate::store::follow_ups::FollowUpRecord;
use crate::store::visits::VisitRecord;
use crate::view::child as view;
use crate::web::extract::Signed;
use crate::web::pages::child::thickness;
use crate::web::pages::find::printed;
use crate::web::pages::talk::agreed;
use crate::web::pages::talk::talks;

type Names = BTreeMap<PersonId, String>;

/// The child's page.
pub fn page<'a>(
    file: &'a ChildFile,
    names: &'a Names,
    signed: &'a Signed,
    query: &'a str,
    food: &'a dyn Fn(&str) -> String,
    corrections: Vec<view::CorrectionLine>,
) -> view::ChildPage<'a> {
    let protocol = &file.assessment.now.protocol;
    let lang = signed.words().lang().code();
    let mut past: Vec<view::PastFollowUp<'a>> = file
        .assessment
        .follow_ups
        .iter()
        .filter_map(|f| {
            let closed = f.closed?;
            let number = number_of(file, f);
            Some(view::PastFollowUp { rule: f.rule, closed_on: closed.on, reason: closed.reason, number, evidence: &f.evidence })
        })
        .collect();
    past.extend(file.follow_ups.iter().filter_map(|f| taken_back(file, f)));
    past.sort_by_key(|f| std::cmp::Reverse(f.closed_on));
    view::ChildPage {
        who: who(file, signed),
        day: file.as_of,
        can_supervise: may(signed.actor.role, Action::Supervise),
        number: signed.visitor.settings.emergency_number.as_deref().map(str::trim).filter(|n| n.bytes().any(|b| b.is_ascii_digit())),
        query,
        measured: measured(file),
        stage: file.assessment.now.stage.and_then(|id| stage(file, protocol, id)),
        thickness: file.assessment.now.stage.and_then(|id| thickness::shown(file, protocol, id)),
        foods: foods(file, lang),
        not_tried: not_tried(file, lang),
        open: file
            .assessment
            .open()
            .into_iter()
            .map(|f| view::OpenFollowUp {
                rule: f.rule,
                class: f.class,
                due_on: f.due_on,
                last_fired_on: f.last_fired_on,
                number: number_of(file, f),
                evidence: &f.evidence,
            })
            .collect(),
        past,
        here: Vec::new(),
        agreed: counsel::steps(&talks(&file.visits)).into_iter().map(|step| agreed(&step, signed)).collect(),
        visits: file.visits.iter().rev().map(|record| line(record, names)).collect(),
        twin: None,
        desk_notes: Vec::new(),
        notes_read: Vec::new(),
        corrections,
        next_visit: file.assessment.next_visit.map(|slot| (slot.window.opens(), slot.window.closes())),
        food,
    }
}

/// A follow-up whose cause a correction of the record took away: no judgement finds it any more.
fn taken_back<'a>(file: &ChildFile, f: &'a FollowUpRecord) -> Option<view::PastFollowUp<'a>> {
    let closing = f.closing.as_ref().filter(|c| c.reason == CloseReason::RecordCorrected && c.on <= file.as_of)?;
    if file.assessment.follow_ups.iter().any(|found| (found.rule, found.opened_by) == (f.rule, f.opened_by_visit)) {
        return None;
    }
    let number = stored_number(file, f.rule, f.opened_by_visit)?;
    Some(view::PastFollowUp { rule: f.rule, closed_on: closing.on, reason: closing.reason, number, evidence: &f.evidence })
}

/// Which of the child's follow-ups of its rule, from 1 in the order they opened: as the address of its reasons counts them, those
/// among them that a correction took back.
fn number_of(file: &ChildFile, follow_up: &FollowUp) -> usize {
    let judged = || file.assessment.follow_ups.iter().filter(|f| f.rule == follow_up.rule);
    stored_number(file, follow_up.rule, follow_up.opened_by)
        .unwrap_or_else(|| judged().take_while(|f| !std::ptr::eq(*f, follow_up)).count() + 1)
}

fn stored_number(file: &ChildFile, rule: RuleId, opened_by: VisitId) -> Option<usize> {
    let mut of_rule: Vec<&FollowUpRecord> = file.follow_ups.iter().filter(|f| f.rule == rule).collect();
    of_rule.sort_by_key(|f| (f.opened_on, f.id));
    of_rule.iter().position(|f| f.opened_by_visit == opened_by).map(|at| at + 1)
}

fn who<'a>(file: &'a ChildFile, signed: &Signed) -> view::Who<'a> {
    let record = &file.record;
    let early_by = growth::correction_days(&record.facts);
    view::Who {
        code: &record.code,
        printed: printed(&record.code),
        name: &record.name,
        known_as: record.known_as.as_deref(),
        sex: record.facts.sex,
        born: record.facts.born,
        birth_day_known: record.facts.birth_day_known,
        birth_weight_g: record.facts.birth_weight.map(domain::units::Weight::grams),
        gestation_days: record.facts.gestation_days,
        corrected_by_days: file.assessment.now.corrected_by_days,
        due_date: (early_by > 0).then(|| add_days(record.facts.born, i32::from(early_by))),
        village: &file.area_name,
        caregiver: &record.caregiver_name,
        relation: record.caregiver_relation.as_deref(),
        phone: record.phone.as_deref(),
        directions: record.directions.as_deref(),
        worker: (record.worker != signed.actor.person).then_some(file.worker_name.as_str()),
        status: record.facts.status,
        left_on: record.left_on,
    }
}

/// Birth weight and every visit at which something was measured, oldest first.
fn measured(file: &ChildFile) -> Vec<view::MeasuredOn> {
    let facts = &file.record.facts;
    let birth = facts.birth_weight.map(|weight| {
        let age_days = growth::growth_age(facts, facts.born).days;
        let scores = growth::scores(&growth::Measured {
            sex: facts.sex,
            age_days,
            weight: Some(weight),
            length: None,
            position: None,
            muac: None,
            head: None,
            oedema: None,
        });
        view::MeasuredOn {
            on: facts.born,
            at_birth: true,
            growth_days: age_days,
            weight_g: Some(weight.grams()),
            length_mm: None,
            arm_mm: None,
            z: [scores.waz.rounded().map(growth::ZHundredths::hundredths), None, None],
            weight_suspect: false,
            length_suspect: false,
            confirmed: false,
            error: error_of(&file.assessment.now.protocol),
        }
    });
    let visits = file.visits.iter().filter(|r| r.visit.weight.is_some() || r.visit.length.is_some() || r.visit.muac.is_some());
    birth.into_iter().chain(visits.map(|record| measured_at(file, record))).collect()
}

fn measured_at(file: &ChildFile, record: &VisitRecord) -> view::MeasuredOn {
    let visit = &record.visit;
    let judged = file.assessment.visit(visit.id);
    let z = |indicator: Indicator, stored: Option<i32>| match judged {
        Some(judged) => judged.scores.get(indicator).rounded().map(growth::ZHundredths::hundredths),
        None => stored,
    };
    let suspect = |what: Measurement| match (judged, what) {
        (Some(judged), Measurement::Weight) => judged.suspect.weight,
        (Some(judged), Measurement::Length) => judged.suspect.length,
        _ => record.suspect.contains(&what),
    };
    view::MeasuredOn {
        on: visit.on,
        at_birth: false,
        growth_days: growth::growth_age(&file.record.facts, visit.on).days,
        weight_g: visit.weight.map(domain::units::Weight::grams),
        length_mm: visit.length.map(domain::units::Length::mm),
        arm_mm: visit.muac.map(domain::units::Muac::mm),
        z: [z(Indicator::Waz, record.indices.waz), z(Indicator::Laz, record.indices.laz), z(Indicator::Wlz, record.indices.wlz)],
        weight_suspect: suspect(Measurement::Weight),
        length_suspect: suspect(Measurement::Length),
        confirmed: !visit.confirmed.is_empty(),
        error: error_of(judged.map_or(&file.assessment.now.protocol, |judged| &judged.protocol)),
    }
}

/// The tolerances of a protocol; the file's checks keep them small.
fn error_of(protocol: &Protocol) -> view::MeasuringError {
    let tolerance = &protocol.tolerance;
    view::MeasuringError {
        weight_g: u16::try_from(tolerance.weight_g).unwrap_or(0),
        length_mm: u16::try_from(tolerance.length_mm).unwrap_or(0),
        arm_mm: u16::try_from(tolerance.muac_mm).unwrap_or(0),
    }
}

fn stage<'a>(file: &ChildFile, protocol: &'a Protocol, id: StageId) -> Option<view::StageNow<'a>> {
    let stage = protocol.stages.get(id)?;
    let breastfed = file.visits.iter().rev().find_map(|record| record.visit.breastfed);
    let next = if id == StageId::FirstTastes { None } else { next_stage(file, protocol, stage) };
    Some(view::StageNow {
        code: id.code(),
        texture: stage.texture_expected,
        usual: file.visits.iter().rev().find_map(|record| record.visit.texture_usual),
        meals: if breastfed == Some(false) { stage.meals_expected_nbf } else { stage.meals_expected_bf },
        breastfed,
        snacks: stage.snacks,
        cups: stage.cups,
        tablespoons: stage.tablespoons,
        months: months(protocol),
        next,
    })
}

fn next_stage<'a>(file: &ChildFile, protocol: &'a Protocol, stage: &Stage) -> Option<view::NextStage<'a>> {
    let next = protocol.stages.at(stage.to_months)?;
    let counted_from = growth::corrected_birth_date(&file.record.facts, file.as_of);
    Some(view::NextStage { code: next.id.code(), from: add_months(counted_from, stage.to_months) })
}

/// The months under each texture on the spoon, from the stages by age.
fn months(protocol: &Protocol) -> [String; 5] {
    let mut spans: [Option<(u32, u32)>; 5] = [None; 5];
    for stage in protocol.stages.iter().filter(|stage| stage.id != StageId::FirstTastes) {
        let level = stage.texture_expected.map_or(0, |(from, _)| usize::from(from.level()));
        let (first, last) = (stage.from_months, stage.to_months.saturating_sub(1));
        if let Some(span) = spans.get_mut(level) {
            *span = Some(span.map_or((first, last), |(a, b)| (a.min(first), b.max(last))));
        }
    }
    spans.map(|span| match span {
        Some((first, last)) if first == last => first.to_string(),
        Some((first, last)) => format!("{first}–{last}"),
        None => String::new(),
    })
}

/// Foods offered so far; what is on hold comes first.
fn foods(file: &ChildFile, lang: &str) -> Vec<view::FoodLine> {
    let protocol = &file.assessment.now.protocol;
    let mut foods: Vec<(u8, view::FoodLine)> = file
        .assessment
        .foods
        .iter()
        .map(|line| {
            let (place, standing) = match line.state {
                FoodState::OnHold { since, worst } => (0, view::FoodStanding::OnHold { since, worst: worst.code() }),
                FoodState::Trying => (1, view::FoodStanding::Trying { taken: line.accepted_offers }),
                FoodState::Refused { retry_on } => (2, view::FoodStanding::Refused { retry_on, rest: line.let_it_rest() }),
                FoodState::Cleared { on } => (3, view::FoodStanding::Cleared { on }),
                FoodState::Accepted => (4, view::FoodStanding::Accepted),
            };
            (place, view::FoodLine { name: protocol.food_name(&line.code, lang).to_owned(), standing })
        })
        .collect();
    foods.sort_by(|a, b| (a.0, &a.1.name).cmp(&(b.0, &b.1.name)));
    foods.into_iter().map(|(_, line)| line).collect()
}

/// Foods of the programme that fit the age and were never offered; none while milk is all.
fn not_tried(file: &ChildFile, lang: &str) -> Vec<String> {
    let now = &file.assessment.now;
    if now.stage.is_none_or(|stage| stage == StageId::MilkOnly) {
        return Vec::new();
    }
    let facts = &file.record.facts;
    let age_days = u32::try_from(days_between(facts.born, file.as_of)).unwrap_or(0);
    let months = completed_months(facts.born, file.as_of).unwrap_or(0);
    let known = |code: &FoodCode| file.assessment.foods.iter().any(|line| line.code == *code);
    let mut names: Vec<String> = now
        .protocol
        .foods
        .iter()
        .filter(|food| food.active && !food.drink && !food.unhealthy && !food.sweet_drink)
        .filter(|food| food.earliest_days <= age_days && food.local_wait_months <= months && !known(&food.code))
        .map(|food| food.name(lang).to_owned())
        .collect();
    names.sort();
    names
}

pub(super) fn line<'a>(record: &'a VisitRecord, names: &'a Names) -> view::VisitLine<'a> {
    view::VisitLine {
        seq: record.entry_seq,
        on: record.visit.on,
        contact: record.visit.contact,
        weight_g: record.visit.weight.map(domain::units::Weight::grams),
        length_mm: record.visit.length.map(domain::units::Length::mm),
        arm_mm: record.visit.muac.map(domain::units::Muac::mm),
        by: names.get(&record.recorded_by).map_or("", String::as_str),
        version: record.version,
        voided: record.voided_at.is_some(),
        note: record.note.as_deref(),
    }
}
