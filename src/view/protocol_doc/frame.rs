//! The frame of the document: who approved it, cautions, ages, clocks, visits, measuring, and the place to sign.

use domain::protocol::SlotPlan;
use domain::rule::Class;
use domain::rule::RuleId;

use super::Block;
use super::Text;
use super::Writer;
use super::said;
use crate::args;
use crate::i18n::codes;
use crate::i18n::format;

const CAUTIONS: [&str; 8] = [
    "common-caution-1",
    "common-caution-2",
    "common-caution-3",
    "common-caution-4",
    "common-caution-5",
    "common-caution-6",
    "common-caution-7",
    "common-caution-8",
];

pub(super) fn head(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    match (&protocol.approved_by, protocol.approved_on) {
        (None, _) => blocks.push(Block::Strong(w.say("doc-not-approved"))),
        (Some(by), None) => blocks.push(Block::Para(said(w.say_with("doc-approved", args!["by" => by])))),
        (Some(by), Some(on)) => {
            blocks.push(Block::Para(said(w.say_with("doc-approved-on", args!["by" => by, "date" => format::day_and_year(w, on)]))));
        }
    }
    let mut facts = said(w.say_with("doc-effective", args!["date" => format::day_and_year(w, protocol.effective_from)]));
    if let Some(name) = &protocol.local_protocol_name {
        facts.push(Text::Said(w.say_with("doc-local", args!["name" => name])));
    }
    blocks.push(Block::Para(facts));
    blocks.push(Block::Para(writer.say("doc-purpose")));
    blocks.push(Block::Para(writer.say("doc-marks")));
    blocks.push(writer.part("doc-cautions"));
    blocks.push(Block::List(CAUTIONS.iter().map(|id| writer.say(id)).collect()));
}

pub(super) fn ages(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    let ages = &protocol.ages;
    blocks.push(writer.part("doc-ages"));
    let exit = w.say_with("common-months", args!["count" => ages.exit_age_months]);
    blocks.push(Block::Facts(vec![
        (w.say("doc-start-age"), said(writer.days(ages.start_age_days))),
        (w.say("doc-grace"), said(writer.days(ages.late_start_grace_days))),
        (w.say("doc-settling"), said(writer.days(ages.settling_in_days))),
        (w.say("doc-exit-age"), said(exit)),
        (w.say("doc-correction"), writer.say("doc-correction-how")),
    ]));
    blocks.push(writer.source(&ages.source));
}

pub(super) fn urgency(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(writer.part("doc-urgency"));
    let late = |days: i32| said(w.say_with("doc-class-late", args!["count" => days]));
    let rows = Class::ALL.iter().map(|class| {
        let clock = protocol.classes.of(*class);
        vec![
            said(codes::class_word(w, *class)),
            said(writer.days(clock.check_days)),
            late(clock.supervisor_after_days),
            late(clock.manager_after_days),
        ]
    });
    blocks.push(Block::Table {
        caption: w.say("doc-urgency"),
        columns: ["doc-class", "doc-class-check", "doc-class-supervisor", "doc-class-manager"].map(|id| w.say(id)).to_vec(),
        rows: rows.collect(),
    });
    let floor = w.say_with("doc-month-floor", args!["days" => writer.days(protocol.classes.month_at_least_days)]);
    blocks.push(Block::Para(said(floor)));
    blocks.push(writer.source(&protocol.classes.source));
}

pub(super) fn visits(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    let schedule = &protocol.schedule;
    blocks.push(writer.part("doc-visits"));
    let slots: Vec<String> = schedule.slots.iter().map(|slot| slot_words(writer, *slot)).collect();
    blocks.push(Block::Facts(vec![(w.say("doc-visits-slots"), said(format::list(w, &slots)))]));
    let mut lines = vec![said(w.say_with("doc-visits-opens", args!["days" => writer.days(schedule.opens_before_days)]))];
    for band in &schedule.closes_after {
        let days = writer.days(band.days);
        lines.push(said(w.say_with("doc-visits-closes", args!["months" => band.from_months.to_string(), "days" => days])));
    }
    let days = writer.days(schedule.expected_from_days_before_registration.saturating_add(1));
    lines.push(said(w.say_with("doc-visits-registered", args!["days" => days])));
    blocks.push(Block::List(lines));
    blocks.push(writer.source(&schedule.source));
}

fn slot_words(writer: Writer<'_>, slot: SlotPlan) -> String {
    let w = writer.w;
    match (slot.months, slot.days) {
        (0, days) => w.say_with("doc-slot-days", args!["n" => days.to_string()]),
        (months, 0) => w.say_with("doc-slot-months", args!["n" => months.to_string()]),
        (months, days) => w.say_with("doc-slot-both", args!["months" => months.to_string(), "days" => days.to_string()]),
    }
}

pub(super) fn measuring(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    let tolerance = &protocol.tolerance;
    blocks.push(writer.part("doc-measuring"));
    blocks.push(Block::Facts(vec![
        (w.say("doc-tolerance-weight"), said(format::g(w, tolerance.weight_g))),
        (w.say("doc-tolerance-length"), said(format::mm(w, i64::from(tolerance.length_mm)))),
        (w.say("doc-tolerance-arm"), said(format::mm(w, i64::from(tolerance.muac_mm)))),
    ]));
    blocks.push(writer.source(&tolerance.source));
}

pub(super) fn review(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(writer.part("doc-review"));
    let foods = protocol.foods.iter().count();
    let what = w.say_with(
        "doc-review-what",
        args!["id" => &protocol.id, "version" => &protocol.version, "count" => RuleId::ALL.len(), "foods" => foods],
    );
    blocks.push(Block::Para(said(what)));
    blocks.push(Block::Sign {
        ticks: ["doc-review-fine", "doc-review-changes"].map(|id| w.say(id)).to_vec(),
        labels: ["doc-review-name", "doc-review-role", "doc-review-date", "doc-review-sign", "doc-review-notes"]
            .map(|id| w.say(id))
            .to_vec(),
    });
}
