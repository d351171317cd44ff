//! The history of the database schema, oldest first. A step that has been released never changes; a new one is added.

use sea_orm_migration::MigrationTrait;
use sea_orm_migration::MigratorTrait;

mod m20261125_000001_create_people;
mod m20261125_000002_create_children;
mod m20261125_000003_create_visits;
mod m20261125_000004_create_follow_ups;
mod m20261125_000005_create_child_summaries;
mod m20261125_000006_create_protocols_and_audit;
mod m20261125_000011_add_reason_of_adoption;
mod m20261125_000012_create_record_corrections;
mod m20261125_000013_create_talks_and_households;
mod m20261125_000017_hold_in_summaries;
mod m20261128_000018_create_desk_notes;
mod m20261128_000021_create_releases;
mod m20261128_000022_walk_to_areas;
mod m20261201_000023_recipes_of_visits;
mod words;

/// Every step of the schema.
pub struct Migrator;

impl MigratorTrait for Migrator {
    fn migrations() -> Vec<Box<dyn MigrationTrait>> {
        vec![
            Box::new(m20261125_000001_create_people::Migration),
            Box::new(m20261125_000002_create_children::Migration),
            Box::new(m20261125_000003_create_visits::Migration),
            Box::new(m20261125_000004_create_follow_ups::Migration),
            Box::new(m20261125_000005_create_child_summaries::Migration),
            Box::new(m20261125_000006_create_protocols_and_audit::Migration),
            Box::new(m20261125_000011_add_reason_of_adoption::Migration),
            Box::new(m20261125_000012_create_record_corrections::Migration),
            Box::new(m20261125_000013_create_talks_and_households::Migration),
            Box::new(m20261125_000017_hold_in_summaries::Migration),
            Box::new(m20261128_000018_create_desk_notes::Migration),
            Box::new(m20261128_000021_create_releases::Migration),
            Box::new(m20261128_000022_walk_to_areas::Migration),
            Box::new(m20261201_000023_recipes_of_visits::Migration),
        ]
    }
}
