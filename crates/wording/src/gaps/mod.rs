//! Gaps in words, for a keeper.

mod report;

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ColonyName, Jurisdiction};
use combclear_domain::facts::NotOnRecord;
use combclear_domain::questions::gaps::{
    About, CopiedEntries, Finding, Gap, GapWeight, Gaps, LawNotAsked, LawPlace, Supply, WhyOpen,
};
use combclear_domain::questions::register::ArchivedPart;

use crate::colonies::colonies as colonies_said;
use crate::pieces::{self, amount, days};
use crate::words::{Words, say};

pub use report::{GapReport, GapsReport};

/// The row of a gap: `lot HERB-25-1 of Herbal Tablet, acquired on 2025-08-02`.
#[must_use]
pub fn about(words: &Words, gap: &Gap) -> String {
    let on = gap.on;
    match &gap.about {
        About::Medicine { medicine } => say!(words, GapsAboutMedicine, medicine = &*named(words, medicine)),
        About::Acquisition { lot, medicine } => {
            say!(words, GapsAboutAcquisition, lot = lot, medicine = &*named(words, medicine), on = on)
        }
        About::VetLot { lot, medicine } => {
            say!(words, GapsAboutVetLot, lot = lot, medicine = &*named(words, medicine), on = on)
        }
        About::Administration { medicine, colonies } => {
            let colonies = some(words, colonies);
            let medicine = named(words, medicine);
            say!(words, GapsAboutAdministration, medicine = &*medicine, on = on, colonies = colonies)
        }
        About::Disposal { lot, quantity, unit } => {
            say!(words, GapsAboutDisposal, amount = amount(words, *quantity, *unit), lot = lot, on = on)
        }
    }
}

/// The gap, in one sentence.
#[must_use]
#[expect(clippy::too_many_lines, reason = "one sentence for each finding, side by side")]
pub fn statement(words: &Words, gap: &Gap) -> String {
    let about = subject(words, gap);
    match &gap.finding {
        Finding::FieldNotRecorded(field) => {
            say!(words, GapsNotRecorded, about = about, field = field.as_str())
        }
        Finding::WithdrawalNotRecorded { leaflet_says: None } => {
            say!(words, GapsWithdrawalNotRecorded, about = about)
        }
        Finding::WithdrawalNotRecorded { leaflet_says: Some(said) } => {
            say!(words, GapsWithdrawalSaidByLeaflet, about = about, days = days(words, (*said).into()))
        }
        Finding::EndNotKnown { field, open: None } => {
            say!(words, GapsEndNotKnown, about = about, field = field.as_str())
        }
        Finding::EndNotKnown { field, open: Some(open) } => {
            let (field, colonies) = (field.as_str(), some(words, &open.colonies));
            match open.why {
                WhyOpen::Lost => say!(words, GapsEndLost, about = about, field = field, colonies = colonies),
                WhyOpen::Late => say!(words, GapsEndLate, about = about, field = field, colonies = colonies),
            }
        }
        Finding::WrittenLate { days_late, within_days } => {
            say!(words, GapsWrittenLate, about = about, days = days(words, *days_late), within = *within_days)
        }
        Finding::MedicineAuthorisation => {
            say!(words, GapsMedicineAuthorisation, medicine = about)
        }
        Finding::MedicineLeaflet(leaflet) => {
            say!(words, GapsMedicineLeaflet, medicine = about, leaflet = leaflet)
        }
        Finding::MedicineDirections => {
            say!(words, GapsMedicineDirections, medicine = about)
        }
        Finding::PrescribedAfter { number, on: Some(on) } => {
            say!(words, GapsPrescribedAfter, about = about, number = number, on = on)
        }
        Finding::PrescribedAfter { number, on: None } => {
            say!(words, GapsPrescribedLater, about = about, number = number)
        }
        Finding::SameDoseTwice { earlier, colonies } => {
            say!(
                words,
                GapsSameDoseTwice,
                about = about,
                earlier = *earlier,
                colonies = colonies_said(words, colonies)
            )
        }
        Finding::VetLotNotGiven => say!(words, GapsVetLotNotGiven, about = about),
        Finding::UseAfterExpiry { lot, expiry } => {
            say!(words, GapsUseAfterExpiry, about = about, lot = lot, expiry = expiry)
        }
        Finding::PastLifeInUse { lot, opened, until, documented: true, says } => {
            say!(
                words,
                GapsPastLifeInUse,
                about = about,
                lot = lot,
                opened = opened,
                until = until,
                says = says
            )
        }
        Finding::PastLifeInUse { lot, opened, until, documented: false, says } => say!(
            words,
            GapsPastLifeInUseNotDocumented,
            about = about,
            lot = lot,
            opened = opened,
            until = until,
            says = says
        ),
        Finding::WhereaboutsNotRecorded { since, colonies } => {
            say!(
                words,
                GapsWhereabouts,
                about = about,
                since = since,
                colonies = colonies_said(words, colonies)
            )
        }
        Finding::RemovalNotRecorded { colonies, by: Some(by) } => {
            say!(words, GapsRemovalLate, about = about, colonies = colonies_said(words, colonies), by = by)
        }
        Finding::RemovalNotRecorded { colonies, by: None } => {
            say!(words, GapsRemovalNotRecorded, about = about, colonies = colonies_said(words, colonies))
        }
        Finding::DocumentNotKept { file_name: Some(file) } => {
            say!(words, GapsDocumentNotKept, about = about, file = file)
        }
        Finding::DocumentNotKept { file_name: None } => {
            say!(words, GapsNamelessDocumentNotKept, about = about)
        }
        Finding::NoDocument { told_in_words: false } => say!(words, GapsNoDocument, about = about),
        Finding::NoDocument { told_in_words: true } => say!(words, GapsNoDocumentButWords, about = about),
        Finding::ExpiryNotTold => say!(words, GapsExpiryNotTold, about = about),
        Finding::ExpiredWhenAcquired { expiry } => {
            say!(words, GapsExpiredWhenAcquired, about = about, expiry = expiry)
        }
        Finding::MoreGoneThanAcquired { book, over } => {
            let sum = crate::stock::sum_with_too_many(words, book.acquired, book.given, book.disposed, *over);
            let amount = amount(words, *over, book.unit);
            say!(words, GapsMoreGone, lot = &book.lot, sum = sum, amount = amount)
        }
        Finding::CountCorrected { lot } => say!(words, GapsCountCorrected, lot = lot),
    }
}

