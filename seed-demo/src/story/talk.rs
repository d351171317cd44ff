//! What worker and family talk about: lines told once, small steps agreed, and what became of them at the next visit. It has dice of its
//! own, so that weights and foods fall as they would without it.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use chrono::NaiveDate;
use domain::calendar::completed_months;
use domain::counsel;
use domain::counsel::Place;
use domain::counsel::Step;
use domain::counsel::StepAnswer;
use domain::counsel::Talk;
use domain::counsel::TalkAt;
use domain::counsel::Told;
use domain::food::Response;
use domain::growth::TERM_DAYS;
use domain::protocol::StageId;
use domain::rule::RuleId;
use domain::visit::Contact;
use spoonround::files::protocol_toml::default_protocol;

use crate::story;
use crate::story::Story;
use crate::story::dice::Dice;

/// Steps in a worker's own words, from the first spoon on.
const STEPS: [&str; 10] = [
    "Egg on market day, shared by both children",
    "Grandmother keeps a spoon of dried fish powder beside the fire",
    "Porridge thick enough to stay on the spoon at the noon meal",
    "Father gives the evening meal",
    "Pumpkin from the lower garden twice this week",
    "Own small bowl, so that everybody sees how much is eaten",
    "Mother expresses milk before the market",
    "Water in the blue cup instead of the bottle",
    "A third meal when the older ones come home",
    "Mashed beans stirred into the cassava",
];

/// Steps before the first spoon.
const MILK_STEPS: [&str; 5] = [
    "Feed once more at night",
    "No water while it is hot: the breast instead",
    "Sister fetches the water, so that mother can sit to feed",
    "Show at the next visit how the baby latches",
    "Cup and boiled spoon for the expressed milk",
];

/// What may be in the way.
const WAYS: [&str; 8] = [
    "Harvest: away from dawn to dusk",
    "No fish at the lake this week",
    "The hens do not lay",
    "Grandmother thinks it is too early",
    "The child was ill for some days",
    "No money before market day",
    "Older children eat it first",
    "Forgot, wants to try again",
];

/// Children's numbers are far below this.
const APART: u32 = 1 << 30;

/// Tells what was talked about at each contact of a story.
pub fn tell(story: &mut Story) {
    let mut dice = Dice::of(APART + story.number);
    let early = story.child.gestation_days.filter(|days| *days < 259).map_or(0, |days| TERM_DAYS - days);
    let due = domain::calendar::add_days(story.child.born, i32::from(early));
    let mut talks: Vec<Talk> = Vec::new();
    for at in 0..story.visits.len() {
        let visit = &story.visits[at].visit;
        // What is entered late is not known to whoever makes the next visit.
        let known = |told: &(&story::Told, &Talk)| entered(told.0) <= entered(&story.visits[at]);
        let before: Vec<TalkAt<'_>> = (story.visits.iter().zip(&talks))
            .filter(known)
            .map(|(told, talk)| TalkAt { visit: told.visit.id, on: told.visit.on, talk })
            .collect();
        let mut talk = Talk { told: answers(&before, &mut dice), ..Talk::default() };
        // At a call, and while danger is all that counts, nothing new is agreed.
        let reacted = |told: &story::Told| told.visit.foods.iter().any(|food| food.response == Some(Response::Reaction));
        let pressing = visit.danger_signs.as_ref().is_some_and(|signs| !signs.is_empty()) || reacted(&story.visits[at]);
        // After a reaction nobody is told to try more of the kind.
        let open: BTreeSet<RuleId> = if story.visits[..at].iter().any(reacted) {
            [RuleId::ReactionSevere, RuleId::ReactionSpreading, RuleId::ReactionMild].into()
        } else {
            BTreeSet::new()
        };
        let months = completed_months(due, visit.on).unwrap_or(0);
        let stage = default_protocol().stages.at(months).map(|stage| stage.id);
        if visit.contact != Contact::Phone && !pressing && stage.is_some() {
            let offered = counsel::offered(&default_protocol().coaching, stage, &counsel::given(&before), &open);
            let said = usize::try_from(dice.between(0, 3)).unwrap_or(0);
            talk.lines = offered.iter().take(said).map(|line| line.key.clone()).collect();
            let from = offered.iter().find(|line| !line.danger).map(|line| line.key.as_str());
            talk.agreed = steps(stage == Some(StageId::MilkOnly), from, &mut dice);
        }
        talks.push(talk);
    }
    for (told, talk) in story.visits.iter_mut().zip(talks) {
        told.talk = talk;
    }
}

fn entered(told: &story::Told) -> (NaiveDate, u16) {
    (domain::calendar::add_days(told.visit.on, i32::from(told.entered.days_later)), told.entered.minute)
}

fn steps(milk: bool, line: Option<&str>, dice: &mut Dice) -> BTreeMap<Place, Step> {
    let how_many = *dice.pick(&[0, 0, 1, 1, 1, 2, 3]);
    let mut steps: BTreeMap<Place, Step> = BTreeMap::new();
    for place in Place::ALL.into_iter().take(how_many) {
        let own = *if milk { dice.pick(&MILK_STEPS) } else { dice.pick(&STEPS) };
        let step = match line {
            Some(key) if place.number() == 1 && dice.chance(0.4) => Step::Line { key: key.to_owned(), words: None },
            _ => Step::Own { words: own.to_owned() },
        };
        if !steps.values().any(|known| *known == step) {
            steps.insert(place, step);
        }
    }
    steps
}

fn answers(before: &[TalkAt<'_>], dice: &mut Dice) -> BTreeMap<counsel::StepId, Told> {
    let mut told = BTreeMap::new();
    for line in counsel::to_ask(before).last {
        let answer = match dice.between(1, 100) {
            1..=48 => Some(StepAnswer::Done),
            49..=70 => Some(StepAnswer::Partly),
            71..=86 => Some(StepAnswer::Not),
            _ => None,
        };
        let way = matches!(answer, Some(StepAnswer::Partly | StepAnswer::Not)).then(|| (*dice.pick(&WAYS)).to_owned());
        told.extend(Told::of(answer, way).map(|words| (line.id, words)));
    }
    told
}
