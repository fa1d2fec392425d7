//! The board of an apiary in holdings that grow around it.

use std::hint::black_box;

use anyhow::Context;
use combclear_bench::apiaries::with_colonies;
use combclear_bench::scene::leaflets;
use combclear_domain::Day;
use combclear_domain::basics::words::ColonyName;
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;

use crate::table::Table;
use crate::timing::median;

/// Colonies of an apiary.
const COLONIES: u32 = 25;

pub(crate) fn measure(table: &mut Table) -> anyhow::Result<()> {
    let mut smallest = None;
    for colonies in [500, 5_000, 50_000] {
        let holding = with_colonies(colonies, colonies / COLONIES);
        let apiary = holding.apiaries().next().cloned().context("the holding has no apiary")?;
        let on = Day::new(2026, 4, 18).context("there is such a day")?;
        let took = median(|| {
            let there: Vec<&ColonyName> = holding.colonies_at(&apiary, on).collect();
            SuperingReport::board(Words::english(), black_box(&holding), leaflets(), there, on)
        });
        let what = format!("board of {COLONIES} colonies in a holding of {colonies}");
        match smallest {
            None => table.alone(&what, took),
            Some(smallest) => table.time(&what, took, "in the holding of 500", smallest),
        }
        smallest = smallest.or(Some(took));
    }
    Ok(())
}
