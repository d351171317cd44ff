//! What a supervisor sees first: urgent referrals without an answer, follow-ups past their clock, children not seen for long,
//! and who could use a hand. Today comes from the lists; a past day is worked out anew.

mod past;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::protocol::Protocol;
use domain::protocol::Protocols;
use domain::role::Action;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::team;
use crate::service::team::Team;
use crate::store::Scope;
use crate::store::follow_ups::FollowUpLine;
use crate::store::follow_ups::desk;
use crate::store::follow_ups::desk::LateKey;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::lists;
use crate::store::lists::LostDays;
use crate::store::lists::RoundRow;

/// Late follow-ups on one page.
pub const A_PAGE: usize = 50;
/// Late follow-ups on a list for a meeting: more than can be talked about in one.
pub const FOR_A_MEETING: usize = 500;
/// Urgent referrals and children not seen that are shown at once.
const SHORT_LIST: usize = 20;

/// The days past due from which a supervisor sees each class as late, by the protocol in force on a day.
#[must_use]
pub fn clock(protocols: &Protocols, on: NaiveDate) -> Vec<(Class, i32)> {
    let classes = &protocols.on(on).classes;
    Class::ALL.iter().map(|class| (*class, classes.of(*class).supervisor_after_days)).collect()
}

/// A food on hold for more days than this comes to the supervisor, so that egg, fish and beans are not lost for good (our own choice).
pub const HELD_DAYS: i32 = 14;

/// What the list is narrowed to, as codes from the address.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sieve {
    /// Sign-in name of a worker.
    pub worker: Option<String>,
    /// Code of an area.
    pub area: Option<String>,
    /// Class.
    pub class: Option<Class>,
    /// Rule.
    pub rule: Option<RuleId>,
    /// At least so many days past due.
    pub days: Option<u16>,
}

/// A child on the desk.
#[derive(Debug, Clone, PartialEq)]
pub struct DeskChild {
    /// In links.
    pub code: String,
    /// What it is called.
    pub called: String,
    /// Birth date.
    pub born: NaiveDate,
    /// Where.
    pub area: AreaId,
    /// Name of the village.
    pub area_name: String,
    /// With whom.
    pub worker: PersonId,
    /// Their name.
    pub worker_name: String,
}

/// Why a child stands on the desk.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// Rule.
    pub rule: RuleId,
    /// Class.
    pub class: Class,
    /// Its numbers.
    pub evidence: Evidence,
    /// The day of the check.
    pub due_on: NaiveDate,
}

/// An urgent referral without an answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Unanswered {
    /// Whose.
    pub child: DeskChild,
    /// What for; `None` when only a referral of a lesser class waits.
    pub reason: Option<Reason>,
    /// Since when nobody wrote an outcome, for an emergency or a referral of the day.
    pub since: Option<NaiveDate>,
}

/// A late follow-up.
#[derive(Debug, Clone, PartialEq)]
pub struct Late {
    /// Whose.
    pub child: DeskChild,
    /// What for.
    pub reason: Reason,
    /// Days past due.
    pub days: i32,
}

/// A child not seen for long.
#[derive(Debug, Clone, PartialEq)]
pub struct Unseen {
    /// Who.
    pub child: DeskChild,
    /// Days since the last visit, or since registration.
    pub days: i32,
    /// Whether it was ever seen.
    pub ever: bool,
}

/// A child with a food on hold for long.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Who.
    pub child: DeskChild,
    /// Since when the oldest waits.
    pub since: NaiveDate,
}

/// The desk on a day.
#[derive(Debug, Clone)]
pub struct Desk {
    /// Urgent referrals without an answer, most urgent first.
    pub urgent: Vec<Unanswered>,
    /// Whether there are more.
    pub more_urgent: bool,
    /// A page of late follow-ups, longest past their clock first.
    pub late: Vec<Late>,
    /// Where the next page begins.
    pub next: Option<LateKey>,
    /// How many are late in the whole scope.
    pub late_in_all: u64,
    /// Children not seen for long.
    pub unseen: Vec<Unseen>,
    /// Whether there are more.
    pub more_unseen: bool,
    /// Children with a food on hold for more than [`HELD_DAYS`] days, longest first.
    pub held: Vec<Held>,
    /// Whether there are more.
    pub more_held: bool,
    /// Days after which a child counts as not seen, under and from 12 months; `None` when the protocol has the list switched off.
    pub not_seen_days: Option<(i32, i32)>,
    /// Who and where.
    pub team: Team,
}

/// Opens the desk on a day, narrowed, from after `after`.
///
/// # Errors
/// [`Refusal::NotFound`] for a worker or area outside the team; [`Refusal::Forbidden`], [`Refusal::Store`].
pub async fn open(ctx: &Context, sieve: &Sieve, after: Option<&LateKey>, as_of: NaiveDate) -> Result<Desk, Refusal> {
    page_of(ctx, sieve, after, as_of, A_PAGE).await
}

