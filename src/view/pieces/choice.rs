//! Rows or tiles to choose from, with the browser's own radio or tick.

use maud::Markup;
use maud::Render;
use maud::html;

use crate::view::icons::Icon;
use crate::view::pieces::field::described_by;
use crate::view::pieces::field::fault;
use crate::view::pieces::field::hint;
use crate::view::pieces::field::state_class;
use crate::view::pieces::list::name;
use crate::view::pieces::stands;
use crate::view::pieces::stands::Stands;

#[derive(Debug, Clone)]
struct Answer {
    value: String,
    words: String,
    /// Whether the words are somebody's name.
    named: bool,
    small: Option<String>,
    icon: Option<Icon>,
}

/// A question with its answers. Nothing is chosen unless said. The first answer's id is the name, so that a fault can point to it.
#[derive(Debug, Clone)]
pub struct Choice {
    name: String,
    legend: String,
    kind: &'static str,
    layout: &'static str,
    answers: Vec<Answer>,
    chosen: Vec<String>,
    hint: Option<String>,
    fault: Option<String>,
    last: Option<String>,
    stands: Option<Stands>,
}

impl Choice {
    /// One answer of several.
    pub fn one(name: impl Into<String>, legend: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            legend: legend.into(),
            kind: "radio",
            layout: "pick",
            answers: Vec::new(),
            chosen: Vec::new(),
            hint: None,
            fault: None,
            last: None,
            stands: None,
        }
    }

    /// Any number of ticks.
    pub fn many(name: impl Into<String>, legend: impl Into<String>) -> Self {
        Self { kind: "checkbox", ..Self::one(name, legend) }
    }

    /// With one more answer.
    #[must_use]
    pub fn option(mut self, value: impl Into<String>, words: impl Into<String>) -> Self {
        self.answers.push(Answer { value: value.into(), words: words.into(), named: false, small: None, icon: None });
        self
    }

    /// With one more answer that carries a small second line and perhaps a drawing.
    #[must_use]
    pub fn option_with(mut self, value: impl Into<String>, words: impl Into<String>, small: Option<String>, icon: Option<Icon>) -> Self {
        self.answers.push(Answer { value: value.into(), words: words.into(), named: false, small, icon });
        self
    }

    /// With one more answer that is somebody, told apart by a small second line.
    #[must_use]
    pub fn named(mut self, value: impl Into<String>, called: impl Into<String>, about: impl Into<String>) -> Self {
        self.answers.push(Answer { value: value.into(), words: called.into(), named: true, small: Some(about.into()), icon: None });
        self
    }

    /// With what was chosen; values that are no answers are ignored.
    #[must_use]
    pub fn chosen<S: Into<String>>(mut self, values: impl IntoIterator<Item = S>) -> Self {
        self.chosen = values.into_iter().map(Into::into).collect();
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

    /// With what somebody else saved meanwhile, if it is something else.
    #[must_use]
    pub fn stands(mut self, stands: Option<Stands>) -> Self {
        self.stands = stands;
        self
    }

    /// With last time's answer under the question: `Last time: smooth and thick`.
    #[must_use]
    pub fn last(mut self, last: impl Into<String>) -> Self {
        self.last = Some(last.into());
        self
    }

    /// Short answers, side by side as they fit.
    #[must_use]
    pub const fn tight(mut self) -> Self {
        self.layout = "pick tight";
        self
    }

    /// Tiles with drawings.
    #[must_use]
    pub const fn tiles(mut self) -> Self {
        self.layout = "pick tiles";
        self
    }

    /// Long answers, one a row.
    #[must_use]
    pub const fn rows(mut self) -> Self {
        self.layout = "pick one";
        self
    }
}

impl Render for Choice {
    fn render(&self) -> Markup {
        let about = described_by(&self.name, self.hint.is_some(), self.fault.is_some(), false);
        html! {
            fieldset class=(state_class(self.fault.is_some(), false)) aria-describedby=[about] {
                legend { (self.legend) }
                (hint(&self.name, self.hint.as_deref()))
                @if let Some(last) = &self.last { span.hint { (last) } }
                (fault(&self.name, self.fault.as_deref()))
                (stands::line(self.stands.as_ref(), |value| {
                    self.answers.iter().find(|answer| answer.value == value).map(|answer| answer.words.clone())
                }))
                div class=(self.layout) {
                    @for (at, answer) in self.answers.iter().enumerate() {
                        label {
                            input type=(self.kind) name=(self.name) value=(answer.value) id=[(at == 0).then_some(&self.name)]
                                autocomplete="off" checked[self.chosen.contains(&answer.value)];
                            span { @if answer.named { (name(&answer.words)) } @else { (answer.words) } @if let Some(small) = &answer.small { small { (small) } } }
                            @if let Some(icon) = answer.icon { (icon.draw("")) }
                        }
                    }
                }
            }
        }
    }
}
