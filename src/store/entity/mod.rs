//! One file a table: the columns as the ORM reads and writes them. Nothing outside `store` sees these.

pub mod area;
pub mod audit_entry;
pub mod child;
pub mod child_summary;
pub mod cover;
pub mod follow_up;
pub mod follow_up_event;
pub mod household_member;
pub mod person;
pub mod placement;
pub mod protocol;
pub mod record_correction;
pub mod session;
pub mod setting;
pub mod sign_in_throttle;
pub mod status_change;
pub mod submission;
pub mod supervised_area;
pub mod supervised_worker;
pub mod visit;
pub mod visit_food;
pub mod visit_line;
pub mod visit_outcome;
pub mod visit_step;
pub mod visit_step_told;
pub mod visit_version;
