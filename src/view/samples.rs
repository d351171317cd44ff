//! Sample pages that use every part: checked here, and left under `target/look` to be looked at. All names are invented.

use chrono::NaiveDate;
use domain::child::Sex;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::food::FoodGroup;
use domain::food::Texture;
use domain::growth::Indicator;
use domain::role::Role;
use domain::rule::Class;
use maud::Markup;
use maud::Render;
use maud::html;

use crate::i18n::Lang;
use crate::i18n::Words;
use crate::i18n::codes;
use crate::i18n::format;
use crate::i18n::words;
use crate::view::chart;
use crate::view::checks;
use crate::view::filled::Filled;
use crate::view::icons;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::layout::ProtocolLine;
use crate::view::layout::Shell;
use crate::view::parts::*;
use crate::view::ribbon;
use crate::view::sign_in;
use crate::view::trouble;

fn shell<'a>(w: &'a Words, title: &'a str, role: Option<Role>) -> Shell<'a> {
    let mut shell = Shell::new(w, title);
    shell.role = role;
    shell.person = role.map(|_| "⟦Mireni⟧");
    shell.token = "00".to_owned();
    shell.emergency_number = Some("440");
    shell.protocol = Some(ProtocolLine { id: "default-6-23", version: "1.0.0", approved_by: None, local_name: None });
    shell
}

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a date")
}

fn home(w: &Words, class: Option<Class>, name: &str, months: u32, why: &str) -> Markup {
    let (shape, css, word) = match class {
        Some(class) => (Icon::of_class(class), list_css(class), codes::class_word(w, class)),
        None => (Icon::Home, "", w.say("class-visit")),
    };
    html! {
        li {
            svg.way aria-hidden="true" { use href="#way" width="100%" height="100%" {} }
            span class={ "dot " (css) } { (icon(shape)) }
            p class={ "when " (css) } { (word) }
            a.home href="/child" { bdi { (name) } } " "
            span.quiet { (w.say_with("common-months", crate::args!["count" => months])) }
            p.why { (why) }
            p.where { bdi { "Sanga Point" } }
            (call_link("+00 440", "call", &html! { span.vh { (w.say_with("common-call-number", crate::args!["number" => "440"])) } }))
        }
    }
}

fn list_css(class: Class) -> &'static str {
    crate::view::pieces::list::class_css(class)
}

fn place(name: &str) -> Markup {
    html! {
        li.place {
            svg.way aria-hidden="true" { use href="#way" width="100%" height="100%" {} }
            span.dot { (icon(Icon::Round)) }
            bdi { (name) }
        }
    }
}

fn round(w: &Words) -> Markup {
    let why = w.say("common-caution-unsure");
    let body = html! {
        h1 { (format::weekday(w, day("2025-11-20"))) }
        p.lede { (w.say_with("common-homes", crate::args!["count" => 7])) }
        div.desk {
            ol.path {
                (home(w, Some(Class::Now), "Lomi", 7, &why))
                (home(w, Some(Class::Today), "Sela", 10, &why))
                (home(w, Some(Class::TwoDays), "Pemba", 12, &why))
                (place("Ulopi"))
                (home(w, Some(Class::Week), "Fanu", 10, &why))
                (home(w, Some(Class::Fortnight), "Tavi", 9, &why))
                (place("Sanga Point"))
                (home(w, Some(Class::Month), "Oku", 11, &why))
                (home(w, None, "Neruka", 8, &why))
            }
            div.beside {
                h2 { (w.say("common-nav-find")) }
                form.sieve method="get" action="/find" {
                    div { (Field::search("q", w.say("common-nav-find")).render()) }
                    button type="submit" { (w.say("common-show")) }
                }
                (acts(&link_button("/print", &html! { (w.say("common-print")) }, true)))
            }
        }
    };
    let title = w.say("common-nav-round");
    let mut shell = shell(w, &title, Some(Role::Worker));
    shell.here = Some(Nav::Round);
    shell.wide = true;
    layout::page(&shell, body)
}

