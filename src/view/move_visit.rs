//! Moving a visit to the child it is really about: the choice of the child, then what changes for both. Judges nothing.

use domain::rule::Class;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::child::VisitLine;
use crate::view::correction::EffectShown;
use crate::view::correction::Sending;
use crate::view::correction::changed_note;
use crate::view::correction::effect;
use crate::view::correction::visit_facts;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::name;
use crate::view::parts::note;
use crate::view::parts::summary_of;
use crate::view::pick_child;
use crate::view::pick_child::PickChild;

/// The child that the visit would go to.
#[derive(Debug, Clone)]
pub struct Target<'a> {
    /// Its code in links.
    pub code: &'a str,
    /// Its name.
    pub name: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// Sex, age, village, caregiver: to be sure that it is the one meant.
    pub who: String,
    /// Why the visit cannot go there, in a sentence; nothing can be sent then.
    pub obstacle: Option<String>,
    /// What has to be looked at again, each in a sentence.
    pub doubts: Vec<String>,
    /// What would change for the child that the visit leaves.
    pub leaves: EffectShown,
    /// What would change for the child that it goes to.
    pub arrives: EffectShown,
}

/// The page.
#[derive(Debug)]
pub struct MoveVisitPage<'a> {
    /// The child's code in links.
    pub code: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// The visit.
    pub visit: VisitLine<'a>,
    /// Its day in words.
    pub date: String,
    /// Where to: a choice, or the child chosen.
    pub to: Result<Target<'a>, PickChild<'a>>,
    /// The form.
    pub sending: Sending<'a>,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "sure" => "move-visit-sure",
        "to" => "move-visit-to",
        _ => "void-note",
    })
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &MoveVisitPage<'_>) -> Markup {
    let path = format!("/children/{}/visits/{}", p.code, p.visit.seq);
    html! {
        (back(w, &format!("/children/{}", p.code), p.called))
        (summary_of(w, p.sending.faults, &|field| label(w, field)))
        @if p.sending.changed { (changed_note(w, "correction-changed")) }
        h1 { (w.say_with("move-visit-title", args!["name" => p.called, "date" => &p.date])) }
        (visit_facts(w, &p.visit))
        @match &p.to {
            Err(pick) => {
                p { (w.say("move-visit-lede")) }
                h2 { (w.say("move-visit-whose")) }
                (pick_child::part(w, pick))
            }
            Ok(target) => { (chosen(w, p, &path, target)) }
        }
    }
}

fn chosen(w: &Words, p: &MoveVisitPage<'_>, path: &str, target: &Target<'_>) -> Markup {
    let s = &p.sending;
    let ask = Ask::new(w, s.filled, s.faults);
    let another = format!("{path}/move");
    let fields = html! {
        (hidden("version", &s.version.to_string()))
        (hidden("to", target.code))
        @if !target.doubts.is_empty() {
            (ask.many_of("sure", "move-visit-sure").option("yes", w.say_with("move-visit-sure-yes", args!["name" => target.called])))
        }
        (ask.text_area("note", "void-note").hint(w.say("void-note-hint")))
        (acts(&button(&w.say_with("move-visit-do", args!["name" => target.called]), false)))
    };
    html! {
        h2 { (w.say("move-visit-to")) }
        div.split { p { b { (name(target.name)) } " · " (target.who) } a.link href=(another) { (w.say("move-visit-another")) } }
        @if let Some(obstacle) = &target.obstacle {
            (note(NoteWeight::Stop, Icon::of_class(Class::Today), &html! { h2 { (w.say("move-visit-cannot")) } p { (obstacle) } }))
        } @else {
            @if !target.doubts.is_empty() {
                (note(NoteWeight::Look, Icon::Ask, &html! {
                    h2 { (w.say("common-look-again")) }
                    @for doubt in &target.doubts { p { (doubt) } }
                }))
            }
            (effect(w, &target.leaves))
            (effect(w, &target.arrives))
            h2 { (w.say_with("move-visit-do", args!["name" => target.called])) }
            (form(&another, s.token, Some(s.key), &fields))
        }
    }
}
