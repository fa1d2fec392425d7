//! Any record exports and re-imports with the same head hash.

use std::sync::Arc;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::entry::Envelope;
use combclear_domain::journal::lines::{Header, Line};
use combclear_domain::journal::{Draft, Entry};
use combclear_store::{Holdings, IfNew, OnRefusal, Recorded, Verified};
use proptest::collection::vec;
use proptest::prelude::{Just, Strategy, any, prop_oneof};
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Value, json};

use crate::bench::id;

/// What one entry says happened, to things that are numbered.
#[derive(Debug, Clone)]
enum Happened {
    Apiary(u8, String),
    Colony(u8, u8),
    Moved(u8, u8),
    Inspected(u8, Option<u8>, String),
    SupersOn(Vec<u8>, u8),
    SupersOff(Vec<u8>),
    Lot(u8, u32),
    Given(u8, Vec<u8>),
    Ended(u8, String),
    StruckOut(usize, String),
}

/// A random entry: event, days after the first, minute, and whether it corrects the previous one.
type MadeUp = (Happened, u16, Option<u16>, bool);

fn happened() -> impl Strategy<Value = Happened> {
    let name = || 0..6_u8;
    let names = || vec(0..6_u8, 1..4);
    // Any text: quotes, control characters, characters beyond the basic plane.
    let text = || any::<String>();
    prop_oneof![
        (name(), text()).prop_map(|(apiary, place)| Happened::Apiary(apiary, place)),
        (name(), name()).prop_map(|(colony, apiary)| Happened::Colony(colony, apiary)),
        (name(), name()).prop_map(|(colony, apiary)| Happened::Moved(colony, apiary)),
        (name(), any::<Option<u8>>(), text())
            .prop_map(|(colony, seams, note)| Happened::Inspected(colony, seams, note)),
        (names(), 1..4_u8).prop_map(|(colonies, supers)| Happened::SupersOn(colonies, supers)),
        names().prop_map(Happened::SupersOff),
        (name(), 1..9_999_999_u32).prop_map(|(lot, thousandths)| Happened::Lot(lot, thousandths)),
        (name(), names()).prop_map(|(lot, colonies)| Happened::Given(lot, colonies)),
        (name(), text()).prop_map(|(colony, cause)| Happened::Ended(colony, cause)),
        (any::<proptest::sample::Index>(), text())
            .prop_map(|(of, reason)| Happened::StruckOut(of.index(60), reason)),
    ]
}

fn made_up() -> impl Strategy<Value = MadeUp> {
    let minute = prop_oneof![Just(None), (0..1440_u16).prop_map(Some)];
    (happened(), 0..90_u16, minute, proptest::bool::weighted(0.1))
}

fn colonies(numbers: &[u8]) -> Vec<String> {
    let mut numbers = numbers.to_vec();
    numbers.sort_unstable();
    numbers.dedup();
    numbers.iter().map(|number| format!("colony {number}")).collect()
}

/// The entry in the wire format, parsed as in an import. `None` if it is unreadable.
fn draft(number: usize, (happened, day, minute, corrects): &MadeUp) -> Option<Draft> {
    let apiary = |number: &u8| format!("apiary {number}");
    let colony = |number: &u8| format!("colony {number}");
    let (kind, body) = match happened {
        Happened::Apiary(number, place) => {
            ("apiary_details", json!({"apiary": apiary(number), "place": place}))
        }
        Happened::Colony(number, at) => (
            "colony_established",
            json!({"colony": colony(number), "apiary": apiary(at), "medicines": "none"}),
        ),
        Happened::Moved(number, to) => ("colony_moved", json!({"colony": colony(number), "to": apiary(to)})),
        Happened::Inspected(number, seams, note) => {
            let seams = seams.map_or(Value::Null, Value::from);
            ("inspection", json!({"colony": colony(number), "seams": seams, "note": note}))
        }
        Happened::SupersOn(on, supers) => {
            ("supers_on", json!({"colonies": colonies(on), "supers": supers, "purpose": "harvest"}))
        }
        Happened::SupersOff(from) => ("supers_off", json!({"colonies": colonies(from), "left_on": 0})),
        Happened::Lot(lot, thousandths) => {
            let quantity: Value =
                serde_json::from_str(&format!("{}.{:03}", thousandths / 1000, thousandths % 1000)).unwrap();
            ("lot_acquired", json!({"lot": format!("lot {lot}"), "medicine": "strips", "quantity": quantity}))
        }
        Happened::Given(lot, to) => {
            let given = json!([{"lot": format!("lot {lot}"), "each": 2, "colonies": colonies(to)}]);
            ("administration", json!({"given": given, "withdrawal_days": 0}))
        }
        Happened::Ended(number, cause) => ("colony_ended", json!({"colony": colony(number), "cause": cause})),
        Happened::StruckOut(..) => ("strike_out", json!({})),
    };
    let on = "2025-03-01".parse::<combclear_domain::Day>().unwrap().plus(*day).to_string();
    let at = minute.map(|minute| format!("{:02}:{:02}", minute / 60, minute % 60));
    let corrected = match happened {
        Happened::StruckOut(of, reason) => Some((id(*of), reason.clone())),
        _ if *corrects => Some((id(number.saturating_sub(1)), "written wrongly".to_owned())),
        _ => None,
    };
    let mut entry =
        json!({"id": id(number), "on": on, "recorded_by": "Ä. Keeper", "kind": kind, "body": body});
    if let Some(at) = at {
        entry["at"] = at.into();
    }
    if let Some((of, reason)) = corrected {
        entry["corrects"] = of.into();
        entry["reason"] = reason.into();
    }
    Envelope::from_json(&entry.to_string()).ok()?.read().ok()
}

