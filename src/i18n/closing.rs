//! When a follow-up closes and what is still missing for this child, in plain words. It judges nothing.

use chrono::NaiveDate;
use domain::follow_up::TestResult;
use domain::follow_up::ToClose;
use domain::follow_up::Way;
use domain::rule::RuleId;

use crate::args;
use crate::i18n::Voice;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain::values;
use crate::i18n::format;

/// When it closes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Closing {
    /// The way, ending in a colon where a test follows.
    pub way: String,
    /// The test, as it must be at a visit.
    pub test: Option<String>,
    /// What is missing and what the newest visit said.
    pub missing: Vec<String>,
}

impl Closing {
    /// All of it, sentence after sentence.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        std::iter::once(&self.way).chain(&self.test).chain(&self.missing).cloned().collect()
    }
}

/// The message that says a rule's clearing test; `None` for a rule that no test clears.
#[must_use]
pub fn test_id(rule: RuleId, young: bool) -> Option<String> {
    use RuleId as R;
    let id = match rule {
        R::DangerGeneral | R::DangerYoungInfant | R::DangerOther => "clears-danger".to_owned(),
        R::WastingYoung if young => "clears-wasting-young".to_owned(),
        R::WastingSevere | R::WastingModerate | R::WastingYoung => "clears-wasting".to_owned(),
        R::ReactionSevere
        | R::ReactionSpreading
        | R::ReactionMild
        | R::ReactionGivenAgain
        | R::FeedingSwallowTrouble
        | R::DataAgeProblem
        | R::DataTwinRecord
        | R::VisitOverdue
        | R::VisitLost
        | R::ReferralNoOutcome => return None,
        other => codes::id("clears", other.code()),
    };
    Some(id)
}

/// The way of a follow-up to its end. `last_fired_on`: the day on which its rule last held; `today`: the day shown.
#[must_use]
pub fn closing(w: &Words, voice: Voice, rule: RuleId, to_close: &ToClose, last_fired_on: NaiveDate, today: NaiveDate) -> Closing {
    let day = |date: NaiveDate| format::day_near(w, date, today);
    let test = test_id(rule, to_close.young).map(|id| w.say_with(&id, values(voice, &to_close.numbers, w, &|code| code.to_owned())));
    let way = match to_close.way {
        Way::Test => w.say("close-way-test"),
        Way::TwoVisits => w.say_with("close-way-two-visits", args!["days" => to_close.days_apart]),
        Way::Care => w.say("close-way-care"),
        Way::CareAndTest => w.say("close-way-care-and-test"),
        Way::TestOrCare => w.say("close-way-test-or-care"),
        Way::Decision => w.say("close-way-decision"),
        Way::Correction => w.say("close-way-correction"),
    };
    let since = || args!["date" => day(last_fired_on)];
    let missing = |what: String| w.say_with("close-missing", args!["what" => what]);
    let mut said = Vec::new();
    match (to_close.way, to_close.first_clear_on.zip(to_close.second_from), &to_close.newest) {
        (Way::TwoVisits, Some((first, from)), _) => {
            said.push(missing(w.say_with("close-one-of-two", args!["first" => day(first), "from" => day(from)])));
        }
        (Way::TwoVisits, None, _) => said.push(missing(w.say("close-none-of-two"))),
        (Way::Test | Way::TestOrCare, _, None) => said.push(missing(w.say_with("close-a-visit", since()))),
        (Way::Care, ..) => said.push(missing(w.say_with("close-care", since()))),
        (Way::CareAndTest, ..) if !to_close.care_told => said.push(missing(w.say_with("close-care", since()))),
        (Way::CareAndTest, ..) => said.push(w.say("close-care-told")),
        (Way::Decision, ..) => said.push(missing(w.say_with("close-decision", since()))),
        (Way::Test | Way::TestOrCare | Way::Correction, ..) => {}
    }
    let tested = matches!(to_close.way, Way::Test | Way::TwoVisits | Way::CareAndTest | Way::TestOrCare);
    if let Some(newest) = to_close.newest.as_ref().filter(|_| tested) {
        let on = day(newest.on);
        said.push(match newest.result {
            Some(TestResult::Met) => w.say_with("close-newest-met", args!["date" => on]),
            Some(TestResult::NotMet) => w.say_with("close-newest-not", args!["date" => on]),
            Some(TestResult::Unknown(_)) | None if !newest.lacking.is_empty() => {
                let lacking: Vec<String> = newest.lacking.iter().map(|needed| codes::needed(w, *needed)).collect();
                w.say_with("close-newest-lacking", args!["date" => on, "what" => format::list(w, &lacking)])
            }
            Some(TestResult::Unknown(_)) | None => w.say_with("close-newest-untold", args!["date" => on]),
        });
    }
    Closing { way, test, missing: said }
}

