//! Why a rule holds, in one line with its numbers. Knows how each kind of quantity is written; the sentence itself is a message.

use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::food::Texture;
use domain::rule::RuleId;

use crate::i18n::Arg;
use crate::i18n::Args;
use crate::i18n::Lang;
use crate::i18n::Voice;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;

/// What a message sees for a number that the finding does not have: its sentence leaves that part out.
const ABSENT: &str = "none";

/// One line that says why the rule holds, with the finding's numbers: `Arm 113 mm: under 115 mm.`
///
/// Every key of the evidence is a variable of the rule's message, by its code; `lost` is the gain without its sign when weight
/// was lost. `food` names a food by its code.
#[must_use]
pub fn explain(rule: RuleId, evidence: &Evidence, w: &Words, food: &dyn Fn(&str) -> String) -> String {
    explain_in(Voice::Written, rule, evidence, w, food)
}

/// The same, written or to be read aloud.
#[must_use]
pub fn explain_in(voice: Voice, rule: RuleId, evidence: &Evidence, w: &Words, food: &dyn Fn(&str) -> String) -> String {
    let lost = match evidence.get(EvidenceKey::Gain) {
        Some(Quantity::Grams(grams)) if *grams < 0 => voice.weight_change(w, -grams),
        Some(Quantity::GramsExact(grams)) if *grams < 0.0 => voice.weight_change(w, whole(-grams)),
        _ => ABSENT.to_owned(),
    };
    w.say_with(&codes::rule_id(rule, "why"), values(voice, evidence, w, food).with("lost", lost))
}

/// Every number as a variable of a sentence, by its code; what is not there is said to be absent.
pub(crate) fn values(voice: Voice, evidence: &Evidence, w: &Words, food: &dyn Fn(&str) -> String) -> Args {
    EvidenceKey::ALL.iter().fold(Args::new(), |args, key| {
        let value = evidence.get(*key).map_or_else(|| Arg::from(ABSENT), |quantity| value(voice, *key, quantity, w, food));
        args.with(key.code(), value)
    })
}

/// A quantity in words, with its unit, as in a table of the numbers used; written or to be read aloud.
#[must_use]
pub fn quantity_in(voice: Voice, key: EvidenceKey, quantity: &Quantity, w: &Words, food: &dyn Fn(&str) -> String) -> String {
    match quantity {
        Quantity::Grams(grams) if changes(key) => voice.weight_change(w, *grams),
        Quantity::Grams(grams) => voice.kg(w, *grams),
        Quantity::GramsExact(grams) if changes(key) => voice.weight_change(w, whole(*grams)),
        Quantity::GramsExact(grams) => voice.kg(w, whole(*grams)),
        Quantity::Millimetres(mm) if matches!(key, EvidenceKey::Length | EvidenceKey::LengthBefore) => voice.cm(w, *mm),
        Quantity::Millimetres(mm) => voice.mm(w, *mm),
        Quantity::ZHundredths(z) => voice.z(w, *z),
        Quantity::Days(days) if key == EvidenceKey::GestationDays => format::gestation(w, u32::try_from(*days).unwrap_or(0)),
        Quantity::Days(days) => w.say_with("common-days", Args::new().with("count", *days)),
        Quantity::Months(months) => w.say_with("common-months", Args::new().with("count", *months)),
        Quantity::Count(n) => format::count(w, u64::from(*n)),
        Quantity::Minutes(minutes) => w.say_with("common-minutes", Args::new().with("count", *minutes)),
        Quantity::Percent(percent) => voice.percent(w, *percent),
        Quantity::Texture(level) => Texture::new(*level).map_or_else(|| level.to_string(), |texture| codes::texture(w, texture)),
        Quantity::On(date) => format::day_and_year(w, *date),
        Quantity::Codes(list) => {
            let named: Vec<String> =
                list.iter().map(|code| if key == EvidenceKey::Foods { food(code) } else { codes::sign(w, code) }).collect();
            format::list(w, &named)
        }
        Quantity::Flag(true) => w.say("common-yes"),
        Quantity::Flag(false) => w.say("common-no"),
    }
}

