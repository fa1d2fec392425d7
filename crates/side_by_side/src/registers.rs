//! Databases with registers to measure.

use std::path::Path;
use std::sync::Arc;

use anyhow::Context;
use combclear_bench::scene::register_of;
use combclear_domain::basics::words::HoldingName;
use combclear_store::Journal;

/// Entries that an apiary brings.
const OF_AN_APIARY: usize = 570;
/// Entries written at a time.
const BATCH: usize = 5_000;

/// The address of a database in a folder.
pub(crate) fn address(folder: &Path, name: &str) -> String {
    format!("sqlite:{}", folder.join(name).display())
}

/// The name of a holding, by its number.
pub(crate) fn holding(number: usize) -> anyhow::Result<HoldingName> {
    Ok(format!("holding-{number}").parse()?)
}

/// Writes so many holdings with so many entries each. Returns how many entries there are in all.
pub(crate) async fn write(address: &str, holdings: usize, entries: usize) -> anyhow::Result<usize> {
    let journal: Arc<dyn Journal> = combclear_store::open(address).await?;
    for number in 0..holdings {
        let name = holding(number)?;
        let apiaries = u16::try_from(entries.div_ceil(OF_AN_APIARY)).context("too many apiaries")?;
        let mut register = register_of(name.clone(), apiaries);
        register.truncate(entries);
        let mut after = None;
        for batch in register.chunks(BATCH) {
            journal.append(&name, after, batch, &[]).await?;
            after = batch.last().map(combclear_domain::journal::Entry::tip);
        }
    }
    Ok(holdings * entries)
}
