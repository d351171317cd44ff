//! Who may do what, as a pure table. Which children somebody may see (the scope) is decided in the query.

use crate::code::codes;

codes! {
    /// What somebody is in the programme.
    Role, "role" {
        /// Outreach worker: own caseload, and that of a colleague while covering.
        Worker => "worker",
        /// Supervisor: the areas or workers assigned.
        Supervisor => "supervisor",
        /// Programme manager: aggregates only, never a child.
        Manager => "manager",
        /// Administrator: people, areas, settings; never a child.
        Administrator => "administrator",
    }
}

codes! {
    /// Something a person may be allowed to do.
    Action, "action" {
        /// See children in scope, their visits and follow-ups.
        SeeChildren => "see_children",
        /// Register a child.
        Register => "register",
        /// Record or correct a visit.
        RecordVisit => "record_visit",
        /// Work the late follow-ups of a team: close with a reason, move children.
        Supervise => "supervise",
        /// Read monthly aggregates.
        ReadReports => "read_reports",
        /// See how the follow-up list would change under another protocol.
        RehearseProtocol => "rehearse_protocol",
        /// Manage people, areas and settings; adopt a protocol.
        Administer => "administer",
    }
}

/// Whether the role may do this at all.
#[must_use]
pub const fn may(role: Role, action: Action) -> bool {
    use Action::{Administer, ReadReports, RecordVisit, Register, RehearseProtocol, SeeChildren, Supervise};
    match role {
        Role::Worker => matches!(action, SeeChildren | Register | RecordVisit),
        Role::Supervisor => matches!(action, SeeChildren | Register | RecordVisit | Supervise | ReadReports | RehearseProtocol),
        Role::Manager => matches!(action, ReadReports),
        Role::Administrator => matches!(action, RehearseProtocol | Administer),
    }
}
