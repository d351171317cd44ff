//! The protocol in force as a page to read, print and sign, with the versions adopted before and after it.

use maud::Markup;
use maud::html;

use crate::i18n::Words;
use crate::view::parts::Cell;
use crate::view::parts::Table;
use crate::view::parts::acts;
use crate::view::parts::back;
use crate::view::parts::link_button;
use crate::view::protocol_doc::Document;

/// An adopted version.
#[derive(Debug, Clone)]
pub struct VersionLine {
    /// Where it is read.
    pub path: String,
    /// Id and version.
    pub name: String,
    /// First day in force, in words.
    pub from: String,
    /// In force today, or to come.
    pub state: Option<String>,
    /// Who approved it; `None` = nobody yet.
    pub approved_by: Option<String>,
    /// When and by whom it was adopted, in words.
    pub adopted: String,
    /// Why.
    pub reason: String,
}

/// The page.
#[derive(Debug, Clone)]
pub struct ProtocolPage {
    /// The document.
    pub document: Document,
    /// Where its file is, for those who may change it.
    pub file: Option<String>,
    /// Whether it is the one in force today.
    pub in_force: bool,
    /// Every adopted version; empty where only this one is shown.
    pub versions: Vec<VersionLine>,
    /// Whether the reader may rehearse a change.
    pub may_rehearse: bool,
}

/// The page.
#[must_use]
pub fn page(w: &Words, p: &ProtocolPage) -> Markup {
    html! {
        @if !p.in_force { (back(w, "/protocol", &w.say("doc-page-title"))) }
        h1 { span lang="en" { (p.document.title) } }
        p.quiet.noprint { (w.say("protocol-print-hint")) }
        (p.document.html(w))
        div.noprint {
            @if !p.versions.is_empty() { (versions(w, &p.versions)) }
            (acts(&html! {
                @if p.may_rehearse { (link_button("/protocol/rehearse", &html! { (w.say("protocol-rehearse")) }, false)) }
                @if let Some(file) = &p.file { (link_button(file, &html! { (w.say("protocol-file")) }, true)) }
            }))
        }
    }
}

fn versions(w: &Words, versions: &[VersionLine]) -> Markup {
    let heads = ["protocol-version", "protocol-from", "protocol-approved-by", "protocol-adopted", "protocol-reason"];
    let table = Table::folding(w.say("protocol-all")).headed();
    let table = heads.iter().fold(table, |table, id| table.column(w.say(id), false));
    let row = |table: Table, line: &VersionLine| {
        let from = match &line.state {
            Some(state) => html! { (line.from) " (" (state) ")" },
            None => html! { (line.from) },
        };
        let approved = match &line.approved_by {
            Some(name) => html! { bdi { (name) } },
            None => html! { (w.say("protocol-nobody")) },
        };
        table.row(vec![
            Cell::of(html! { a.link href=(line.path) { bdi { (line.name) } } }),
            Cell::of(from),
            Cell::of(approved),
            Cell::of(html! { (line.adopted) }),
            Cell::of(html! { bdi { (line.reason) } }),
        ])
    };
    html! { h2 id="versions" { (w.say("protocol-all")) } (versions.iter().fold(table, row)) }
}
