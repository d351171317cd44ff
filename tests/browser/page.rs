//! One person at one window: opens, fills, ticks, presses, reads. Fields are found by name, links and buttons by their words. Knows no
//! page of the program.

use std::cell::Cell;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::io::Read;
use std::io::Write;
use std::net::TcpStream;
use std::rc::Rc;
use std::time::Duration;
use std::time::Instant;

use thirtyfour::By;
use thirtyfour::WebDriver;
use thirtyfour::WebElement;

use crate::look;

/// A page that takes longer is broken.
const PATIENCE: Duration = Duration::from_secs(20);

/// Addresses of the page's own links.
const LINKS: &str = "const own = [...document.querySelectorAll('a[href]')].filter(a => a.origin === location.origin && !a.hash);
    return [...new Set(own.map(a => a.pathname + a.search))];";

/// Addresses of the files that the page offers to keep.
const FILES: &str = "return [...document.querySelectorAll('a[download]')].map(a => a.pathname + a.search);";

/// What a walk has seen so far, over all its people.
#[derive(Debug, Default)]
pub struct Seen {
    count: Cell<usize>,
    faults: RefCell<Vec<String>>,
}

impl Seen {
    /// Fails with every fault of every page at once.
    ///
    /// # Panics
    /// If there was one, or if fewer pages were looked at than said: a walk cut short checks too little.
    pub fn all_well(&self, at_least: usize) {
        let faults = self.faults.borrow();
        assert!(faults.is_empty(), "{} faults on {} pages:\n{}", faults.len(), self.count.get(), faults.join("\n"));
        assert!(self.count.get() >= at_least, "only {} pages were looked at", self.count.get());
    }
}

/// One person at one window.
pub struct Person {
    window: WebDriver,
    base: String,
    walk: &'static str,
    axe: Rc<str>,
    seen: Rc<Seen>,
    followed: RefCell<BTreeSet<String>>,
    hand: Cell<Hand>,
}

/// What a hand has done since it was last asked.
#[derive(Debug, Clone, Copy, Default)]
pub struct Hand {
    /// Touches of a field, an answer, a fold, a button or a link.
    pub touches: u32,
    /// Signs typed.
    pub keys: u32,
}

impl Hand {
    /// Seconds by the keystroke-level model (Card, Moran and Newell 1980, Communications of the ACM 23: 396–410): 1.35 to think of
    /// each answer, 1.10 to point at it, 0.28 a sign (their figure for people who are no typists), which a touch counts as too.
    #[must_use]
    pub fn seconds(self) -> f64 {
        f64::from(self.touches) * (1.35 + 1.10 + 0.28) + f64::from(self.keys) * 0.28
    }
}

impl Person {
    /// Somebody at a window of this site; pictures are named after the walk.
    pub async fn new(window: WebDriver, base: &str, walk: &'static str, seen: &Rc<Seen>) -> Self {
        look::PHONE.put_on(&window).await;
        Self {
            window,
            base: base.to_owned(),
            walk,
            axe: look::axe_source().into(),
            seen: Rc::clone(seen),
            followed: RefCell::default(),
            hand: Cell::default(),
        }
    }

    /// Opens an address of the site.
    ///
    /// # Panics
    /// When nothing answers.
    pub async fn open(&self, path: &str) -> &Self {
        self.window.goto(format!("{}{path}", self.base)).await.expect("the site answers");
        self
    }

    /// Checks the page and leaves pictures of it; its faults are told at the end of the walk.
    pub async fn look(&self, name: &str) -> &Self {
        let number = self.seen.count.get() + 1;
        self.seen.count.set(number);
        let path = self.path().await;
        let dead = self.dead_links().await;
        for fault in look::faults(&self.window, &self.axe).await.into_iter().chain(dead) {
            self.seen.faults.borrow_mut().push(format!("{name} ({path}), {fault}"));
        }
        look::pictures(&self.window, &format!("{}-{number:02}-{name}", self.walk)).await;
        self
    }

    /// Checks the page as it comes out of a printer; its faults are told at the end of the walk.
    pub async fn print(&self, name: &str) -> &Self {
        let path = self.path().await;
        for fault in look::paper_faults(&self.window, &format!("{}-{name}", self.walk)).await {
            self.seen.faults.borrow_mut().push(format!("{name} ({path}), {fault}"));
        }
        self
    }

    /// Links of the page that lead to nothing for this person; each address is asked once a walk and person.
    async fn dead_links(&self) -> Vec<String> {
        let links = self.window.execute(LINKS, Vec::new()).await.expect("links read");
        let links: Vec<String> = links.convert().expect("addresses");
        let fresh: Vec<String> = links.into_iter().filter(|path| self.followed.borrow_mut().insert(path.clone())).collect();
        let cookies = self.cookies().await;
        let status = |path: &str| answer_of(self.host(), path, &cookies).map_or(0, |(status, _)| status);
        let asked = fresh.iter().map(|path| (path, status(path)));
        asked
            .filter(|(_, status)| !(200..400).contains(status))
            .map(|(path, status)| format!("the link to {path} answers {status}"))
            .collect()
    }

