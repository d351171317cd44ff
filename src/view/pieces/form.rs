//! The form round the fields: where it goes, its token and key, the summary of what is wrong.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::filled::Filled;
use crate::view::icons::Icon;
use crate::view::pieces::choice::Choice;
use crate::view::pieces::date_field::DateField;
use crate::view::pieces::field::Field;
use crate::view::pieces::field::TextArea;
use crate::view::pieces::select::Select;
use crate::view::pieces::stands::Stands;

/// A form that is being shown: fields made here carry what was typed and what is wrong with it.
#[derive(Clone, Copy)]
pub struct Ask<'a> {
    /// The words of the page.
    pub w: &'a Words,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    newest: Option<&'a Filled>,
}

impl<'a> Ask<'a> {
    /// With what was typed and what is wrong with it.
    #[must_use]
    pub const fn new(w: &'a Words, filled: &'a Filled, faults: &'a Faults) -> Self {
        Self { w, filled, faults, newest: None }
    }

    /// With what somebody else saved since the form was shown: each field says what stands there now.
    #[must_use]
    pub const fn beside(mut self, newest: Option<&'a Filled>) -> Self {
        self.newest = newest;
        self
    }
}

impl Ask<'_> {
    /// What stands now for a field, if something else was typed.
    #[must_use]
    pub fn stands(&self, name: &str) -> Option<Stands> {
        self.newest.and_then(|newest| Stands::of(self.w, newest, self.filled, name))
    }

    fn fault(&self, name: &str) -> Option<String> {
        self.faults.of(name).map(|fault| codes::fault(self.w, fault))
    }

    /// A text; `label` is the id of its message.
    #[must_use]
    pub fn text(&self, name: &str, label: &str) -> Field {
        self.typed(name, Field::text(name, self.w.say(label)))
    }

    /// A number with decimals.
    #[must_use]
    pub fn decimal(&self, name: &str, label: &str) -> Field {
        self.typed(name, Field::decimal(name, self.w.say(label)))
    }

    /// A whole number.
    #[must_use]
    pub fn whole(&self, name: &str, label: &str) -> Field {
        self.typed(name, Field::whole(name, self.w.say(label)))
    }

    /// A telephone number.
    #[must_use]
    pub fn phone(&self, name: &str, label: &str) -> Field {
        self.typed(name, Field::phone(name, self.w.say(label)))
    }

    /// Any field, with what was typed and what is wrong.
    #[must_use]
    pub fn typed(&self, name: &str, field: Field) -> Field {
        field.value(self.filled.one(name)).fault(self.fault(name)).stands(self.stands(name))
    }

    /// A longer text.
    #[must_use]
    pub fn text_area(&self, name: &str, label: &str) -> TextArea {
        TextArea::new(name, self.w.say(label)).value(self.filled.one(name)).fault(self.fault(name)).stands(self.stands(name))
    }

    /// A list to choose from.
    #[must_use]
    pub fn select(&self, name: &str, label: &str) -> Select {
        Select::new(name, self.w.say(label)).value(self.filled.one(name)).fault(self.fault(name)).stands(self.stands(name))
    }

    /// One answer of several.
    #[must_use]
    pub fn one_of(&self, name: &str, legend: &str) -> Choice {
        Choice::one(name, self.w.say(legend)).chosen(self.filled.all(name)).fault(self.fault(name)).stands(self.stands(name))
    }

    /// Any number of ticks.
    #[must_use]
    pub fn many_of(&self, name: &str, legend: &str) -> Choice {
        Choice::many(name, self.w.say(legend)).chosen(self.filled.all(name)).fault(self.fault(name)).stands(self.stands(name))
    }

    /// Yes, no or not asked; not asked is the empty value.
    #[must_use]
    pub fn yes_no(&self, name: &str, legend: &str) -> Choice {
        self.one_of(name, legend)
            .tight()
            .option("yes", self.w.say("common-yes"))
            .option("no", self.w.say("common-no"))
            .option("", self.w.say("common-not-asked"))
    }

    /// A day in three boxes.
    #[must_use]
    pub fn day(&self, name: &str, legend: &str) -> DateField {
        let parts = ["day", "month", "year"].map(|part| format!("{name}_{part}"));
        let date = |form: &Filled| parts.each_ref().map(|part| form.one(part).to_owned()).join(" ").trim().to_owned();
        let one = |form: &Filled| Filled::default().with(name, date(form));
        let stands = self.newest.and_then(|newest| Stands::of(self.w, &one(newest), &one(self.filled), name));
        DateField::new(self.w, name, self.w.say(legend)).filled(self.filled).fault(self.fault(name)).stands(stands)
    }
}

