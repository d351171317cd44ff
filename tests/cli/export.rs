//! Reports written into a folder: all files, or none.

use std::path::Path;

use domain::role::Role;
use spoonround::store::Db;
use spoonround::store::StoreError;
use spoonround::store::areas;
use spoonround::store::children;
use spoonround::store::people;
use spoonround::store::testing::a_child;
use spoonround::store::testing::a_person;
use spoonround::store::testing::a_visit;
use spoonround::store::testing::an_area;
use spoonround::store::testing::day;
use spoonround::store::visits;

use crate::place::Place;

/// A programme with a child who was visited in March 2026.
async fn a_programme() -> Place {
    let place = Place::new();
    place.run(&["migrate"]).is(0);
    let db = Db::open(&place.path().join("data/spoonround.db").display().to_string()).await.expect("made above");
    let (area, worker) = (an_area(1), a_person(2, Role::Worker));
    let mut child = a_child(3, area.id, worker.id);
    child.facts.born = day("2026-01-05");
    child.facts.registered_on = day("2026-02-10");
    child.consent_on = day("2026-02-10");
    let visit = a_visit(4, &child, day("2026-03-12"));
    db.write::<_, StoreError, _>(async |tx| {
        areas::insert(tx, &area).await?;
        people::insert(tx, &worker).await?;
        children::insert(tx, &child).await?;
        visits::insert(tx, &visit).await
    })
    .await
    .expect("a programme");
    db.close().await.expect("closed");
    place
}

#[tokio::test]
async fn the_list_of_an_area_needs_the_code_of_one() {
    let place = a_programme().await;
    let code = an_area(1).code;
    place.run(&["due", "--area", &code]).is(0).prints("as_of,child_code,area,");
    place.run(&["due", "--area", "nope"]).is(2).complains(&format!("no area has the code \"nope\"; the codes are {code}"));
}

fn names(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).expect("a folder");
    let mut names: Vec<String> = entries.map(|entry| entry.expect("an entry").file_name().display().to_string()).collect();
    names.sort();
    names
}

#[tokio::test]
async fn a_month_is_written_and_each_file_is_named() {
    let place = a_programme().await;
    let ran = place.run(&["export", "2026-03", "--into", "out/march"]);
    let folder = place.path().join("out/march");
    let mut told: Vec<&str> = ran.is(0).out.lines().map(|line| line.strip_prefix("out/march/").expect("named with its folder")).collect();
    told.sort_unstable();
    assert_eq!(names(&folder), told, "what is named is what is there");
    for table in ["enrolment", "visits", "growth", "feeding", "followups", "reactions"] {
        let text = std::fs::read_to_string(folder.join(format!("{table}.csv"))).expect("written");
        assert!(text.starts_with("programme,period,area,") && text.contains(",2026-03,"), "{table}: {text}");
    }
    assert!(std::fs::read_to_string(folder.join("README.txt")).expect("written").contains("March 2026"));
    // Once more into the same folder: the same bytes in the same places.
    let before = std::fs::read(folder.join("visits.csv")).expect("written");
    assert_eq!(place.run(&["export", "2026-03", "--into", "out/march"]).is(0).out, ran.out);
    assert_eq!(std::fs::read(folder.join("visits.csv")).expect("written"), before);
    let ran = place.run(&["export", "2026-03", "--into", "packed", "--zip", "--language", "fr"]);
    let packed = names(&place.path().join("packed"));
    assert_eq!(packed.iter().map(|name| format!("packed/{name}\n")).collect::<String>(), ran.is(0).out);
    assert!(packed.len() == 1 && packed[0].ends_with("-fr.zip"), "{packed:?}");
    assert!(std::fs::read(place.path().join("packed").join(&packed[0])).expect("written").starts_with(b"PK"));
}

#[tokio::test]
async fn a_place_that_cannot_be_written_is_named_and_nothing_half_written_is_left() {
    let place = a_programme().await;
    place.file("plain", "in the way");
    for into in ["plain", "plain/march"] {
        let ran = place.run(&["export", "2026-03", "--into", into]);
        ran.is(2).complains(&format!("{into}: plain is a file, not a folder; check that")).complains("name another folder");
        assert_eq!((ran.out.as_str(), ran.err.lines().count()), ("", 1), "{ran:#?}");
    }
    assert_eq!(std::fs::read_to_string(place.path().join("plain")).expect("there"), "in the way");
    // Folders where files should be, one of the last: found before writing, or while it goes on.
    for in_the_way in ["visits.csv", "visits.csv.part"] {
        let folder = place.path().join("out");
        std::fs::create_dir_all(folder.join(in_the_way)).expect("a folder");
        std::fs::write(folder.join("growth.csv"), "of before").expect("written");
        let ran = place.run(&["export", "2026-03", "--into", "out"]);
        ran.is(2).complains("out/visits.csv: ").complains("name another folder");
        assert_eq!(ran.out, "", "no file is named that is not there");
        let mut left = ["growth.csv", in_the_way];
        left.sort_unstable();
        assert_eq!(names(&folder), left, "what was there, and nothing else");
        assert_eq!(std::fs::read_to_string(folder.join("growth.csv")).expect("there"), "of before");
        std::fs::remove_dir_all(&folder).expect("removed");
    }
}
