//! A table of a month on its way: counted, then set beside all others, then printed. No table decides alone what it withholds.

use crate::report::csv_table::{Release, Table};
use crate::report::cube::Put;
use crate::report::layout::Areas;
use crate::report::system::System;

/// What has been counted for one or two tables.
pub(crate) trait Counted {
    /// Adds every figure and what a reader knows of them; gives the place of the first.
    fn put(&self, system: &mut System) -> Put;

    /// The tables; `withheld` begins with the table's first figure.
    fn tables(&self, release: &Release, areas: &Areas, withheld: &[bool]) -> Vec<Table>;
}

/// The tables of one count as a release of its own would print them, and as they were counted.
#[cfg(test)]
pub(crate) mod alone {
    use super::*;
    use crate::report::suppress::{Threshold, withhold};

    pub(crate) fn released(counted: &dyn Counted, release: &Release, areas: &Areas) -> Vec<Table> {
        let mut system = System::default();
        let Put { first, .. } = counted.put(&mut system);
        let withheld = withhold(&system, Threshold::LEAST);
        counted.tables(release, areas, &withheld[first..])
    }

    pub(crate) fn in_full(counted: &dyn Counted, release: &Release, areas: &Areas) -> Vec<Table> {
        let mut system = System::default();
        counted.put(&mut system);
        assert_eq!(system.broken(), [0; 0], "the equations that a reader would use hold");
        counted.tables(release, areas, &vec![false; system.figures.len()])
    }
}
