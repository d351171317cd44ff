//! Several children of one worker are given to another at once. Field names: `child` (code and version, joined by `~`), `to`, `reason`.

use crate::draft::Reader;
use crate::draft::desk::reason;
use crate::draft::office::MOST_SIGN_IN_NAME;
use crate::fault::Fault;
use crate::fault::Faults;

/// Which children go to whom, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GiveForm {
    /// Codes of the children, each with the version of its record that was shown.
    pub children: Vec<(String, u32)>,
    /// Sign-in name of who takes them.
    pub to: String,
    /// Why.
    pub reason: String,
}

/// Reads it.
///
/// # Errors
/// Every fault at once.
pub fn read_give(pairs: &[(String, String)]) -> Result<GiveForm, Faults> {
    let mut r = Reader::new(pairs);
    let one = |text: &str| text.split_once('~').and_then(|(code, version)| Some((code.to_owned(), version.parse().ok()?)));
    let ticked: Vec<&str> = r.all("child").collect();
    let children: Option<Vec<(String, u32)>> = ticked.into_iter().map(one).collect();
    match &children {
        None => r.fault("child", Fault::UnknownChoice),
        Some(children) if children.is_empty() => r.fault("child", Fault::NoChild),
        Some(_) => {}
    }
    let to = r.required("colleague", MOST_SIGN_IN_NAME);
    let reason = reason(&mut r, "reason");
    let form = (|| Some(GiveForm { children: children?, to: to?, reason: reason? }))();
    r.faults.or(form)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(list: &[(&str, &str)]) -> Result<GiveForm, Vec<String>> {
        let pairs: Vec<(String, String)> = list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect();
        read_give(&pairs).map_err(|faults| faults.iter().map(|(field, fault)| format!("{field} {}", fault.code())).collect())
    }

    #[test]
    fn every_fault_is_told_at_once() {
        let whole = [("child", "K7~1"), ("child", "M2~4"), ("colleague", "tamsi"), ("reason", "Nearer to her own village")];
        let form = read(&whole).expect("whole");
        assert_eq!(form.children, [("K7".to_owned(), 1), ("M2".to_owned(), 4)]);
        assert_eq!(read(&[]), Err(vec!["child no-child".to_owned(), "colleague missing".to_owned(), "reason missing".to_owned()]));
        assert_eq!(read(&[("child", "K7"), ("colleague", "tamsi"), ("reason", "short")]).expect_err("two").len(), 2);
    }
}