#[cfg(test)]
mod tests {
    use domain::evidence::Evidence;
    use domain::evidence::EvidenceKey;
    use domain::evidence::Quantity;
    use domain::follow_up::Needed;
    use domain::follow_up::Newest;
    use domain::ids::VisitId;

    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    fn wasting(first_clear_on: Option<&str>, newest: Option<Newest>) -> ToClose {
        let first_clear_on = first_clear_on.map(d);
        ToClose {
            way: Way::TwoVisits,
            young: false,
            numbers: Evidence::from(vec![(EvidenceKey::Muac, Quantity::Millimetres(125)), (EvidenceKey::Wlz, Quantity::ZHundredths(-200))]),
            days_apart: 7,
            first_clear_on,
            second_from: first_clear_on.map(|first| first + chrono::Days::new(7)),
            care_told: false,
            newest,
        }
    }

    fn said(lang: Lang, rule: RuleId, to_close: &ToClose) -> String {
        closing(words(lang), Voice::Written, rule, to_close, d("2026-11-05"), d("2026-11-25")).sentences().join(" ")
    }

    #[test]
    fn two_visits_are_counted() {
        let none = said(Lang::En, RuleId::WastingSevere, &wasting(None, None));
        assert!(none.contains("at least 7 days apart") && none.contains("An arm of 125 mm or more"), "{none}");
        assert!(none.contains("Still missing: both of the two clear visits."), "{none}");
        let newest = |result| Some(Newest { visit: VisitId(2), on: d("2026-11-12"), result, lacking: vec![Needed::Feet] });
        let one = said(Lang::En, RuleId::WastingSevere, &wasting(Some("2026-11-12"), newest(Some(TestResult::Met))));
        assert!(one.contains("The first was on 12 November; another counts from 19 November on."), "{one}");
        assert!(one.contains("At the visit of 12 November it was so."), "{one}");
        let unknown = newest(Some(TestResult::Unknown(domain::follow_up::Why::Missing)));
        let lacking = said(Lang::Fr, RuleId::WastingSevere, &wasting(None, unknown));
        assert!(lacking.contains("Elle ne dit rien de\u{a0}: les deux pieds."), "{lacking}");
    }

    #[test]
    fn an_outcome_that_is_missing_is_named() {
        let care = ToClose { way: Way::CareAndTest, numbers: Evidence::default(), ..wasting(None, None) };
        let text = said(Lang::En, RuleId::DangerGeneral, &care);
        assert!(text.contains("No outcome has been written since 5 November"), "{text}");
        let told = ToClose { care_told: true, ..care };
        let text = said(Lang::En, RuleId::DangerGeneral, &told);
        assert!(text.contains("Word from the clinic is written") && !text.contains("No outcome"), "{text}");
    }

    #[test]
    fn every_rule_that_a_test_clears_has_the_words_of_its_test() {
        for lang in [Lang::En, Lang::Fr] {
            for rule in RuleId::ALL {
                for id in [true, false].into_iter().filter_map(|young| test_id(*rule, young)) {
                    assert!(words(lang).has(&id), "{}: {id}", lang.code());
                }
            }
        }
    }
}