/// The desk with as many late follow-ups as a meeting can talk about.
///
/// # Errors
/// As [`open`].
pub async fn meeting(ctx: &Context, sieve: &Sieve, as_of: NaiveDate) -> Result<Desk, Refusal> {
    page_of(ctx, sieve, None, as_of, FOR_A_MEETING).await
}

/// The same for a file, written to the audit as it leaves the program.
///
/// # Errors
/// As [`open`].
pub async fn meeting_file(ctx: &Context, sieve: &Sieve, as_of: NaiveDate) -> Result<Desk, Refusal> {
    let desk = meeting(ctx, sieve, as_of).await?;
    ctx.db.write(async |tx| Ok::<_, Refusal>(audit::note(tx, ctx, "late.download", "late", &as_of.to_string(), &[]).await?)).await?;
    Ok(desk)
}

async fn page_of(ctx: &Context, sieve: &Sieve, after: Option<&LateKey>, as_of: NaiveDate, a_page: usize) -> Result<Desk, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .read(async |tx| {
            let team = team::load(tx, ctx).await?;
            let narrowed = narrowed(&team, sieve, as_of)?;
            if as_of < ctx.today {
                return past::desk(tx, ctx, team, narrowed, sieve.class, (after, a_page), as_of).await;
            }
            let scope = Scope::Supervisor { person: ctx.actor.person };
            let clock = clock(&ctx.protocols, ctx.today);
            let shown: Vec<_> = clock.iter().copied().filter(|(class, _)| sieve.class.is_none_or(|wanted| wanted == *class)).collect();
            let limit = |most: usize| u64::try_from(most + 1).unwrap_or(u64::MAX);
            let mut late = desk::past_clock_in_scope(tx, scope, narrowed, &shown, ctx.today, after, limit(a_page)).await?;
            let more_late = cut(&mut late, a_page);
            let next = late.last().filter(|_| more_late).map(|line| desk::late_key(line, &clock));
            let mut urgent = lists::unanswered_in_scope(tx, scope, ctx.today, None, limit(SHORT_LIST)).await?;
            let more_urgent = cut(&mut urgent, SHORT_LIST);
            let not_seen_days = not_seen_days(ctx.protocols.on(ctx.today));
            let mut unseen = match not_seen_days {
                Some(days) => lists::lost_in_scope(tx, scope, lost_days(ctx.today, days), None, limit(SHORT_LIST)).await?,
                None => Vec::new(),
            };
            let more_unseen = cut(&mut unseen, SHORT_LIST);
            let mut held = lists::held_in_scope(tx, scope, held_by(ctx.today), limit(SHORT_LIST)).await?;
            let more_held = cut(&mut held, SHORT_LIST);
            Ok(Desk {
                urgent: urgent.into_iter().map(unanswered).collect(),
                more_urgent,
                late_in_all: team.tallies.iter().map(|t| t.late).sum(),
                late: late.into_iter().map(|line| late_line(line, ctx.today)).collect(),
                next,
                unseen: unseen.into_iter().map(|row| unseen_line(row, ctx.today)).collect(),
                more_unseen,
                held: held.into_iter().filter_map(held_line).collect(),
                more_held,
                not_seen_days,
                team,
            })
        })
        .await
}

fn cut<T>(list: &mut Vec<T>, most: usize) -> bool {
    let more = list.len() > most;
    list.truncate(most);
    more
}

fn child_of(row: &RoundRow) -> DeskChild {
    DeskChild {
        code: row.code.clone(),
        called: row.known_as.clone().unwrap_or_else(|| row.name.clone()),
        born: row.born,
        area: row.area,
        area_name: row.area_name.clone(),
        worker: row.worker,
        worker_name: row.worker_name.clone(),
    }
}

fn unanswered(row: RoundRow) -> Unanswered {
    let child = child_of(&row);
    let reason = row.top.map(|top| Reason { rule: top.rule, class: top.class, evidence: top.evidence, due_on: top.due_on });
    Unanswered { child, reason, since: row.urgent_unanswered_since }
}

fn late_line(line: FollowUpLine, today: NaiveDate) -> Late {
    let f = line.follow_up;
    let child = DeskChild {
        code: line.child_code,
        called: line.known_as.unwrap_or(line.child_name),
        born: line.born,
        area: f.area,
        area_name: line.area_name,
        worker: f.worker,
        worker_name: line.worker_name,
    };
    let reason = Reason { rule: f.rule, class: f.class, evidence: f.evidence, due_on: f.due_on };
    Late { child, reason, days: days_between(f.due_on, today) }
}

