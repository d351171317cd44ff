//! One line to write into: label, hint, box, unit, last time's value, fault and unusual-value warning, wired together.

use maud::Markup;
use maud::Render;
use maud::html;

use crate::view::icons::Icon;
use crate::view::pieces::stands;
use crate::view::pieces::stands::Stands;

/// A value that is possible but unusual: said before the field, saved after a tick.
#[derive(Debug, Clone)]
pub struct Unusual {
    /// `12.4 kg? Look again`
    pub heading: String,
    /// What it was last time, and what to look at; never a guess of the true value.
    pub text: String,
    /// Name and words of the tick: `I weighed again: it is 12.4 kg`.
    pub tick: Option<(String, String)>,
    /// Whether it is ticked.
    pub ticked: bool,
}

/// A text box with all that belongs to it. Its id is its name, so that a fault can point to it.
#[derive(Debug, Clone)]
pub struct Field {
    name: String,
    label: String,
    value: String,
    kind: &'static str,
    inputmode: Option<&'static str>,
    autocomplete: &'static str,
    hint: Option<String>,
    fault: Option<String>,
    unusual: Option<Unusual>,
    unit: Option<String>,
    last: Option<(String, String)>,
    short: bool,
    plain_letters: bool,
    stands: Option<Stands>,
}

impl Field {
    /// A text. Browsers do not offer earlier families' answers.
    pub fn text(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            label: label.into(),
            value: String::new(),
            kind: "text",
            inputmode: None,
            autocomplete: "off",
            hint: None,
            fault: None,
            unusual: None,
            unit: None,
            last: None,
            short: false,
            plain_letters: false,
            stands: None,
        }
    }

    /// A number that may have decimals: comma and point are both fine.
    pub fn decimal(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { inputmode: Some("decimal"), short: true, ..Self::text(name, label) }
    }

    /// A whole number.
    pub fn whole(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { inputmode: Some("numeric"), short: true, ..Self::text(name, label) }
    }

    /// A telephone number.
    pub fn phone(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { kind: "tel", ..Self::text(name, label) }
    }

    /// Words to look for.
    pub fn search(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { kind: "search", ..Self::text(name, label) }
    }

    /// A password; never shown again after a fault. `autocomplete` is `current-password` or `new-password`.
    pub fn password(name: impl Into<String>, label: impl Into<String>, autocomplete: &'static str) -> Self {
        Self { kind: "password", autocomplete, ..Self::text(name, label) }
    }

    /// With what was typed.
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

    /// With a warning before it, if the value is unusual.
    #[must_use]
    pub fn unusual(mut self, unusual: Option<Unusual>) -> Self {
        self.unusual = unusual;
        self
    }

    /// With the unit after the box.
    #[must_use]
    pub fn unit(mut self, unit: impl Into<String>) -> Self {
        self.unit = Some(unit.into());
        self
    }

    /// With last time's value beside the box, never in it: `Last time` and `7.00 kg, 1 Oct`.
    #[must_use]
    pub fn last(mut self, heading: impl Into<String>, value: impl Into<String>) -> Self {
        self.last = Some((heading.into(), value.into()));
        self
    }

    /// For the worker's own data, such as `username`.
    #[must_use]
    pub fn autocomplete(mut self, token: &'static str) -> Self {
        self.autocomplete = token;
        self
    }

    /// For names and codes that a phone must not capitalise or correct.
    #[must_use]
    pub fn plain_letters(mut self) -> Self {
        self.plain_letters = true;
        self
    }

    /// With what somebody else saved meanwhile, if it is something else.
    #[must_use]
    pub fn stands(mut self, stands: Option<Stands>) -> Self {
        self.stands = stands;
        self
    }

    fn input(&self) -> Markup {
        let about = described_by(&self.name, self.hint.is_some(), self.fault.is_some(), self.unusual.is_some());
        // A password is typed anew after a fault.
        let value = if self.kind == "password" { "" } else { self.value.as_str() };
        html! {
            input type=(self.kind) id=(self.name) name=(self.name) value=(value) inputmode=[self.inputmode] autocomplete=(self.autocomplete)
                autocapitalize=[self.plain_letters.then_some("none")] spellcheck=[self.plain_letters.then_some("false")]
                aria-describedby=[about] aria-invalid=[self.fault.is_some().then_some("true")];
        }
    }
}

