//! Plots in which the record itself needs another look, or a visit did not happen.

use domain::rule::RuleId as R;
use domain::units::Weight;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::grams;
use crate::story::telling::mm;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "weight beyond belief", open: &[R::DataZOutside], closed: &[], lists: &[], tell: beyond_belief },
    Plot { name: "weight jumped", open: &[R::DataWeightJump], closed: &[], lists: &[], tell: weight_jumped },
    Plot { name: "shorter than before", open: &[R::DataLengthShrunk, R::DataLengthJump], closed: &[], lists: &[], tell: shorter },
    Plot { name: "weeks that cannot be", open: &[R::DataAgeProblem], closed: &[], lists: &[], tell: weeks_that_cannot_be },
    Plot { name: "visited twice in a day", open: &[R::DataTwinRecord], closed: &[], lists: &[], tell: twice_in_a_day },
    Plot { name: "the same weight three times", open: &[R::DataSameAgain], closed: &[], lists: &[], tell: same_again },
    Plot { name: "meals without solids", open: &[R::DataConflict], closed: &[], lists: &[], tell: meals_without_solids },
    Plot { name: "scale broken", open: &[R::MeasureMissing], closed: &[], lists: &[], tell: scale_broken },
    Plot { name: "slot missed", open: &[], closed: &[], lists: &[R::VisitOverdue], tell: slot_missed },
    Plot { name: "not seen for months", open: &[], closed: &[], lists: &[R::VisitOverdue, R::VisitLost], tell: not_seen },
];

fn beyond_belief(t: &mut Telling) {
    t.boy(219).calm_until(8).visit(1, |v| {
        grams(v, 15_900);
        v.length = None;
    });
}

fn weight_jumped(t: &mut Telling) {
    t.boy(160).channel(-0.05, 0.0).calm_until(45);
    t.visit(36, |v| grams(v, 7_000));
    t.visit(2, |v| {
        grams(v, 12_400);
        v.length = None;
    });
}

fn shorter(t: &mut Telling) {
    t.girl(300).calm_until(45);
    t.visit(30, |v| mm(v, 690));
    t.visit(3, |v| mm(v, 640));
}

fn weeks_that_cannot_be(t: &mut Telling) {
    t.boy(206).registered(6).birth_weight(3_100).fact(|child| child.gestation_days = Some(189)).visit(6, |_| {});
}

fn twice_in_a_day(t: &mut Telling) {
    t.girl(190).calm_until(12).visit(5, |_| {});
    t.visit(5, |v| {
        // The colleague's scale shows 30 g more.
        v.weight = v.weight.and_then(|weight| Weight::from_grams(weight.grams() + 30).ok());
        v.length = None;
    });
}

fn same_again(t: &mut Telling) {
    t.boy(290).channel(0.0, 0.0).calm_until(85);
    for days_ago in [66, 35, 3] {
        t.visit(days_ago, |v| grams(v, 8_300));
    }
}

fn meals_without_solids(t: &mut Telling) {
    t.girl(252).calm_until(18).visit(4, |v| {
        v.solids_yesterday = Some(false);
        v.meals = Some(2);
    });
}

fn scale_broken(t: &mut Telling) {
    t.boy(352).calm_until(50);
    t.noted(33, "Scale broken.", |v| v.weight = None);
    t.noted(4, "Still no scale.", |v| v.weight = None);
}

fn slot_missed(t: &mut Telling) {
    t.girl(165).calm_until(30);
}

fn not_seen(t: &mut Telling) {
    t.boy(262).calm_until(88);
}
