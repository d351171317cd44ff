//! Where a list goes on, as it stands in an address.

use actix_web::HttpRequest;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::store::follow_ups::desk::LateKey;
use crate::store::latest_first::LatestKey;
use crate::store::lists::DayKey;
use crate::web::extract::query_value;
use crate::web::failure::Failure;

/// A key that stands in an address: what was written can be read.
pub trait PageKey: Sized {
    /// As it stands in the address.
    fn written(&self) -> String;
    /// Read from an address; `None` for what no page has written.
    fn read(text: &str) -> Option<Self>;
}

/// The key at which the page that is asked for begins; `None` for a first page.
///
/// # Errors
/// [`Failure::BadAddress`] for what no page has written.
pub fn page_key<K: PageKey>(req: &HttpRequest, name: &'static str) -> Result<Option<K>, Failure> {
    let text = query_value(req, name).filter(|text| !text.is_empty());
    text.map(|text| K::read(&text).ok_or(Failure::BadAddress(name))).transpose()
}

/// The parts of a key, no more and no fewer.
fn parts<const N: usize>(text: &str) -> Option<[&str; N]> {
    text.split('~').collect::<Vec<_>>().try_into().ok()
}

impl PageKey for String {
    fn written(&self) -> String {
        self.clone()
    }

    fn read(text: &str) -> Option<Self> {
        Some(text.to_owned())
    }
}

impl PageKey for DayKey {
    fn written(&self) -> String {
        format!("{}~{}", self.on, self.code)
    }

    fn read(text: &str) -> Option<Self> {
        let [on, code] = parts(text)?;
        Some(Self { on: on.parse().ok()?, code: code.to_owned() })
    }
}

impl PageKey for LatestKey {
    fn written(&self) -> String {
        format!("{}~{}~{}", self.on, self.entry_seq, self.place)
    }

    fn read(text: &str) -> Option<Self> {
        let [on, entry_seq, place] = parts(text)?;
        Some(Self { on: on.parse().ok()?, entry_seq: entry_seq.parse().ok()?, place: place.parse().ok()? })
    }
}

impl PageKey for LateKey {
    fn written(&self) -> String {
        format!("{}~{}~{}~{}~{}", self.late_from, self.class.code(), self.born, self.code, self.rule.code())
    }

    fn read(text: &str) -> Option<Self> {
        let [late_from, class, born, code, rule] = parts(text)?;
        Some(Self {
            late_from: late_from.parse().ok()?,
            class: Class::from_code(class).ok()?,
            born: born.parse().ok()?,
            code: code.to_owned(),
            rule: RuleId::from_code(rule).ok()?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_survive_the_address_and_nothing_else_is_one() {
        let late = LateKey {
            late_from: "2026-11-20".parse().expect("a day"),
            class: Class::TwoDays,
            born: "2026-01-31".parse().expect("a day"),
            code: "K7QF2MZC".to_owned(),
            rule: RuleId::WeightLoss,
        };
        assert_eq!(LateKey::read(&late.written()), Some(late));
        for wrong in ["", "2026-11-20", "2026-11-20~week~2026-01-31~K~weight.loss~x", "x~week~2026-01-31~K~weight.loss"] {
            assert_eq!(LateKey::read(wrong), None, "{wrong}");
        }
        let day = DayKey { on: "2026-11-20".parse().expect("a day"), code: "K7QF2MZC".to_owned() };
        assert_eq!(DayKey::read(&day.written()), Some(day));
        let latest = LatestKey { on: "2026-11-20".parse().expect("a day"), entry_seq: 1_234, place: 2 };
        assert_eq!(LatestKey::read(&latest.written()), Some(latest));
        for wrong in ["", "2026-11-20", "2026-11-20~1~2~3", "20 November~1~2"] {
            assert_eq!((DayKey::read(wrong).is_none(), LatestKey::read(wrong).is_none()), (true, true), "{wrong}");
        }
    }
}
