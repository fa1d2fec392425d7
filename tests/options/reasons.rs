//! Reasons that read the same share one sentence, and only those.

use std::collections::BTreeMap;

use combclear_domain::questions::options::{Because, ColonyOptions, WhatIf};
use combclear_wording::Words;
use combclear_wording::options::OptionsReport;
use proptest::prelude::*;
use serde_json::json;

use super::laws::{asked, colonies};
use super::leaflets;
use super::making::day;
use super::plans::journals;
use crate::some;

proptest! {
    #![proptest_config(some(32))]

    #[test]
    fn two_reasons_are_the_same_if_they_are_told_in_the_same_words(
        journal in journals(),
        (from, length, as_of) in (0..200_u16, 0..30_u16, 0..200_u16),
        assumed in prop::sample::select(vec![json!({}), json!({ "power": "mains", "ground": "wet" }), json!({ "access": "none" })]),
    ) {
        let holding = journal.holding();
        let what_if: WhatIf = serde_json::from_value(assumed).unwrap();
        // Asked in two ways, so that one fact of the site is both recorded and assumed.
        let (nothing, dated) = (WhatIf::default(), day(as_of));
        let asks = [what_if, nothing].map(|what_if| asked(day(from), day(from + length), dated, &what_if));
        let mut by_words: BTreeMap<String, Vec<Because>> = BTreeMap::new();
        for (colony, ask) in colonies(&journal).flat_map(|colony| asks.iter().map(move |ask| (colony.clone(), ask))) {
            let answer = ColonyOptions::of(&holding, leaflets(), &colony, ask);
            let report = OptionsReport::of(Words::english(), &holding, answer.clone());
            let found = answer.options.iter().flat_map(|option| &option.conditions).flat_map(|found| &found.runs);
            let told = report.options.iter().flat_map(|option| &option.conditions).flat_map(|told| &told.runs);
            for (found, told) in found.zip(told) {
                by_words.entry(told.why.clone()).or_default().push(found.because.clone());
            }
        }
        let mut firsts: Vec<(&String, &Because)> = Vec::new();
        for (words, reasons) in &by_words {
            let first = &reasons[0];
            for reason in reasons {
                prop_assert!(first.is_the_same_reason(reason), "{first:?} and {reason:?}: {words}");
            }
            for (other_words, other) in &firsts {
                prop_assert!(!first.is_the_same_reason(other), "{words} and {other_words}");
            }
            firsts.push((words, first));
        }
    }
}
