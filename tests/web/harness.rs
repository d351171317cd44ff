//! A site in process and a browser that reads its real forms, so that field names and tokens are tested too.

use std::collections::BTreeMap;
use std::rc::Rc;

use actix_http::Request;
use actix_web::body::BoxBody;
use actix_web::body::MessageBody;
use actix_web::cookie::Cookie;
use actix_web::dev::Service;
use actix_web::dev::ServiceResponse;
use actix_web::http::StatusCode;
use actix_web::http::header;
use actix_web::test;
use scraper::ElementRef;
use scraper::Html;
use scraper::Selector;

type Answering = Rc<dyn Fn(Request) -> std::pin::Pin<Box<dyn Future<Output = ServiceResponse<BoxBody>>>>>;

/// A browser without script: cookies, links, forms.
#[derive(Clone)]
pub struct Browser {
    site: Answering,
    cookies: BTreeMap<String, String>,
    /// Where it is.
    pub path: String,
    /// What the last answer was.
    pub status: StatusCode,
    /// The last page as text.
    pub body: String,
    /// The same, as sent.
    pub bytes: Vec<u8>,
    /// Headers of the last answer.
    pub headers: BTreeMap<String, String>,
}

impl Browser {
    /// A fresh browser on a site.
    pub fn new<S, B>(service: Rc<S>) -> Self
    where
        S: Service<Request, Response = ServiceResponse<B>, Error = actix_web::Error> + 'static,
        B: MessageBody + 'static,
    {
        let site: Answering = Rc::new(move |request| {
            let service = Rc::clone(&service);
            Box::pin(async move {
                match service.call(request).await {
                    Ok(response) => response.map_into_boxed_body(),
                    Err(error) => panic!("the guard lets no error through: {error}"),
                }
            })
        });
        Self {
            site,
            cookies: BTreeMap::new(),
            path: "/".to_owned(),
            status: StatusCode::OK,
            body: String::new(),
            bytes: Vec::new(),
            headers: BTreeMap::new(),
        }
    }

    /// Opens a page and follows redirects.
    pub async fn open(&mut self, path: &str) -> &mut Self {
        self.request(test::TestRequest::get().uri(path), path).await;
        self.follow().await
    }

    /// Opens a page without following redirects.
    pub async fn peek(&mut self, path: &str) -> &mut Self {
        self.request(test::TestRequest::get().uri(path), path).await;
        self
    }

    /// Sends pairs as a form, as a page of ours would, and follows redirects.
    pub async fn send(&mut self, path: &str, pairs: &[(String, String)]) -> &mut Self {
        let request = test::TestRequest::post().uri(path).set_form(pairs).insert_header(("sec-fetch-site", "same-origin"));
        self.request(request, path).await;
        self.follow().await
    }

    /// Sends a request as given.
    pub async fn request(&mut self, request: test::TestRequest, path: &str) {
        let mut request = request.insert_header((header::HOST, "localhost"));
        for (name, value) in &self.cookies {
            request = request.cookie(Cookie::new(name.clone(), value.clone()));
        }
        let response = (self.site)(request.to_request()).await;
        self.status = response.status();
        self.headers = response.headers().iter().map(|(k, v)| (k.to_string(), v.to_str().unwrap_or_default().to_owned())).collect();
        let cookies: Vec<(String, String, bool)> = response
            .response()
            .cookies()
            .map(|c| (c.name().to_owned(), c.value().to_owned(), c.max_age().is_some_and(|a| a.is_zero())))
            .collect();
        for (name, value, gone) in cookies {
            if gone {
                self.cookies.remove(&name);
            } else {
                self.cookies.insert(name, value);
            }
        }
        path.clone_into(&mut self.path);
        let bytes = test::read_body(response).await;
        self.body = String::from_utf8_lossy(&bytes).into_owned();
        self.bytes = bytes.to_vec();
    }

    async fn follow(&mut self) -> &mut Self {
        for _ in 0..5 {
            if !self.status.is_redirection() {
                return self;
            }
            let next = self.headers.get("location").cloned().expect("a redirect says where to");
            self.request(test::TestRequest::get().uri(&next), &next).await;
        }
        panic!("redirected in a circle at {}", self.path);
    }

