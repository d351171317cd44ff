//! The other children of the home on a child's page, and the way to the home.

use domain::child::ChildStatus;
use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::view::child::ChildPage;
use crate::view::household::also_here;
use crate::view::parts::name;

/// One line under who the child is: whoever opens the page sees the twin.
pub fn at_once(w: &Words, page: &ChildPage<'_>) -> Markup {
    let named: Vec<(String, String)> = page.here.iter().map(|child| (child.code.clone(), child.called.clone())).collect();
    also_here(w, &named)
}

/// The part of the page: what is due for the others, and the page of the home.
pub fn part(w: &Words, page: &ChildPage<'_>) -> Markup {
    html! {
        @if !page.here.is_empty() || page.who.status == ChildStatus::Active {
            h2 { (w.say("household-same")) }
            ul.rows {
                @for child in &page.here {
                    li {
                        a.link href={ "/children/" (child.code) } { (name(&child.called)) ", " (child.age) }
                        p { @if child.when.is_empty() { (w.say("household-nothing-due")) } @else { (child.when) } }
                    }
                }
                li { a.link href={ "/children/" (page.who.code) "/home" } { (w.say("household-page")) } }
            }
        }
    }
}
