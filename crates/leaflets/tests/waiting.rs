//! Every leaflet file of this crate loads, also those that are not built in yet.
//!
//! A jurisdiction is built in (`FILES` in `src/lib.rs`) once its published statements stand in `tests/published` and pass.
//! Until then its files wait here, and no answer rests on them.
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::path::{Path, PathBuf};

use combclear_domain::leaflet::Leaflets;

#[test]
fn every_leaflet_file_loads_built_in_or_not() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<(String, String)> = Vec::new();
    for folder in below(root).into_iter().filter(|path| path.is_dir()) {
        for file in
            below(&folder).into_iter().filter(|path| path.extension().is_some_and(|end| end == "toml"))
        {
            let name = file.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
            files.push((name, std::fs::read_to_string(&file).unwrap()));
        }
    }
    let loaded = Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    let faults = loaded
        .as_ref()
        .err()
        .map(|faults| faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"));
    assert_eq!(faults, None);
    let built_in = combclear_leaflets::builtin().unwrap().iter().count();
    assert!(loaded.unwrap().iter().count() >= built_in && built_in > 0);
}

fn below(folder: &Path) -> Vec<PathBuf> {
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
}
