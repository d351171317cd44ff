//! Plots whose follow-ups were closed, one for each way of closing.

use std::collections::BTreeSet;

use domain::food::ReactionSign;
use domain::food::Response;
use domain::rule::CloseReason as Why;
use domain::rule::RuleId as R;
use domain::visit::DangerSign;
use domain::visit::Outcome;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::arm;
use crate::story::telling::food;
use crate::story::telling::grams;
use crate::story::telling::outcome;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "meals mended", open: &[], closed: &[(R::MealsFew, Why::ResolvedByVisit)], lists: &[], tell: meals_mended },
    Plot { name: "treated and well", open: &[], closed: &[(R::DangerGeneral, Why::SeenOutcomeRecorded)], lists: &[], tell: treated },
    Plot { name: "egg allowed again", open: &[], closed: &[(R::ReactionMild, Why::SeenOutcomeRecorded)], lists: &[], tell: egg_again },
    Plot { name: "in treatment", open: &[], closed: &[(R::WastingSevere, Why::InCareElsewhere)], lists: &[], tell: in_treatment },
    Plot { name: "digit put right", open: &[], closed: &[(R::DataWeightJump, Why::RecordCorrected)], lists: &[], tell: digit_put_right },
    Plot { name: "arm got thinner", open: &[R::WastingSevere], closed: &[(R::WastingModerate, Why::Replaced)], lists: &[], tell: thinner },
    Plot { name: "arm recovered", open: &[], closed: &[(R::WastingModerate, Why::ResolvedByVisit)], lists: &[], tell: arm_recovered },
    Plot { name: "feet well again", open: &[], closed: &[(R::OedemaBothFeet, Why::ResolvedByVisit)], lists: &[], tell: feet_well },
    Plot { name: "honey, all well", open: &[], closed: &[(R::FoodHoney, Why::ResolvedByVisit)], lists: &[], tell: honey_all_well },
    Plot { name: "plan for a small baby", open: &[], closed: &[(R::BirthLow, Why::ResolvedByVisit)], lists: &[], tell: plan_for_small },
    Plot {
        name: "small parents, supervisor closed",
        open: &[],
        closed: &[(R::LengthLow, Why::SupervisorDecision)],
        lists: &[],
        tell: small_parents,
    },
    Plot {
        name: "weaned by choice, supervisor closed",
        open: &[],
        closed: &[(R::BreastfeedingStopped, Why::SupervisorDecision)],
        lists: &[],
        tell: weaned_by_choice,
    },
];

fn meals_mended(t: &mut Telling) {
    t.girl(262).calm_until(45);
    t.visit(31, |v| v.meals = Some(1));
    t.visit(12, |_| {});
}

fn treated(t: &mut Telling) {
    t.boy(246).with(2, 0).calm_until(30);
    t.visit(20, |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::VomitsEverything]));
    });
    t.call(19, |v| outcome(v, R::DangerGeneral, Outcome::Admitted));
    t.visit(14, |v| outcome(v, R::DangerGeneral, Outcome::Treated));
}

fn egg_again(t: &mut Telling) {
    t.girl(300).calm_until(50);
    t.visit(38, |v| {
        food(v, "egg", |f| {
            f.response = Some(Response::Reaction);
            f.signs = Some(BTreeSet::from([ReactionSign::RashLocal]));
        });
    });
    t.noted(17, "Clinic says: egg may be tried again, well cooked.", |v| {
        outcome(v, R::ReactionMild, Outcome::Decision);
        food(v, "egg", |f| {
            f.hold_lifted = true;
            f.offers = 0;
            f.response = None;
        });
    });
}

fn in_treatment(t: &mut Telling) {
    t.girl(408).channel(-1.4, -0.9).calm_until(60);
    t.visit(30, |v| arm(v, 113));
    t.visit(21, |v| {
        arm(v, 114);
        outcome(v, R::WastingSevere, Outcome::InTreatment);
    });
}

fn digit_put_right(t: &mut Telling) {
    t.boy(168).channel(-0.1, 0.0).calm_until(60);
    t.visit(44, |v| grams(v, 7_000));
    t.visit(10, |v| grams(v, 12_400));
    t.corrected(9, "Two digits had changed places.", |v| grams(v, 7_400));
}

fn thinner(t: &mut Telling) {
    t.boy(332).channel(-1.2, -0.7).calm_until(45);
    t.visit(27, |v| arm(v, 121));
    t.visit(1, |v| arm(v, 114));
}

fn arm_recovered(t: &mut Telling) {
    t.girl(438).channel(-0.9, -0.5).calm_until(85);
    t.visit(72, |v| arm(v, 122));
    t.visit(41, |v| arm(v, 127));
    t.visit(19, |v| arm(v, 129));
}

fn feet_well(t: &mut Telling) {
    t.boy(510).calm_until(95);
    t.visit(80, |v| v.oedema = Some(true));
    t.visit(60, |v| outcome(v, R::OedemaBothFeet, Outcome::Treated));
    t.visit(20, |_| {});
}

fn honey_all_well(t: &mut Telling) {
    t.girl(319).calm_until(75);
    t.visit(62, |v| food(v, "honey", |f| f.offers = 1));
    t.visit(14, |_| {});
}

fn plan_for_small(t: &mut Telling) {
    t.girl(52).channel(-1.3, -1.2).birth_weight(2_450).registered(45).visit(45, |_| {});
    t.visit(38, |v| v.plans = Some(BTreeSet::from([R::BirthLow])));
    t.visit(10, |_| {});
}

fn small_parents(t: &mut Telling) {
    t.girl(598).channel(-1.0, -2.35).calm_until(30).closed(
        12,
        R::LengthLow,
        "clinician_decided",
        "Measured twice with the board; both parents are small and the clinic has seen her.",
    );
}

fn weaned_by_choice(t: &mut Telling) {
    t.boy(520).calm_until(45);
    t.infant.feeding.weaned_at = Some(495);
    t.visit(20, |_| {});
    t.closed(16, R::BreastfeedingStopped, "family_declines", "Mother has decided, milk and meals are good; talked it through at home.");
}
