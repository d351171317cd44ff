//! Reads the rules of a protocol file: which are on, their figures, classes and sources.

use std::collections::BTreeMap;

use domain::growth::ZHundredths;
use domain::protocol::DayRange;
use domain::protocol::ReadRule;
use domain::protocol::ReadRules;
use domain::protocol::Rules;
use domain::protocol::TextureStep;
use domain::rule::Class;
use domain::rule::RuleId;

use super::super::faults::Faults;
use super::super::saying::Saying;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::header::source;

/// `[[rule]]`: every rule once.
pub fn rules(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<Rules> {
    if !root.need(f, "rule", say("the rules as [[rule]] tables, as in the default protocol")) {
        return None;
    }
    let span = root.span_of("rule");
    let mut by_id = BTreeMap::new();
    for mut table in root.tables(f, "rule") {
        table.need(f, "id", say("the rule's id, e.g. {example}").with("example", "\"weight.drop\""));
        let Some(id) = table.word(f, "id", RuleId::from_code) else { continue };
        table.rename(format!("rule {}", id.code()));
        if by_id.contains_key(&id) {
            table.fault(f, "id", say("stands twice; keep one"));
        }
        by_id.insert(id, table);
    }
    let mut missing = false;
    for id in RuleId::ALL {
        if !by_id.contains_key(id) {
            missing = true;
            let what = say("the rule {rule} is missing; copy it from the default protocol, and write {off} if you do not use it")
                .with("rule", format!("{:?}", id.code()))
                .with("off", "on = false");
            f.add(&span, "rule", what);
        }
    }
    // The others are read even if one is missing: whoever mends the file wants to know of all faults.
    let mut reader = Reader { f, by_id };
    let rules = Rules::read(&mut reader);
    for (_, table) in std::mem::take(&mut reader.by_id) {
        table.finish(f);
    }
    (!missing).then_some(rules)
}

struct Reader<'r, 'f, 'a, 't> {
    f: &'r mut Faults<'f>,
    by_id: BTreeMap<RuleId, Table<'a, 't>>,
}

struct One<'r, 'f, 'a, 't> {
    f: &'r mut Faults<'f>,
    table: Option<&'r mut Table<'a, 't>>,
}

impl<'f, 'a, 't> ReadRules for Reader<'_, 'f, 'a, 't> {
    type One<'o>
        = One<'o, 'f, 'a, 't>
    where
        Self: 'o;

    fn rule(&mut self, id: RuleId) -> (bool, String, Self::One<'_>) {
        let Some(table) = self.by_id.get_mut(&id) else { return (false, String::new(), One { f: self.f, table: None }) };
        let on = table.flag(self.f, "on").unwrap_or(true);
        if !on && id.is_safety() {
            table.fault(
                self.f,
                "on",
                say("this rule guards against danger and cannot be switched off; write {on}").with("on", "on = true"),
            );
        }
        let from = source(table, self.f);
        (on, from, One { f: self.f, table: Some(table) })
    }
}

impl<'a, 't> One<'_, '_, 'a, 't> {
    fn ask<T>(&mut self, key: &str, what: Saying, read: impl FnOnce(&mut Table<'a, 't>, &mut Faults<'_>) -> Option<T>) -> Option<T> {
        let table = self.table.as_deref_mut()?;
        if !table.need(self.f, key, what) {
            return None;
        }
        read(table, self.f)
    }
}

impl ReadRule for One<'_, '_, '_, '_> {
    fn whole(&mut self, key: &'static str) -> u32 {
        self.ask(key, say("a whole number"), |t, f| t.whole(f, key, 0..=100_000)).and_then(|n| u32::try_from(n).ok()).unwrap_or(0)
    }

    fn z(&mut self, key: &'static str) -> ZHundredths {
        let z = self.ask(key, say("a z-score, e.g. {example}").with("example", "-2.00"), |t, f| {
            let hundredths = t.number(f, key)? * 100.0;
            if (hundredths - hundredths.round()).abs() > 1e-6 || hundredths.abs() > 2_000.0 {
                t.fault(f, key, say("must be a z-score from -20 to 20 with at most two decimals"));
                return None;
            }
            // Within ±2000 by the check above.
            Some(ZHundredths::new(hundredths.round() as i32))
        });
        z.unwrap_or(ZHundredths::new(0))
    }

    fn class(&mut self, key: &'static str) -> Class {
        self.ask(key, say("an urgency class, e.g. {example}").with("example", "\"week\""), |t, f| t.word(f, key, Class::from_code))
            .unwrap_or(Class::Month)
    }

    fn days(&mut self, key: &'static str) -> DayRange {
        let range = self.ask(key, say("a range of days [from, to]"), |t, f| {
            let days: Vec<Option<i32>> = t.list(f, key)?.iter().map(|item| i32::try_from(item.as_whole()?).ok()).collect();
            if let [Some(least), Some(most)] = days[..]
                && (0..=most).contains(&least)
            {
                return Some(DayRange { least, most });
            }
            t.fault(f, key, say("must be [from, to] in days, from 0, the second not less than the first"));
            None
        });
        range.unwrap_or(DayRange { least: 0, most: 0 })
    }

    fn number(&mut self, key: &'static str) -> f64 {
        let number = self.ask(key, say("a number above 0"), |t, f| {
            let number = t.number(f, key)?;
            if number <= 0.0 {
                t.fault(f, key, say("must be above 0"));
            }
            Some(number)
        });
        number.unwrap_or(1.0)
    }

    fn steps(&mut self, key: &'static str) -> Vec<TextureStep> {
        let what = say("the steps: {example}").with("example", "[ { from_months = 8, to_months = 9, below = 2, class = \"month\" } ]");
        let Some(true) = self.table.as_deref_mut().map(|t| t.need(self.f, key, what)) else { return Vec::new() };
        let Some(table) = self.table.as_deref_mut() else { return Vec::new() };
        let mut steps = Vec::new();
        for mut step in table.tables(self.f, key) {
            let mut month = |t: &mut Table<'_, '_>, key: &str| u32::try_from(t.need_whole(self.f, key, 0..=60)).unwrap_or(0);
            let (from_months, to_months) = (month(&mut step, "from_months"), month(&mut step, "to_months"));
            if to_months <= from_months {
                step.fault(self.f, "to_months", say("must be more than {key}").with("key", "from_months"));
            }
            let below = u8::try_from(step.need_whole(self.f, "below", 1..=4)).unwrap_or(1);
            step.need(self.f, "class", say("an urgency class, e.g. {example}").with("example", "\"week\""));
            let class = step.word(self.f, "class", Class::from_code).unwrap_or(Class::Month);
            steps.push(TextureStep { from_months, to_months, below, class });
            step.finish(self.f);
        }
        steps
    }
}
