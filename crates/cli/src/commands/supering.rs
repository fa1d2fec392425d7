//! `combclear supering`: the question, for named colonies or for all that are alive.

mod full;
mod glance;

pub(super) use glance::together;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::timeline::Timeline;
use combclear_domain::recording::colonies_asked;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_pictures as picture;
use combclear_wording::supering::{SuperingReport, in_order};
use combclear_wording::terminal::failures;
use combclear_wording::{Label, Words};

use super::{output, print, print_json};
use crate::args::{Place, Supering};
use crate::failure::Failure;
use crate::{Outcome, clock, place};

pub(crate) async fn run(at: &Place, ask: &Supering) -> Result<Outcome, Failure> {
    let leaflets = &place::leaflets(at)?;
    let words = Words::english();
    let on = ask.on.unwrap_or_else(clock::today);
    if let Some(file) = &ask.picture {
        let draw = |holding: &Holding| picture(words, holding, leaflets, ask, on);
        let drawn = place::with_holding(at, async |holdings, holding| {
            place::read_with(holdings, &holding, &ask.read_back, draw).await
        });
        let drawn = drawn.await??;
        output::write(file, drawn.as_bytes())?;
        if output::is_standard_output(file) {
            return Ok(Outcome::Done);
        }
    }
    let (name, mut reports) = place::with_holding(at, async |holdings, holding| {
        let asked = |holding: &Holding| reports(words, holding, leaflets, ask, on);
        let reports = if ask.read_back.archives.is_empty() {
            place::read_if_any(holdings, &holding, asked).await?
        } else {
            Some(place::read_with(holdings, &holding, &ask.read_back, asked).await?)
        };
        Ok((holding, reports.unwrap_or_else(|| Ok(Vec::new()))?))
    })
    .await?;
    match (ask.json, ask.colonies.is_empty()) {
        (true, _) => print_json(&reports)?,
        (false, true) => {
            in_order(&mut reports);
            let board = if ask.full { full::board } else { glance::board };
            print(&board(words, &name, &reports, on))?;
        }
        (false, false) => {
            let one = if ask.full { full::one } else { glance::one };
            for report in &reports {
                print(&one(words, report))?;
            }
        }
    }
    Ok(if ask.colonies.is_empty() { Outcome::Done } else { outcome(&reports) })
}

fn reports(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    ask: &Supering,
    on: Day,
) -> Result<Vec<SuperingReport>, Failure> {
    let colonies: Vec<ColonyName> = match &ask.apiary {
        Some(apiary) => at_apiary(holding, apiary, on)?,
        None if ask.colonies.is_empty() => alive(holding, on),
        None => known(holding, &in_ranges(holding, &ask.colonies, on))?,
    };
    Ok(SuperingReport::board(words, holding, leaflets, &colonies, on))
}

/// The season of the only colony that is asked about, or of an apiary.
fn picture(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    ask: &Supering,
    on: Day,
) -> Result<String, Failure> {
    let nothing = || Failure::new(Label::PictureOfWhat, Label::PictureOfWhatHelp);
    match (&ask.apiary, ask.colonies.as_slice()) {
        (Some(apiary), _) => {
            let here = at_apiary(holding, apiary, on)?;
            picture::around(words, holding, leaflets, apiary, &here, on).ok_or_else(nothing)
        }
        (None, [colony]) => {
            known(holding, std::slice::from_ref(colony))?;
            Ok(picture::of_colony(words, &Timeline::of(holding, leaflets, colony, on)))
        }
        (None, _) => Err(nothing()),
    }
}

/// The colonies alive on the day, by apiary.
pub(super) fn alive(holding: &Holding, on: Day) -> Vec<ColonyName> {
    holding
        .apiaries()
        .flat_map(|apiary| holding.colonies_at(apiary, on).cloned().collect::<Vec<_>>())
        .collect()
}

fn at_apiary(holding: &Holding, apiary: &ApiaryName, on: Day) -> Result<Vec<ColonyName>, Failure> {
    if holding.apiaries().any(|known| known == apiary) {
        return Ok(holding.colonies_at(apiary, on).cloned().collect());
    }
    Err(no_apiary(holding, apiary))
}

/// The failure for an apiary that is not recorded.
pub(super) fn no_apiary(holding: &Holding, apiary: &ApiaryName) -> Failure {
    let words = Words::english();
    let names: Vec<&str> = holding.apiaries().map(ApiaryName::as_str).collect();
    let help = nearest(apiary.as_str(), names.iter().copied()).map_or_else(
        || failures::apiaries_are(words, &names.join(", ")),
        |near| failures::did_you_mean(words, near),
    );
    Failure::new(failures::no_apiary(words, apiary), help)
}

/// The colonies asked about, with those of a range such as `R1-R15` one by one. What is no such range stays as it is.
fn in_ranges(holding: &Holding, wanted: &[ColonyName], on: Day) -> Vec<ColonyName> {
    let meant =
        |name: &ColonyName| colonies_asked(holding, name.as_str(), on).unwrap_or_else(|| vec![name.clone()]);
    wanted.iter().flat_map(meant).collect()
}

pub(super) fn known(holding: &Holding, wanted: &[ColonyName]) -> Result<Vec<ColonyName>, Failure> {
    let words = Words::english();
    for colony in wanted {
        if holding.colony_file(colony).is_empty() {
            let names = holding.colonies().map(ColonyName::as_str);
            let help = nearest(colony.as_str(), names).map_or_else(
                || words.label(Label::AskedListColonies).to_owned(),
                |near| failures::did_you_mean(words, near),
            );
            return Err(Failure::new(failures::no_colony(words, colony), help));
        }
    }
    Ok(wanted.to_vec())
}

fn outcome(reports: &[SuperingReport]) -> Outcome {
    match reports.iter().map(|report| report.in_brief.answer).fold(Verdict::Yes, Verdict::and) {
        Verdict::Yes => Outcome::Done,
        Verdict::Unknown => Outcome::Unknown,
        Verdict::No => Outcome::No,
    }
}
