//! Reads a protocol file and reports every fault in it at once; holds the protocol that the program ships with.
//! Whether its advice is right is not known here: that is for clinicians.

mod foods;
mod header;
mod material;
mod recipe_checks;
#[cfg(test)]
mod recipe_tests;
mod recipes;
mod rules;
mod stages;
#[cfg(test)]
mod tests;

use std::sync::LazyLock;

use domain::protocol::Protocol;

use super::faults::Faults;
use super::faults::FileFault;
use super::toml_reader::Table;
use super::toml_reader::document;

pub(super) use foods::food;

/// The text of the protocol that the program ships with.
pub const DEFAULT_TEXT: &str = include_str!("../default_protocol.toml");

/// The name of that text in messages.
pub const DEFAULT_NAME: &str = "default_protocol.toml";

/// The protocol that the program ships with. Not reviewed by a clinician.
///
/// # Panics
/// Never: the text is part of the program, and its reading is tested.
#[must_use]
pub fn default_protocol() -> &'static Protocol {
    static PROTOCOL: LazyLock<Protocol> = LazyLock::new(|| match parse_protocol(DEFAULT_TEXT, DEFAULT_NAME) {
        Ok(protocol) => protocol,
        Err(faults) => unreachable!("{faults:?}"),
    });
    &PROTOCOL
}

/// Something wrong in a protocol file: file, line, key, what is wrong and what to do.
pub type ProtocolFault = FileFault;

/// Reads a protocol. `file_name` is used in faults only.
///
/// # Errors
/// Every fault: TOML that cannot be read, unknown keys and words, wrong types, figures without source or out of bounds, stages with
/// gaps or falling textures, rules missing or unknown, safety rules switched off.
pub fn parse_protocol(text: &str, file_name: &str) -> Result<Protocol, Vec<ProtocolFault>> {
    let mut faults = Faults::new(file_name, text);
    let tree = document(text, &mut faults);
    if faults.len() > 0 {
        // Keys after a syntax fault cannot be trusted to be where their author put them.
        return Err(faults.into_all());
    }
    let f = &mut faults;
    let mut root = Table::root(&tree);
    let header = header::header(&mut root, f);
    let ages = header::ages(&mut root, f);
    let classes = header::classes(&mut root, f);
    let tolerance = header::tolerance(&mut root, f);
    let clearing = header::clearing(&mut root, f);
    let schedule = header::schedule(&mut root, f);
    let energy = header::energy(&mut root, f);
    let allergens = header::allergens(&mut root, f, header.approved_by.is_some());
    let milk = header::milk(&mut root, f);
    let stages = stages::stages(&mut root, f, ages.exit_age_months);
    let rules = rules::rules(&mut root, f);
    let foods = foods::foods(&mut root, f);
    let coaching = material::coaching(&mut root, f);
    let recipes = recipes::recipes(&mut root, f);
    recipe_checks::recipes(&recipes, &foods, f);
    root.finish(f);
    let Some((stages, rules)) = stages.zip(rules).filter(|_| faults.len() == 0) else { return Err(faults.into_all()) };
    Ok(Protocol {
        id: header.id,
        version: header.version,
        effective_from: header.effective_from,
        language: header.language,
        approved_by: header.approved_by,
        approved_on: header.approved_on,
        local_protocol_name: header.local_protocol_name,
        ages,
        classes,
        tolerance,
        clearing,
        allergens,
        milk,
        energy,
        stages,
        schedule,
        rules,
        coaching,
        recipes: recipes.into_iter().map(|(recipe, _)| recipe).collect(),
        foods,
    })
}
