//! Feeding indicators of WHO and UNICEF (2021), in our words and from memory, and a few of our own: who could be counted, and
//! whether a child counts. A missing answer is never read as "no": it takes the child out of the denominator.

use std::cell::Cell;

use crate::code::codes;
use crate::food::FoodGroup;
use crate::report::choose::Seen;
use crate::report::rows::{ReportAnswers, ReportChild};

codes! {
    /// An indicator.
    Indicator, "indicator" {
        /// Ever breastfed (registration).
        EvBF => "EvBF",
        /// Put to the breast within an hour of birth (registration).
        EiBF => "EIBF",
        /// Nothing but breast milk in the first two days (registration).
        Ebf2d => "EBF2D",
        /// Breast milk only yesterday, 0–5 months.
        Ebf => "EBF",
        /// Breast milk and formula or animal milk yesterday, 0–5 months.
        MixMF => "MixMF",
        /// Breastfed yesterday, 12–23 months.
        Cbf => "CBF",
        /// Any solid food yesterday, 6–8 months.
        Isssf => "ISSSF",
        /// Five or more of the eight food groups yesterday, 6–23 months.
        Mdd => "MDD",
        /// Enough feeds yesterday, 6–23 months.
        Mmf => "MMF",
        /// The same, breastfed, 6–8 months: two solid feeds.
        MmfBf6To8 => "MMF_bf_6_8",
        /// The same, breastfed, 9–23 months: three solid feeds.
        MmfBf9To23 => "MMF_bf_9_23",
        /// The same, not breastfed: four feeds, one of them solid.
        MmfNbf => "MMF_nbf",
        /// Two milk feeds yesterday, not breastfed, 6–23 months.
        Mmff => "MMFF",
        /// Diversity, meals and (not breastfed) milk together, 6–23 months.
        Mad => "MAD",
        /// Egg or flesh food yesterday, 6–23 months.
        Eff => "EFF",
        /// A sweet drink yesterday, 6–23 months.
        SwB => "SwB",
        /// A listed unhealthy food yesterday, 6–23 months.
        Ufc => "UFC",
        /// No fruit and no vegetable yesterday, 6–23 months.
        Zvf => "ZVF",
        /// A bottle with a teat yesterday, 0–23 months.
        BoF => "BoF",
        /// Breast milk yesterday, 6–23 months.
        GroupBreastMilk => "group_breast_milk",
        /// Grains and roots yesterday.
        GroupGrainsRoots => "group_grains_roots",
        /// Pulses and nuts yesterday.
        GroupPulsesNuts => "group_pulses_nuts",
        /// Dairy yesterday.
        GroupDairy => "group_dairy",
        /// Flesh food yesterday.
        GroupFlesh => "group_flesh",
        /// Egg yesterday.
        GroupEggs => "group_eggs",
        /// Fruit and vegetables rich in vitamin A yesterday.
        GroupVitA => "group_vit_a",
        /// Other fruit and vegetables yesterday.
        GroupOtherFv => "group_other_fv",
        /// Best texture at or above what the stage asks for (ours).
        TextureOnStage => "texture_on_stage",
        /// Aged 7 months: solids started (ours).
        SolidsBy7m => "solids_by_7m",
        /// Aged 9 months: takes soft lumps (ours; Coulthard 2009: lumps first after 9 months went with fewer foods at 7 years).
        LumpsBy9m => "lumps_by_9m",
        /// Aged 10 months: takes soft lumps (ours; Northstone 2001).
        LumpsBy10m => "lumps_by_10m",
        /// Aged 15 months: takes family food (ours).
        FamilyFoodBy15m => "family_food_by_15m",
    }
}

/// Whether and how a child counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Judged {
    /// Not meant.
    NotEligible,
    /// Meant, but an answer is missing.
    Missing,
    /// Counted in the denominator, and in the numerator if true.
    Known(bool),
}

fn known(answer: Option<bool>) -> Judged {
    answer.map_or(Judged::Missing, Judged::Known)
}

impl Indicator {
    /// The food group of a row by group.
    #[must_use]
    pub const fn group(self) -> Option<FoodGroup> {
        Some(match self {
            Self::GroupBreastMilk => FoodGroup::BreastMilk,
            Self::GroupGrainsRoots => FoodGroup::GrainsRoots,
            Self::GroupPulsesNuts => FoodGroup::PulsesNuts,
            Self::GroupDairy => FoodGroup::Dairy,
            Self::GroupFlesh => FoodGroup::Flesh,
            Self::GroupEggs => FoodGroup::Eggs,
            Self::GroupVitA => FoodGroup::VitA,
            Self::GroupOtherFv => FoodGroup::OtherFv,
            _ => return None,
        })
    }

