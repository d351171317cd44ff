//! Codes of the domain as words. The id of a message is made from the code, so that a code without words is found by the tests.

use domain::child::ChildStatus;
use domain::child::GestationSource;
use domain::child::Sex;
use domain::counsel::StepAnswer;
use domain::draft::correction::VoidReason;
use domain::draft::desk::CloseCategory;
use domain::draft::unchecked::Unchecked;
use domain::draft::visit::also::Also;
use domain::evidence::EvidenceKey;
use domain::fault::Fault;
use domain::feeding::ReactionLevel;
use domain::feeding::thickness::NotEstimated;
use domain::follow_up::Needed;
use domain::food::Allergen;
use domain::food::FoodGroup;
use domain::food::ReactionSign;
use domain::food::Response;
use domain::food::Texture;
use domain::growth::Indicator;
use domain::growth::NotComputable;
use domain::protocol::AllergenMode;
use domain::protocol::CoachMark;
use domain::protocol::HoldPolicy;
use domain::protocol::Iron;
use domain::protocol::MilkMode;
use domain::protocol::StageId;
use domain::record::Question;
use domain::role::Action;
use domain::role::Role;
use domain::rule::Class;
use domain::rule::CloseReason;
use domain::rule::FollowUpState;
use domain::rule::RuleId;
use domain::rule::Theme;
use domain::schedule::SlotState;
use domain::visit::Contact;
use domain::visit::DangerSign;
use domain::visit::LowValue;
use domain::visit::Measurement;
use domain::visit::Outcome;
use domain::visit::Position;
use domain::visit::ReadinessSign;
use domain::visit::SwallowTrouble;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;

/// The id of the message for a code: `danger-sign` and `fits_now` make `danger-sign-fits-now`.
#[must_use]
pub fn id(kind: &str, code: &str) -> String {
    let tail: String = code.chars().map(|c| if matches!(c, '.' | '_') { '-' } else { c.to_ascii_lowercase() }).collect();
    format!("{kind}-{tail}")
}

