//! A day of the calendar, as a file to keep is dated.

use std::str::FromStr;

/// A day, from the year 1 to 9999.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    /// A day of the Gregorian calendar, if there is such a one.
    #[must_use]
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let is_there = (1..=9999).contains(&year) && (1..=days(year, month)).contains(&day);
        is_there.then_some(Self { year, month, day })
    }

    /// Its year, month and day of the month, counted from one.
    #[must_use]
    pub const fn parts(self) -> (u16, u8, u8) {
        (self.year, self.month, self.day)
    }
}

/// How many days a month has, none where there is no such month.
const fn days(year: u16, month: u8) -> u8 {
    let is_leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        2 => 28 + is_leap as u8,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    }
}

/// As ISO 8601 writes it: `2026-11-27`.
impl FromStr for Day {
    type Err = NoDay;

    fn from_str(text: &str) -> Result<Self, NoDay> {
        let parts: Vec<_> = text.split('-').collect();
        let is_written = parts.iter().map(|part| part.len()).eq([4, 2, 2])
            && parts.iter().all(|part| part.bytes().all(|byte| byte.is_ascii_digit()));
        let number = |at: usize| parts[at].parse().unwrap_or(0);
        let day =
            is_written.then(|| Self::new(number(0), u8::try_from(number(1)).ok()?, u8::try_from(number(2)).ok()?));
        day.flatten().ok_or(NoDay)
    }
}

/// A text is not a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoDay;

impl std::error::Error for NoDay {}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 8601-1:2019, 5.2.2.1 writes a date with hyphens; leap years are those of 4.1 there.
    #[test]
    fn days_of_the_calendar_are_read_and_others_refused() {
        let read = |text: &str| text.parse::<Day>().map(Day::parts);
        assert_eq!(read("2026-11-27"), Ok((2026, 11, 27)));
        assert_eq!(read("2000-02-29"), Ok((2000, 2, 29)));
        let none = ["", "today", "2026-11", "2026-11-31", "2026-13-01", "2026-00-10", "2026-01-00", "1900-02-29"];
        let slips = ["0000-01-01", "26-11-27", "2026/11/27", "+026-11-27", "2026-11-27-", "2026-11-2７"];
        for text in none.into_iter().chain(slips) {
            assert_eq!(read(text), Err(NoDay), "{text}");
        }
    }
}
