//! The text to read to a clinician on the phone: the same lines large on the screen and as plain text. Short sentences, no colour, no
//! table; it is given no name, no family, no phone and no place, so it can show none.

use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::view::parts::back;

/// A heading and its lines.
pub type Section = (String, Vec<String>);

/// The text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Aloud {
    /// First lines: which child.
    pub who: Vec<String>,
    /// The rest.
    pub sections: Vec<Section>,
}

impl Aloud {
    /// As plain text, one sentence group a line.
    #[must_use]
    pub fn plain(&self, w: &Words) -> String {
        let mut text = format!("{}\n\n", w.say("aloud-heading").to_uppercase());
        for line in &self.who {
            text.push_str(line);
            text.push('\n');
        }
        for (heading, lines) in &self.sections {
            text.push_str(&format!("\n{}\n", heading.to_uppercase()));
            for line in lines {
                text.push_str(line);
                text.push('\n');
            }
        }
        text
    }
}

/// The screen: the way back, how to read, and the text in large type.
#[must_use]
pub fn page(w: &Words, aloud: &Aloud, back_path: &str, plain_path: &str) -> Markup {
    html! {
        (back(w, back_path, &w.say("common-why")))
        h1 { (w.say("aloud-heading")) }
        p.quiet { (w.say("aloud-how")) }
        div.aloud {
            @for line in &aloud.who { p { (line) } }
            @for (heading, lines) in &aloud.sections {
                h2 { (heading) }
                @for line in lines { p { (line) } }
            }
        }
        p { a.link href=(plain_path) { (w.say("aloud-plain")) } }
    }
}
