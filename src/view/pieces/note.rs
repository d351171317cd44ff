//! Frames: they mean "stop" or "look again", or plainly "good to know", and nothing else.

use maud::Markup;
use maud::html;

use crate::view::icons::Icon;

/// How hard a note is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Solid and thick: an open *now* or *today*, or what is wrong with a form.
    Stop,
    /// Dashed: unusual but possible.
    Look,
    /// Plain: good to know.
    Plain,
}

/// A note with its sign. `body` starts with its heading.
#[must_use]
pub fn note(weight: Weight, icon: Icon, body: &Markup) -> Markup {
    let class = match weight {
        Weight::Stop => "note stop",
        Weight::Look => "note look",
        Weight::Plain => "note",
    };
    html! { div class=(class) { (icon.draw("u")) div { (body) } } }
}

/// The block across the page for class *now* only. `urgency` is the word, `heading` says what to do, `acts` is the call.
#[must_use]
pub fn alert(urgency: &str, heading: &Markup, acts: &Markup) -> Markup {
    html! {
        div.alert { div {
            span.cls.now { (Icon::Now.draw("u")) (urgency) }
            h1 { (heading) }
            (acts)
        } }
    }
}
