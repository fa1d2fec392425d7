//! The entries that a sheet records.
//!
//! Rows are recorded in the order of their days, those of one day in the order of [`TABS`], then of the rows, and each on top of the
//! ones before: a colony is there when it is treated, and strips of the same sheet are found when they are taken out.
//!
//! # The same sheet twice
//! The id of an entry is made from the holding, the kind of entry and what its row says (a version 8 UUID of their SHA-256), not
//! from the file, the tab or the place of the row. So a row that was imported before is known again, in any file, and is not
//! recorded twice. A row that was changed since is another row: what was recorded is corrected with `record correction`. Two rows
//! of a sheet that say the same are refused, since one of them is a slip of the pen or lacks its time of day.

use std::collections::HashMap;

use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::form::blanks;
use combclear_domain::journal::{Draft, EntryId, Kind};
use combclear_domain::recording::{FilledIn, LeftOut, Written, person_named_last};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use sha2::{Digest, Sha256};

use crate::columns::{AT, COPIED_FROM, ON, RECORDED_BY, TABS, WRITTEN_ON};
use crate::faults::{Fault, What};
use crate::read::{Row, Sheet};

/// What is to be recorded.
#[derive(Debug, Default)]
pub struct Entries {
    /// The entries, in order.
    pub drafts: Vec<Draft>,
    /// Number of rows that were imported before.
    pub rows_known: usize,
    /// Number of entries of these rows.
    pub known: usize,
    /// Colonies of a range that are left out, each with its row.
    pub left_out: Vec<(Row, LeftOut)>,
}

impl Entries {
    /// The number of entries of each kind that has any, in the order of the tabs.
    #[must_use]
    pub fn by_kind(&self) -> Vec<(Kind, usize)> {
        let count = |kind: Kind| self.drafts.iter().filter(|draft| draft.kind() == kind).count();
        TABS.into_iter().map(|kind| (kind, count(kind))).filter(|(_, count)| *count > 0).collect()
    }
}

/// The entries that a sheet records in a holding, which is unchanged.
///
/// # Errors
/// Every fault, in the order of the file. Faults that depend on the record are told once every row can be read.
pub fn entries(
    sheet: &Sheet,
    holding: &Holding,
    leaflets: &Leaflets,
    now: Instant,
) -> Result<Entries, Vec<Fault>> {
    let mut faults = sheet.faults.clone();
    let mut tried = holding.clone();
    let mut found = Entries::default();
    let mut seen: HashMap<[u8; 32], u32> = HashMap::new();
    let rows = in_order(&sheet.rows);
    // A row that cannot be read whole is looked at all the same, for what else is wrong with it.
    for row in sheet.rows.iter().filter(|row| !row.unread.is_empty()) {
        let others = write(row, holding, leaflets, None).err().unwrap_or_default().into_iter();
        faults.extend(others.filter(|fault| !fault.depends_on_the_record() && !row.is_unread(fault)));
    }
    // Whoever the sheet names first also records the rows before.
    let first_named = rows.iter().find_map(|row| row.recorded_by.clone());
    for row in rows {
        let says = digest(holding.name(), row);
        if let Some(other) = seen.insert(says, row.number) {
            faults.push(row.fault(ON, What::SameRow { row: other }));
            continue;
        }
        let known = ids(says).take_while(|id| holding.entry(*id).is_some()).count();
        if known > 0 {
            found.rows_known += 1;
            found.known += known;
            continue;
        }
        match record(row, says, &mut tried, leaflets, first_named.as_ref(), now) {
            Ok((drafts, left_out)) => {
                found.drafts.extend(drafts);
                found.left_out.extend(left_out.into_iter().map(|left_out| (row.clone(), left_out)));
            }
            Err(of_row) => faults.extend(of_row),
        }
    }
    if faults.iter().any(|fault| !fault.depends_on_the_record()) {
        faults.retain(|fault| !fault.depends_on_the_record());
    }
    faults.sort_by_key(|fault| (fault.tab_index, fault.row, fault.column));
    if faults.is_empty() { Ok(found) } else { Err(faults) }
}

impl Row {
    /// Whether a fault is about a cell that cannot be read, and so has a fault already.
    fn is_unread(&self, fault: &Fault) -> bool {
        self.unread.iter().any(|key| fault.column.is_some() && self.columns.get(key).copied() == fault.column)
    }
}

