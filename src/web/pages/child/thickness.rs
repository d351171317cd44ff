//! Meals by thickness for a child's page, at its stage and at the next.

use domain::feeding::thickness::NotEstimated;
use domain::feeding::thickness::thicker_helps;
use domain::protocol::Protocol;
use domain::protocol::StageId;

use crate::service::child_file::ChildFile;
use crate::service::meals;
use crate::view::child as view;

/// Meals by thickness at this stage and, at today's weight, at the next.
pub fn shown<'a>(file: &ChildFile, protocol: &'a Protocol, id: StageId) -> Option<view::Thickness<'a>> {
    let stage = protocol.stages.get(id)?;
    let told = meals::told(file, file.as_of);
    let now = told.by_thickness(protocol, stage);
    let next = meals::next_stage(file, protocol).filter(|_| now != Err(NotEstimated::MilkOnly));
    Some(view::Thickness {
        helps: now.ok().and_then(|meals| thicker_helps(&meals, stage, told.usual)),
        now,
        next: next.and_then(|stage| Some((stage.id.code(), told.by_thickness(protocol, stage).ok()?))),
        weighed_on: told.weight.ok().map(|(_, on)| on),
        stomach_g_per_kg: protocol.energy.stomach_g_per_kg,
        stage_source: &stage.source,
        energy_source: &protocol.energy.source,
        source_lang: &protocol.language,
    })
}