    /// The files that the page offers to keep, each with its text.
    ///
    /// # Panics
    /// When one cannot be had.
    pub async fn files(&self) -> Vec<(String, String)> {
        let links = self.window.execute(FILES, Vec::new()).await.expect("links read");
        let links: Vec<String> = links.convert().expect("addresses");
        let cookies = self.cookies().await;
        let file = |path: String| match answer_of(self.host(), &path, &cookies) {
            Some((200, text)) => (path, text),
            other => panic!("{path} is no file: {other:?}"),
        };
        links.into_iter().map(file).collect()
    }

    async fn cookies(&self) -> String {
        let cookies = self.window.get_all_cookies().await.expect("cookies");
        cookies.iter().map(|c| format!("{}={}", c.name, c.value)).collect::<Vec<_>>().join("; ")
    }

    fn host(&self) -> &str {
        self.base.trim_start_matches("http://")
    }

    /// Follows the first link that matches.
    pub async fn follow_first(&self, css: &str) -> &Self {
        match self.window.find(By::Css(css)).await {
            Ok(link) => self.leave_by(&link, css).await,
            Err(_) => self.stuck(&format!("no link {css}")).await,
        }
        self
    }

    /// Follows the first link with these words in it.
    pub async fn follow(&self, words: &str) -> &Self {
        let link = self.one(&format!("//a[contains(normalize-space(.), {})]", quoted(words)), &format!("link “{words}”")).await;
        self.leave_by(&link, words).await;
        self
    }

    /// Presses the first button with these words in it.
    pub async fn press(&self, words: &str) -> &Self {
        let button = self.one(&format!("//button[contains(normalize-space(.), {})]", quoted(words)), &format!("button “{words}”")).await;
        self.leave_by(&button, words).await;
        self
    }