async fn open(folder: &tempfile::TempDir, name: &str) -> Holdings {
    let address = format!("sqlite:{}", folder.path().join(name).display());
    Holdings::new(combclear_store::open(&address).await.unwrap())
}

/// Records possible entries in batches, exports them, and restores them elsewhere. Returns the number of entries, and of
/// those left out.
async fn goes_round(made_up: &[MadeUp]) -> (usize, usize) {
    let holding: HoldingName = "made up".parse().unwrap();
    let folder = tempfile::tempdir().unwrap();
    let one = open(&folder, "one.db").await;
    // A first entry for the others to refer to; after it anything may come.
    let medicine =
        json!({"medicine": "strips", "pack_name": "Strips (invented)", "unit": "strip"}).to_string();
    let first = format!(
        r#"{{"id":"{}","on":"2025-03-01","recorded_by":"me","kind":"medicine_described","body":{medicine}}}"#,
        id(999)
    );
    let mut drafts = vec![Envelope::from_json(&first).unwrap().read().unwrap()];
    for number in 0..3_u8 {
        let at = usize::from(number);
        drafts.extend(draft(900 + at, &(Happened::Apiary(number, "there".to_owned()), 0, None, false)));
        drafts.extend(draft(910 + at, &(Happened::Colony(number, number), 0, None, false)));
    }
    drafts.extend(made_up.iter().enumerate().filter_map(|(number, made_up)| draft(number, made_up)));
    let (mut recorded, mut refused) = (0, 0);
    for (batch, minute) in drafts.chunks(7).zip(0..) {
        let now: combclear_domain::Instant = format!("2026-01-01T10:{minute:02}:00.123Z").parse().unwrap();
        let (taken, left) =
            one.record_each(&holding, batch.to_vec(), now, OnRefusal::LeaveOut, IfNew::Begin).await.unwrap();
        recorded += taken.len();
        refused += left.len();
    }
    let tip = one.journal().tip(&holding).await.unwrap();
    let (entries, head) = tip.unwrap();
    assert_eq!(entries, u64::try_from(recorded).unwrap());

    // Export as text.
    let page = one.journal().page(&holding, 0, u32::MAX).await.unwrap();
    let header = Header::sealed(holding.clone(), entries, Some(head)).to_json();
    let text: Vec<String> = std::iter::once(header).chain(page.iter().map(Entry::to_json)).collect();
    assert!(text.iter().all(|line| !line.contains('\n')));

    // Import elsewhere.
    let header = Header::from_json(&text[0]).unwrap();
    let read: Vec<Entry> = text[1..]
        .iter()
        .map(|line| match Line::from_json(&header, line).unwrap() {
            Line::Sealed(entry) => entry,
            Line::Draft(_) => panic!("an export is sealed"),
        })
        .collect();
    assert_eq!(read, page);
    let two = open(&folder, "two.db").await;
    assert_eq!(two.restore(&holding, &read, &[]).await.unwrap(), recorded);
    assert_eq!(two.journal().tip(&holding).await.unwrap(), tip);
    let sound = Verified::Sound { entries, head: Some(head) };
    assert_eq!(two.journal().verify(&holding, None).await.unwrap(), sound);
    assert_eq!(two.journal().page(&holding, 0, u32::MAX).await.unwrap(), page);

    // The original drafts are recognised there and add nothing.
    let drafts: Vec<Draft> = read.iter().map(|entry| entry.draft.clone()).collect();
    let later: combclear_domain::Instant = "2026-02-01T10:00:00.000Z".parse().unwrap();
    let again = two.record(&holding, drafts, later).await.unwrap();
    assert!(again.iter().all(|entry| matches!(entry, Recorded::Known(_))));
    assert_eq!(Arc::clone(two.journal()).tip(&holding).await.unwrap(), tip);
    (recorded, refused)
}

#[test]
fn whatever_is_recorded_is_restored_under_the_same_head_hash() {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let sums = std::cell::RefCell::new((0, 0));
    let mut runner = TestRunner::new(Config { cases: 30, failure_persistence: None, ..Config::default() });
    runner
        .run(&vec(made_up(), 0..60), |made_up| {
            let (recorded, refused) = runtime.block_on(goes_round(&made_up));
            let mut sums = sums.borrow_mut();
            *sums = (sums.0 + recorded, sums.1 + refused);
            Ok(())
        })
        .unwrap();
    let (recorded, refused) = sums.into_inner();
    // The test is meaningful only if entries were recorded and others left out between them.
    assert!(recorded > 30 * 10 && refused > 30, "{recorded} recorded, {refused} refused");
}
