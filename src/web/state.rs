//! What all requests share.

use std::sync::Arc;
use std::sync::PoisonError;
use std::sync::RwLock;

use chrono::DateTime;
use chrono::Utc;
use domain::protocol::Protocols;
use tokio::sync::Notify;

use crate::clock::Clock;
use crate::service;
use crate::service::protocols::ProtocolTrouble;
use crate::service::settings::Settings;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::protocols;
use crate::store::settings;
use crate::store::summaries;
use crate::web::secret::Secret;

/// Settings are read again after this many seconds, so that several servers on one database agree soon.
const SETTINGS_KEPT_SECONDS: i64 = 60;

/// What all requests share.
pub struct App {
    /// The database.
    pub db: Db,
    /// The clock.
    pub clock: Arc<dyn Clock>,
    /// The server's own key.
    pub secret: Secret,
    /// The address people type, if configured.
    pub public_origin: Option<String>,
    /// Cookies travel over TLS only; off on loopback.
    pub secure_cookies: bool,
    /// Proxies in front.
    pub proxy_hops: u8,
    /// Told when something has changed for all children at once, so that lists need not wait for their hour.
    pub wake: Notify,
    protocols: RwLock<Arc<Protocols>>,
    settings: RwLock<(DateTime<Utc>, Arc<Settings>)>,
}

impl App {
    /// Puts the parts together and reads the settings.
    ///
    /// # Errors
    /// [`StoreError`] if the settings cannot be read.
    pub async fn new(
        db: Db,
        clock: Arc<dyn Clock>,
        secret: Secret,
        protocols: Protocols,
        config: &crate::config::Config,
    ) -> Result<Self, StoreError> {
        let settings = Settings::from_stored(&settings::all(db.direct()).await?);
        Ok(Self {
            settings: RwLock::new((clock.now(), Arc::new(settings))),
            db,
            clock,
            secret,
            public_origin: config.public_origin.clone(),
            secure_cookies: !config.plain_loopback(),
            proxy_hops: config.proxy_hops,
            wake: Notify::new(),
            protocols: RwLock::new(Arc::new(protocols)),
        })
    }

    /// The adopted protocols.
    #[must_use]
    pub fn protocols(&self) -> Arc<Protocols> {
        Arc::clone(&self.protocols.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Reads the adopted protocols again if there are new ones: after an adoption here, on the command line or by another server.
    ///
    /// # Errors
    /// [`StoreError`]. A protocol that cannot be read, which only a newer program could have adopted, is left to the log.
    pub async fn reload_protocols(&self) -> Result<(), StoreError> {
        let known = self.protocols();
        let count = protocols::count(self.db.direct()).await?;
        if usize::try_from(count).is_ok_and(|count| count == known.iter().count()) {
            return Ok(());
        }
        match service::protocols::load(&self.db).await {
            Ok(all) => {
                // Somebody may have recorded a visit here without knowing of them: their first day is looked at again.
                let new = all.iter().filter(|p| !known.iter().any(|k| k.id == p.id && k.version == p.version));
                for protocol in new {
                    summaries::look_again_on(self.db.direct(), protocol.effective_from).await?;
                }
                *self.protocols.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(all);
                self.wake.notify_one();
            }
            Err(ProtocolTrouble::Store(error)) => return Err(error),
            Err(trouble) => tracing::error!("an adopted protocol cannot be read: {trouble}"),
        }
        Ok(())
    }

    /// The programme's settings.
    ///
    /// # Errors
    /// [`StoreError`] if they had to be read again and could not.
    pub async fn settings(&self) -> Result<Arc<Settings>, StoreError> {
        let now = self.clock.now();
        {
            let kept = self.settings.read().unwrap_or_else(PoisonError::into_inner);
            if (now - kept.0).num_seconds().abs() < SETTINGS_KEPT_SECONDS {
                return Ok(Arc::clone(&kept.1));
            }
        }
        self.reload_protocols().await?;
        self.reload_settings().await
    }

    /// Reads the settings again, after a change.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn reload_settings(&self) -> Result<Arc<Settings>, StoreError> {
        let settings = Arc::new(Settings::from_stored(&settings::all(self.db.direct()).await?));
        *self.settings.write().unwrap_or_else(PoisonError::into_inner) = (self.clock.now(), Arc::clone(&settings));
        Ok(settings)
    }
}
