//! The rules that apply in a jurisdiction on a day: those of its own file and of the files it includes.

use serde::Serialize;

use super::LawFile;
use super::rule::{Dated, FieldRule, FormRule, RetentionRule, TimeLimitRule};
use super::words::{Field, FieldNeed, Occasion, RecordSort};
use crate::basics::calendar::Day;
use crate::basics::words::Jurisdiction;

/// Whether rules are in force on a day. Every list of rules is shown with it, so that an empty list is not mistaken for a
/// law without requirements.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = LawStanding))]
pub enum LawStanding {
    /// At least one rule is in force.
    InForce,
    /// None is in force yet.
    NotYet {
        /// The first day on which one is in force.
        from: Day,
    },
    /// None is in force any more.
    Over {
        /// The last day on which one was in force.
        until: Day,
    },
}

impl LawStanding {
    /// The standing of the rules of these files on a day.
    fn of(files: &[&LawFile], on: Day) -> LawStanding {
        let bases = || files.iter().flat_map(|file| file.bases());
        if bases().any(|basis| basis.is_in_force(on)) {
            return LawStanding::InForce;
        }
        match bases().map(|basis| basis.from).filter(|from| *from > on).min() {
            Some(from) => LawStanding::NotYet { from },
            // A loaded file has at least one rule. If none is in force and none begins later, all are over.
            None => LawStanding::Over { until: bases().filter_map(|basis| basis.until).max().unwrap_or(on) },
        }
    }
}

/// One of the files whose rules make up a profile.
#[derive(Debug, Clone, Copy)]
pub struct Part<'a> {
    /// The file.
    pub file: &'a LawFile,
    /// The standing of its own rules on the day.
    pub standing: LawStanding,
}

/// A rule, and the file it is in.
#[derive(Debug)]
pub struct Ruled<'a, R> {
    /// The rule.
    pub rule: &'a R,
    /// The file, which defines the source keys of the rule.
    pub file: &'a LawFile,
}

// By hand: the derive would require `R: Clone`, but only a reference is cloned.
impl<R> Clone for Ruled<'_, R> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<R> Copy for Ruled<'_, R> {}

/// A field that must be recorded, with the strictest need of the rules that name it.
#[derive(Debug, Clone)]
pub struct FieldNeeded<'a> {
    /// The field.
    pub field: Field,
    /// The strictest need.
    pub need: FieldNeed,
    /// Every rule that names it, in pack order.
    pub by: Vec<Ruled<'a, FieldRule>>,
}

/// The rules that apply in a jurisdiction on a day.
#[derive(Debug, Clone)]
pub struct Profile<'a> {
    asked: Jurisdiction,
    on: Day,
    parts: Vec<Part<'a>>,
    standing: LawStanding,
}

impl<'a> Profile<'a> {
    /// The rules of these files on a day; the first is the jurisdiction's own, or that of its union.
    pub(super) fn new(asked: Jurisdiction, on: Day, files: Vec<&'a LawFile>) -> Profile<'a> {
        let standing = LawStanding::of(&files, on);
        let part = |file: &'a LawFile| Part { file, standing: LawStanding::of(&[file], on) };
        Profile { asked, on, parts: files.into_iter().map(part).collect(), standing }
    }

    /// The jurisdiction asked about. The first of the [`parts`](Profile::parts) belongs to another if only rules of its
    /// union are known.
    #[must_use]
    pub fn asked(&self) -> &Jurisdiction {
        &self.asked
    }

    /// The day.
    #[must_use]
    pub fn on(&self) -> Day {
        self.on
    }

    /// Whether any rule is in force on the day.
    #[must_use]
    pub fn standing(&self) -> LawStanding {
        self.standing
    }

    /// Its files, each with its standing on the day: its own first, then those it includes.
    #[must_use]
    pub fn parts(&self) -> &[Part<'a>] {
        &self.parts
    }

    /// Whether only rules of the union are known, because the jurisdiction asked about has no file of its own. Its own law
    /// may require more (Regulation (EU) 2019/6, Article 108(4)), so such a profile is a minimum, never the whole law.
    #[must_use]
    pub fn is_of_the_union_only(&self) -> bool {
        self.parts.first().is_none_or(|own| own.file.jurisdiction != self.asked)
    }

    /// The fields required on an occasion, in pack order. If several rules name one field, the strictest need wins.
    #[must_use]
    pub fn fields(&self, occasion: Occasion) -> Vec<FieldNeeded<'a>> {
        let mut fields: Vec<FieldNeeded<'a>> = Vec::new();
        for ruled in self.rules(|file| &file.fields).filter(|ruled| ruled.rule.occasion == occasion) {
            let FieldRule { field, need, .. } = *ruled.rule;
            match fields.iter_mut().find(|known| known.field == field) {
                Some(known) => {
                    known.need = known.need.min(need);
                    known.by.push(ruled);
                }
                None => fields.push(FieldNeeded { field, need, by: vec![ruled] }),
            }
        }
        fields
    }

    /// The retention rules for a sort of record, in pack order. All apply: the longest wins.
    #[must_use]
    pub fn retentions(&self, record: RecordSort) -> Vec<Ruled<'a, RetentionRule>> {
        self.all_retentions().filter(|ruled| ruled.rule.records.contains(&record)).collect()
    }

    /// Every retention rule, in pack order.
    pub fn all_retentions(&self) -> impl Iterator<Item = Ruled<'a, RetentionRule>> {
        self.rules(|file| &file.retentions)
    }

    /// How soon an entry must be made on an occasion: the shortest limit of any rule; `None` if there is none.
    #[must_use]
    pub fn time_limit(&self, occasion: Occasion) -> Option<Ruled<'a, TimeLimitRule>> {
        self.rules(|file| &file.time_limits)
            .filter(|ruled| ruled.rule.occasion == occasion)
            .min_by_key(|ruled| ruled.rule.within_days)
    }

    /// The required forms, in pack order.
    pub fn forms(&self) -> impl Iterator<Item = Ruled<'a, FormRule>> {
        self.rules(|file| &file.forms)
    }

    fn rules<R: Dated + 'a>(
        &self,
        of: impl Fn(&'a LawFile) -> &'a [R],
    ) -> impl Iterator<Item = Ruled<'a, R>> {
        let on = self.on;
        let rules = self.parts.iter().flat_map(move |part| {
            let file = part.file;
            of(file).iter().map(move |rule| Ruled { rule, file })
        });
        rules.filter(move |ruled| ruled.rule.basis().is_in_force(on))
    }
}
