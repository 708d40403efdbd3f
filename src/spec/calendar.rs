//! Counting days.

use std::time::{SystemTime, UNIX_EPOCH};

use super::Date;

impl Date {
    /// Days from 1970-01-01, negative before it, in the Gregorian calendar.
    #[must_use]
    pub fn day_number(self) -> i64 {
        // Years counted from March put the leap day at their end.
        let (year, month) = (i64::from(self.year), i64::from(self.month));
        let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
        let leap_days = year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
        // 153 days are five months from March or from August on.
        365 * year + leap_days + (153 * month + 2) / 5 + i64::from(self.day) - 719_469
    }

    /// The day of the clock, in UTC.
    #[must_use]
    pub fn today() -> Self {
        let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |since| since.as_secs());
        Self::of_day_number(i64::try_from(seconds / 86400).unwrap_or_default())
    }

    /// The day with this number; years from 0 to 9999.
    fn of_day_number(number: i64) -> Self {
        let first = Self { year: 1, month: 1, day: 1 };
        let mut day = Self { year: u16::try_from(1970 + number / 366).unwrap_or(9999).min(9999), ..first };
        while day.year < 9999 && (Self { year: day.year + 1, ..first }).day_number() <= number {
            day.year += 1;
        }
        while day.month < 12 && (Self { month: day.month + 1, ..day }).day_number() <= number {
            day.month += 1;
        }
        let rest = number - day.day_number();
        Self { day: u8::try_from(1 + rest).unwrap_or(1), ..day }
    }

    /// The same day some months on; in a shorter month, a day that follows its last one and compares as such.
    #[must_use]
    pub fn months_later(self, months: u8) -> Self {
        let month = u16::from(self.month) - 1 + u16::from(months);
        let month_of_year = u8::try_from(month % 12).unwrap_or_default() + 1;
        Self { year: self.year.saturating_add(month / 12), month: month_of_year, day: self.day }
    }
}

#[cfg(test)]
mod tests {
    use super::Date;

    fn date(text: &str) -> Date {
        Date::read(text).expect("a day")
    }

    #[test]
    fn days_are_counted_as_the_calendar_does() {
        // Unix time of the last two: 951782400 s and 1709164800 s, over 86400.
        for (text, number) in [("1970-01-01", 0), ("1969-12-31", -1), ("2000-02-29", 11016), ("2024-02-29", 19782)] {
            assert_eq!(date(text).day_number(), number, "{text}");
        }
        for number in (0..40_000).step_by(13).chain([11016, 11017, 19782, 20453]) {
            assert_eq!(Date::of_day_number(number).day_number(), number);
        }
        assert_eq!(Date::of_day_number(19782), date("2024-02-29"));
        assert_eq!(Date::of_day_number(20453), date("2025-12-31"));
    }

    #[test]
    fn a_year_on_is_the_same_day() {
        assert_eq!(date("2026-05-18").months_later(12), date("2027-05-18"));
        assert_eq!(date("2026-11-30").months_later(2), date("2027-01-30"));
        // The 29th of a February without one lies before March.
        let late = date("2028-02-29").months_later(12);
        assert!(date("2029-02-28") < late && late < date("2029-03-01"));
    }
}
