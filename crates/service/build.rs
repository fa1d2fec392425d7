//! Takes in what answers on a phone without signal, if it was built (`crates/phone/build-for-the-page`), and makes a word for all files
//! of the page together, by which a page that was loaded before sees that it is out of date.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::io::Write;
use std::path::PathBuf;
use std::{env, fs, io};

use flate2::Compression;
use flate2::write::GzEncoder;

/// Nothing stays nothing.
fn packed(bytes: &[u8]) -> io::Result<Vec<u8>> {
    if bytes.is_empty() {
        return Ok(Vec::new());
    }
    let mut packing = GzEncoder::new(Vec::new(), Compression::best());
    packing.write_all(bytes)?;
    packing.finish()
}

fn main() -> io::Result<()> {
    // The folder, since a file that is not there would be looked for at each build.
    println!("cargo::rerun-if-changed=page");
    let mut names: Vec<PathBuf> =
        fs::read_dir("page")?.map(|file| Ok(file?.path())).collect::<io::Result<_>>()?;
    names.sort();
    let mut hasher = DefaultHasher::new();
    let mut engine = Vec::new();
    for name in names {
        let content = fs::read(&name)?;
        content.hash(&mut hasher);
        if name.ends_with("engine.wasm") {
            engine = content;
        }
    }
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    fs::write(out.join("engine.wasm.gz"), packed(&engine)?)?;
    fs::write(out.join("page-version"), format!("{:016x}", hasher.finish()))
}
