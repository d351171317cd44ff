//! Agreed steps for a supervisor.

use actix_web::HttpRequest;

use crate::args;
use crate::i18n::format;
use crate::service::agreed_steps as service;
use crate::view::agreed_steps as view;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::failure::encoded;
use crate::web::html::Html;
use crate::web::page_key::PageKey;
use crate::web::page_key::page_key;
use crate::web::pages::talk::words_of;

/// `GET /agreed-steps`
///
/// # Errors
/// [`Failure`].
pub async fn show(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after = page_key(&req, "after")?;
    let found = service::open(&signed.context(), after).await?;
    let w = signed.words();
    let today = signed.visitor.today;
    let line = |step: &crate::store::talks::DifficultStep| {
        view::DifficultLine {
        path: format!("/children/{}", step.code),
        who: w.say_with(
            "talk-team-who",
            args!["name" => &step.called, "age" => format::age(w, step.born, today), "village" => &step.area_name, "worker" => &step.worker_name],
        ),
        step: step.step.as_ref().map(|agreed| words_of(agreed, &signed.visitor.protocols, w)).unwrap_or_default(),
        answer: step.told.answer(),
        in_the_way: step.told.in_the_way().map(str::to_owned),
        told_on: format::day_near(w, step.told_on, today),
    }
    };
    let page = view::StepsPage {
        since: format::day_near(w, found.since, today),
        difficult: found.difficult.iter().map(line).collect(),
        first: after.map(|_| "/agreed-steps".to_owned()),
        next: found.next.map(|key| format!("/agreed-steps?after={}", encoded(&key.written()))),
        workers: found.workers.iter().map(|(name, tally)| (name.clone(), tally.agreed, tally.told)).collect(),
    };
    let title = w.say("talk-team-title");
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Workers);
    shell.wide = true;
    Ok(Html::ok(layout::page(&shell, view::page(w, &page))))
}
