//! Who asks, in which language, on which day: read once from a request, used by every page.

use std::future::Future;
use std::pin::Pin;
use std::sync::Arc;

use actix_web::FromRequest;
use actix_web::HttpMessage;
use actix_web::HttpRequest;
use actix_web::dev::Payload;
use actix_web::http::header;
use actix_web::web;
use chrono::DateTime;
use chrono::NaiveDate;
use chrono::Utc;
use domain::ids::SubmissionKey;
use domain::protocol::Protocol;
use domain::protocol::Protocols;
use maud::Markup;

use crate::clock::day_in;
use crate::i18n::Lang;
use crate::i18n::Words;
use crate::i18n::words;
use crate::service::Actor;
use crate::service::Context;
use crate::service::settings::Settings;
use crate::service::sign_in;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::layout::Shell;
use crate::web::failure::Failure;
use crate::web::form::read_body;
use crate::web::form::submission_key;
use crate::web::routes;
use crate::web::routes::Who;
use crate::web::session;
use crate::web::state::App;

/// Somebody asking for a page, signed in or not.
#[derive(Clone)]
pub struct Visitor {
    app: web::Data<App>,
    /// The person, if signed in.
    pub actor: Option<Actor>,
    /// The language of the page.
    pub lang: Lang,
    /// The instant.
    pub now: DateTime<Utc>,
    /// The programme's day.
    pub today: NaiveDate,
    /// The programme's settings.
    pub settings: Arc<Settings>,
    /// The adopted protocols.
    pub protocols: Arc<Protocols>,
    /// The address asked for, with its query.
    pub path: String,
    must_change_password: bool,
    session: Vec<u8>,
    session_hash: Option<[u8; 32]>,
}

impl Visitor {
    /// Reads the visitor once a request; later calls get the same.
    ///
    /// # Errors
    /// [`Failure`] when the database cannot tell.
    pub async fn read(req: &HttpRequest) -> Result<Self, Failure> {
        if let Some(known) = req.extensions().get::<Self>() {
            return Ok(known.clone());
        }
        let app = req.app_data::<web::Data<App>>().cloned().ok_or_else(|| Failure::Broken("no state".to_owned()))?;
        let now = app.clock.now();
        let settings = app.settings().await?;
        let cookie = session::cookie_value(req, app.secure_cookies);
        let live = match &cookie {
            Some(key) => sign_in::recall(&app.db, key, now).await?,
            None => None,
        };
        let lang = live
            .as_ref()
            .and_then(|live| live.language.as_deref())
            .and_then(Lang::from_code)
            .or_else(|| session::language_cookie(req).as_deref().and_then(Lang::from_code))
            .or_else(|| accepted_language(req))
            .or_else(|| Lang::from_code(&settings.language))
            .unwrap_or(Lang::En);
        let session =
            live.as_ref().map_or_else(|| session::door_value(req).unwrap_or_default().into_bytes(), |live| live.key_hash.to_vec());
        let session_hash = live.as_ref().map(|live| live.key_hash);
        let visitor = Self {
            today: day_in(settings.time_zone, now),
            protocols: app.protocols(),
            must_change_password: live.as_ref().is_some_and(|live| live.must_change_password),
            actor: live.map(|live| live.actor),
            path: req.uri().path_and_query().map_or_else(|| "/".to_owned(), |p| p.as_str().to_owned()),
            lang,
            now,
            settings,
            session,
            session_hash,
            app,
        };
        req.extensions_mut().insert(visitor.clone());
        Ok(visitor)
    }

    /// The visitor for an error page, which must appear even if the database is gone.
    pub async fn of(req: &HttpRequest) -> ErrorVisitor {
        match Self::read(req).await {
            Ok(visitor) => ErrorVisitor::Known(Box::new(visitor)),
            Err(_) => ErrorVisitor::stranger(req),
        }
    }

