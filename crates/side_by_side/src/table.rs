//! The table.

use std::fmt;
use std::time::Duration;

/// Rows, in the order in which they were measured.
#[derive(Debug, Default)]
pub(crate) struct Table(Vec<[String; 5]>);

impl Table {
    /// A time beside that of another way to do the same. The ratio says how many times as long ours takes.
    pub(crate) fn time(&mut self, what: &str, ours: Duration, other: &str, theirs: Duration) {
        let ratio = ours.as_secs_f64() / theirs.as_secs_f64();
        self.row(what, &shown(ours), other, &shown(theirs), &shown_ratio(ratio));
    }

    /// A time for which there is nothing to be held against.
    pub(crate) fn alone(&mut self, what: &str, ours: Duration) {
        self.row(what, &shown(ours), "", "", "");
    }

    /// Any other row.
    pub(crate) fn row(&mut self, what: &str, ours: &str, other: &str, theirs: &str, ratio: &str) {
        self.0.push([what, ours, other, theirs, ratio].map(str::to_owned));
    }
}

/// A time with three digits.
pub(crate) fn shown(time: Duration) -> String {
    let nanoseconds = time.as_secs_f64() * 1e9;
    let (value, unit) = match nanoseconds {
        ..1e3 => (nanoseconds, "ns"),
        ..1e6 => (nanoseconds / 1e3, "µs"),
        ..1e9 => (nanoseconds / 1e6, "ms"),
        _ => (nanoseconds / 1e9, "s"),
    };
    let places = if value < 10.0 { 2 } else { usize::from(value < 100.0) };
    format!("{value:.places$} {unit}")
}

/// A ratio with about three digits.
pub(crate) fn shown_ratio(ratio: f64) -> String {
    match ratio {
        ..0.1 => format!("1 / {:.0}", 1.0 / ratio),
        ..10.0 => format!("{ratio:.2}"),
        _ => format!("{ratio:.0}"),
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "| what | ours | beside | theirs | ours / theirs |")?;
        writeln!(f, "| --- | --- | --- | --- | --- |")?;
        for row in &self.0 {
            writeln!(f, "| {} |", row.join(" | "))?;
        }
        Ok(())
    }
}
