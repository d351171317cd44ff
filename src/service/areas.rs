//! Villages and the larger areas they lie in, managed by an administrator. An area is never deleted: files refer to its code.

use std::collections::BTreeMap;

use domain::draft::office::AreaForm;
use domain::fault::Fault;
use domain::fault::Faults;
use domain::ids::AreaId;
use domain::role::Action;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::once;
use crate::service::once::Sent;
use crate::store::Scope;
use crate::store::areas;
use crate::store::areas::AreaRecord;
use crate::store::follow_ups::desk;

/// Every area with its depth, larger ones before what lies in them.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn tree(ctx: &Context) -> Result<Vec<(usize, AreaRecord)>, Refusal> {
    ctx.needs(Action::Administer)?;
    Ok(in_order(areas::list(ctx.db.direct()).await?))
}

/// How many active children are in each area that is not in use: nobody would look for them there.
///
/// # Errors
/// [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn left_behind(ctx: &Context, tree: &[(usize, AreaRecord)]) -> Result<BTreeMap<AreaId, u64>, Refusal> {
    ctx.needs(Action::Administer)?;
    let mut left = BTreeMap::new();
    if tree.iter().all(|(_, area)| area.active) {
        return Ok(left);
    }
    let tallies = desk::tallies_in_scope(ctx.db.direct(), Scope::Everything, &[], ctx.today).await?;
    for tally in tallies.iter().filter(|t| t.class.is_none() && tree.iter().any(|(_, a)| a.id == t.area && !a.active)) {
        *left.entry(tally.area).or_insert(0) += tally.count;
    }
    Ok(left)
}

/// Larger areas first, each followed by what lies in it, by name. What hangs in a circle, which the forms do not allow, comes
/// last so that it can be mended.
fn in_order(all: Vec<AreaRecord>) -> Vec<(usize, AreaRecord)> {
    fn below(parent: Option<AreaId>, depth: usize, all: &[AreaRecord], out: &mut Vec<(usize, AreaRecord)>) {
        for area in all.iter().filter(|a| a.parent == parent) {
            out.push((depth, area.clone()));
            below(Some(area.id), depth + 1, all, out);
        }
    }
    let mut out = Vec::with_capacity(all.len());
    below(None, 0, &all, &mut out);
    let rest: Vec<_> = all.into_iter().filter(|a| !out.iter().any(|(_, shown)| shown.id == a.id)).collect();
    out.extend(rest.into_iter().map(|area| (0, area)));
    out
}

/// Whether `inner` is `outer` or lies in it, however deep.
fn lies_in(all: &[AreaRecord], inner: AreaId, outer: AreaId) -> bool {
    let mut at = Some(inner);
    for _ in 0..=all.len() {
        match at {
            None => return false,
            Some(id) if id == outer => return true,
            Some(id) => at = all.iter().find(|a| a.id == id).and_then(|a| a.parent),
        }
    }
    true
}

/// One area, and those it may lie in: in use, not itself, nothing within it.
///
/// # Errors
/// [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, code: &str) -> Result<(AreaRecord, Vec<AreaRecord>), Refusal> {
    ctx.needs(Action::Administer)?;
    let all = areas::list(ctx.db.direct()).await?;
    let area = all.iter().find(|a| a.code == code).cloned().ok_or(Refusal::NotFound)?;
    let possible = all.iter().filter(|a| !lies_in(&all, a.id, area.id) && (a.active || area.parent == Some(a.id))).cloned().collect();
    Ok((area, possible))
}

/// Adds an area.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn add(ctx: &Context, sent: Sent, form: &AreaForm) -> Result<(), Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let all = areas::list(tx).await?;
            let code = form.code.clone().unwrap_or_default();
            let mut faults = Faults::new();
            if all.iter().any(|a| a.code == code) {
                faults.add("code", Fault::Taken);
            }
            let parent = parent_of(&all, form, None, &mut faults);
            if !faults.is_empty() {
                return Err(Refusal::Invalid(faults));
            }
            let area = AreaRecord {
                id: AreaId(uuid::Uuid::now_v7().as_u128()),
                code: code.clone(),
                name: form.name.clone(),
                parent,
                active: true,
                walk_minutes: form.walk_minutes,
            };
            areas::insert(tx, &area).await?;
            audit::note(tx, ctx, "area.add", "area", &code, &[]).await?;
            once::remember(tx, ctx, sent, "/areas").await
        })
        .await
}

