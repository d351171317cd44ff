//! How urgent a form's ticks are at the least, before or without a judgement: for a form whose danger is saved beside a fault, and
//! for a reaction whose food was forgotten. The rules may say more; this never lowers what they say.

use crate::draft::visit::VisitRead;
use crate::food::ReactionSign;
use crate::food::Response;
use crate::rule::Class;
use crate::visit::DangerSign;
use crate::visit::SwallowTrouble;

/// General danger signs of IMCI (WHO), with those that are urgent at any age (IMCI, from memory).
const NOW: [DangerSign; 10] = [
    DangerSign::CannotFeed,
    DangerSign::VomitsEverything,
    DangerSign::FitsInIllness,
    DangerSign::FitsNow,
    DangerSign::Unconscious,
    DangerSign::Lethargic,
    DangerSign::TroubleBreathing,
    DangerSign::StridorCalm,
    DangerSign::SunkenEyesSlowPinch,
    DangerSign::StiffNeck,
];

/// Breathing, throat and collapse after a food (WAO 2020, in plain words).
const SEVERE: [ReactionSign; 7] = [
    ReactionSign::Wheeze,
    ReactionSign::BreathingTrouble,
    ReactionSign::HoarseCry,
    ReactionSign::SwollenTongueThroat,
    ReactionSign::PaleFloppy,
    ReactionSign::Collapse,
    ReactionSign::SleepyPale,
];

/// The least urgency of what was ticked; `None` when nothing was that must not wait. What cannot be told is at least `today`.
#[must_use]
pub fn pressing(read: &VisitRead) -> Option<Class> {
    if !read.has_danger() {
        return None;
    }
    let v = &read.visit;
    let sign = v.danger_signs.iter().flatten().any(|s| NOW.contains(s));
    let told = v.foods.iter().filter(|f| f.response == Some(Response::Reaction)).filter_map(|f| f.signs.as_ref());
    let severe = told.flatten().any(|s| SEVERE.contains(s));
    let now = sign || severe || v.swallow_trouble == Some(SwallowTrouble::Blue);
    Some(if now { Class::Now } else { Class::Today })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draft::visit::VisitFrame;
    use crate::draft::visit::read_visit;
    use crate::ids::VisitId;

    fn of(pairs: &[(&str, &str)]) -> Option<Class> {
        let pairs: Vec<(String, String)> = pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        let day = |text: &str| text.parse().expect("a date");
        pressing(&read_visit(
            &pairs,
            &VisitFrame {
                id: VisitId(1),
                born: day("2026-03-14"),
                today: day("2026-11-25"),
                foods: &|_| true,
                eaten: &|_| None,
                like: &|_| None,
            },
        ))
    }

    #[test]
    fn what_is_not_known_is_never_less_than_today() {
        assert_eq!(of(&[("danger_none", "yes"), ("feet", "no"), ("weight", "x")]), None);
        assert_eq!(of(&[("danger", "fits_now")]), Some(Class::Now));
        assert_eq!(of(&[("danger", "blood_in_stool")]), Some(Class::Today));
        assert_eq!(of(&[("feet", "yes")]), Some(Class::Today));
        assert_eq!(of(&[("swallow_trouble", "blue")]), Some(Class::Now));
        assert_eq!(of(&[("food_egg", "reaction"), ("rsign_egg", "rash_local")]), Some(Class::Today));
        assert_eq!(of(&[("food_egg", "reaction"), ("rsign_egg", "hoarse_cry")]), Some(Class::Now));
        assert_eq!(of(&[("other1_taken", "reaction")]), Some(Class::Today), "the food and the signs were forgotten");
        assert_eq!(of(&[("other1_taken", "reaction"), ("other1_rsign", "collapse")]), Some(Class::Now));
    }
}