fn growth(w: &Words) -> chart::GrowthChart<'_> {
    let born = day("2024-12-01");
    let points = [
        (0, Some(2900_i64)),
        (35, Some(4250)),
        (83, Some(5700)),
        (102, Some(6200)),
        (152, None),
        (180, Some(6900)),
        (318, Some(7500)),
        (354, Some(7400)),
    ];
    chart::GrowthChart {
        w,
        id: "growth",
        title: codes::indicator(w, Indicator::Waz),
        finding: w.say("common-chart-not-measured"),
        unit: "kg".to_owned(),
        value_name: w.say("common-chart-value"),
        points: points
            .iter()
            .map(|(days, grams)| {
                let on = domain::calendar::add_days(born, *days);
                chart::Point {
                    age_days: *days,
                    value: grams.map(|g| f64::from(i32::try_from(g).unwrap_or(0)) / 1000.0),
                    error: grams.map(|_| 0.1),
                    age: format::age(w, born, on),
                    date: format::day_short(w, on),
                    said: grams.map_or_else(String::new, |g| format::kg(w, g)),
                }
            })
            .collect(),
        bars: Some(w.say_with("scale-bars-weight", crate::args!["error" => format::g(w, 100)])),
        curves: chart::curves(Indicator::Waz, Sex::Male, chart::axis_months(354)),
        closer: None,
    }
}

fn child(w: &Words) -> Markup {
    let months = ["0–5", "6–7", "8", "9–11", "12–23"].map(str::to_owned);
    let spoon = ribbon::Ribbon { w, id: "spoon", today: Texture::new(3), months, stage: codes::stage(w, "lumps_9_11") };
    let follow_ups: Vec<Markup> = [Class::Today, Class::Fortnight, Class::Month]
        .iter()
        .map(|class| {
            html! {
                p { (cls(w, *class)) }
                (split(&html! { p { (w.say("common-caution-unsure")) } }, &html! { a.link href="/why" { (w.say("common-why")) } }))
            }
        })
        .collect();
    let foods: Vec<Markup> = ["not_yet", "trying", "accepted", "refused", "on_hold"]
        .iter()
        .map(|state| html! { div.split { (icon(Icon::of_food_state(state))) span { bdi { "Groundnut paste" } } span.state { (codes::food_state(w, state)) } } })
        .collect();
    let title = w.say("common-nav-find");
    let body = html! {
        (back(w, "/round", &w.say("common-nav-round")))
        h1 { (name("Oku")) }
        p.lede.quiet { (codes::sex(w, Sex::Male)) ", " (format::age_exact(w, day("2024-12-01"), day("2025-11-20"))) " · " (name("Ulopi")) " · " span.ltr { "7K2Q-9D" } }
        (note(NoteWeight::Stop, Icon::Today, &html! { h2 { (codes::class_word(w, Class::Today)) } p { (w.say("common-caution-unsure")) } a href="/why" { (w.say("common-why")) } }))
        (acts(&html! { (link_button("/visit", &html! { (w.say("common-continue")) }, false)) (call_link("440", "do second", &html! { (w.say_with("common-call-number", crate::args!["number" => "440"])) })) }))
        div.people {
            div {
                h2 { (w.say("theme-growth")) }
                (growth(w))
                h2 { (w.say("theme-feeding")) }
                (spoon)
                ul.rows.foods { @for food in &foods { li { (food) } } }
            }
            div {
                h2 { (w.say("theme-visit")) }
                (rows(&follow_ups))
                ul.tell {
                    li { (ribbon::bowl_of(w, "b1", Texture::ALL[2])) p { (codes::texture(w, Texture::ALL[2])) } }
                    li { (ribbon::bowls(w, 2, 1)) p { (w.say_with("common-bowls", crate::args!["count" => 2])) } }
                    li { (ribbon::bowl_share(w, "b2", 0.5)) p { (w.say("common-caution-unsure")) } }
                    li { (Icon::of_group(FoodGroup::Flesh).draw("")) p { (codes::food_group(w, FoodGroup::Flesh)) } }
                }
                (details(&w.say("common-more"), false, &facts(&[(w.say("evidence-muac"), html! { (format::mm(w, 113)) }), (w.say("evidence-date"), html! { (format::day(w, day("2025-11-20"))) })])))
            }
        }
    };
    let mut shell = shell(w, &title, Some(Role::Worker));
    shell.wide = true;
    shell.as_of = Some(day("2025-11-20"));
    layout::page(&shell, body)
}

