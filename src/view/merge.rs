//! Two records of one child side by side, what has to be said, and the form that merges them. Judges nothing.

use domain::record::Question;
use domain::record::Side;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::view::correction::EffectLine;
use crate::view::correction::Sending;
use crate::view::correction::changed_note;
use crate::view::correction::effect_line;
use crate::view::parts::Ask;
use crate::view::parts::Cell;
use crate::view::parts::Choice;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::Table;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::link_button;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::summary_of;
use crate::view::pick_child;
use crate::view::pick_child::PickChild;

/// A fact of both records.
#[derive(Debug, Clone)]
pub struct Compared {
    /// What it is.
    pub label: String,
    /// As each record has it.
    pub values: [String; 2],
    /// Whether the two are worth a second look where they differ.
    pub telling: bool,
}

/// A question and what each record says.
#[derive(Debug, Clone)]
pub struct Asked {
    /// Which.
    pub question: Question,
    /// As each record has it.
    pub values: [String; 2],
}

/// Two records side by side.
#[derive(Debug)]
pub struct SideBySide<'a> {
    /// Code as printed and code in links of each.
    pub codes: [(String, &'a str); 2],
    /// Name of each.
    pub names: [&'a str; 2],
    /// Counts changes of each record.
    pub versions: (u32, u32),
    /// Facts, in the order shown.
    pub facts: Vec<Compared>,
    /// What has to be said.
    pub asked: Vec<Asked>,
    /// Why they cannot be one as they stand, each in a sentence.
    pub contradictions: Vec<String>,
    /// Whether nothing can be sent before something else is put right.
    pub refused: bool,
    /// Days with a visit in both, in words.
    pub same_days: Option<String>,
    /// What would be open afterwards, unless an answer decides it.
    pub open_then: Option<Vec<EffectLine>>,
}

/// The page.
#[derive(Debug)]
pub struct MergePage<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// A choice, or both records.
    pub other: Result<SideBySide<'a>, PickChild<'a>>,
    /// The form.
    pub sending: Sending<'a>,
}

/// The name of a question's field.
#[must_use]
pub fn field(question: Question) -> String {
    format!("right_{}", question.code())
}

fn label(w: &Words, name: &str) -> String {
    let asked = Question::ALL.iter().find(|question| field(**question) == name);
    match (name, asked) {
        (_, Some(question)) => codes::merge_question(w, *question),
        ("survivor", _) => w.say("merge-survivor"),
        ("sure", _) => w.say("merge-sure"),
        _ => w.say("void-note"),
    }
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &MergePage<'_>) -> Markup {
    html! {
        (back(w, &format!("/children/{}", p.code), p.called))
        (summary_of(w, p.sending.faults, &|field| label(w, field)))
        @if p.sending.changed { (changed_note(w, "merge-changed")) }
        h1 { (w.say_with("merge-title", args!["name" => p.called])) }
        p.lede { (w.say("merge-lede")) }
        @match &p.other {
            Err(pick) => { h2 { (w.say("merge-which")) } (pick_child::part(w, pick)) }
            Ok(both) => { (side_by_side(w, p, both)) }
        }
    }
}

fn side_by_side(w: &Words, p: &MergePage<'_>, both: &SideBySide<'_>) -> Markup {
    let refused = |words: &[String]| {
        note(
            NoteWeight::Stop,
            Icon::Cross,
            &html! {
                h2 { (w.say("merge-contradicts")) }
                @for sentence in words { p { (sentence) } }
            },
        )
    };
    html! {
        @if !both.contradictions.is_empty() { (refused(&both.contradictions)) }
        (table(w, both))
        p { a.link href={ "/children/" (p.code) "/merge" } { (w.say("move-visit-another")) } }
        @if let Some(days) = &both.same_days {
            (note(NoteWeight::Look, Icon::Ask, &html! { p { (w.say_with("merge-same-days", args!["days" => days])) } }))
        }
        @if !both.refused {
            @match &both.open_then {
                None => { p { (w.say("merge-open-depends")) } }
                Some(open) => { (open_then(w, open)) }
            }
            (merging(w, p, both))
        }
    }
}

fn table(w: &Words, both: &SideBySide<'_>) -> Markup {
    let head = |at: usize| w.say_with("merge-column", args!["code" => both.codes.get(at).map_or("", |(printed, _)| printed.as_str())]);
    let table =
        Table::folding(w.say("merge-compare")).headed().column(w.say("merge-fact"), false).column(head(0), false).column(head(1), false);
    let known = |fact: &&Compared| fact.values.iter().any(|value| *value != w.say("common-not-known"));
    let rows = both.facts.iter().filter(known).fold(table, |table, fact| {
        let differs = fact.telling && fact.values[0] != fact.values[1];
        let cell = |text: &str| Cell::of(html! { @if differs { b { (name(text)) } } @else { (name(text)) } });
        let label = html! { (fact.label) @if differs { span.vh { " " (w.say("merge-differs")) } } };
        table.row(vec![Cell::of(label), cell(&fact.values[0]), cell(&fact.values[1])])
    });
    html! {
        h2 { (w.say("merge-compare")) }
        (rows.render())
        p.quiet { (w.say("merge-bold")) }
    }
}

fn open_then(w: &Words, open: &[EffectLine]) -> Markup {
    html! {
        h2 { (w.say("merge-open-then")) }
        @if open.is_empty() { p { (w.say("child-none-open")) } }
        ul.rows { @for line in open { li { (effect_line(w, line)) } } }
    }
}

/// A question with what each record says; the second line tells which record.
fn question(w: &Words, ask: &Ask<'_>, asked: &Asked) -> Choice {
    let name = field(asked.question);
    let fault = ask.faults.of(&name).map(|fault| codes::fault(w, fault));
    Choice::one(&name, codes::merge_question(w, asked.question))
        .rows()
        .chosen(ask.filled.all(&name))
        .fault(fault)
        .option(Side::First.code(), asked.values[0].clone())
        .option(Side::Second.code(), asked.values[1].clone())
}

fn merging(w: &Words, p: &MergePage<'_>, both: &SideBySide<'_>) -> Markup {
    let s = &p.sending;
    let ask = Ask::new(w, s.filled, s.faults);
    let [first, second] = [Side::First.code(), Side::Second.code()];
    let record = |at: usize| {
        let printed = both.codes.get(at).map_or("", |(printed, _)| printed.as_str());
        w.say_with("merge-record", args!["code" => printed, "name" => both.names.get(at).copied().unwrap_or_default()])
    };
    let fields = html! {
        (hidden("with", both.codes[1].1))
        (hidden("version_first", &both.versions.0.to_string()))
        (hidden("version_second", &both.versions.1.to_string()))
        (ask.one_of("survivor", "merge-survivor").rows().hint(w.say("merge-survivor-hint")).option(first, record(0)).option(second, record(1)))
        @for asked in &both.asked {
            (question(w, &ask, asked))
        }
        (ask.text_area("note", "void-note").hint(w.say("void-note-hint")))
        (ask.many_of("sure", "merge-sure").option("yes", w.say("merge-sure-yes")))
        (acts(&button(&w.say("merge-do"), false)))
    };
    html! {
        h2 { (w.say("merge-do")) }
        (form(&format!("/children/{}/merge", p.code), s.token, Some(s.key), &fields))
    }
}

/// Somebody merged them before.
#[must_use]
pub fn already(w: &Words, path: &str) -> Markup {
    html! {
        h1 { (w.say("merge-already-title")) }
        p { (w.say("merge-already")) }
        (acts(&link_button(path, &html! { (w.say("correction-to-child")) }, false)))
    }
}
