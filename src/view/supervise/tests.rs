//! The desk as it is read.

use scraper::Html;
use scraper::Selector;

use super::*;
use crate::i18n::Lang;
use crate::i18n::words;

fn child(name: &str) -> DeskChild {
    DeskChild {
        path: format!("/children/{name}"),
        called: name.to_owned(),
        age: "10 months".to_owned(),
        village: "Sanga Point".to_owned(),
        worker: "Mireni".to_owned(),
        phone: Some("+250 1".to_owned()),
    }
}

fn empty() -> LatePage {
    LatePage {
        day: "Thursday 20 November".to_owned(),
        scope: [4, 3, 206],
        unattended: Vec::new(),
        urgent: Short { lines: Vec::new(), whole: None },
        late: Vec::new(),
        late_in_all: 0,
        meeting: "/late/meeting".to_owned(),
        next: None,
        first: None,
        unseen: Short { lines: Vec::new(), whole: None },
        not_seen_days: Some((60, 90)),
        held: Short { lines: Vec::new(), whole: None },
        held_days: 14,
        sieve: Sieve::default(),
        hand: hand::Hands::default(),
    }
}

fn late_line(name: &str, class: Class, days: i32) -> LateLine {
    LateLine { child: child(name), class, why: "Lost 500 g.".to_owned(), why_path: format!("/children/{name}/why/weight.loss/open"), days }
}

fn texts(markup: &Markup, css: &str) -> Vec<String> {
    let page = Html::parse_fragment(&markup.0);
    let selector = Selector::parse(css).expect("a selector");
    page.select(&selector).map(|e| e.text().collect::<Vec<_>>().join(" ").split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

#[test]
fn the_heading_is_the_answer() {
    let w = words(Lang::En);
    let heading = |p: &LatePage| texts(&page(w, p), "h1").remove(0);
    let mut p = empty();
    assert_eq!(heading(&p), "Nothing is late");
    p.unseen.lines.push(UnseenLine { child: child("Kiva"), days: 62, ever: true });
    assert_eq!(heading(&p), "Nothing is late, and one child was not seen for long");
    p.late.push(late_line("Pemba", Class::TwoDays, 7));
    p.late_in_all = 5;
    assert_eq!(heading(&p), "5 follow-ups are late");
    p.urgent.lines.push(UrgentLine {
        child: child("Sela"),
        class: Class::Today,
        why: "Arm 114 mm.".to_owned(),
        why_path: "/children/Sela/why/wasting.severe/open".to_owned(),
        write_path: "/children/Sela/visits/new".to_owned(),
        since: Some("18 November".to_owned()),
    });
    assert_eq!(heading(&p), "One urgent referral has no answer yet");
    let shown = page(w, &p);
    assert!(texts(&shown, ".note.stop").remove(0).contains("Sela, 10 months, Sanga Point"), "the village stands beside it");
    assert_eq!(texts(&shown, "a.do:not(.second)"), ["Call Mireni"], "one solid act");
}

#[test]
fn days_late_are_words_and_strokes_up_to_a_fortnight() {
    let mut p = empty();
    p.late = vec![late_line("Sela", Class::Today, 0), late_line("Pemba", Class::TwoDays, 7), late_line("Bemu", Class::Month, 99)];
    let shown = page(words(Lang::En), &p);
    assert_eq!(texts(&shown, "table.stack tbody td:last-child"), ["Due today", "7 days late", "99 days late"]);
    let page = Html::parse_fragment(&shown.0);
    let strokes: Vec<usize> = page
        .select(&Selector::parse("table.stack .late svg").expect("a selector"))
        .map(|svg| svg.select(&Selector::parse("rect").expect("a selector")).count())
        .collect();
    assert_eq!(strokes, [7, 14]);
}

#[test]
fn sums_stand_below_and_nobody_is_ranked() {
    let row = |name: &str, children, late| hand::HandRow { name: name.to_owned(), children, open: late, late: [0, late, 0, 0, 0, 0] };
    let mut p = empty();
    p.hand.workers = vec![row("Mireni", 78, 1), row("Olani", 57, 0), row("Tamsi", 71, 3)];
    let shown = page(words(Lang::En), &p);
    assert_eq!(texts(&shown, "tbody th"), ["Mireni", "Olani", "Tamsi"], "by name");
    assert_eq!(texts(&shown, "tfoot th, tfoot td")[..5], ["All", "206", "4", "0", "4"]);
    assert!(texts(&shown, "p").iter().any(|p| p.contains("For support, not ranking")));
}