/// A number of a finding as a line: its name and its value. Where a rule means something of its own by a number, its name says so, and
/// the limit of a fall has the sign of the fall that stands beside it.
#[must_use]
pub fn number_line(
    voice: Voice,
    rule: RuleId,
    (key, told): (EvidenceKey, &Quantity),
    w: &Words,
    food: &dyn Fn(&str) -> String,
) -> (String, String) {
    let own = codes::id(&codes::id("evidence", key.code()), rule.code());
    let name = if w.has(&own) { w.say(&own) } else { codes::evidence_name(w, key) };
    let value = match (rule, key, told) {
        (RuleId::WeightDrift, EvidenceKey::Limit, Quantity::ZHundredths(fall)) => voice.z(w, -fall),
        _ => quantity_in(voice, key, told, w, food),
    };
    (name, value)
}

/// As a variable of a sentence: what a sentence counts stays a number, so that the sentence can choose its plural.
fn value(voice: Voice, key: EvidenceKey, found: &Quantity, w: &Words, food: &dyn Fn(&str) -> String) -> Arg {
    match found {
        Quantity::Days(days) if !matches!(key, EvidenceKey::GestationDays | EvidenceKey::Limit) => Arg::from(*days),
        Quantity::Months(months) if key != EvidenceKey::Limit => Arg::from(*months),
        Quantity::Count(n) => Arg::from(*n),
        Quantity::Minutes(minutes) if key != EvidenceKey::Limit => Arg::from(*minutes),
        Quantity::On(date) => Arg::from(format::day(w, *date)),
        Quantity::Flag(flag) => Arg::from(if *flag { "yes" } else { ABSENT }),
        Quantity::Codes(list) if list.is_empty() => Arg::from(ABSENT),
        // Within a French sentence the name of a food begins small; in English names stand as the protocol writes them.
        other if key == EvidenceKey::Foods && w.lang() == Lang::Fr => {
            Arg::from(quantity_in(voice, key, other, w, &|code| small(&food(code))))
        }
        other => Arg::from(quantity_in(voice, key, other, w, food)),
    }
}

/// A name with a small first letter.
fn small(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// Whether grams under this key are a change, said in grams while under a kilogram.
const fn changes(key: EvidenceKey) -> bool {
    matches!(key, EvidenceKey::Gain | EvidenceKey::Floor | EvidenceKey::Limit)
}

/// To whole grams, half away from zero. Changes of weight are far below 2^31 g.
pub(crate) fn whole(grams: f64) -> i64 {
    // A float outside the range saturates, NaN becomes 0: nothing to guard.
    #[expect(clippy::cast_possible_truncation, reason = "saturating, and no weight comes near")]
    let whole = grams.round() as i64;
    whole
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::words;

    #[test]
    fn a_number_is_named_as_its_rule_means_it() {
        let line = |lang, rule, key, told: &Quantity| number_line(Voice::Written, rule, (key, told), words(lang), &str::to_owned);
        let pair = |name: &str, value: &str| (name.to_owned(), value.to_owned());
        let fall = Quantity::ZHundredths(133);
        assert_eq!(line(Lang::En, RuleId::WeightDrift, EvidenceKey::Limit, &fall), pair("Limit", "−1.33"));
        assert_eq!(line(Lang::En, RuleId::WeightHigh, EvidenceKey::Limit, &fall).1, "1.33");
        let loss = line(Lang::En, RuleId::WeightLoss, EvidenceKey::Limit, &Quantity::Grams(100));
        assert_eq!(loss, pair("Counts if more is lost than", "100 g"));
        let day = Quantity::On("2026-10-15".parse().expect("a date"));
        assert_eq!(line(Lang::En, RuleId::ReactionGivenAgain, EvidenceKey::Date, &day), pair("On hold since", "15 October 2026"));
        assert_eq!(line(Lang::Fr, RuleId::ReactionGivenAgain, EvidenceKey::Date, &day).0, "En pause depuis le");
    }

    #[test]
    fn foods_begin_small_within_a_french_sentence() {
        let evidence: Evidence = vec![(EvidenceKey::Foods, Quantity::Codes(vec!["beans".to_owned()]))].into();
        let said = |lang| explain(RuleId::ReactionMild, &evidence, words(lang), &|_| "Haricots".to_owned());
        assert!(said(Lang::Fr).contains("à haricots"), "{}", said(Lang::Fr));
        assert!(said(Lang::En).contains("Haricots"));
    }
}
