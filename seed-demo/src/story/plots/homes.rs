//! Plots of children who share a home: twins, siblings, and one who likely lives with them and was not linked yet.

use domain::draft::child::NewChild;
use domain::ids::HouseholdId;
use domain::rule::RuleId as R;

use crate::story::dice::Dice;
use crate::story::plots::Plot;
use crate::story::telling::Telling;

/// A family with several children in the programme.
#[derive(Debug, PartialEq, Eq)]
pub struct Family {
    house: &'static str,
    caregiver: &'static str,
    phone: &'static str,
    directions: &'static str,
    /// Number of its worker.
    pub worker: usize,
    /// Number of its village.
    pub village: usize,
}

const TWINS: Family = Family {
    house: "Tevolen",
    caregiver: "Yorumi",
    phone: "0300 71 40",
    directions: "Beside the net loft, two doors with one roof",
    worker: 0,
    village: 0,
};
const SIBLINGS: Family = Family {
    house: "Kezubri",
    caregiver: "Govizu",
    phone: "0300 86 13",
    directions: "Above the bean terraces, the house with the long bench",
    worker: 0,
    village: 0,
};

impl Family {
    /// Gives a child the family's name, caregiver and address; `round` tells families apart where plots come back.
    pub fn settle(&self, child: &mut NewChild, round: u32) {
        let given = child.name.split(' ').next().unwrap_or_default().to_owned();
        child.name = format!("{given} {}", self.house);
        child.known_as = None;
        child.caregiver = format!("{} {}", self.caregiver, self.house);
        child.consent_by.clone_from(&child.caregiver);
        child.relation = Some("mother".to_owned());
        child.phone = Some(format!("{} {round}", self.phone));
        child.directions = Some(self.directions.to_owned());
    }

    /// The key of its home.
    #[must_use]
    pub fn home(&self, round: u32) -> HouseholdId {
        let apart = u32::try_from(self.house.len() + self.directions.len()).unwrap_or(0);
        HouseholdId(Dice::of((1 << 29) + apart * 10_000 + round).key())
    }
}

/// The plots.
pub const PLOTS: &[Plot] = &[
    Plot { name: "twins, the first with few meals", open: &[R::MealsFew], closed: &[], lists: &[], tell: first_twin },
    Plot { name: "twins, the second well", open: &[], closed: &[], lists: &[], tell: second_twin },
    Plot { name: "siblings, the older with sweet drinks", open: &[R::DrinkSweet], closed: &[], lists: &[], tell: older },
    Plot { name: "siblings, the baby with water", open: &[R::LiquidsEarly], closed: &[], lists: &[], tell: baby },
    Plot { name: "cousin in the same house, not linked yet", open: &[], closed: &[], lists: &[], tell: cousin },
];

fn first_twin(t: &mut Telling) {
    t.girl(292).of_family(&TWINS, true).calm_until(30).visit(9, |v| v.meals = Some(1));
}

fn second_twin(t: &mut Telling) {
    t.boy(292).of_family(&TWINS, true).calm_until(30).visit(9, |_| {});
}

fn older(t: &mut Telling) {
    t.boy(590).of_family(&SIBLINGS, true).calm_until(40).visit(20, |v| v.sweet_drink = Some(true));
}

fn baby(t: &mut Telling) {
    t.girl(118).of_family(&SIBLINGS, true).calm_until(20).visit(8, |v| {
        v.other_drink = Some(true);
        v.breast_only = Some(false);
    });
}

fn cousin(t: &mut Telling) {
    t.girl(335).of_family(&SIBLINGS, false).fact(|child| child.relation = Some("aunt".to_owned())).calm_until(6);
}
