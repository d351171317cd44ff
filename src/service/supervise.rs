//! What a supervisor sees first: urgent referrals without an answer, follow-ups past their clock, children not seen for long,
//! and who could use a hand. Today comes from the lists; a past day is worked out anew.

mod past;
pub mod waiting;

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::calendar::days_between;
use domain::child::both_names;
use domain::evidence::Evidence;
use domain::ids::AreaId;
use domain::ids::PersonId;
use domain::protocol::Protocols;
use domain::role::Action;
use domain::rule::Class;
use domain::rule::RuleId;

use crate::service::Context;
use crate::service::Refusal;
use crate::service::audit;
use crate::service::supervise::waiting::Day;
use crate::service::supervise::waiting::Held;
use crate::service::supervise::waiting::Lines;
use crate::service::supervise::waiting::Part;
use crate::service::supervise::waiting::SHORT_LIST;
use crate::service::supervise::waiting::Unanswered;
use crate::service::supervise::waiting::Unseen;
use crate::service::supervise::waiting::not_seen_days;
use crate::service::team;
use crate::service::team::Team;
use crate::store::Connection;
use crate::store::Scope;
use crate::store::StoreError;
use crate::store::follow_ups::FollowUpLine;
use crate::store::follow_ups::desk;
use crate::store::follow_ups::desk::LateKey;
use crate::store::follow_ups::desk::Narrowed;
use crate::store::follow_ups::desk::Tally;
use crate::store::lists::DayKey;
use crate::store::lists::RoundRow;

/// Late follow-ups on one page.
pub const A_PAGE: usize = 50;
/// Late follow-ups on a list for a meeting: more than can be talked about in one.
pub const FOR_A_MEETING: usize = 500;

/// The days past due from which a supervisor sees each class as late, by the protocol in force on a day.
#[must_use]
pub fn clock(protocols: &Protocols, on: NaiveDate) -> Vec<(Class, i32)> {
    let classes = &protocols.on(on).classes;
    Class::ALL.iter().map(|class| (*class, classes.of(*class).supervisor_after_days)).collect()
}

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

/// The desk on a day.
#[derive(Debug, Clone)]
pub struct Desk {
    /// The first urgent referrals without an answer, most urgent first.
    pub urgent: Part<Unanswered, String>,
    /// A page of late follow-ups, longest past their clock first.
    pub late: Vec<Late>,
    /// Where the next page begins.
    pub next: Option<LateKey>,
    /// The first children not seen for long.
    pub unseen: Part<Unseen, DayKey>,
    /// The first children with a food on hold for more than [`waiting::HELD_DAYS`] days, longest first.
    pub held: Part<Held, DayKey>,
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
    page_of(ctx, sieve, after, as_of, (A_PAGE, SHORT_LIST)).await
}

