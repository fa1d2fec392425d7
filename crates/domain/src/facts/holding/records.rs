//! Every entry of a holding, to be looked up by its id.

use std::borrow::Borrow;
use std::collections::HashSet;
use std::hash::{Hash, Hasher};
use std::sync::Arc;

use super::Record;
use crate::journal::entry::EntryId;

/// The entries, corrected and struck-out ones among them. The id is kept in the record only, not beside it again.
#[derive(Debug, Clone, Default)]
pub(super) struct Records(HashSet<ById>);

impl Records {
    pub(super) fn get(&self, id: EntryId) -> Option<&Arc<Record>> {
        self.0.get(&id).map(|ById(record)| record)
    }

    /// Adds an entry, in the place of one with the same id.
    pub(super) fn put(&mut self, record: Arc<Record>) {
        self.0.replace(ById(record));
    }

    pub(super) fn remove(&mut self, id: EntryId) {
        self.0.remove(&id);
    }

    /// All of them, in no order: whatever walks them for an answer sorts.
    pub(super) fn all(&self) -> impl Iterator<Item = &Arc<Record>> {
        self.0.iter().map(|ById(record)| record)
    }
}

/// A record that counts as the same as another with its id.
#[derive(Debug, Clone)]
struct ById(Arc<Record>);

impl PartialEq for ById {
    fn eq(&self, other: &ById) -> bool {
        self.0.id == other.0.id
    }
}

impl Eq for ById {}

// As the id hashes, since it is looked up by that.
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
