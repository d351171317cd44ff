//! The line drawings: urgency shapes, ways to go, food groups, states of a food, textures. Knows no page.

use domain::food::FoodGroup;
use domain::rule::Class;
use maud::Markup;
use maud::PreEscaped;
use maud::html;

macro_rules! icons {
    ($($(#[$meta:meta])* $name:ident, $id:literal, $size:literal, $body:literal;)+) => {
        /// A drawing that stands beside a word, never alone.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub enum Icon { $($(#[$meta])* $name),+ }

        impl Icon {
            /// Every drawing.
            pub const ALL: &'static [Icon] = &[$(Icon::$name),+];

            const fn parts(self) -> (&'static str, u8, &'static str) {
                match self { $(Icon::$name => ($id, $size, $body)),+ }
            }
        }
    };
}

icons! {
    /// Emergency: a nine-point burst.
    Now, "now", 24, r#"<path fill="currentColor" d="M12 .2l2.6 4.7 5-1.9-1 5.2 5 1.8-4.1 3.3 2.7 4.6-5.3-.1-.9 5.3-4-3.5-4 3.5-.9-5.3-5.3.1 2.7-4.6L.4 10l5-1.8-1-5.2 5 1.9z"/>"#;
    /// Refer today: a triangle.
    Today, "today", 24, r#"<path fill="currentColor" d="M12 1.5 23.4 21.5H.6z"/>"#;
    /// Within 2 days: an upright diamond.
    TwoDays, "two", 24, r#"<path fill="currentColor" d="M12 .6 20.5 12 12 23.4 3.5 12z"/>"#;
    /// Within 7 days: a square.
    Week, "week", 24, r#"<path fill="currentColor" d="M3.5 3.5h17v17h-17z"/>"#;
    /// Within 14 days: a ring.
    Fortnight, "fort", 24, r#"<circle cx="12" cy="12" r="8" fill="none" stroke="currentColor" stroke-width="4.5"/>"#;
    /// Next routine visit: a half bowl.
    Month, "month", 24, r#"<path d="M3 13.5h18C20 17 17 19 12 19s-8-2-9-5.5z" fill="currentColor"/><path class="draw" d="M2 9h20c0 6-4 10-10 10S2 15 2 9z"/>"#;
    /// A visit due, no follow-up: the outline of a house.
    Home, "home", 24, r#"<path d="M3.5 11 12 3l8.5 8v9.5h-17z" fill="none" stroke="currentColor" stroke-width="2.6" stroke-linejoin="round"/>"#;
    /// Done: a tick.
    Done, "done", 24, r#"<path d="M3 12.5 9.5 19 21.5 5" fill="none" stroke="currentColor" stroke-width="4" stroke-linecap="round" stroke-linejoin="round"/>"#;
    /// A fault in a form: strokes.
    Cross, "x", 24, r#"<path d="M4.5 4.5 19.5 19.5M19.5 4.5 4.5 19.5" stroke="currentColor" stroke-width="4.5" stroke-linecap="round"/>"#;
    /// An unusual value: a question mark.
    Ask, "ask", 24, r#"<path d="M6.5 8a5.6 5.6 0 1 1 8 5.2c-1.7.9-2.5 1.6-2.5 3.3" fill="none" stroke="currentColor" stroke-width="3.4" stroke-linecap="round"/><circle cx="12" cy="21.3" r="2.2" fill="currentColor"/>"#;
    /// Good to know.
    Info, "info", 24, r#"<circle cx="12" cy="12" r="9.5" class="draw"/><path d="M12 11v6" stroke="currentColor" stroke-width="3" stroke-linecap="round"/><circle cx="12" cy="7" r="1.7" fill="currentColor"/>"#;
    /// The round.
    Round, "i-round", 24, r#"<path d="M6 21c8-1 10-4 6-7s-2-7 6-8" class="draw"/><circle cx="5" cy="21" r="2" fill="currentColor"/><path d="M15 7V4l3.5-3L22 4v3z" fill="currentColor"/>"#;
    /// Find a child.
    Find, "i-find", 24, r#"<circle cx="10.5" cy="10.5" r="6.5" class="draw"/><path d="m15.5 15.5 6 6" class="draw"/>"#;
    /// Add a child.
    Add, "i-add", 24, r#"<circle cx="10" cy="8" r="4" class="draw"/><path d="M3 21c0-4.5 3-7 7-7s7 2.5 7 7M19.5 3v6M16.5 6h6" class="draw"/>"#;
    /// Late follow-ups.
    Late, "i-late", 24, r#"<circle cx="12" cy="12" r="9" class="draw"/><path d="M12 7v5.5l4 2.5" class="draw"/>"#;
    /// Workers, people.
    People, "i-people", 24, r#"<circle cx="8" cy="8" r="3.5" class="draw"/><circle cx="17" cy="9.5" r="2.6" class="draw"/><path d="M2 20c0-4 2.5-6 6-6s6 2 6 6M15.5 15c3.5-.8 6.5 1 6.5 5" class="draw"/>"#;
    /// Monthly reports.
    Report, "i-month", 24, r#"<path d="M4 20V12M10 20V6M16 20v-9M22 20V4" class="draw"/>"#;
    /// Villages.
    Area, "i-area", 24, r#"<path d="M2.5 20v-6l4.5-4 4.5 4v6zM13 20V9l4.250-4 4.250 4v11z" class="draw"/>"#;
    /// The protocol: a sheet.
    Sheet, "i-sheet", 24, r#"<path d="M5 2.5h9.500l4.500 4.500v14.500H5zM14 2.500v5h5M8.500 12h7M8.500 16h7" class="draw"/>"#;
    /// Settings: three strings with a bead each.
    Settings, "i-set", 24, r#"<path d="M3 6h18M3 12h18M3 18h18" class="draw"/><circle cx="8" cy="6" r="2.6" fill="currentColor"/><circle cx="16" cy="12" r="2.6" fill="currentColor"/><circle cx="10" cy="18" r="2.6" fill="currentColor"/>"#;
    /// A telephone.
    Call, "i-call", 24, r#"<path d="M7 3.5 10 9 7.8 11a11 11 0 0 0 5.2 5.2L15 14l5.5 3-.8 2.8c-.3 1-1.3 1.4-2.3 1.2C10 19.6 4.4 14 3 6.6c-.2-1 .2-2 1.2-2.3z" class="draw"/>"#;
    /// Grains, roots.
    Grain, "g-grain", 32, r#"<path class="draw" d="M16 29V9"/><path class="food" d="M16 3c3 3 3 5 0 8-3-3-3-5 0-8z"/><path class="draw" d="M16 3c3 3 3 5 0 8-3-3-3-5 0-8zM16 17c0-4 2-6 7-6 0 4-2 6-7 6zM16 17c0-4-2-6-7-6 0 4 2 6 7 6zM16 25c0-4 2-6 7-6 0 4-2 6-7 6zM16 25c0-4-2-6-7-6 0 4 2 6 7 6z"/>"#;
    /// Beans, nuts.
    Bean, "g-bean", 32, r#"<path class="food" d="M7 12c1-5 7-7 12-4 6 3 8 10 5 15-2 3-6 3-7 0-1-4-3-4-6-4s-5-3-4-7z"/><path class="draw" d="M7 12c1-5 7-7 12-4 6 3 8 10 5 15-2 3-6 3-7 0-1-4-3-4-6-4s-5-3-4-7zM14 11c3 0 6 2 7 5"/>"#;
    /// Milk, yoghurt, cheese.
    Dairy, "g-dairy", 32, r#"<path class="food" d="M8 14h16l-1.6 13H9.6z"/><path class="draw" d="M7 5h18l-2.6 22H9.6zM8 14h16"/>"#;
    /// Egg.
    Egg, "g-egg", 32, r#"<path class="food" d="M16 4c5 0 9 8 9 14a9 9 0 0 1-18 0c0-6 4-14 9-14z"/><path class="draw" d="M16 4c5 0 9 8 9 14a9 9 0 0 1-18 0c0-6 4-14 9-14z"/>"#;
    /// Fish, meat.
    Fish, "g-fish", 32, r#"<path class="food" d="M4 16c5-8 14-8 19 0-5 8-14 8-19 0z"/><path class="draw" d="M4 16c5-8 14-8 19 0-5 8-14 8-19 0zM23 16l6-5v10zM14 11c2 3 2 7 0 10"/><circle cx="9" cy="15" r="1.4" fill="currentColor"/>"#;
    /// Breast milk.
    Milk, "g-milk", 32, r#"<path class="food" d="M16 5c5 7 8 10 8 14.5a8 8 0 0 1-16 0C8 15 11 12 16 5z"/><path class="draw" d="M16 5c5 7 8 10 8 14.5a8 8 0 0 1-16 0C8 15 11 12 16 5zM12 20a4 4 0 0 0 4 4"/>"#;
    /// Orange fruit, dark leaves.
    Orange, "g-orange", 32, r#"<path class="food" d="M16 10c8-4 13 1 13 7s-4 11-9 10c-2 1-6 1-8 0-5 1-9-4-9-10s5-11 13-7z"/><path class="draw" d="M16 10c8-4 13 1 13 7s-4 11-9 10c-2 1-6 1-8 0-5 1-9-4-9-10s5-11 13-7zM16 10c0-3 1-5 4-6M11 12c-3 4-3 10 1 15M21 12c3 4 3 10-1 15"/>"#;
    /// Other fruit, vegetables.
    OtherFruit, "g-other", 32, r#"<path class="food" d="M5 9c2 10 9 16 20 16 3 0 3-3 0-4C16 19 11 15 9 8c-1-3-4-2-4 1z"/><path class="draw" d="M5 9c2 10 9 16 20 16 3 0 3-3 0-4C16 19 11 15 9 8c-1-3-4-2-4 1zM7 6 6 3"/>"#;
    /// A food not given yet: a dashed bowl.
    BowlNotYet, "s-none", 24, r#"<path class="draw" stroke-dasharray="2.5 4" d="M2 9h20c0 6-4 10-10 10S2 15 2 9z"/>"#;
    /// A food being tried: a half-full bowl.
    BowlHalf, "s-half", 24, r#"<path class="food" d="M3 13.5h18C20 17 17 19 12 19s-8-2-9-5.5z"/><path class="draw" d="M2 9h20c0 6-4 10-10 10S2 15 2 9zM3 13.5h18"/>"#;
    /// A food taken: a full bowl.
    BowlFull, "s-full", 24, r#"<path class="food" d="M2 9h20c0 6-4 10-10 10S2 15 2 9z"/><path class="draw" d="M2 9h20c0 6-4 10-10 10S2 15 2 9z"/>"#;
    /// A food refused: an empty bowl.
    BowlEmpty, "s-empty", 24, r#"<path class="draw" d="M2 9h20c0 6-4 10-10 10S2 15 2 9z"/>"#;
    /// A food on hold: a bowl struck through.
    BowlHold, "s-hold", 24, r#"<path class="draw" stroke-width="3.5" d="M2 9h20c0 6-4 10-10 10S2 15 2 9zM5 3l14 19"/>"#;
}

impl Icon {
    /// The shape of an urgency class.
    #[must_use]
    pub const fn of_class(class: Class) -> Self {
        match class {
            Class::Now => Self::Now,
            Class::Today => Self::Today,
            Class::TwoDays => Self::TwoDays,
            Class::Week => Self::Week,
            Class::Fortnight => Self::Fortnight,
            Class::Month => Self::Month,
        }
    }

    /// The drawing of a food group.
    #[must_use]
    pub const fn of_group(group: FoodGroup) -> Self {
        match group {
            FoodGroup::BreastMilk => Self::Milk,
            FoodGroup::GrainsRoots => Self::Grain,
            FoodGroup::PulsesNuts => Self::Bean,
            FoodGroup::Dairy => Self::Dairy,
            FoodGroup::Flesh => Self::Fish,
            FoodGroup::Eggs => Self::Egg,
            FoodGroup::VitA => Self::Orange,
            FoodGroup::OtherFv => Self::OtherFruit,
        }
    }

    /// The bowl of a food's state, by its code; an unknown state is an empty bowl.
    #[must_use]
    pub fn of_food_state(code: &str) -> Self {
        match code {
            "not_yet" => Self::BowlNotYet,
            "trying" => Self::BowlHalf,
            "accepted" => Self::BowlFull,
            "on_hold" => Self::BowlHold,
            _ => Self::BowlEmpty,
        }
    }

    /// Its name in the page.
    #[must_use]
    pub const fn id(self) -> &'static str {
        self.parts().0
    }

    /// The drawing with a CSS class, hidden from screen readers: the word beside it says it.
    #[must_use]
    pub fn draw(self, class: &str) -> Markup {
        let (id, size, _) = self.parts();
        let view_box = if size == 24 { "0 0 24 24" } else { "0 0 32 32" };
        html! { svg class=[Some(class).filter(|c| !c.is_empty())] viewBox=(view_box) aria-hidden="true" { use href={ "#" (id) } {} } }
    }
}

/// The stretch of the trail from one home to the next.
pub const WAY: &str = "way";

const WAY_SYMBOL: &str = r#"<symbol id="way" viewBox="0 0 40 100" preserveAspectRatio="none"><path d="M20 0C46 30 -6 70 20 100" vector-effect="non-scaling-stroke"/></symbol>"#;

/// Line patterns of the five textures; a second set, `m`, lies on mango and stays dark in the dark.
const PATTERNS: [(&str, &str); 5] = [
    ("16,10", r#"<path d="M0 5q4-4 8 0t8 0" fill="none" stroke="currentColor" stroke-width="1"/>"#),
    ("6,5", r#"<path d="M0 2.5h6" stroke="currentColor" stroke-width="1.2"/>"#),
    (
        "11,11",
        r#"<circle cx="3.5" cy="3.5" r="2" fill="none" stroke="currentColor" stroke-width="1.2"/><circle cx="9" cy="9" r="1.2" fill="currentColor"/>"#,
    ),
    (
        "16,16",
        r#"<path d="M2 3l6 2-1.5 4-6-2zM10 10l5 1.5-1 3.5-5-1.5z" fill="none" stroke="currentColor" stroke-width="1.3"/><path d="M12 2l2 3" stroke="currentColor" stroke-width="1.8"/>"#,
    ),
    (
        "26,26",
        r#"<path d="M2 5l9-2 2 8-9 2zM16 4q5-2 7 2t-4 5-3-7zM4 17q4-3 6 1t-3 5-3-6z" fill="none" stroke="currentColor" stroke-width="1.5"/><path d="M15 16l8 5M16 22l4 2" stroke="currentColor" stroke-width="1.8"/>"#,
    ),
];

/// The fill of a texture, on plain ground or on mango.
#[must_use]
pub fn texture_fill(level: u8, on_mango: bool) -> String {
    format!("url(#p{}{})", level.min(4), if on_mango { "m" } else { "" })
}

/// The drawings that these pieces of a page use, hidden, to stand once in the page.
#[must_use]
pub fn sprite(pieces: &[&Markup]) -> Markup {
    let uses = |mark: &str| pieces.iter().any(|piece| piece.0.contains(mark));
    let mut inner = String::new();
    for icon in Icon::ALL {
        let (id, size, body) = icon.parts();
        if uses(&format!("\"#{id}\"")) {
            inner.push_str(&format!(r#"<symbol id="{id}" viewBox="0 0 {size} {size}">{body}</symbol>"#));
        }
    }
    if uses("\"#way\"") {
        inner.push_str(WAY_SYMBOL);
    }
    for (level, (size, body)) in PATTERNS.iter().enumerate() {
        let (width, height) = size.split_once(',').unwrap_or((size, size));
        for (suffix, class) in [("", ""), ("m", r#" class="onm""#)] {
            if uses(&format!("url(#p{level}{suffix})")) {
                inner.push_str(&format!(
                    r#"<pattern id="p{level}{suffix}" width="{width}" height="{height}" patternUnits="userSpaceOnUse"{class}>{body}</pattern>"#
                ));
            }
        }
    }
    html! { @if !inner.is_empty() { svg width="0" height="0" aria-hidden="true" class="vh" { (PreEscaped(inner)) } } }
}

/// The mark: a bowl with food and a spoon leaning out.
#[must_use]
pub fn mark() -> Markup {
    html! {
        svg viewBox="0 0 32 32" aria-hidden="true" {
            path class="food" d="M5 14.5h18.5c0 6-3.5 10.5-9.2 10.5S5 20.5 5 14.5z" {}
            path class="draw heavy" d="M3.5 14.5h21.5c0 7-4 12-10.7 12S3.5 21.5 3.5 14.5zM20 14.5 27 4.5" {}
            ellipse cx="27.3" cy="4.6" rx="2.3" ry="3.4" transform="rotate(35 27.3 4.6)" fill="currentColor" {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_holds_only_the_drawings_it_uses() {
        let body = html! { (Icon::Today.draw("u")) rect fill=(texture_fill(2, true)) {} };
        let sprite = sprite(&[&body]).0;
        assert!(sprite.contains(r#"id="today""#) && sprite.contains(r#"id="p2m""#), "{sprite}");
        assert!(!sprite.contains(r#"id="two""#) && !sprite.contains(r#"id="p2""#), "{sprite}");
        assert!(super::sprite(&[&html! { p { "x" } }]).0.is_empty());
    }

    #[test]
    fn every_drawing_has_its_own_id() {
        let mut ids: Vec<_> = Icon::ALL.iter().map(|i| i.id()).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), Icon::ALL.len());
    }
}
