//! The season of a colony, or of the colonies of an apiary, as one picture (SVG 1.1): black and white, as wide as a phone, with a title
//! and a description for whoever does not see it.
//!
//! The days run from left to right. Nothing is told by colour: a barred day is hatched, one that is not known is dotted, and what is
//! in is a filled bar. The same timelines give the same bytes.
#![deny(missing_docs)]

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::timeline::{Band, Timeline};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_wording::visible::visible;
use combclear_wording::{Words, timeline};
use maud::{Markup, html};

/// The media type of a picture.
pub const MEDIA_TYPE: &str = "image/svg+xml";

/// The width of the picture in its own units, of which text is 12 high: read without zooming on a phone of 360 pixels.
const WIDTH: f64 = 360.0;
const MARGIN: f64 = 6.0;
const LINE: f64 = 16.0;
const BAR: f64 = 14.0;
const GAP: f64 = 6.0;

/// The picture of one colony.
#[must_use]
pub fn of_colony(words: &Words, season: &Timeline) -> String {
    let [answers, supers, flow, key] = timeline::labels(words);
    let scale = Scale::of(season);
    let mut rows = Rows::below_axis();
    let drawn = html! {
        (rows.labelled(answers, |top| band_of_answers(&scale, season, top)))
        @for course in &season.courses {
            (rows.labelled(&timeline::course(words, course), |top| band_of_course(&scale, season, course, top)))
        }
        @if !season.supers.is_empty() {
            (rows.labelled(supers, |top| html! {
                @for span in &season.supers { (scale.bar(span.from, span.off.unwrap_or(season.on), top, "supers")) }
            }))
        }
        @if !season.flows.is_empty() {
            (rows.labelled(flow, |top| html! {
                @for (from, last) in &season.flows { (scale.bar(*from, *last, top, "flow")) }
            }))
        }
    };
    let title = timeline::title(words, season);
    let described = timeline::described(words, season);
    framed(words, &title, &described, key, &scale, rows.bottom, &drawn)
}

/// The picture of these colonies of an apiary around a day, in their order. Nothing if there are none.
#[must_use]
pub fn around(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    apiary: &ApiaryName,
    colonies: &[ColonyName],
    on: Day,
) -> Option<String> {
    let season = |colony| Timeline::of(holding, leaflets, colony, on);
    let seasons: Vec<Timeline> = colonies.iter().map(season).collect();
    of_apiary(words, apiary, on, &seasons)
}

/// The picture of the colonies of an apiary, in their order: for each the answers, and what is in as a line below them. Nothing if
/// there are none.
#[must_use]
pub fn of_apiary(words: &Words, apiary: &ApiaryName, on: Day, seasons: &[Timeline]) -> Option<String> {
    let first = seasons.first()?;
    let [.., key] = timeline::labels(words);
    let scale = Scale::of(first);
    let mut rows = Rows::below_axis();
    let drawn = html! {
        @for season in seasons {
            (rows.labelled(season.colony.as_str(), |top| html! {
                (band_of_answers(&scale, season, top))
                @for course in season.courses.iter().filter(|course| !course.leaves_nothing) {
                    (scale.line(course.placed, end_shown(course, season), top + BAR))
                }
            }))
        }
    };
    let title = timeline::title_of_apiary(words, apiary, on);
    let described =
        seasons.iter().map(|season| format!("{}: {}", season.colony, timeline::described(words, season)));
    let described = described.collect::<Vec<_>>().join(" ");
    Some(framed(words, &title, &described, key, &scale, rows.bottom, &drawn))
}

