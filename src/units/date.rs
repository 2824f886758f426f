//! Civil dates and clock times, read strictly: `2026-03-29`, `19:00`.

use std::fmt;

use time::{Month, Time};

/// A day of the calendar. The program knows no time zone and never asks for today.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date(time::Date);

/// A time of day to the minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ClockTime(Time);

/// Why a text is no date or no time of day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DateError {
    /// Another way of writing; `write` is what it probably means, or empty.
    Form {
        /// The same date as it is to be written.
        write: String,
    },
    /// The calendar or the clock has no such day or time: `2026-02-30`, `25:00`.
    NoSuch,
}

impl Date {
    /// Reads exactly `YYYY-MM-DD`.
    pub fn parse(text: &str) -> Result<Self, DateError> {
        match numbers(text, '-', &[4, 2, 2]).as_deref() {
            Some(&[year, month, day]) => Self::of(year, month, day).ok_or(DateError::NoSuch),
            _ => Err(DateError::Form {
                write: meant(text).map_or_else(String::new, |date| date.to_string()),
            }),
        }
    }

    /// The day of the calendar, if there is one. Years run from 1 to 9999.
    pub fn of(year: u16, month: u16, day: u16) -> Option<Self> {
        let month = Month::try_from(u8::try_from(month).ok()?).ok()?;
        let day = u8::try_from(day).ok()?;
        if year == 0 {
            return None;
        }
        time::Date::from_calendar_date(i32::from(year), month, day)
            .ok()
            .map(Self)
    }

    /// Whole days from `earlier` to this day; negative if it is later.
    pub fn days_after(self, earlier: Self) -> i64 {
        (self.0 - earlier.0).whole_days()
    }

    /// The day `days` later, if the calendar goes that far.
    pub fn plus_days(self, days: i64) -> Option<Self> {
        self.0.checked_add(time::Duration::days(days)).map(Self)
    }

    /// Year, month and day.
    pub fn parts(self) -> (i32, u8, u8) {
        (self.0.year(), u8::from(self.0.month()), self.0.day())
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.parts();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

impl ClockTime {
    /// Reads exactly `HH:MM`, 00:00 to 23:59.
    pub fn parse(text: &str) -> Result<Self, DateError> {
        let Some(&[hour, minute]) = numbers(text, ':', &[2, 2]).as_deref() else {
            return Err(DateError::Form {
                write: meant_time(text).map_or_else(String::new, |time| time.to_string()),
            });
        };
        Self::of(hour, minute).ok_or(DateError::NoSuch)
    }

    fn of(hour: u16, minute: u16) -> Option<Self> {
        let time = Time::from_hms(u8::try_from(hour).ok()?, u8::try_from(minute).ok()?, 0);
        time.ok().map(Self)
    }

    /// Minutes since midnight, 0 to 1439.
    pub fn minutes(self) -> u16 {
        u16::from(self.0.hour()) * 60 + u16::from(self.0.minute())
    }
}

impl fmt::Display for ClockTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0.hour(), self.0.minute())
    }
}

/// The numbers between separators, if each has exactly the wanted number of digits.
fn numbers(text: &str, separator: char, widths: &[usize]) -> Option<Vec<u16>> {
    let parts: Vec<&str> = text.split(separator).collect();
    let fits = parts.len() == widths.len()
        && parts.iter().zip(widths).all(|(part, &width)| {
            part.len() == width && part.bytes().all(|byte| byte.is_ascii_digit())
        });
    if !fits {
        return None;
    }
    parts.iter().map(|part| part.parse().ok()).collect()
}

/// What `29.03.2026`, `2026/3/29` or `20260329` probably mean. `03/04/2026` may be read in two
/// ways, so nothing is offered for it.
fn meant(text: &str) -> Option<Date> {
    let day_part = text.split(['T', ' ']).next().unwrap_or_default();
    let parts: Vec<&str> = day_part.split(['.', '/', '-']).collect();
    let number = |part: &str| -> Option<u16> {
        let digits = part.len() <= 4 && part.bytes().all(|byte| byte.is_ascii_digit());
        part.parse().ok().filter(|_| digits)
    };
    match parts.as_slice() {
        [whole] if whole.len() == 8 => Date::of(
            number(whole.get(..4)?)?,
            number(whole.get(4..6)?)?,
            number(whole.get(6..)?)?,
        ),
        [year, month, day] if year.len() == 4 => {
            Date::of(number(year)?, number(month)?, number(day)?)
        }
        [day, month, year] if year.len() == 4 && text.contains('.') => {
            Date::of(number(year)?, number(month)?, number(day)?)
        }
        _ => None,
    }
}

/// What `7:30`, `7.30` or `0730` probably mean.
fn meant_time(text: &str) -> Option<ClockTime> {
    let text = text.trim_end_matches(" h").trim_end_matches('h');
    let (hour, minute) = match text.split_once([':', '.']) {
        Some(parts) => parts,
        None if text.len() == 4 && text.is_ascii() => text.split_at(2),
        None => return None,
    };
    let digits = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(hour) || minute.len() != 2 || !digits(minute) {
        return None;
    }
    ClockTime::of(hour.parse().ok()?, minute.parse().ok()?)
}