fn unseen_line(row: RoundRow, today: NaiveDate) -> Unseen {
    let days = days_between(row.last_seen_on.unwrap_or(row.registered_on), today);
    Unseen { child: child_of(&row), days, ever: row.last_seen_on.is_some() }
}

fn held_line(row: RoundRow) -> Option<Held> {
    Some(Held { since: row.hold_since?, child: child_of(&row) })
}

/// The last day since which a food on hold has waited too long.
fn held_by(today: NaiveDate) -> NaiveDate {
    add_days(today, -(HELD_DAYS + 1))
}

fn narrowed(team: &Team, sieve: &Sieve, as_of: NaiveDate) -> Result<Narrowed, Refusal> {
    let worker = match sieve.worker.as_deref() {
        None => None,
        Some(name) => Some(team.workers.values().find(|p| p.sign_in_name == name).ok_or(Refusal::NotFound)?.id),
    };
    let area = match sieve.area.as_deref() {
        None => None,
        Some(code) => Some(team.areas.values().find(|a| a.code == code).ok_or(Refusal::NotFound)?.id),
    };
    let due_by = sieve.days.map(|days| add_days(as_of, -i32::from(days)));
    Ok(Narrowed { worker, area, rule: sieve.rule, due_by })
}

fn not_seen_days(protocol: &Protocol) -> Option<(i32, i32)> {
    let rule = &protocol.rules.visit_lost;
    rule.on.then_some((rule.limits.after_days_under_12m, rule.limits.after_days_from_12m))
}

/// Under this age, in completed months, a child counts as not seen sooner (our own choice).
const YOUNG_MONTHS: u32 = 12;

fn lost_days(today: NaiveDate, (young, older): (i32, i32)) -> LostDays {
    LostDays {
        // Born after this day: not yet 12 completed months.
        young_born_after: born_by(today, YOUNG_MONTHS),
        young_seen_by: add_days(today, -young),
        older_seen_by: add_days(today, -older),
    }
}

/// The latest birth date with so many completed months on a day. Going back in months clamps to the end of a short one and may
/// miss it by some days, so it is looked for.
fn born_by(today: NaiveDate, months: u32) -> NaiveDate {
    let about = today.checked_sub_months(chrono::Months::new(months)).unwrap_or(NaiveDate::MIN);
    let completed = |born: NaiveDate| domain::calendar::completed_months(born, today).is_some_and(|m| m >= months);
    (-1..=3).rev().map(|days| add_days(about, days)).find(|born| completed(*born)).unwrap_or(about)
}

/// Reads the key of a page from an address.
#[must_use]
pub fn read_key(text: &str) -> Option<LateKey> {
    let mut parts = text.split('~');
    let key = LateKey {
        late_from: parts.next()?.parse().ok()?,
        class: Class::from_code(parts.next()?).ok()?,
        born: parts.next()?.parse().ok()?,
        code: parts.next()?.to_owned(),
        rule: RuleId::from_code(parts.next()?).ok()?,
    };
    parts.next().is_none().then_some(key)
}

/// As written into an address.
#[must_use]
pub fn written_key(key: &LateKey) -> String {
    format!("{}~{}~{}~{}~{}", key.late_from, key.class.code(), key.born, key.code, key.rule.code())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_survives_the_address() {
        let key = LateKey {
            late_from: "2026-11-20".parse().expect("a day"),
            class: Class::TwoDays,
            born: "2026-01-31".parse().expect("a day"),
            code: "K7QF2MZC".to_owned(),
            rule: RuleId::WeightLoss,
        };
        assert_eq!(read_key(&written_key(&key)), Some(key));
        for wrong in ["", "2026-11-20", "2026-11-20~week~2026-01-31~K~weight.loss~x", "x~week~2026-01-31~K~weight.loss"] {
            assert_eq!(read_key(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn twelve_months_are_completed_on_the_birthday_even_in_short_months() {
        // Born on 29 February: the year is completed on the last day of the next February.
        for (today, born) in
            [("2026-11-25", "2025-11-25"), ("2025-02-28", "2024-02-29"), ("2024-02-29", "2023-02-28"), ("2026-03-31", "2025-03-31")]
        {
            let today: NaiveDate = today.parse().expect("a day");
            assert_eq!(born_by(today, 12).to_string(), born, "{today}");
        }
    }

    #[test]
    fn the_built_in_protocol_gives_the_figures() {
        // Our own choice, written in the protocol: 0 is the due day itself.
        let protocols = crate::service::protocols::for_tests();
        let on = "2026-11-25".parse().expect("a day");
        assert_eq!(clock(&protocols, on).iter().map(|(_, days)| *days).collect::<Vec<_>>(), [0, 0, 1, 3, 7, 14]);
        assert_eq!(not_seen_days(protocols.on(on)), Some((60, 90)));
    }
}
