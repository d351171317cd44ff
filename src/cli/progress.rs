//! A bar on the terminal for work that takes a while; nothing where nobody looks on.

use std::io::IsTerminal;
use std::io::Write;

/// Cells of the bar.
const WIDTH: u64 = 40;

/// How far some work is. It is drawn on standard error, so that standard output stays clean.
pub struct Progress {
    what: &'static str,
    shown: bool,
    cells: Option<u64>,
}

impl Progress {
    /// A bar with a word before it; shown on a terminal only.
    #[must_use]
    pub fn new(what: &'static str) -> Self {
        Self { what, shown: std::io::stderr().is_terminal(), cells: None }
    }

    /// Draws it when there is something new to see.
    pub fn to(&mut self, done: u64, all: u64) {
        let cells = filled(done, all);
        if !self.shown || (self.cells == Some(cells) && done < all) {
            return;
        }
        self.cells = Some(cells);
        // A terminal that cannot be written to is no reason to stop the work.
        let _ = write!(std::io::stderr(), "\r{}", line(self.what, done, all));
        let _ = std::io::stderr().flush();
    }

    /// Takes it away.
    pub fn end(&mut self) {
        if self.cells.take().is_some() {
            let _ = write!(std::io::stderr(), "\r{}\r", " ".repeat(80));
        }
    }
}

fn filled(done: u64, all: u64) -> u64 {
    (done * WIDTH).checked_div(all).unwrap_or(WIDTH).min(WIDTH)
}

fn line(what: &str, done: u64, all: u64) -> String {
    let cells = usize::try_from(filled(done, all)).unwrap_or(0);
    let rest = usize::try_from(WIDTH).unwrap_or(0) - cells;
    format!("{what} [{}{}] {done}/{all}", "#".repeat(cells), ".".repeat(rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_fills_as_the_work_goes_on() {
        assert_eq!(line("Checking", 0, 80), format!("Checking [{}] 0/80", ".".repeat(40)));
        assert_eq!(line("Checking", 41, 80), format!("Checking [{}{}] 41/80", "#".repeat(20), ".".repeat(20)));
        assert_eq!(line("Checking", 0, 0), format!("Checking [{}] 0/0", "#".repeat(40)));
    }
}