fn named<'m>(words: &Words, medicine: &'m Fact<String, NotOnRecord>) -> Cow<'m, str> {
    pieces::called(words, medicine.as_ref().map(String::as_str))
}

/// The subject of a sentence; a medicine is named without further words.
fn subject(words: &Words, gap: &Gap) -> String {
    match &gap.about {
        About::Medicine { medicine } => named(words, medicine).into_owned(),
        About::Acquisition { .. }
        | About::VetLot { .. }
        | About::Administration { .. }
        | About::Disposal { .. } => about(words, gap),
    }
}

/// Up to four colonies by name, or their number.
fn some(words: &Words, colonies: &[ColonyName]) -> String {
    const NAMED: usize = 4;
    if colonies.len() > NAMED {
        return say!(words, GapsManyColonies, colonies = colonies.len());
    }
    colonies_said(words, colonies)
}

/// How to fix a gap.
#[must_use]
pub fn supply(words: &Words, supply: Supply) -> String {
    match supply {
        Supply::CorrectEntry { seq, field } => {
            say!(words, GapsSupplyCorrectEntry, place = seq.to_string(), field = field.as_str())
        }
        Supply::DescribeMedicine => say!(words, GapsSupplyDescribeMedicine),
        Supply::ProvePurchase => say!(words, GapsSupplyProvePurchase),
        Supply::AttachPrescription => say!(words, GapsSupplyAttachPrescription),
        Supply::ReachOfLotsVet { seq } => say!(words, GapsSupplyReachOfLotsVet, place = seq.to_string()),
        Supply::RecordWhatVetGave => say!(words, GapsSupplyRecordWhatVetGave),
        Supply::ReachOfVet => say!(words, GapsSupplyReachOfVet),
        Supply::WhoDispensedOrGave { seq } => {
            say!(words, GapsSupplyWhoDispensedOrGave, place = seq.to_string())
        }
        Supply::WithdrawalDays { seq } => {
            say!(words, GapsSupplyWithdrawalDays, place = seq.to_string())
        }
        Supply::Removal => say!(words, GapsSupplyRemoval),
        Supply::RemovalAndWithdrawal => say!(words, GapsSupplyRemovalAndWithdrawal),
        Supply::KeeperAddress => say!(words, GapsSupplyKeeperAddress),
        Supply::NothingMends => say!(words, GapsSupplyNothingMends),
        Supply::ReadOnPack => say!(words, GapsSupplyReadOnPack),
        Supply::CheckAuthorisation => say!(words, GapsSupplyCheckAuthorisation),
        Supply::PointToDirections => say!(words, GapsSupplyPointToDirections),
        Supply::StaysOnRecord => say!(words, GapsSupplyStaysOnRecord),
        Supply::StrikeOneOut => say!(words, GapsSupplyStrikeOneOut),
        Supply::PerhapsAnotherPack => say!(words, GapsSupplyPerhapsAnotherPack),
        Supply::LookWhereItIs => say!(words, GapsSupplyLookWhereItIs),
        Supply::TakeOut => say!(words, GapsSupplyTakeOut),
        Supply::LookOrReadStay => say!(words, GapsSupplyLookOrReadStay),
        Supply::AttachAgain => say!(words, GapsSupplyAttachAgain),
        Supply::AttachInvoice => say!(words, GapsSupplyAttachInvoice),
        Supply::ReadExpiry => say!(words, GapsSupplyReadExpiry),
        Supply::CountAgain => say!(words, GapsSupplyCountAgain),
        Supply::ExplainDifference => say!(words, GapsSupplyExplainDifference),
    }
}

