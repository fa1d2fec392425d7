//! A board of colonies: it costs what its colonies cost, whatever else is in the holding.
//!
//! Run with `cargo bench -p combclear-bench --bench boards`.

use combclear_bench::apiaries::with_colonies;
use combclear_bench::scene::{leaflets, many_with_courses};
use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName};
use combclear_domain::facts::holding::Holding;
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// The board of an apiary, with the look for the colonies that stand there.
fn board(holding: &Holding, apiary: &ApiaryName, on: Day) -> Vec<SuperingReport> {
    let there: Vec<&ColonyName> = holding.colonies_at(apiary, on).collect();
    SuperingReport::board(Words::english(), holding, leaflets(), there, on)
}

fn first_apiary(holding: &Holding) -> Option<ApiaryName> {
    holding.apiaries().next().cloned()
}

/// One apiary of 25 colonies with four courses each, in a holding of so many colonies.
#[divan::bench(args = [500, 5_000, 50_000])]
fn a_one_apiary_in_a_holding_of(bencher: Bencher, colonies: u32) {
    let holding = with_colonies(colonies, colonies / 25);
    let Some(apiary) = first_apiary(&holding) else { return };
    let on = Day::new(2026, 4, 18).unwrap_or(Day::LAST);
    bencher.bench_local(|| board(black_box(&holding), black_box(&apiary), black_box(on)));
}

/// 500 colonies at one apiary, with so many courses each.
#[divan::bench(args = [20, 178])]
fn b_500_colonies_with_courses(bencher: Bencher, courses: u16) {
    let (holding, on) = many_with_courses(500, courses);
    let Some(apiary) = first_apiary(&holding) else { return };
    bencher.bench_local(|| board(black_box(&holding), black_box(&apiary), black_box(on)));
}
