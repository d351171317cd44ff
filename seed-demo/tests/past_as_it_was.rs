//! A past day is worked out anew from the visits; today is kept in lists. Of the same day both tell the same: asked today, and
//! asked on the morrow about it.

mod made;

use std::sync::Arc;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::role::Role;
use spoonround::service::Actor;
use spoonround::service::Context;
use spoonround::service::round;
use spoonround::service::round::Asked;
use spoonround::service::supervise;
use spoonround::service::supervise::Sieve;
use spoonround::service::supervise::waiting;
use spoonround::service::supervise::waiting::Part;
use spoonround::store::people;

use crate::made::demo;
use crate::made::noon;

const CHILDREN: u32 = 600;

/// All pages of a list.
async fn all<L, K: Clone>(mut page: impl AsyncFnMut(Option<K>) -> Part<L, K>) -> Vec<L> {
    let (mut lines, mut after) = (Vec::new(), None);
    loop {
        let part = page(after).await;
        lines.extend(part.lines);
        match part.next {
            Some(key) => after = Some(key),
            None => return lines,
        }
    }
}

#[tokio::test]
async fn the_morrow_tells_of_today_what_today_tells() {
    let today: NaiveDate = "2026-11-25".parse().expect("a day");
    let folder = tempfile::tempdir().expect("a folder");
    let (db, adopted, cast) = demo(&folder.path().join("demo.db"), CHILDREN, today).await;
    let protocols = Arc::new(adopted);
    let as_on = async |sign_in_name: &str, role, day| {
        let person = people::by_sign_in_name(db.direct(), sign_in_name).await.expect("readable").expect("of the demo");
        let actor = Actor { person: person.id, name: person.full_name, role };
        Context { db: db.clone(), protocols: Arc::clone(&protocols), actor, today: day, now: noon(today) }
    };
    let mut lines = [0; 5];
    for person in &cast.supervisors {
        let now = as_on(&person.sign_in_name, Role::Supervisor, today).await;
        let then = as_on(&person.sign_in_name, Role::Supervisor, add_days(today, 1)).await;
        let urgent = async |ctx: &Context| {
            all(async |after: Option<String>| waiting::urgent(ctx, &Sieve::default(), after.as_deref(), today).await.expect("read")).await
        };
        let unseen = async |ctx: &Context| all(async |after| waiting::unseen(ctx, after.as_ref(), today).await.expect("read")).await;
        let held = async |ctx: &Context| all(async |after| waiting::held(ctx, after.as_ref(), today).await.expect("read")).await;
        let late = async |ctx: &Context| {
            let sieve = Sieve::default();
            all(async |after| {
                let desk = supervise::open(ctx, &sieve, after.as_ref(), today).await.expect("read");
                Part { lines: desk.late, next: desk.next }
            })
            .await
        };
        let found = [urgent(&now).await.len(), unseen(&now).await.len(), held(&now).await.len(), late(&now).await.len()];
        lines.iter_mut().zip(found).for_each(|(all, these)| *all += these);
        assert_eq!(urgent(&now).await, urgent(&then).await);
        assert_eq!(unseen(&now).await, unseen(&then).await);
        assert_eq!(held(&now).await, held(&then).await);
        assert_eq!(late(&now).await, late(&then).await);
        let in_all = async |ctx: &Context| supervise::open(ctx, &Sieve::default(), None, today).await.expect("read").late_in_all();
        assert_eq!(in_all(&now).await, in_all(&then).await);
    }
    for person in &cast.workers {
        let now = round::round(&as_on(&person.sign_in_name, Role::Worker, today).await, &Asked::default(), today).await.expect("read");
        let morrow = as_on(&person.sign_in_name, Role::Worker, add_days(today, 1)).await;
        let then = round::round(&morrow, &Asked::default(), today).await.expect("read");
        let homes =
            |round: &round::Round| -> Vec<_> { round.homes.iter().map(|home| (home.row.code.clone(), home.errand.clone())).collect() };
        assert_eq!(homes(&now), homes(&then), "{}", person.sign_in_name);
        lines[4] += now.homes.len();
    }
    // Lists with nothing on them would be alike whatever was done.
    assert!(lines.iter().all(|count| *count > 0), "{lines:?}");
}
