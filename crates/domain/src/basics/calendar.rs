//! Civil days, and the counting policy `calendar-1`.
//!
//! A day is a civil date at the apiary. It never comes from UTC midnight. Under `calendar-1` the day of an event is
//! not counted: a period of `N >= 1` days after day `D` ends with `D + N`, and `D + N + 1` is the first free day.
//!
//! Source: Regulation (EEC, Euratom) 1182/71, art. 3(1): the day of the event is not part of the period. The Finnish
//! Medicines Agency's example agrees: six days mean the seventh day after the last dose at the earliest.

use std::fmt;
use std::num::NonZeroU32;
use std::str::FromStr;

use chrono::{DateTime, Datelike, Days, NaiveDate, NaiveTime, SecondsFormat, TimeDelta, Timelike, Utc};
use serde::Serialize;

use super::misread::DateWanted;
pub use super::misread::NotADate;
use super::text::text_in_json;

/// The name of the counting policy, given with every answer so that a later change of policy shows.
pub const POLICY: &str = "calendar-1";

/// How the days of a withdrawal period are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Counting {
    /// Civil days; the day of the event is not counted. It can never free anything too early.
    #[default]
    Calendar,
    /// Full 24 hours from the time of day of the last dose or removal, as guidance in Canada and the United States counts.
    /// Used only on request; gives nothing if the time was not recorded.
    ///
    /// Source: a Canadian stewardship course on withdrawal times: Friday 08:00 plus five days ends on Wednesday 08:00.
    Elapsed,
}

impl Counting {
    /// Both.
    pub const ALL: &[Counting] = &[Counting::Calendar, Counting::Elapsed];

    /// The name of the policy, with its version.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Counting::Calendar => POLICY,
            Counting::Elapsed => "elapsed-24",
        }
    }

    /// The policy with this name.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Counting> {
        Counting::ALL.iter().copied().find(|counting| counting.as_str() == word)
    }
}

impl fmt::Display for Counting {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.as_str())
    }
}

/// A day and a time of day at the apiary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Moment {
    /// The civil day.
    pub on: Day,
    /// The time of day by the clock there.
    pub at: TimeOfDay,
}

impl Moment {
    /// This many times 24 hours later, assuming no clock change; if the clock was put forward meanwhile, an hour later.
    #[must_use]
    pub(crate) fn after_days(self, days: u16) -> Moment {
        Moment { on: self.on.plus(days), ..self }
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.on, self.at)
    }
}

/// A civil day, written `2026-04-11`. Years 1900 to 2199.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "openapi",
    derive(utoipa::ToSchema),
    schema(
        value_type = String,
        format = Date,
        pattern = "^(19|20|21)[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$",
        example = "2026-04-11"
    )
)]
// Counted from 1 for the first day: a question adds and compares days far more often than it writes one.
pub struct Day(NonZeroU32);

const FIRST_DATE: NaiveDate = known(1900, 1, 1);
const LAST_DATE: NaiveDate = known(2199, 12, 31);

impl Day {
    /// The first day this program can name.
    pub const FIRST: Day = Day(NonZeroU32::MIN);
    /// The last day this program can name. Later sums stop here.
    pub const LAST: Day = Day::counted(LAST_DATE);

    /// The day with this year, month (1 to 12) and day of the month, if the calendar has it and it lies in range.
    #[must_use]
    pub fn new(year: i32, month: u32, day: u32) -> Option<Day> {
        NaiveDate::from_ymd_opt(year, month, day).and_then(Day::in_range)
    }

    /// The day of a `NaiveDate`, if in range.
    #[must_use]
    pub fn in_range(date: NaiveDate) -> Option<Day> {
        (FIRST_DATE..=LAST_DATE).contains(&date).then(|| Day::counted(date))
    }

    /// The day of a date in range.
    const fn counted(date: NaiveDate) -> Day {
        Day(NonZeroU32::MIN.saturating_add(date.to_epoch_days().abs_diff(FIRST_DATE.to_epoch_days())))
    }

    fn date(self) -> NaiveDate {
        let since_first = u64::from(self.0.get() - 1);
        FIRST_DATE.checked_add_days(Days::new(since_first)).unwrap_or(FIRST_DATE)
    }

    /// This many days later, at most [`Day::LAST`].
    #[must_use]
    pub fn plus(self, days: u16) -> Day {
        Day(self.0.saturating_add(u32::from(days))).min(Day::LAST)
    }

    /// The next day.
    #[must_use]
    pub fn next(self) -> Day {
        self.plus(1)
    }

    /// The day before, at least [`Day::FIRST`].
    #[must_use]
    pub fn before(self) -> Day {
        self.minus(1)
    }

    /// This many days earlier, at least [`Day::FIRST`].
    #[must_use]
    pub fn minus(self, days: u16) -> Day {
        NonZeroU32::new(self.0.get().saturating_sub(u32::from(days))).map_or(Day::FIRST, Day)
    }

    /// Days from `earlier` to `self`; negative if `self` is before it.
    #[must_use]
    pub fn days_since(self, earlier: Day) -> i64 {
        i64::from(self.0.get()) - i64::from(earlier.0.get())
    }

