//! Every text of the screens is there, in every language: for each code, each rule, each fault and each id that the source asks for.
//! Knows the message files and the source text; asks no server.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::path::Path;

use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;
use domain::fault::Fault;
use domain::rule::RuleId;
use spoonround::files::say;
use spoonround::i18n::Lang;
use spoonround::i18n::Words;
use spoonround::i18n::codes;
use spoonround::i18n::explain;
use spoonround::i18n::file_fault;
use spoonround::i18n::sources;
use spoonround::i18n::words;

const WRITTEN: [Lang; 2] = [Lang::En, Lang::Fr];

/// Ids of a file with the variables that each uses.
fn messages(text: &str) -> Vec<(String, BTreeSet<String>)> {
    let mut found: Vec<(String, BTreeSet<String>)> = Vec::new();
    for line in text.lines() {
        let begins = line.chars().next().is_some_and(|c| c.is_ascii_alphabetic());
        if let Some((id, _)) = line.split_once(" =").filter(|_| begins) {
            found.push((id.to_owned(), BTreeSet::new()));
        } else if line.starts_with('#') {
            continue;
        }
        if let Some((_, variables)) = found.last_mut() {
            variables.extend(
                line.split('$').skip(1).map(|rest| rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect::<String>()),
            );
        }
    }
    found
}

fn by_id(lang: Lang) -> BTreeMap<String, (String, BTreeSet<String>)> {
    let mut all = BTreeMap::new();
    for (file, text) in sources(lang) {
        for (id, variables) in messages(text) {
            let before = all.insert(id.clone(), ((*file).to_owned(), variables));
            assert!(before.is_none(), "{} is written twice in {}: {before:?} and {file}", id, lang.code());
        }
    }
    all
}

#[test]
fn every_file_can_be_read() {
    for lang in WRITTEN {
        for (file, text) in sources(lang) {
            if let Err((_, faults)) = fluent_bundle::FluentResource::try_new((*text).to_owned()) {
                panic!("{}/{file}.ftl: {faults:?}", lang.code());
            }
        }
    }
}

#[test]
fn every_language_has_every_message_with_the_same_variables() {
    let (en, fr) = (by_id(Lang::En), by_id(Lang::Fr));
    assert!(en.len() > 500, "the files were not read: {} messages", en.len());
    let missing: Vec<_> = en.keys().filter(|id| !fr.contains_key(*id)).collect();
    let extra: Vec<_> = fr.keys().filter(|id| !en.contains_key(*id)).collect();
    assert!(missing.is_empty() && extra.is_empty(), "missing in French: {missing:?}; missing in English: {extra:?}");
    let unlike: Vec<_> = en.iter().filter(|(id, there)| fr[*id] != **there).map(|(id, there)| (id, there, &fr[id])).collect();
    assert!(unlike.is_empty(), "other file or other variables: {unlike:#?}");
}

#[test]
fn every_message_found_by_text_is_found_by_the_program() {
    for lang in WRITTEN {
        let lost: Vec<String> = by_id(lang).into_keys().filter(|id| !words(lang).has(id)).collect();
        assert!(lost.is_empty(), "{}: {lost:?}", lang.code());
    }
}

#[test]
fn every_code_of_the_domain_has_words() {
    let ids = codes::all_ids();
    assert!(ids.len() > 150, "{}", ids.len());
    for lang in WRITTEN {
        let lost: Vec<_> = ids.iter().filter(|id| !words(lang).has(id)).collect();
        assert!(lost.is_empty(), "{}: {lost:?}", lang.code());
    }
}

/// Names of the enums that the macro of the vocabulary makes in a source text.
fn vocabularies(source: &str) -> Vec<String> {
    let body = |rest: &str| {
        let declared = rest.lines().map(str::trim).find(|line| !line.is_empty() && !line.starts_with("///") && !line.starts_with('#'));
        declared.and_then(|line| line.split_once(',')).map(|(name, _)| name.to_owned())
    };
    source.split("\ncodes! {").skip(1).filter_map(body).collect()
}

#[test]
fn no_vocabulary_of_the_domain_is_left_without_words() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    source_files(&root.join("domain"), &mut files);
    let told = std::fs::read_to_string(root.join("i18n/codes.rs")).expect("the words of codes");
    let mut seen = 0;
    for file in files {
        for name in vocabularies(&std::fs::read_to_string(&file).expect("a source file")) {
            seen += 1;
            // Rules have four texts each and a test of their own.
            assert!(name == "RuleId" || told.contains(&format!("({name}) =")), "{name} of {} has no words", file.display());
        }
    }
    assert!(seen >= 20, "the scan found only {seen} vocabularies");
}

