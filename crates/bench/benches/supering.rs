//! Cost of the supering question, beside the same written by hand.
//!
//! Run with `cargo bench -p combclear-bench --bench supering`.

use combclear_bench::plain;
use combclear_bench::scene::{Ending, Scene, leaflets, with_courses};
use combclear_domain::facts::history::History;
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use divan::{Bencher, black_box};

const COURSES: [u16; 3] = [4, 20, 100];

fn main() {
    divan::main();
}

fn of(scene: &Scene) -> History {
    History::of(&scene.holding, leaflets(), &scene.colony)
}

macro_rules! scenes {
    ($($(#[$doc:meta])+ $scene:ident = $ending:expr;)+) => {$(
        $(#[$doc])+
        mod $scene {
            use super::*;

            #[divan::bench(args = COURSES)]
            fn a_written_by_hand(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let by_hand = plain::of(&of(&scene));
                bencher.bench_local(|| plain::may_be_supered(black_box(&by_hand), black_box(scene.on)));
            }

            #[divan::bench(args = COURSES)]
            fn a_written_by_hand_days_worked_out(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let by_hand: Vec<_> = plain::of(&of(&scene)).iter().map(plain::WorkedOut::of).collect();
                bencher.bench_local(|| plain::free_of_all(black_box(&by_hand), black_box(scene.on)));
            }

            #[divan::bench(args = COURSES)]
            fn b_may_be_supered(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let history = of(&scene);
                bencher.bench_local(|| black_box(&history).may_be_supered(black_box(scene.on)));
            }

            #[divan::bench(args = COURSES)]
            fn c_supering_with_grounds(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let history = of(&scene);
                bencher.bench_local(|| black_box(&history).supering(black_box(scene.on)));
            }

            #[divan::bench(args = COURSES)]
            fn d_history_of(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let leaflets = leaflets();
                bencher.bench_local(|| {
                    History::of(black_box(&scene.holding), black_box(leaflets), black_box(&scene.colony))
                });
            }

            #[divan::bench(args = COURSES)]
            fn e_report_of(bencher: Bencher, courses: u16) {
                let scene = with_courses(courses, $ending);
                let leaflets = leaflets();
                bencher.bench_local(|| {
                    let (holding, colony) = (black_box(&scene.holding), black_box(&scene.colony));
                    let on = black_box(scene.on);
                    SuperingReport::ask(Words::english(), holding, black_box(leaflets), colony, on)
                });
            }
        }
    )+};
}

scenes! {
    /// All courses are long over, so every one is looked at.
    all_over = Ending::AllOver;
    /// The last course is still in.
    last_is_in = Ending::LastIsIn;
}
