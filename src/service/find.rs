//! Finding a child by a part of its name or by its code, among those the asker reaches.

use std::collections::BTreeMap;

use domain::child_code::ChildCode;
use domain::child_code::ChildCodeFault;
use domain::ids::HouseholdId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::child_file::scope;
use crate::service::name_key::folded;
use crate::service::name_key::skeleton;
use crate::store::children;
use crate::store::households;
use crate::store::households::Named;
use crate::store::lists;
use crate::store::lists::RoundRow;
use crate::store::lists::Sought;

/// Children on a page.
pub const PAGE: usize = 50;

/// Letters of a reduced name from which on it is sought.
const LEAST_SOUNDS: usize = 3;

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// Exactly the child with this code.
    One(Box<RoundRow>),
    /// A page of children by name.
    Page {
        /// The children.
        rows: Vec<RoundRow>,
        /// Name and code of the last one, when there are more.
        more: Option<(String, String)>,
        /// The active children of the homes that several of these share.
        named: BTreeMap<HouseholdId, Vec<Named>>,
    },
    /// Meant as a code, but with a slip.
    Slip(ChildCodeFault),
}

/// Looks for what was typed.
///
/// # Errors
/// [`Refusal`].
pub async fn find(ctx: &Context, typed: &str, also_left: bool, after: Option<(&str, &str)>) -> Result<Found, Refusal> {
    ctx.needs(Action::SeeChildren)?;
    let scope = scope(ctx);
    let typed = typed.trim();
    let code = ChildCode::parse(typed);
    if let Err(fault) = code
        && meant_as_code(typed)
        && fault != ChildCodeFault::Length
    {
        return Ok(Found::Slip(fault));
    }
    let sought = Sought {
        code: code.as_ref().map(|code| code.as_str().to_owned()).ok().or_else(|| beginning_of_code(typed)),
        // A short skeleton is in every other name: it takes three sounds to mean something.
        name_key: Some(skeleton(typed)).filter(|key| key.chars().count() >= LEAST_SOUNDS),
        name: Some(folded(typed)).filter(|name| !name.is_empty()),
        also_left: also_left || code.is_ok(),
        as_written: true,
    };
    let limit = u64::try_from(PAGE + 1).unwrap_or(u64::MAX);
    let mut rows = ctx.db.read(async |c| lists::find(c, scope, &sought, after, limit).await).await?;
    if let Ok(code) = &code
        && let Some(at) = rows.iter().position(|row| row.code == code.as_str())
    {
        return Ok(Found::One(Box::new(rows.swap_remove(at))));
    }
    if let Ok(code) = &code
        && let Some(row) = led_to(ctx, code).await?
    {
        return Ok(Found::One(Box::new(row)));
    }
    let more = (rows.len() > PAGE).then(|| {
        rows.truncate(PAGE);
        rows.last().map(|row| (row.name.clone(), row.code.clone())).unwrap_or_default()
    });
    let homes = rows.iter().filter_map(|row| row.household).collect();
    let named = households::named_in_scope(ctx.db.direct(), scope, &homes).await?;
    Ok(Found::Page { rows, more, named })
}

/// The child that a code leads to whose record was merged into another one.
async fn led_to(ctx: &Context, code: &ChildCode) -> Result<Option<RoundRow>, Refusal> {
    let c = ctx.db.direct();
    let record = children::by_code_in_scope(c, scope(ctx), code.as_str()).await?.filter(|record| record.code != code.as_str());
    let Some(record) = record else { return Ok(None) };
    let sought = Sought { code: Some(record.code), also_left: true, ..Sought::default() };
    Ok(lists::find(c, scope(ctx), &sought, None, 1).await?.pop())
}

/// Names have no digits: eight signs with one among them are a code, right or wrong.
fn meant_as_code(typed: &str) -> bool {
    typed.chars().any(|c| c.is_ascii_digit())
}

/// The first signs of a code, as somebody types them.
fn beginning_of_code(typed: &str) -> Option<String> {
    let signs: String = typed.chars().filter(|c| !matches!(c, ' ' | '-' | '\u{2011}')).map(|c| c.to_ascii_uppercase()).collect();
    (meant_as_code(typed) && signs.len() >= 3 && signs.chars().all(|c| c.is_ascii_alphanumeric())).then_some(signs)
}
