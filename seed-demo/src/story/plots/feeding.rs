//! Plots in which what the family gives, or does not give, calls for a conversation.

use std::collections::BTreeSet;

use domain::calendar::add_days;
use domain::food::FoodGroup;
use domain::food::Texture;
use domain::rule::RuleId as R;
use domain::visit::LowValue;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::food;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot {
        name: "porridge at four months",
        open: &[R::SolidsEarly, R::LiquidsEarly],
        closed: &[],
        lists: &[],
        tell: porridge_at_four_months,
    },
    Plot {
        name: "goat milk in a bottle",
        open: &[R::MilkAnimalEarly, R::BottleUsed, R::BreastfeedingTrouble],
        closed: &[],
        lists: &[],
        tell: goat_milk,
    },
    Plot { name: "no solids at seven months", open: &[R::SolidsLate], closed: &[], lists: &[], tell: no_solids },
    Plot {
        name: "smooth porridge at ten months",
        open: &[R::TextureBehind, R::DiversityLow, R::IronNone, R::VegFruitNone],
        closed: &[],
        lists: &[],
        tell: smooth_porridge,
    },
    Plot { name: "drops but no animal food", open: &[R::AnimalFoodNone], closed: &[], lists: &[], tell: no_animal_food },
    Plot { name: "thin gruel twice a day", open: &[R::TextureWatery, R::MealsFew], closed: &[], lists: &[], tell: thin_gruel },
    Plot { name: "breastfeeding stopped", open: &[R::BreastfeedingStopped, R::MilkFew], closed: &[], lists: &[], tell: stopped },
    Plot { name: "honey on the spoon", open: &[R::FoodHoney], closed: &[], lists: &[], tell: honey },
    Plot {
        name: "whole groundnuts and sweet tea",
        open: &[R::FoodChoking, R::FoodLowValue, R::DrinkSweet],
        closed: &[],
        lists: &[],
        tell: whole_groundnuts,
    },
    Plot { name: "bread before the local age", open: &[R::FoodLocalWait], closed: &[], lists: &[], tell: bread_early },
    Plot { name: "turns away from food", open: &[R::AppetitePoor], closed: &[], lists: &[], tell: turns_away },
    Plot { name: "meals few, long overdue", open: &[R::MealsFew], closed: &[], lists: &[R::VisitOverdue], tell: long_overdue },
];

fn porridge_at_four_months(t: &mut Telling) {
    t.girl(117).calm_until(16).visit(3, |v| {
        food(v, "millet_porridge", |f| f.offers = 6);
        v.solids_started_on = Some(add_days(v.on, -7));
        v.solids_yesterday = Some(true);
        v.meals = Some(1);
        v.other_drink = Some(true);
        v.breast_only = Some(false);
        v.groups = Some(BTreeSet::from([FoodGroup::BreastMilk, FoodGroup::GrainsRoots]));
    });
}

fn goat_milk(t: &mut Telling) {
    t.boy(141).calm_until(10).visit(3, |v| {
        v.animal_milk_times = Some(2);
        v.bottle = Some(true);
        v.breast_only = Some(false);
        v.breastfeeding_trouble = Some(true);
    });
}

fn no_solids(t: &mut Telling) {
    t.boy(220).channel(-0.5, -0.4);
    t.infant.feeding.solids_from = 400;
    t.calm_until(30).visit(3, |_| {});
}

fn smooth_porridge(t: &mut Telling) {
    t.boy(311).channel(-0.5, -0.5).calm_until(20).visit(2, |v| {
        v.texture_best = Texture::new(1);
        v.texture_usual = Texture::new(1);
        v.meals = Some(3);
        v.groups = Some(BTreeSet::from([FoodGroup::BreastMilk, FoodGroup::GrainsRoots, FoodGroup::PulsesNuts]));
        v.foods.clear();
    });
}

fn no_animal_food(t: &mut Telling) {
    t.girl(267).with(0, 0).calm_until(15).visit(4, |v| {
        v.iron_source = Some(true);
        v.groups = Some(BTreeSet::from([
            FoodGroup::BreastMilk,
            FoodGroup::GrainsRoots,
            FoodGroup::PulsesNuts,
            FoodGroup::VitA,
            FoodGroup::OtherFv,
        ]));
    });
}

fn thin_gruel(t: &mut Telling) {
    t.girl(297).with(0, 0).calm_until(20).visit(6, |v| {
        v.texture_usual = Texture::new(0);
        v.meals = Some(2);
    });
}

fn stopped(t: &mut Telling) {
    t.boy(229).calm_until(12).noted(3, "Mother works on the boats again since the new moon.", |v| {
        v.breastfed = Some(false);
        v.breastfeeding_trouble = None;
        v.animal_milk_times = Some(1);
        v.meals = Some(4);
        if let Some(groups) = &mut v.groups {
            groups.remove(&FoodGroup::BreastMilk);
            groups.insert(FoodGroup::Dairy);
        }
    });
}

fn honey(t: &mut Telling) {
    t.girl(283).calm_until(12).visit(5, |v| food(v, "honey", |f| f.offers = 2));
}

fn whole_groundnuts(t: &mut Telling) {
    t.boy(504).calm_until(12).visit(8, |v| {
        food(v, "groundnut_whole", |f| f.unsafe_form = Some(true));
        v.low_value = Some(BTreeSet::from([LowValue::TeaCoffee, LowValue::Sugar]));
        v.sweet_drink = Some(true);
    });
}

fn bread_early(t: &mut Telling) {
    t.boy(266).calm_until(20).visit(6, |v| food(v, "wheat_bread", |f| f.offers = 3));
}

fn turns_away(t: &mut Telling) {
    t.girl(327).calm_until(15).visit(3, |v| {
        v.appetite_poor_days = Some(4);
        v.ill = Some(true);
    });
}

fn long_overdue(t: &mut Telling) {
    t.boy(349).calm_until(50).visit(40, |v| v.meals = Some(1));
}
