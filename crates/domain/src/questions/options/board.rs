//! The question prepared for a holding: the choices, and the apiaries with their conditions.

use std::cell::RefCell;
use std::collections::{BTreeMap, HashMap};
use std::rc::Rc;

use super::choice::Choice;
use super::colony::Colony;
use super::conditions;
use super::date_range::{Ask, Span};
use super::place::Place;
use super::state::{Condition, StartDays, Usability, together};
use crate::basics::words::{ApiaryName, ColonyName, Jurisdiction};
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;
use crate::rules::leaflet::rule::BroodState;

/// The question prepared for a holding. Conditions that depend only on the apiary are worked out once for all its
/// colonies.
pub struct Board<'h> {
    pub(super) holding: &'h Holding,
    pub(super) leaflets: &'h Leaflets,
    pub(super) ask: &'h Ask,
    pub(super) jurisdiction: Option<&'h Jurisdiction>,
    pub(super) choices: Vec<Choice>,
    places: BTreeMap<ApiaryName, Site<'h>>,
}

/// An apiary, with its conditions for each choice.
struct Site<'h> {
    place: Place<'h>,
    conditions: Vec<Vec<Condition>>,
    /// The conditions of its flows for each choice, by the brood of a colony on each start day: most colonies are alike.
    flows: RefCell<HashMap<Vec<Option<BroodState>>, EachChoice>>,
}

/// The conditions for each choice, shared by colonies that are alike.
type EachChoice = Rc<Vec<Vec<Condition>>>;

impl Site<'_> {
    fn of_flows(&self, choices: &[Choice], colony: &Colony<'_>, span: Span) -> EachChoice {
        let brood: Vec<Option<BroodState>> = span.days().map(|day| colony.brood_state(day)).collect();
        let known = self.flows.borrow().get(&brood).map(Rc::clone);
        known.unwrap_or_else(|| {
            let of = |choice| conditions::of_flows(choice, &brood, &self.place, span);
            let worked_out = Rc::new(choices.iter().map(of).collect::<Vec<_>>());
            self.flows.borrow_mut().insert(brood, Rc::clone(&worked_out));
            worked_out
        })
    }
}

/// One choice, judged for one colony.
pub struct Judged<'b> {
    pub(super) choice: &'b Choice,
    site: &'b [Condition],
    own: Vec<Condition>,
    /// The answer for every start day, in order.
    pub days: Vec<StartDays>,
}

impl Judged<'_> {
    /// Every condition: those of the apiary, then those of the colony.
    pub fn conditions(&self) -> impl Iterator<Item = &Condition> + Clone {
        self.site.iter().chain(&self.own)
    }

    /// The best answer of any start day.
    #[must_use]
    pub fn answer(&self) -> Usability {
        Usability::on_one_of(self.days.iter().map(|days| days.answer))
    }
}

impl<'h> Board<'h> {
    /// Prepares the question for these apiaries.
    ///
    /// The leaflets are those of the holding's jurisdiction at the time. Without a jurisdiction there are no choices.
    #[must_use]
    pub fn of<'a>(
        holding: &'h Holding,
        leaflets: &'h Leaflets,
        ask: &'h Ask,
        apiaries: impl IntoIterator<Item = &'a ApiaryName>,
    ) -> Board<'h> {
        Board::of_some(holding, leaflets, ask, apiaries, |_| true)
    }

    /// The same, with only the choices that pass the filter.
    pub(super) fn of_some<'a>(
        holding: &'h Holding,
        leaflets: &'h Leaflets,
        ask: &'h Ask,
        apiaries: impl IntoIterator<Item = &'a ApiaryName>,
        keep: impl Fn(&Choice) -> bool,
    ) -> Board<'h> {
        let jurisdiction = holding.jurisdiction(ask.stands_on());
        let mut choices: Vec<Choice> = jurisdiction
            .map(|jurisdiction| Choice::all(holding, leaflets, jurisdiction, ask))
            .unwrap_or_default();
        choices.retain(keep);
        let places = apiaries.into_iter().map(|apiary| {
            let place = Place::of(holding, apiary, ask);
            let conditions =
                choices.iter().map(|choice| conditions::of_place(choice, &place, ask.span)).collect();
            (apiary.clone(), Site { place, conditions, flows: RefCell::default() })
        });
        let places = places.collect();
        Board { holding, leaflets, ask, jurisdiction, choices, places }
    }

    /// Prepares the question for the apiary of one colony.
    #[must_use]
    pub fn of_colony(
        holding: &'h Holding,
        leaflets: &'h Leaflets,
        ask: &'h Ask,
        colony: &ColonyName,
    ) -> Board<'h> {
        Board::of(holding, leaflets, ask, holding.apiary_of(colony, ask.stands_on()))
    }

    /// Judges every choice for a colony. Its apiary is that of the first day.
    #[must_use]
    pub fn judge(&self, colony: &ColonyName) -> Vec<Judged<'_>> {
        self.judge_colony(&self.colony(colony))
    }

    /// The same question for a later span.
    pub(super) fn later(&self, span: Span) -> Ask {
        Ask { span, as_of: self.ask.as_of, what_if: self.ask.what_if.clone() }
    }

    pub(super) fn colony(&self, colony: &ColonyName) -> Colony<'h> {
        Colony::of(self.holding, self.leaflets, colony, self.ask)
    }

    pub(super) fn place(&self, apiary: Option<&ApiaryName>) -> Option<&Place<'h>> {
        apiary.and_then(|apiary| self.places.get(apiary)).map(|site| &site.place)
    }

    pub(super) fn judge_colony(&self, colony: &Colony<'_>) -> Vec<Judged<'_>> {
        let site = colony.apiary.as_ref().and_then(|apiary| self.places.get(apiary));
        let span = self.ask.span;
        let of_flows = site.map(|site| (&site.place, site.of_flows(&self.choices, colony, span)));
        let judged = self.choices.iter().enumerate().map(|(index, choice)| {
            let of_site = site.and_then(|site| site.conditions.get(index)).map_or(&[][..], Vec::as_slice);
            let place = of_flows.as_ref().and_then(|(place, of)| Some((*place, of.get(index)?.as_slice())));
            let own = conditions::of_colony(choice, colony, place, span);
            let days = together(of_site.iter().chain(&own), span);
            Judged { choice, site: of_site, own, days }
        });
        judged.collect()
    }
}
