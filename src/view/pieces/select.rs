//! A list of which one is chosen, shown by one line: label, hint, fault, wired together.

use maud::Markup;
use maud::Render;
use maud::html;

use crate::view::pieces::field::described_by;
use crate::view::pieces::field::fault;
use crate::view::pieces::field::hint;
use crate::view::pieces::field::state_class;
use crate::view::pieces::stands;
use crate::view::pieces::stands::Stands;

/// One of many, such as a village; for few choices use [`Choice`](crate::view::parts::Choice).
#[derive(Debug, Clone)]
pub struct Select {
    name: String,
    label: String,
    value: String,
    options: Vec<(String, String)>,
    hint: Option<String>,
    fault: Option<String>,
    stands: Option<Stands>,
}

impl Select {
    /// A list without choices yet.
    pub fn new(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { name: name.into(), label: label.into(), value: String::new(), options: Vec::new(), hint: None, fault: None, stands: None }
    }

    /// With one more choice; an empty value is for "choose".
    #[must_use]
    pub fn option(mut self, value: impl Into<String>, words: impl Into<String>) -> Self {
        self.options.push((value.into(), words.into()));
        self
    }

    /// With these choices too.
    #[must_use]
    pub fn options(mut self, options: impl IntoIterator<Item = (String, String)>) -> Self {
        self.options.extend(options);
        self
    }

    /// With what somebody else saved meanwhile, if it is something else.
    #[must_use]
    pub fn stands(mut self, stands: Option<Stands>) -> Self {
        self.stands = stands;
        self
    }

    /// With the value chosen.
    #[must_use]
    pub fn value(mut self, value: impl Into<String>) -> Self {
        self.value = value.into();
        self
    }

    /// With a hint under the label.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    /// With what is wrong, if something is.
    #[must_use]
    pub fn fault(mut self, fault: Option<String>) -> Self {
        self.fault = fault;
        self
    }
}

impl Render for Select {
    fn render(&self) -> Markup {
        let about = described_by(&self.name, self.hint.is_some(), self.fault.is_some(), false);
        html! {
            div class=(state_class(self.fault.is_some(), false)) {
                label for=(self.name) { (self.label) }
                (hint(&self.name, self.hint.as_deref()))
                (fault(&self.name, self.fault.as_deref()))
                (stands::line(self.stands.as_ref(), |value| {
                    self.options.iter().find(|(known, _)| known == value).map(|(_, words)| words.clone())
                }))
                select id=(self.name) name=(self.name) aria-describedby=[about] aria-invalid=[self.fault.is_some().then_some("true")] {
                    @for (value, words) in &self.options { option value=(value) selected[*value == self.value] { (words) } }
                    // What was typed stays, also where it is none of the choices: the fault beside it speaks of it.
                    @if self.fault.is_some() && !self.options.iter().any(|(value, _)| *value == self.value) {
                        option value=(self.value) selected { (self.value) }
                    }
                }
            }
        }
    }
}