/// The desk with as many late follow-ups as a meeting can talk about, and with every urgent referral without an answer.
///
/// # Errors
/// As [`open`].
pub async fn meeting(ctx: &Context, sieve: &Sieve, as_of: NaiveDate) -> Result<Desk, Refusal> {
    let mut desk = page_of(ctx, sieve, None, as_of, (FOR_A_MEETING, FOR_A_MEETING)).await?;
    // What waits for an answer stands first; the same follow-up is not told a second time among the late ones.
    let told: Vec<_> = desk.urgent.lines.iter().filter_map(|u| Some((u.child.code.clone(), u.reason.as_ref()?.rule))).collect();
    desk.late.retain(|l| !told.contains(&(l.child.code.clone(), l.reason.rule)));
    Ok(desk)
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

async fn page_of(
    ctx: &Context,
    sieve: &Sieve,
    after: Option<&LateKey>,
    as_of: NaiveDate,
    (a_page, urgent): (usize, usize),
) -> Result<Desk, Refusal> {
    ctx.needs(Action::Supervise)?;
    ctx.db
        .read(async |tx| {
            let team = team::load(tx, ctx).await?;
            let narrowed = narrowed(&team, sieve, as_of)?;
            let scope = Scope::Supervisor { person: ctx.actor.person };
            let (part, lines) = if as_of < ctx.today {
                past::late(tx, ctx, scope, narrowed, sieve.class, (after, a_page), as_of).await?
            } else {
                (kept(tx, ctx, scope, narrowed, sieve.class, (after, a_page)).await?, Lines::Kept)
            };
            let protocol = ctx.protocols.on(as_of);
            let day = Day { c: tx, scope, protocol, as_of, lines: &lines };
            Ok(Desk {
                urgent: day.urgent(narrowed, None, urgent).await?,
                late: part.late,
                next: part.next,
                unseen: day.unseen(None, SHORT_LIST).await?,
                held: day.held(None, SHORT_LIST).await?,
                not_seen_days: not_seen_days(protocol),
                team: match part.tallies {
                    Some(tallies) => Team { tallies, ..team },
                    None => team,
                },
            })
        })
        .await
}

/// The late follow-ups of a day.
struct LatePart {
    late: Vec<Late>,
    next: Option<LateKey>,
    /// How many there were, for a past day.
    tallies: Option<Vec<Tally>>,
}

/// Today's, from the lists.
async fn kept(
    c: &impl Connection,
    ctx: &Context,
    scope: Scope,
    narrowed: Narrowed,
    class: Option<Class>,
    (after, a_page): (Option<&LateKey>, usize),
) -> Result<LatePart, StoreError> {
    let clock = clock(&ctx.protocols, ctx.today);
    let shown: Vec<_> = clock.iter().copied().filter(|(of, _)| class.is_none_or(|wanted| wanted == *of)).collect();
    let limit = u64::try_from(a_page + 1).unwrap_or(u64::MAX);
    let mut late = desk::past_clock_in_scope(c, scope, narrowed, &shown, ctx.today, after, limit).await?;
    let more = cut(&mut late, a_page);
    let next = late.last().filter(|_| more).map(|line| desk::late_key(line, &clock));
    Ok(LatePart { late: late.into_iter().map(|line| late_line(line, ctx.today)).collect(), next, tallies: None })
}

/// Cuts a list to a page; whether there was more.
pub(super) fn cut<T>(list: &mut Vec<T>, most: usize) -> bool {
    let more = list.len() > most;
    list.truncate(most);
    more
}

impl Desk {
    /// How many follow-ups are late in the whole scope.
    #[must_use]
    pub fn late_in_all(&self) -> u64 {
        self.team.tallies.iter().map(|t| t.late).sum()
    }
}

impl DeskChild {
    fn of(row: &RoundRow) -> Self {
        Self {
            code: row.code.clone(),
            called: both_names(&row.name, row.known_as.as_deref()),
            born: row.born,
            area: row.area,
            area_name: row.area_name.clone(),
            worker: row.worker,
            worker_name: row.worker_name.clone(),
        }
    }
}

fn late_line(line: FollowUpLine, today: NaiveDate) -> Late {
    let f = line.follow_up;
    let child = DeskChild {
        code: line.child_code,
        called: both_names(&line.child_name, line.known_as.as_deref()),
        born: line.born,
        area: f.area,
        area_name: line.area_name,
        worker: f.worker,
        worker_name: line.worker_name,
    };
    let reason = Reason { rule: f.rule, class: f.class, evidence: f.evidence, due_on: f.due_on };
    Late { child, reason, days: days_between(f.due_on, today) }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_protocol_gives_the_figures() {
        // Our own choice, written in the protocol: 0 is the due day itself.
        let protocols = crate::service::protocols::for_tests();
        let on = "2026-11-25".parse().expect("a day");
        assert_eq!(clock(&protocols, on).iter().map(|(_, days)| *days).collect::<Vec<_>>(), [0, 0, 1, 3, 7, 14]);
        assert_eq!(not_seen_days(protocols.on(on)), Some((60, 90)));
    }
}
