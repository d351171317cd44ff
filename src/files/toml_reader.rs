//! Reads TOML key by key and keeps every fault. It knows neither protocols nor cases.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::ops::Range;
use std::ops::RangeInclusive;

use chrono::NaiveDate;
use toml::Spanned;
use toml::de::DeArray;
use toml::de::DeTable;
use toml::de::DeValue;

use super::faults::Faults;
use super::saying::Saying;
use super::saying::say;

/// Parses a file; syntax faults are all added.
pub fn document<'t>(text: &'t str, faults: &mut Faults<'t>) -> Spanned<DeTable<'t>> {
    let (table, errors) = DeTable::parse_recoverable(text);
    for error in errors {
        let span = error.span().unwrap_or(0..0);
        faults.not_toml(&span, error.message());
    }
    table
}

/// A table that is read key by key.
pub struct Table<'a, 't> {
    table: &'a DeTable<'t>,
    span: Range<usize>,
    path: String,
    used: BTreeSet<String>,
}

impl<'a, 't> Table<'a, 't> {
    /// The whole file.
    pub fn root(document: &'a Spanned<DeTable<'t>>) -> Self {
        Self { table: document.get_ref(), span: document.span(), path: String::new(), used: BTreeSet::new() }
    }

    /// Where it stands in the text.
    pub fn span(&self) -> &Range<usize> {
        &self.span
    }

    /// Gives it a name of its own in faults, e.g. a rule's id.
    pub fn rename(&mut self, path: String) {
        self.path = path;
    }

    /// Its name in faults.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The full name of a key.
    pub fn key(&self, key: &str) -> String {
        if self.path.is_empty() { key.to_owned() } else { format!("{}.{key}", self.path) }
    }

    /// Whether a key is there.
    pub fn has(&self, key: &str) -> bool {
        self.table.iter().any(|(k, _)| k.get_ref() == key)
    }

    /// Keys not asked for yet.
    pub fn unread_keys(&self) -> Vec<String> {
        self.table.iter().map(|(k, _)| k.get_ref().to_string()).filter(|k| !self.used.contains(k)).collect()
    }

    /// Whether a key holds this very text.
    pub fn is_text(&self, key: &str, text: &str) -> bool {
        self.table.iter().any(|(k, value)| k.get_ref() == key && value.get_ref().as_str() == Some(text))
    }

    fn get(&mut self, key: &str) -> Option<&'a Spanned<DeValue<'t>>> {
        let (_, value) = self.table.iter().find(|(k, _)| k.get_ref() == key)?;
        self.used.insert(key.to_owned());
        Some(value)
    }

    /// Where a key's value stands, or the table if it is absent.
    pub fn span_of(&self, key: &str) -> Range<usize> {
        self.table.iter().find(|(k, _)| k.get_ref() == key).map_or_else(|| self.span.clone(), |(_, value)| value.span())
    }

    /// Adds a fault about a key.
    pub fn fault(&self, faults: &mut Faults<'_>, key: &str, what: Saying) {
        faults.add(&self.span_of(key), &self.key(key), what);
    }

    /// Says that a key must be there, if it is not.
    pub fn need(&self, faults: &mut Faults<'_>, key: &str, what: Saying) -> bool {
        let there = self.has(key);
        if !there {
            faults.add(&self.span, &self.key(key), say("is missing; add {what}").with_words("what", what));
        }
        there
    }

    /// A value of some kind; `None` if absent or, with a fault, if it is of another kind.
    fn value<T>(&mut self, faults: &mut Faults<'_>, key: &str, what: Saying, read: impl FnOnce(&'a DeValue<'t>) -> Option<T>) -> Option<T> {
        let value = self.get(key)?;
        let got = read(value.get_ref());
        if got.is_none() {
            faults.add(&value.span(), &self.key(key), must_be(what, value.get_ref()));
        }
        got
    }

