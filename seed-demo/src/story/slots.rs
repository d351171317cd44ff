//! The days on which a worker means to see a child. It knows no visit.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::add_months;

/// First days and weeks, then months (common practice; six months and two weeks beside them).
const DAYS: [i32; 6] = [3, 7, 14, 42, 70, 98];
const MONTHS: [u32; 15] = [4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24];

/// Every target day of a child, first to last.
pub fn targets(born: NaiveDate) -> Vec<NaiveDate> {
    let mut all: Vec<NaiveDate> = DAYS.iter().map(|&days| add_days(born, days)).collect();
    for months in MONTHS {
        all.push(add_months(born, months));
        if months == 6 {
            all.push(add_days(add_months(born, 6), 14));
        }
    }
    all
}

/// The day after which the last slot is over: 24 months and 14 days.
pub fn last_day(born: NaiveDate) -> NaiveDate {
    add_days(add_months(born, 24), 14)
}
