//! Figures of the rules on feeding. It tests nothing.

use crate::protocol::read::TextureStep;
use crate::rule::Class;

use super::thresholds;

thresholds! {
    /// Solids before the start age.
    SolidsEarly {
        /// Below this age in days it is more urgent.
        very_early_under_days: i32,
        /// Urgency then.
        class_very_early: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// Drinks besides milk too early.
    LiquidsEarly {
        /// Below this age in days.
        under_age_days: i32,
        /// Urgency.
        class: Class,
    }
    /// Animal milk as a drink too early.
    MilkAnimalEarly {
        /// Below this completed month.
        under_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Solids not started in time.
    SolidsLate {
        /// Stage age: from this completed month and the days of grace.
        from_months: u32,
        /// Stage age: from this completed month it is more urgent.
        later_from_months: u32,
        /// From this completed month of chronological age too.
        chronological_from_months: u32,
        /// Where readiness was asked: so many signs, the steady head among them, else the first step waits.
        readiness_signs_least: u32,
        /// Urgency of the first step.
        class_first: Class,
        /// Urgency later.
        class: Class,
    }
    /// Texture behind the stage.
    TextureBehind {
        /// The first that matches counts.
        steps: Vec<TextureStep>,
    }
    /// Food too watery.
    TextureWatery {
        /// Stage age: from this completed month.
        from_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Too few meals; the fewest stand with the stages.
    MealsFew {
        /// From this completed month.
        from_months: u32,
        /// Urgency.
        class: Class,
        /// Urgency of no meal while ill, or twice.
        class_none_again: Class,
    }
    /// Too few milk feeds, not breastfed; from 6 months the fewest stand with the stages.
    MilkFew {
        /// Fewest feeds a day under 6 completed months.
        least_under_6m: u32,
        /// Up to so many feeds are very few under 6 months.
        very_few_under_6m: u32,
        /// Urgency of very few feeds under 6 months.
        class_very_few_under_6m: Class,
        /// Urgency under 6 months otherwise.
        class_under_6m: Class,
        /// Urgency from 6 to 11 months.
        class_6_to_11m: Class,
        /// Urgency from 12 months on.
        class_from_12m: Class,
    }
    /// Too few food groups.
    DiversityLow {
        /// From this completed month.
        from_months: u32,
        /// Fewest groups.
        least: u32,
        /// Up to so many groups are very few.
        very_few: u32,
        /// Urgency of very few.
        class_very_few: Class,
        /// Urgency if it held before.
        class_again: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// No iron source.
    IronNone {
        /// From this completed month.
        from_months: u32,
        /// Held before: at the latest visit at least so many days earlier.
        again_after_days: i32,
        /// Urgency if it held before.
        class_again: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// No animal food.
    AnimalFoodNone {
        /// From this completed month.
        from_months: u32,
        /// Urgency.
        class: Class,
    }
    /// No fruit or vegetable.
    VegFruitNone {
        /// From this completed month.
        from_months: u32,
        /// Urgency.
        class: Class,
    }
    /// Sweet drink.
    DrinkSweet {
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Bottle with a teat.
    BottleUsed {
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Honey too early.
    FoodHoney {
        /// Below this completed month.
        under_months: u32,
        /// Days after honey in which the signs are watched for.
        watch_days: i32,
        /// Urgency with a sign.
        class_signs: Class,
        /// Urgency otherwise.
        class: Class,
    }
    /// A food in a form that can choke.
    FoodChoking {
        /// Urgency.
        class: Class,
    }
    /// Tea, coffee, salt or sugar.
    FoodLowValue {
        /// Tea and coffee count below this completed month.
        tea_coffee_under_months: u32,
        /// Added salt and sugar count below this completed month.
        salt_sugar_under_months: u32,
        /// Urgency.
        class: Class,
    }
    /// A food before the local waiting age; the ages stand with the foods.
    FoodLocalWait {
        /// Urgency.
        class: Class,
    }
    /// Breastfeeding stopped.
    BreastfeedingStopped {
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 to 11 months.
        class_6_to_11m: Class,
        /// Urgency from 12 months on.
        class_from_12m: Class,
    }
    /// Breastfeeding is difficult.
    BreastfeedingTrouble {
        /// Urgency under 6 completed months.
        class_under_6m: Class,
        /// Urgency from 6 months on.
        class_from_6m: Class,
    }
    /// Refuses most food.
    AppetitePoor {
        /// For at least so many days.
        least_days: u32,
        /// Urgency if a follow-up on growth is open.
        class_with_growth: Class,
        /// Urgency otherwise.
        class: Class,
    }
}
