//! `combclear stock`: what is left of each lot, what to dispose of, what to reorder.

use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::facts::Overdrawn;
use combclear_domain::journal::lines::Header;
use combclear_domain::questions::stock::{LotState, Stock};
use combclear_wording::amounts::amount_of;
use combclear_wording::colonies;
use combclear_wording::stock::{DisposalReport, LotReport, NeedReport, StockReport, WayReport};
use combclear_wording::terminal::{at_least, confidence, day, failures, stock as say};
use combclear_wording::{Label, Words};

use super::{print, print_as_is, print_json};
use crate::args::{self, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &args::Stock) -> Result<Outcome, Failure> {
    let words = Words::english();
    let leaflets = &place::leaflets(at)?;
    let on = ask.on.unwrap_or_else(clock::today);
    let report = place::with_holding(at, async |holdings, name| {
        let read = |holding: &_| StockReport::of(words, holding, Stock::of(holding, leaflets, on));
        place::read_with(holdings, &name, &ask.read_back, read).await
    })
    .await?;
    if ask.json {
        print_json(&report)?;
    } else if ask.full {
        print(&all(words, &report))?;
        if !report.dispose.is_empty() {
            print_as_is(&prepared(&report)?)?;
        }
        print(&report.notice)?;
    } else {
        print(&at_a_glance(words, &report))?;
    }
    Ok(Outcome::Done)
}

/// What is left of each lot, what to dispose of, and what is short for one course.
fn at_a_glance(words: &Words, report: &StockReport) -> String {
    let mut text = say::head(words, &report.holding, &day(words, report.on)) + "\n";
    let lots = in_order(&report.lots);
    let (empty, left): (Vec<&LotReport>, Vec<&LotReport>) =
        lots.into_iter().partition(|report| report.lot.state == LotState::Empty);
    let mut rows = Table::headed(words, [Label::Lot, Label::Medicine, Label::Left, Label::HowItStands]);
    for report in &left {
        let lot = &report.lot;
        let amount = |amount| report.amount(words, amount);
        let balance = match lot.left() {
            Fact::Known(left) => amount(left),
            Fact::NotKnown(Overdrawn { by }) => format!("-{}", amount(by)),
        };
        rows.row([lot.lot.to_string(), lot.pack_name.clone(), balance, report.in_brief(words)]);
    }
    if report.lots.is_empty() {
        text.push_str(&format!("\n  {}\n", words.label(Label::NoneOnRecord)));
    }
    if !left.is_empty() {
        text.push_str(&format!("\n{rows}\n"));
    }
    if !empty.is_empty() {
        let lots = colonies::lots(words, empty.iter().map(|report| &report.lot.lot));
        text.push_str(&format!("  {}\n", say::empty(words, &lots)));
    }
    let mut section = |head: &str, lines: Vec<String>| {
        if !lines.is_empty() {
            let lines = lines.iter().map(|line| format!("  {line}\n"));
            text.push_str(&format!("\n{head}\n{}", lines.collect::<String>()));
        }
    };
    section(
        words.label(Label::ToDisposeOf),
        report.dispose.iter().map(|of| to_dispose(words, report, of)).collect(),
    );
    let count = report.needs.first().map_or(0, |report| report.need.colonies);
    section(&say::course(words, count), short(words, &report.needs));
    section(words.label(Label::StockLookAgain), report.notes.clone());
    text + &format!("\n{}\n{}", words.label(Label::StockMore), report.notice)
}

/// The lots in the order in which people count.
fn in_order(lots: &[LotReport]) -> Vec<&LotReport> {
    let mut lots: Vec<&LotReport> = lots.iter().collect();
    sort_naturally(&mut lots, |report| report.lot.lot.as_str());
    lots
}

fn to_dispose(words: &Words, report: &StockReport, disposal: &DisposalReport) -> String {
    let DisposalReport { to_dispose, why } = disposal;
    let lot = report.lots.iter().find(|report| report.lot.lot == to_dispose.lot);
    lot.map_or_else(
        || say::dispose_lot(words, &to_dispose.lot, why),
        |report| {
            let amount = report.amount(words, to_dispose.prepared.body.quantity);
            say::dispose_brief(words, &amount, &report.lot.pack_name, &to_dispose.lot)
        },
    )
}

