//! The spoon with its five textures, and bowls for amounts and meals: the same few lines wherever food is spoken of.
//! Knows patterns, not which stage a child is in.

use domain::food::Texture;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::icons::texture_fill;

const SPOON: &str =
    "M3 36 74 34C130 30 180 24 232 15C275 8 330 2 347 20C357 31 357 49 347 60C330 78 275 72 232 65C180 56 130 50 74 46L3 44Q-1 40 3 36z";
/// Where each texture begins on the spoon, and the end.
const EDGES: [u32; 6] = [0, 70, 142, 212, 284, 360];
const BOWL: &str = "M6 26h60c0 18-12 30-30 30S6 44 6 26z";
/// Small bowls stand in rows of two.
const SMALL_BOWL: &str = "h30c0 9-6 15-15 15s-15-6-15-15z";
/// More bowls than this are not drawn: the number says it.
const MOST_BOWLS: u32 = 8;

/// The spoon: five textures, today's filled.
pub struct Ribbon<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// Sets the ids of one spoon apart from another's on the page.
    pub id: &'a str,
    /// Today's texture; none: nothing is marked.
    pub today: Option<Texture>,
    /// The months under each texture, such as `9–11`.
    pub months: [String; 5],
    /// Today's stage in words, for those who do not see the spoon.
    pub stage: String,
}

impl Render for Ribbon<'_> {
    fn render(&self) -> Markup {
        let w = self.w;
        let clip = format!("{}-clip", self.id);
        html! {
            figure.ribbon {
                svg.chart viewBox="0 -20 360 138" role="img" aria-label=(w.say_with("common-spoon-today", args!["stage" => self.stage.as_str()])) {
                    clipPath id=(clip) { path d=(SPOON) {} }
                    g clip-path={ "url(#" (clip) ")" } {
                        @for texture in Texture::ALL { (self.stretch(texture)) }
                    }
                    path.draw d=(SPOON) {}
                    @for texture in Texture::ALL { (self.label(texture)) }
                }
            }
        }
    }
}

impl Ribbon<'_> {
    fn stretch(&self, texture: Texture) -> Markup {
        let (from, to) = edges(texture);
        let today = self.today == Some(texture);
        html! {
            @if today { rect.food x=(from) y="0" width=(to - from) height="80" {} }
            rect x=(from) y="0" width=(to - from) height="80" fill=(texture_fill(texture.level(), today)) {}
            path.draw d={ "M" (from) " 0v80" } {}
        }
    }

    fn label(&self, texture: Texture) -> Markup {
        let (from, to) = edges(texture);
        let middle = (from + to) / 2;
        let today = self.today == Some(texture);
        html! {
            @if today { path d={ "M" (middle) " 14l-7-11h14z" } fill="currentColor" {} }
            text x=(middle) y="98" text-anchor="middle" font-weight=[today.then_some("700")] { (codes::texture_short(self.w, texture)) }
            text.sub x=(middle) y="114" text-anchor="middle" { (self.months[usize::from(texture.level())]) }
        }
    }
}

fn edges(texture: Texture) -> (u32, u32) {
    let at = usize::from(texture.level());
    (EDGES[at], EDGES[at + 1])
}

/// A large bowl of food of this texture.
#[must_use]
pub fn bowl_of(w: &Words, id: &str, texture: Texture) -> Markup {
    let said = w.say_with("common-bowl-texture", args!["texture" => codes::texture(w, texture)]);
    bowl(id, &said, 27.0, Some(texture))
}

/// A large bowl, full to this share (0 to 1): half a cup is half a bowl of one cup.
#[must_use]
pub fn bowl_share(w: &Words, id: &str, share: f64) -> Markup {
    let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
    let said = w.say_with("common-bowl-share", args!["percent" => format::percent_whole(w, share * 100.0)]);
    bowl(id, &said, 56.0 - share * 29.0, None)
}

