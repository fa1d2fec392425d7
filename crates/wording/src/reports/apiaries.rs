//! Apiaries, and whether each colony at one may be supered.

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::facts::holding::{ApiaryView, Holding};
use combclear_domain::questions::due::Due;
use combclear_domain::questions::options::Span;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use serde::Serialize;

use super::Unanswered;
use crate::Words;
use crate::supering::SuperingReport;
use crate::visit::VisitSheet;

/// The apiaries of a holding on a day.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryList {
    /// The holding.
    holding: HoldingName,
    /// The day asked about.
    on: Day,
    /// In order of name.
    items: Vec<ApiaryView>,
}

/// Whether the colonies of an apiary may be supered.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiarySupering {
    /// The holding.
    holding: HoldingName,
    /// The apiary.
    apiary: ApiaryName,
    /// The day asked about.
    on: Day,
    /// Number of colonies that may be.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    yes: usize,
    /// Number that may not.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    no: usize,
    /// Number for which it is not known.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    unknown: usize,
    /// The answer for each, in order of name.
    colonies: Vec<SuperingReport>,
}

/// Every apiary at the end of the day.
#[must_use]
pub fn list(holding: &Holding, on: Day) -> ApiaryList {
    let items = holding.apiaries().filter_map(|apiary| holding.apiary(apiary, on)).collect();
    ApiaryList { holding: holding.name().clone(), on, items }
}

/// One apiary at the end of the day.
///
/// # Errors
/// It is not on record.
pub fn one(words: &Words, holding: &Holding, apiary: &ApiaryName, on: Day) -> Result<ApiaryView, Unanswered> {
    holding.apiary(apiary, on).ok_or_else(|| Unanswered::no_apiary(words, holding, apiary))
}

/// The whole answer for each colony that stands there on the day.
///
/// # Errors
/// The apiary is not on record.
pub fn supering(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    apiary: &ApiaryName,
    on: Day,
) -> Result<ApiarySupering, Unanswered> {
    let here = one(words, holding, apiary, on)?.colonies;
    let colonies = SuperingReport::board(words, holding, leaflets, &here, on);
    let count = |verdict| colonies.iter().filter(|report| report.in_brief.answer == verdict).count();
    let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
    let (holding, apiary) = (holding.name().clone(), apiary.clone());
    Ok(ApiarySupering { holding, apiary, on, yes, no, unknown, colonies })
}

/// The sheet of a visit on a day.
///
/// # Errors
/// The apiary is not on record.
pub fn visit(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    laws: &Laws,
    apiary: &ApiaryName,
    on: Day,
) -> Result<VisitSheet, Unanswered> {
    let here = one(words, holding, apiary, on)?.colonies;
    let due = Due::of(holding, leaflets, laws, Span::day(on), Some(apiary));
    Ok(VisitSheet::of(words, holding, leaflets, apiary, &here, due, on))
}
