//! Random drafts of every kind, with every optional field present and absent.

use combclear_domain::journal::{Draft, Kind};
use combclear_testkit::entries::read;
use proptest::prelude::*;
use serde_json::{Map, Value, json};

/// Text as people write it, with characters that JSON must escape.
fn text() -> impl Strategy<Value = Value> {
    prop_oneof![
        "[a-zA-Z0-9 .,äöüß-]{0,20}",
        "\\PC{0,12}",
        Just("a \"quoted\" word, a \\ and a /".to_owned()),
        Just("two\nlines\tand a \u{1f} control".to_owned()),
    ]
    .prop_map(Value::String)
}

fn name() -> impl Strategy<Value = Value> {
    prop_oneof!["[A-Za-z0-9][A-Za-z0-9 'é-]{0,8}[A-Za-z0-9]", Just("an \"odd\" \\ name".to_owned())]
        .prop_map(Value::String)
}

fn words(words: &'static [&'static str]) -> impl Strategy<Value = Value> {
    prop::sample::select(words).prop_map(|word| json!(word))
}

fn a_day() -> impl Strategy<Value = Value> {
    (1900..2200_i32, 1..13_u32, 1..29_u32)
        .prop_map(|(year, month, day)| json!(format!("{year}-{month:02}-{day:02}")))
}

fn amount() -> impl Strategy<Value = Value> {
    prop_oneof![
        (0..1000_u32).prop_map(Value::from),
        (0..1_000_000_u32).prop_map(|n| json!(f64::from(n) / 1000.0))
    ]
}

fn id() -> impl Strategy<Value = Value> {
    any::<u128>().prop_map(|bits| json!(uuid_text(bits)))
}

fn uuid_text(bits: u128) -> String {
    let hex = format!("{bits:032x}");
    [&hex[..8], &hex[8..12], &hex[12..16], &hex[16..20], &hex[20..]].join("-")
}

fn names() -> impl Strategy<Value = Value> {
    prop::collection::vec(name(), 0..3).prop_map(Value::Array)
}

fn small() -> impl Strategy<Value = Value> {
    any::<u8>().prop_map(Value::from)
}

fn terms() -> BoxedStrategy<Value> {
    let days = || (0..500_u16).prop_map(Value::from);
    body(vec![
        maybe("supers_during", words(&["off", "on", "on_no_harvest"])),
        maybe("flow_during", words(&["forbidden", "allowed"])),
        maybe("withdrawal_days", days()),
        maybe("wait_after_removal_days", days()),
        maybe("removal", words(&["needed", "not_needed", "nothing_stays"])),
        maybe("stay_min_days", days()),
        maybe("stay_min_days_with_brood", days()),
        maybe("stay_max_days", days()),
        maybe("doses", small()),
    ])
}

type Field = (&'static str, BoxedStrategy<Option<Value>>);

fn needed(field: &'static str, value: impl Strategy<Value = Value> + 'static) -> Field {
    (field, value.prop_map(Some).boxed())
}

fn maybe(field: &'static str, value: impl Strategy<Value = Value> + 'static) -> Field {
    (field, prop::option::of(value).boxed())
}

fn body(fields: Vec<Field>) -> BoxedStrategy<Value> {
    let (keys, values): (Vec<_>, Vec<_>) = fields.into_iter().unzip();
    values
        .prop_map(move |values| {
            let pairs = keys.iter().zip(values).filter_map(|(key, value)| Some(((*key).to_owned(), value?)));
            Value::Object(pairs.collect::<Map<_, _>>())
        })
        .boxed()
}

/// At least one object with these fields: some fields omit an empty list, which would then not round-trip.
fn list_of(fields: impl Fn() -> Vec<Field>) -> impl Strategy<Value = Value> {
    prop::collection::vec(body(fields()), 1..3).prop_map(Value::Array)
}

/// Confirmations: in words, or as values.
fn confirmed() -> impl Strategy<Value = Value> {
    let in_words = body(vec![needed("topic", words(&["temperature", "brood"])), needed("says", text())]);
    let value = |topic: &'static str, fields: Vec<Field>| {
        body(vec![needed("topic", Just(json!(topic))), needed("value", body(fields))])
    };
    prop_oneof![
        in_words,
        value("brood", vec![needed("value", words(&["absent", "lowest", "present"]))]),
        value(
            "temperature",
            vec![
                needed("window", words(&["maximum_over_stay", "at_use"])),
                maybe("min_tenths_c", (-300..600_i16).prop_map(Value::from)),
                maybe("max_tenths_c", (-300..600_i16).prop_map(Value::from)),
            ]
        ),
        value(
            "dose",
            vec![
                needed("amount", amount()),
                needed("per", words(&["hive", "seam"])),
                maybe("unit", text()),
                maybe("when", text()),
            ]
        ),
        value("needs", vec![needed("list", Just(json!(["hive_opened", "dry_ground"])))]),
    ]
}

