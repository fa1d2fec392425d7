//! A path of the service, read as a question.

use std::collections::BTreeMap;

use combclear_domain::Day;
use combclear_domain::basics::words::{Access, ApiaryName, ColonyName, Ground, HoldingName, LotName, Power};
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::is_filled_in;
use percent_encoding::percent_decode_str;
use serde::Deserialize;

/// A question about a holding, or about nothing that is recorded.
pub(crate) enum Question {
    Forms,
    Of { holding: HoldingName, about: About, asked: Asked },
}

/// What a question about a holding is about.
pub(crate) enum About {
    Colonies,
    Colony(ColonyName),
    ColonySupering(ColonyName),
    ColonyHistory(ColonyName),
    ColonySeason(ColonyName),
    ColonyOptions(ColonyName),
    Apiaries,
    Apiary(ApiaryName),
    ApiarySupering(ApiaryName),
    ApiarySeason(ApiaryName),
    ApiaryOptions(ApiaryName),
    Visit(ApiaryName),
    Due,
    Stock,
    LotLeaflet(LotName),
    Medicines,
    Retention,
    FilledIn(Kind),
}

/// The parameters of a question. Which of them it takes is the service's to say: a page asks both in the same way.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    pub(crate) on: Option<Day>,
    pub(crate) from: Option<Day>,
    pub(crate) to: Option<Day>,
    pub(crate) as_of: Option<Day>,
    pub(crate) apiary: Option<ApiaryName>,
    pub(crate) power: Option<Power>,
    pub(crate) access: Option<Access>,
    pub(crate) ground: Option<Ground>,
    pub(crate) site_until: Option<Day>,
}

impl Question {
    /// The question of a path with its query. Nothing if it cannot be answered from a copy of the journal.
    pub(crate) fn read(path: &str) -> Option<Question> {
        let (path, query) = path.split_once('?').unwrap_or((path, ""));
        let decoded = |part: &str| Some(percent_decode_str(part).decode_utf8().ok()?.into_owned());
        let parts = path.strip_prefix('/')?.split('/').map(decoded).collect::<Option<Vec<String>>>()?;
        let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
        if parts == ["forms"] {
            return Some(Question::Forms);
        }
        let ["holdings", holding, of @ ..] = parts.as_slice() else { return None };
        let about = match of {
            ["colonies"] => About::Colonies,
            ["colonies", colony] => About::Colony(colony.parse().ok()?),
            ["colonies", colony, "supering"] => About::ColonySupering(colony.parse().ok()?),
            ["colonies", colony, "history"] => About::ColonyHistory(colony.parse().ok()?),
            ["colonies", colony, "season"] => About::ColonySeason(colony.parse().ok()?),
            ["colonies", colony, "treatment-options"] => About::ColonyOptions(colony.parse().ok()?),
            ["apiaries"] => About::Apiaries,
            ["apiaries", apiary] => About::Apiary(apiary.parse().ok()?),
            ["apiaries", apiary, "supering"] => About::ApiarySupering(apiary.parse().ok()?),
            ["apiaries", apiary, "season"] => About::ApiarySeason(apiary.parse().ok()?),
            ["apiaries", apiary, "treatment-options"] => About::ApiaryOptions(apiary.parse().ok()?),
            ["apiaries", apiary, "visit"] => About::Visit(apiary.parse().ok()?),
            ["due"] => About::Due,
            ["stock"] => About::Stock,
            ["lots", lot, "leaflet"] => About::LotLeaflet(lot.parse().ok()?),
            ["medicines"] => About::Medicines,
            ["retention"] => About::Retention,
            ["forms", kind] => About::FilledIn(Kind::from_word(kind).filter(|kind| is_filled_in(*kind))?),
            _ => return None,
        };
        let query: BTreeMap<String, String> = form_urlencoded::parse(query.as_bytes()).into_owned().collect();
        let asked = serde_json::to_value(query).and_then(serde_json::from_value).ok()?;
        Some(Question::Of { holding: holding.parse().ok()?, about, asked })
    }
}