#[test]
fn every_rule_has_its_four_texts() {
    for lang in WRITTEN {
        for rule in RuleId::ALL {
            for part in ["name", "why", "explain", "do"] {
                let id = codes::rule_id(*rule, part);
                assert!(words(lang).has(&id), "{}: {id}", lang.code());
            }
            // A source is named, or it is said that there is none.
            let text = codes::rule_explain(words(lang), *rule).to_lowercase();
            let named =
                ["source", "common practice", "our own choice", "pratique courante", "notre choix"].iter().any(|s| text.contains(s));
            assert!(named, "{}: {} gives no source: {text}", lang.code(), rule.code());
        }
    }
}

/// One value of each kind that a rule may give under a key.
fn sample(key: EvidenceKey) -> Quantity {
    use EvidenceKey as K;
    match key {
        K::Waz | K::Laz | K::Wlz | K::ZChange | K::ZBefore | K::Limit => Quantity::ZHundredths(-233),
        K::Weight | K::WeightBefore | K::BirthWeight => Quantity::Grams(7400),
        K::Gain => Quantity::Grams(-100),
        K::Floor => Quantity::GramsExact(233.9),
        K::Length | K::LengthBefore => Quantity::Millimetres(712),
        K::Muac => Quantity::Millimetres(113),
        K::LossPercent => Quantity::Percent(5.5555),
        K::IntervalDays | K::AgeDays | K::Days => Quantity::Days(36),
        K::GestationDays => Quantity::Days(240),
        K::AgeMonths | K::StageMonths => Quantity::Months(11),
        K::Signs => Quantity::Codes(vec!["wheeze".to_owned(), "cannot_feed".to_owned()]),
        K::Foods => Quantity::Codes(vec!["beans".to_owned()]),
        K::Minutes => Quantity::Minutes(15),
        K::Texture => Quantity::Texture(1),
        K::TextureExpected => Quantity::Texture(3),
        K::Meals | K::MilkFeeds | K::Least | K::Groups => Quantity::Count(2),
        K::Before | K::Date => Quantity::On("2025-11-20".parse().expect("a date")),
        K::HeldBefore => Quantity::Flag(true),
    }
}

fn whole_evidence() -> Evidence {
    EvidenceKey::ALL.iter().map(|key| (*key, sample(*key))).collect()
}

fn food(code: &str) -> String {
    code.to_uppercase()
}

#[test]
fn a_reason_stands_with_all_its_numbers_with_one_and_with_none() {
    for lang in WRITTEN {
        let w = words(lang);
        for rule in RuleId::ALL {
            let mut evidences = vec![Evidence::default(), whole_evidence()];
            evidences.extend(EvidenceKey::ALL.iter().map(|key| Evidence::from([(*key, sample(*key))])));
            for evidence in evidences {
                let text = explain(*rule, &evidence, w, &food);
                assert!(!text.contains(['{', '}', '$']), "{} {}: {text}", lang.code(), rule.code());
                assert!(!text.contains("none"), "{} {}: {text}", lang.code(), rule.code());
                assert!(text.ends_with('.') && !text.contains("  ") && !text.contains(" ."), "{} {}: {text:?}", lang.code(), rule.code());
            }
        }
    }
}

#[test]
fn a_reason_uses_only_numbers_that_the_domain_can_give() {
    let mut known: BTreeSet<String> = EvidenceKey::ALL.iter().map(|key| key.code().to_owned()).collect();
    known.insert("lost".to_owned());
    for (id, (_, variables)) in by_id(Lang::En).iter().filter(|(id, _)| id.starts_with("rule-")) {
        assert!(variables.is_subset(&known), "{id}: {variables:?}");
        assert!(id.ends_with("-why") || variables.is_empty(), "{id} has variables that nobody fills: {variables:?}");
    }
}

