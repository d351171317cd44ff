//! Serving: open, adopt the protocol, listen, and look once an hour whether a new day has come.

use std::process::ExitCode;
use std::sync::Arc;
use std::time::Duration;

use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;

use crate::cli::opened::open;
use crate::cli::run::Stop;
use crate::clock::Clock;
use crate::clock::SystemClock;
use crate::clock::day_in;
use crate::config::Config;
use crate::service::report::Office;
use crate::service::report::releasing;
use crate::service::settings::Settings;
use crate::service::tick;
use crate::web::secret::Secret;
use crate::web::server;
use crate::web::state::App;

/// How often the server looks whether a new day has come.
const LOOK_EVERY: Duration = Duration::from_secs(15 * 60);

/// Serves until interrupted.
///
/// # Errors
/// [`Stop`] with what to do.
pub async fn serve(config: &Config) -> Result<ExitCode, Stop> {
    let opened = open(config).await?;
    let secret = Secret::from_file(&config.secret_file)?;
    let clock: Arc<dyn Clock> = Arc::new(SystemClock);
    let app = App::new(opened.db.clone(), Arc::clone(&clock), secret, (*opened.protocols).clone(), config).await?;
    let app = server::shared(app);
    // Bound before anything is promised, so that a port in use is told at once.
    let (running, address) = server::listen(app.clone(), config.listen)?;
    println!("Spoonround serves on http://{address}");
    let keeper = tokio::spawn(keep_up(app));
    running.await?;
    keeper.abort();
    Ok(ExitCode::SUCCESS)
}

/// Time alone changes lists: brings them up to date at the start and whenever a new day has come.
pub async fn keep_up(app: server::Shared) {
    let mut done_for = None;
    loop {
        let now = app.clock.now();
        match app.settings().await {
            Ok(settings) => {
                let today = day_in(settings.time_zone, now);
                if done_for != Some(today) {
                    match tick::tick(&app.db, &app.protocols(), today, now).await {
                        Ok(children) => {
                            tracing::info!(children, %today, "lists brought up to date");
                            done_for = Some(today);
                            release(&app, &settings, today, now).await;
                        }
                        Err(error) => tracing::error!("bringing lists up to date failed, trying again: {error}"),
                    }
                }
            }
            Err(error) => tracing::error!("settings cannot be read: {error}"),
        }
        tokio::select! {
            () = tokio::time::sleep(LOOK_EVERY) => {}
            // A protocol was adopted.
            () = app.wake.notified() => done_for = None,
        }
    }
}

/// Releases the reports whose day has come. What cannot be released is left to the log, and to the page of that report.
async fn release(app: &server::Shared, settings: &Settings, today: NaiveDate, now: DateTime<Utc>) {
    let protocols = app.protocols();
    let office = Office { db: &app.db, protocols: &protocols, settings, today, now, by: None };
    match releasing::keep_up(office).await {
        Ok(done) => {
            done.released.iter().for_each(|(period, revision)| tracing::info!(%period, revision, "report released"));
            done.refused.iter().for_each(|trouble| tracing::error!("report not released: {trouble}"));
        }
        Err(error) => tracing::error!("releasing reports failed, trying again tomorrow: {error}"),
    }
}
