//! `combclear stock`: what is left of each lot, what to dispose of, what to reorder.

use combclear_domain::basics::words::{ColonyName, LotName};
use combclear_domain::journal::lines::Header;
use combclear_domain::questions::stock::Stock;
use combclear_wording::Words;
use combclear_wording::amounts::amount_of;
use combclear_wording::stock::{DisposalReport, LotReport, NeedReport, StockReport, WayReport};

use super::{counted, print, print_json, table};
use crate::args::{self, Place};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &args::Stock) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let on = ask.on.unwrap_or_else(clock::today);
    let report = place::with_holding(at, async |holdings, holding| {
        let read = |holding: &_| StockReport::of(Words::english(), &Stock::of(holding, leaflets, on));
        let report = holdings.read(&holding, read).await?;
        report.ok_or_else(|| Failure::new("the journal is empty", "take a journal in first"))
    })
    .await?;
    if ask.json {
        print_json(&report)?;
    } else {
        print(&all(&report)?)?;
    }
    Ok(Outcome::Done)
}

fn all(report: &StockReport) -> Result<String, Failure> {
    let mut text = format!("Stock of {}, {} ({})\n", report.holding, report.on, report.on.weekday());
    let mut section = |head: &str, body: &str| {
        if !body.is_empty() {
            text.push_str(&format!("\n{head}\n{}\n", body.trim_end()));
        }
    };
    section("Lots", &lots(&report.lots));
    section("To dispose of", &disposals(report)?);
    let count = report.needs.first().map_or(0, |need| need.colonies);
    let head = format!("For one course of all {}", counted(count, "colony", "colonies"));
    section(&head, &needs(&report.needs));
    let notes: Vec<String> = report.notes.iter().map(|note| format!("  {note}")).collect();
    section("Look at again", &notes.join("\n"));
    text.push_str(&format!("\n{}", report.notice));
    Ok(text)
}

fn lots(lots: &[LotReport]) -> String {
    if lots.is_empty() {
        return "  none on record\n".to_owned();
    }
    let mut rows = table([
        "lot",
        "medicine",
        "batch",
        "expiry",
        "acquired",
        "given",
        "disposed",
        "left",
        "how it stands",
    ]);
    for lot in lots {
        let left = match (lot.left, lot.over) {
            (Some(left), _) => left.to_string(),
            (None, over) => format!("-{}", over.unwrap_or_default()),
        };
        let mut says = lot.says.clone();
        let entries: Vec<String> =
            lot.over_by.iter().map(|entry| format!("\ntaken by entry {entry}")).collect();
        says.push_str(&entries.concat());
        rows.add_row([
            lot.lot.to_string(),
            lot.pack_name.clone(),
            lot.batch.clone().unwrap_or_else(|| "-".to_owned()),
            lot.expiry.map_or_else(|| "-".to_owned(), |expiry| expiry.to_string()),
            format!("{}\n{}", lot.amount(Words::english(), lot.acquired), lot.acquired_on),
            lot.given.to_string(),
            lot.disposed.to_string(),
            left,
            says,
        ]);
    }
    rows.trim_fmt()
}

fn disposals(report: &StockReport) -> Result<String, Failure> {
    if report.dispose.is_empty() {
        return Ok(String::new());
    }
    let mut text = String::new();
    for disposal in &report.dispose {
        text.push_str(&one_disposal(report, disposal));
    }
    text.push_str(
        "\n  To record it: write how and where in place of null, put these lines into a file, combclear import FILE.\n\n",
    );
    text.push_str(&json(&Header::drafts(report.holding.clone()))?);
    for disposal in &report.dispose {
        text.push_str(&json(&disposal.prepared)?);
    }
    Ok(text)
}

fn one_disposal(report: &StockReport, disposal: &DisposalReport) -> String {
    let lot = report.lots.iter().find(|lot| lot.lot == disposal.lot);
    let what = lot.map_or_else(String::new, |lot| {
        format!("{} of {}, ", lot.amount(Words::english(), disposal.prepared.body.quantity), lot.pack_name)
    });
    let mut text = format!("  {what}lot {}: {}\n", disposal.lot, disposal.why);
    for rule in &disposal.leaflet_says {
        let how_sure = rule.confidence.as_str().replace('_', " ");
        text.push_str(&format!("    leaflet: {} ({how_sure}; {})\n", rule.says, rule.sources.join("; ")));
    }
    if disposal.leaflet_says.is_empty() {
        text.push_str("    the leaflet here says nothing of how: read it on the pack, or ask the supplier\n");
    }
    text
}

fn json(value: &impl serde::Serialize) -> Result<String, Failure> {
    let line = serde_json::to_string(value)
        .map_err(|error| Failure::new(format!("cannot write this as JSON: {error}"), "try --json"))?;
    Ok(format!("{line}\n"))
}

fn needs(needs: &[NeedReport]) -> String {
    if needs.is_empty() {
        return String::new();
    }
    let mut rows = table(["medicine", "it takes", "usable", "short", "what it rests on"]);
    for need in needs {
        let unit = need.unit.as_str();
        for (index, way) in need.ways.iter().enumerate() {
            let name = if index == 0 { need.pack_name.clone() } else { String::new() };
            let way_name = [way.method.as_ref().map(ToString::to_string), way.revision.clone()];
            let way_name: Vec<String> = way_name.into_iter().flatten().collect();
            let medicine = [name, way_name.join(", ")]
                .iter()
                .filter(|part| !part.is_empty())
                .cloned()
                .collect::<Vec<_>>();
            let at_least = |known: Option<_>, least| match known {
                Some(amount) => amount_of(Words::english(), amount, unit),
                None => format!("at least {}", amount_of(Words::english(), least, unit)),
            };
            rows.add_row([
                medicine.join("\n"),
                at_least(way.takes, way.takes_at_least),
                amount_of(Words::english(), need.usable, unit),
                match way.short {
                    None if way.short_at_least.is_zero() => "not known".to_owned(),
                    short => at_least(short, way.short_at_least),
                },
                rests_on(need, way, index == 0),
            ]);
        }
    }
    rows.trim_fmt()
}

fn rests_on(need: &NeedReport, way: &WayReport, first: bool) -> String {
    let mut said: Vec<String> = Vec::new();
    said.extend(way.doses.filter(|doses| *doses > 1).map(|doses| counted(doses, "dose", "doses")));
    for missing in &way.not_known {
        let supplied_by = missing.supplied_by.map(|kind| format!("{kind}: ")).unwrap_or_default();
        let (colonies, fact, how) = (some(&missing.colonies), &missing.fact, &missing.how);
        said.push(format!("not known of {colonies}: {fact} ({supplied_by}{how})"));
    }
    if first && !need.lots.is_empty() {
        said.push(format!(
            "usable: {}",
            need.lots.iter().map(LotName::as_str).collect::<Vec<_>>().join(", ")
        ));
    }
    for lot in need.not_counted.iter().filter(|_| first) {
        said.push(format!("not counted: {} ({})", lot.lot, lot.why));
    }
    said.join("\n")
}

/// The first few names, and how many more.
fn some(colonies: &[ColonyName]) -> String {
    const SHOWN: usize = 6;
    let names: Vec<&str> = colonies.iter().take(SHOWN).map(ColonyName::as_str).collect();
    let more = colonies.len().saturating_sub(SHOWN);
    let more = if more == 0 { String::new() } else { format!(" and {more} more") };
    format!("{}{more}", names.join(", "))
}
