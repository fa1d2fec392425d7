//! How to supply a missing fact, in words.

use combclear_domain::basics::words::{ColonyName, LotName};
use combclear_domain::questions::options::{EntryToMake, Look, NoEntry, Reading, ToRecord};

use super::because::{counting, lacks, topic};
use crate::Words;
use crate::pieces;
use crate::words::say;

/// How to make the entry that supplies it.
pub(super) fn entry(words: &Words, colony: &ColonyName, entry: &EntryToMake) -> String {
    match &entry.what {
        ToRecord::Look(what) => {
            let what = look(words, *what);
            match entry.on {
                Some((from, to)) if from == to => {
                    say!(words, OptionsHowLookOn, look = what, colony = colony, day = to)
                }
                Some((from, to)) => {
                    say!(words, OptionsHowLookBetween, look = what, colony = colony, from = from, to = to)
                }
                None => what,
            }
        }
        ToRecord::BroodSince { last } => say!(words, OptionsHowBroodSince, last = last),
        ToRecord::Temperatures => {
            let days = match entry.on {
                Some((first, last)) if first == last => words.day(first),
                Some((first, last)) => say!(words, OptionsFromTo, from = first, to = last),
                None => say!(words, OptionsThoseDays),
            };
            say!(words, OptionsHowTemperatures, days = days)
        }
        ToRecord::FlowsOf { year } => say!(words, OptionsHowFlowsOf, year = year.to_string()),
        ToRecord::NextFlow { from } => say!(words, OptionsHowNextFlow, from = from),
        ToRecord::FlowSeen { forage } => say!(words, OptionsHowFlowSeen, forage = forage),
        ToRecord::Site { fact, on } => say!(words, OptionsHowSite, fact = fact.field(), on = on),
        ToRecord::Removal { placed, by, or_ask_the_vet: false } => {
            say!(words, OptionsHowTakeOut, placed = placed, by = by)
        }
        ToRecord::Removal { placed, by, or_ask_the_vet: true } => {
            say!(words, OptionsHowAskOrTakeOut, placed = placed, by = by)
        }
        ToRecord::WhatItCameWith { entry } => say!(words, OptionsHowCameWith, entry = entry),
        ToRecord::LeafletOfMedicine => say!(words, OptionsHowLeafletOfMedicine),
        ToRecord::Reading(reading) => read(words, reading, &entry.lots),
    }
}

/// What to do if no entry can supply it.
pub(super) fn no_entry(words: &Words, instead: &NoEntry) -> String {
    match instead {
        NoEntry::Pack => say!(words, OptionsHowPack),
        NoEntry::PackOrOwnLeaflet => say!(words, OptionsHowPackOrOwn),
        NoEntry::AskHowTheYearIsCounted => say!(words, OptionsHowYearIsCounted),
        NoEntry::LookForBroodSince { last } => say!(words, OptionsHowBroodSince, last = last),
        NoEntry::BroodShowsMeanwhile => say!(words, OptionsHowBroodShows),
        NoEntry::AskWithTheGround => say!(words, OptionsHowAskWithGround),
        NoEntry::WaitForNextDose => say!(words, OptionsHowNextDose),
        NoEntry::AskTheVetOrAnotherDay => say!(words, OptionsHowVetOrAnotherDay),
        NoEntry::AskFrom { day } => say!(words, OptionsHowAskFrom, day = day),
        NoEntry::AskOnceItsApiaryIsKnown => say!(words, OptionsHowAskOnceApiaryIsKnown),
        NoEntry::LookAfterParting(what) => {
            say!(words, OptionsHowLookAfterParting, look = look(words, *what))
        }
        NoEntry::WasInUntil { out } => say!(words, OptionsHowWasInUntil, out = out),
        NoEntry::LaterDose { given } => say!(words, OptionsHowLaterDose, given = given),
        NoEntry::NothingToSupply => String::new(),
    }
}

fn look(words: &Words, look: Look) -> String {
    let (look, what) = match look {
        Look::Brood => ("brood", String::new()),
        Look::Feeder => ("feeder", String::new()),
        Look::Count(what) => ("count", counting(words, what)),
    };
    say!(words, OptionsLook, look = look, what = what)
}

/// What to read on the leaflets of these lots.
fn read(words: &Words, reading: &Reading, lots: &[LotName]) -> String {
    let names = pieces::lots(lots);
    let what = match reading {
        Reading::Topic(of) => topic(words, *of),
        Reading::Course(of) => lacks(words, of),
        Reading::Confirmation { topic, says } => {
            // As written in the entry: the words of the journal, whatever the language of the answer.
            let confirmation = serde_json::json!({ "topic": topic.as_str(), "says": says }).to_string();
            return say!(
                words,
                OptionsHowConfirm,
                count = lots.len(),
                lots = names,
                confirmation = confirmation
            );
        }
    };
    say!(words, OptionsHowRead, count = lots.len(), lots = names, what = what)
}