/// The rows that can be read, in the order in which they are recorded.
fn in_order(rows: &[Row]) -> Vec<&Row> {
    let place = |row: &Row| TABS.iter().position(|kind| *kind == row.kind);
    let mut rows: Vec<&Row> = rows.iter().filter(|row| row.unread.is_empty()).collect();
    rows.sort_by_key(|row| (row.on, place(row), row.tab_index, row.number));
    rows
}

/// Records a row on top of the others.
fn record(
    row: &Row,
    says: [u8; 32],
    tried: &mut Holding,
    leaflets: &Leaflets,
    first_named: Option<&Person>,
    now: Instant,
) -> Result<(Vec<Draft>, Vec<LeftOut>), Vec<Fault>> {
    let written = write(row, tried, leaflets, first_named)?;
    let mut new_ids = ids(says);
    let drafts = written.drafts(|| new_ids.next().unwrap_or_else(|| id(says, u32::MAX)));
    let mut refused: Vec<Fault> = Vec::new();
    for draft in &drafts {
        if let Err(refusal) = tried.record(draft.clone(), now) {
            let fault = row.fault(&key_at(row.kind, &refusal.pointer), What::Refused(refusal));
            if !refused.contains(&fault) {
                refused.push(fault);
            }
        }
    }
    if refused.is_empty() { Ok((drafts, written.left_out)) } else { Err(refused) }
}

/// The entries of a row, or everything that is wrong with its form.
fn write(
    row: &Row,
    holding: &Holding,
    leaflets: &Leaflets,
    first_named: Option<&Person>,
) -> Result<Written, Vec<Fault>> {
    // A row without a day has that fault already.
    let on = row.on.unwrap_or(Day::LAST);
    let nobody_yet = person_named_last(holding).is_none();
    let recorded_by = row.recorded_by.clone().or_else(|| first_named.filter(|_| nobody_yet).cloned());
    let texts = row.texts.iter().map(|(key, text)| (key.clone(), vec![text.clone()])).collect();
    let filled = FilledIn {
        kind: row.kind,
        on,
        at: row.at,
        recorded_by,
        copied_from: row.copied_from.clone(),
        written_on: row.written_on,
        texts,
        chosen: None,
    };
    filled.write(holding, leaflets).map_err(|wrong| {
        let faults = wrong.into_iter().map(|wrong| {
            let key = wrong.key.clone();
            row.fault(&key, What::Wrong(wrong))
        });
        faults.collect()
    })
}

/// The key of the field that a JSON pointer into an entry leads to; empty if it leads to none.
fn key_at(kind: Kind, pointer: &str) -> String {
    match pointer.strip_prefix("/body") {
        Some(pointer) => {
            let blank = blanks(kind).into_iter().find(|blank| blank.is_at(pointer));
            blank.map(|blank| blank.key).unwrap_or_default()
        }
        None => pointer.trim_start_matches('/').to_owned(),
    }
}

/// What a row says, in 32 bytes.
fn digest(holding: &HoldingName, row: &Row) -> [u8; 32] {
    let mut hash = Sha256::new();
    let mut add = |text: &str| {
        // With its length first, no text runs into the next.
        hash.update(u64::try_from(text.len()).unwrap_or(u64::MAX).to_be_bytes());
        hash.update(text);
    };
    add("combclear row of a sheet 1");
    add(holding.as_str());
    add(row.kind.as_str());
    let around = [
        (ON, row.on.map(|on| on.to_string())),
        (AT, row.at.map(|at| at.to_string())),
        (RECORDED_BY, row.recorded_by.as_ref().map(ToString::to_string)),
        (COPIED_FROM, row.copied_from.clone()),
        (WRITTEN_ON, row.written_on.map(|on| on.to_string())),
    ];
    for (key, text) in around {
        if let Some(text) = text {
            add(key);
            add(&text);
        }
    }
    for (key, text) in &row.texts {
        add(key);
        add(text);
    }
    hash.finalize().into()
}

/// The ids of the entries of a row, in order.
fn ids(says: [u8; 32]) -> impl Iterator<Item = EntryId> {
    (0..u32::MAX).map(move |index| id(says, index))
}

fn id(says: [u8; 32], index: u32) -> EntryId {
    let hash = Sha256::new().chain_update(says).chain_update(index.to_be_bytes()).finalize();
    let mut bytes = [0; 16];
    bytes.iter_mut().zip(hash).for_each(|(byte, of_hash)| *byte = of_hash);
    EntryId(uuid::Builder::from_custom_bytes(bytes).into_uuid())
}