fn bowl(id: &str, said: &str, level: f64, texture: Option<Texture>) -> Markup {
    let level = format!("{level:.0}");
    html! {
        svg viewBox="0 0 72 64" role="img" aria-label=(said) {
            clipPath id=(id) { path d=(BOWL) {} }
            g clip-path={ "url(#" (id) ")" } {
                rect.food x="0" y=(level) width="72" height="46" {}
                @if let Some(texture) = texture { rect x="0" y=(level) width="72" height="46" fill=(texture_fill(texture.level(), true)) {} }
                path.draw d={ "M0 " (level) "h72" } {}
            }
            path.draw.heavy d={ (BOWL) "M27 60h18" } {}
        }
    }
}

/// As many bowls as meals, and dashed ones for those that may come if wanted.
#[must_use]
pub fn bowls(w: &Words, meals: u32, if_wanted: u32) -> Markup {
    let said = if if_wanted == 0 {
        w.say_with("common-bowls", args!["count" => meals])
    } else {
        w.say_with("common-bowls-wanted", args!["count" => meals, "more" => if_wanted])
    };
    let shown = (meals.saturating_add(if_wanted)).clamp(1, MOST_BOWLS);
    let high = shown.div_ceil(2) * 30;
    html! {
        svg viewBox={ "0 0 72 " (high) } role="img" aria-label=(said) {
            @for n in 0..shown.min(meals.saturating_add(if_wanted)) {
                @let place = format!("M{} {}{SMALL_BOWL}", if n % 2 == 0 { 3 } else { 39 }, n / 2 * 30 + 8);
                @if n < meals {
                    path.food d=(place) {}
                    path.draw d=(place) {}
                } @else {
                    path.draw.dashed d=(place) {}
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::i18n::Lang;
    use crate::i18n::words;
    use scraper::Html;
    use scraper::Selector;

    fn count(markup: &Markup, css: &str) -> usize {
        Html::parse_fragment(&markup.0).select(&Selector::parse(css).expect("a selector")).count()
    }

    fn spoon(today: Option<u8>) -> Markup {
        Ribbon {
            w: words(Lang::En),
            id: "spoon",
            today: today.and_then(Texture::new),
            months: ["0–5", "6–7", "8", "9–11", "12–23"].map(str::to_owned),
            stage: "Mashed, soft lumps".to_owned(),
        }
        .render()
    }

    #[test]
    fn the_spoon_marks_today_and_only_today() {
        let marked = spoon(Some(2));
        assert_eq!((count(&marked, "rect.food"), count(&marked, "text[font-weight]")), (1, 1));
        assert!(marked.0.contains("url(#p2m)") && marked.0.contains("url(#p1)"), "{}", marked.0);
        assert_eq!(count(&spoon(None), "rect.food"), 0);
    }

    #[test]
    fn bowls_are_as_many_as_meals_and_dashed_if_wanted() {
        let w = words(Lang::En);
        let three = bowls(w, 2, 1);
        assert_eq!((count(&three, "path.food"), count(&three, "path.dashed")), (2, 1));
        assert!(three.0.contains("2 bowls, 1 more if wanted"), "{}", three.0);
        assert_eq!(count(&bowls(w, 0, 0), "path"), 0);
        assert_eq!(count(&bowls(w, 40, 0), "path.food"), 8);
        assert!(bowls(w, u32::MAX, 3).0.contains("<svg"));
    }

    #[test]
    fn the_bowls_level_is_its_share() {
        let w = words(Lang::En);
        let level = |share: f64| {
            let page = Html::parse_fragment(&bowl_share(w, "b", share).0);
            page.select(&Selector::parse("rect.food").expect("a selector"))
                .next()
                .and_then(|r| r.value().attr("y").and_then(|y| y.parse::<i32>().ok()))
        };
        assert_eq!((level(1.0), level(0.0), level(f64::NAN), level(7.0)), (Some(27), Some(56), Some(56), Some(27)));
        assert!(level(0.5) > level(0.75));
    }
}