/// What is short for one course, medicine by medicine; what is enough, in one line.
fn short(words: &Words, needs: &[NeedReport]) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut enough: Vec<String> = Vec::new();
    for NeedReport { need, ways, .. } in needs {
        for WayReport { way, .. } in ways {
            let method = way.method.as_ref().map(ToString::to_string);
            let parts = [Some(need.pack_name.clone()), method, way.revision.clone()];
            let medicine = parts.into_iter().flatten().collect::<Vec<_>>().join(", ");
            let amount = |amount| amount_of(words, amount, need.unit.as_str());
            match (way.short, way.short_at_least) {
                (Some(short), _) if short.is_zero() => enough.push(medicine),
                (Some(short), _) => lines.push(say::short(words, &medicine, &amount(short))),
                (None, least) if least.is_zero() => lines.push(say::need_not_known(words, &medicine)),
                (None, least) => {
                    lines.push(say::short(words, &medicine, &at_least(words, &amount(least))));
                }
            }
        }
    }
    if !enough.is_empty() {
        lines.push(say::enough(words, &enough.join("; ")));
    }
    lines
}

fn all(words: &Words, report: &StockReport) -> String {
    let mut text = say::head(words, &report.holding, &day(words, report.on)) + "\n";
    let mut section = |head: &str, body: &str| {
        if !body.is_empty() {
            text.push_str(&format!("\n{head}\n{}\n", body.trim_end()));
        }
    };
    section(words.label(Label::TitleLots), &lots(words, &report.lots));
    let count = report.needs.first().map_or(0, |report| report.need.colonies);
    section(&say::course(words, count), &needs(words, &report.needs));
    let notes: Vec<String> = report.notes.iter().map(|note| format!("  {note}")).collect();
    section(words.label(Label::StockLookAgain), &notes.join("\n"));
    // The prepared entries follow, which are not wrapped: they are for `import`.
    section(words.label(Label::ToDisposeOf), &disposals(words, report));
    text
}

fn lots(words: &Words, lots: &[LotReport]) -> String {
    if lots.is_empty() {
        return format!("  {}\n", words.label(Label::NoneOnRecord));
    }
    let heads = [
        Label::Lot,
        Label::Medicine,
        Label::Batch,
        Label::Expiry,
        Label::Acquired,
        Label::Given,
        Label::Disposed,
        Label::Left,
        Label::HowItStands,
    ];
    let mut rows = Table::headed(words, heads);
    for report in in_order(lots) {
        let lot = &report.lot;
        let left = match lot.left() {
            Fact::Known(left) => left.to_string(),
            Fact::NotKnown(Overdrawn { by }) => format!("-{by}"),
        };
        let mut says = vec![report.says.clone()];
        says.extend(lot.over_by.iter().map(|entry| say::taken_by(words, entry)));
        rows.row([
            lot.lot.to_string(),
            lot.pack_name.clone(),
            lot.batch.clone().unwrap_or_else(|| "-".to_owned()),
            lot.expiry.map_or_else(|| "-".to_owned(), |expiry| expiry.to_string()),
            format!("{}\n{}", report.amount(words, lot.acquired), lot.acquired_on),
            lot.given.to_string(),
            lot.disposed.to_string(),
            left,
            says.join("\n"),
        ]);
    }
    rows.to_string()
}

fn disposals(words: &Words, report: &StockReport) -> String {
    if report.dispose.is_empty() {
        return String::new();
    }
    let each: String = report.dispose.iter().map(|disposal| one_disposal(words, report, disposal)).collect();
    format!("{each}\n  {}\n", words.label(Label::StockHowToRecord))
}

