//! The error of measuring in words: beside a finding, and beside a plain change of weight. It judges nothing.

use domain::follow_up::Change;
use domain::follow_up::ScaleError;
use domain::follow_up::Verdict;
use domain::follow_up::may_be_error;

use crate::args;
use crate::i18n::Voice;
use crate::i18n::Words;
use crate::i18n::format;

/// How far two weighings of one child lie apart by error alone.
#[must_use]
pub fn weighings(voice: Voice, w: &Words, tolerance_g: i64) -> String {
    w.say_with("scale-weight", args!["tolerance" => voice.g(w, tolerance_g)])
}

/// The error of measuring beside a finding, in whole sentences: how large it is, what it comes to in z, what it says of the finding.
#[must_use]
pub fn sentences(w: &Words, error: &ScaleError) -> Vec<String> {
    sentences_in(Voice::Written, w, error)
}

/// The same, written or to be read aloud.
#[must_use]
pub fn sentences_in(voice: Voice, w: &Words, error: &ScaleError) -> Vec<String> {
    let mut said = match error.change {
        Change::Length { .. } => vec![w.say_with("scale-length", args!["tolerance" => voice.cm(w, error.tolerance)])],
        Change::Weight { .. } | Change::WeightForAge { .. } => vec![weighings(voice, w, error.tolerance)],
    };
    if let Change::WeightForAge { before, now, .. } = error.change {
        said.push(w.say_with(
            "scale-z",
            args![
                "before" => voice.z(w, before.z.hundredths()),
                "before_on" => format::day_near(w, before.on, now.on),
                "now" => voice.z(w, now.z.hundredths()),
                "on" => format::day(w, now.on)
            ],
        ));
    }
    said.push(w.say(match error.verdict() {
        Verdict::Within => "scale-within",
        Verdict::Beyond => "scale-beyond",
        Verdict::Untold => "scale-untold",
    }));
    said
}

/// The error beside a plain change of weight since the last weighing.
#[must_use]
pub fn beside_change(w: &Words, change_g: i64, tolerance_g: i64) -> String {
    let verdict = if may_be_error(change_g, tolerance_g) { "scale-last-within" } else { "scale-last-beyond" };
    format!("{} {}", weighings(Voice::Written, w, tolerance_g), w.say(verdict))
}

/// A change with its sign, also when it went up.
#[must_use]
pub fn signed(w: &Words, change: i64, said: &str) -> String {
    if change > 0 { w.say_with("scale-signed", args!["change" => said]) } else { said.to_owned() }
}

/// A change of weight with its sign.
#[must_use]
pub fn signed_weight(w: &Words, change_g: i64) -> String {
    signed(w, change_g, &format::weight_change(w, change_g))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn a_change_is_told_beside_the_error() {
        let en = words(Lang::En);
        let told = |change| beside_change(en, change, 100);
        assert!(told(-100).contains("up to 100 g apart") && told(-100).contains("weigh a second time"), "{}", told(-100));
        assert!(told(-101).contains("is more than that") && !told(-101).contains("weigh a second time"));
        assert_eq!(signed_weight(en, 300), "+300 g");
        assert_eq!(signed_weight(en, -60), "−60 g");
        assert_eq!(signed_weight(en, 0), "0 g");
    }

    #[test]
    fn a_finding_within_the_error_asks_for_a_second_weighing_and_stays_as_urgent() {
        let en = words(Lang::En);
        let error = |change_g| ScaleError { change: Change::Weight { change_g, limit_g: Some(0.0) }, tolerance: 100 };
        let within = sentences(en, &error(-60)).join(" ");
        assert!(within.contains("measure a second time") && within.contains("stays as urgent"), "{within}");
        let beyond = sentences(en, &error(-160)).join(" ");
        assert!(beyond.contains("more than that error") && !beyond.contains("second time"), "{beyond}");
    }
}
