//! The rules in the document: what each looks at with its figures, what the worker does, how it closes, and its source.

use domain::follow_up::Way;
use domain::follow_up::way;
use domain::rule::RuleId;
use domain::rule::Theme;

use super::Block;
use super::Text;
use super::Writer;
use super::said;
use crate::args;
use crate::i18n::clearing_in_words;
use crate::i18n::codes;
use crate::i18n::rule_in_words;

/// How the marks are written in a protocol file.
pub(super) const MARKS: [&str; 3] = ["from memory", "common practice", "our own choice"];

pub(super) fn rules(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    let marked = |mark: &str| RuleId::ALL.iter().filter(|rule| protocol.rules.source(**rule).to_lowercase().contains(mark)).count();
    let [memory, practice, own] = MARKS.map(marked);
    let counts = args!["count" => RuleId::ALL.len(), "memory" => memory, "practice" => practice, "own" => own];
    let mut counts = Some(Block::Para(said(w.say_with("doc-rules-marks", counts))));
    for theme in Theme::ALL {
        let words = w.say_with("doc-rules", args!["theme" => codes::theme(w, *theme)]);
        blocks.push(Block::Part { id: format!("doc-rules-{}", theme.code()), words });
        blocks.extend(counts.take());
        for rule in RuleId::ALL.iter().filter(|rule| rule.theme() == *theme) {
            one(writer, *rule, blocks);
        }
    }
}

fn one(writer: Writer<'_>, rule: RuleId, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(Block::Heading(vec![Text::Said(codes::rule_name(w, rule)), Text::Quoted(format!("({})", rule.code()), "en".to_owned())]));
    if !protocol.rules.is_on(rule) {
        blocks.push(Block::Strong(w.say("doc-rule-off")));
    }
    let mut sentence = said(rule_in_words(w, protocol, rule));
    if rule.is_safety() {
        sentence.push(Text::Said(w.say("doc-rule-safety")));
    }
    blocks.push(Block::Para(sentence));
    blocks.push(Block::Facts(vec![
        (w.say("doc-rule-do"), said(codes::rule_do(w, rule))),
        (w.say("doc-rule-closes"), said(closes(writer, rule))),
    ]));
    blocks.push(writer.source(protocol.rules.source(rule)));
}

fn closes(writer: Writer<'_>, rule: RuleId) -> String {
    let w = writer.w;
    if rule.is_list() {
        return w.say("doc-way-list");
    }
    let way = match way(rule) {
        Way::Test => w.say("doc-way-test"),
        Way::TwoVisits => w.say_with("doc-way-two-visits", args!["days" => writer.days(writer.protocol.clearing.two_visits_days_apart)]),
        Way::Care => w.say("doc-way-care"),
        Way::CareAndTest => w.say("doc-way-care-and-test"),
        Way::TestOrCare => w.say("doc-way-test-or-care"),
        Way::Decision => w.say("doc-way-decision"),
        Way::Correction => w.say("doc-way-correction"),
    };
    match clearing_in_words(w, writer.protocol, rule) {
        Some(test) => format!("{} {test}", w.say_with("doc-fact", args!["name" => way])),
        None => way,
    }
}
