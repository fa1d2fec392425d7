//! What a question asks for, where its parts depend on each other.

use combclear_domain::Day;
use combclear_domain::basics::words::{Access, Ground, Power};
use combclear_domain::questions::options::{Ask, Span, WhatIf};

use super::Unanswered;
use crate::refusals::Refused;
use crate::terminal::failures::site_until_too_early;
use crate::{Label, Words};

/// Days asked about by default.
const DAYS_IF_NOT_SAID: u16 = 60;

/// The days from one to another (inclusive); 60 days if the last is not said.
///
/// # Errors
/// The last is before the first, or there are too many between them.
pub fn span(words: &Words, from: Day, to: Option<Day>) -> Result<Span, Unanswered> {
    Span::new(from, to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1))).map_err(|fault| {
        let Refused { message, help } = Refused::of_span(words, fault);
        Unanswered::bad_parameter("to", message, help)
    })
}

/// The start days of a question about options, and what is assumed of the site.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct OptionsAsked {
    /// The first start day; today if it is not said.
    pub from: Option<Day>,
    /// The last start day.
    pub to: Option<Day>,
    /// Events after this day are ignored; the first start day if it is not said.
    pub as_of: Option<Day>,
    /// Electric power at the apiary.
    pub power: Option<Power>,
    /// How the apiary can be reached.
    pub access: Option<Access>,
    /// The ground at the stands.
    pub ground: Option<Ground>,
    /// The last day of the assumptions.
    pub site_until: Option<Day>,
}

impl OptionsAsked {
    /// The question.
    ///
    /// # Errors
    /// The days do not fit together.
    pub fn read(self, words: &Words, today: Day) -> Result<Ask, Unanswered> {
        let span = span(words, self.from.unwrap_or(today), self.to)?;
        let from = span.from();
        let what_if =
            WhatIf { power: self.power, access: self.access, ground: self.ground, until: self.site_until };
        check_until(words, &what_if, from)?;
        Ok(Ask { span, as_of: self.as_of.unwrap_or(from), what_if })
    }
}

fn check_until(words: &Words, what_if: &WhatIf, from: Day) -> Result<(), Unanswered> {
    let (detail, help) = match what_if.until {
        Some(_) if what_if.is_empty() => {
            (words.label(Label::HttpSiteUntilAlone).to_owned(), Label::HttpSiteUntilAloneHelp)
        }
        Some(until) if until < from => (site_until_too_early(words, until, from), Label::AskedGiveALaterDay),
        _ => return Ok(()),
    };
    Err(Unanswered::bad_parameter("site_until", detail, words.label(help)))
}
