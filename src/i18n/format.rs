//! Dates, ages, measures and counts as people read them. Files keep their own plain form: nothing here is for CSV.

use chrono::Datelike;
use chrono::NaiveDate;
use domain::calendar::Month;
use domain::calendar::add_months;
use domain::calendar::completed_months;
use domain::calendar::days_between;
use domain::report::period::Period;

use crate::args;
use crate::i18n::Words;

fn month_name(w: &Words, date: NaiveDate) -> String {
    w.say(&format!("month-{}", date.month()))
}

/// `20 November`
#[must_use]
pub fn day(w: &Words, date: NaiveDate) -> String {
    w.say_with("date-day", args!["day" => date.day(), "month" => month_name(w, date)])
}

/// `20 November 2026`
#[must_use]
pub fn day_and_year(w: &Words, date: NaiveDate) -> String {
    // A year is no count: it takes no mark between thousands.
    w.say_with("date-full", args!["day" => date.day(), "month" => month_name(w, date), "year" => date.year().to_string()])
}

/// `20 November`, with the year when it is not that of `today`.
#[must_use]
pub fn day_near(w: &Words, date: NaiveDate, today: NaiveDate) -> String {
    if date.year() == today.year() { day(w, date) } else { day_and_year(w, date) }
}

/// `20 Nov`
#[must_use]
pub fn day_short(w: &Words, date: NaiveDate) -> String {
    let month = w.say(&format!("month-short-{}", date.month()));
    w.say_with("date-short", args!["day" => date.day(), "month" => month])
}

/// `Thursday 20 November`
#[must_use]
pub fn weekday(w: &Words, date: NaiveDate) -> String {
    w.say_with("date-weekday", args!["weekday" => weekday_name(w, date), "day" => date.day(), "month" => month_name(w, date)])
}

/// `Thursday`
#[must_use]
pub fn weekday_name(w: &Words, date: NaiveDate) -> String {
    w.say(&format!("weekday-{}", date.weekday().number_from_monday()))
}

/// `November 2026`
#[must_use]
pub fn month(w: &Words, month: Month) -> String {
    let name = w.say(&format!("month-{}", month.number()));
    w.say_with("date-month-year", args!["month" => name, "year" => month.year().to_string()])
}

/// `November 2026`, `Quarter 3 of 2026`, `Year 2026`
#[must_use]
pub fn period(w: &Words, period: Period) -> String {
    let year = period.year().to_string();
    match period {
        Period::Month(of) => month(w, of),
        Period::Quarter(quarter) => w.say_with("period-quarter", args!["number" => quarter.number(), "year" => year]),
        Period::Year(_) => w.say_with("period-year", args!["year" => year]),
    }
}

/// `20 November, 08:40`; the date, hour and minute are those of the programme's time zone.
#[must_use]
pub fn day_and_time(w: &Words, date: NaiveDate, hour: u32, minute: u32) -> String {
    w.say_with("date-time", args!["date" => day(w, date), "hour" => format!("{hour:02}"), "minute" => format!("{minute:02}")])
}

/// `8 months`; `5 weeks` under 2 months, `4 days` under 2 weeks. Before birth as on the day of birth.
#[must_use]
pub fn age(w: &Words, born: NaiveDate, on: NaiveDate) -> String {
    let months = completed_months(born, on).unwrap_or(0);
    if months >= 2 {
        return w.say_with("common-months", args!["count" => months]);
    }
    let days = days_between(born, on).max(0);
    if days < 14 { w.say_with("common-days", args!["count" => days]) } else { w.say_with("common-weeks", args!["count" => days / 7]) }
}

/// `8 months and 6 days`
#[must_use]
pub fn age_exact(w: &Words, born: NaiveDate, on: NaiveDate) -> String {
    let months = completed_months(born, on).unwrap_or(0);
    let days = days_between(add_months(born, months), on).max(0);
    let days_said = w.say_with("common-days", args!["count" => days]);
    if months == 0 {
        return days_said;
    }
    let whole = w.say_with("common-months", args!["count" => months]);
    if days == 0 { whole } else { w.say_with("common-age-and", args!["whole" => whole, "rest" => days_said]) }
}

/// Weeks of pregnancy: `34 weeks and 2 days`.
#[must_use]
pub fn gestation(w: &Words, days: u32) -> String {
    let whole = w.say_with("common-weeks", args!["count" => days / 7]);
    if days.is_multiple_of(7) {
        return whole;
    }
    let rest = w.say_with("common-days", args!["count" => days % 7]);
    w.say_with("common-age-and", args!["whole" => whole, "rest" => rest])
}