fn filled_form(w: &Words) -> Markup {
    let filled =
        Filled::default().with("weight", "12.4").with("arm", "13.4").with("born_day", "31").with("sign", "cannot_feed").with("area", "2");
    let mut faults = Faults::new();
    faults.add("arm", Fault::Outside { least: "70".to_owned(), most: "220".to_owned(), unit: "mm" });
    faults.add("born", Fault::NotADate);
    faults.add("group", Fault::Missing);
    faults.add("area", Fault::UnknownChoice);
    faults.add("note", Fault::TooLong { most: 500 });
    let ask = Ask::new(w, &filled, &faults);
    let last = |value: &str| (w.say("common-last-time"), value.to_owned());
    let unusual = Unusual {
        heading: w.say("common-look-again"),
        text: w.say("rule-data-weight-jump-do"),
        tick: Some(("confirmed".to_owned(), w.say("common-yes"))),
        ticked: false,
    };
    let groups = FoodGroup::ALL.iter().fold(ask.many_of("group", "evidence-groups").tiles(), |choice, group| {
        choice.option_with(group.code(), codes::food_group(w, *group), None, Some(Icon::of_group(*group)))
    });
    let (last_heading, last_weight) = last("7.00 kg, 1 Oct");
    let measure = html! {
        (ask.decimal("weight", "evidence-weight").unit("kg").last(last_heading, last_weight).unusual(Some(unusual)))
        (ask.decimal("length", "evidence-length").hint(w.say("common-optional")).unit("cm"))
        (ask.whole("arm", "evidence-muac").unit("mm").last(w.say("common-last-time"), "131 mm"))
        (ask.yes_no("oedema", "rule-oedema-both-feet-name"))
    };
    let rest = html! {
        (groups)
        (Texture::ALL.iter().fold(ask.one_of("texture", "evidence-texture").rows().last(w.say("common-last-time")), |c, t| {
            c.option_with(t.level().to_string(), codes::texture(w, *t), Some(codes::texture_test(w, *t)), None)
        }))
        (ask.many_of("sign", "theme-danger").rows().option("cannot_feed", w.say("danger-sign-cannot-feed")).option("none", w.say("common-none-of-these")))
        (ask.day("born", "common-chart-date").hint(w.say("common-optional")))
        (ask.select("area", "common-nav-areas").option("", w.say("common-choose")).option("2", w.say("common-nav-areas")))
        (ask.phone("phone", "contact-phone"))
        (ask.text_area("note", "common-more").rows(2))
    };
    let label = |name: &str| {
        w.say(match name {
            "arm" => "evidence-muac",
            "group" => "evidence-groups",
            "area" => "common-nav-areas",
            "note" => "common-more",
            _ => "common-chart-date",
        })
    };
    let title = not_saved_title(w, &w.say("class-visit"));
    let body = html! {
        (back(w, "/round", &w.say("common-nav-round")))
        h1 { (w.say("class-visit")) }
        (summary_of(w, &faults, &label))
        p.jump { a href="#signs" { (w.say("theme-danger")) } }
        (form("/visit", "t", Some("k"), &html! {
            (part("measure", &w.say("theme-growth"), &measure))
            (part("signs", &w.say("theme-feeding"), &rest))
            (acts(&button(&w.say("common-save"), false)))
        }))
    };
    let mut shell = shell(w, &title, Some(Role::Worker));
    shell.without_reach = true;
    layout::page(&shell, body)
}

fn emergency(w: &Words) -> Markup {
    let title = w.say("class-now");
    let body = html! {
        (alert(&w.say("class-now"), &html! { (w.say("common-caution-unsure")) },
            &call_link("440", "dial", &html! { (w.say_with("common-call-number", crate::args!["number" => "440"])) })))
        (steps(&[html! { b { (w.say("common-call-local")) } " " (w.say("common-caution-unsure")) }, html! { (w.say("common-caution-7")) }]))
    };
    let mut shell = shell(w, &title, Some(Role::Worker));
    shell.urgent = true;
    layout::page(&shell, body)
}

fn report(w: &Words) -> Markup {
    let title = w.say("common-nav-reports");
    let shape = icon(Icon::of_class(Class::Today));
    let number = |n: &str| Cell::number(n);
    let grid = Table::scrolling(w.say("common-nav-reports"))
        .column(w.say("common-nav-areas"), false)
        .column(w.say("theme-visit"), true)
        .shape_column(&shape, codes::class_word(w, Class::Today))
        .row(vec![Cell::of(name("Mbiro Hill")), number("71"), number("0")])
        .row(vec![Cell::of(name("Ulopi")), Cell::kept("<5"), number("12")])
        .foot(vec![Cell::text(&w.say("common-more")), number("78"), Cell::kept("s")]);
    let folding = Table::folding(w.say("common-nav-people"))
        .column(w.say("sign-in-name"), false)
        .column(w.say("common-you-nav"), false)
        .column(w.say("evidence-days"), true)
        .row(vec![Cell::of(name("Tamsi")), Cell::text(&codes::role(w, Role::Worker)), number("3")])
        .row(vec![Cell::of(name("Olani")), Cell::text(&codes::role(w, Role::Supervisor)), number("0")]);
    let body = html! {
        h1 { (w.say("common-nav-reports")) }
        p.turn { a.link href="/reports?month=2025-10" { (format::month(w, domain::calendar::Month::of(day("2025-10-01")))) } a.link href="/reports?month=2025-12" { (w.say("common-more")) } }
        div.pair { div { (grid) } div { (folding) } }
        h2 { (w.say("common-password")) }
        p.onetime.ltr { "7K2Q 9DMX" }
    };
    let mut shell = shell(w, &title, Some(Role::Supervisor));
    shell.here = Some(Nav::Reports);
    shell.wide = true;
    shell.demo = true;
    let saved = w.say("common-saved");
    shell.flash = Some(&saved);
    layout::page(&shell, body)
}