macro_rules! words_of {
    ($($(#[$meta:meta])* $name:ident($kind:ty) = $prefix:literal;)+) => {
        $(
            $(#[$meta])*
            #[must_use]
            pub fn $name(w: &Words, code: $kind) -> String {
                w.say(&id($prefix, code.code()))
            }
        )+

        /// The id of every message that a code needs.
        #[must_use]
        pub fn all_ids() -> Vec<String> {
            let mut ids = Vec::new();
            $(ids.extend(<$kind>::ALL.iter().map(|code| id($prefix, code.code())));)+
            ids.extend(Texture::ALL.iter().flat_map(|t| {
                ["texture", "texture-short", "texture-test"].map(|kind| format!("{kind}-{}", t.level()))
            }));
            ids
        }
    };
}

words_of! {
    /// `girl`
    sex(Sex) = "sex";
    /// `scan in pregnancy`
    gestation_source(GestationSource) = "gestation-source";
    /// `in the programme`
    child_status(ChildStatus) = "child-status";
    /// `Beans, nuts`
    food_group(FoodGroup) = "food-group";
    /// `groundnut`
    allergen(Allergen) = "allergen";
    /// `Took it`
    response(Response) = "response";
    /// `hives all over`
    reaction_sign(ReactionSign) = "reaction-sign";
    /// `At home`
    contact(Contact) = "contact";
    /// `lying`
    position(Position) = "position";
    /// `upper arm`
    measurement(Measurement) = "measurement";
    /// `Vomits everything`
    danger_sign(DangerSign) = "danger-sign";
    /// `Sits with little support`
    readiness_sign(ReadinessSign) = "readiness-sign";
    /// `Tea or coffee`
    low_value(LowValue) = "low-value";
    /// `No trouble`
    swallow_trouble(SwallowTrouble) = "swallow-trouble";
    /// `Seen by a health worker`
    outcome(Outcome) = "outcome";
    /// `outreach worker`
    role(Role) = "role";
    /// `register a child`
    action(Action) = "action";
    /// `Growth`
    theme(Theme) = "theme";
    /// `Refer today`
    class_word(Class) = "class";
    /// `a later visit was as hoped`
    close_reason(CloseReason) = "close-reason";
    /// `seen at home: the child is well`
    close_category(CloseCategory) = "close-category";
    /// `It never happened`
    void_reason(VoidReason) = "void-reason";
    /// `Done`
    step_answer(StepAnswer) = "step-answer";
    /// `Which birth date is right?`
    merge_question(Question) = "merge-ask";
    /// `open`
    follow_up_state(FollowUpState) = "follow-up-state";
    /// `Weight for age (z)`
    evidence_name(EvidenceKey) = "evidence";
    /// `Weight for age`
    indicator(Indicator) = "indicator";
    /// `both feet are swollen: the weight is not that of the body`
    not_computable(NotComputable) = "not-computable";
    /// `Sweet drink`
    also(Also) = "also";
    /// `both feet`
    needed(Needed) = "needed";
    /// `danger signs`
    unchecked(Unchecked) = "unchecked";
    /// `Chopped, finger food`
    stage_name(StageId) = "stage";
    /// `severe`
    reaction_level(ReactionLevel) = "reaction-level";
    /// `The meals needed cannot be estimated: no weight yet.`
    not_estimated(NotEstimated) = "not-estimated";
    /// `due now`
    slot_state(SlotState) = "slot-state";
    /// `common practice`
    mark(CoachMark) = "mark";
    /// `advice only`
    hold_policy(HoldPolicy) = "hold-policy";
    /// `meat, fish, liver`
    iron(Iron) = "iron";
    /// `formula or animal milk (WHO 2023)`
    milk_mode(MilkMode) = "milk-mode";
    /// `not later than other foods`
    allergen_mode(AllergenMode) = "allergen-mode";
}

/// `mashed, soft lumps`
#[must_use]
pub fn texture(w: &Words, texture: Texture) -> String {
    w.say(&format!("texture-{}", texture.level()))
}

/// The word under the spoon: `Mashed`. Step 0 is said as milk there: a watery meal is no stage.
#[must_use]
pub fn texture_short(w: &Words, texture: Texture) -> String {
    w.say(&format!("texture-short-{}", texture.level()))
}

/// How to tell the texture: `lumps squash between finger and thumb`.
#[must_use]
pub fn texture_test(w: &Words, texture: Texture) -> String {
    w.say(&format!("texture-test-{}", texture.level()))
}

/// The name of a stage by its code in the protocol; a stage of a programme's own is shown by its code.
#[must_use]
pub fn stage(w: &Words, code: &str) -> String {
    known_or_code(w, "stage", code)
}

/// Where a food stands, by its code: `not_yet`, `trying`, `accepted`, `refused`, `on_hold`.
#[must_use]
pub fn food_state(w: &Words, code: &str) -> String {
    known_or_code(w, "food-state", code)
}

fn known_or_code(w: &Words, kind: &str, code: &str) -> String {
    let id = id(kind, code);
    if w.has(&id) { w.say(&id) } else { code.to_owned() }
}

/// The short name of a rule: `Weight lost`.
#[must_use]
pub fn rule_name(w: &Words, rule: RuleId) -> String {
    w.say(&rule_id(rule, "name"))
}

/// The rule in plain words, with its default limits and their source.
#[must_use]
pub fn rule_explain(w: &Words, rule: RuleId) -> String {
    w.say(&rule_id(rule, "explain"))
}

/// What to do, and what to tell the family.
#[must_use]
pub fn rule_do(w: &Words, rule: RuleId) -> String {
    w.say(&rule_id(rule, "do"))
}

/// The id of a rule's text; `part` is `name`, `why`, `explain` or `do`.
#[must_use]
pub fn rule_id(rule: RuleId, part: &str) -> String {
    format!("{}-{part}", id("rule", rule.code()))
}

/// What is wrong with something typed, and what to do about it.
#[must_use]
pub fn fault(w: &Words, fault: &Fault) -> String {
    let args = match fault {
        Fault::TooManyDecimals { most } => args!["most" => *most],
        Fault::Outside { least, most, unit } => args!["least" => localised(w, least), "most" => localised(w, most), "unit" => *unit],
        Fault::UnknownFood { typed, like } => {
            args!["typed" => typed.as_str(), "like" => like.as_deref().unwrap_or_default()]
        }
        Fault::HasLeft { name, last } | Fault::LeavesBefore { name, last } => {
            args!["name" => name.as_str(), "last" => format::day_and_year(w, *last)]
        }
        Fault::IsAway { name, days: (from, to) } | Fault::StoodIn { name, days: (from, to) } => {
            args!["name" => name.as_str(), "from" => format::day_and_year(w, *from), "to" => format::day_and_year(w, *to)]
        }
        Fault::TooOld { months } => args!["months" => *months],
        Fault::TooLong { most } => args!["most" => *most],
        Fault::TooShort { least } => args!["least" => *least],
        _ => args![],
    };
    w.say_with(&id("fault", fault.code()), args)
}

/// A number given with a decimal point, with the language's own mark.
fn localised(w: &Words, number: &str) -> String {
    number.replace('.', &w.lang().decimal_mark().to_string())
}

/// The words of a sign's code, of whichever list it comes from; an unknown one is shown as it is.
#[must_use]
pub fn sign(w: &Words, code: &str) -> String {
    if let Ok(sign) = DangerSign::from_code(code) {
        return danger_sign(w, sign);
    }
    if let Ok(sign) = ReactionSign::from_code(code) {
        return reaction_sign(w, sign);
    }
    if let Ok(sign) = ReadinessSign::from_code(code) {
        return readiness_sign(w, sign);
    }
    if let Ok(answer) = SwallowTrouble::from_code(code) {
        return swallow_trouble(w, answer);
    }
    if let Ok(drink) = LowValue::from_code(code) {
        return low_value(w, drink);
    }
    code.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    #[test]
    fn an_id_is_made_from_the_code() {
        assert_eq!(id("danger-sign", "fits_now"), "danger-sign-fits-now");
        assert_eq!(id("sex", "F"), "sex-f");
        assert_eq!(rule_id(RuleId::BirthWeightNotRegained, "why"), "rule-birth-weight-not-regained-why");
    }

    #[test]
    fn faults_say_their_limits_in_the_language() {
        let outside = Fault::Outside { least: "0.5".to_owned(), most: "25".to_owned(), unit: "kg" };
        assert!(fault(words(Lang::En), &outside).contains("0.5 and 25 kg"));
        assert!(fault(words(Lang::Fr), &outside).contains("0,5 et 25 kg"));
    }

    #[test]
    fn signs_of_every_list_have_words() {
        let en = words(Lang::En);
        assert_eq!(sign(en, "cannot_feed"), "Cannot drink or breastfeed");
        assert_eq!(sign(en, "wheeze"), "wheeze");
        assert_eq!(sign(en, "blue"), "Goes blue while feeding");
        assert_eq!(sign(en, "of_the_programme"), "of_the_programme");
    }
}