    /// Asked at registration: counted of the children registered in the month.
    #[must_use]
    pub const fn is_of_registration(self) -> bool {
        matches!(self, Self::EvBF | Self::EiBF | Self::Ebf2d)
    }

    /// The completed months that it is meant for, first and last.
    #[must_use]
    pub const fn months(self) -> (u32, u32) {
        match self {
            Self::EvBF | Self::EiBF | Self::Ebf2d | Self::BoF => (0, 23),
            Self::Ebf | Self::MixMF => (0, 5),
            Self::Cbf => (12, 23),
            Self::Isssf | Self::MmfBf6To8 => (6, 8),
            Self::MmfBf9To23 => (9, 23),
            Self::SolidsBy7m => (7, 7),
            Self::LumpsBy9m => (9, 9),
            Self::LumpsBy10m => (10, 10),
            Self::FamilyFoodBy15m => (15, 15),
            _ => (6, 23),
        }
    }

    /// Every child of its age is meant, whatever was answered.
    #[must_use]
    pub const fn is_of_everybody(self) -> bool {
        !matches!(
            self,
            Self::MmfBf6To8
                | Self::MmfBf9To23
                | Self::MmfNbf
                | Self::Mmff
                | Self::TextureOnStage
                | Self::SolidsBy7m
                | Self::LumpsBy9m
                | Self::LumpsBy10m
                | Self::FamilyFoodBy15m
        ) && !self.is_of_registration()
    }
}

/// How a registered child counts. One that was never breastfed was not put to the breast and had something else.
#[must_use]
pub fn of_registration(indicator: Indicator, child: &ReportChild) -> Judged {
    let never = child.ever_breastfed == Some(false);
    match indicator {
        Indicator::EvBF => known(child.ever_breastfed),
        Indicator::EiBF => known(if never { Some(false) } else { child.breastfed_within_hour }),
        Indicator::Ebf2d => known(if never { Some(false) } else { child.only_breast_milk_two_days }),
        _ => Judged::NotEligible,
    }
}

/// The answers of a child's month: each from the latest visit that has it. Remembers whether an earlier one was needed.
struct Answers<'a, 'b> {
    seen: &'b Seen<'a>,
    earlier: Cell<bool>,
}

impl<'a> Answers<'a, '_> {
    fn get<T>(&self, item: impl Fn(&'a ReportAnswers) -> Option<T>) -> Option<T> {
        let (found, earlier) = self.seen.latest(|visit| item(&visit.answers))?;
        self.earlier.set(self.earlier.get() || earlier);
        Some(found)
    }

    /// Solid feeds: none if the family said that there was no solid food.
    fn meals(&self) -> Option<u32> {
        self.get(|a| a.meals.map(u32::from).or(if a.solids_yesterday == Some(false) { Some(0) } else { None }))
    }

    /// Milk feeds as counted for the number of feeds.
    fn milks(&self) -> Option<u32> {
        let of = |item: fn(&ReportAnswers) -> Option<u8>| self.get(item).map(u32::from);
        Some(of(|a| a.formula_times)? + of(|a| a.animal_milk_times)? + of(|a| a.drink_yogurt_times)?)
    }

    fn groups(&self, test: impl Fn(&std::collections::BTreeSet<FoodGroup>) -> bool) -> Option<bool> {
        self.get(|a| a.groups.as_ref()).map(test)
    }

    fn diverse(&self) -> Option<bool> {
        self.groups(|groups| groups.len() >= 5)
    }

    /// Enough solid feeds for a breastfed child of this age.
    fn fed_often_with_breast(&self, months: u32) -> Option<bool> {
        self.meals().map(|meals| meals >= if months < 9 { 2 } else { 3 })
    }

    /// At least four feeds, one of them solid.
    fn fed_often_without_breast(&self) -> Option<bool> {
        let (meals, milks) = (self.meals()?, self.milks()?);
        Some(meals + milks >= 4 && meals >= 1)
    }

    /// At least two milk feeds; yoghurt eaten with a spoon counts here.
    fn milk_enough(&self) -> Option<bool> {
        let spoon = self.get(|a| a.spoon_yogurt_times).map(u32::from);
        Some(self.milks()? + spoon? >= 2)
    }

    fn breastfed(&self) -> Option<bool> {
        self.get(|a| a.breastfed)
    }
}