fn framed(
    words: &Words,
    title: &str,
    described: &str,
    key: &str,
    scale: &Scale,
    bottom: f64,
    drawn: &Markup,
) -> String {
    let key = in_lines(key, SMALL_LETTERS);
    let below = bottom + LINE * f64::from(u16::try_from(key.len()).unwrap_or(u16::MAX));
    let height = below + MARGIN;
    let picture = html! {
        svg xmlns="http://www.w3.org/2000/svg" lang=(words.language()) viewBox=(format!("0 0 {WIDTH} {height}")) width="100%"
            role="img" aria-labelledby="title description" {
            title id="title" { (visible(title)) }
            desc id="description" { (visible(described)) }
            defs {
                pattern id="barred" width="5" height="5" patternUnits="userSpaceOnUse" {
                    path d="M0 5L5 0" stroke="#000" stroke-width="1.4" {}
                }
                pattern id="open" width="6" height="6" patternUnits="userSpaceOnUse" {
                    circle cx="3" cy="3" r="1.1" fill="#000" {}
                }
            }
            rect width=(WIDTH) height=(height) fill="#fff" {}
            g font-family="sans-serif" font-size="12" fill="#000" {
                (scale.months(bottom))
                (drawn)
                (scale.today(bottom))
                @for (line, y) in key.iter().zip(downwards(bottom + LINE - 4.0)) {
                    text x=(MARGIN) y=(y) font-size="10" { (visible(line)) }
                }
            }
        }
    };
    picture.into_string()
}

/// Letters that fit into a line of the usual text, and of the small one.
const LETTERS: usize = 50;
const SMALL_LETTERS: usize = 60;
/// How wide a letter of the small text is, about.
const SMALL_LETTER: f64 = 6.5;