/// Degrees to a tenth, as in the journal.
fn degrees() -> impl Strategy<Value = Value> {
    (-600..=500_i32).prop_map(|tenths| match tenths % 10 {
        0 => Value::from(tenths / 10),
        _ => Value::from(f64::from(tenths) / 10.0),
    })
}

#[expect(clippy::too_many_lines, reason = "one arm for each kind")]
fn body_of(kind: Kind) -> BoxedStrategy<Value> {
    let brood = || words(&["absent", "lowest", "present"]);
    let unit = || words(&["strip", "tray", "tablet", "wafer", "g", "ml", "piece"]);
    let counted = || (1..100_000_u32).prop_map(Value::from);
    let flag = || any::<bool>().prop_map(Value::from);
    let given = || {
        let part = body(vec![
            needed("lot", name()),
            needed("each", amount()),
            maybe("unit", unit()),
            needed("colonies", names()),
        ]);
        prop::collection::vec(part, 0..3).prop_map(Value::Array)
    };
    body(match kind {
        Kind::HoldingDetails => {
            vec![
                needed("keeper", name()),
                maybe("address", text()),
                needed("jurisdiction", name()),
                maybe("registration", text()),
            ]
        }
        Kind::ApiaryDetails => vec![needed("apiary", name()), maybe("place", text())],
        Kind::SiteConditions => vec![
            needed("apiary", name()),
            maybe("power", words(&["none", "battery", "generator", "mains"])),
            maybe("access", words(&["vehicle", "on_foot", "none"])),
            maybe("ground", words(&["dry", "wet", "flooded"])),
            maybe("until", a_day()),
        ],
        Kind::NectarFlow => vec![
            needed("apiary", name()),
            needed("forage", text()),
            needed("stage", words(&["expected", "seen"])),
            needed("from", a_day()),
            maybe("from_early", a_day()),
            maybe("from_late", a_day()),
            maybe("to", a_day()),
        ],
        Kind::Temperature => vec![
            needed("apiary", name()),
            needed("stage", words(&["forecast", "measured"])),
            needed(
                "days",
                list_of(|| {
                    vec![needed("day", a_day()), needed("min_c", degrees()), needed("max_c", degrees())]
                }),
            ),
            maybe("origin", text()),
        ],
        Kind::TemperatureNormals => vec![
            needed("apiary", name()),
            needed(
                "months",
                list_of(|| {
                    vec![needed("month", small()), needed("min_c", degrees()), needed("max_c", degrees())]
                }),
            ),
            maybe("origin", text()),
        ],
        Kind::ColonyEstablished => vec![
            needed("colony", name()),
            needed("apiary", name()),
            maybe("hive_mark", text()),
            maybe("origin", text()),
            needed("medicines", words(&["none", "not_known"])),
        ],
        Kind::ColonyMoved => vec![needed("colony", name()), needed("to", name())],
        Kind::ColonySplit => vec![
            needed("colony", name()),
            needed("into", name()),
            maybe("to", name()),
            maybe("hive_mark", text()),
            maybe("strips", words(&["stayed", "went", "both"])),
        ],
        Kind::ColonyUnited => {
            vec![
                needed("colony", name()),
                needed("into", name()),
                maybe("strips", words(&["went_along", "taken_out"])),
            ]
        }
        Kind::ColonyEnded => vec![needed("colony", name()), needed("cause", text())],
        Kind::SupersOn => vec![
            needed("colonies", names()),
            needed("supers", small()),
            needed("purpose", words(&["harvest", "bees_only"])),
        ],
        Kind::SupersOff => vec![needed("colonies", names()), needed("left_on", small())],
        Kind::Inspection => vec![
            needed("colony", name()),
            maybe("brood", brood()),
            maybe("seams", small()),
            maybe("bees", (0..200_000_u32).prop_map(Value::from)),
            maybe("brood_boxes", small()),
            maybe("hive_litres", (0..400_u16).prop_map(Value::from)),
            maybe("feeder", flag()),
            maybe("note", text()),
        ],
        Kind::MiteCount => vec![
            needed("colony", name()),
            needed("method", words(&["natural_fall", "wash", "sugar_roll", "opened_brood"])),
            needed("mites", counted()),
            maybe("days", (1..400_u16).prop_map(Value::from)),
            maybe("bees", counted()),
            maybe("cells", counted()),
            maybe("note", text()),
        ],
        Kind::MedicineDescribed => vec![
            needed("medicine", name()),
            needed("pack_name", text()),
            maybe("authorisation", text()),
            needed("unit", unit()),
            maybe("leaflet", name()),
            maybe("terms", terms()),
        ],
        Kind::LotAcquired => vec![
            needed("lot", name()),
            needed("medicine", name()),
            maybe("batch", text()),
            maybe("expiry", a_day()),
            needed("quantity", amount()),
            maybe("unit", unit()),
            maybe("supplier", body(vec![needed("name", text()), maybe("address", text())])),
            maybe("proof", text()),
            maybe("label_revision", text()),
        ],
        Kind::VetLot => vec![
            needed("lot", name()),
            needed("medicine", name()),
            needed("vet", name()),
            maybe("contact", text()),
            maybe("batch", text()),
            maybe("expiry", a_day()),
            maybe("label_revision", text()),
        ],
        Kind::LotOpened => vec![needed("lot", name())],
        Kind::DocumentAttached => vec![
            needed("content", "[0-9a-f]{64}".prop_map(Value::from)),
            needed("media_type", words(&["application/pdf", "image/jpeg", "image/png", "image/heic"])),
            needed("bytes", counted()),
            maybe("file_name", text()),
            maybe("lot", name()),
            maybe("prescription", name()),
        ],
        Kind::LeafletReading => {
            vec![
                needed("lot", name()),
                maybe("revision", text()),
                needed("terms", terms()),
                maybe("confirms", prop::collection::vec(confirmed(), 1..4).prop_map(Value::Array)),
            ]
        }
        Kind::Prescription => vec![
            needed("prescription", name()),
            needed("vet", name()),
            maybe("contact", text()),
            needed("medicine", name()),
            needed("terms", terms()),
        ],
        Kind::Administration => vec![
            needed("given", given()),
            maybe("method", name()),
            maybe("continues", id()),
            maybe("withdrawal_days", (0..500_u16).prop_map(Value::from)),
            maybe("given_by", name()),
            maybe("vet", name()),
            maybe("against", text()),
            maybe("certificate", text()),
            maybe("prescription", name()),
            maybe("count_corrected", flag()),
        ],
        Kind::Removal => {
            vec![
                needed("administration", id()),
                needed("colonies", names()),
                maybe("left_inside", small()),
                maybe("how_and_where", text()),
            ]
        }
        Kind::Disposal => vec![
            needed("lot", name()),
            needed("quantity", amount()),
            maybe("unit", unit()),
            needed("how_and_where", text()),
            maybe("count_corrected", flag()),
        ],
        Kind::Harvest => {
            vec![needed("harvest_lot", name()), needed("colonies", names()), maybe("kilograms", amount())]
        }
        Kind::Archived => vec![
            needed("through", a_day()),
            needed("places", words(&["1", "12-18,25"])),
            needed("entries", counted()),
            needed("digest", "[0-9a-f]{64}".prop_map(Value::from)),
            needed("file", "[0-9a-f]{64}".prop_map(Value::from)),
            maybe("contents", (1..1000_u32).prop_map(Value::from)),
        ],
        Kind::StrikeOut => Vec::new(),
    })
}

