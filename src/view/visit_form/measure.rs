//! Weighing and measuring: last time's value beside each box, never in it; a warning before a box whose value is unusual.

use domain::unusual::Odd;
use domain::unusual::Unusual;
use domain::visit::Measurement;
use domain::visit::Visit;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::view::parts;
use crate::view::parts::Ask;
use crate::view::parts::Field;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::fold;

/// The box of a measurement.
pub(super) const fn field_of(measurement: Measurement) -> &'static str {
    match measurement {
        Measurement::Weight => "weight",
        Measurement::Length => "length",
        Measurement::Muac => "arm",
    }
}

/// A measurement as it was understood: `7.40 kg`, `134 mm (13.4 cm)`.
fn understood(w: &Words, visit: &Visit, measurement: Measurement) -> Option<String> {
    match measurement {
        Measurement::Weight => visit.weight.map(|x| format::kg(w, i64::from(x.grams()))),
        Measurement::Length => visit.length.map(|x| format::cm(w, i64::from(x.mm()))),
        Measurement::Muac => visit.muac.map(|x| arm(w, i64::from(x.mm()))),
    }
}

/// An arm in both units, because tapes have both: `134 mm (13.4 cm)`.
#[must_use]
pub fn arm(w: &Words, mm: i64) -> String {
    w.say_with("visit-both-units", args!["mm" => format::mm(w, mm), "cm" => format::cm(w, mm)])
}

/// The values that were asked about: sent back with the form, so that saving it again as it stands saves it.
pub(super) fn asked_again(unusual: &[Unusual], visit: &Visit) -> String {
    unusual.iter().filter_map(|u| stamp(u.measurement, visit)).collect::<Vec<_>>().join(" ")
}

/// Whether every unusual value was asked about already, as it stands.
#[must_use]
pub fn was_asked(asked: &str, unusual: &[Unusual], visit: &Visit) -> bool {
    unusual.iter().all(|u| stamp(u.measurement, visit).is_some_and(|stamp| asked.split_whitespace().any(|known| known == stamp)))
}

fn stamp(measurement: Measurement, visit: &Visit) -> Option<String> {
    let value = match measurement {
        Measurement::Weight => visit.weight?.grams(),
        Measurement::Length => u32::from(visit.length?.mm()),
        Measurement::Muac => u32::from(visit.muac?.mm()),
    };
    Some(format!("{}:{value}", measurement.code()))
}

fn odd(f: &VisitForm<'_>, measurement: Measurement) -> Option<parts::Unusual> {
    let w = f.w;
    let (list, visit) = f.unusual?;
    let found = list.iter().find(|u| u.measurement == measurement)?;
    let typed = understood(w, visit, measurement)?;
    let last = &f.questions.last;
    let before = match measurement {
        Measurement::Weight => last.weight.map(|(x, on)| (format::kg(w, i64::from(x.grams())), on)),
        Measurement::Length => last.length.map(|(x, on)| (format::cm(w, i64::from(x.mm())), on)),
        Measurement::Muac => last.arm.map(|(x, on)| (arm(w, i64::from(x.mm())), on)),
    };
    let told = before
        .filter(|_| found.odd != Odd::OutsideGrowth)
        .map(|(value, on)| w.say_with("visit-odd-before", args!["value" => value, "date" => format::day(w, on)]));
    let why = w.say(match found.odd {
        Odd::OutsideGrowth => "visit-odd-outside",
        Odd::Jump => "visit-odd-jump",
        Odd::Less => "visit-odd-less",
        Odd::Changed => "visit-odd-changed",
    });
    let again = w.say(match measurement {
        Measurement::Weight => "visit-odd-weigh",
        Measurement::Length | Measurement::Muac => "visit-odd-measure",
    });
    let tick = format!("confirmed_{}", measurement.code());
    let ticked = f.filled.has(&tick, "yes");
    Some(parts::Unusual {
        heading: w.say_with("visit-odd-heading", args!["value" => &typed]),
        text: [told, Some(why), Some(again)].into_iter().flatten().collect::<Vec<_>>().join(" "),
        tick: Some((
            tick,
            w.say_with(
                if measurement == Measurement::Weight { "visit-odd-tick-weight" } else { "visit-odd-tick" },
                args!["value" => typed],
            ),
        )),
        ticked,
    })
}

pub(super) fn fields(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let q = f.questions;
    let last = &q.last;
    let beside = |field: Field, value: Option<(String, chrono::NaiveDate)>| match value {
        Some((value, on)) => field
            .last(w.say("common-last-time"), w.say_with("common-last-value", args!["value" => value, "date" => format::day_short(w, on)])),
        None => field,
    };
    let weight = ask.decimal("weight", "visit-weight").unit(w.say("visit-kg")).unusual(odd(f, Measurement::Weight));
    let weight = beside(weight, last.weight.map(|(x, on)| (format::kg(w, i64::from(x.grams())), on)));
    let standing = q.months >= 24;
    let length = ask
        .decimal("length", if standing { "visit-length-standing" } else { "visit-length" })
        .hint(w.say("visit-length-hint"))
        .unit(w.say("visit-cm"))
        .unusual(odd(f, Measurement::Length));
    let length = beside(length, last.length.map(|(x, on)| (format::cm(w, i64::from(x.mm())), on)));
    let arm_field =
        ask.decimal("arm", "visit-arm").unit(w.say("visit-mm")).hint(w.say("visit-arm-hint")).unusual(odd(f, Measurement::Muac));
    let arm_field = beside(arm_field, last.arm.map(|(x, on)| (format::mm(w, i64::from(x.mm())), on)));
    let head =
        beside(ask.decimal("head", "visit-head").unit(w.say("visit-cm")), last.head.map(|(x, on)| (format::cm(w, i64::from(x.mm())), on)));
    let seldom = html! {
        @if !q.arm { (arm_field) }
        (head)
        (ask.one_of("position", "visit-position").tight()
            .option("lying", w.say("position-lying")).option("standing", w.say("position-standing")).option("", w.say("visit-as-usual")))
    };
    // A tick "weighed again" of an earlier visit must not be lost by showing it without its warning.
    let kept = Measurement::ALL.iter().filter(|m| odd(f, **m).is_none()).map(|m| format!("confirmed_{}", m.code()));
    html! {
        (weight)
        (length)
        @if q.arm { (arm_field) }
        (ask.one_of("feet", "visit-feet").hint(w.say("visit-feet-hint")).tight()
            .option("no", w.say("common-no")).option("yes", w.say("common-yes")).option("", w.say("common-not-done")))
        @for tick in kept.filter(|tick| f.filled.has(tick, "yes")) { (parts::hidden(&tick, "yes")) }
        (fold(f, &w.say("visit-measure-more"), &seldom))
    }
}