/// The prepared entries, as a file for `import`.
fn prepared(report: &StockReport) -> Result<String, Failure> {
    let mut text = json(&Header::drafts(report.holding.clone()))?;
    for disposal in &report.dispose {
        text.push_str(&json(&disposal.to_dispose.prepared)?);
    }
    Ok(text)
}

fn one_disposal(words: &Words, report: &StockReport, disposal: &DisposalReport) -> String {
    let DisposalReport { to_dispose, why } = disposal;
    let lot = report.lots.iter().find(|report| report.lot.lot == to_dispose.lot);
    let said = lot.map_or_else(
        || say::dispose_lot(words, &to_dispose.lot, why),
        |report| {
            let amount = report.amount(words, to_dispose.prepared.body.quantity);
            say::dispose(words, &amount, &report.lot.pack_name, &to_dispose.lot, why)
        },
    );
    let mut text = format!("  {said}\n");
    for rule in &to_dispose.leaflet_says {
        let how_sure = confidence(words, rule.confidence);
        let said = say::leaflet_says(words, &rule.says, how_sure, &rule.sources.join("; "));
        text.push_str(&format!("    {said}\n"));
    }
    if to_dispose.leaflet_says.is_empty() {
        text.push_str(&format!("    {}\n", words.label(Label::StockLeafletSilent)));
    }
    text
}

fn json(value: &impl serde::Serialize) -> Result<String, Failure> {
    let line = serde_json::to_string(value).map_err(|error| {
        Failure::new(failures::not_json(Words::english(), &error.to_string()), Label::OutputTryJson)
    })?;
    Ok(format!("{line}\n"))
}

fn needs(words: &Words, needs: &[NeedReport]) -> String {
    if needs.is_empty() {
        return String::new();
    }
    let mut rows =
        Table::headed(words, [Label::Medicine, Label::ItTakes, Label::Usable, Label::Short, Label::RestsOn]);
    for report in needs {
        let need = &report.need;
        let unit = need.unit.as_str();
        for (index, of_way) in report.ways.iter().enumerate() {
            let way = &of_way.way;
            let name = if index == 0 { need.pack_name.clone() } else { String::new() };
            let way_name = [way.method.as_ref().map(ToString::to_string), way.revision.clone()];
            let way_name: Vec<String> = way_name.into_iter().flatten().collect();
            let medicine = [name, way_name.join(", ")]
                .iter()
                .filter(|part| !part.is_empty())
                .cloned()
                .collect::<Vec<_>>();
            let or_least = |known: Option<_>, least| match known {
                Some(amount) => amount_of(words, amount, unit),
                None => at_least(words, &amount_of(words, least, unit)),
            };
            rows.row([
                medicine.join("\n"),
                or_least(way.takes, way.takes_at_least),
                amount_of(words, need.usable, unit),
                match way.short {
                    None if way.short_at_least.is_zero() => words.label(Label::NotKnown).to_owned(),
                    short => or_least(short, way.short_at_least),
                },
                rests_on(words, report, of_way, index == 0),
            ]);
        }
    }
    rows.to_string()
}

fn rests_on(words: &Words, report: &NeedReport, of_way: &WayReport, first: bool) -> String {
    let (need, way) = (&report.need, &of_way.way);
    let mut said: Vec<String> = Vec::new();
    said.extend(way.doses.filter(|doses| *doses > 1).map(|doses| say::doses(words, doses)));
    for missing in &of_way.not_known {
        let supplied_by = missing.supplied_by.map(|kind| format!("{kind}: ")).unwrap_or_default();
        let (colonies, fact, how) =
            (colonies::colonies(words, &missing.colonies), &missing.fact, &missing.how);
        said.push(say::not_known(words, &colonies, &format!("{fact} ({supplied_by}{how})")));
    }
    if first && !need.lots.is_empty() {
        said.push(format!("{}: {}", words.label(Label::Usable), colonies::lots(words, &need.lots)));
    }
    for lot in report.not_counted.iter().filter(|_| first) {
        said.push(format!("{}: {} ({})", words.label(Label::NotCounted), lot.lot, lot.why));
    }
    said.join("\n")
}
