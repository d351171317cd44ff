//! What all requests share.

use std::sync::Arc;
use std::sync::PoisonError;
use std::sync::RwLock;

use chrono::DateTime;
use chrono::Utc;
use domain::protocol::Protocols;

use crate::clock::Clock;
use crate::service::settings::Settings;
use crate::store::Db;
use crate::store::StoreError;
use crate::store::settings;
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
            protocols: RwLock::new(Arc::new(protocols)),
        })
    }

    /// The adopted protocols.
    #[must_use]
    pub fn protocols(&self) -> Arc<Protocols> {
        Arc::clone(&self.protocols.read().unwrap_or_else(PoisonError::into_inner))
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
