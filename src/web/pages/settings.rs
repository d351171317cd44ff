//! The programme's settings, for the administrator.

use actix_web::HttpRequest;
use actix_web::HttpResponse;
use domain::fault::Faults;
use maud::Markup;

use crate::service::change_settings as service;
use crate::service::change_settings::SettingsDraft;
use crate::service::once::Sent;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Nav;
use crate::view::parts::not_saved_title;
use crate::view::settings as view;
use crate::web::extract::Posted;
use crate::web::extract::Signed;
use crate::web::extract::fresh_key;
use crate::web::failure::Failure;
use crate::web::html::Html;
use crate::web::html::see_other;
use crate::web::pages::people::access::moment;
use crate::web::pages::people::done;
use crate::web::pages::people::languages;

fn page(signed: &Signed, filled: &Filled, faults: &Faults, key: &str, flash: Option<&str>) -> Markup {
    let w = signed.words();
    let settings = &signed.visitor.settings;
    let body = view::page(
        w,
        view::SettingsPage {
            programme_name: &settings.programme_name,
            time_now: &moment(signed, signed.visitor.now),
            filled,
            faults,
            token: &signed.visitor.token(),
            key,
        },
    );
    let title = w.say("settings-title");
    let title = if faults.is_empty() { title } else { not_saved_title(w, &title) };
    let mut shell = signed.shell(&title);
    shell.here = Some(Nav::Settings);
    shell.flash = flash;
    shell.protocol = None;
    layout::page(&shell, body)
}

/// `GET /settings`
pub async fn show(req: HttpRequest, signed: Signed) -> Html {
    let flash = done(&req, &[("saved", "settings-saved")]).map(|id| signed.words().say(id));
    let stored = signed.visitor.settings.to_stored();
    let filled = Filled(stored.into_iter().collect());
    Html::ok(page(&signed, &filled, &Faults::new(), &fresh_key(), flash.as_deref()))
}

/// `POST /settings`
///
/// # Errors
/// [`Failure`].
pub async fn change(posted: Posted) -> Result<HttpResponse, Failure> {
    let key = posted.key()?;
    let Posted { signed, form } = posted;
    let draft = SettingsDraft {
        programme_name: form.one("programme_name"),
        time_zone: form.one("time_zone"),
        emergency_number: form.one("emergency_number"),
        language: form.one("language"),
        small_number_threshold: form.one("small_number_threshold"),
    };
    match draft.read(&languages(), &signed.visitor.settings) {
        Ok(after) => {
            service::change(&signed.context(), Sent::of(key, &form.0), &signed.visitor.settings, &after).await?;
            signed.visitor.app().reload_settings().await?;
            Ok(see_other("/settings?done=saved"))
        }
        Err(faults) => Ok(Html::unprocessable(page(&signed, &form, &faults, form.one("key"), None)).response()),
    }
}
