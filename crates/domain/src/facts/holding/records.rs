//! Every entry of a holding, by id.

use std::borrow::Borrow;
use std::collections::HashSet;
use std::hash::{Hash, Hasher};
use std::sync::Arc;

use super::Record;
use crate::journal::entry::EntryId;

/// The entries, including corrected and struck-out ones. A set rather than a map, so that the id is stored only once.
#[derive(Debug, Clone, Default)]
pub(super) struct Records(HashSet<ById>);

impl Records {
    pub(super) fn get(&self, id: EntryId) -> Option<&Arc<Record>> {
        self.0.get(&id).map(|ById(record)| record)
    }

    /// Adds an entry, replacing one with the same id.
    pub(super) fn put(&mut self, record: Arc<Record>) {
        self.0.replace(ById(record));
    }

    pub(super) fn remove(&mut self, id: EntryId) {
        self.0.remove(&id);
    }

    /// All entries, in no order: callers must sort before anything is shown.
    pub(super) fn all(&self) -> impl Iterator<Item = &Arc<Record>> {
        self.0.iter().map(|ById(record)| record)
    }
}

/// A record that is compared by its id.
#[derive(Debug, Clone)]
struct ById(Arc<Record>);

impl PartialEq for ById {
    fn eq(&self, other: &ById) -> bool {
        self.0.id == other.0.id
    }
}

impl Eq for ById {}

// Hashes like the id alone, so that the set can be searched by id.
impl Hash for ById {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.id.hash(state);
    }
}

impl Borrow<EntryId> for ById {
    fn borrow(&self) -> &EntryId {
        &self.0.id
    }
}
