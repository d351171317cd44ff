//! One start of the demo: from the options to a served programme. It knows no story.

use std::sync::Arc;

use chrono::NaiveDate;
use spoonround::clock::Clock;
use spoonround::clock::FixedClock;
use spoonround::clock::SystemClock;
use spoonround::clock::day_in;
use spoonround::service::protocols;

use crate::build;
use crate::options::Options;
use crate::past_months;
use crate::programme;
use crate::serve;
use crate::sign_ins;
use crate::story::cast::Cast;
use crate::target;
use crate::target::Built;

/// Runs the demo.
///
/// # Errors
/// A sentence that says what to do.
pub async fn run(options: &Options) -> Result<(), String> {
    let clock: Arc<dyn Clock> = match options.as_of {
        Some(day) => Arc::new(FixedClock::noon(day)),
        None => Arc::new(SystemClock),
    };
    let now = clock.now();
    let today = day_in(programme::demo_settings().time_zone, now);
    if !options.no_serve {
        serve::can_listen(options.listen)?;
    }
    let target = target::open(&options.database, options.fresh).await.map_err(|e| e.to_string())?;
    let (children, built_now) = match &target.built {
        Some(built) => {
            tell_old(options, built, today);
            (built.children, false)
        }
        None => (options.children, true),
    };
    let text = programme::protocol_text();
    let protocols = protocols::adopt(&target.db, Some((programme::PROTOCOL_NAME, &text)), now)
        .await
        .map_err(|e| format!("{e}; build the demo anew with --fresh"))?;
    let cast = Cast::of(children, today);
    if built_now {
        let built = Built { children, on: today };
        build::build(&target.db, &protocols, &cast, &built, now, build::on_screen(children)).await?;
        println!("Made {children} children in {} for {today}.", options.database.display());
        past_months::count(&target.db, &protocols, today, now).await?;
    }
    let sign_ins = sign_ins::renew(&target.db, &cast).await?;
    println!();
    println!("{}: a demo of Spoonround", programme::NAME);
    println!("All of it is invented: villages, families, people, measurements. Do not enter real families here.");
    println!();
    println!("{}", sign_ins::table(&sign_ins));
    println!("These passwords are new and hold until the demo is started again.");
    if options.no_serve {
        return target.db.close().await.map_err(|e| target::told(&e));
    }
    serve::serve(target.db, protocols, clock, options).await
}

/// Says how old the demo is that is used again.
fn tell_old(options: &Options, built: &Built, today: NaiveDate) {
    println!("Using the demo in {} ({} children, stories up to {}).", options.database.display(), built.children, built.on);
    if built.on != today || built.children != options.children {
        println!("Start with --fresh to build {} children up to today.", options.children);
    }
}
