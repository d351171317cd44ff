//! The round on paper: one line a home, boxes in the order of the form, danger signs at the foot. Knows no database.

use chrono::NaiveDate;
use domain::calendar::add_months;
use domain::calendar::days_between;
use domain::errand::Errand;
use domain::protocol::Protocol;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::view::parts::back;
use crate::view::parts::label;
use crate::view::parts::name;
use crate::view::round::Home;
use crate::view::round::RoundPage;
use crate::view::round::home;
use crate::view::round::title;

/// Foods are asked about from here on (WHO/UNICEF 2021: complementary feeding is counted from 6 months).
const FOODS_FROM_MONTHS: u32 = 6;

/// The letters of the signs on the sheet, said at its foot.
const SIGNS: [(&str, &str); 7] = [
    ("A", "sheet-sign-feed"),
    ("B", "sheet-sign-vomits"),
    ("C", "sheet-sign-fits"),
    ("D", "sheet-sign-sleepy"),
    ("E", "sheet-sign-breath"),
    ("F", "sheet-sign-hot-cold"),
    ("G", "sheet-sign-blood"),
];

/// The arm limits of the protocol in force.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ArmLimits {
    /// Much too thin from this completed month on, below this many mm.
    from_months: u32,
    below_mm: u32,
    /// Too thin before that, from this age in days on, below this many mm.
    young_from_days: i32,
    young_below_mm: u32,
}

impl ArmLimits {
    /// Those of a protocol.
    #[must_use]
    pub const fn of(protocol: &Protocol) -> Self {
        let (older, young) = (&protocol.rules.wasting_severe.limits, &protocol.rules.wasting_young.limits);
        Self {
            from_months: older.from_months,
            below_mm: older.muac_below_mm,
            young_from_days: young.muac_from_age_days,
            young_below_mm: young.muac_below_mm,
        }
    }

    /// The limit that holds on a day, in mm; none while the arm says nothing.
    #[must_use]
    pub fn on(self, born: NaiveDate, day: NaiveDate) -> Option<u32> {
        if day >= add_months(born, self.from_months) {
            Some(self.below_mm)
        } else {
            (days_between(born, day) >= self.young_from_days).then_some(self.young_below_mm)
        }
    }

    fn key(self, w: &Words) -> String {
        let weeks = self.young_from_days.max(0).unsigned_abs().div_ceil(7);
        w.say_with(
            "sheet-arm-key",
            args!["mm" => self.below_mm, "months" => self.from_months, "young" => self.young_below_mm, "weeks" => weeks],
        )
    }
}

/// The sheet of a page of the round; `number` is the emergency number.
#[must_use]
pub fn body(w: &Words, page: &RoundPage<'_>, number: Option<&str>) -> Markup {
    html! {
        (back(w, &page.print.replacen("/round/print", "/round", 1), &w.say("round-title")))
        h1 { (title(w, page)) }
        p.quiet.keyline { (w.say_with("sheet-lede", args!["count" => page.homes.len()])) " " (w.say("sheet-groups")) }
        p.noprint { (w.say("sheet-how")) }
        div.scroll tabindex="0" role="region" aria-label=(w.say("sheet-label")) {
            table.boxes {
                colgroup { col.w1; col.w2; col.w2; col.w3; col.w3; col.w2; col.w2; col.w3; col.w3; col.w4; col.w5; }
                thead { tr {
                    @for head in HEADS { th scope="col" { (w.say(head)) } }
                } }
                tbody { @for home in &page.homes { (line(w, page, home)) } }
            }
        }
        (signs(w, page.arms, number))
    }
}

const HEADS: [&str; 11] = [
    "sheet-home",
    "sheet-kg",
    "sheet-cm",
    "sheet-arm",
    "sheet-feet",
    "sheet-breast",
    "sheet-meals",
    "sheet-food-groups",
    "sheet-texture",
    "sheet-new-food",
    "sheet-signs",
];

fn line(w: &Words, page: &RoundPage<'_>, home: &Home<'_>) -> Markup {
    let (icon, css) = home::mark(home.errand);
    let not_done = html! { " " small.tickbox { (w.say("sheet-not-done")) } };
    let yes_no = w.say("sheet-yes-no");
    let eats = page.day >= add_months(home.born, FOODS_FROM_MONTHS);
    html! {
        tr {
            th scope="row" {
                span class={ "cls " (css) } { (icon.draw("u")) span { b { (name(home.name)) } " " (crate::i18n::format::age(w, home.born, page.day)) ", " (name(home.village)) } }
                small { (label(w, &home::when(w, page.day, home.errand))) " " (reason(w, page, home)) }
                @if !home.also.is_empty() {
                    small { (w.say_with("household-also", args!["count" => home.also.len()])) " " (home.also.iter().map(|(_, called)| called.as_str()).collect::<Vec<_>>().join(", ")) }
                }
            }
            td.low { (not_done) }
            td.low { (not_done) }
            td.low { @if let Some(limit) = page.arms.on(home.born, page.day) { small { (w.say_with("sheet-arm-limit", args!["mm" => limit])) } " " } (not_done) }
            td.low { span.yn { (yes_no) } (not_done) }
            td { span.yn { (yes_no) } }
            @if eats {
                td {}
                td.ltr { "1 2 3 4 " br; "5 6 7 8" }
                td { small { (w.say("sheet-textures")) } }
            } @else {
                td colspan="3" { (w.say("sheet-besides-milk")) " " (yes_no) }
            }
            td {}
            td.low { span.letters.ltr { @for (letter, _) in SIGNS { (letter) " " } } small.tickbox { (w.say("sheet-none")) } (not_done) }
        }
    }
}

fn reason(w: &Words, page: &RoundPage<'_>, home: &Home<'_>) -> String {
    match home.errand {
        Errand::FollowUp { first, .. } => explain(first.rule, &first.evidence, w, page.food),
        Errand::Visit(_) => home::why(w, page, home),
    }
}

fn signs(w: &Words, arms: ArmLimits, number: Option<&str>) -> Markup {
    html! {
        div.sheet-foot {
            p { b { (w.say("sheet-refer-now")) } " "
                @for (at, (letter, id)) in SIGNS.iter().enumerate() { @if at > 0 { "; " } b.ltr { (letter) } " " (w.say(id)) } "." }
            p { b {
                @match number {
                    Some(number) => { (w.say_with("common-emergency-number", args!["number" => number])) }
                    None => { (w.say("common-call-local")) }
                } } " " (arms.key(w)) " " (w.say_with("sheet-urgency-key", args!["now" => codes::class_word(w, domain::rule::Class::Now), "today" => codes::class_word(w, domain::rule::Class::Today)]))
            }
        }
    }
}
