//! Entries as tests write them, and the holdings that they make.
//!
//! Words stand for ids; numbers do where the order of the ids matters.

use std::fmt;

use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::journal::entry::Envelope;
use combclear_domain::journal::{Draft, Entry, EntryId};
use combclear_domain::{Day, Instant};
use serde_json::{Value, json};

/// When an entry is written down unless that matters: after all that happens.
pub const WRITTEN: &str = "2027-06-01T00:00:00.000Z";

/// A day as it is written.
pub fn day(text: &str) -> Day {
    text.parse().unwrap()
}

/// The same word always gives the same id.
pub fn uuid_of(word: &str) -> String {
    let hash = word.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("00000000-0000-7000-{:04x}-{:012x}", 0x8000 | (hash >> 52), hash & 0xffff_ffff_ffff)
}

/// The id with this number.
pub fn id(number: usize) -> EntryId {
    format!("00000000-0000-7000-8000-{number:012}").parse().unwrap()
}

/// An entry in the wire format, as it is understood.
pub fn read(entry: &Value) -> Draft {
    let draft = Envelope::from_json(&entry.to_string()).and_then(Envelope::read);
    draft.unwrap_or_else(|fault| panic!("{entry}: {}: {fault}", fault.pointer))
}

/// An entry with the id of this word; what is null is left out of its body.
pub fn draft(word: &str, on: Day, kind: &str, body: &Value) -> Draft {
    let mut body = body.clone();
    body.as_object_mut().unwrap().retain(|_, value| !value.is_null());
    read(&json!({ "id": uuid_of(word), "on": on, "recorded_by": "tester", "kind": kind, "body": body }))
}

/// Seals an entry behind those of the holding and takes it in, if it can be true.
pub fn take_in(holding: &mut Holding, draft: Draft, recorded_at: &str) -> Result<Entry, Refusal> {
    let entry = Entry::seal(holding.name(), draft, recorded_at.parse::<Instant>().unwrap(), holding.tip());
    holding.accept(&entry)?;
    Ok(entry)
}

/// Takes an entry in, if it can be true.
pub fn record(holding: &mut Holding, draft: &Draft) -> Result<(), Refusal> {
    take_in(holding, draft.clone(), WRITTEN).map(|_| ())
}

/// The holding of which these entries tell, if all can be true in this order.
pub fn holding_of(drafts: &[Draft]) -> Result<Holding, Refusal> {
    let mut holding = Holding::new("test".parse().unwrap());
    drafts.iter().try_for_each(|draft| record(&mut holding, draft))?;
    Ok(holding)
}

/// The entries of a holding, in the order in which they were recorded.
#[derive(Clone)]
pub struct Journal(pub Vec<Draft>);

impl fmt::Debug for Journal {
    /// One line an entry, so that a failure can be read and turned into a case.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|draft| {
            write!(f, "\n  {} {} {} {}", draft.id, draft.on, draft.kind().as_str(), draft.body)?;
            draft.at.map_or(Ok(()), |at| write!(f, " at {at}"))?;
            draft.correction.as_ref().map_or(Ok(()), |correction| write!(f, " corrects {}", correction.of))
        })
    }
}

impl Journal {
    /// The holding of which these entries tell.
    pub fn holding(&self) -> Holding {
        self.try_holding().unwrap_or_else(|refusal| panic!("{refusal:?} in {self:?}"))
    }

    /// The same, if all can be true in this order.
    pub fn try_holding(&self) -> Result<Holding, Refusal> {
        holding_of(&self.0)
    }

    /// The same entries and one more.
    #[must_use]
    pub fn and(&self, draft: Draft) -> Journal {
        Journal(self.0.iter().cloned().chain([draft]).collect())
    }
}

/// The same entries, those of one day in another order; what depends on another entry of its day stays behind it.
pub fn shuffled_within_days(
    drafts: &[Draft],
    keys: &[u16],
    depend: impl Fn(&Draft, &Draft) -> bool,
) -> Vec<Draft> {
    let mut left: Vec<(u16, &Draft)> = keys.iter().cycle().copied().zip(drafts).collect();
    left.sort_by_key(|(_, draft)| draft.on);
    let mut shuffled: Vec<Draft> = Vec::new();
    while let Some((_, next)) = left.first() {
        let of_day = left.iter().take_while(|(_, draft)| draft.on == next.on).count();
        let free = (0..of_day)
            .filter(|index| !left[..*index].iter().any(|(_, before)| depend(before, left[*index].1)));
        let chosen = free.min_by_key(|index| left[*index].0).unwrap();
        shuffled.push(left.remove(chosen).1.clone());
    }
    shuffled
}

/// A holding with these entries of a case, recorded in this order, each on its own day unless it says `recorded_at`.
pub fn holding<'a>(entries: impl IntoIterator<Item = &'a toml::Value>) -> Result<Holding, String> {
    let mut holding = Holding::new("test".parse().unwrap());
    for entry in entries {
        let mut entry = entry.clone();
        let recorded_at = entry.as_table_mut().and_then(|entry| entry.remove("recorded_at"));
        let draft = envelope(&entry).read().map_err(|fault| format!("{}: {fault}", fault.pointer))?;
        let recorded_at = recorded_at.as_ref().and_then(toml::Value::as_str);
        take_in_at_noon(&mut holding, draft, recorded_at).map_err(|refusal| refusal.to_string())?;
    }
    Ok(holding)
}

/// Takes an entry in that was written down at noon (UTC) of its day, unless another instant is given.
pub fn take_in_at_noon(
    holding: &mut Holding,
    draft: Draft,
    recorded_at: Option<&str>,
) -> Result<(), Refusal> {
    let noon = format!("{}T12:00:00.000Z", draft.on);
    take_in(holding, draft, recorded_at.unwrap_or(&noon)).map(|_| ())
}

/// An entry of a case: what the wire format needs beyond the case is filled in, and short ids become UUIDs.
pub fn envelope(entry: &toml::Value) -> Envelope {
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
