//! Recipes of the programme on the form of a visit: those of today, and those that a stored visit names though they are gone since.

use domain::draft::visit::VisitRead;
use domain::draft::visit::recipes::FIELD;
use domain::feeding::recipe_fit::Fit;
use domain::feeding::recipe_fit::fit;
use domain::feeding::recipe_fit::remarks;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::protocol::Protocol;
use domain::protocol::Recipe;

use crate::service::meals::eater;
use crate::view::filled::Filled;
use crate::view::visit_form::RecipeLine;
use crate::web::pages::visit::desk::Desk;

/// A form in which nobody said what else was eaten, with what its recipes hold ticked: it is asked once, before it is saved.
pub(super) fn ticked(form: &Filled, read: &VisitRead) -> Filled {
    if !read.only_recipes {
        return form.clone();
    }
    let breast_milk = (read.visit.breastfed == Some(true)).then_some(FoodGroup::BreastMilk);
    let groups = read.visit.groups.iter().flatten().copied().chain(breast_milk);
    groups.fold(form.clone(), |form, group| form.with("groups", group.code()))
}

impl Desk<'_> {
    /// A recipe by its code, with the protocol that has it: the one in force today, else the latest that knew it.
    pub(super) fn recipe(&self, code: &str) -> Option<(&Recipe, &Protocol)> {
        let protocols = self.signed.visitor.protocols.iter().collect::<Vec<_>>();
        let all = std::iter::once(&self.protocol).chain(protocols.into_iter().rev());
        all.into_iter().find_map(|protocol| Some((protocol.recipe(code)?, &**protocol)))
    }

    /// The recipes a form offers: those of today, and others that it names.
    pub(super) fn recipe_lines(&self, filled: &Filled) -> Vec<RecipeLine> {
        let lang = self.signed.words().lang().code();
        let mut codes: Vec<&str> = self.protocol.recipes.iter().map(|recipe| recipe.code.as_str()).collect();
        codes.extend(filled.all(FIELD).into_iter().filter(|named| self.protocol.recipe(named).is_none()));
        let line = |code: &str| {
            let (recipe, protocol) = self.recipe(code)?;
            // A name's form, after a comma, would read as one more food.
            let called = |food: &FoodCode| protocol.food_name(food, lang).split(',').next().unwrap_or_default().to_owned();
            let names = recipe.eaten(&protocol.foods).foods.iter().map(called).collect();
            let held = fit(&remarks(&eater(&self.file), recipe, protocol)) == Fit::No;
            Some(RecipeLine { code: code.to_owned(), name: recipe.text(lang).name.clone(), foods: names, held })
        };
        codes.into_iter().filter_map(line).collect()
    }
}
