//! The numbers behind a finding as stable text, one a line: `waz=z:-233`. It knows no words and rounds nothing.

use domain::evidence::Evidence;
use domain::evidence::EvidenceKey;
use domain::evidence::Quantity;

/// Writes evidence; what is written reads back as the same value.
pub fn write(evidence: &Evidence) -> String {
    let line = |(key, quantity): &(EvidenceKey, Quantity)| format!("{}={}", key.code(), quantity_text(quantity));
    evidence.lines().iter().map(line).collect::<Vec<_>>().join("\n")
}

/// Reads evidence; the text that cannot be read otherwise.
pub fn read(text: &str) -> Result<Evidence, String> {
    let line = |line: &str| {
        let unknown = || format!("evidence {line:?}");
        let (key, rest) = line.split_once('=').ok_or_else(unknown)?;
        let (unit, value) = rest.split_once(':').ok_or_else(unknown)?;
        let key = EvidenceKey::from_code(key).map_err(|e| e.to_string())?;
        Ok((key, quantity(unit, value).ok_or_else(unknown)?))
    };
    text.lines().map(line).collect()
}

fn quantity_text(quantity: &Quantity) -> String {
    match quantity {
        Quantity::Grams(v) => format!("g:{v}"),
        Quantity::GramsExact(v) => format!("exact_g:{v}"),
        Quantity::Millimetres(v) => format!("mm:{v}"),
        Quantity::ZHundredths(v) => format!("z:{v}"),
        Quantity::Days(v) => format!("d:{v}"),
        Quantity::Months(v) => format!("months:{v}"),
        Quantity::Count(v) => format!("n:{v}"),
        Quantity::Minutes(v) => format!("min:{v}"),
        Quantity::Percent(v) => format!("percent:{v}"),
        Quantity::Texture(v) => format!("texture:{v}"),
        Quantity::On(v) => format!("on:{v}"),
        Quantity::Codes(v) => format!("codes:{}", v.iter().map(|code| escaped(code)).collect::<Vec<_>>().join(" ")),
        Quantity::Flag(v) => format!("flag:{v}"),
    }
}

fn quantity(unit: &str, value: &str) -> Option<Quantity> {
    Some(match unit {
        "g" => Quantity::Grams(value.parse().ok()?),
        "exact_g" => Quantity::GramsExact(value.parse().ok()?),
        "mm" => Quantity::Millimetres(value.parse().ok()?),
        "z" => Quantity::ZHundredths(value.parse().ok()?),
        "d" => Quantity::Days(value.parse().ok()?),
        "months" => Quantity::Months(value.parse().ok()?),
        "n" => Quantity::Count(value.parse().ok()?),
        "min" => Quantity::Minutes(value.parse().ok()?),
        "percent" => Quantity::Percent(value.parse().ok()?),
        "texture" => Quantity::Texture(value.parse().ok()?),
        "on" => Quantity::On(value.parse().ok()?),
        "codes" => Quantity::Codes(value.split(' ').filter(|code| !code.is_empty()).map(unescaped).collect::<Option<_>>()?),
        "flag" => Quantity::Flag(value.parse().ok()?),
        _ => return None,
    })
}

/// Codes are joined by spaces and lines by line ends, so a code may hold neither as it stands. An empty code is `\e`.
fn escaped(code: &str) -> String {
    if code.is_empty() {
        return "\\e".to_owned();
    }
    code.replace('\\', "\\\\").replace(' ', "\\s").replace('\n', "\\n").replace('\r', "\\r")
}

fn unescaped(text: &str) -> Option<String> {
    let mut out = String::with_capacity(text.len());
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        if c != '\\' {
            out.push(c);
            continue;
        }
        match chars.next()? {
            '\\' => out.push('\\'),
            's' => out.push(' '),
            'n' => out.push('\n'),
            'r' => out.push('\r'),
            'e' => {}
            _ => return None,
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;
    use proptest::prelude::*;

    use super::*;

    fn any_quantity() -> impl Strategy<Value = Quantity> {
        prop_oneof![
            any::<i64>().prop_map(Quantity::Grams),
            any::<f64>().prop_filter("a number", |v| v.is_finite()).prop_map(Quantity::GramsExact),
            any::<i64>().prop_map(Quantity::Millimetres),
            any::<i32>().prop_map(Quantity::ZHundredths),
            any::<i32>().prop_map(Quantity::Days),
            any::<u32>().prop_map(Quantity::Months),
            any::<u32>().prop_map(Quantity::Count),
            any::<u32>().prop_map(Quantity::Minutes),
            any::<f64>().prop_filter("a number", |v| v.is_finite()).prop_map(Quantity::Percent),
            any::<u8>().prop_map(Quantity::Texture),
            (0_i32..3_000_000).prop_filter_map("a date", |n| NaiveDate::from_num_days_from_ce_opt(n).map(Quantity::On)),
            prop::collection::vec(any::<String>(), 0..4).prop_map(Quantity::Codes),
            any::<bool>().prop_map(Quantity::Flag),
        ]
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back_as_the_same(
            pairs in prop::collection::vec((prop::sample::select(EvidenceKey::ALL), any_quantity()), 0..8)
        ) {
            let evidence = Evidence::from(pairs);
            prop_assert_eq!(read(&write(&evidence)), Ok(evidence));
        }
    }

    #[test]
    fn the_text_of_stored_evidence_never_changes() {
        let evidence = Evidence::from([
            (EvidenceKey::Waz, Quantity::ZHundredths(-233)),
            (EvidenceKey::Floor, Quantity::GramsExact(162.5)),
            (EvidenceKey::Foods, Quantity::Codes(vec!["mango".to_owned(), "egg".to_owned()])),
        ]);
        assert_eq!(write(&evidence), "waz=z:-233\nfloor=exact_g:162.5\nfoods=codes:mango egg");
    }

    #[test]
    fn what_means_nothing_is_told() {
        for text in ["waz", "waz=z", "waz=z:much", "waz=stone:1", "height=mm:3", "foods=codes:a\\q"] {
            assert!(read(text).is_err(), "{text}");
        }
    }
}
