//! Bowls: depth is the amount, number the meals, dashed is "if wanted". Drawings beside words, never instead of them.

use domain::food::FoodGroup;
use domain::food::Texture;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::icons::texture_fill;
use crate::view::parts::Icon;

const BOWL: &str = "M6 26h60c0 18-12 30-30 30S6 44 6 26z";
const SMALL: &str = "h30c0 9-6 15-15 15s-15-6-15-15z";

/// One bowl filled so far, `level` in units of the drawing from its edge, with a texture.
fn bowl(id: &str, said: &str, top: f64, fill: Option<String>) -> Markup {
    let clip = format!("url(#{id})");
    html! {
        svg viewBox="0 0 72 64" role="img" aria-label=(said) {
            clipPath id=(id) { path d=(BOWL) {} }
            g clip-path=(clip) {
                rect class="food" x="0" y=(top) width="72" height="46" {}
                @if let Some(fill) = fill { rect x="0" y=(top) width="72" height="46" fill=(fill) {} }
                path d={ "M0 " (top) "h72" } stroke="currentColor" stroke-width="2" {}
            }
            path class="draw" stroke-width="2.6" d=(BOWL) {}
            path class="draw" stroke-width="2.6" d="M27 60h18" {}
        }
    }
}

/// A bowl of food of this texture.
pub(super) fn texture(w: &Words, texture: Texture) -> Markup {
    let said = w.say_with("common-bowl-texture", args!["texture" => codes::texture(w, texture)]);
    bowl("bowl-texture", &said, 27.0, Some(texture_fill(texture.level(), true)))
}

/// A bowl filled to a share of a cup, 0 to 1.
pub(super) fn amount(w: &Words, share: f64) -> Markup {
    let share = share.clamp(0.1, 1.0);
    let said = w.say_with("common-bowl-share", args!["percent" => format::percent_whole(w, share * 100.0)]);
    bowl("bowl-amount", &said, (54.0 - 27.0 * share).round(), None)
}

/// As many small bowls as meals; those above the lower number are dashed.
pub(super) fn meals(w: &Words, (from, to): (u8, u8)) -> Markup {
    let to = to.max(from).min(6);
    let said = if to > from {
        w.say_with("common-bowls-wanted", args!["count" => from, "more" => to - from])
    } else {
        w.say_with("common-bowls", args!["count" => from])
    };
    let rows = to.div_ceil(2).max(1);
    let height = u32::from(rows) * 30;
    html! {
        svg viewBox={ "0 0 72 " (height) } role="img" aria-label=(said) {
            @for at in 0..to {
                @let d = format!("M{} {}{SMALL}", 3 + 36 * u32::from(at % 2), 8 + 30 * u32::from(at / 2));
                @if at < from { path class="food" d=(d) {} }
                path class="draw" d=(d) stroke-dasharray=[(at >= from).then_some("3 4")] {}
            }
        }
    }
}

/// Breast milk.
pub(super) fn milk() -> Markup {
    Icon::Milk.draw("food-i")
}

/// A new food: the drawing of its group.
pub(super) fn food(group: Option<FoodGroup>) -> Markup {
    group.map_or(Icon::BowlHalf, Icon::of_group).draw("food-i")
}
