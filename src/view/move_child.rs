//! Moving a child to another worker or village, with where it has been.

use domain::fault::Faults;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::Words;
use crate::view::filled::Filled;
use crate::view::parts::Ask;
use crate::view::parts::Icon;
use crate::view::parts::NoteWeight;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::button;
use crate::view::parts::form;
use crate::view::parts::hidden;
use crate::view::parts::note;
use crate::view::parts::rows;
use crate::view::parts::summary_of;

/// Where a child has been.
#[derive(Debug, Clone)]
pub struct Place {
    /// Village.
    pub village: String,
    /// Worker.
    pub worker: String,
    /// First day in words.
    pub from: String,
    /// Last day in words; `None` = still.
    pub to: Option<String>,
}

/// The page.
#[derive(Debug, Clone)]
pub struct MovePage<'a> {
    /// The child's page.
    pub child_path: &'a str,
    /// What the child is called.
    pub called: &'a str,
    /// Counts changes of the child.
    pub version: u32,
    /// First to last.
    pub places: Vec<Place>,
    /// Sign-in name and name.
    pub workers: Vec<(String, String)>,
    /// Code and name.
    pub areas: Vec<(String, String)>,
    /// What was typed.
    pub filled: &'a Filled,
    /// What is wrong with it.
    pub faults: &'a Faults,
    /// Somebody changed the child meanwhile.
    pub changed: bool,
    /// Token of the session.
    pub token: &'a str,
    /// Submission key.
    pub key: &'a str,
}

fn label(w: &Words, field: &str) -> String {
    w.say(match field {
        "area" => "move-area",
        "from" => "move-from",
        "reason" => "move-reason",
        _ => "move-worker",
    })
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &MovePage<'_>) -> Markup {
    let ask = Ask::new(w, p.filled, p.faults);
    // The worker so far may not be among them any more: nobody else may stand there chosen by itself.
    let choose = (!p.workers.iter().any(|(sign_in_name, _)| sign_in_name == p.filled.one("worker"))).then(|| w.say("common-choose"));
    let now = p.places.last();
    let since = now.map_or("", |place| place.from.as_str());
    let fields = html! {
        (hidden("version", &p.version.to_string()))
        (ask.select("worker", "move-worker").options(choose.map(|words| (String::new(), words)).into_iter().chain(p.workers.clone())))
        (ask.select("area", "move-area").options(p.areas.clone()))
        (ask.day("from", "move-from").hint(w.say_with("move-from-hint", args!["date" => since])))
        (ask.text_area("reason", "move-reason").hint(w.say("move-reason-hint")))
        (acts(&button(&w.say("move-do"), false)))
    };
    html! {
        (back(w, p.child_path, p.called))
        (summary_of(w, p.faults, &|field| label(w, field)))
        @if p.changed { (note(NoteWeight::Look, Icon::Ask, &html! { p { (w.say("move-changed")) } })) }
        h1 { (w.say_with("move-title", args!["name" => p.called])) }
        @if let Some(now) = now {
            p.lede { (w.say_with("move-now", args!["worker" => &now.worker, "village" => &now.village, "date" => &now.from])) }
        }
        (form(&format!("{}/move", p.child_path), p.token, Some(p.key), &fields))
        h2 { (w.say_with("move-history", args!["name" => p.called])) }
        (rows(&p.places.iter().map(|place| line(w, place)).collect::<Vec<_>>()))
    }
}

fn line(w: &Words, place: &Place) -> Markup {
    let (village, worker, from) = (&place.village, &place.worker, &place.from);
    html! {
        @match &place.to {
            Some(to) => { (w.say_with("move-history-line", args!["village" => village, "worker" => worker, "from" => from, "to" => to])) }
            None => { (w.say_with("move-history-now", args!["village" => village, "worker" => worker, "from" => from])) }
        }
    }
}
