//! Is it real or is it the scale: the sentences, and a change drawn with the bar of its error and the limit of its rule. It judges nothing.

use domain::follow_up::Change;
use domain::follow_up::ScaleError;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::format;
use crate::i18n::scale;

pub use crate::i18n::scale::beside_change;

const LEFT: f64 = 20.0;
const RIGHT: f64 = 340.0;
const LINE: f64 = 44.0;

/// The part of a page: sentences and drawing.
#[must_use]
pub fn part(w: &Words, error: &ScaleError) -> Markup {
    html! {
        h2 { (w.say("scale-heading")) }
        @for said in scale::sentences(w, error) { p { (said) } }
        (Strip::of(w, error).figure(w))
    }
}

/// What was said of a finding, if anything.
#[must_use]
pub fn said(said: &Option<String>) -> Markup {
    html! { @if let Some(said) = said { p { (said) } } }
}

/// A change on a line, with how far it could be off.
struct Strip {
    change: f64,
    error: f64,
    limit: Option<f64>,
    said: String,
    low: String,
    high: String,
    limit_said: Option<String>,
}

impl Strip {
    fn of(w: &Words, error: &ScaleError) -> Self {
        // Grams, millimetres and hundredths here are far below 2^31.
        let float = |n: i64| f64::from(i32::try_from(n).unwrap_or(0));
        match error.change {
            Change::Weight { change_g, limit_g } => Self {
                change: float(change_g),
                error: float(error.tolerance),
                limit: limit_g,
                said: scale::signed_weight(w, change_g),
                low: scale::signed_weight(w, change_g - error.tolerance),
                high: scale::signed_weight(w, change_g + error.tolerance),
                limit_said: limit_g.map(|limit| scale::signed_weight(w, crate::i18n::whole(limit))),
            },
            Change::Length { change_mm } => {
                let said = |mm: i64| scale::signed(w, mm, &format::cm(w, mm));
                Self {
                    change: float(change_mm),
                    error: float(error.tolerance),
                    limit: Some(0.0),
                    said: said(change_mm),
                    low: said(change_mm - error.tolerance),
                    high: said(change_mm + error.tolerance),
                    limit_said: Some(said(0)),
                }
            }
            Change::WeightForAge { change, limit, .. } => {
                let by = error.error_z().map_or(0, domain::growth::ZHundredths::hundredths);
                let said = |z: i32| scale::signed(w, i64::from(z), &format::z(w, z));
                Self {
                    change: f64::from(change.hundredths()),
                    error: f64::from(by),
                    limit: Some(f64::from(limit.hundredths())),
                    said: said(change.hundredths()),
                    low: said(change.hundredths() - by),
                    high: said(change.hundredths() + by),
                    limit_said: Some(said(limit.hundredths())),
                }
            }
        }
    }

    fn figure(&self, w: &Words) -> Markup {
        let (low, high) = (self.change - self.error, self.change + self.error);
        let limit = self.limit.unwrap_or(self.change);
        let room = ((high.max(limit) - low.min(limit)) * 0.12).max(1.0);
        let (least, most) = (low.min(limit) - room, high.max(limit) + room);
        let x = |value: f64| LEFT + (value - least) / (most - least) * (RIGHT - LEFT);
        let place = |value: f64| format!("{:.1}", x(value));
        // Words near an edge run inwards.
        let anchor = |value: f64| match x(value) {
            left if left < 90.0 => "start",
            right if right > 270.0 => "end",
            _ => "middle",
        };
        let sentence = w.say_with("scale-drawing-said", args!["change" => &self.said, "low" => &self.low, "high" => &self.high]);
        let begins = self.limit_said.as_ref().map(|limit| w.say_with("scale-drawing-limit", args!["limit" => limit]));
        html! {
            figure {
                figcaption { (sentence) @if let Some(begins) = &begins { " " (begins) } }
                svg.chart.strip viewBox="0 0 360 86" role="img" aria-labelledby="strip-title strip-desc" {
                    title id="strip-title" { (w.say("scale-drawing")) }
                    desc id="strip-desc" { (sentence) @if let Some(begins) = &begins { " " (begins) } }
                    path.axis d={ "M" (LEFT) " " (LINE) "H" (RIGHT) } fill="none" {}
                    @if let (Some(limit), Some(said)) = (self.limit, &self.limit_said) {
                        path.limit d={ "M" (place(limit)) " " (LINE - 22.0) "V" (LINE + 22.0) } {}
                        text.sub x=(place(limit)) y="80" text-anchor=(anchor(limit)) { (w.say_with("scale-limit", args!["limit" => said])) }
                    }
                    path.err.wide d={ "M" (place(low)) " " (LINE) "H" (place(high)) "M" (place(low)) " " (LINE - 9.0) "v18M" (place(high)) " " (LINE - 9.0) "v18" } {}
                    circle.pt.last cx=(place(self.change)) cy=(LINE) r="5.5" {}
                    text x=(place(self.change)) y="16" text-anchor=(anchor(self.change)) { (self.said) }
                }
            }
        }
    }
}
