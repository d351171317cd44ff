//! Plots of children who left while something was open, one for each way of leaving.

use std::collections::BTreeSet;

use domain::child::ChildStatus;
use domain::food::FoodGroup;
use domain::rule::CloseReason as Why;
use domain::rule::RuleId as R;
use domain::visit::DangerSign;
use domain::visit::Visit;

use crate::story::plots::Plot;
use crate::story::telling::Telling;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "handed to the next district", open: &[], closed: &[(R::DiversityLow, Why::TransferredOut)], lists: &[], tell: handed_on },
    Plot { name: "moved away", open: &[], closed: &[(R::MealsFew, Why::Moved)], lists: &[], tell: moved_away },
    Plot { name: "consent withdrawn", open: &[], closed: &[(R::BottleUsed, Why::ConsentWithdrawn)], lists: &[], tell: withdrawn },
    Plot { name: "two years old", open: &[], closed: &[(R::DiversityLow, Why::AgedOut)], lists: &[], tell: two_years_old },
    Plot { name: "no more visits wished", open: &[], closed: &[(R::SolidsLate, Why::Refused)], lists: &[], tell: no_more_visits },
    Plot { name: "died", open: &[], closed: &[(R::DangerGeneral, Why::Died)], lists: &[], tell: died },
];

fn three_groups(v: &mut Visit) {
    v.groups = Some(BTreeSet::from([FoodGroup::BreastMilk, FoodGroup::GrainsRoots, FoodGroup::Flesh]));
}

fn handed_on(t: &mut Telling) {
    t.girl(420).calm_until(70).visit(50, three_groups).leaves(
        41,
        ChildStatus::TransferredOut,
        Some("Now with the programme of the next district; papers handed over."),
    );
}

fn moved_away(t: &mut Telling) {
    t.boy(385).calm_until(60).visit(47, |v| v.meals = Some(2)).leaves(
        39,
        ChildStatus::Moved,
        Some("Family went to the far shore for the fishing."),
    );
}

fn withdrawn(t: &mut Telling) {
    t.girl(240).calm_until(55).visit(49, |v| v.bottle = Some(true)).leaves(44, ChildStatus::ConsentWithdrawn, None);
}

fn two_years_old(t: &mut Telling) {
    t.boy(770).calm_until(100).visit(48, three_groups).grows_out();
}

fn no_more_visits(t: &mut Telling) {
    t.girl(255).calm_until(75);
    t.infant.feeding.solids_from = 400;
    t.visit(38, |_| {}).leaves(34, ChildStatus::Refused, Some("The family prefers to go to the clinic by itself."));
}

fn died(t: &mut Telling) {
    t.boy(330).calm_until(100);
    t.visit(87, |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::TroubleBreathing]));
    });
    t.leaves(85, ChildStatus::Died, None);
}
