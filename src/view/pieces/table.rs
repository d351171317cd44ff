//! Tables: a desk table that folds to rows on a phone, or a grid of numbers that scrolls in itself.

use maud::Markup;
use maud::Render;
use maud::html;

/// One cell.
#[derive(Debug, Clone)]
pub struct Cell {
    body: Markup,
    class: &'static str,
}

impl Cell {
    /// Text or a link.
    #[must_use]
    pub const fn of(body: Markup) -> Self {
        Self { body, class: "" }
    }

    /// Plain text.
    #[must_use]
    pub fn text(text: &str) -> Self {
        Self::of(html! { (text) })
    }

    /// A sentence: in a folded table it has a line of its own.
    #[must_use]
    pub fn sentence(text: &str) -> Self {
        Self { body: html! { (text) }, class: "full" }
    }

    /// A number, set to the end of its column; a zero is quieter.
    #[must_use]
    pub fn number(text: &str) -> Self {
        Self { body: html! { (text) }, class: if text == "0" { "num zero" } else { "num" } }
    }

    /// A number with a word that it asks for.
    #[must_use]
    pub const fn told(body: Markup) -> Self {
        Self { body, class: "num" }
    }

    /// Nothing is said because there is too little; a folded table leaves it out.
    #[must_use]
    pub fn few(words: &str) -> Self {
        Self { body: html! { span.quiet { (words) } }, class: "num few" }
    }

    /// A value that is kept back so that nobody can be recognised: hatched, with its sign on plain ground.
    #[must_use]
    pub fn kept(sign: &str) -> Self {
        Self { body: html! { span { (sign) } }, class: "num kept" }
    }
}

#[derive(Debug, Clone)]
struct Column {
    words: Markup,
    /// In words, for the folded table.
    said: String,
    numeric: bool,
}

/// A table with a caption. The first column names the row.
#[derive(Debug, Clone)]
pub struct Table {
    caption: String,
    /// The caption stands above as a heading already: it is said, not shown.
    headed: bool,
    folds: bool,
    columns: Vec<Column>,
    rows: Vec<Vec<Cell>>,
    foot: Option<Vec<Cell>>,
}

impl Table {
    /// A table that folds to rows on a phone: for things.
    #[must_use]
    pub fn folding(caption: impl Into<String>) -> Self {
        Self { caption: caption.into(), headed: false, folds: true, columns: Vec::new(), rows: Vec::new(), foot: None }
    }

    /// A grid that scrolls sideways in itself: for numbers.
    #[must_use]
    pub fn scrolling(caption: impl Into<String>) -> Self {
        Self { folds: false, ..Self::folding(caption) }
    }

    /// Says that a heading above shows the caption's words.
    #[must_use]
    pub const fn headed(mut self) -> Self {
        self.headed = true;
        self
    }

    /// With one more column.
    #[must_use]
    pub fn column(mut self, words: impl Into<String>, numeric: bool) -> Self {
        let said = words.into();
        self.columns.push(Column { words: html! { (said) }, said, numeric });
        self
    }

    /// With one more column of numbers whose head is a shape; `said` is read aloud.
    #[must_use]
    pub fn shape_column(mut self, shape: &Markup, said: impl Into<String>) -> Self {
        let said = said.into();
        self.columns.push(Column { words: html! { (shape) span.vh { (said) } }, said, numeric: true });
        self
    }

    /// With one more row.
    #[must_use]
    pub fn row(mut self, cells: Vec<Cell>) -> Self {
        self.rows.push(cells);
        self
    }

    /// With a last row of sums.
    #[must_use]
    pub fn foot(mut self, cells: Vec<Cell>) -> Self {
        self.foot = Some(cells);
        self
    }

    fn cells(&self, cells: &[Cell]) -> Markup {
        // A folded table is laid out as a list; roles keep it a table for those who do not see it.
        let role = |role: &'static str| self.folds.then_some(role);
        html! {
            tr role=[role("row")] {
                @for (at, cell) in cells.iter().enumerate() {
                    @if at == 0 {
                        th scope="row" role=[role("rowheader")] { (cell.body) }
                    } @else {
                        td class=[Some(cell.class).filter(|c| !c.is_empty())] role=[role("cell")]
                            data-label=[self.folds.then(|| self.columns.get(at).map(|c| c.said.as_str())).flatten()] { (cell.body) }
                    }
                }
            }
        }
    }

    fn whole(&self) -> Markup {
        let role = |role: &'static str| self.folds.then_some(role);
        html! {
            table class=[self.folds.then_some("stack")] role=[role("table")] {
                caption class=[self.headed.then_some("vh")] { (self.caption) }
                thead role=[role("rowgroup")] {
                    tr role=[role("row")] {
                        @for column in &self.columns {
                            th scope="col" role=[role("columnheader")] class=[column.numeric.then_some("num")] { (column.words) }
                        }
                    }
                }
                tbody role=[role("rowgroup")] { @for row in &self.rows { (self.cells(row)) } }
                @if let Some(foot) = &self.foot { tfoot role=[role("rowgroup")] { (self.cells(foot)) } }
            }
        }
    }
}

impl Render for Table {
    fn render(&self) -> Markup {
        if self.folds {
            return self.whole();
        }
        html! { div.scroll tabindex="0" role="region" aria-label=(self.caption) { (self.whole()) } }
    }
}
