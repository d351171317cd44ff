//! The team of a supervisor.

use actix_web::web;
use domain::ids::PersonId;

use crate::args;
use crate::i18n::format;
use crate::service::once::Sent;
use crate::service::team as service;
use crate::service::team::Gone;
use crate::service::team::Team;
use crate::service::team::Unattended;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::team as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::pages::people::access::code_gone;
use crate::web::pages::people::access::code_page;

/// `GET /team`
///
/// # Errors
/// [`Failure`].
pub async fn show(signed: Signed) -> Result<Html, Failure> {
    let team = service::open(&signed.context()).await?;
    let w = signed.words();
    let mut lines: Vec<view::TeamLine> = team
        .workers
        .values()
        .map(|p| view::TeamLine {
            sign_in_name: p.sign_in_name.clone(),
            full_name: p.full_name.clone(),
            phone: p.phone.clone(),
            active: p.active,
            villages: Some(team.villages(p.id)).filter(|v| !v.is_empty()).map(|v| format::list(w, &v)),
            counts: counts(&team, p.id),
            away: team
                .covers
                .iter()
                .find(|c| c.worker == p.id)
                .and_then(|c| Some((team.stand_ins.get(&c.covered_by)?.full_name.clone(), format::day(w, c.to_on)))),
        })
        .collect();
    lines.sort_by(|a, b| a.full_name.cmp(&b.full_name));
    let title = w.say("team-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    Ok(Html::ok(layout::page(&shell, view::page(w, &lines, &unattended(&signed, &team), &signed.visitor.token(), &fresh_key))))
}

/// Children with nobody, a line a worker.
pub(crate) fn unattended(signed: &Signed, team: &Team) -> Vec<view::UnattendedLine> {
    let w = signed.words();
    let today = signed.visitor.today;
    let said = |line: &Unattended| {
        let (id, date) = match line.gone {
            Gone::Left(last) => ("team-unattended-left", format::day_near(w, last, today)),
            Gone::MayNotSignIn => ("team-unattended-off", String::new()),
            Gone::Away(until) => ("team-unattended-away", format::day_near(w, until, today)),
        };
        w.say_with(id, args!["count" => line.children, "name" => &line.worker.full_name, "date" => date])
    };
    let path = |line: &Unattended| format!("/team/{}#give", line.worker.sign_in_name);
    team.unattended(today).iter().map(|line| view::UnattendedLine { sentence: said(line), path: path(line) }).collect()
}

fn counts(team: &Team, worker: PersonId) -> [u64; 3] {
    let mut counts = [0; 3];
    for tally in team.tallies.iter().filter(|t| t.worker == worker) {
        match tally.class {
            None => counts[0] += tally.count,
            Some(_) => {
                counts[1] += tally.count;
                counts[2] += tally.late;
            }
        }
    }
    counts
}

/// `POST /team/{name}/code`: answers with the code, which is shown only here.
///
/// # Errors
/// [`Failure`].
pub async fn code(posted: Posted, name: web::Path<String>) -> Result<Html, Failure> {
    let sent = Sent::of(posted.key()?, &posted.form.0);
    let (person, code) = service::new_code(&posted.signed.context(), sent, &name).await?;
    Ok(Html::ok(match code {
        Some(code) => code_page(&posted.signed, &person, &code, "/team"),
        None => code_gone(&posted.signed, &person, "/team"),
    }))
}
