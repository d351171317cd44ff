//! What may be wrong with something typed. Data only: the words are added by the language room.

use chrono::NaiveDate;

/// One fault of one field. Numbers are in the unit the field shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// Nothing was given where something must be.
    Missing,
    /// Not a number.
    NotANumber,
    /// More decimals than the measure has.
    TooManyDecimals {
        /// The most it can have.
        most: u32,
    },
    /// Outside what can be saved: the wrong unit or a slip. Texts as shown, e.g. `0.5` and `25`, with the unit.
    Outside {
        /// Least value.
        least: String,
        /// Greatest value.
        most: String,
        /// Unit as written, e.g. `kg`.
        unit: &'static str,
    },
    /// Not a day that exists.
    NotADate,
    /// A day that has not come yet.
    InFuture,
    /// A day before the child was born.
    BeforeBirth,
    /// A day after the visit it is told at.
    AfterVisit,
    /// Older than the programme takes in.
    TooOld {
        /// The greatest age, in completed months.
        months: u32,
    },
    /// An answer that is not one of the choices.
    UnknownChoice,
    /// Not a food of the programme.
    UnknownFood {
        /// What was typed.
        typed: String,
        /// The food that may be meant, as it is called on the page.
        like: Option<String>,
    },
    /// Longer than can be kept.
    TooLong {
        /// The most characters.
        most: usize,
    },
    /// Shorter than needed.
    TooShort {
        /// The fewest characters.
        least: usize,
    },
    /// Consent was not recorded.
    NoConsent,
    /// The two new passwords differ.
    NotTheSame,
    /// A name or password that does not fit.
    WrongSignIn,
    /// The present password is wrong.
    WrongPassword,
    /// A password that is too easy to guess.
    EasyPassword,
    /// Somebody else has this already.
    Taken,
    /// Not a code of this programme.
    UnknownCode,
    /// Nothing can be done while it is open for this reason.
    NeedsOutcome,
    /// Not small letters and digits only.
    PlainLetters,
    /// A last day before the first.
    BeforeStart,
    /// A last day that is over already.
    Over,
    /// Nobody else could manage people any more.
    LastAdministrator,
    /// Not a time zone known by name.
    UnknownTimeZone,
    /// Where it is already.
    NoChange,
    /// Already recorded as left.
    AlreadyLeft,
    /// For a supervisor to record.
    SupervisorOnly,
    /// A visit after the child's death.
    AfterDeath,
    /// Something that has to be looked at before this is done.
    LookFirst,
    /// No child of a list was ticked.
    NoChild,
    /// Somebody whose last day in the programme is over.
    HasLeft {
        /// Who.
        name: String,
        /// The last day.
        last: NaiveDate,
    },
    /// Somebody whose last day comes before these days are over.
    LeavesBefore {
        /// Who.
        name: String,
        /// The last day.
        last: NaiveDate,
    },
    /// Somebody who is away on some of these days.
    IsAway {
        /// Who.
        name: String,
        /// First and last day away.
        days: (NaiveDate, NaiveDate),
    },
    /// Somebody stands in on some of these days already.
    StoodIn {
        /// Who.
        name: String,
        /// First and last day of that.
        days: (NaiveDate, NaiveDate),
    },
}

impl Fault {
    /// The permanent code, e.g. for the words.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Missing => "missing",
            Self::NotANumber => "not-a-number",
            Self::TooManyDecimals { .. } => "too-many-decimals",
            Self::Outside { unit, .. } if unit.is_empty() => "outside-count",
            Self::Outside { .. } => "outside",
            Self::NotADate => "not-a-date",
            Self::InFuture => "in-future",
            Self::BeforeBirth => "before-birth",
            Self::AfterVisit => "after-visit",
            Self::TooOld { .. } => "too-old",
            Self::UnknownChoice => "unknown-choice",
            Self::UnknownFood { like: None, .. } => "unknown-food",
            Self::UnknownFood { like: Some(_), .. } => "unknown-food-like",
            Self::TooLong { .. } => "too-long",
            Self::TooShort { .. } => "too-short",
            Self::NoConsent => "no-consent",
            Self::NotTheSame => "not-the-same",
            Self::WrongSignIn => "wrong-sign-in",
            Self::WrongPassword => "wrong-password",
            Self::EasyPassword => "easy-password",
            Self::Taken => "taken",
            Self::UnknownCode => "unknown-code",
            Self::NeedsOutcome => "needs-outcome",
            Self::PlainLetters => "plain-letters",
            Self::BeforeStart => "before-start",
            Self::Over => "over",
            Self::LastAdministrator => "last-administrator",
            Self::UnknownTimeZone => "unknown-time-zone",
            Self::NoChange => "no-change",
            Self::AlreadyLeft => "already-left",
            Self::SupervisorOnly => "supervisor-only",
            Self::AfterDeath => "after-death",
            Self::LookFirst => "look-first",
            Self::NoChild => "no-child",
            Self::HasLeft { .. } => "has-left",
            Self::LeavesBefore { .. } => "leaves-before",
            Self::IsAway { .. } => "is-away",
            Self::StoodIn { .. } => "stood-in",
        }
    }
}

/// All faults of a form, in the order of its fields.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Faults(Vec<(String, Fault)>);

impl Faults {
    /// No fault yet.
    #[must_use]
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    /// A single fault.
    #[must_use]
    pub fn one(field: &str, fault: Fault) -> Self {
        Self(vec![(field.to_owned(), fault)])
    }

    /// Adds a fault of the field with this form name.
    pub fn add(&mut self, field: &str, fault: Fault) {
        self.0.push((field.to_owned(), fault));
    }

    /// Whether nothing is wrong.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The first fault of a field.
    #[must_use]
    pub fn of(&self, field: &str) -> Option<&Fault> {
        self.0.iter().find(|(name, _)| name == field).map(|(_, fault)| fault)
    }

    /// Every fault with its field.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &Fault)> {
        self.0.iter().map(|(name, fault)| (name.as_str(), fault))
    }

    /// The value if nothing is wrong, else the faults. `value` must be there when nothing is wrong.
    ///
    /// # Errors
    /// The faults; a missing value without a fault counts as one.
    pub fn or<T>(mut self, value: Option<T>) -> Result<T, Self> {
        match value {
            Some(value) if self.is_empty() => Ok(value),
            Some(_) => Err(self),
            None => {
                if self.is_empty() {
                    self.add("form", Fault::Missing);
                }
                Err(self)
            }
        }
    }
}