/// A draft as the JSON of its envelope.
pub(super) fn envelopes() -> impl Strategy<Value = Value> {
    let kind = prop::sample::select(Kind::ALL);
    let body = kind.prop_flat_map(|kind| (Just(kind), body_of(kind)));
    let at =
        prop::option::of((0..24_u8, 0..60_u8).prop_map(|(hour, minute)| format!("{hour:02}:{minute:02}")));
    let reason = prop_oneof!["[a-z ]{0,8}[a-z]", Just("a \u{1f} control and a \"quote\"".to_owned())];
    let correction = prop::option::of((id(), reason));
    let copied = prop::option::of(("[a-z ]{0,8}[a-z]", a_day()));
    (id(), a_day(), at, name(), body, correction, id(), copied).prop_map(
        |(id, on, at, by, (kind, body), correction, other, copied)| {
            let mut envelope =
                json!({ "id": id, "on": on, "recorded_by": by, "kind": kind.as_str(), "body": body });
            if let Some(at) = at {
                envelope["at"] = json!(at);
            }
            if let Some((what, written_on)) = copied {
                envelope["copied_from"] = json!(what);
                envelope["written_on"] = written_on;
            }
            let must = (kind == Kind::StrikeOut).then(|| (other, "struck out".to_owned()));
            if let Some((of, reason)) = correction.or(must) {
                envelope["corrects"] = of;
                envelope["reason"] = json!(reason);
            }
            envelope
        },
    )
}

/// A parsed draft.
pub(super) fn drafts() -> impl Strategy<Value = Draft> {
    envelopes().prop_map(|envelope| read(&envelope))
}
