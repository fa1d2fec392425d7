//! What holds of every text that is loaded as a law.

use combclear_domain::Day;
use combclear_domain::rules::fault::Faults;
use combclear_domain::rules::law::Laws;
use combclear_wording::Words;

use super::rules::{Place, are_well_placed, is_one_line_on, named};

/// Loads the bytes as a law under the name that they give themselves.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let path = format!("law/{}.toml", named(text, "jurisdiction").unwrap_or("gb"));
    let load = |text: &str| Laws::load([(path.as_str(), text)]);
    match load(text) {
        Ok(laws) => {
            for law in laws.iter() {
                let days = law.bases().flat_map(|basis| [Some(basis.from), basis.until]).flatten();
                for on in days.chain([Day::LAST]) {
                    let profile = laws.profile(&law.jurisdiction, on).unwrap();
                    assert_eq!((profile.asked(), profile.on()), (&law.jurisdiction, on));
                    assert!(profile.all_retentions().all(|rule| rule.rule.basis.is_in_force(on)));
                }
            }
            assert!(load(&is_one_line_on(text)).is_ok());
        }
        Err(faults) => {
            are_well_placed(Words::english(), &path, text, &faults);
            let moved = load(&is_one_line_on(text)).unwrap_err();
            assert_eq!(places(&moved), places(&faults).into_iter().map(Place::next_line).collect::<Vec<_>>());
        }
    }
}

fn places(faults: &Faults) -> Vec<Place> {
    faults.iter().map(Place::of).collect()
}