/// How to fix several gaps of one kind, entry by entry.
#[must_use]
pub fn supply_of_each(words: &Words, of: Supply) -> String {
    match of {
        Supply::CorrectEntry { field, .. } => say!(words, GapsSupplyCorrectEach, field = field.as_str()),
        Supply::WithdrawalDays { .. } => say!(words, GapsSupplyWithdrawalDaysEach),
        Supply::WhoDispensedOrGave { .. } => say!(words, GapsSupplyWhoDispensedOrGaveEach),
        other => supply(words, other),
    }
}

/// The title of a source, with the place in it.
fn law_place(words: &Words, place: &LawPlace) -> String {
    match &place.locator {
        Some(locator) => say!(words, GapsLawPlace, title = &place.title, locator = locator),
        None => place.title.clone(),
    }
}

/// The answer for the keeper, in a few sentences.
#[must_use]
pub fn summary(words: &Words, found: &Gaps) -> Vec<String> {
    let count = |weight: GapWeight| found.gaps.iter().filter(|gap| gap.weight == weight).count();
    let (from, to) = (found.from, found.to);
    let mut sentences = vec![match found.complete {
        Verdict::Yes => say!(words, GapsComplete, from = from, to = to),
        Verdict::Unknown if found.nothing_acquired_or_given && found.archived.is_empty() => {
            say!(words, GapsNothingRecorded, from = from, to = to)
        }
        Verdict::Unknown => say!(words, GapsCompletenessNotKnown, from = from, to = to),
        Verdict::No => {
            say!(words, GapsIncomplete, from = from, to = to, count = count(GapWeight::Required))
        }
    }];
    let mut add = |count: usize, say: fn(&Words, usize) -> String| {
        if count > 0 {
            sentences.push(say(words, count));
        }
    };
    add(count(GapWeight::Irregular), |words, count| say!(words, GapsCountIrregular, count = count));
    add(count(GapWeight::WhereApplicable), |words, count| {
        say!(words, GapsCountWhereApplicable, count = count)
    });
    add(count(GapWeight::Advised), |words, count| say!(words, GapsCountAdvised, count = count));
    sentences.extend(found.archived.iter().map(|part| in_archive(words, part)));
    sentences.extend(not_asked(words, &found.not_asked));
    sentences.extend(found.copied.iter().map(|copied| copied_from(words, copied)));
    if found.given_without_prescription {
        sentences.push(say!(words, GapsNoPrescription));
    }
    sentences
}

/// What was copied from one record on paper, and how long that is kept.
fn copied_from(words: &Words, copied: &CopiedEntries) -> String {
    let CopiedEntries { what, entries, first, last, .. } = copied;
    if first == last {
        return say!(words, GapsCopiedOneDay, count = *entries, what = what, day = first);
    }
    say!(words, GapsCopied, count = *entries, what = what, first = first, last = last)
}

/// What was moved into an archive, and how to have it checked.
fn in_archive(words: &Words, part: &ArchivedPart) -> String {
    let ArchivedPart { written, entries, .. } = part;
    say!(words, GapsInArchive, count = *entries, on = written.on, entry = written.seq)
}

/// Why a law was not asked: a sentence each. A record of years before a law has many such days, and they share one.
fn not_asked(words: &Words, why: &[LawNotAsked]) -> Vec<String> {
    let mut not_in_force: BTreeMap<&Jurisdiction, BTreeSet<Day>> = BTreeMap::new();
    let mut sentences = Vec::new();
    for why in why {
        sentences.push(match why {
            LawNotAsked::NotSaid => say!(words, GapsLawNotSaid),
            LawNotAsked::NotKnown { jurisdiction, in_force_on: None } => {
                say!(words, GapsLawNotKnown, jurisdiction = jurisdiction)
            }
            LawNotAsked::NotKnown { jurisdiction, in_force_on: Some(on) } => {
                not_in_force.entry(jurisdiction).or_default().insert(*on);
                continue;
            }
            LawNotAsked::UnionsPartOnly { jurisdiction } => {
                say!(words, GapsLawOfUnionOnly, jurisdiction = jurisdiction)
            }
        });
    }
    let days = not_in_force.into_iter().filter_map(|(jurisdiction, days)| {
        let (first, last, count) = (days.first()?, days.last()?, days.len());
        Some(say!(
            words,
            GapsLawNotInForce,
            jurisdiction = jurisdiction,
            first = *first,
            last = *last,
            count = count
        ))
    });
    sentences.extend(days);
    sentences
}
