//! Checks that every page must pass, for the tests of pages: labels, ids, references, and no text that was never given to a translator.

use scraper::ElementRef;
use scraper::Html;
use scraper::Node;
use scraper::Selector;

fn all<'a>(page: &'a Html, css: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(css).expect("a selector")).collect()
}

/// What is wrong with the structure of a page; nothing, if it is sound.
pub(crate) fn structure(html: &str) -> Vec<String> {
    let page = Html::parse_document(html);
    let mut wrong = Vec::new();
    let mut ids: Vec<&str> = all(&page, "[id]").iter().filter_map(|e| e.value().attr("id")).collect();
    ids.sort_unstable();
    wrong.extend(ids.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| format!("id {} twice", pair[0])));
    let there = |id: &str| ids.binary_search(&id).is_ok();
    for name in ["for", "aria-describedby", "aria-labelledby"] {
        for element in all(&page, &format!("[{name}]")) {
            let wanted = element.value().attr(name).unwrap_or_default();
            wrong.extend(wanted.split(' ').filter(|id| !there(id)).map(|id| format!("{name} points to {id}, which is not there")));
        }
    }
    for link in all(&page, "a[href^='#'], use[href^='#']") {
        let id = link.value().attr("href").unwrap_or_default().trim_start_matches('#');
        if !there(id) {
            wrong.push(format!("a link to #{id}, which is not there"));
        }
    }
    for input in all(&page, "input:not([type=hidden]), select, textarea") {
        let inside = input.ancestors().filter_map(ElementRef::wrap).any(|a| a.value().name() == "label");
        let labelled = input.value().attr("id").is_some_and(|id| !all(&page, &format!("label[for='{id}']")).is_empty());
        if !inside && !labelled {
            wrong.push(format!("no label for {}", input.html()));
        }
        if matches!(input.value().attr("type"), Some("radio")) {
            let grouped = input.ancestors().filter_map(ElementRef::wrap).any(|a| a.value().name() == "fieldset");
            if !grouped {
                wrong.push(format!("a radio outside a fieldset: {}", input.html()));
            }
        }
    }
    for set in all(&page, "fieldset") {
        if set.children().filter_map(ElementRef::wrap).next().is_none_or(|first| first.value().name() != "legend") {
            wrong.push("a fieldset that does not begin with its legend".to_owned());
        }
    }
    for control in all(&page, "a, button") {
        if control.text().collect::<String>().trim().is_empty() && control.value().attr("aria-label").is_none() {
            wrong.push(format!("nothing to read on {}", control.html()));
        }
    }
    if all(&page, "h1").len() != 1 {
        wrong.push(format!("{} first headings", all(&page, "h1").len()));
    }
    wrong.extend(
        ["style=", "<style", "<script", "javascript:", "{$"].iter().filter(|bad| html.contains(**bad)).map(|bad| (*bad).to_owned()),
    );
    wrong
}

/// Words of a page in the pseudo-language that stand outside ⟦ and ⟧: they never passed a translator. Names stand in `bdi`,
/// codes and numbers in `.ltr`, what somebody typed in a text area; a value inside a message is inside its marks.
pub(crate) fn literal_words(html: &str) -> Vec<String> {
    let page = Html::parse_document(html);
    let mut found = Vec::new();
    for node in page.tree.nodes() {
        let Node::Text(text) = node.value() else { continue };
        let free = node.ancestors().filter_map(ElementRef::wrap).any(|a| {
            matches!(a.value().name(), "bdi" | "del" | "ins" | "textarea")
                || a.value().classes().any(|c| c == "ltr")
                || a.value().attr("lang") == Some("fr")
                || a.value().attr("lang") == Some("en")
        });
        if !free {
            collect(text, &mut found);
        }
    }
    for element in all(&page, "[aria-label], [placeholder], [alt], [title], [data-label]") {
        for name in ["aria-label", "placeholder", "alt", "title", "data-label"] {
            if let Some(text) = element.value().attr(name) {
                collect(text, &mut found);
            }
        }
    }
    found
}

fn collect(text: &str, found: &mut Vec<String>) {
    let mut depth = 0_usize;
    let mut outside = String::new();
    for c in text.chars() {
        match c {
            '⟦' => depth += 1,
            '⟧' => depth = depth.saturating_sub(1),
            c if depth == 0 => outside.push(c),
            _ => {}
        }
    }
    // A single letter is a mark or a unit's part, not a word.
    if outside.split(|c: char| !c.is_alphabetic()).any(|word| word.chars().count() > 1) {
        found.push(outside.trim().to_owned());
    }
}

#[test]
fn the_checks_see_what_is_wrong() {
    let page = "<html><body><h1>A</h1><label for='x'>X</label><input id='y'><input id='y' aria-describedby='z'>\
        <input type='radio' name='r'><a href='#q'>go</a><button></button></body></html>";
    let wrong = structure(page);
    for part in
        ["id y twice", "for points to x", "aria-describedby points to z", "no label for", "outside a fieldset", "#q", "nothing to read"]
    {
        assert!(wrong.iter().any(|w| w.contains(part)), "{part} not seen in {wrong:#?}");
    }
    let sound = "<html><body><h1>A</h1><fieldset><legend>L</legend><label><input type='radio' name='r'>x</label></fieldset></body></html>";
    assert_eq!(structure(sound), Vec::<String>::new());
    assert_eq!(literal_words("<p>⟦Šáṽé⟧ here <bdi>Oku</bdi> 7.40</p><p aria-label='a label'>⟦x⟦y⟧z⟧</p>"), ["here", "a label"]);
}
