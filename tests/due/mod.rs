//! Due items and stock, on cases kept as data.
//!
//! Each file of `cases/` begins with a setup that its cases share. A question with `from` is about what is due, one with
//! `stock_on` about the stock.

use std::sync::OnceLock;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::{Due, Item};
use combclear_domain::questions::options::Span;
use combclear_domain::questions::stock::{Lot, Stock};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_leaflets::laws;
use combclear_testkit::cases::{Compare, ask_all, day, leaflets_and, word};
use combclear_testkit::entries::uuid_of;
use combclear_wording::Words;
use combclear_wording::due::{DueItem, DueReport};
use combclear_wording::stock::{LotReport, StockReport};
use serde::Deserialize;

mod laws;
mod making;
mod visits;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ask {
    // Due items.
    from: Option<Day>,
    /// The same day by default.
    to: Option<Day>,
    apiary: Option<String>,
    /// Only items of this kind are compared.
    kind: Option<String>,
    /// `weight kind colonies from by`, with `!` before it if it is overdue.
    items: Option<Vec<String>>,
    /// The keys, with short words as ids.
    keys: Option<Vec<String>>,
    /// The first days without and with brood.
    brood: Option<Vec<String>>,
    /// Part of the text of some item.
    text: Option<String>,

    // The stock.
    stock_on: Option<Day>,
    /// Only this lot is compared.
    of: Option<String>,
    /// `state acquired given disposed left`.
    lots: Option<Vec<String>>,
    /// `day told_by` of the first lot.
    opened: Option<String>,
    until: Option<String>,
    in_use_says: Option<String>,
    confidence: Option<String>,
    /// Part of the text on the first lot.
    says: Option<String>,
    /// The words of entries.
    corrected: Option<Vec<String>>,
    over_by: Option<Vec<String>>,
    /// `lot quantity unit` of the prepared entries.
    dispose: Option<Vec<String>>,
    disposal_rule: Option<String>,
    notes: Option<Vec<String>>,
    needs: Option<Vec<String>>,
}

#[test]
fn every_case_gets_its_answer() {
    let called = |ask: &Ask| match (ask.from, ask.stock_on) {
        (Some(from), _) => format!("due {from} to {}", ask.to.unwrap_or(from)),
        (None, on) => format!("stock on {}", on.unwrap()),
    };
    ask_all("tests/due/cases", called, |holding, ask| match ask.from {
        Some(from) => of_due(&due(holding, from, ask.to.unwrap_or(from), ask.apiary.as_deref()), ask),
        None => of_stock(
            &StockReport::of(
                Words::english(),
                holding,
                Stock::of(holding, leaflets(), ask.stock_on.unwrap()),
            ),
            ask,
        ),
    });
}

fn due(holding: &Holding, from: Day, to: Day, apiary: Option<&str>) -> DueReport {
    DueReport::of(Words::english(), holding, typed(holding, from, to, apiary))
}

fn typed(holding: &Holding, from: Day, to: Day, apiary: Option<&str>) -> Due {
    let apiary = apiary.map(|apiary| apiary.parse().unwrap());
    Due::of(holding, leaflets(), laws().unwrap(), Span::new(from, to).unwrap(), apiary.as_ref())
}

fn of_due(report: &DueReport, ask: &Ask) -> Vec<String> {
    let mut compare = Compare::default();
    let wanted = |item: &&DueItem| ask.kind.as_deref().is_none_or(|kind| item.item.kind.as_str() == kind);
    let items: Vec<&DueItem> = report.items().filter(wanted).collect();
    compare.list("items", ask.items.as_ref(), items.iter().map(|item| in_brief(&item.item)));
    let keys = ask.keys.as_ref().map(|keys| keys.iter().map(|key| with_ids(key)).collect());
    compare.list("keys", keys.as_ref(), items.iter().map(|item| item.item.key.clone()));
    let brood =
        items.iter().filter_map(|item| Some((item.item.from_without_brood?, item.item.from_with_brood?)));
    compare.list("brood", ask.brood.as_ref(), brood.map(|(without, with)| format!("{without} {with}")));
    compare.part("text", ask.text.as_ref(), &items.iter().map(|item| &item.text).collect::<Vec<_>>());
    compare.faults
}

fn in_brief(item: &Item) -> String {
    let colonies: Vec<&str> = item.colonies.iter().map(ColonyName::as_str).collect();
    let colonies = if colonies.is_empty() { "-".to_owned() } else { colonies.join(" ") };
    let overdue = if item.overdue { "!" } else { "" };
    let (weight, kind) = (item.weight, item.kind);
    format!("{overdue}{weight} {kind} {colonies} {} {}", day(item.from), day(item.by))
}

