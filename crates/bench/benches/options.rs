//! Cost of the options question, and its growth with colonies, days and leaflets.
//!
//! Run with `cargo bench -p combclear-bench --bench options`.

use combclear_bench::apiaries::{about, leaflets_times, with_colonies};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{ApiaryOptions, Ask, Board, ColonyOptions};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;
use combclear_wording::options::{ApiaryReport, OptionsReport};
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// Judges every choice in every colony. Returns the number of ranges of start days, so that nothing is optimised away.
fn judged(holding: &Holding, leaflets: &Leaflets, ask: &Ask) -> usize {
    let board = Board::of(holding, leaflets, ask, holding.apiaries());
    holding.colonies().flat_map(|colony| board.judge(colony)).map(|judged| judged.days.len()).sum()
}

/// One apiary of 40 colonies, 60 days, all leaflets of the jurisdiction.
#[divan::bench]
fn a_one_apiary_of_40_colonies(bencher: Bencher) {
    let (holding, leaflets, ask) = (with_colonies(40, 1), leaflets_times(1), about(60));
    bencher.bench_local(|| judged(black_box(&holding), black_box(&leaflets), black_box(&ask)));
}

/// The same in words.
#[divan::bench]
fn a_one_apiary_of_40_colonies_in_words(bencher: Bencher) {
    let (holding, leaflets, ask) = (with_colonies(40, 1), leaflets_times(1), about(60));
    bencher.bench_local(|| {
        let answers = holding
            .apiaries()
            .filter_map(|apiary| ApiaryOptions::of(&holding, &leaflets, apiary, black_box(&ask)));
        answers.map(|answer| ApiaryReport::of(Words::english(), &holding, answer)).last()
    });
}

/// One colony in words, with all its conditions.
#[divan::bench]
fn a_one_colony_in_words(bencher: Bencher) {
    let (holding, leaflets, ask) = (with_colonies(40, 1), leaflets_times(1), about(60));
    bencher.bench_local(|| {
        let colony = holding.colonies().next();
        let answer = colony.map(|colony| ColonyOptions::of(&holding, &leaflets, colony, black_box(&ask)));
        answer.map(|answer| OptionsReport::of(Words::english(), &holding, answer))
    });
}

/// 125 to 1000 colonies in 20 apiaries, 60 days.
#[divan::bench(args = [125, 250, 500, 1000])]
fn b_colonies(bencher: Bencher, colonies: u32) {
    let (holding, leaflets, ask) = (with_colonies(colonies, 20), leaflets_times(1), about(60));
    bencher.bench_local(|| judged(black_box(&holding), black_box(&leaflets), black_box(&ask)));
}

/// 500 colonies in 20 apiaries, over 30 to 240 days.
#[divan::bench(args = [30, 60, 120, 240])]
fn c_days(bencher: Bencher, days: u16) {
    let (holding, leaflets, ask) = (with_colonies(500, 20), leaflets_times(1), about(days));
    bencher.bench_local(|| judged(black_box(&holding), black_box(&leaflets), black_box(&ask)));
}

/// 500 colonies in 20 apiaries, with the leaflets repeated 1, 2 and 4 times.
#[divan::bench(args = [1, 2, 4])]
fn d_leaflets(bencher: Bencher, times: u32) {
    let (holding, leaflets, ask) = (with_colonies(500, 20), leaflets_times(times), about(60));
    bencher.bench_local(|| judged(black_box(&holding), black_box(&leaflets), black_box(&ask)));
}
