//! A rule of a protocol as a sentence with the figures that this protocol gives it. It knows how each figure is written by its key.

use domain::protocol::Figure;
use domain::protocol::Protocol;
use domain::protocol::TextureStep;
use domain::rule::RuleId;

use crate::args;
use crate::i18n::Arg;
use crate::i18n::Args;
use crate::i18n::Words;
use crate::i18n::closing::test_id;
use crate::i18n::codes;
use crate::i18n::format;

/// The id of a rule's sentence.
#[must_use]
pub fn rule_sentence(rule: RuleId) -> String {
    format!("doc-rule-{}", rule.code().replace(['.', '_'], "-"))
}

/// What a rule looks at, with the figures of a protocol.
#[must_use]
pub fn rule_in_words(w: &Words, protocol: &Protocol, rule: RuleId) -> String {
    let args = protocol.rules.figures(rule).into_iter().fold(Args::new(), |args, (key, figure)| args.with(key, said(w, key, &figure)));
    w.say_with(&rule_sentence(rule), args)
}

/// The test that clears a rule's follow-ups, with the figures of a protocol; `None` for a rule that no test clears.
#[must_use]
pub fn clearing_in_words(w: &Words, protocol: &Protocol, rule: RuleId) -> Option<String> {
    // A child's own page says the numbers of that child; here stand those of the protocol, where there are any.
    let own = test_id(rule, rule == RuleId::WastingYoung)?;
    let general = format!("doc-{own}");
    let figures_of = if rule == RuleId::WastingModerate { RuleId::WastingSevere } else { rule };
    let args =
        protocol.rules.figures(figures_of).into_iter().fold(Args::new(), |args, (key, figure)| args.with(key, said(w, key, &figure)));
    let args = args
        .with("tolerance", format::g(w, protocol.tolerance.weight_g))
        .with("start_age", w.say_with("common-days", args!["count" => protocol.ages.start_age_days]));
    Some(w.say_with(if w.has(&general) { &general } else { &own }, args))
}

/// A figure with its unit.
fn said(w: &Words, key: &str, figure: &Figure) -> Arg {
    match figure {
        Figure::Class(class) => Arg::from(codes::class_word(w, *class)),
        Figure::Z(z) => Arg::from(format::z(w, z.hundredths())),
        Figure::Days(range) => {
            Arg::from(w.say_with("doc-rule-days-range", args!["from" => range.least.to_string(), "to" => range.most.to_string()]))
        }
        Figure::Number(percent) => Arg::from(format::percent(w, *percent)),
        Figure::Steps(steps) => Arg::from(steps.iter().map(|step| step_in_words(w, step)).collect::<Vec<_>>().join(" ")),
        Figure::Whole(n) => Arg::from(whole(w, key, *n)),
    }
}

fn whole(w: &Words, key: &str, n: i64) -> String {
    if key.contains("gestation") {
        format::gestation(w, u32::try_from(n).unwrap_or(0))
    } else if key.contains("_days") || key.starts_with("days") {
        w.say_with("common-days", args!["count" => n])
    } else if key.ends_with("_months") {
        w.say_with("common-months", args!["count" => n])
    } else if key.ends_with("_minutes") {
        w.say_with("common-minutes", args!["count" => n])
    } else if key.ends_with("_mm") {
        format::mm(w, n)
    } else if key.ends_with("_g") || key.ends_with("_g_per_day") {
        format::g(w, n)
    } else {
        n.to_string()
    }
}

