//! Properties that hold for every journal: a later use never shortens, and the longest rule wins.

use combclear_wording::retention::KeepUntil;
use proptest::prelude::*;
use serde_json::json;

use super::{Book, day_of, is_law_not_read, is_no_shorter};
use crate::some;

const JURISDICTIONS: [&str; 8] = ["gb", "ni", "eu", "de", "fr", "ie", "ch", "us"];

fn day(number: u32) -> String {
    let start: combclear_domain::Day = "2022-01-01".parse().unwrap();
    start.plus(u16::try_from(number).unwrap()).to_string()
}

/// An event of the lot.
#[derive(Debug, Clone, Copy)]
enum Happens {
    Given,
    Disposed,
}

proptest! {
    #![proptest_config(some(64))]

    #[test]
    fn adding_a_later_use_never_shortens_the_time_of_any_entry(
        first in 0..JURISDICTIONS.len(),
        then in 0..JURISDICTIONS.len(),
        moved in 0..1500_u32,
        mut happens in prop::collection::vec((1..1500_u32, prop_oneof![Just(Happens::Given), Just(Happens::Disposed)]), 1..6),
    ) {
        happens.sort_by_key(|(on, _)| *on);
        let mut book = Book::of(JURISDICTIONS[first]);
        let details = json!({ "keeper": "K", "jurisdiction": JURISDICTIONS[then] });
        book.write(&day(moved), "holding_details", details);
        book.buy(&day(0), "liquid", "L", u32::try_from(happens.len()).unwrap());
        let mut before = book.set("L", "2026-01-01");
        for (on, what) in happens {
            match what {
                Happens::Given => book.give(&day(on), &["L"]),
                Happens::Disposed => book.dispose(&day(on), "L", 1),
            };
            let after = book.set("L", "2026-01-01");
            for (old, new) in before.entries.iter().zip(&after.entries) {
                prop_assert_eq!(old.entry.entry, new.entry.entry);
                prop_assert!(is_no_shorter(&old.keep, &new.keep), "{:?} then {:?}", old.keep, new.keep);
            }
            prop_assert!(is_no_shorter(&before.keep, &after.keep));
            before = after;
        }
        // Everything is now given or disposed of.
        let open = match &before.keep {
            KeepUntil::AtLeast { because, .. } => because.iter().any(|why| !is_law_not_read(why)),
            KeepUntil::Until { .. } | KeepUntil::NotKnown { .. } => false,
        };
        prop_assert!(!open, "{:?}", before.keep);
    }

    #[test]
    fn under_two_laws_it_is_kept_at_least_as_long_as_under_each(
        one in 0..JURISDICTIONS.len(),
        other in 0..JURISDICTIONS.len(),
        uses in prop::collection::vec(1000..1500_u32, 1..4),
    ) {
        let kept = |first: &str, then: Option<&str>| {
            let mut book = Book::of(first);
            book.buy(&day(700), "liquid", "L", u32::try_from(uses.len()).unwrap());
            if let Some(then) = then {
                book.write(&day(800), "holding_details", json!({ "keeper": "K", "jurisdiction": then }));
            }
            let mut uses = uses.clone();
            uses.sort_unstable();
            for on in uses {
                book.give(&day(on), &["L"]);
            }
            book.set("L", "2026-01-01").keep
        };
        let (one, other) = (JURISDICTIONS[one], JURISDICTIONS[other]);
        let both = day_of(&kept(one, Some(other)));
        prop_assert!(both >= day_of(&kept(one, None)) && both >= day_of(&kept(other, None)));
    }
}
