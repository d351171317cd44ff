//! Steps and coaching lines in the words of a page: the programme's own texts in the reader's language, the rules' texts by their code.

use std::collections::BTreeSet;

use domain::counsel;
use domain::counsel::Step;
use domain::counsel::StepLine;
use domain::counsel::TalkAt;
use domain::draft::visit::talk::choice_of;
use domain::ids::VisitId;
use domain::protocol::CoachingLine;
use domain::protocol::Protocols;
use domain::rule::RuleId;
use domain::rule::Theme;

use crate::i18n::Words;
use crate::i18n::codes;
use crate::store::visits::VisitRecord;
use crate::view::child::AgreedStep;
use crate::view::visit_form::talk::AskedStep;
use crate::view::visit_form::talk::Line;
use crate::view::visit_form::talk::TalkPart;
use crate::web::extract::Signed;
use crate::web::pages::visit::desk::Desk;

/// The talks of a child's visits, in the order of its story.
pub fn talks(records: &[VisitRecord]) -> Vec<TalkAt<'_>> {
    records.iter().map(|record| TalkAt { visit: record.visit.id, on: record.visit.on, talk: &record.talk }).collect()
}

/// The line with this key, by the latest protocol that has it.
fn line<'a>(protocols: &'a Protocols, key: &str) -> Option<&'a CoachingLine> {
    protocols.iter().filter_map(|protocol| protocol.coaching.iter().find(|line| line.key == key)).last()
}

/// A step in words. A line that no protocol has any more is called by its key.
pub fn words_of(step: &Step, protocols: &Protocols, w: &Words) -> String {
    let (text, words) = match step {
        Step::Line { key, words } => {
            (line(protocols, key).map_or_else(|| key.replace('_', " "), |line| line.text(w.lang().code()).to_owned()), words)
        }
        Step::FollowUp { rule, words } => (codes::rule_do(w, *rule), words),
        Step::Own { words } => return words.clone(),
    };
    match words {
        Some(words) => w.say_with("talk-step-and-words", crate::args!["step" => text, "words" => words]),
        None => text,
    }
}

/// A step as a child's page says it.
pub fn agreed(step: &StepLine, signed: &Signed) -> AgreedStep {
    AgreedStep {
        words: words_of(&step.step, &signed.visitor.protocols, signed.words()),
        agreed_on: step.agreed_on,
        answer: step.answer(),
        in_the_way: step.told.as_ref().and_then(|told| told.told.in_the_way()).map(str::to_owned),
        told_on: step.told.as_ref().map(|told| told.on),
    }
}

/// What a family can try because of a follow-up; a referral, a measurement to be taken again or a late visit is no step of theirs.
fn asks_the_family(rule: RuleId) -> bool {
    !matches!(rule.theme(), Theme::Danger | Theme::Reaction | Theme::Data | Theme::Visit)
}

impl Desk<'_> {
    /// What the form of a visit asks of earlier steps, which lines it offers, what a new step can be taken from. `correcting`: the visit
    /// that is told anew; `chosen`: what stands in the form already and must not be lost.
    pub fn talk_part(&self, correcting: Option<VisitId>, chosen: Option<&counsel::Talk>) -> TalkPart {
        let w = self.signed.words();
        let lang = w.lang().code();
        let protocols = &self.signed.visitor.protocols;
        let all = talks(&self.file.visits);
        let at = correcting.and_then(|id| all.iter().position(|at| at.visit == id)).unwrap_or(all.len());
        let ask = counsel::to_ask(&all[..at]);
        let asked = |line: &StepLine| AskedStep { id: line.id, agreed_on: line.agreed_on, words: words_of(&line.step, protocols, w) };
        let mut part = TalkPart {
            last: ask.last.iter().map(asked).collect(),
            earlier: ask.earlier.iter().map(asked).collect(),
            ..TalkPart::default()
        };
        let told = chosen.map(|talk| talk.told.keys().copied().collect::<BTreeSet<_>>()).unwrap_or_default();
        let steps = counsel::steps(&all);
        for line in steps.iter().filter(|line| told.contains(&line.id)) {
            if !part.last.iter().chain(&part.earlier).any(|known| known.id == line.id) {
                part.last.push(asked(line));
            }
        }
        let stage = match correcting {
            Some(id) => self.file.assessment.visit(id).and_then(|judged| judged.stage),
            None => self.file.assessment.now.stage,
        };
        let others: Vec<TalkAt<'_>> = all.iter().filter(|at| Some(at.visit) != correcting).copied().collect();
        let open: BTreeSet<RuleId> = self.file.assessment.open().into_iter().map(|f| f.rule).collect();
        let offered = counsel::offered(&self.protocol.coaching, stage, &counsel::given(&others), &open);
        let ticked = chosen.into_iter().flat_map(|talk| talk.lines.iter()).filter(|key| !offered.iter().any(|line| line.key == **key));
        part.lines = offered
            .iter()
            .copied()
            .chain(ticked.filter_map(|key| line(protocols, key)))
            .map(|line| Line { key: line.key.clone(), words: line.text(lang).to_owned(), danger: line.danger })
            .collect();
        self.choices(&mut part, &steps, chosen, &offered);
        part
    }

    /// Steps of last time that are not done come first, then what is open, then the lines offered and the others of the stage.
    fn choices(&self, part: &mut TalkPart, steps: &[StepLine], chosen: Option<&counsel::Talk>, offered: &[&CoachingLine]) {
        let w = self.signed.words();
        let protocols = &self.signed.visitor.protocols;
        let latest = steps.first().map(|line| line.id.visit);
        let open_rules: BTreeSet<RuleId> = self.file.assessment.open().into_iter().map(|f| f.rule).collect();
        let silenced = |step: &Step| match step {
            Step::Line { key, .. } => line(protocols, key).is_some_and(|line| counsel::silenced(line, &open_rules)),
            _ => false,
        };
        let again = steps
            .iter()
            .filter(|line| Some(line.id.visit) == latest && line.answer() != Some(counsel::StepAnswer::Done) && !silenced(&line.step));
        let mut from: Vec<Step> =
            chosen.into_iter().flat_map(|talk| talk.agreed.values().cloned()).filter(|step| !matches!(step, Step::Own { .. })).collect();
        from.extend(again.map(|line| line.step.clone()));
        let open = self.file.assessment.open();
        from.extend(open.iter().filter(|f| asks_the_family(f.rule)).map(|f| Step::FollowUp { rule: f.rule, words: None }));
        let stage = self.file.assessment.now.stage;
        let of_stage = (self.protocol.coaching.iter())
            .filter(|line| stage.is_some_and(|stage| line.stages.contains(&stage)) && !line.danger)
            .filter(|line| !counsel::silenced(line, &open_rules));
        from.extend(
            offered
                .iter()
                .copied()
                .filter(|line| !line.danger)
                .chain(of_stage)
                .map(|line| Step::Line { key: line.key.clone(), words: None }),
        );
        for step in from {
            let value = choice_of(&step);
            if !part.choices.iter().any(|(known, _)| *known == value) {
                let plain = match step {
                    Step::Line { key, .. } => Step::Line { key, words: None },
                    Step::FollowUp { rule, .. } => Step::FollowUp { rule, words: None },
                    own @ Step::Own { .. } => own,
                };
                part.choices.push((value, words_of(&plain, protocols, w)));
            }
        }
    }
}
