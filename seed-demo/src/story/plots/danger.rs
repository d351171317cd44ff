//! Plots in which something cannot wait: danger signs, swollen feet, foods that were not tolerated.

use std::collections::BTreeSet;

use domain::food::ReactionSign;
use domain::food::Response;
use domain::rule::RuleId as R;
use domain::visit::DangerSign;
use domain::visit::Outcome;
use domain::visit::SwallowTrouble;

use crate::story::plots::Plot;
use crate::story::telling::Telling;
use crate::story::telling::food;
use crate::story::telling::outcome;

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "hard to wake", open: &[R::DangerGeneral], closed: &[], lists: &[], tell: hard_to_wake },
    Plot { name: "newborn not feeding", open: &[R::DangerYoungInfant], closed: &[], lists: &[], tell: newborn_not_feeding },
    Plot { name: "fast breathing", open: &[R::DangerOther], closed: &[], lists: &[], tell: fast_breathing },
    Plot { name: "both feet swollen", open: &[R::OedemaBothFeet], closed: &[], lists: &[], tell: both_feet_swollen },
    Plot { name: "groundnut and wheeze", open: &[R::ReactionSevere], closed: &[], lists: &[], tell: groundnut_and_wheeze },
    Plot { name: "egg and hives", open: &[R::ReactionSpreading], closed: &[], lists: &[], tell: egg_and_hives },
    Plot { name: "beans still on hold", open: &[R::ReactionMild], closed: &[], lists: &[], tell: beans_on_hold },
    Plot { name: "mango again", open: &[R::ReactionMild, R::ReactionGivenAgain], closed: &[], lists: &[], tell: mango_again },
    Plot { name: "coughs while eating", open: &[R::FeedingSwallowTrouble], closed: &[], lists: &[], tell: coughs_while_eating },
    Plot { name: "referred, no word since", open: &[R::DangerOther], closed: &[], lists: &[R::ReferralNoOutcome], tell: no_word_since },
];

fn hard_to_wake(t: &mut Telling) {
    t.girl(312).with(0, 0).calm_until(20).noted(1, "Limp since the night. Left with the family for the clinic by boat.", |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::Lethargic]));
    });
}

fn newborn_not_feeding(t: &mut Telling) {
    t.boy(27).registered(19).calm_until(8).visit(0, |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::NotFeedingWell, DangerSign::FeverOrCold]));
    });
}

fn fast_breathing(t: &mut Telling) {
    t.boy(235).calm_until(12).visit(1, |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::FastBreathing]));
    });
}

fn both_feet_swollen(t: &mut Telling) {
    t.girl(424).calm_until(25).visit(2, |v| {
        v.oedema = Some(true);
        v.ill = Some(true);
    });
}

fn groundnut_and_wheeze(t: &mut Telling) {
    t.girl(222).with(0, 0).calm_until(6).visit(0, |v| {
        food(v, "groundnut_paste", |f| {
            f.response = Some(Response::Reaction);
            f.signs = Some(BTreeSet::from([ReactionSign::HivesWidespread, ReactionSign::Wheeze]));
            f.minutes_after = Some(15);
        });
    });
}

fn egg_and_hives(t: &mut Telling) {
    t.boy(262).calm_until(15).visit(1, |v| {
        food(v, "egg", |f| {
            f.response = Some(Response::Reaction);
            f.signs = Some(BTreeSet::from([ReactionSign::HivesWidespread]));
            f.minutes_after = Some(40);
        });
    });
}

fn beans_on_hold(t: &mut Telling) {
    t.boy(305).with(1, 0).calm_until(50);
    t.visit(40, |v| {
        food(v, "beans", |f| {
            f.response = Some(Response::Reaction);
            f.signs = Some(BTreeSet::from([ReactionSign::RashLocal]));
        });
    });
    t.noted(22, "Seen at the clinic. Whether beans may come back was not said.", |v| outcome(v, R::ReactionMild, Outcome::Seen));
}

fn mango_again(t: &mut Telling) {
    t.girl(285).calm_until(25);
    t.visit(12, |v| {
        food(v, "mango", |f| {
            f.response = Some(Response::Reaction);
            f.signs = Some(BTreeSet::from([ReactionSign::RashLocal]));
        });
    });
    t.noted(4, "An aunt gave mango again, not knowing.", |v| food(v, "mango", |f| f.offers = 2));
}

fn coughs_while_eating(t: &mut Telling) {
    t.boy(318).calm_until(10).visit(3, |v| v.swallow_trouble = Some(SwallowTrouble::Repeated));
}

fn no_word_since(t: &mut Telling) {
    t.girl(262).with(1, 0).calm_until(15).visit(4, |v| {
        v.ill = Some(true);
        v.danger_signs = Some(BTreeSet::from([DangerSign::BloodInStool]));
    });
}