    /// Text, if there.
    pub fn text(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<String> {
        self.value(faults, key, say("text in quotes"), |v| v.as_str().map(str::to_owned))
    }

    /// Text that must be there and not be empty; empty after a fault.
    pub fn need_text(&mut self, faults: &mut Faults<'_>, key: &str, what: Saying) -> String {
        if !self.need(faults, key, what.clone()) {
            return String::new();
        }
        let text = self.text(faults, key);
        if text.as_ref().is_some_and(|text| text.trim().is_empty()) {
            self.fault(faults, key, say("is empty; write {what}").with_words("what", what));
        }
        text.unwrap_or_default()
    }

    /// Yes or no, if there.
    pub fn flag(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<bool> {
        self.value(faults, key, say("true or false"), DeValue::as_bool)
    }

    /// A whole number within a range, if there.
    pub fn whole(&mut self, faults: &mut Faults<'_>, key: &str, range: RangeInclusive<i64>) -> Option<i64> {
        self.value(faults, key, whole_within(&range), |v| whole(v).filter(|n| range.contains(n)))
    }

    /// A whole number that must be there; the least of the range after a fault.
    pub fn need_whole(&mut self, faults: &mut Faults<'_>, key: &str, range: RangeInclusive<i64>) -> i64 {
        let least = *range.start();
        if !self.need(faults, key, whole_within(&range)) {
            return least;
        }
        self.whole(faults, key, range).unwrap_or(least)
    }

    /// A number with or without decimals, if there.
    pub fn number(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<f64> {
        self.value(faults, key, say("a number"), number)
    }

    /// A day, if there.
    pub fn date(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<NaiveDate> {
        self.value(faults, key, say("a date like {example}").with("example", "2026-01-31"), date)
    }

    /// A word of a closed list, if there.
    pub fn word<T>(&mut self, faults: &mut Faults<'_>, key: &str, read: impl FnOnce(&str) -> Result<T, domain::UnknownCode>) -> Option<T> {
        let text = self.text(faults, key)?;
        match read(&text) {
            Ok(word) => Some(word),
            Err(unknown) => {
                self.fault(faults, key, unknown_word(&unknown));
                None
            }
        }
    }

    /// The values of a list, if there, each with its place.
    pub fn list(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<Vec<Item<'a, 't>>> {
        let path = self.key(key);
        let array: &'a DeArray<'t> = self.value(faults, key, say("a list in square brackets"), DeValue::as_array)?;
        Some(array.iter().enumerate().map(|(at, value)| Item { value, path: format!("{path}[{}]", at + 1) }).collect())
    }

    /// The words of a list, if there.
    pub fn words<T>(
        &mut self,
        faults: &mut Faults<'_>,
        key: &str,
        read: impl Fn(&str) -> Result<T, domain::UnknownCode>,
    ) -> Option<Vec<T>> {
        let path = self.key(key);
        let items = self.list(faults, key)?;
        let mut words = Vec::with_capacity(items.len());
        for item in items {
            match item.value.get_ref().as_str().map(&read) {
                Some(Ok(word)) => words.push(word),
                Some(Err(unknown)) => faults.add(&item.span(), &path, unknown_word(&unknown)),
                None => faults.add(&item.span(), &path, say("holds something that is not text in quotes; put it in quotes")),
            }
        }
        Some(words)
    }

    /// A table inside, if there.
    pub fn table(&mut self, faults: &mut Faults<'_>, key: &str) -> Option<Self> {
        let span = self.span_of(key);
        let path = self.key(key);
        let table = self.value(faults, key, say("a table"), DeValue::as_table)?;
        Some(Self { table, span, path, used: BTreeSet::new() })
    }

    /// The tables of a list of tables; none if it is absent.
    pub fn tables(&mut self, faults: &mut Faults<'_>, key: &str) -> Vec<Self> {
        let Some(items) = self.list(faults, key) else { return Vec::new() };
        items.into_iter().filter_map(|item| item.into_table(faults)).collect()
    }

    /// Texts by key, e.g. by language, if there.
    pub fn texts(&mut self, faults: &mut Faults<'_>, key: &str) -> BTreeMap<String, String> {
        let Some(mut table) = self.table(faults, key) else { return BTreeMap::new() };
        let keys = table.unread_keys();
        keys.into_iter().filter_map(|key| table.text(faults, &key).map(|text| (key, text))).collect()
    }

    /// Says of each key that nobody asked for that it is not known.
    pub fn finish(self, faults: &mut Faults<'_>) {
        for (key, _) in self.table {
            if !self.used.contains(key.get_ref().as_ref()) {
                faults.add(&key.span(), &self.key(key.get_ref()), unknown_key());
            }
        }
    }
}

/// A value of a list.
pub struct Item<'a, 't> {
    value: &'a Spanned<DeValue<'t>>,
    path: String,
}

impl<'a, 't> Item<'a, 't> {
    /// Where it stands.
    pub fn span(&self) -> Range<usize> {
        self.value.span()
    }

    /// Its name in faults.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// As text.
    pub fn as_text(&self) -> Option<&'a str> {
        self.value.get_ref().as_str()
    }

    /// As a whole number.
    pub fn as_whole(&self) -> Option<i64> {
        whole(self.value.get_ref())
    }

    /// As a number.
    pub fn as_number(&self) -> Option<f64> {
        number(self.value.get_ref())
    }

    /// As a day.
    pub fn as_date(&self) -> Option<NaiveDate> {
        date(self.value.get_ref())
    }

    /// As a list.
    pub fn as_list(&self) -> Option<Vec<Self>> {
        let array = self.value.get_ref().as_array()?;
        Some(array.iter().enumerate().map(|(at, value)| Self { value, path: format!("{}[{}]", self.path, at + 1) }).collect())
    }

    /// As a table.
    pub fn into_table(self, faults: &mut Faults<'_>) -> Option<Table<'a, 't>> {
        let table = self.value.get_ref().as_table();
        if table.is_none() {
            faults.add(&self.span(), &self.path, must_be(say("a table"), self.value.get_ref()));
        }
        Some(Table { table: table?, span: self.value.span(), path: self.path, used: BTreeSet::new() })
    }
}

fn whole(value: &DeValue<'_>) -> Option<i64> {
    let integer = value.as_integer()?;
    i64::from_str_radix(integer.as_str(), integer.radix()).ok()
}

fn number(value: &DeValue<'_>) -> Option<f64> {
    let number = match value {
        DeValue::Float(float) => float.as_str().parse().ok()?,
        other => f64::from(i32::try_from(whole(other)?).ok()?),
    };
    number.is_finite().then_some(number)
}

fn date(value: &DeValue<'_>) -> Option<NaiveDate> {
    let stamp = value.as_datetime()?;
    if stamp.time.is_some() || stamp.offset.is_some() {
        return None;
    }
    let date = stamp.date?;
    NaiveDate::from_ymd_opt(i32::from(date.year), u32::from(date.month), u32::from(date.day))
}

fn whole_within(range: &RangeInclusive<i64>) -> Saying {
    say("a whole number from {least} to {most}").with("least", range.start()).with("most", range.end())
}

/// A key that nobody asked for.
pub fn unknown_key() -> Saying {
    say("is not a known key; correct its spelling or remove it")
}

/// What is wrong with a word of a closed list.
pub fn unknown_word(unknown: &domain::UnknownCode) -> Saying {
    let found = format!("{:?}", unknown.found);
    say("unknown {kind}: {found}; correct its spelling").with_words("kind", say(unknown.kind)).with("found", found)
}

fn must_be(what: Saying, value: &DeValue<'_>) -> Saying {
    let said = say("must be {what}, not {found}").with_words("what", what);
    match value {
        DeValue::String(text) => said.with_words("found", say("the text {text}").with("text", format!("{text:?}"))),
        DeValue::Integer(number) => said.with("found", number),
        DeValue::Float(number) => said.with("found", number),
        DeValue::Boolean(flag) => said.with("found", flag),
        DeValue::Datetime(stamp) => said.with("found", stamp),
        DeValue::Array(_) => said.with_words("found", say("a list")),
        DeValue::Table(_) => said.with_words("found", say("a table")),
    }
}
