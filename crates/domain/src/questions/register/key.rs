//! The apiaries and colonies that the rows name: where the apiaries are, and how the hives are marked.

use std::collections::BTreeSet;

use super::rows::{ApiaryKey, ColonyKey};
use super::{Register, View};
use crate::basics::natural::sort_naturally;
use crate::basics::words::{ApiaryName, ColonyName};

/// The colonies that the rows name, in the order in which people count.
pub(super) fn colonies(view: &View<'_>, register: &Register) -> Vec<ColonyKey> {
    let on = view.period.to().min(view.as_of);
    let courses = register.administrations.iter().flat_map(|row| &row.courses);
    let given = register.administrations.iter().flat_map(|row| &row.given);
    let mut names: BTreeSet<&ColonyName> = courses.flat_map(|part| &part.colonies).collect();
    names.extend(given.flat_map(|part| &part.colonies));
    names.extend(register.removals.iter().flat_map(|row| &row.colonies));
    let mut names: Vec<&ColonyName> = names.into_iter().collect();
    sort_naturally(&mut names, |name| name.as_str());
    let key = |colony: &ColonyName| ColonyKey {
        colony: colony.clone(),
        hive_mark: view.holding.hive_mark(colony).map(str::to_owned),
        apiary: view.holding.apiary_of(colony, on).cloned(),
    };
    names.into_iter().map(key).collect()
}

/// The apiaries that the rows name, and those of the colonies.
pub(super) fn apiaries(view: &View<'_>, register: &Register) -> Vec<ApiaryKey> {
    let courses = || register.administrations.iter().flat_map(|row| &row.courses);
    let mut names: BTreeSet<&ApiaryName> = courses().filter_map(|part| part.apiary.as_ref()).collect();
    names.extend(courses().flat_map(|part| &part.later_apiaries).map(|stay| &stay.apiary));
    names.extend(register.colonies.iter().filter_map(|key| key.apiary.as_ref()));
    let key = |apiary: &ApiaryName| ApiaryKey {
        apiary: apiary.clone(),
        place: view.holding.apiary_details(apiary).and_then(|details| details.place.clone()),
    };
    names.into_iter().map(key).collect()
}
