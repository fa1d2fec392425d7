//! How long something takes.

use std::hint::black_box;
use std::time::{Duration, Instant};

/// How many times a run is repeated.
const SAMPLES: usize = 101;
/// A run takes at least this long, so that the clock is read rarely.
const RUN: Duration = Duration::from_micros(500);

/// The median of many hot runs.
pub(crate) fn median<T>(mut done: impl FnMut() -> T) -> Duration {
    let mut times: u32 = 1;
    while times < 1 << 20 && run(times, &mut done) < RUN {
        times *= 2;
    }
    let mut samples: Vec<Duration> = (0..SAMPLES).map(|_| run(times, &mut done) / times).collect();
    middle(&mut samples)
}

/// The middle of some times; zero if there are none.
pub(crate) fn middle(times: &mut [Duration]) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn run<T>(times: u32, done: &mut impl FnMut() -> T) -> Duration {
    let began = Instant::now();
    for _ in 0..times {
        black_box(done());
    }
    began.elapsed()
}