fn step_in_words(w: &Words, step: &TextureStep) -> String {
    let texture = domain::food::Texture::new(step.below).map_or_else(String::new, |texture| codes::texture(w, texture));
    let class = codes::class_word(w, step.class);
    let last = step.to_months.saturating_sub(1);
    w.say_with(
        if step.from_months == last { "doc-rule-step-one" } else { "doc-rule-step" },
        args![
            "from" => step.from_months.to_string(),
            "to" => last.to_string(),
            "texture" => texture,
            "class" => class
        ],
    )
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use domain::protocol::Rules;

    use super::*;
    use crate::files::protocol_toml::DEFAULT_TEXT;
    use crate::files::protocol_toml::default_protocol;
    use crate::files::protocol_toml::parse_protocol;
    use crate::i18n::Lang;
    use crate::i18n::sources;
    use crate::i18n::words;

    /// Variables of a message, by scanning its text.
    fn variables(lang: Lang, id: &str) -> BTreeSet<String> {
        let line = sources(lang).iter().flat_map(|(_, text)| text.lines()).find(|line| line.starts_with(&format!("{id} = ")));
        let line = line.unwrap_or_else(|| panic!("{}: {id} is not there", lang.code()));
        line.split('$').skip(1).map(|rest| rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect()).collect()
    }

    #[test]
    fn every_figure_of_every_rule_stands_in_its_sentence_and_nothing_else_does() {
        for lang in [Lang::En, Lang::Fr] {
            for rule in RuleId::ALL {
                let wanted: BTreeSet<String> = Rules::keys(*rule).iter().map(|key| (*key).to_owned()).collect();
                assert_eq!(variables(lang, &rule_sentence(*rule)), wanted, "{} {}", lang.code(), rule.code());
                let text = rule_in_words(words(lang), default_protocol(), *rule);
                assert!(!text.contains(['{', '}', '$']) && text.ends_with('.'), "{}: {text}", rule.code());
            }
        }
    }

    #[test]
    fn sentences_carry_the_figures_of_the_protocol_at_hand() {
        let en = words(Lang::En);
        let protocol = default_protocol();
        assert_eq!(
            rule_in_words(en, protocol, RuleId::WastingYoung),
            "Under 6 months: weight for length below −3.00: Refer today. Below −2.00, or from 42 days of age an upper arm under 110 mm: \
             Within 2 days."
        );
        assert_eq!(
            rule_in_words(en, protocol, RuleId::BirthLow),
            "Registered and seen before 62 days of age and no clinic’s plan yet: birth weight under 2500 g or born before 37 weeks of \
             pregnancy: Within 7 days. Under 1500 g or before 32 weeks: Within 2 days."
        );
        let changed = DEFAULT_TEXT.replacen("interval_days = [28, 122]", "interval_days = [21, 90]", 1).replacen("-0.67", "-0.80", 1);
        let changed = parse_protocol(&changed, "changed").expect("a protocol");
        let text = rule_in_words(en, &changed, RuleId::WeightDrop);
        assert!(text.contains("21 to 90 days apart") && text.contains("By −0.80 or further down: Within 7 days under 6 months"), "{text}");
        let steps = rule_in_words(words(Lang::Fr), protocol, RuleId::TextureBehind);
        assert!(steps.contains("À 9 mois, moins que") && steps.contains("Prochaine visite prévue"), "{steps}");
    }

    #[test]
    fn a_clearing_test_is_said_with_the_figures_of_the_protocol() {
        for lang in [Lang::En, Lang::Fr] {
            for rule in RuleId::ALL {
                let Some(text) = clearing_in_words(words(lang), default_protocol(), *rule) else { continue };
                assert!(!text.contains(['{', '}', '$']) && text.ends_with('.'), "{} {}: {text}", lang.code(), rule.code());
            }
        }
        let said = |rule| clearing_in_words(words(Lang::En), default_protocol(), rule).expect("a test");
        assert_eq!(
            said(RuleId::WastingModerate),
            "An arm of 125 mm or more, both feet looked at and not swollen, and weight for length −2.00 or above if a length is taken."
        );
        assert_eq!(
            said(RuleId::WeightLoss),
            "A weight more than 100 g above that of the visit at which it last held, 14 days or more after that visit."
        );
        assert_eq!(said(RuleId::IronNone), "Meat, fish or another source of iron the day before.");
        assert!(clearing_in_words(words(Lang::En), default_protocol(), RuleId::ReactionMild).is_none());
    }
}
