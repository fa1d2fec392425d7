//! From the start to the first answer, and the answers after it, as the register grows.

use std::time::Duration;

use anyhow::{Context, ensure};
use serde_json::Value;

use crate::children::{output, said};
use crate::registers::{address, write};
use crate::table::Table;
use crate::timing::middle;

/// How often a start is measured.
const STARTS: usize = 5;

pub(crate) fn measure(table: &mut Table) -> anyhow::Result<()> {
    let folder = tempfile::tempdir()?;
    let runtime = tokio::runtime::Runtime::new()?;
    let mut smallest = None;
    for (holdings, entries) in [(1, 0), (1, 10_000), (1, 100_000), (1, 1_000_000), (1_000, 300)] {
        let address = address(folder.path(), &format!("{holdings}-{entries}.db"));
        let count = runtime.block_on(write(&address, holdings, entries))?;
        let mut starts = Vec::new();
        let mut last = Value::Null;
        for _ in 0..STARTS {
            last = said(&output(&["first-answer", &address, &holdings.to_string()])?)?;
            starts.push(Duration::from_secs_f64(number(&last, "start_s")?));
        }
        let start = middle(&mut starts);
        let what = if holdings == 1 {
            format!("{count} entries")
        } else {
            format!("{holdings} holdings of {entries} entries")
        };
        table.alone(&format!("start to first answer, {what}"), start);
        if count == 0 {
            continue;
        }
        let each = f64::from(u32::try_from(count)?);
        let rate = each / start.as_secs_f64();
        let bytes = number(&last, "bytes")? / each;
        table.row(
            &format!("fold with the chain verified, {what}"),
            &format!("{rate:.0} entries/s"),
            "",
            "",
            "",
        );
        table.row(&format!("memory, {what}"), &format!("{bytes:.0} bytes/entry"), "", "", "");
        if holdings > 1 {
            continue;
        }
        let courses = number(&last, "courses")?;
        ensure!((courses - 20.0).abs() < 0.5, "a colony has {courses} courses");
        let answer = Duration::from_secs_f64(number(&last, "answer_s")?);
        let what = format!("one colony in words, {what}");
        match smallest {
            None => table.alone(&what, answer),
            Some(smallest) => table.time(&what, answer, "in the smallest register", smallest),
        }
        smallest = smallest.or(Some(answer));
    }
    Ok(())
}

/// A number that a child says.
fn number(said: &Value, name: &str) -> anyhow::Result<f64> {
    said.get(name).and_then(Value::as_f64).with_context(|| format!("a child says no {name}"))
}