/// Changes name, larger area, the way, or whether it is in use.
///
/// # Errors
/// [`Refusal::Invalid`] with every fault; [`Refusal::NotFound`], [`Refusal::Forbidden`], [`Refusal::Conflict`], [`Refusal::Store`].
pub async fn change(ctx: &Context, sent: Sent, code: &str, form: &AreaForm) -> Result<(), Refusal> {
    ctx.needs(Action::Administer)?;
    ctx.db
        .write(async |tx| {
            if once::before(tx, ctx, sent).await?.is_some() {
                return Ok(());
            }
            let all = areas::list(tx).await?;
            let before = all.iter().find(|a| a.code == code).cloned().ok_or(Refusal::NotFound)?;
            let mut faults = Faults::new();
            let parent = parent_of(&all, form, Some(before.id), &mut faults);
            if !faults.is_empty() {
                return Err(Refusal::Invalid(faults));
            }
            let after =
                AreaRecord { name: form.name.clone(), parent, active: form.active, walk_minutes: form.walk_minutes, ..before.clone() };
            areas::update(tx, &after).await?;
            let fields: Vec<&str> = [
                (before.name != after.name, "name"),
                (before.parent != after.parent, "parent"),
                (before.active != after.active, "active"),
                (before.walk_minutes != after.walk_minutes, "walk_minutes"),
            ]
            .into_iter()
            .filter_map(|(differs, name)| differs.then_some(name))
            .collect();
            audit::note(tx, ctx, "area.change", "area", code, &fields).await?;
            once::remember(tx, ctx, sent, "/areas").await
        })
        .await
}

fn parent_of(all: &[AreaRecord], form: &AreaForm, own: Option<AreaId>, faults: &mut Faults) -> Option<AreaId> {
    let code = form.parent.as_deref()?;
    let parent = all.iter().find(|a| a.code == code).filter(|a| own.is_none_or(|own| !lies_in(all, a.id, own)));
    if parent.is_none() {
        faults.add("parent", Fault::UnknownChoice);
    }
    parent.map(|p| p.id)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(id: u128, parent: Option<u128>) -> AreaRecord {
        AreaRecord {
            id: AreaId(id),
            code: id.to_string(),
            name: id.to_string(),
            parent: parent.map(AreaId),
            active: true,
            walk_minutes: None,
        }
    }

    #[test]
    fn what_lies_in_an_area_follows_it() {
        let all = vec![area(1, None), area(2, Some(3)), area(3, None), area(4, Some(2))];
        let order: Vec<_> = in_order(all).into_iter().map(|(depth, a)| (depth, a.id.0)).collect();
        assert_eq!(order, [(0, 1), (0, 3), (1, 2), (2, 4)]);
    }

    #[test]
    fn a_circle_is_shown_and_ends() {
        let all = vec![area(1, Some(2)), area(2, Some(1)), area(3, None)];
        assert!(lies_in(&all, AreaId(1), AreaId(9)), "a circle counts as lying in, so that it is never offered");
        let order: Vec<_> = in_order(all).into_iter().map(|(_, a)| a.id.0).collect();
        assert_eq!(order, [3, 1, 2]);
    }

    #[test]
    fn an_area_lies_in_itself_and_in_what_holds_it() {
        let all = vec![area(1, None), area(2, Some(1)), area(3, Some(2))];
        for (inner, outer, expected) in [(3, 1, true), (3, 3, true), (1, 3, false), (2, 3, false)] {
            assert_eq!(lies_in(&all, AreaId(inner), AreaId(outer)), expected, "{inner} in {outer}");
        }
    }
}
