//! Use cases, one file each: they decide who may, load, ask the domain, and write in one transaction.
//!
//! They know no request and no page; the day, the instant and the person are given to them.

pub mod adopt_protocol;
pub mod agreed_steps;
pub mod areas;
pub mod audit;
pub mod bulk;
pub mod caseload;
pub mod change_password;
pub mod change_settings;
pub mod change_status;
pub mod child_file;
pub mod child_visits;
pub mod choices;
pub mod close_follow_up;
pub mod corrections;
pub mod desk_notes;
pub mod due_list;
pub mod find;
pub mod first_user;
pub mod food_like;
pub mod household;
pub mod in_step;
pub mod meals;
pub mod move_child;
pub mod name_key;
pub mod once;
pub mod passwords;
mod past_day;
pub mod people;
pub mod protocols;
pub mod quality;
pub mod reassess;
pub mod recheck;
pub mod record_visit;
pub mod referrals;
pub mod register_child;
pub mod rehearse;
pub mod report;
pub mod round;
pub mod settings;
pub mod sign_in;
pub mod supervise;
pub mod team;
pub mod team_pictures;
pub mod tick;
pub mod why;

use std::sync::Arc;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::fault::Faults;
use domain::ids::PersonId;
use domain::protocol::Protocols;
use domain::role::Action;
use domain::role::Role;
use domain::role::may;

use crate::store::Db;
use crate::store::StoreError;

/// Somebody signed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Actor {
    /// Who.
    pub person: PersonId,
    /// The name shown to colleagues.
    pub name: String,
    /// What they are.
    pub role: Role,
}

/// What every use case needs, given first.
#[derive(Clone)]
pub struct Context {
    /// The database.
    pub db: Db,
    /// The adopted protocols by date of effect.
    pub protocols: Arc<Protocols>,
    /// Who asks.
    pub actor: Actor,
    /// The programme's day.
    pub today: NaiveDate,
    /// The instant, whole seconds.
    pub now: DateTime<Utc>,
}

impl Context {
    /// Refuses what the actor's role may never do.
    ///
    /// # Errors
    /// [`Refusal::Forbidden`].
    pub fn needs(&self, action: Action) -> Result<(), Refusal> {
        if may(self.actor.role, action) { Ok(()) } else { Err(Refusal::Forbidden) }
    }
}

/// Why a use case did not do what was asked.
#[derive(Debug, thiserror::Error)]
pub enum Refusal {
    /// There is no such thing in this person's scope; whether it exists elsewhere is not said.
    #[error("not found in scope")]
    NotFound,
    /// The role may never do this.
    #[error("not allowed for the role")]
    Forbidden,
    /// The input has faults.
    #[error("invalid input")]
    Invalid(Faults),
    /// The same submission key came with other content, or the thing was changed meanwhile.
    #[error("conflict; see {0}")]
    Conflict(String),
    /// Our own trouble, for the log.
    #[error("{0}")]
    Broken(String),
    /// The database refused.
    #[error("store")]
    Store(#[from] StoreError),
}
