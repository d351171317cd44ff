//! What was typed into a form, exactly, so that it can be shown again. Knows no field of any page.

/// Names and values of a form in the order sent; a name may come several times.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Filled(pub Vec<(String, String)>);

impl Filled {
    /// The first value of a field; empty if it was not sent.
    #[must_use]
    pub fn one(&self, name: &str) -> &str {
        self.0.iter().find(|(n, _)| n == name).map_or("", |(_, value)| value)
    }

    /// Every value of a field, such as the ticks of a list.
    #[must_use]
    pub fn all(&self, name: &str) -> Vec<&str> {
        self.0.iter().filter(|(n, _)| n == name).map(|(_, value)| value.as_str()).collect()
    }

    /// Whether a field was sent with this value.
    #[must_use]
    pub fn has(&self, name: &str, value: &str) -> bool {
        self.0.iter().any(|(n, v)| n == name && v == value)
    }

    /// With one more value, e.g. to fill a form from what is stored.
    #[must_use]
    pub fn with(mut self, name: &str, value: impl Into<String>) -> Self {
        self.0.push((name.to_owned(), value.into()));
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_may_come_several_times_or_never() {
        let form = Filled::default().with("food", "egg").with("food", "fish").with("note", "");
        assert_eq!(form.one("food"), "egg");
        assert_eq!(form.all("food"), ["egg", "fish"]);
        assert!(form.has("food", "fish") && !form.has("food", "bean"));
        assert_eq!((form.one("note"), form.one("weight")), ("", ""));
        assert!(form.all("weight").is_empty());
    }
}
