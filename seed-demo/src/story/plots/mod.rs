//! Stories that are there to show something: each names the follow-ups it leaves open, how others were closed, and the lists it is on.

mod closed;
mod corrected;
mod danger;
mod data;
mod endings;
mod feeding;
mod growth;
pub mod homes;

use domain::rule::CloseReason;
use domain::rule::RuleId;

use crate::story::telling::Telling;

/// A story with a purpose.
pub struct Plot {
    /// What it is called.
    pub name: &'static str,
    /// Rules with an open follow-up today; others may be open too.
    pub open: &'static [RuleId],
    /// Follow-ups no longer open, and why; others may be too.
    pub closed: &'static [(RuleId, CloseReason)],
    /// Visit lists that it is on.
    pub lists: &'static [RuleId],
    /// How it goes.
    pub tell: fn(&mut Telling),
}

/// One child in so many has a plot until all have been told.
const EVERY: u32 = 3;
/// In larger demos than the usual one plots come back, one child in so many.
const AGAIN_EVERY: u32 = 25;
const AGAIN_FROM: u32 = 240;

/// All plots.
pub fn all() -> impl Iterator<Item = &'static Plot> {
    CHAPTERS.iter().copied().flatten()
}

/// So many children show every plot.
#[must_use]
pub fn children_for_all() -> u32 {
    u32::try_from(all().count()).unwrap_or(u32::MAX).saturating_mul(EVERY)
}

const CHAPTERS: [&[Plot]; 8] =
    [danger::PLOTS, growth::PLOTS, feeding::PLOTS, data::PLOTS, closed::PLOTS, endings::PLOTS, homes::PLOTS, corrected::PLOTS];

/// The number of the child with the next plot, and of the one before; none where plots come back, since there nothing is put right.
#[must_use]
pub fn neighbours(number: u32) -> Option<(u32, u32)> {
    (number < children_for_all()).then_some((number.saturating_add(EVERY), number.saturating_sub(EVERY)))
}

/// The plot of the child with this number, if it has one.
#[must_use]
pub fn of_number(number: u32) -> Option<&'static Plot> {
    let first_time = number.is_multiple_of(EVERY).then_some(number / EVERY);
    let again = (number >= AGAIN_FROM && number.is_multiple_of(AGAIN_EVERY)).then_some(number / AGAIN_EVERY);
    let count = children_for_all() / EVERY;
    let nth = first_time.filter(|&nth| nth < count).or(again.map(|nth| nth % count))?;
    all().nth(usize::try_from(nth).ok()?)
}

/// How many times all plots were told before this one: in larger demos they come back.
#[must_use]
pub fn round_of(number: u32) -> u32 {
    if number < AGAIN_FROM { 0 } else { 1 + number / AGAIN_EVERY / (children_for_all() / EVERY) }
}
