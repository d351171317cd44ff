//! What became of what was open: asked first, because the family waits for it. Urgent ones stand open, the rest one tap away.

use domain::rule::Theme;
use domain::visit::Outcome;
use maud::Markup;
use maud::html;

use crate::args;
use crate::i18n::codes;
use crate::i18n::format;
use crate::view::parts::Ask;
use crate::view::parts::cls;
use crate::view::parts::part;
use crate::view::visit_form::OpenLine;
use crate::view::visit_form::VisitForm;
use crate::view::visit_form::fold;

pub(super) fn part_of(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let first = |line: &&OpenLine| {
        line.class.is_urgent() || matches!(line.rule.theme(), Theme::Danger | Theme::Reaction) || line.rule.code().starts_with("wasting.")
    };
    let (now, later): (Vec<&OpenLine>, Vec<&OpenLine>) = f.open.iter().filter(|line| line.from_before).partition(first);
    html! {
        @if !f.open.is_empty() {
            (part("since", &w.say("visit-open"), &html! {
                @for line in &now { (outcome(f, ask, line)) }
                @if !later.is_empty() {
                    (fold(f, &w.say_with("visit-open-more", args!["count" => later.len()]), &html! {
                        @for line in &later { (outcome(f, ask, line)) }
                    }))
                }
                (fold(f, &w.say("visit-referred"), &referred(f, ask)))
            }))
        }
    }
}

fn outcome(f: &VisitForm<'_>, ask: Ask<'_>, line: &OpenLine) -> Markup {
    let w = f.w;
    let name = format!("outcome_{}", line.rule.code());
    let select = ask
        .select(&name, "visit-outcome")
        .option("", w.say("common-not-asked"))
        .options(Outcome::ALL.iter().map(|o| (o.code().to_owned(), codes::outcome(w, *o))));
    html! {
        p.tight { (cls(w, line.class)) " " (line.why) " "
            span.quiet { (w.say_with("visit-open-since", args!["date" => format::day_near(w, line.opened_on, f.today)])) } }
        (select)
    }
}

fn referred(f: &VisitForm<'_>, ask: Ask<'_>) -> Markup {
    let w = f.w;
    let choice = f.open.iter().fold(ask.many_of("referrals", "visit-referrals").rows(), |choice, line| {
        choice.option(line.rule.code(), codes::rule_name(w, line.rule))
    });
    html! { (choice) }
}
