//! Entries as written in cases: the wire format of the journal with short words as ids.

use std::path::{Path, PathBuf};

use combclear_domain::basics::calendar::Instant;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Entry;
use combclear_domain::journal::entry::Envelope;
use serde_json::Value;

/// A holding with these entries, recorded in this order, each on its own day unless it has `recorded_at`.
pub(crate) fn holding<'a>(entries: impl IntoIterator<Item = &'a toml::Value>) -> Result<Holding, String> {
    let name = "test".parse().unwrap();
    let mut holding = Holding::new(name);
    for entry in entries {
        // A case may state when an entry was recorded.
        let mut entry = entry.clone();
        let recorded_at = entry.as_table_mut().and_then(|entry| entry.remove("recorded_at"));
        let recorded_at = recorded_at.and_then(|instant| instant.as_str().map(str::to_owned));
        let draft = envelope(&entry).read().map_err(|fault| format!("{}: {fault}", fault.pointer))?;
        let noon = format!("{}T12:00:00.000Z", draft.on);
        let recorded_at: Instant = recorded_at.unwrap_or(noon).parse().unwrap();
        let entry = Entry::seal(&"test".parse().unwrap(), draft, recorded_at, holding.tip());
        holding.accept(&entry).map_err(|refusal| refusal.to_string())?;
    }
    Ok(holding)
}

/// An entry of a case, completed to the wire format, with UUIDs for short ids.
pub(crate) fn envelope(entry: &toml::Value) -> Envelope {
    let mut json: Value = serde_json::to_value(entry).unwrap();
    let fields = json.as_object_mut().unwrap();
    fields.entry("recorded_by").or_insert("tester".into());
    let unique = format!("{entry:?}");
    fields.entry("id").or_insert(unique.into());
    for key in ["id", "corrects"] {
        if let Some(Value::String(id)) = fields.get_mut(key) {
            *id = uuid_of(id);
        }
    }
    for key in ["administration", "continues"] {
        if let Some(Value::String(id)) = fields.get_mut("body").and_then(|body| body.get_mut(key)) {
            *id = uuid_of(id);
        }
    }
    Envelope::from_json(&json.to_string())
        .unwrap_or_else(|fault| panic!("{json}: {}: {fault}", fault.pointer))
}

/// The same word always gives the same id.
pub(crate) fn uuid_of(word: &str) -> String {
    let hash = word.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("00000000-0000-7000-{:04x}-{:012x}", 0x8000 | (hash >> 52), hash & 0xffff_ffff_ffff)
}

/// The root of the workspace.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}
