//! The law on a day, as an owned report in words, ready for JSON or a page.

use combclear_domain::Day;
use combclear_domain::basics::source::Source;
use combclear_domain::basics::words::Jurisdiction;
use combclear_domain::rules::law::{
    Basis, Dated, Field, FieldNeed, FormRule, LawStanding, Occasion, Profile, RetentionRule, Ruled,
    TimeLimitRule,
};
use serde::Serialize;

use super::{field, notice};
use crate::words::Words;

/// The law of a jurisdiction on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawReport {
    /// The jurisdiction asked about.
    pub jurisdiction: Jurisdiction,
    /// The day: rules are chosen by the day of the event.
    pub on: Day,
    /// Whether any rule is in force on that day. If none is, the lists are empty because no law is in force or known,
    /// not because nothing is required.
    pub standing: LawStanding,
    /// The laws behind the rules: those of the jurisdiction or its union first, then others that apply there.
    pub parts: Vec<LawPart>,
    /// The fields that must be recorded, for each occasion.
    pub fields: Vec<LawField>,
    /// How soon entries must be made.
    pub time_limits: Vec<LawTimeLimit>,
    /// The required form of records.
    pub forms: Vec<LawForm>,
    /// How long records must be kept. The longest applies.
    pub retentions: Vec<LawRetention>,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// One of the law files behind a profile.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawPart {
    /// The jurisdiction of the law.
    pub jurisdiction: Jurisdiction,
    /// Its title.
    pub title: String,
    /// Whether its own rules are in force on the day.
    pub standing: LawStanding,
    /// Where they were read.
    pub sources: Vec<Source>,
}

/// A field that must be recorded.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawField {
    /// The occasion.
    pub occasion: Occasion,
    /// The identifier of the field.
    pub field: Field,
    /// The name of the field, in the words of the trade.
    pub name: String,
    /// How much it is needed, by the strictest rule.
    pub need: FieldNeed,
    /// The rules that require it.
    pub by: Vec<LawBasis>,
}

/// The law behind a rule, and how well it is established.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawBasis {
    /// The jurisdiction of the law, which defines the source keys.
    pub jurisdiction: Jurisdiction,
    /// How much this rule needs the field, if the rule is about one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub need: Option<FieldNeed>,
    /// Dates, sources and confidence.
    #[serde(flatten)]
    pub basis: Basis,
}

/// How soon an entry must be made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawTimeLimit {
    /// The occasion.
    pub occasion: Occasion,
    /// Days allowed; 0 for at the time.
    #[cfg_attr(feature = "openapi", schema(maximum = 400))]
    pub within_days: u16,
    /// The rule.
    pub by: LawBasis,
}

/// The required form of records.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawForm {
    /// The requirement.
    pub text: String,
    /// The rule.
    pub by: LawBasis,
}

/// How long records must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawRetention {
    /// The records concerned, and for how long.
    #[serde(flatten)]
    pub rule: RetentionRule,
    /// The rule.
    pub by: LawBasis,
}

impl LawReport {
    /// Puts a profile into words.
    #[must_use]
    pub fn of(words: &Words, profile: &Profile<'_>) -> LawReport {
        let parts = profile.parts().iter().map(|part| LawPart {
            jurisdiction: part.file.jurisdiction.clone(),
            title: part.file.title.clone(),
            standing: part.standing,
            sources: part.file.sources.clone(),
        });
        let fields = Occasion::ALL.iter().flat_map(|occasion| {
            profile.fields(*occasion).into_iter().map(|needed| LawField {
                occasion: *occasion,
                field: needed.field,
                name: field(words, needed.field),
                need: needed.need,
                by: needed
                    .by
                    .iter()
                    .map(|ruled| LawBasis { need: Some(ruled.rule.need), ..basis(*ruled) })
                    .collect(),
            })
        });
        let limits = Occasion::ALL.iter().filter_map(|occasion| profile.time_limit(*occasion));
        let limit = |ruled: Ruled<'_, TimeLimitRule>| LawTimeLimit {
            occasion: ruled.rule.occasion,
            within_days: ruled.rule.within_days,
            by: basis(ruled),
        };
        let kept =
            |ruled: Ruled<'_, RetentionRule>| LawRetention { rule: ruled.rule.clone(), by: basis(ruled) };
        let form = |ruled: Ruled<'_, FormRule>| LawForm { text: ruled.rule.text.clone(), by: basis(ruled) };
        LawReport {
            jurisdiction: profile.asked().clone(),
            on: profile.on(),
            standing: profile.standing(),
            parts: parts.collect(),
            fields: fields.collect(),
            time_limits: limits.map(limit).collect(),
            forms: profile.forms().map(form).collect(),
            retentions: profile.all_retentions().map(kept).collect(),
            notice: notice(words),
        }
    }
}

fn basis<R: Dated>(ruled: Ruled<'_, R>) -> LawBasis {
    LawBasis { jurisdiction: ruled.file.jurisdiction.clone(), need: None, basis: ruled.rule.basis().clone() }
}