#[test]
fn reasons_read_as_a_person_would_say_them() {
    let said =
        |lang: Lang, rule: RuleId, evidence: Vec<(EvidenceKey, Quantity)>| explain(rule, &Evidence::from(evidence), words(lang), &food);
    use EvidenceKey as K;
    let loss = vec![(K::Gain, Quantity::Grams(-500)), (K::LossPercent, Quantity::Percent(5.5556)), (K::IntervalDays, Quantity::Days(28))];
    assert_eq!(said(Lang::En, RuleId::WeightLoss, loss.clone()), "Weight lost: 500 g (5.6 %) in 28 days.");
    assert_eq!(said(Lang::Fr, RuleId::WeightLoss, loss), "Poids perdu\u{a0}: 500 g (5,6\u{a0}%) en 28 jours.");
    let arm = vec![(K::Muac, Quantity::Millimetres(113)), (K::Limit, Quantity::Millimetres(115))];
    assert_eq!(said(Lang::En, RuleId::WastingSevere, arm), "Much too thin: arm 113 mm, below 115 mm.");
    let low = vec![(K::Waz, Quantity::ZHundredths(-233)), (K::Limit, Quantity::ZHundredths(-200))];
    assert_eq!(said(Lang::En, RuleId::WeightLow, low), "Weight low for age, −2.33, below −2.00.");
    let texture = vec![(K::Texture, Quantity::Texture(1)), (K::TextureExpected, Quantity::Texture(3))];
    assert_eq!(
        said(Lang::En, RuleId::TextureBehind, texture),
        "Texture is behind: eats at best smooth and thick, not even chopped, finger food."
    );
    let one_day = vec![(K::Days, Quantity::Days(1)), (K::Date, Quantity::On("2025-10-28".parse().expect("a date")))];
    assert_eq!(said(Lang::En, RuleId::VisitOverdue, one_day), "The visit is late by 1 day: it was to be by 28 October.");
}

#[test]
fn every_fault_has_words_with_its_limits() {
    let day = |text: &str| text.parse::<chrono::NaiveDate>().expect("a day");
    let days = (day("2026-11-20"), day("2026-11-30"));
    let all = [
        Fault::Missing,
        Fault::NotANumber,
        Fault::TooManyDecimals { most: 0 },
        Fault::TooManyDecimals { most: 1 },
        Fault::TooManyDecimals { most: 3 },
        Fault::UnknownFood { typed: "mangoo".to_owned(), like: None },
        Fault::UnknownFood { typed: "mangoo".to_owned(), like: Some("Mango".to_owned()) },
        Fault::Outside { least: "0.5".to_owned(), most: "25".to_owned(), unit: "kg" },
        Fault::Outside { least: "0".to_owned(), most: "365".to_owned(), unit: "" },
        Fault::NotADate,
        Fault::InFuture,
        Fault::BeforeBirth,
        Fault::AfterVisit,
        Fault::TooOld { months: 24 },
        Fault::UnknownChoice,
        Fault::TooLong { most: 200 },
        Fault::TooShort { least: 10 },
        Fault::NoConsent,
        Fault::NotTheSame,
        Fault::WrongSignIn,
        Fault::WrongPassword,
        Fault::EasyPassword,
        Fault::Taken,
        Fault::UnknownCode,
        Fault::NeedsOutcome,
        Fault::PlainLetters,
        Fault::BeforeStart,
        Fault::Over,
        Fault::LastAdministrator,
        Fault::UnknownTimeZone,
        Fault::NoChange,
        Fault::AlreadyLeft,
        Fault::SupervisorOnly,
        Fault::AfterDeath,
        Fault::LookFirst,
        Fault::NoChild,
        Fault::HasLeft { name: "Mireni".to_owned(), last: days.0 },
        Fault::LeavesBefore { name: "Mireni".to_owned(), last: days.0 },
        Fault::IsAway { name: "Mireni".to_owned(), days },
        Fault::StoodIn { name: "Mireni".to_owned(), days },
    ];
    let written = by_id(Lang::En).keys().filter(|id| id.starts_with("fault-")).count();
    let told: BTreeSet<_> = all.iter().map(Fault::code).collect();
    assert_eq!(told.len(), written, "a fault has words and is not tried here, or the other way round");
    for lang in WRITTEN {
        for fault in &all {
            let text = codes::fault(words(lang), fault);
            assert!(!text.contains(['{', '}', '$']), "{}: {text}", lang.code());
        }
    }
}

#[test]
fn the_pseudo_language_brackets_every_message() {
    let pseudo: &Words = words(Lang::Pseudo);
    for id in by_id(Lang::En).keys() {
        let text = pseudo.say(id);
        assert!(text.starts_with('⟦') && text.ends_with('⟧'), "{id}: {text}");
    }
}

