//! `combclear gaps`: what the law still asks of the record, and its irregularities.

use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::Overdrawn;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::{Gap, GapWeight, Gaps, LotCheck};
use combclear_store::{Attached, Holdings, documents};
use combclear_wording::amounts::amount_of;
use combclear_wording::colonies::counted;
use combclear_wording::gaps::{GapsReport, statement, summary, supply, supply_of_each};
use combclear_wording::terminal::{gap_sort, gaps as say};
use combclear_wording::{Label, Words};

use super::register::period;
use super::{print, print_json};
use crate::args::{self, Place};
use crate::failure::Failure;
use crate::layout::Table;
use crate::{Outcome, place};

pub(crate) async fn run(at: &Place, ask: &args::Gaps) -> Result<Outcome, Failure> {
    let words = Words::english();
    let (leaflets, laws) = (&place::leaflets(at)?, place::laws()?);
    let (period, as_of) = period(&ask.time)?;
    let found = place::with_holding(at, async |holdings, holding| {
        let not_kept = not_kept(holdings, &holding).await?;
        let read = |holding: &_| Gaps::of(holding, leaflets, laws, period, as_of, &not_kept);
        place::read_with(holdings, &holding, &ask.read_back, read).await
    })
    .await?;
    let complete = found.complete;
    if ask.json {
        print_json(&GapsReport::of(words, found))?;
    } else if ask.full {
        print(&all(words, &found))?;
    } else {
        print(&at_a_glance(words, &found))?;
    }
    Ok(match complete {
        Verdict::Yes => Outcome::Done,
        Verdict::No => Outcome::No,
        Verdict::Unknown => Outcome::Unknown,
    })
}

/// The contents of missing or altered documents.
pub(super) async fn not_kept(holdings: &Holdings, holding: &HoldingName) -> Result<Vec<Hash>, Failure> {
    let attached = documents(holdings.journal().as_ref(), holding).await?;
    Ok(attached.iter().filter_map(Attached::fault).map(|fault| fault.content).collect())
}

/// The weights, the most serious first.
const WEIGHTS: [GapWeight; 4] =
    [GapWeight::Required, GapWeight::Irregular, GapWeight::WhereApplicable, GapWeight::Advised];

fn laws(words: &Words, found: &Gaps) -> String {
    let titles = found.laws.iter().map(|law| say::by_law(words, &law.title));
    titles.fold(String::new(), |text, law| text + &format!("  {law}\n"))
}

/// The most runs of entries that a glance names for one kind of gap. The full answer names each.
const AT_A_GLANCE: usize = 20;

/// Each kind of gap with its entries, and how to fix it.
fn at_a_glance(words: &Words, found: &Gaps) -> String {
    let head = say::head(words, &found.holding, found.from, found.to);
    let mut text = format!("{head}\n{}\n{}", summary(words, found).join("\n"), laws(words, found));
    for weight in WEIGHTS {
        let mut kinds: Vec<(&str, Vec<&Gap>)> = Vec::new();
        for gap in found.gaps.iter().filter(|gap| gap.weight == weight) {
            match kinds.iter_mut().find(|(kind, _)| *kind == gap.finding.as_str()) {
                Some((_, gaps)) => gaps.push(gap),
                None => kinds.push((gap.finding.as_str(), vec![gap])),
            }
        }
        if !kinds.is_empty() {
            text.push_str(&format!("\n{}\n", say::head_of(words, weight)));
        }
        for (kind, gaps) in kinds {
            text.push_str(&of_kind(words, kind, &gaps));
        }
    }
    let more = words.label(Label::GapsMore);
    text + &format!("\n{more}\n{}", combclear_wording::notice(words))
}

/// The gaps of one kind: one in a sentence, several by the numbers of their entries; then how to fix them.
fn of_kind(words: &Words, kind: &str, gaps: &[&Gap]) -> String {
    if let [only] = gaps {
        return told_together(words, &[*only]).concat();
    }
    let numbers: Vec<String> = gaps.iter().map(|gap| gap.seq.to_string()).collect();
    let what = gap_sort(words, kind);
    let numbers = counted(words, numbers.iter().map(String::as_str));
    let runs: Vec<&str> = numbers.split(", ").collect();
    let brief = match runs.split_at_checked(AT_A_GLANCE) {
        Some((first, [_, ..])) => say::of_many(words, &what, gaps.len(), &first.join(", ")),
        _ => say::brief(words, &what, &numbers),
    };
    let mut text = format!("  {brief}\n");
    let mut supplies: Vec<String> = gaps.iter().map(|gap| supply_of_each(words, gap.supply)).collect();
    supplies.dedup();
    for supply in supplies {
        text.push_str(&format!("    -> {supply}\n"));
    }
    text
}

