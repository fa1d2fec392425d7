//! Parts shared by the sentences of several questions: amounts, numbers of days, and lists of names.

use std::borrow::Cow;

use combclear_domain::Quantity;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{LotName, MedicineName, Unit};
use combclear_domain::facts::{MedicineGiven, NotOnRecord};

use crate::amounts::amount_of;
pub(crate) use crate::amounts::days;
use crate::words::{Words, say};

/// An amount with its unit, or the bare amount if the unit was not stated.
pub(crate) fn amount(words: &Words, quantity: Quantity, unit: Option<Unit>) -> String {
    unit.map_or_else(
        || words.decimal(&quantity.to_string()).into_owned(),
        |unit| amount_of(words, quantity, unit.as_str()),
    )
}

/// A medicine by the keeper's name.
pub(crate) fn medicine<'n>(words: &Words, medicine: &'n MedicineGiven) -> Cow<'n, str> {
    called(words, medicine.as_ref().map(MedicineName::as_str))
}

/// The name of a medicine, whoever gave it the name.
pub(crate) fn called<'n>(words: &Words, name: Fact<&'n str, NotOnRecord>) -> Cow<'n, str> {
    match name {
        Fact::Known(name) => Cow::Borrowed(name),
        Fact::NotKnown(NotOnRecord::Lot | NotOnRecord::FirstDose) => {
            Cow::Owned(say!(words, MedicineNotOnRecord))
        }
    }
}

/// Lots separated by commas, in the order in which people count.
pub(crate) fn lots(lots: &[LotName]) -> String {
    let mut names: Vec<&str> = lots.iter().map(LotName::as_str).collect();
    sort_naturally(&mut names, |name| name);
    names.join(", ")
}