/// Digits with this many decimals and the language's mark; a real minus sign. Rounds half away from zero.
fn decimal(w: &Words, value: f64, decimals: usize) -> String {
    // Binary fractions such as 0.125 print half to even; our figures are rounded half away from zero everywhere.
    let scale = 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    let rounded = (value.abs() * scale).round() / scale;
    let digits = format!("{rounded:.decimals$}");
    let (whole, rest) = digits.split_once('.').unwrap_or((&digits, ""));
    let sign = if value < 0.0 && digits.bytes().any(|b| (b'1'..=b'9').contains(&b)) { "−" } else { "" };
    let mark = w.lang().decimal_mark();
    if rest.is_empty() { format!("{sign}{}", grouped(w, whole)) } else { format!("{sign}{}{mark}{rest}", grouped(w, whole)) }
}

/// Thousands apart from 10,000 on; four digits read well as they are.
fn grouped(w: &Words, digits: &str) -> String {
    if digits.len() < 5 {
        return digits.to_owned();
    }
    let mut out = String::with_capacity(digits.len() + digits.len() / 3 * 3);
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(w.lang().thousands_mark());
        }
        out.push(digit);
    }
    out
}

/// A count in digits: `12,345`.
#[must_use]
pub fn count(w: &Words, n: u64) -> String {
    grouped(w, &n.to_string())
}

/// A number with this many decimals, without a unit.
#[must_use]
pub fn number(w: &Words, value: f64, decimals: usize) -> String {
    decimal(w, value, decimals)
}

/// Whole grams as kilograms with the unit: `7.40 kg`.
#[must_use]
pub fn kg(w: &Words, grams: i64) -> String {
    w.say_with("common-kg", args!["n" => kg_bare(w, grams)])
}

/// Whole grams as kilograms without the unit, as in a field: `7.40`.
#[must_use]
pub fn kg_bare(w: &Words, grams: i64) -> String {
    // A third decimal is shown only by a scale that has it.
    let decimals = if grams % 10 == 0 { 2 } else { 3 };
    decimal(w, small(grams) / 1000.0, decimals)
}

/// Grams: `100 g`.
#[must_use]
pub fn g(w: &Words, grams: i64) -> String {
    let sign = if grams < 0 { "−" } else { "" };
    w.say_with("common-g", args!["n" => format!("{sign}{}", count(w, grams.unsigned_abs()))])
}

/// A change of weight: grams under 1 kg, kilograms from there on.
#[must_use]
pub fn weight_change(w: &Words, grams: i64) -> String {
    if grams.abs() < 1000 { g(w, grams) } else { kg(w, grams) }
}

/// Whole millimetres as centimetres with the unit: `71.2 cm`.
#[must_use]
pub fn cm(w: &Words, mm: i64) -> String {
    w.say_with("common-cm", args!["n" => cm_bare(w, mm)])
}

/// Whole millimetres as centimetres without the unit: `71.2`.
#[must_use]
pub fn cm_bare(w: &Words, mm: i64) -> String {
    decimal(w, small(mm) / 10.0, 1)
}

/// Millimetres: `113 mm`.
#[must_use]
pub fn mm(w: &Words, mm: i64) -> String {
    w.say_with("common-mm", args!["n" => mm.to_string()])
}

/// A z-score from hundredths, with a real minus sign: `−2.33`.
#[must_use]
pub fn z(w: &Words, hundredths: i32) -> String {
    decimal(w, f64::from(hundredths) / 100.0, 2)
}

/// A percentage with one decimal and its sign: `5.6 %`.
#[must_use]
pub fn percent(w: &Words, value: f64) -> String {
    w.say_with("common-percent", args!["n" => decimal(w, value, 1)])
}

/// A whole percentage: `56 %`.
#[must_use]
pub fn percent_whole(w: &Words, value: f64) -> String {
    w.say_with("common-percent", args!["n" => decimal(w, value, 0)])
}

/// `a, b and c`; empty for nothing.
#[must_use]
pub fn list(w: &Words, items: &[String]) -> String {
    let Some((last, most)) = items.split_last() else { return String::new() };
    let Some((first, middle)) = most.split_first() else { return last.clone() };
    let most =
        middle.iter().fold(first.clone(), |sofar, next| w.say_with("common-list-comma", args!["most" => sofar, "next" => next.as_str()]));
    w.say_with("common-list-and", args!["most" => most, "last" => last.as_str()])
}

