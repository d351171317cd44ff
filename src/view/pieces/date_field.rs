//! A day in three boxes, as people remember it; no calendar to page through.

use maud::Markup;
use maud::Render;
use maud::html;

use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::pieces::field::described_by;
use crate::view::pieces::field::fault;
use crate::view::pieces::field::hint;
use crate::view::pieces::field::state_class;
use crate::view::pieces::stands;
use crate::view::pieces::stands::Stands;

/// A day. The boxes are named `<name>_day`, `<name>_month` and `<name>_year`; a fault points to the first.
#[derive(Debug, Clone)]
pub struct DateField {
    name: String,
    legend: String,
    parts: [String; 3],
    values: [String; 3],
    hint: Option<String>,
    fault: Option<String>,
    stands: Option<Stands>,
}

impl DateField {
    /// Three empty boxes.
    #[must_use]
    pub fn new(w: &Words, name: impl Into<String>, legend: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            legend: legend.into(),
            parts: [w.say("common-day"), w.say("common-month"), w.say("common-year")],
            values: Default::default(),
            hint: None,
            fault: None,
            stands: None,
        }
    }

    /// With what was typed.
    #[must_use]
    pub fn filled(mut self, filled: &Filled) -> Self {
        self.values = ["day", "month", "year"].map(|part| filled.one(&format!("{}_{part}", self.name)).to_owned());
        self
    }

    /// With this day, month and year.
    #[must_use]
    pub fn value(mut self, day: impl Into<String>, month: impl Into<String>, year: impl Into<String>) -> Self {
        self.values = [day.into(), month.into(), year.into()];
        self
    }

    /// With what somebody else saved meanwhile, if it is something else.
    #[must_use]
    pub fn stands(mut self, stands: Option<Stands>) -> Self {
        self.stands = stands;
        self
    }

    /// With a hint under the question.
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

impl Render for DateField {
    fn render(&self) -> Markup {
        let about = described_by(&self.name, self.hint.is_some(), self.fault.is_some(), false);
        html! {
            fieldset class=(state_class(self.fault.is_some(), false)) aria-describedby=[about.as_deref()] {
                legend { (self.legend) }
                (hint(&self.name, self.hint.as_deref()))
                (fault(&self.name, self.fault.as_deref()))
                (stands::line(self.stands.as_ref(), |_| None))
                div.date {
                    @for (at, part) in ["day", "month", "year"].iter().enumerate() {
                        @let id = if at == 0 { self.name.clone() } else { format!("{}-{part}", self.name) };
                        div class=(part) {
                            label for=(id) { (self.parts[at]) }
                            input type="text" inputmode="numeric" id=(id) name={ (self.name) "_" (part) } value=(self.values[at])
                                autocomplete="off" aria-describedby=[self.fault.is_some().then(|| format!("{}-fault", self.name))]
                                aria-invalid=[self.fault.is_some().then_some("true")];
                        }
                    }
                }
            }
        }
    }
}