/// Words in lines of at most so many letters. A word that is longer has a line of its own.
fn in_lines(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Where lines stand, one below the other.
fn downwards(first: f64) -> impl Iterator<Item = f64> {
    (0_u16..).map(move |line| first + LINE * f64::from(line))
}

/// Rows from top to bottom: lines of text, and a bar below them.
struct Rows {
    bottom: f64,
}

impl Rows {
    /// The axis of the months takes one line, and the day asked about another.
    fn below_axis() -> Rows {
        Rows { bottom: MARGIN + 2.0 * LINE }
    }

    fn labelled(&mut self, label: &str, bar: impl FnOnce(f64) -> Markup) -> Markup {
        let lines = in_lines(label, LETTERS);
        let top = self.bottom + LINE * f64::from(u16::try_from(lines.len()).unwrap_or(u16::MAX));
        let first = self.bottom + LINE - 4.0;
        self.bottom = top + BAR + GAP;
        html! {
            @for (line, y) in lines.iter().zip(downwards(first)) { text x=(MARGIN) y=(y) { (visible(line)) } }
            (bar(top))
        }
    }
}

/// Where a day stands from left to right.
struct Scale {
    from: Day,
    to: Day,
    on: Day,
}

impl Scale {
    fn of(season: &Timeline) -> Scale {
        Scale { from: season.from, to: season.to, on: season.on }
    }

    /// The left edge of a day; the edge of the picture for one outside it.
    fn left(&self, day: Day) -> f64 {
        let shown = day.clamp(self.from, self.to.next());
        let days = |until: Day| f64::from(i32::try_from(until.days_since(self.from)).unwrap_or(i32::MAX));
        let (days, all) = (days(shown), days(self.to.next()).max(1.0));
        let place = MARGIN + (WIDTH - 2.0 * MARGIN) * days / all;
        (place * 10.0).round() / 10.0
    }

    /// A bar over days, both included.
    fn bar(&self, from: Day, last: Day, top: f64, class: &str) -> Markup {
        let (left, right) = (self.left(from), self.left(last.next()));
        let (fill, dash) = match class {
            "barred" => ("url(#barred)", "0"),
            "open" => ("url(#open)", "0"),
            "inside" => ("#000", "0"),
            "flow" => ("none", "2 3"),
            _ => ("none", "0"),
        };
        html! {
            rect class=(class) x=(left) y=(top) width=(round(right - left)) height=(BAR) fill=(fill) stroke="#000"
                stroke-dasharray=(dash) {}
        }
    }

    /// A line below a bar.
    fn line(&self, from: Day, last: Day, y: f64) -> Markup {
        html! { path d=(format!("M{} {y}H{}", self.left(from), self.left(last.next()))) stroke="#000" stroke-width="3" {} }
    }

    /// The first of each month with its number; the first of them and each January with the year.
    fn months(&self, bottom: f64) -> Markup {
        let mut firsts: Vec<(f64, Option<String>)> = Vec::new();
        let mut free_from = 0.0;
        let mut day = self.from;
        while day <= self.to {
            if day.to_string().ends_with("-01") {
                let (x, name) = (self.left(day), named(day, firsts.is_empty()));
                // Beside a year there is no room for the month after it.
                let fits = x >= free_from;
                if fits {
                    free_from = x + SMALL_LETTER * f64::from(u8::try_from(name.len()).unwrap_or(u8::MAX));
                }
                firsts.push((x, fits.then_some(name)));
            }
            day = day.next();
        }
        html! {
            @for (x, name) in &firsts {
                path d=(format!("M{x} {}V{bottom}", MARGIN + LINE)) stroke="#bbb" {}
                @if let Some(name) = name { text x=(round(x + 2.0)) y=(MARGIN + 10.0) font-size="10" { (name) } }
            }
        }
    }

    fn today(&self, bottom: f64) -> Markup {
        let x = self.left(self.on);
        let anchor = if x < WIDTH / 2.0 { "start" } else { "end" };
        html! {
            path d=(format!("M{x} {}V{bottom}", MARGIN + LINE)) stroke="#000" stroke-width="2" stroke-dasharray="4 2" {}
            text x=(x) y=(MARGIN + LINE + 10.0) text-anchor=(anchor) font-weight="bold" font-size="11" { (self.on.to_string()) }
        }
    }
}

/// A month by its number, with the year if asked for or if it is January.
fn named(first: Day, with_year: bool) -> String {
    let text = first.to_string();
    let (year, month) = (text.get(..4).unwrap_or_default(), text.get(5..7).unwrap_or_default());
    if with_year || month == "01" { format!("{year}-{month}") } else { month.to_owned() }
}

fn band_of_answers(scale: &Scale, season: &Timeline, top: f64) -> Markup {
    html! {
        @for (from, last, answer) in &season.answers {
            (scale.bar(*from, *last, top, match answer {
                Verdict::Yes => "free",
                Verdict::No => "barred",
                Verdict::Unknown => "open",
            }))
        }
    }
}

fn band_of_course(scale: &Scale, season: &Timeline, course: &Band, top: f64) -> Markup {
    let middle = top + BAR / 2.0;
    html! {
        @if !course.leaves_nothing {
            (scale.bar(course.placed, end_shown(course, season), top + 3.0, "inside"))
        }
        @for dose in &course.doses {
            circle cx=(round(f64::midpoint(scale.left(*dose), scale.left(dose.next())))) cy=(middle + 2.0) r="4" fill="#fff" stroke="#000"
                stroke-width="1.5" {}
        }
        @if let Some(day) = course.may_come_out { (mark(scale, day, middle, 7.0)) }
        @if let Some(day) = course.must_be_out { (mark(scale, day.next(), middle, -7.0)) }
    }
}

/// A triangle at the left edge of a day. One that points right opens, one that points left closes.
fn mark(scale: &Scale, day: Day, middle: f64, long: f64) -> Markup {
    if day < scale.from || day > scale.to.next() {
        return html! {};
    }
    let (x, y) = (scale.left(day), middle + 2.0);
    html! {
        path d=(format!("M{x} {}L{} {y}L{x} {}Z", y - 6.0, round(x + long), y + 6.0)) fill="#fff" stroke="#000" stroke-width="1.5" {}
    }
}

/// The last day on which a course is drawn as in. What may be in still, is.
fn end_shown(course: &Band, season: &Timeline) -> Day {
    match course.out {
        Some(out) => out,
        None if course.inside => season.on,
        None => course.doses.last().copied().unwrap_or(course.placed),
    }
}

fn round(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}