/// Weights and lengths here are far below 2^31, where a float holds every whole number.
fn small(n: i64) -> f64 {
    f64::from(i32::try_from(n).unwrap_or(if n < 0 { i32::MIN } else { i32::MAX }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;

    fn d(text: &str) -> NaiveDate {
        text.parse().expect("a date")
    }

    #[test]
    fn dates_are_read_as_spoken() {
        let (en, fr) = (words(Lang::En), words(Lang::Fr));
        assert_eq!(weekday(en, d("2025-11-20")), "Thursday 20 November");
        assert_eq!(weekday(fr, d("2025-11-20")), "jeudi 20 novembre");
        assert_eq!(day(fr, d("2025-08-01")), "1er août");
        assert_eq!(day_and_year(en, d("2025-08-01")), "1 August 2025");
        assert_eq!(day_short(fr, d("2025-02-03")), "3 févr.");
        assert_eq!(day_near(en, d("2024-12-01"), d("2025-01-05")), "1 December 2024");
        assert_eq!(day_near(en, d("2025-12-01"), d("2025-01-05")), "1 December");
        assert_eq!(Month::parse("2026-11").map(|m| month(fr, m)), Some("novembre 2026".to_owned()));
        assert_eq!(day_and_time(fr, d("2025-11-20"), 8, 5), "20 novembre, 08 h 05");
    }

    #[test]
    fn ages_are_weeks_then_months() {
        let en = words(Lang::En);
        let born = d("2025-03-14");
        for (on, short, exact) in [
            ("2025-03-14", "0 days", "0 days"),
            ("2025-03-27", "13 days", "13 days"),
            ("2025-03-28", "2 weeks", "14 days"),
            ("2025-04-20", "5 weeks", "1 month and 6 days"),
            ("2025-05-13", "8 weeks", "1 month and 29 days"),
            ("2025-05-14", "2 months", "2 months"),
            ("2025-11-20", "8 months", "8 months and 6 days"),
        ] {
            assert_eq!(age(en, born, d(on)), short, "{on}");
            assert_eq!(age_exact(en, born, d(on)), exact, "{on}");
        }
        assert_eq!(age(words(Lang::Fr), born, d("2025-11-20")), "8 mois");
        assert_eq!(gestation(en, 238), "34 weeks");
        assert_eq!(gestation(en, 240), "34 weeks and 2 days");
    }

    #[test]
    fn measures_keep_their_decimals_and_the_languages_mark() {
        let (en, fr) = (words(Lang::En), words(Lang::Fr));
        assert_eq!(kg(en, 7400), "7.40 kg");
        assert_eq!(kg(fr, 7400), "7,40 kg");
        assert_eq!(kg(en, 7405), "7.405 kg");
        assert_eq!(g(en, -100), "−100 g");
        assert_eq!((weight_change(en, 999), weight_change(en, -1000)), ("999 g".to_owned(), "−1.00 kg".to_owned()));
        assert_eq!(cm(fr, 712), "71,2 cm");
        assert_eq!(mm(en, 113), "113 mm");
        assert_eq!(percent(fr, 5.555_555), "5,6\u{a0}%");
        assert_eq!(percent(en, 5.25), "5.3 %");
    }

    #[test]
    fn z_has_a_real_minus_and_zero_has_none() {
        let en = words(Lang::En);
        assert_eq!(z(en, -233), "−2.33");
        assert_eq!(z(en, 5), "0.05");
        assert_eq!(number(en, -0.004, 2), "0.00");
        assert_eq!(z(words(Lang::Fr), -233), "−2,33");
    }

    #[test]
    fn counts_are_grouped_from_five_digits() {
        assert_eq!(count(words(Lang::En), 1234), "1234");
        assert_eq!(count(words(Lang::En), 50_000), "50,000");
        assert_eq!(count(words(Lang::Fr), 1_234_567), "1\u{202f}234\u{202f}567");
    }

    #[test]
    fn lists_end_with_and() {
        let items = |n: usize| ["a", "b", "c"][..n].iter().map(|&s| s.to_owned()).collect::<Vec<_>>();
        assert_eq!(list(words(Lang::En), &items(3)), "a, b and c");
        assert_eq!(list(words(Lang::Fr), &items(2)), "a et b");
        assert_eq!((list(words(Lang::En), &items(1)), list(words(Lang::En), &[])), ("a".to_owned(), String::new()));
    }
}