/// A key whose second part is the short word of an entry.
fn with_ids(key: &str) -> String {
    let mut parts: Vec<String> = key.split(':').map(str::to_owned).collect();
    parts[1] = uuid_of(&parts[1]);
    parts.join(":")
}

fn of_stock(report: &StockReport, ask: &Ask) -> Vec<String> {
    let mut compare = Compare::default();
    let lots: Vec<&LotReport> = report
        .lots
        .iter()
        .filter(|lot| ask.of.as_deref().is_none_or(|of| lot.lot.lot.as_str() == of))
        .collect();
    compare.list("lots", ask.lots.as_ref(), lots.iter().map(|lot| lot_in_brief(&lot.lot)));
    let first = lots.first();
    let opened = first.and_then(|lot| lot.lot.opened);
    let opened = opened.map_or("-".to_owned(), |opened| format!("{} {}", opened.on, word(opened.told_by)));
    compare.one("opened", ask.opened.as_ref(), opened);
    let in_use = first.and_then(|lot| lot.lot.in_use.as_ref());
    compare.one("until", ask.until.as_ref(), day(in_use.and_then(|in_use| in_use.until)));
    compare.one(
        "in use",
        ask.in_use_says.as_ref(),
        in_use.map(|in_use| in_use.says.clone()).unwrap_or_default(),
    );
    let confidence = in_use.map(|in_use| in_use.confidence.to_string());
    compare.one("confidence", ask.confidence.as_ref(), confidence.unwrap_or_default());
    compare.part("says", ask.says.as_ref(), &first.iter().map(|lot| &lot.says).collect::<Vec<_>>());
    let ids = |words: &Option<Vec<String>>| {
        words.as_ref().map(|words| words.iter().map(|word| uuid_of(word)).collect::<Vec<_>>())
    };
    let corrected = lots.iter().flat_map(|lot| &lot.lot.count_corrected).map(ToString::to_string);
    compare.list("corrected", ids(&ask.corrected).as_ref(), corrected);
    let over_by = lots.iter().flat_map(|lot| &lot.lot.over_by).map(ToString::to_string);
    compare.list("over by", ids(&ask.over_by).as_ref(), over_by);
    let bodies = report.dispose.iter().map(|disposal| &disposal.to_dispose.prepared.body);
    let dispose = bodies.map(|body| format!("{} {} {}", body.lot, body.quantity, body.unit.unwrap()));
    compare.list("dispose", ask.dispose.as_ref(), dispose);
    let rule = report
        .dispose
        .iter()
        .flat_map(|disposal| &disposal.to_dispose.leaflet_says)
        .map(|rule| rule.says.clone());
    compare.one("disposal rule", ask.disposal_rule.as_ref(), rule.collect::<Vec<_>>().join(" "));
    compare.list("notes", ask.notes.as_ref(), report.notes.iter().cloned());
    compare.list("needs", ask.needs.as_ref(), needs(report).into_iter());
    compare.faults
}

fn lot_in_brief(lot: &Lot) -> String {
    let left = match lot.left() {
        Fact::Known(left) => left.to_string(),
        Fact::NotKnown(overdrawn) => format!("-{}", overdrawn.by),
    };
    format!("{} {} {} {} {left}", word(lot.state), lot.acquired, lot.given, lot.disposed)
}

fn needs(report: &StockReport) -> Vec<String> {
    let mut needs = Vec::new();
    for of_need in &report.needs {
        let need = &of_need.need;
        for of_way in &of_need.ways {
            let way = &of_way.way;
            let method = way.method.as_ref().map(|method| format!(" {method}")).unwrap_or_default();
            let takes =
                way.takes.map_or(format!("at least {}", way.takes_at_least), |takes| takes.to_string());
            let short =
                way.short.map_or(format!("at least {}", way.short_at_least), |short| short.to_string());
            let mut said =
                format!("{}{method}: takes {takes}, usable {}, short {short}", need.medicine, need.usable);
            for missing in &of_way.not_known {
                let colonies: Vec<&str> = missing.colonies.iter().map(ColonyName::as_str).collect();
                said += &format!(
                    ", {} of {} ({})",
                    missing.fact,
                    colonies.join(" "),
                    missing.supplied_by.unwrap_or("-")
                );
            }
            needs.push(said);
        }
    }
    needs
}

/// The built-in leaflets, those invented for the supering question, and those invented here.
fn leaflets() -> &'static Leaflets {
    static LEAFLETS: OnceLock<Leaflets> = OnceLock::new();
    LEAFLETS.get_or_init(|| {
        leaflets_and(&[("tests/supering/leaflets/zz", "zz"), ("tests/due/leaflets/zz", "zz")])
    })
}