    /// Presses the first button with these words in it, which opens a page beside this one.
    pub async fn press_beside(&self, words: &str) -> &Self {
        let before = self.window.windows().await.expect("windows").len();
        let button = self.one(&format!("//button[contains(normalize-space(.), {})]", quoted(words)), &format!("button “{words}”")).await;
        self.click(&button, words).await;
        let begun = Instant::now();
        while begun.elapsed() < PATIENCE {
            if self.window.windows().await.is_ok_and(|windows| windows.len() > before) {
                return self;
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        self.stuck(&format!("“{words}” opens nothing beside")).await
    }

    /// Opens a folded part of the page by its words.
    pub async fn unfold(&self, words: &str) -> &Self {
        let fold = self.one(&format!("//summary[contains(normalize-space(.), {})]", quoted(words)), &format!("fold “{words}”")).await;
        self.click(&fold, words).await;
        self
    }

    /// What the hand has done since this was last asked.
    pub fn hand(&self) -> Hand {
        self.hand.take()
    }

    fn moved(&self, keys: usize) {
        let Hand { touches, keys: before } = self.hand.get();
        self.hand.set(Hand { touches: touches + 1, keys: before + u32::try_from(keys).unwrap_or(u32::MAX) });
    }

    /// Writes into the field of this name, in place of what stands there.
    pub async fn write(&self, name: &str, value: &str) -> &Self {
        self.moved(value.chars().count());
        let field = self.one(&format!("//main//*[@name={}]", quoted(name)), &format!("field {name}")).await;
        self.uncover(&field).await;
        let done = async {
            field.clear().await?;
            field.send_keys(value).await
        };
        if let Err(error) = done.await {
            self.stuck(&format!("the field {name} takes no text: {error}")).await;
        }
        self
    }

    /// Ticks or chooses the answer of this name and value by its label, as a thumb does.
    pub async fn tick(&self, name: &str, value: &str) -> &Self {
        let path = format!("//main//input[@name={} and @value={}]", quoted(name), quoted(value));
        let input = self.one(&path, &format!("answer {name}={value}")).await;
        self.uncover(&input).await;
        let label = self.one(&format!("{path}/ancestor::label"), &format!("label of {name}={value}")).await;
        self.click(&label, value).await;
        if !input.is_selected().await.unwrap_or(false) {
            self.stuck(&format!("{name}={value} is not chosen by its label")).await;
        }
        self
    }

    /// Chooses from a list by the words of the option.
    pub async fn choose(&self, name: &str, words: &str) -> &Self {
        let path = format!("//main//select[@name={}]", quoted(name));
        let list = self.one(&path, &format!("list {name}")).await;
        self.uncover(&list).await;
        let path = format!("{path}/option[contains(normalize-space(.), {})]", quoted(words));
        let option = self.one(&path, &format!("{words} in the list {name}")).await;
        self.click(&option, words).await;
        self
    }

    /// What a reader sees.
    pub async fn text(&self) -> String {
        let body = self.window.find(By::Css("body")).await.expect("a page");
        let text = body.text().await.unwrap_or_default();
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// The heading.
    pub async fn heading(&self) -> String {
        match self.window.find(By::Css("h1")).await {
            Ok(heading) => heading.text().await.unwrap_or_default(),
            Err(_) => String::new(),
        }
    }

    /// The text of the first element that matches.
    pub async fn shown(&self, css: &str) -> String {
        match self.window.find(By::Css(css)).await {
            Ok(element) => element.text().await.unwrap_or_default(),
            Err(_) => String::new(),
        }
    }

    /// The path of the address, without its question part.
    pub async fn path(&self) -> String {
        self.window.current_url().await.map(|url| url.path().to_owned()).unwrap_or_default()
    }

    /// What stands in the field of this name.
    pub async fn written(&self, name: &str) -> String {
        let field = self.one(&format!("//main//*[@name={}]", quoted(name)), &format!("field {name}")).await;
        field.value().await.ok().flatten().unwrap_or_default()
    }

    /// Fails unless the page says this (folded parts count when open).
    pub async fn says(&self, words: &str) -> &Self {
        if !self.text().await.contains(words) {
            self.stuck(&format!("the page does not say “{words}”")).await;
        }
        self
    }

    /// Fails if the page says this.
    pub async fn does_not_say(&self, words: &str) -> &Self {
        if self.text().await.contains(words) {
            self.stuck(&format!("the page says “{words}”")).await;
        }
        self
    }

    /// The language that the page says it is in.
    pub async fn language(&self) -> String {
        let root = self.window.find(By::Css("html")).await.expect("a page");
        root.attr("lang").await.ok().flatten().unwrap_or_default()
    }

    /// The window itself, for what has no word here.
    #[must_use]
    pub const fn window(&self) -> &WebDriver {
        &self.window
    }

    /// The first element that can be seen, or the first at all if it is folded away.
    async fn one(&self, xpath: &str, what: &str) -> WebElement {
        let all = self.window.find_all(By::XPath(xpath)).await.unwrap_or_default();
        for element in &all {
            if element.is_displayed().await.unwrap_or(false) {
                return element.clone();
            }
        }
        match all.into_iter().next() {
            Some(element) => element,
            None => self.stuck(&format!("no {what}")).await,
        }
    }

    /// Unfolds what the element is folded away in, from the outside in.
    async fn uncover(&self, element: &WebElement) {
        let folds = element.find_all(By::XPath("ancestor::details[not(@open)]/summary")).await.unwrap_or_default();
        for fold in folds {
            self.click(&fold, "a folded part").await;
        }
    }

    async fn click(&self, element: &WebElement, words: &str) {
        self.moved(0);
        // To the middle, as a hand scrolls: the bar at the foot of a phone may lie over what is merely on the screen.
        let _ = self
            .window
            .execute("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", vec![element.to_json().expect("an element")])
            .await;
        if let Err(error) = element.click().await {
            self.stuck(&format!("“{words}” cannot be pressed: {error}")).await;
        }
    }

    /// Clicks what leads to another page, and waits until that is there.
    async fn leave_by(&self, element: &WebElement, words: &str) {
        self.window.execute("window.walkedAwayFrom = true", Vec::new()).await.expect("marked");
        self.click(element, words).await;
        let begun = Instant::now();
        while begun.elapsed() < PATIENCE {
            let arrived = self.window.execute("return !window.walkedAwayFrom && document.readyState === 'complete'", Vec::new()).await;
            if arrived.is_ok_and(|answer| answer.convert().unwrap_or(false)) {
                return;
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        self.stuck(&format!("“{words}” leads nowhere")).await
    }

    async fn stuck(&self, why: &str) -> ! {
        look::pictures(&self.window, &format!("{}-stuck", self.walk)).await;
        let (path, text) = (self.path().await, self.text().await);
        let found = self.seen.faults.borrow().join("\n");
        panic!("{why}\non {path}:\n{text}\nfaults so far:\n{found}");
    }
}

/// A text for an XPath.
fn quoted(text: &str) -> String {
    if text.contains('"') { format!("'{text}'") } else { format!("\"{text}\"") }
}

/// What a site answers to a plain request of whoever has these cookies: status and text. Not asked through the page: its own policy
/// lets nothing in it ask.
fn answer_of(host: &str, path: &str, cookies: &str) -> Option<(u16, String)> {
    let mut asking = TcpStream::connect(host).ok()?;
    let _ = asking.set_read_timeout(Some(PATIENCE));
    write!(asking, "GET {path} HTTP/1.0\r\nHost: {host}\r\nCookie: {cookies}\r\n\r\n").ok()?;
    let mut answer = Vec::new();
    asking.read_to_end(&mut answer).ok()?;
    let answer = String::from_utf8_lossy(&answer);
    let (head, body) = answer.split_once("\r\n\r\n")?;
    Some((head.split_whitespace().nth(1)?.parse().ok()?, body.to_owned()))
}
