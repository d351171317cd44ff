//! Names of things: 128-bit keys made by whoever creates the row, so that offline work needs no server to name it.

macro_rules! ids {
    ($($(#[$meta:meta])* $name:ident),+ $(,)?) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u128);
    )+};
}

ids! {
    /// A child in the programme.
    ChildId,
    /// One contact with a child; stays the same through corrections.
    VisitId,
    /// A stored follow-up.
    FollowUpId,
    /// Somebody who signs in: worker, supervisor, manager or administrator.
    PersonId,
    /// A village or other area.
    AreaId,
    /// A home that several children share.
    HouseholdId,
    /// One filled form, however often it is sent.
    SubmissionKey,
}
