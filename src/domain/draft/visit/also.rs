//! One list of ticks for what is quickly asked: drops, bottle, sweet drinks and the like. A tick is "yes". What is not ticked is
//! "no" only where the worker says that the whole list was asked; else it is not known.

use std::collections::BTreeSet;

use crate::code::codes;
use crate::draft::Reader;
use crate::draft::visit::ticked as ticks;
use crate::visit::LowValue;
use crate::visit::Visit;

codes! {
    /// A line of the list.
    Also, "line of the list" {
        /// Iron drops or powder, or a food with iron added.
        IronSource => "iron_source",
        /// A sweet drink.
        SweetDrink => "sweet_drink",
        /// A sweet or salty snack.
        UnhealthyFood => "unhealthy_food",
        /// A bottle with a teat.
        Bottle => "bottle",
        /// Tea or coffee.
        TeaCoffee => "tea_coffee",
        /// Added salt.
        Salt => "salt",
        /// Added sugar.
        Sugar => "sugar",
        /// Honey, since the last visit.
        Honey => "honey",
        /// Pain, little milk or a poor latch.
        BreastfeedingTrouble => "breastfeeding_trouble",
        /// Ill now.
        Ill => "ill",
    }
}

/// The field that names the lines which were on the page, parted by blanks.
pub const SHOWN: &str = "also_shown";
/// The field that says whether the whole list was asked.
pub const ALL_ASKED: &str = "also_all";

impl Also {
    /// The line of a low-value food.
    #[must_use]
    pub const fn low_value(self) -> Option<LowValue> {
        match self {
            Self::TeaCoffee => Some(LowValue::TeaCoffee),
            Self::Salt => Some(LowValue::Salt),
            Self::Sugar => Some(LowValue::Sugar),
            _ => None,
        }
    }
}

/// Whether a line is ticked.
pub(super) fn ticked(r: &Reader<'_>, line: Also) -> bool {
    r.all("also").any(|code| code == line.code())
}

/// Adds the list's answers where no question of its own was answered.
pub(super) fn read(r: &mut Reader<'_>, v: &mut Visit) {
    let yes = ticks(r, "also", |c| Also::from_code(c).ok());
    let all_asked = r.text(ALL_ASKED) == "yes";
    let shown: BTreeSet<Also> = r.text(SHOWN).split_whitespace().filter_map(|c| Also::from_code(c).ok()).collect();
    let answer = |line: Also| if yes.contains(&line) { Some(true) } else { (all_asked && shown.contains(&line)).then_some(false) };
    for (field, line) in [
        (&mut v.iron_source, Also::IronSource),
        (&mut v.sweet_drink, Also::SweetDrink),
        (&mut v.unhealthy_food, Also::UnhealthyFood),
        (&mut v.bottle, Also::Bottle),
        (&mut v.breastfeeding_trouble, Also::BreastfeedingTrouble),
        (&mut v.ill, Also::Ill),
    ] {
        *field = field.or(answer(line));
    }
    let low: BTreeSet<LowValue> = yes.iter().filter_map(|line| line.low_value()).collect();
    let whole_list = [Also::TeaCoffee, Also::Salt, Also::Sugar].iter().all(|line| shown.contains(line));
    if v.low_value.is_none() && (!low.is_empty() || (all_asked && whole_list)) {
        v.low_value = Some(low);
    }
}
