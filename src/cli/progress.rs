//! How far a long job is, for whoever waits at a terminal. Nothing is drawn into a file, a log or a pipe.

use std::sync::atomic::{AtomicUsize, Ordering};

use super::say;

/// Fewer things than this are done before anybody wonders.
const FEW: usize = 4;
/// Cells of the bar.
const CELLS: usize = 30;

/// A bar on stderr.
pub(super) struct Progress {
    total: usize,
    done: AtomicUsize,
    shown: bool,
}

impl Progress {
    /// A bar for so many things; hidden where it would be noise.
    pub(super) fn of(total: usize, wanted: bool) -> Self {
        let shown = wanted && total >= FEW && say::is_heard();
        Self { total, done: AtomicUsize::new(0), shown }
    }

    /// One more is done.
    pub(super) fn step(&self) {
        let done = self.done.fetch_add(1, Ordering::Relaxed) + 1;
        if self.shown {
            say::redraw(&bar(done, self.total));
        }
    }

    /// Wipes the bar, so that what is printed next stands alone.
    pub(super) fn clear(&self) {
        if self.shown {
            say::wipe(bar(self.total, self.total).chars().count());
        }
    }
}

/// `[=====     ] 5 of 10`, in plain ASCII.
fn bar(done: usize, total: usize) -> String {
    let full = done * CELLS / total.max(1);
    format!("[{}{}] {done} of {total}", "=".repeat(full), " ".repeat(CELLS - full.min(CELLS)))
}

#[cfg(test)]
mod tests {
    use super::bar;

    #[test]
    fn a_bar_fills_as_things_are_done() {
        assert_eq!(bar(0, 4), format!("[{}] 0 of 4", " ".repeat(30)));
        assert_eq!(bar(2, 4), format!("[{}{}] 2 of 4", "=".repeat(15), " ".repeat(15)));
        assert_eq!(bar(4, 4), format!("[{}] 4 of 4", "=".repeat(30)));
    }
}