    /// The year.
    #[must_use]
    pub fn year(self) -> i32 {
        self.date().year()
    }

    /// The first of January of the same year.
    #[must_use]
    pub fn first_of_year(self) -> Day {
        Day::new(self.year(), 1, 1).unwrap_or(Day::FIRST)
    }

    /// The same day this many years later, at most [`Day::LAST`]. 29 February becomes 1 March in a common year: the
    /// later day, so that no record that must be kept goes too early.
    #[must_use]
    pub fn plus_years(self, years: u8) -> Day {
        let date = self.date();
        let year = date.year() + i32::from(years);
        let same = Day::new(year, date.month(), date.day());
        same.or_else(|| Day::new(year, 3, 1)).unwrap_or(Day::LAST)
    }

    /// The last day of its year.
    #[must_use]
    pub(crate) fn end_of_year(self) -> Day {
        Day::new(self.year(), 12, 31).unwrap_or(Day::LAST)
    }

    /// The same day of the previous year; 28 February for 29 February.
    pub(crate) fn a_year_before(self) -> Day {
        let date = self.date();
        let day = |day| Day::new(date.year() - 1, date.month(), day);
        day(date.day()).or_else(|| day(28)).unwrap_or(Day::FIRST)
    }

    /// The month, counted from 0 for January.
    pub(crate) fn month0(self) -> usize {
        usize::try_from(self.date().month0()).unwrap_or_default()
    }

    /// The day of the week, in English.
    #[must_use]
    pub fn weekday(self) -> &'static str {
        match self.date().weekday() {
            chrono::Weekday::Mon => "Monday",
            chrono::Weekday::Tue => "Tuesday",
            chrono::Weekday::Wed => "Wednesday",
            chrono::Weekday::Thu => "Thursday",
            chrono::Weekday::Fri => "Friday",
            chrono::Weekday::Sat => "Saturday",
            chrono::Weekday::Sun => "Sunday",
        }
    }
}

/// A day of every year, written `11-01`: month, then day. The 29th of February is not one.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "openapi",
    derive(utoipa::ToSchema),
    schema(value_type = String, pattern = "^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$", example = "11-01")
)]
pub struct YearDay((u32, u32));

impl YearDay {
    /// The day of the year of a date; 29 February counts as the 28th.
    #[must_use]
    pub fn of(day: Day) -> YearDay {
        let date = day.date();
        let (month, day) = (date.month(), date.day());
        YearDay((month, if month == 2 { day.min(28) } else { day }))
    }

    /// Whether a day lies in the season from `self` to `last` (inclusive), which may run over the new year.
    #[must_use]
    pub(crate) fn to_covers(self, last: YearDay, day: Day) -> bool {
        let day = YearDay::of(day);
        if self <= last { self <= day && day <= last } else { self <= day || day <= last }
    }
}

impl FromStr for YearDay {
    type Err = NotADate;

    fn from_str(text: &str) -> Result<YearDay, NotADate> {
        // The year 2001 has no 29th of February.
        let day: Result<Day, _> = format!("2001-{text}").parse();
        let fail = |_| NotADate { text: text.to_owned(), wanted: DateWanted::YearDay };
        day.map(YearDay::of).map_err(fail)
    }
}

impl fmt::Display for YearDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (month, day) = self.0;
        write!(f, "{month:02}-{day:02}")
    }
}

impl fmt::Debug for YearDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// The last day blocked by a period of `days` after an event on `day`; none for a period of zero days.
///
/// ```
/// use combclear_domain::basics::calendar::{Day, last_blocked_day};
/// let last_dose = Day::new(2024, 2, 28).unwrap();
/// assert_eq!(last_blocked_day(last_dose, 1), Day::new(2024, 2, 29));
/// assert_eq!(last_blocked_day(last_dose, 0), None);
/// ```
#[must_use]
pub fn last_blocked_day(day: Day, days: u16) -> Option<Day> {
    (days > 0).then(|| day.plus(days))
}

/// The first free day after a period of `days` from an event on `day`: `day` itself for zero, else `day + days + 1`.
#[must_use]
pub fn first_free_day(day: Day, days: u16) -> Day {
    last_blocked_day(day, days).map_or(day, Day::next)
}

const fn known(year: i32, month: u32, day: u32) -> NaiveDate {
    match NaiveDate::from_ymd_opt(year, month, day) {
        Some(date) => date,
        None => NaiveDate::MIN,
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // A report has thousands of days, so the ten signs are put together at once.
        let sign = |number: u32| b'0' + u8::try_from(number % 10).unwrap_or_default();
        let date = self.date();
        let (year, month, day) = (date.year().unsigned_abs(), date.month(), date.day());
        let year = [sign(year / 1000), sign(year / 100), sign(year / 10), sign(year)];
        let [y1, y2, y3, y4] = year;
        let text = [y1, y2, y3, y4, b'-', sign(month / 10), sign(month), b'-', sign(day / 10), sign(day)];
        f.write_str(std::str::from_utf8(&text).map_err(|_| fmt::Error)?)
    }
}

impl fmt::Debug for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Day {
    type Err = NotADate;

