//! Combclear beside others that do the same, as one table in Markdown: `cargo run --release -p combclear-side-by-side`.
//!
//! Names of sections choose some of them: `answers`, `boards`, `start`, `requests`, `appends`. The programs that are measured from
//! outside run as children of this one, under the names `service`, `bare` and `first-answer`.

mod answers;
mod appends;
mod boards;
mod children;
mod expression;
mod policy;
mod registers;
mod requests;
mod start;
mod table;
mod timing;

use std::io::Write;

use table::Table;

/// Measures a section into the table.
type Measure = fn(&mut Table) -> anyhow::Result<()>;

fn main() -> anyhow::Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["service", address] => return children::service(address),
        ["bare", file] => return children::bare(file),
        ["first-answer", address, holdings] => return children::first_answer(address, holdings.parse()?),
        _ => {}
    }
    let mut table = Table::default();
    let is_asked = |section: &str| words.is_empty() || words.contains(&section);
    let sections: [(&str, Measure); 5] = [
        ("answers", answers::measure),
        ("boards", boards::measure),
        ("start", start::measure),
        ("requests", requests::measure),
        ("appends", appends::measure),
    ];
    for (section, measure) in sections {
        if is_asked(section) {
            measure(&mut table)?;
        }
    }
    write!(std::io::stdout(), "{table}")?;
    Ok(())
}