impl Render for Field {
    fn render(&self) -> Markup {
        html! {
            div class=(state_class(self.fault.is_some(), self.unusual.is_some())) {
                label for=(self.name) { (self.label) }
                (hint(&self.name, self.hint.as_deref()))
                (fault(&self.name, self.fault.as_deref()))
                (stands::line(self.stands.as_ref(), |value| {
                    self.unit.as_ref().filter(|_| !value.is_empty()).map(|unit| format!("{value} {unit}"))
                }))
                @if let Some(unusual) = &self.unusual { (look_again(&self.name, unusual)) }
                @if self.short || self.unit.is_some() || self.last.is_some() {
                    div.unit {
                        (self.input())
                        @if let Some(unit) = &self.unit { span { (unit) } }
                        @if let Some((heading, value)) = &self.last { span.last { (heading) br; (value) } }
                    }
                } @else {
                    (self.input())
                }
                @if let Some(Unusual { tick: Some((name, words)), ticked, .. }) = &self.unusual {
                    div.pick.one { label { input type="checkbox" name=(name) value="yes" checked[*ticked]; span { (words) } } }
                }
            }
        }
    }
}

/// A longer text.
#[derive(Debug, Clone)]
pub struct TextArea {
    name: String,
    label: String,
    value: String,
    hint: Option<String>,
    fault: Option<String>,
    rows: u8,
    stands: Option<Stands>,
}

impl TextArea {
    /// An empty box of three rows.
    pub fn new(name: impl Into<String>, label: impl Into<String>) -> Self {
        Self { name: name.into(), label: label.into(), value: String::new(), hint: None, fault: None, rows: 3, stands: None }
    }

    /// With what was typed.
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

    /// With what somebody else saved meanwhile, if it is something else.
    #[must_use]
    pub fn stands(mut self, stands: Option<Stands>) -> Self {
        self.stands = stands;
        self
    }

    /// This high.
    #[must_use]
    pub const fn rows(mut self, rows: u8) -> Self {
        self.rows = rows;
        self
    }
}

impl Render for TextArea {
    fn render(&self) -> Markup {
        let about = described_by(&self.name, self.hint.is_some(), self.fault.is_some(), false);
        html! {
            div class=(state_class(self.fault.is_some(), false)) {
                label for=(self.name) { (self.label) }
                (hint(&self.name, self.hint.as_deref()))
                (fault(&self.name, self.fault.as_deref()))
                (stands::line(self.stands.as_ref(), |_| None))
                textarea id=(self.name) name=(self.name) rows=(self.rows) autocomplete="off" aria-describedby=[about]
                    aria-invalid=[self.fault.is_some().then_some("true")] { (self.value) }
            }
        }
    }
}

/// A file to choose. What was chosen cannot be shown again: a browser lets no page fill it in.
#[derive(Debug, Clone)]
pub struct FileField<'a> {
    /// Name and id.
    pub name: &'a str,
    /// Label.
    pub label: String,
    /// Hint under the label.
    pub hint: String,
    /// What kinds of file the browser offers first.
    pub accept: &'a str,
    /// What is wrong with the file sent.
    pub fault: Option<&'a str>,
}

impl Render for FileField<'_> {
    fn render(&self) -> Markup {
        html! {
            div class=(state_class(self.fault.is_some(), false)) {
                label for=(self.name) { (self.label) }
                (hint(self.name, Some(&self.hint)))
                (fault(self.name, self.fault))
                input type="file" id=(self.name) name=(self.name) accept=(self.accept)
                    aria-describedby=[described_by(self.name, true, self.fault.is_some(), false)]
                    aria-invalid=[self.fault.map(|_| "true")];
            }
        }
    }
}

pub(crate) fn state_class(fault: bool, unusual: bool) -> &'static str {
    if fault {
        "field bad"
    } else if unusual {
        "field odd"
    } else {
        "field"
    }
}

pub(crate) fn described_by(name: &str, hint: bool, fault: bool, unusual: bool) -> Option<String> {
    let ids: Vec<String> = [(hint, "hint"), (fault, "fault"), (unusual, "unusual")]
        .iter()
        .filter(|(there, _)| *there)
        .map(|(_, tail)| format!("{name}-{tail}"))
        .collect();
    (!ids.is_empty()).then(|| ids.join(" "))
}

pub(crate) fn hint(name: &str, text: Option<&str>) -> Markup {
    html! { @if let Some(text) = text { span.hint id={ (name) "-hint" } { (text) } } }
}

pub(crate) fn fault(name: &str, text: Option<&str>) -> Markup {
    html! { @if let Some(text) = text { p.fault id={ (name) "-fault" } { (Icon::Cross.draw("u")) span { (text) } } } }
}

fn look_again(name: &str, unusual: &Unusual) -> Markup {
    html! {
        div.note.look {
            (Icon::Ask.draw("u"))
            div id={ (name) "-unusual" } { p.title { (unusual.heading) } p { (unusual.text) } }
        }
    }
}
