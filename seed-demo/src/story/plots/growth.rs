//! Plots in which a weight, a length or an arm says something.

use std::collections::BTreeSet;

use domain::child::Sex;
use domain::growth::Indicator;
use domain::growth::reference_value;
use domain::rule::RuleId as R;
use domain::visit::Outcome;
use domain::visit::Visit;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::arm;
use crate::story::telling::grams;
use crate::story::telling::mm;
use crate::story::telling::outcome;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "came very small", open: &[R::WeightVeryLow, R::LengthLow], closed: &[], lists: &[], tell: came_very_small },
    Plot {
        name: "thin arm",
        open: &[R::WastingSevere, R::WeightLow, R::WeightStatic, R::WeightDrift],
        closed: &[],
        lists: &[],
        tell: thin_arm,
    },
    Plot { name: "arm just below the line", open: &[R::WastingModerate], closed: &[], lists: &[], tell: arm_just_below },
    Plot { name: "family said no", open: &[R::WastingSevere], closed: &[], lists: &[], tell: family_said_no },
    Plot { name: "thin at three months", open: &[R::WastingYoung], closed: &[], lists: &[], tell: thin_at_three_months },
    Plot { name: "half a kilogram lost", open: &[R::WeightLoss], closed: &[], lists: &[], tell: half_a_kilogram_lost },
    Plot { name: "gains too slowly", open: &[R::WeightSlowGain], closed: &[], lists: &[], tell: gains_too_slowly },
    Plot { name: "slow gain, nobody came back", open: &[R::WeightSlowGain], closed: &[], lists: &[], tell: nobody_came_back },
    Plot { name: "line fell in three months", open: &[R::WeightDrop], closed: &[], lists: &[], tell: line_fell },
    Plot { name: "birth weight not yet back", open: &[R::BirthWeightNotRegained], closed: &[], lists: &[], tell: not_yet_back },
    Plot { name: "born small and early", open: &[R::BirthLow], closed: &[], lists: &[], tell: born_small },
    Plot { name: "heavy for the length", open: &[R::WeightHigh], closed: &[], lists: &[], tell: heavy },
    Plot { name: "born at 32 weeks, growing well", open: &[], closed: &[], lists: &[], tell: born_at_32_weeks },
];

/// Sets the weight that has this z for the length of the visit.
fn for_length(v: &mut Visit, sex: Sex, z: f64) {
    let kg = v.length.and_then(|length| reference_value(Indicator::Wlz, sex, i32::from(length.mm()), z));
    if let Some(kg) = kg {
        grams(v, (kg * 100.0).round() as u32 * 10);
    }
}

fn came_very_small(t: &mut Telling) {
    t.girl(343).channel(-3.35, -3.25).birth_weight(2_600).registered(2).noted(2, "New in the village, registered at the landing.", |_| {});
}

fn thin_arm(t: &mut Telling) {
    t.boy(355).with(0, 0).channel(-1.75, -1.6).birth_weight(2_900).calm_until(70);
    t.visit(37, |v| grams(v, 7_500));
    t.visit(1, |v| {
        grams(v, 7_400);
        mm(v, 712);
        arm(v, 113);
    });
}

fn arm_just_below(t: &mut Telling) {
    t.girl(330).channel(-1.1, -0.7).calm_until(22).visit(5, |v| arm(v, 121));
}

fn family_said_no(t: &mut Telling) {
    t.boy(410).channel(-1.2, -0.8).calm_until(35);
    t.visit(9, |v| arm(v, 114));
    t.noted(3, "Grandfather does not want the journey before the market day.", |v| {
        arm(v, 114);
        outcome(v, R::WastingSevere, Outcome::Refused);
    });
}

fn thin_at_three_months(t: &mut Telling) {
    t.girl(101).channel(-1.2, 0.3).calm_until(25).visit(1, |v| for_length(v, Sex::Female, -2.4));
}

fn half_a_kilogram_lost(t: &mut Telling) {
    t.girl(366).channel(0.2, 0.2).calm_until(58);
    t.visit(30, |v| grams(v, 9_000));
    t.noted(2, "Loose stools last week, better now.", |v| {
        grams(v, 8_500);
        v.length = None;
    });
}

fn gains_too_slowly(t: &mut Telling) {
    t.girl(125).channel(0.0, 0.0).calm_until(50);
    t.visit(31, |v| grams(v, 5_900));
    t.visit(3, |v| {
        grams(v, 6_000);
        v.length = None;
    });
}

fn nobody_came_back(t: &mut Telling) {
    t.girl(143).channel(0.0, 0.0).calm_until(60);
    t.visit(49, |v| grams(v, 5_900));
    t.visit(21, |v| {
        grams(v, 6_000);
        v.length = None;
    });
}

fn line_fell(t: &mut Telling) {
    t.boy(123).birth_weight(3_400).registered(92);
    t.visit(92, |v| grams(v, 4_600));
    t.noted(2, "Were with relatives across the lake for the planting.", |v| {
        grams(v, 5_600);
        v.length = None;
    });
}

fn not_yet_back(t: &mut Telling) {
    t.girl(16).channel(-0.6, -0.4).birth_weight(2_900).registered(11).calm_until(10).visit(1, |v| grams(v, 2_700));
}

fn born_small(t: &mut Telling) {
    t.boy(15).channel(-1.0, -1.0).gestation(252).birth_weight(2_300).registered(5).visit(5, |_| {});
}

fn heavy(t: &mut Telling) {
    t.boy(310).channel(1.5, 0.7).calm_until(30).visit(5, |v| for_length(v, Sex::Male, 3.2));
}

fn born_at_32_weeks(t: &mut Telling) {
    t.girl(204).channel(-1.0, -1.1).gestation(224).birth_weight(1_700).registered(37);
    t.infant.feeding.solids_from = 400;
    t.visit(37, |v| grams(v, 5_400));
    t.visit(2, |v| {
        grams(v, 6_000);
        mm(v, 610);
        arm(v, 128);
        v.readiness_signs = Some(BTreeSet::new());
    });
}
