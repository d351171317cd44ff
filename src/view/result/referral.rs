//! The referral note: what a clinic needs to know, on one page that can be read out, copied or printed.

use maud::Markup;
use maud::html;

use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::facts;
use crate::view::parts::name;
use crate::view::result::ResultPage;
use crate::view::result::measured;

/// A note to hand over: who, what was seen, why. The child's name is on it because the clinic needs it.
pub(super) fn note(p: &ResultPage<'_>) -> Markup {
    let w = p.w;
    let v = p.visit;
    let why: Vec<String> = p.found.iter().map(|f| f.why.clone()).collect();
    let mut lines = vec![
        (w.say("note-child"), html! { (name(p.name)) ", " (codes::sex(w, p.sex)) ", " (format::age_exact(w, p.born, v.on)) }),
        (w.say("note-code"), html! { span.ltr { (p.code) } ", " (p.area) }),
        (w.say("note-date"), html! { (format::day_and_year(w, v.on)) }),
        (w.say("note-measured"), html! { (measured(w, v).join(" · ")) }),
    ];
    if !p.seen.is_empty() {
        lines.push((w.say("note-seen"), html! { (p.seen.join("; ")) }));
    }
    lines.push((w.say("note-why"), html! { @for line in &why { (line) br; } }));
    lines.push((w.say("note-from"), html! { (p.worker) }));
    html! {
        section.sheet-note id="note" {
            h2 { (w.say("note-heading")) }
            (facts(&lines))
            p.quiet { (w.say("note-caution")) }
        }
    }
}
