//! How many children with ten visits are judged in a second, and how much memory that takes.
//!
//! Run with `cargo bench -p spoonround-domain --bench assess`. The rates are children a second on one core; a line of `alloc` is the count and the bytes
//! asked for while all children of the case are judged.

mod children;
#[path = "../../src/files/faults.rs"]
#[allow(dead_code, reason = "only the shipped protocol is read here")]
mod faults;
#[path = "../../src/files/protocol_toml/mod.rs"]
#[allow(dead_code, unused_imports, reason = "only the shipped protocol is read here")]
mod protocol_toml;
#[path = "../../src/files/saying.rs"]
#[allow(dead_code, reason = "only the shipped protocol is read here")]
mod saying;
#[path = "../../src/files/toml_reader.rs"]
#[allow(dead_code, reason = "only the shipped protocol is read here")]
mod toml_reader;

use children::Story;
use divan::AllocProfiler;
use divan::Bencher;
use divan::black_box;
use divan::counter::ItemsCount;
use domain::assess::assess;
use domain::protocol::Protocols;
use protocol_toml::default_protocol;

#[global_allocator]
static ALLOC: AllocProfiler = AllocProfiler::system();

/// Few enough that one pass is over before others take the core away.
const CHILDREN: u64 = 100;

fn main() {
    divan::main();
}

fn judge_all(bencher: Bencher<'_, '_>, stories: &[Story]) {
    let protocols = Protocols::one(default_protocol().clone());
    bencher.counter(ItemsCount::new(stories.len())).bench_local(|| {
        for story in stories {
            black_box(assess(black_box(&story.child), black_box(&story.visits), &protocols, story.as_of));
        }
    });
}

/// Different children: some thrive, some falter; foods, reactions, outcomes and referrals among them.
#[divan::bench(sample_count = 1000)]
fn ten_visits_of_a_hundred_children(bencher: Bencher<'_, '_>) {
    judge_all(bencher, &children::many(CHILDREN));
}

/// Of these the child with the fewest and the one with the most follow-ups.
#[divan::bench(args = ["fewest", "most"], sample_count = 1000)]
fn ten_visits_of_one_child(bencher: Bencher<'_, '_>, follow_ups: &str) {
    let protocols = Protocols::one(default_protocol().clone());
    let mut stories = children::many(CHILDREN);
    stories.sort_by_key(|story| assess(&story.child, &story.visits, &protocols, story.as_of).follow_ups.len());
    let place = if follow_ups == "fewest" { 0 } else { stories.len() - 1 };
    judge_all(bencher, &stories[place..=place]);
}
