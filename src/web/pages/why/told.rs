//! What happened to a follow-up, and what it covers, from values to the lines its page shows.

use domain::follow_up::Kept;
use domain::follow_up::Standing;
use domain::follow_up::Step;
use domain::follow_up::What;
use domain::follow_up::Why;
use domain::rule::RuleId;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::why::Explained;
use crate::store::follow_ups::EventKind;
use crate::store::follow_ups::FollowUpEvent;
use crate::view::why as view;

/// One line of the history.
pub fn step(w: &Words, found: &Explained, step: &Step, food: &dyn Fn(&str) -> String) -> view::StepLine {
    let visit = step.visit.and_then(|id| found.visit(id));
    let by = visit.map(|v| {
        let who = found.names.get(&v.recorded_by).cloned().unwrap_or_default();
        w.say_with("round-dot", args!["left" => codes::contact(w, v.visit.contact), "right" => who])
    });
    let what = match step.what {
        What::Opened => "why-happened-opened",
        What::Refreshed { .. } => "why-happened-refreshed",
        What::Raised => "why-happened-raised",
        What::Kept(_) => "why-happened-kept",
        What::Outcome(_) => "why-happened-outcome",
        What::Closed(..) => "why-happened-closed",
    };
    view::StepLine {
        on: format::day_near(w, step.on, found.file.as_of),
        visit: visit.map(|v| format!("/children/{}/visits/{}/now", found.file.record.code, v.entry_seq)),
        by,
        what: w.say(what),
        class: step.class,
        due: format::day_near(w, step.due_on, found.file.as_of),
        reason: reason(w, found, step, food),
    }
}

fn reason(w: &Words, found: &Explained, step: &Step, food: &dyn Fn(&str) -> String) -> String {
    let rule = found.follow_up.rule;
    match step.what {
        What::Opened | What::Raised | What::Refreshed { .. } => {
            let finding = step.visit.and_then(|id| found.file.assessment.visit(id)?.finding(rule));
            let held = finding.map_or_else(|| w.say("why-reason-rule"), |finding| explain(rule, &finding.evidence, w, food));
            match step.what {
                What::Refreshed { milder: Some(class) } => {
                    let milder = w.say_with("why-reason-milder", args!["class" => codes::class_word(w, class)]);
                    w.say_with("round-dot", args!["left" => held, "right" => milder])
                }
                _ => held,
            }
        }
        What::Kept(Kept::ClearButMore) => w.say("why-reason-clear"),
        What::Kept(Kept::CannotTell(why)) => w.say(match why {
            Why::Missing => "why-reason-missing",
            Why::NotNow => "why-reason-not-now",
            Why::NotYet => "why-reason-not-yet",
            Why::NeedsOutcome => "why-reason-needs-outcome",
            Why::Off => "why-reason-off",
        }),
        What::Kept(Kept::Covered(standing)) => match standing {
            Standing::Silenced(by) | Standing::Muted(by) => w.say_with("why-reason-covered", args!["rule" => codes::rule_name(w, by)]),
            Standing::InTreatment => w.say("why-reason-treatment"),
            Standing::Stands => w.say("why-reason-rule"),
        },
        What::Outcome(outcome) => codes::outcome(w, outcome),
        What::Closed(_, Some(by)) => w.say_with("why-reason-replaced", args!["rule" => codes::rule_name(w, by)]),
        What::Closed(reason, None) => codes::close_reason(w, reason),
    }
}

/// A rule that is true too: its name, its own numbers, and why it opens nothing.
pub fn also(w: &Words, found: &Explained, rule: RuleId, food: &dyn Fn(&str) -> String) -> view::Also {
    let finding = found.file.assessment.visit(found.follow_up.last_fired_visit).and_then(|visit| visit.finding(rule));
    view::Also {
        name: codes::rule_name(w, rule),
        why: finding.map(|finding| explain(rule, &finding.evidence, w, food)),
        reason: finding.and_then(|finding| match finding.standing {
            Standing::Silenced(by) => Some(w.say_with("why-also-silenced", args!["rule" => codes::rule_name(w, by)])),
            Standing::Muted(_) => Some(w.say("why-also-muted")),
            Standing::InTreatment => Some(w.say("why-also-treatment")),
            Standing::Stands => None,
        }),
    }
}

/// A line of the record: the day, and what happened.
pub fn of_record(w: &Words, event: &FollowUpEvent) -> view::Happened {
    let class = || args!["class" => codes::class_word(w, event.class), "due" => format::day(w, event.due_on)];
    let what = match event.kind {
        EventKind::Opened => w.say_with("why-event-opened", class()),
        EventKind::Refreshed => w.say_with("why-event-refreshed", class()),
        EventKind::Raised => w.say_with("why-event-raised", class()),
        EventKind::Changed => w.say("why-event-changed"),
        EventKind::Outcome => w.say("why-event-outcome"),
        EventKind::Reopened => w.say("why-event-reopened"),
        EventKind::Closed => {
            let reason = event.reason.map_or_else(String::new, |r| codes::close_reason(w, r));
            w.say_with("why-event-closed", args!["reason" => reason])
        }
    };
    (format::day_and_year(w, event.on), what)
}
