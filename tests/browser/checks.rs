//! The checks that every page is put to find what they are for: each defect is planted in a page of the program and must be named.

use std::rc::Rc;

use browser_tests::driver::Driver;
use browser_tests::look;
use browser_tests::page::Person;
use browser_tests::page::Seen;
use browser_tests::site::Site;
use browser_tests::site::built_in;

#[tokio::test]
async fn planted_defects_are_found_and_a_good_page_has_none() {
    let site = Site::serve(built_in);
    let driver = Driver::start();
    let person = Person::new(driver.window().await, &site.base, "checks", &Rc::default()).await;
    person.open("/sign-in").await;
    let axe = look::axe_source();
    assert_eq!(look::faults(person.window(), &axe).await, Vec::<String>::new());
    // Styles are set through the style sheet interface: the pages' own policy refuses those written into the markup.
    for (what, script, expected) in [
        ("too wide", "add('div').style.width = '2000px'", "scrolls sideways: 20"),
        ("too small", "add('button').style.cssText = 'height: 20px; min-height: 0; padding: 0'", "20 px: <button"),
        ("no label", "document.querySelector('label[for=name]').remove()", "label: Form elements must have labels"),
        ("pale", "document.querySelector('.lede').style.color = '#bbb'", "1280x800-light: color-contrast:"),
        ("pale in the sun", "document.querySelector('.lede').style.color = '#666'", "360x640-light: color-contrast-enhanced:"),
        ("too wide at 200 %", "add('div').style.width = '700px'", "640x400-light: scrolls sideways: 7"),
        (
            "pale in the dark only",
            "const sheet = new CSSStyleSheet(); document.adoptedStyleSheets = [sheet];
             sheet.replaceSync('@media (prefers-color-scheme: dark) { .lede { color: #333 !important } }')",
            "1280x800-dark: color-contrast",
        ),
        ("two headings", "add('h1')", "2 headings of the first rank"),
        ("same id twice", "add('p').id = 'name'", "two elements are called name"),
        ("another server", "add('img').src = '//other.invalid/a.png'", "another server: "),
        ("a script", "add('script')", "the page has a script"),
        ("not the phone's width", "document.querySelector('meta[name=viewport]').remove()", "does not take the phone's width"),
    ] {
        person.open("/sign-in").await;
        let add = "const add = (tag) => { const e = document.createElement(tag); e.textContent = 'planted'; return document.querySelector('main').appendChild(e) }";
        person.window().execute(format!("{add}; {script}"), Vec::new()).await.expect("planted");
        let faults = look::faults(person.window(), &axe).await;
        assert!(faults.iter().any(|fault| fault.contains(expected)), "{what} is not found; found: {faults:#?}");
    }
}

#[tokio::test]
async fn what_spoils_a_sheet_is_found() {
    let site = Site::serve(built_in);
    let driver = Driver::start();
    let person = Person::new(driver.window().await, &site.base, "checks", &Rc::default()).await;
    for (what, style, expected) in [
        ("pale", "@media print { .lede { color: #999 !important } }", "pale on paper"),
        ("small", "@media print { .lede { font-size: 6px !important } }", "too small on paper"),
        ("dark", "@media print { .lede { background: #4c0f40 !important; color: #000 !important } }", "a dark ground on paper"),
        ("wide", "@media print { .lede { inline-size: 900px !important } }", "wider than the sheet"),
        ("a form", "", "nobody can press it on paper"),
    ] {
        person.open("/sign-in").await;
        let plant = format!("const sheet = new CSSStyleSheet(); document.adoptedStyleSheets = [sheet]; sheet.replaceSync('{style}')");
        person.window().execute(plant, Vec::new()).await.expect("planted");
        let faults = look::paper_faults(person.window(), "checks-paper").await;
        assert!(faults.iter().any(|fault| fault.contains(expected)), "{what} is not found; found: {faults:#?}");
    }
}

#[tokio::test]
async fn pages_run_no_script_in_this_browser() {
    let driver = Driver::start();
    let window = driver.window().await;
    window.goto("data:text/html,<title>off</title><script>document.title='on'</script>").await.expect("opened");
    assert_eq!(window.title().await.expect("a title"), "off");
}

#[tokio::test]
async fn a_walk_tells_all_faults_at_its_end() {
    let seen = Rc::new(Seen::default());
    let told = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| seen.all_well(1)));
    assert!(told.is_err(), "a walk past no page is no walk");
}
