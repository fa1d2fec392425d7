//! Texts for a terminal: the width, and lines wrapped to it between words. Nothing else wraps.

mod table;

use std::borrow::Cow;
use std::io::Write;

use textwrap::core::display_width;
use textwrap::{Options, WordSeparator, WordSplitter, WrapAlgorithm};

pub(crate) use table::Table;

/// The width in a file or a pipe.
const ELSEWHERE: usize = 80;

/// A terminal narrower than this is written to as if it were as wide.
const LEAST: usize = 40;

/// The width of lines on standard output.
pub(crate) fn width() -> usize {
    terminal_size::terminal_size_of(std::io::stdout())
        .map_or(ELSEWHERE, |(terminal_size::Width(columns), _)| usize::from(columns).max(LEAST))
}

/// Writes to standard error: wrapped to the width of a terminal; elsewhere a program may read it, and each message stays one
/// line.
pub(crate) fn tell(text: &str) {
    let terminal = terminal_size::terminal_size_of(std::io::stderr());
    let width = terminal.map(|(terminal_size::Width(columns), _)| usize::from(columns).max(LEAST));
    let text = width.map_or(Cow::Borrowed(text), |width| Cow::Owned(wrapped(text, width)));
    // Whoever closed standard error does not want to know.
    let _ = writeln!(std::io::stderr(), "{text}");
}

/// Whether a text has room on one line of standard output.
pub(crate) fn fits(line: &str) -> bool {
    display_width(line) <= width()
}

/// The text with every line wrapped to this width. Further lines are indented by two more than the first.
///
/// Lines break at blanks only: a word, a date or a name stays whole even where it is longer than the line.
pub(crate) fn wrapped(text: &str, width: usize) -> String {
    text.split('\n').map(|line| wrapped_line(line, width)).collect::<Vec<_>>().join("\n")
}

fn wrapped_line(line: &str, width: usize) -> Cow<'_, str> {
    if display_width(line) <= width {
        return Cow::Borrowed(line);
    }
    let text = line.trim_start_matches(' ');
    let indent = " ".repeat(line.len() - text.len());
    let further = format!("{indent}  ");
    Cow::Owned(in_lines(text, width, &indent, &further).join("\n"))
}

/// The lines of a text, broken at blanks.
fn in_lines(text: &str, width: usize, first: &str, further: &str) -> Vec<String> {
    let options = Options::new(width)
        .initial_indent(first)
        .subsequent_indent(further)
        .break_words(false)
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation)
        .wrap_algorithm(WrapAlgorithm::FirstFit);
    textwrap::wrap(text, options).into_iter().map(Cow::into_owned).collect()
}