/// How a child seen in the month counts, and whether an answer of an earlier visit than the last was used.
#[must_use]
pub fn of_visits(indicator: Indicator, seen: &Seen<'_>) -> (Judged, bool) {
    let answers = Answers { seen, earlier: Cell::new(false) };
    let judged = judge(indicator, &answers);
    (judged, matches!(judged, Judged::Known(_)) && answers.earlier.get())
}

fn judge(indicator: Indicator, answers: &Answers<'_, '_>) -> Judged {
    use Indicator as I;
    let months = answers.seen.last().months();
    let (from, to) = indicator.months();
    if !(from..=to).contains(&months) {
        return Judged::NotEligible;
    }
    let of = |item: fn(&ReportAnswers) -> Option<bool>| known(answers.get(item));
    let groups = |groups: &[FoodGroup]| answers.groups(|eaten| groups.iter().any(|group| eaten.contains(group)));
    match indicator {
        I::EvBF | I::EiBF | I::Ebf2d => Judged::NotEligible,
        I::Ebf => known(if answers.breastfed() == Some(false) { Some(false) } else { answers.get(|a| a.breast_only) }),
        I::MixMF => known(match answers.breastfed() {
            Some(true) => both(answers.get(|a| a.formula_times), answers.get(|a| a.animal_milk_times)).map(|(f, m)| f > 0 || m > 0),
            other => other,
        }),
        I::Cbf => known(answers.breastfed()),
        I::Isssf => known(answers.get(|a| a.solids_yesterday.or(a.meals.map(|meals| meals > 0)))),
        I::Mdd => known(answers.diverse()),
        I::Mmf => known(answers.breastfed().and_then(|breastfed| often(answers, breastfed, months))),
        I::MmfBf6To8 | I::MmfBf9To23 => match answers.breastfed() {
            Some(true) => known(answers.fed_often_with_breast(months)),
            _ => Judged::NotEligible,
        },
        I::MmfNbf => match answers.breastfed() {
            Some(false) => known(answers.fed_often_without_breast()),
            _ => Judged::NotEligible,
        },
        I::Mmff => match answers.breastfed() {
            Some(false) => known(answers.milk_enough()),
            _ => Judged::NotEligible,
        },
        I::Mad => known(answers.breastfed().and_then(|breastfed| {
            let (diverse, often) = (answers.diverse()?, often(answers, breastfed, months)?);
            let milk = if breastfed { true } else { answers.milk_enough()? };
            Some(diverse && often && milk)
        })),
        I::Eff => known(groups(&[FoodGroup::Eggs, FoodGroup::Flesh])),
        I::Zvf => known(groups(&[FoodGroup::VitA, FoodGroup::OtherFv]).map(|any| !any)),
        I::SwB => of(|a| a.sweet_drink),
        I::Ufc => of(|a| a.unhealthy_food),
        I::BoF => of(|a| a.bottle),
        I::TextureOnStage => match answers.seen.last().answers.texture_expected {
            Some(expected) => known(answers.get(|a| a.texture_best).map(|best| best >= expected)),
            None => Judged::NotEligible,
        },
        I::SolidsBy7m => of(|a| a.solids_started),
        I::LumpsBy9m | I::LumpsBy10m => known(answers.get(|a| a.texture_best).map(|best| best.level() >= 2)),
        I::FamilyFoodBy15m => known(answers.get(|a| a.texture_best).map(|best| best.level() >= 4)),
        I::GroupBreastMilk
        | I::GroupGrainsRoots
        | I::GroupPulsesNuts
        | I::GroupDairy
        | I::GroupFlesh
        | I::GroupEggs
        | I::GroupVitA
        | I::GroupOtherFv => known(indicator.group().and_then(|group| groups(&[group]))),
    }
}

fn often(answers: &Answers<'_, '_>, breastfed: bool, months: u32) -> Option<bool> {
    if breastfed { answers.fed_often_with_breast(months) } else { answers.fed_often_without_breast() }
}

fn both<A, B>(a: Option<A>, b: Option<B>) -> Option<(A, B)> {
    Some((a?, b?))
}