    /// The words of the visitor's language.
    #[must_use]
    pub fn words(&self) -> &'static Words {
        words(self.lang)
    }

    /// A token for a form on this page.
    #[must_use]
    pub fn token(&self) -> String {
        self.app.secret.token(&self.session)
    }

    /// Whether a form's token was made for this visitor's session.
    #[must_use]
    pub fn token_fits(&self, token: &str) -> bool {
        !self.session.is_empty() && self.app.secret.token_fits(&self.session, token)
    }

    /// Whether a one-time code was used and a password must be set first.
    #[must_use]
    pub const fn must_change_password(&self) -> bool {
        self.must_change_password
    }

    /// Names the session in the database, if signed in.
    #[must_use]
    pub const fn session_hash(&self) -> Option<&[u8; 32]> {
        self.session_hash.as_ref()
    }

    /// What all requests share.
    #[must_use]
    pub fn app(&self) -> &App {
        &self.app
    }

    /// The protocol in force today.
    #[must_use]
    pub fn protocol(&self) -> &Protocol {
        self.protocols.on(self.today)
    }

    /// The frame of a page with this title.
    #[must_use]
    pub fn shell<'a>(&'a self, title: &'a str) -> Shell<'a> {
        let protocol = self.protocol();
        let mut shell = Shell::new(self.words(), title);
        shell.role = self.actor.as_ref().map(|a| a.role);
        shell.person = self.actor.as_ref().map(|a| a.name.as_str());
        shell.token = self.token();
        shell.path = &self.path;
        shell.protocol = Some(layout::ProtocolLine {
            id: &protocol.id,
            version: &protocol.version,
            approved_by: protocol.approved_by.as_deref(),
            local_name: protocol.local_protocol_name.as_deref(),
        });
        shell.emergency_number = self.settings.emergency_number.as_deref();
        shell.demo = self.settings.demo;
        shell
    }

    /// A plain page: frame and body.
    #[must_use]
    pub fn page(&self, title: &str, body: Markup) -> Markup {
        layout::page(&self.shell(title), body)
    }
}

/// A visitor who may be unknown because reading failed.
pub enum ErrorVisitor {
    /// Read as usual.
    Known(Box<Visitor>),
    /// Only a language is known.
    Unknown(Lang),
}

impl ErrorVisitor {
    /// Somebody of whom only the browser's language is known.
    #[must_use]
    pub fn stranger(req: &HttpRequest) -> Self {
        Self::Unknown(accepted_language(req).unwrap_or(Lang::En))
    }

    /// The words of the page.
    #[must_use]
    pub fn words(&self) -> &'static Words {
        match self {
            Self::Known(visitor) => visitor.words(),
            Self::Unknown(lang) => words(*lang),
        }
    }

    /// Frame and body.
    #[must_use]
    pub fn page(&self, title: &str, body: Markup) -> Markup {
        match self {
            Self::Known(visitor) => visitor.page(title, body),
            Self::Unknown(lang) => layout::page(&Shell::new(words(*lang), title), body),
        }
    }

    /// A token for a form on the page, if the visitor is known.
    #[must_use]
    pub fn token(&self) -> String {
        match self {
            Self::Known(visitor) => visitor.token(),
            Self::Unknown(_) => String::new(),
        }
    }
}

fn accepted_language(req: &HttpRequest) -> Option<Lang> {
    let header = req.headers().get(header::ACCEPT_LANGUAGE)?.to_str().ok()?;
    header.split(',').find_map(|part| Lang::from_code(part.split([';', '-']).next().unwrap_or_default().trim()))
}

type Soon<T> = Pin<Box<dyn Future<Output = Result<T, Failure>>>>;

impl FromRequest for Visitor {
    type Error = Failure;
    type Future = Soon<Self>;

    fn from_request(req: &HttpRequest, _: &mut Payload) -> Self::Future {
        let req = req.clone();
        Box::pin(async move { Self::read(&req).await })
    }
}

/// A page asked for by somebody who may see it.
#[derive(Clone)]
pub struct Signed {
    /// The visitor.
    pub visitor: Visitor,
    /// The person.
    pub actor: Actor,
    /// The day the page shows: today, or the past day asked for by `as_of`.
    pub as_of: NaiveDate,
}