    fn from_str(text: &str) -> Result<Day, NotADate> {
        let fail = |wanted| NotADate { text: text.to_owned(), wanted };
        let shaped = text.len() == 10
            && text
                .bytes()
                .enumerate()
                .all(|(i, b)| if i == 4 || i == 7 { b == b'-' } else { b.is_ascii_digit() });
        if !shaped {
            return Err(fail(DateWanted::Date));
        }
        let [year, month, day] = numbers(text, [0..4, 5..7, 8..10]);
        let year = i32::try_from(year).unwrap_or(i32::MAX);
        let date =
            NaiveDate::from_ymd_opt(year, month, day).ok_or_else(|| fail(DateWanted::DayOfCalendar))?;
        Day::in_range(date).ok_or_else(|| fail(DateWanted::DayInRange))
    }
}

/// A time of day at the apiary, written `09:30`.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(value_type = String, pattern = "^([01][0-9]|2[0-3]):[0-5][0-9]$", example = "09:30"))]
pub struct TimeOfDay(NaiveTime);

impl fmt::Display for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0.hour(), self.0.minute())
    }
}

impl fmt::Debug for TimeOfDay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for TimeOfDay {
    type Err = NotADate;

    fn from_str(text: &str) -> Result<TimeOfDay, NotADate> {
        let fail = || NotADate { text: text.to_owned(), wanted: DateWanted::TimeOfDay };
        let shaped = text.len() == 5
            && text.bytes().enumerate().all(|(i, b)| if i == 2 { b == b':' } else { b.is_ascii_digit() });
        if !shaped {
            return Err(fail());
        }
        let [hour, minute] = numbers(text, [0..2, 3..5]);
        NaiveTime::from_hms_opt(hour, minute, 0).map(TimeOfDay).ok_or_else(fail)
    }
}

/// An instant in UTC, written `2026-04-11T08:15:30.123Z`: when an entry was recorded, never when something happened.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "openapi",
    derive(utoipa::ToSchema),
    schema(value_type = String, format = DateTime, example = "2026-04-11T08:15:30.123Z")
)]
pub struct Instant(DateTime<Utc>);

impl Instant {
    /// The instant of a `DateTime`, cut to whole milliseconds.
    #[must_use]
    pub fn new(time: DateTime<Utc>) -> Instant {
        Instant(DateTime::from_timestamp_millis(time.timestamp_millis()).unwrap_or(time))
    }

    /// The latest civil date that is "today" anywhere on Earth at this instant (UTC+14).
    ///
    /// An entry dated later than this lies in the future, wherever the apiary is.
    #[must_use]
    pub fn latest_civil_date(self) -> Day {
        let ahead = self.0.checked_add_signed(TimeDelta::hours(14)).unwrap_or(self.0);
        Day::in_range(ahead.date_naive()).unwrap_or(Day::LAST)
    }

    /// Whether the instant read after this one is earlier, by more than a machine corrects its clock unasked (one minute).
    pub(crate) fn is_set_back_by(self, next: Instant) -> bool {
        self.0.signed_duration_since(next.0) > TimeDelta::minutes(1)
    }

    /// The earliest civil date that is "today" anywhere on Earth at this instant (UTC-12).
    ///
    /// An entry dated earlier than this was recorded late, wherever the apiary is.
    #[must_use]
    pub(crate) fn earliest_civil_date(self) -> Day {
        let behind = self.0.checked_sub_signed(TimeDelta::hours(12)).unwrap_or(self.0);
        Day::in_range(behind.date_naive()).unwrap_or(Day::FIRST)
    }
}

impl fmt::Display for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.to_rfc3339_opts(SecondsFormat::Millis, true))
    }
}

impl fmt::Debug for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Instant {
    type Err = NotADate;

    /// One spelling only: the hash chain covers the text.
    fn from_str(text: &str) -> Result<Instant, NotADate> {
        let shaped = text.len() == 24
            && text.bytes().enumerate().all(|(i, b)| match i {
                4 | 7 => b == b'-',
                10 => b == b'T',
                13 | 16 => b == b':',
                19 => b == b'.',
                23 => b == b'Z',
                _ => b.is_ascii_digit(),
            });
        let read = || {
            let [year, month, day] = numbers(text, [0..4, 5..7, 8..10]);
            let [hour, minute, second, milli] = numbers(text, [11..13, 14..16, 17..19, 20..23]);
            let date = NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, day)?;
            Some(Instant(date.and_hms_milli_opt(hour, minute, second, milli)?.and_utc()))
        };
        shaped
            .then(read)
            .flatten()
            .ok_or_else(|| NotADate { text: text.to_owned(), wanted: DateWanted::Instant })
    }
}

text_in_json!(Day, YearDay, TimeOfDay, Instant);

/// The numbers at these places of a text that has digits there.
fn numbers<const N: usize>(text: &str, places: [std::ops::Range<usize>; N]) -> [u32; N] {
    places.map(|place| {
        let digits = text.as_bytes().get(place).unwrap_or_default();
        digits.iter().fold(0, |number: u32, digit| number * 10 + u32::from(digit.wrapping_sub(b'0')))
    })
}
