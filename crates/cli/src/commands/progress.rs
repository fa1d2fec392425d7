//! What is shown while a long command works: on standard error, and only if that is a terminal.

use std::io::IsTerminal;
use std::time::Duration;

use combclear_wording::Label;
use indicatif::{ProgressBar, ProgressStyle};

use crate::failure::Said;

/// How often something moves.
const TICK: Duration = Duration::from_millis(120);

/// A sign that turns, for work of unknown length.
pub(crate) fn spinner(what: Label) -> ProgressBar {
    let spinner = if std::io::stderr().is_terminal() {
        ProgressBar::new_spinner().with_message(what.said())
    } else {
        ProgressBar::hidden()
    };
    spinner.enable_steady_tick(TICK);
    spinner
}

/// The same as a bar of this many steps, now that their number is known.
pub(crate) fn of_steps(spinner: &ProgressBar, steps: usize) {
    spinner.set_length(u64::try_from(steps).unwrap_or(u64::MAX));
    if let Ok(style) = ProgressStyle::with_template("{spinner} {msg:30} {wide_bar} {pos}/{len}") {
        spinner.set_style(style);
    }
}