impl Signed {
    async fn read(req: &HttpRequest) -> Result<Self, Failure> {
        let visitor = Visitor::read(req).await?;
        let pattern = req.match_pattern().unwrap_or_default();
        let line = routes::line(req.method().as_str(), &pattern).ok_or(Failure::NotFound)?;
        let Some(actor) = visitor.actor.clone() else {
            return Err(Failure::SignInNeeded { next: visitor.path.clone() });
        };
        if let Who::Roles(roles) = line.who
            && !roles.contains(&actor.role)
        {
            return Err(Failure::NotAllowed);
        }
        if visitor.must_change_password && !matches!(pattern.as_str(), "/password" | "/sign-out" | "/language") {
            return Err(Failure::PasswordFirst);
        }
        let as_of = match query_value(req, "as_of").filter(|_| routes::SHOW_PAST_DAYS.contains(&pattern.as_str())) {
            None => visitor.today,
            Some(text) if text.is_empty() => visitor.today,
            Some(text) => {
                let day: NaiveDate = text.parse().map_err(|_| Failure::BadAddress("as_of"))?;
                if day > visitor.today { Err(Failure::BadAddress("as_of"))? } else { day }
            }
        };
        Ok(Self { visitor, actor, as_of })
    }

    /// What a use case needs.
    #[must_use]
    pub fn context(&self) -> Context {
        Context {
            db: self.visitor.app().db.clone(),
            protocols: Arc::clone(&self.visitor.protocols),
            actor: self.actor.clone(),
            today: self.visitor.today,
            now: self.visitor.now,
        }
    }

    /// The words of the page.
    #[must_use]
    pub fn words(&self) -> &'static Words {
        self.visitor.words()
    }

    /// The frame of a page, which says so when it shows a past day.
    #[must_use]
    pub fn shell<'a>(&'a self, title: &'a str) -> Shell<'a> {
        let mut shell = self.visitor.shell(title);
        shell.as_of = (self.as_of != self.visitor.today).then_some(self.as_of);
        shell
    }
}

impl FromRequest for Signed {
    type Error = Failure;
    type Future = Soon<Self>;

    fn from_request(req: &HttpRequest, _: &mut Payload) -> Self::Future {
        let req = req.clone();
        Box::pin(async move { Self::read(&req).await })
    }
}

/// A form sent by somebody who may, with a token that fits. The only way a page gets to read a body.
pub struct Posted {
    /// Who sent it.
    pub signed: Signed,
    /// Everything typed.
    pub form: Filled,
}

impl Posted {
    /// The submission key that the form was shown with.
    ///
    /// # Errors
    /// [`Failure::BadForm`] if there is none: no page of ours sends such a form.
    pub fn key(&self) -> Result<SubmissionKey, Failure> {
        submission_key(&self.form)
    }
}

impl FromRequest for Posted {
    type Error = Failure;
    type Future = Soon<Self>;

    fn from_request(req: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let req = req.clone();
        let mut payload = payload.take();
        Box::pin(async move {
            let form = read_body(&req, &mut payload).await?;
            let signed = match Signed::read(&req).await {
                Ok(signed) => signed,
                Err(Failure::SignInNeeded { .. }) => {
                    return Err(Failure::SessionEnded { path: req.uri().path().to_owned(), filled: form });
                }
                Err(other) => return Err(other),
            };
            if !signed.visitor.token_fits(form.one("token")) {
                // A page left open over a sign-out and sign-in carries an old token: keep what was typed.
                // Only where the browser itself says that it is ours.
                let vouched = req.headers().contains_key("sec-fetch-site") || req.headers().contains_key(header::ORIGIN);
                if vouched && !form.one("token").is_empty() {
                    return Err(Failure::OldPage { path: req.uri().path().to_owned(), filled: form });
                }
                return Err(Failure::ForeignForm);
            }
            Ok(Self { signed, form })
        })
    }
}

/// One value of the address's query.
#[must_use]
pub fn query_value(req: &HttpRequest, name: &str) -> Option<String> {
    let pairs = web::Query::<Vec<(String, String)>>::from_query(req.query_string()).ok()?;
    pairs.into_inner().into_iter().find(|(key, _)| key == name).map(|(_, value)| value)
}

/// A fresh submission key for a form.
#[must_use]
pub fn fresh_key() -> String {
    uuid::Uuid::now_v7().to_string()
}