fn doors(w: &Words) -> Vec<(&'static str, Markup)> {
    let plain = |title: &str, body: Markup| layout::page(&shell(w, title, None), body);
    let entry = |fault, wait, carried: Option<&'static str>| sign_in::SignInPage {
        name: "mireni",
        fault,
        wait_seconds: wait,
        next: "/",
        written: carried.map_or(sign_in::Written::Nothing, sign_in::Written::Carried),
    };
    let title = w.say("sign-in-title");
    let mut short = Faults::new();
    short.add("new", Fault::TooShort { least: 10 });
    let kept = Filled::default().with("weight", "7.4").with("token", "old");
    let broken = trouble::broken(w, "7a2c90de");
    vec![
        ("signin", plain(&title, sign_in::body(w, &entry(None, None, None), "t", "k"))),
        ("signin-fault", plain(&title, sign_in::body(w, &entry(Some(Fault::WrongSignIn), Some(8), Some("sealed")), "t", "k"))),
        ("password", plain(&title, sign_in::password_body(w, &short, false, "t", "k"))),
        ("carried", plain(&title, sign_in::carried_again(w, "/visit", &kept, "t"))),
        ("broken", plain(&broken.0, broken.1)),
    ]
}

fn troubles(w: &Words) -> Vec<(&'static str, Markup)> {
    let kept = Filled::default().with("weight", "7.4");
    [
        ("not-found", trouble::not_found(w)),
        ("not-allowed", trouble::not_allowed(w)),
        ("old-page", trouble::old_page(w, "/visit", &kept, "t")),
        ("foreign", trouble::foreign_form(w)),
        ("bad-form", trouble::bad_form(w)),
        ("bad-address", trouble::bad_address(w, "as_of")),
        ("too-large", trouble::too_large(w)),
        ("conflict", trouble::conflict(w, "/child/7K2Q")),
        ("busy", trouble::busy(w)),
    ]
    .map(|(file, (title, body))| (file, layout::page(&shell(w, &title, Some(Role::Worker)), body)))
    .into()
}

fn pages(w: &Words) -> Vec<(&'static str, Markup)> {
    let mut pages =
        vec![("round", round(w)), ("child", child(w)), ("form", filled_form(w)), ("emergency", emergency(w)), ("report", report(w))];
    pages.extend(doors(w));
    pages.extend(troubles(w));
    pages
}

#[test]
fn every_sample_page_is_sound() {
    let look = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("target/look");
    std::fs::create_dir_all(&look).expect("a folder to leave the pages in");
    for asset in layout::assets::all() {
        std::fs::write(look.join(&asset.name), asset.body).expect("a file");
    }
    for lang in [Lang::En, Lang::Fr] {
        for (file, page) in pages(words(lang)) {
            assert_eq!(checks::structure(&page.0), Vec::<String>::new(), "{file} in {}", lang.code());
            let local = page.0.replace("\"/assets/", "\"");
            std::fs::write(look.join(format!("{file}-{}.html", lang.code())), local).expect("a page");
        }
    }
}

#[test]
fn no_sample_page_has_words_that_were_never_given_to_a_translator() {
    for (file, page) in pages(words(Lang::Pseudo)) {
        let found: Vec<String> = checks::literal_words(&page.0)
            .into_iter()
            // Written into the samples themselves.
            .filter(|text| !["kg", "cm", "mm", "131 mm", "7.00 kg, 1 Oct"].contains(&text.as_str()))
            .collect();
        assert_eq!(found, Vec::<String>::new(), "{file}");
    }
}

#[test]
fn the_page_of_a_round_of_fifty_homes_is_light() {
    let w = words(Lang::En);
    let why = w.say("common-caution-unsure");
    let body = html! { h1 { "x" } ol.path { @for _ in 0..50 { (home(w, Some(Class::Week), "Fanu", 10, &why)) } } };
    let page = layout::page(&shell(w, "x", Some(Role::Worker)), body);
    // About 14 kB packed at most; text of this kind packs to a quarter or less.
    assert!(page.0.len() < 56 * 1024, "{} bytes", page.0.len());
    assert!(icons::sprite(&[&page]).0.len() < 4096);
}
