//! The lists beside the late follow-ups as pages of their own: urgent referrals without an answer, children not seen for long,
//! foods long on hold.

use actix_web::HttpRequest;

use crate::service::supervise::Sieve;
use crate::service::supervise::waiting;
use crate::service::supervise::waiting::Part;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::supervise::waiting as view;
use crate::view::supervise::waiting::Listed;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::page_key::PageKey;
use crate::web::page_key::page_key;
use crate::web::pages::supervise::address;
use crate::web::pages::supervise::held_line;
use crate::web::pages::supervise::sieve_of;
use crate::web::pages::supervise::unseen_line;
use crate::web::pages::supervise::urgent_line;
use crate::web::pages::supervise::whose;

/// `GET /late/urgent`
///
/// # Errors
/// [`Failure`].
pub async fn urgent(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after: Option<String> = page_key(&req, "after")?;
    let sieve = whose(&sieve_of(&req)?);
    let part = waiting::urgent(&signed.context(), &sieve, after.as_deref(), signed.as_of).await?;
    let lines = part.lines.iter().map(|u| urgent_line(&signed, u)).collect();
    Ok(page(&signed, ("/late/urgent", &sieve), Listed::Urgent(lines), &part, after.is_some()))
}

/// `GET /late/unseen`
///
/// # Errors
/// [`Failure`].
pub async fn unseen(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after = page_key(&req, "after")?;
    let part = waiting::unseen(&signed.context(), after.as_ref(), signed.as_of).await?;
    let lines = part.lines.iter().map(|u| unseen_line(&signed, u)).collect();
    let days = waiting::not_seen_days(signed.visitor.protocols.on(signed.as_of));
    Ok(page(&signed, ("/late/unseen", &Sieve::default()), Listed::Unseen(lines, days), &part, after.is_some()))
}

/// `GET /late/held`
///
/// # Errors
/// [`Failure`].
pub async fn held(req: HttpRequest, signed: Signed) -> Result<Html, Failure> {
    let after = page_key(&req, "after")?;
    let part = waiting::held(&signed.context(), after.as_ref(), signed.as_of).await?;
    let lines = part.lines.iter().map(|h| held_line(&signed, h)).collect();
    Ok(page(&signed, ("/late/held", &Sieve::default()), Listed::Held(lines, waiting::HELD_DAYS), &part, after.is_some()))
}

fn page<L, K: PageKey>(signed: &Signed, (path, sieve): (&str, &Sieve), listed: Listed, part: &Part<L, K>, later_page: bool) -> Html {
    let at = |path: &str, after: Option<&str>| address(signed, path, sieve, after);
    let w = signed.words();
    let title = listed.title(w);
    let page = view::WholePage {
        listed,
        desk: at("/late", None),
        first: later_page.then(|| at(path, None)),
        next: part.next.as_ref().map(|key| at(path, Some(&key.written()))),
    };
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Late);
    shell.wide = true;
    Html::ok(layout::page(&shell, view::page(w, &page)))
}
