//! Plots whose record itself had to be put right: a visit that never happened, one entered for the sister, a child registered twice.

use domain::draft::child::NewChild;
use domain::rule::CloseReason as Why;
use domain::rule::RuleId as R;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::arm;

/// The plots. The one before another is meant by "the next".
pub const PLOTS: &[Plot] = &[
    Plot { name: "visit taken back", open: &[], closed: &[(R::WastingSevere, Why::RecordCorrected)], lists: &[], tell: taken_back },
    Plot { name: "visit of the sister", open: &[], closed: &[(R::DataWeightJump, Why::RecordCorrected)], lists: &[], tell: of_the_sister },
    Plot { name: "the sister", open: &[], closed: &[], lists: &[], tell: the_sister },
    Plot { name: "registered first", open: &[], closed: &[], lists: &[], tell: registered_first },
    Plot { name: "registered again", open: &[], closed: &[], lists: &[], tell: registered_again },
];

fn taken_back(t: &mut Telling) {
    t.girl(262).calm_until(20).visit(9, |v| arm(v, 112));
    t.void("never_happened", "Copied from the paper of another day.");
}

fn of_the_sister(t: &mut Telling) {
    t.girl(330).with(0, 0).calm_until(20);
    t.weighed(6, 6_000);
    t.move_to_next("It was her little sister on the scale.");
}

fn the_sister(t: &mut Telling) {
    t.girl(130).with(0, 0).calm_until(30);
}

fn registered_first(t: &mut Telling) {
    t.boy(285).with(0, 0).birth_weight(3_100).fact(twice).calm_until(110);
}

fn registered_again(t: &mut Telling) {
    t.boy(285).with(0, 0).birth_weight(3_100).registered(94).fact(twice).calm_until(12);
    t.merge_into_the_one_before("Registered again after the family had been away for a month.");
}

/// The same name twice, as it was written down both times.
fn twice(child: &mut NewChild) {
    "Sunabi Orolet".clone_into(&mut child.name);
    "Wemari Orolet".clone_into(&mut child.caregiver);
    child.known_as = None;
    child.other_child = true;
}