/// A form that changes something. `key` is the submission key that makes sending it twice save it once.
#[must_use]
pub fn form(action: &str, token: &str, key: Option<&str>, body: &Markup) -> Markup {
    html! {
        form method="post" action=(action) novalidate {
            (hidden("token", token))
            @if let Some(key) = key { (hidden("key", key)) }
            (body)
        }
    }
}

/// A form that can carry a file; what is sent changes nothing.
#[must_use]
pub fn form_with_file(action: &str, token: &str, body: &Markup) -> Markup {
    html! {
        form method="post" action=(action) enctype="multipart/form-data" novalidate {
            (hidden("token", token))
            (body)
        }
    }
}

/// A value that travels with a form unseen.
#[must_use]
pub fn hidden(name: &str, value: &str) -> Markup {
    html! { input type="hidden" name=(name) value=(value); }
}

/// A part of a long form, with its heading.
#[must_use]
pub fn part(id: &str, heading: &str, body: &Markup) -> Markup {
    html! { fieldset.part { legend id=(id) { (heading) } (body) } }
}

/// The title of a page whose form was not saved.
#[must_use]
pub fn not_saved_title(w: &Words, title: &str) -> String {
    w.say_with("common-not-saved-title", args!["page" => title])
}

/// What is wrong, all at once, each a link to its field. `items` are id, label and fault, in the order of the fields.
#[must_use]
pub fn fault_summary(w: &Words, items: &[(String, String, String)]) -> Markup {
    summary(w, items, true, true)
}

/// The same below what presses more, which takes the eye and the focus when the page opens.
#[must_use]
pub fn fault_summary_below(w: &Words, items: &[(String, String, String)]) -> Markup {
    summary(w, items, true, false)
}

/// The same for passwords, which are typed anew: it does not say that all is still there.
#[must_use]
pub fn summary_of_passwords(w: &Words, faults: &Faults, label: &dyn Fn(&str) -> String) -> Markup {
    summary(w, &items_of(w, faults, label), false, true)
}

fn items_of(w: &Words, faults: &Faults, label: &dyn Fn(&str) -> String) -> Vec<(String, String, String)> {
    faults.iter().map(|(name, fault)| (name.to_owned(), label(name), codes::fault(w, fault))).collect()
}

fn summary(w: &Words, items: &[(String, String, String)], kept: bool, first: bool) -> Markup {
    html! {
        @if !items.is_empty() {
            section.note.stop id="summary" tabindex="-1" autofocus[first] aria-labelledby="summary-heading" {
                (Icon::Cross.draw("u"))
                div {
                    h2 id="summary-heading" { (w.say_with("common-not-saved", args!["count" => items.len()])) }
                    @if kept { p { (w.say("common-all-kept")) } }
                    ul.plain {
                        @for (id, label, fault) in items {
                            li { a href={ "#" (id) } { (w.say_with("common-fault-link", args!["field" => label, "fault" => fault])) } }
                        }
                    }
                }
            }
        }
    }
}

/// The summary of these faults; `label` gives the words of a field by its form name.
#[must_use]
pub fn summary_of(w: &Words, faults: &Faults, label: &dyn Fn(&str) -> String) -> Markup {
    fault_summary(w, &items_of(w, faults, label))
}
