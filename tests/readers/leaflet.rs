//! What holds of every text that is loaded as a leaflet.

use combclear_domain::rules::fault::Faults;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::Words;

use super::rules::{Place, are_well_placed, is_one_line_on, named};

/// Loads the bytes as a leaflet under the name that they give themselves.
pub fn check(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let jurisdiction = named(text, "jurisdiction").unwrap_or("gb");
    let path = format!("{jurisdiction}/{}.toml", named(text, "id").unwrap_or("leaflet"));
    let load = |text: &str| Leaflets::load([(path.as_str(), text)]);
    match load(text) {
        Ok(leaflets) => {
            assert_eq!(leaflets.iter().count(), 1);
            for leaflet in leaflets.iter() {
                assert_eq!(format!("{}/{}.toml", leaflet.jurisdiction, leaflet.id), path);
                assert_eq!(leaflets.as_written(&leaflet.jurisdiction, &leaflet.id), Some(leaflet));
                // It is shown as JSON, and in other jurisdictions.
                serde_json::to_string(&**leaflet).unwrap();
                assert!(leaflets.get(&leaflet.jurisdiction, &leaflet.id).is_some());
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
