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
    /// Whether any rule is in force on that day. If not, the lists are empty because nothing is in force or known, and not
    /// because nothing is required.
    pub standing: LawStanding,
    /// Whose rules these are: its own or those of its union first, then those that hold there too.
    pub parts: Vec<LawPart>,
    /// What must be written down, occasion by occasion.
    pub fields: Vec<LawField>,
    /// How soon.
    pub time_limits: Vec<LawTimeLimit>,
    /// In what form.
    pub forms: Vec<LawForm>,
    /// How long it must be kept. The longest applies.
    pub retentions: Vec<LawRetention>,
    /// The limits of this answer.
    pub notice: String,
}

/// One of the law files behind a profile.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawPart {
    /// Whose law.
    pub jurisdiction: Jurisdiction,
    /// What it is.
    pub title: String,
    /// How its own rules stand on the day.
    pub standing: LawStanding,
    /// Where they were read.
    pub sources: Vec<Source>,
}

/// A field that must be written down.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawField {
    /// On what occasion.
    pub occasion: Occasion,
    /// The field, as a word for programs.
    pub field: Field,
    /// The same in the words of the trade.
    pub name: String,
    /// How much it is needed, by the strictest rule.
    pub need: FieldNeed,
    /// The rules that name it.
    pub by: Vec<LawBasis>,
}

/// Where a rule stands, and how well it is established.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawBasis {
    /// In whose law it stands. Its source keys are defined there.
    pub jurisdiction: Jurisdiction,
    /// What this rule says of the need, where it speaks of a field.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub need: Option<FieldNeed>,
    /// Dates, sources and confidence.
    #[serde(flatten)]
    pub basis: Basis,
}

/// How soon an entry must be written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawTimeLimit {
    /// On what occasion.
    pub occasion: Occasion,
    /// Within so many days; 0 for at the time.
    #[cfg_attr(feature = "openapi", schema(maximum = 400))]
    pub within_days: u16,
    /// The rule.
    pub by: LawBasis,
}

/// What form records must have.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawForm {
    /// What is required.
    pub text: String,
    /// The rule.
    pub by: LawBasis,
}

/// How long records must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LawRetention {
    /// Which records, and for how long.
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