/// The sentences that the reader of protocol files says, as its source has them.
fn sentences_of_the_file_reader() -> BTreeSet<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/files");
    let mut files = vec![root.join("faults.rs"), root.join("toml_reader.rs")];
    source_files(&root.join("protocol_toml"), &mut files);
    let mut found = BTreeSet::new();
    for file in files {
        let source = std::fs::read_to_string(&file).expect("a source file");
        for rest in source.split("say(").skip(1).filter_map(|rest| rest.trim_start().strip_prefix('"')) {
            let end = rest.match_indices('"').find(|(at, _)| !rest[..*at].ends_with('\\')).expect("a literal ends").0;
            let lines: Vec<&str> = rest[..end].split("\\\n").collect();
            found.insert(lines.iter().map(|line| line.trim_start()).collect::<String>().replace("\\\"", "\""));
        }
    }
    found
}

#[test]
fn every_sentence_of_the_file_reader_has_words_and_its_own_in_english() {
    let known = by_id(Lang::En);
    let said = sentences_of_the_file_reader();
    assert!(said.len() > 90, "the scan found only {}", said.len());
    let kinds = ["stage", "allergen mode", "milk mode", "mark", "iron", "hold policy", "rule", "class", "food group", "allergen"];
    let mut ids = BTreeSet::new();
    for english in said.iter().map(String::as_str).chain(kinds) {
        let english: &'static str = Box::leak(english.to_owned().into_boxed_str());
        let gaps = english.split('{').skip(1).filter_map(|rest| rest.split('}').next());
        let filled = gaps.fold(say(english), |said, gap| said.with(Box::leak(gap.to_owned().into_boxed_str()), format!("<{gap}>")));
        let id = filled.id();
        assert!(known.contains_key(&id), "no words for {english:?} under {id}");
        assert_eq!(file_fault(words(Lang::En), &filled), filled.to_string(), "{id}");
        let french = file_fault(words(Lang::Fr), &filled);
        assert!(!french.contains(['{', '}', '$']) && filled.gaps().iter().all(|(gap, _)| french.contains(&format!("<{gap}>"))), "{french}");
        assert!(ids.insert(id), "two sentences begin alike: {english:?}");
    }
    let written: BTreeSet<String> = known.into_iter().filter(|(_, (file, _))| file == "file_faults").map(|(id, _)| id).collect();
    assert_eq!(ids, written, "words that no sentence asks for");
}

/// String literals that stand right after one of these in the source are ids of messages.
const SAID: [&str; 2] = ["say(\"", "say_with(\""];

/// Calls whose second literal is the id of a label.
const LABELLED: [&str; 9] =
    [".text(\"", ".decimal(\"", ".whole(\"", ".phone(\"", ".text_area(\"", ".select(\"", ".one_of(\"", ".many_of(\"", ".yes_no(\""];

fn source_files(folder: &Path, found: &mut Vec<std::path::PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            source_files(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

fn ids_in(source: &str) -> Vec<String> {
    let literal = |rest: &str| rest.split('"').next().unwrap_or_default().to_owned();
    let mut ids = Vec::new();
    for mark in SAID {
        ids.extend(source.split(mark).skip(1).map(literal));
    }
    for mark in LABELLED {
        for rest in source.split(mark).skip(1) {
            let mut pieces = rest.splitn(3, '"');
            let (_, between, after) = (pieces.next(), pieces.next().unwrap_or_default(), pieces.next().unwrap_or_default());
            if between.trim() == "," {
                ids.push(literal(after));
            }
        }
    }
    ids
}

#[test]
fn every_id_that_the_source_asks_for_exists() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    for room in ["i18n", "view", "web", "service", "cli"] {
        if root.join(room).is_dir() {
            source_files(&root.join(room), &mut files);
        }
    }
    let known = by_id(Lang::En);
    let mut asked = 0;
    let mut lost = Vec::new();
    for file in files {
        let source = std::fs::read_to_string(&file).expect("a source file");
        for id in ids_in(&source) {
            asked += 1;
            if !known.contains_key(&id) && id != "no-such-message" {
                lost.push(format!("{}: {id}", file.strip_prefix(&root).unwrap_or(&file).display()));
            }
        }
    }
    assert!(asked > 80, "the scan found only {asked} ids");
    assert!(lost.is_empty(), "no words for: {lost:#?}");
}

#[test]
fn the_scan_sees_every_way_to_ask() {
    let source = "w.say(\"a-b\") w.say_with(\"c-d\", args![]) ask.text(\"name\", \"e-f\") list.select(\"x\").other(\"y\")";
    assert_eq!(ids_in(source), ["a-b", "c-d", "e-f"]);
}