fn all(words: &Words, found: &Gaps) -> String {
    let head = say::head(words, &found.holding, found.from, found.to);
    let mut text = format!("{head}\n{}\n{}\n", laws(words, found), summary(words, found).join("\n"));
    for weight in WEIGHTS {
        let gaps: Vec<&Gap> = found.gaps.iter().filter(|gap| gap.weight == weight).collect();
        let lines =
            if weight == GapWeight::Advised { in_short(words, &gaps) } else { told_together(words, &gaps) };
        let lines = lines.concat();
        if !lines.is_empty() {
            text.push_str(&format!("\n{}\n{lines}", say::head_of(words, weight)));
        }
    }
    if !found.lots.is_empty() {
        text.push_str(&format!("\n{}\n{}\n", words.label(Label::Books), lots(words, &found.lots)));
    }
    text.push_str(&format!("\n{}", combclear_wording::notice(words)));
    text
}

/// Each gap in one line, with how to supply it below. Consecutive gaps with the same remedy share one.
fn told_together(words: &Words, gaps: &[&Gap]) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut gaps = gaps.iter().peekable();
    while let Some(gap) = gaps.next() {
        lines.push(format!("  {}\n", statement(words, gap)));
        if gaps.peek().is_none_or(|next| next.supply != gap.supply) {
            lines.push(format!("    -> {}\n", supply(words, gap.supply)));
        }
    }
    lines
}

/// One line per kind of advice, with the numbers of its entries: in full it would drown out the rest.
fn in_short(words: &Words, gaps: &[&Gap]) -> Vec<String> {
    let mut sorts: Vec<&str> = gaps.iter().map(|gap| gap.finding.as_str()).collect();
    sorts.dedup();
    let mut known: Vec<&str> = Vec::new();
    let mut lines = Vec::new();
    for sort in sorts {
        if known.contains(&sort) {
            continue;
        }
        known.push(sort);
        let of_sort: Vec<&Gap> = gaps.iter().copied().filter(|gap| gap.finding.as_str() == sort).collect();
        match of_sort.as_slice() {
            [_, _, _, ..] => {
                let numbers: Vec<String> = of_sort.iter().map(|gap| gap.seq.to_string()).collect();
                // The sort only: what one of them says beyond it holds for that one alone.
                let what = gap_sort(words, sort);
                let times = say::times(words, of_sort.len(), &what);
                let entries = say::entries(words, &numbers.join(", "));
                lines.push(format!("  {times}\n    {entries}\n"));
            }
            few => lines.extend(told_together(words, few)),
        }
    }
    lines
}

fn lots(words: &Words, lots: &[LotCheck]) -> String {
    let mut rows = Table::headed(
        words,
        [Label::Lot, Label::Acquired, Label::Given, Label::DisposedOf, Label::Left, Label::Blank],
    );
    let mut lots: Vec<&LotCheck> = lots.iter().collect();
    sort_naturally(&mut lots, |lot| lot.lot.as_str());
    for lot in lots {
        let unit = lot.unit.map_or("", |unit| unit.as_str());
        let (left, note) = match (lot.left(), lot.count_corrected_by.is_empty()) {
            (Fact::NotKnown(Overdrawn { by }), _) => {
                ("-".to_owned(), say::more_gone(words, &amount_of(words, by, unit)))
            }
            (Fact::Known(left), false) => {
                (amount_of(words, left, unit), words.label(Label::GapsCountCorrected).to_owned())
            }
            (Fact::Known(left), true) => (amount_of(words, left, unit), String::new()),
        };
        rows.row([
            lot.lot.to_string(),
            amount_of(words, lot.acquired, unit),
            amount_of(words, lot.given, unit),
            amount_of(words, lot.disposed, unit),
            left,
            note,
        ]);
    }
    rows.to_string()
}