    /// Fills the form that matches the selector with these values and sends it. Fields named in `changes` lose the values
    /// the page gave them; a field the form does not have is a mistake of the test, except when `extra` allows it.
    pub async fn submit(&mut self, form: &str, changes: &[(&str, &str)]) -> &mut Self {
        let (action, pairs) = self.filled(form, changes);
        let path = if action.is_empty() { self.path.clone() } else { action };
        self.send(&path, &pairs).await
    }

    /// The address and pairs of a form with these changes.
    pub fn filled(&self, form: &str, changes: &[(&str, &str)]) -> (String, Vec<(String, String)>) {
        let page = self.page();
        let form_element =
            page.select(&selector(form)).next().unwrap_or_else(|| panic!("no form {form} on {}:\n{}", self.path, self.text()));
        let mut pairs = Vec::new();
        let mut names = Vec::new();
        for element in form_element.select(&selector("input, select, textarea, button[name]")) {
            let Some(name) = element.attr("name") else { continue };
            names.push(name.to_owned());
            if changes.iter().any(|(changed, _)| *changed == name) {
                continue;
            }
            if let Some(value) = given_value(element) {
                pairs.push((name.to_owned(), value));
            }
        }
        for (name, value) in changes {
            assert!(names.iter().any(|n| n == name), "the form {form} on {} has no field {name}; it has {names:?}", self.path);
            pairs.push(((*name).to_owned(), (*value).to_owned()));
        }
        (form_element.attr("action").unwrap_or_default().to_owned(), pairs)
    }

    /// The last page, parsed.
    pub fn page(&self) -> Html {
        Html::parse_document(&self.body)
    }

    /// What a reader sees, blanks folded.
    pub fn text(&self) -> String {
        let page = self.page();
        let text = page.select(&selector("body")).flat_map(|b| b.text().collect::<Vec<_>>()).collect::<Vec<_>>().join(" ");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// The text of each element that matches.
    pub fn texts(&self, css: &str) -> Vec<String> {
        self.page()
            .select(&selector(css))
            .map(|e| e.text().collect::<Vec<_>>().join(" ").split_whitespace().collect::<Vec<_>>().join(" "))
            .collect()
    }

    /// An attribute of each element that matches.
    pub fn attrs(&self, css: &str, name: &str) -> Vec<String> {
        self.page().select(&selector(css)).filter_map(|e| e.attr(name).map(str::to_owned)).collect()
    }

    /// Fails unless the page says this.
    #[track_caller]
    pub fn says(&self, text: &str) -> &Self {
        assert!(self.text().contains(text), "{} ({}) does not say {text:?}:\n{}", self.path, self.status, self.text());
        self
    }

    /// Fails if the page says this.
    #[track_caller]
    pub fn does_not_say(&self, text: &str) -> &Self {
        assert!(!self.text().contains(text), "{} ({}) says {text:?}:\n{}", self.path, self.status, self.text());
        self
    }

    /// Fails unless the status is this.
    #[track_caller]
    pub fn is(&self, status: u16) -> &Self {
        assert_eq!(self.status.as_u16(), status, "{}:\n{}", self.path, self.text());
        self
    }
}

fn given_value(element: ElementRef<'_>) -> Option<String> {
    match (element.value().name(), element.attr("type").unwrap_or("text")) {
        ("input", "radio" | "checkbox") => element.attr("checked").map(|_| element.attr("value").unwrap_or("on").to_owned()),
        ("input", "submit" | "button") | ("button", _) => None,
        ("input", _) => Some(element.attr("value").unwrap_or_default().to_owned()),
        ("textarea", _) => Some(element.text().collect()),
        ("select", _) => {
            let options: Vec<ElementRef<'_>> = element.select(&selector("option")).collect();
            let chosen = options.iter().find(|o| o.attr("selected").is_some()).or_else(|| options.first())?;
            Some(chosen.attr("value").map_or_else(|| chosen.text().collect(), str::to_owned))
        }
        _ => None,
    }
}

/// A selector; a wrong one is a mistake of the test.
pub fn selector(css: &str) -> Selector {
    Selector::parse(css).unwrap_or_else(|e| panic!("{css}: {e}"))
}
