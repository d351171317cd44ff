//! Follow-ups on a child's page, open and past, each with its reason and a way to the whole explanation.

use chrono::NaiveDate;
use domain::evidence::Evidence;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::RuleId;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::view::child::ChildPage;
use crate::view::parts::Icon;
use crate::view::parts::details;
use crate::view::parts::marked;
use crate::view::pieces::list::class_css;

/// A follow-up that is open.
#[derive(Debug, Clone, Copy)]
pub struct OpenFollowUp<'a> {
    /// Rule.
    pub rule: RuleId,
    /// Urgency.
    pub class: Class,
    /// Day of the check.
    pub due_on: NaiveDate,
    /// Day on which the rule last fired.
    pub last_fired_on: NaiveDate,
    /// Which of the child’s follow-ups of this rule, from 1 in the order they opened.
    pub number: usize,
    /// The numbers it rests on.
    pub evidence: &'a Evidence,
}

/// A follow-up that is closed.
#[derive(Debug, Clone, Copy)]
pub struct PastFollowUp<'a> {
    /// Rule.
    pub rule: RuleId,
    /// Day of closing.
    pub closed_on: NaiveDate,
    /// Why it closed.
    pub reason: CloseReason,
    /// Which of the child’s follow-ups of this rule, from 1 in the order they opened.
    pub number: usize,
    /// The numbers it rested on.
    pub evidence: &'a Evidence,
}

/// The page that explains a follow-up.
pub fn why_path(page: &ChildPage<'_>, follow_up: &OpenFollowUp<'_>) -> String {
    path(page, follow_up.rule, follow_up.number)
}

fn path(page: &ChildPage<'_>, rule: RuleId, number: usize) -> String {
    format!("/children/{}/why/{}/{number}{}", page.who.code, rule.code(), page.query)
}

/// The part of the page.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        h2 { (w.say("child-follow-ups")) }
        @if page.open.is_empty() {
            p { (w.say("child-none-open")) }
        } @else {
            ul.rows { @for follow_up in &page.open { li { (open(w, page, follow_up)) } } }
            p.quiet { (w.say("child-rule")) }
        }
        @if let Some((opens, closes)) = page.next_visit { p { (next_visit(w, page.day, opens, closes)) } }
        @if !page.past.is_empty() {
            (details(&w.say_with("child-closed", args!["count" => page.past.len()]), false, &html! {
                ul.rows { @for follow_up in &page.past { li { (past(w, page, follow_up)) } } }
            }))
        }
    }
}

fn open(w: &Words, page: &ChildPage<'_>, follow_up: &OpenFollowUp<'_>) -> Markup {
    let due = format::day_near(w, follow_up.due_on, page.day);
    let late = domain::calendar::days_between(follow_up.due_on, page.day);
    let word = codes::class_word(w, follow_up.class);
    let class = if late > 0 {
        w.say_with("round-dot", args!["left" => word, "right" => w.say_with("round-late", args!["count" => late])])
    } else {
        word
    };
    html! {
        p { (marked(Icon::of_class(follow_up.class), class_css(follow_up.class), &class)) }
        div.split {
            p { (explain(follow_up.rule, follow_up.evidence, w, page.food)) " " (w.say_with("child-check-by", args!["day" => due])) }
            a.link href=(why_path(page, follow_up)) { (w.say("common-why")) span.vh { " " (codes::rule_name(w, follow_up.rule)) } }
        }
    }
}

fn past(w: &Words, page: &ChildPage<'_>, follow_up: &PastFollowUp<'_>) -> Markup {
    let day = format::day_near(w, follow_up.closed_on, page.day);
    html! {
        p { b { (codes::rule_name(w, follow_up.rule)) } " · " (w.say_with("child-closed-on", args!["day" => day, "reason" => codes::close_reason(w, follow_up.reason)])) }
        div.split {
            p.quiet { (explain(follow_up.rule, follow_up.evidence, w, page.food)) }
            a.link href=(path(page, follow_up.rule, follow_up.number)) { (w.say("common-why")) span.vh { " " (codes::rule_name(w, follow_up.rule)) } }
        }
    }
}

fn next_visit(w: &Words, day: NaiveDate, opens: NaiveDate, closes: NaiveDate) -> String {
    let last = format::day_near(w, closes, day);
    if opens <= day {
        w.say_with("child-visit-open", args!["last" => last])
    } else {
        w.say_with("child-visit-next", args!["first" => format::day_near(w, opens, day), "last" => last])
    }
}
