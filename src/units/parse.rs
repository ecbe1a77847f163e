//! WithUnit quantities as a maker writes them: `17 1/2 in`, `17½ in`, `44.5 cm`, `60 N`.

use super::{Force, INCH, KILOGRAM_FORCE, Length, Mass, Money, POUND_FORCE};

/// Why a text is not the quantity that was asked for.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum UnitError {
    /// It has no unit behind its number.
    NoUnit {
        /// What it may be.
        choices: Vec<WithUnit>,
    },
    /// It has a unit that is not known.
    UnknownUnit {
        /// The word behind the number.
        unit: String,
        /// What it may be.
        choices: Vec<WithUnit>,
    },
    /// It does not begin with a number.
    NoNumber {
        /// What is measured.
        wanted: Wanted,
    },
    /// It has a comma in its number.
    Comma {
        /// The same with a point.
        pointed: String,
    },
    /// It is less than nothing.
    Negative {
        /// What is measured.
        wanted: Wanted,
    },
    /// It is nothing at all.
    Zero {
        /// What is measured.
        wanted: Wanted,
    },
    /// It is too large.
    TooLarge {
        /// What is measured.
        wanted: Wanted,
    },
    /// It is none such, however it is read.
    Not {
        /// What is measured.
        wanted: Wanted,
    },
}

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the names say it")]
pub enum Wanted {
    Length,
    /// What a length changes by.
    Change,
    Mass,
    MassPerMetre,
    Force,
    Money,
    Time,
    Turns,
    Angle,
    Stiffness,
}

/// What a number would be with a unit behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct WithUnit {
    /// How it would be written.
    pub text: String,
    /// What that is in the program's own unit.
    pub value: f64,
}

impl UnitError {
    /// With those of its choices alone whose value is likely, where any is.
    #[must_use]
    pub fn among(mut self, likely: impl Fn(f64) -> bool) -> Self {
        if let Self::NoUnit { choices } | Self::UnknownUnit { choices, .. } = &mut self
            && choices.iter().any(|choice| likely(choice.value))
        {
            choices.retain(|choice| likely(choice.value));
        }
        self
    }
}

/// A number behind each of several units.
fn choices(digits: &str, value: f64, units: &[UnitNames]) -> Vec<WithUnit> {
    let choice = |(names, size): &UnitNames| WithUnit { text: format!("{digits} {}", names[0]), value: value * size };
    units.iter().map(choice).collect()
}

/// A unit's names and its size in the program's own unit.
type UnitNames = (&'static [&'static str], f64);

const LENGTHS: &[UnitNames] = &[
    (&["mm"], 1.0),
    (&["cm"], 10.0),
    (&["m"], 1000.0),
    (&["in", "inch", "inches", "\"", "″", "”"], INCH),
    (&["ft", "foot", "feet", "'", "′"], 304.8),
    (&["yd"], 914.4),
];
const MASSES: &[UnitNames] = &[(&["g"], 1.0), (&["mg"], 0.001), (&["kg"], 1000.0), (&["oz"], 28.349_523_125)];
const FORCES: &[UnitNames] = &[(&["N"], 1.0), (&["lbf", "lb"], POUND_FORCE), (&["kgf"], KILOGRAM_FORCE)];
const STIFFNESSES: &[UnitNames] = &[(&["N mm²", "N·mm²", "N mm2", "N·mm2", "N mm^2"], 1.0)];
const DEGREES: &[UnitNames] = &[(&["deg", "degrees", "°"], 1.0)];
const HOURS: &[UnitNames] = &[(&["h", "hour", "hours"], 1.0), (&["min", "minutes"], 1.0 / 60.0)];

/// Largest length that a piece or its parts may have: a bead, strand or spool beyond a kilometre
/// is a slip of the pen.
const LONGEST: f64 = 1.0e6;

impl Length {
    /// Reads a length that is greater than nothing.
    ///
    /// # Errors
    /// When the number or the unit is missing or unknown, or the length is not positive and finite.
    pub fn parse(text: &str) -> Result<Self, UnitError> {
        let mm = quantity(text, LENGTHS, Wanted::Length)?;
        positive(mm, LONGEST, Wanted::Length).map(Self::mm)
    }

    /// Reads a length with a sign, such as the change of a size: `-1 in`, `+50 mm`.
    ///
    /// # Errors
    /// As for [`Length::parse`], but nothing and less than nothing are allowed.
    pub fn parse_signed(text: &str) -> Result<Self, UnitError> {
        let text = text.trim();
        let unsigned = text.trim_start_matches(['+', '-', '−']);
        let mm = quantity(unsigned, LENGTHS, Wanted::Change)?;
        if !(0.0..=LONGEST).contains(&mm) {
            return Err(UnitError::Not { wanted: Wanted::Change });
        }
        Ok(Self::mm(if text.starts_with(['-', '−']) { -mm } else { mm }))
    }
}

impl Mass {
    /// Reads a mass that is greater than nothing.
    ///
    /// # Errors
    /// When the number or the unit is missing or unknown, or the mass is not positive and finite.
    pub fn parse(text: &str) -> Result<Self, UnitError> {
        let grams = quantity(text, MASSES, Wanted::Mass)?;
        positive(grams, 1.0e5, Wanted::Mass).map(Self::grams)
    }

    /// Reads a cord's mass per length, `0.6 g/m`, as the mass of one metre.
    ///
    /// # Errors
    /// When the text is not a mass followed by `/m`.
    pub fn parse_per_metre(text: &str) -> Result<Self, UnitError> {
        let wrong = || UnitError::Not { wanted: Wanted::MassPerMetre };
        Self::parse(text.trim().strip_suffix("/m").ok_or_else(wrong)?).map_err(|_| wrong())
    }
}

impl Force {
    /// Reads a force that is greater than nothing.
    ///
    /// # Errors
    /// When the number or the unit is missing or unknown, or the force is not positive and finite.
    pub fn parse(text: &str) -> Result<Self, UnitError> {
        let newtons = quantity(text, FORCES, Wanted::Force)?;
        positive(newtons, 1.0e6, Wanted::Force).map(Self::newtons)
    }
}

impl Money {
    /// Reads an amount with at most two decimals, `4.20`, exactly.
    ///
    /// # Errors
    /// When the text is not a number of that kind or is negative.
    pub fn parse(text: &str) -> Result<Self, UnitError> {
        let wrong = || UnitError::Not { wanted: Wanted::Money };
        let (whole, cents) = text.trim().split_once('.').unwrap_or((text.trim(), ""));
        let digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
        if whole.is_empty() || whole.len() > 9 || cents.len() > 2 || !digits(whole) || !digits(cents) {
            return Err(wrong());
        }
        format!("{whole}{cents:0<2}").parse().map(Self::coins).map_err(|_| wrong())
    }
}

/// Reads a time of work, `1.5 h` or `90 min`, in hours.
///
/// # Errors
/// When the number or the unit is missing or unknown, or the time is not positive and finite.
pub fn hours(text: &str) -> Result<f64, UnitError> {
    positive(quantity(text, HOURS, Wanted::Time)?, 1.0e5, Wanted::Time)
}

/// A time of work as all are printed, `1 h 30 min`, whether it says `1.5 h`, `90 minutes` or that; other words as they are.
#[must_use]
pub fn time(text: &str) -> String {
    let ends_in_unit = |word: &&str| word.ends_with(char::is_alphabetic);
    let words: Vec<_> = text.split_whitespace().collect();
    let parts = words.split_inclusive(|word| ends_in_unit(word)).map(|part| hours(&part.join(" ")));
    let Ok(all) = parts.sum::<Result<f64, _>>() else { return text.to_owned() };
    match libm::round(all * 60.0) {
        minutes if minutes < 60.0 => format!("{minutes} min"),
        minutes if minutes % 60.0 == 0.0 => format!("{} h", minutes / 60.0),
        minutes => format!("{} h {} min", (minutes / 60.0).floor(), minutes % 60.0),
    }
}

/// Reads how many times something goes round: `3`, `3.5`, `3 1/2`, `3½`.
///
/// # Errors
/// When the text is no such number, or nothing.
pub fn turns(text: &str) -> Result<f64, UnitError> {
    let turns = number(text).filter(|turns| turns.is_finite() && *turns > 0.0);
    turns.ok_or(UnitError::Not { wanted: Wanted::Turns })
}

/// Reads an angle, `20 deg` or `20°`, in degrees.
///
/// # Errors
/// When the number or the unit is missing or unknown.
pub fn degrees(text: &str) -> Result<f64, UnitError> {
    quantity(text, DEGREES, Wanted::Angle)
}

/// Reads how stiff a cord is, `1.8 N mm²`, in N mm²; it may be nothing.
///
/// # Errors
/// When the number or the unit is missing or unknown.
pub fn stiffness(text: &str) -> Result<f64, UnitError> {
    quantity(text, STIFFNESSES, Wanted::Stiffness)
}

/// Reads a plain number: `17`, `17.5`, `17 1/2`, `17½`, `1/2`.
fn number(text: &str) -> Option<f64> {
    let text = text.trim();
    let plain = |part: &str| {
        let shaped = part.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
        if shaped { part.parse::<f64>().ok() } else { None }
    };
    if let Some(whole) = plain(text) {
        return Some(whole);
    }
    if let Some(part) = text.chars().next_back().and_then(vulgar) {
        let whole = text.trim_end_matches(|c| vulgar(c) == Some(part)).trim();
        let once = text.chars().filter(|c| vulgar(*c).is_some()).count() == 1;
        let whole = if whole.is_empty() { Some(0.0) } else { plain(whole) };
        return whole.filter(|_| once).map(|whole| whole + part);
    }
    let (whole, part) = text.split_once(' ').unwrap_or(("0", text));
    let (over, under) = part.trim().split_once(['/', '⁄'])?;
    let (over, under) = (plain(over.trim())?, plain(under.trim())?);
    (under > 0.0).then_some(plain(whole)? + over / under)
}

/// The value of a one-character fraction such as `½`.
fn vulgar(c: char) -> Option<f64> {
    let (over, under) = match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some(f64::from(over) / f64::from(under))
}

/// Splits a text into its number and its unit and multiplies them.
fn quantity(text: &str, units: &[UnitNames], wanted: Wanted) -> Result<f64, UnitError> {
    let text = text.trim();
    let at = text.find(|c: char| c.is_alphabetic() || "\"″”'′%°".contains(c)).unwrap_or(text.len());
    let (digits, unit) = (text[..at].trim(), text[at..].trim());
    if digits.starts_with(['-', '−']) {
        return Err(UnitError::Negative { wanted });
    }
    let Some(value) = number(digits) else {
        let is_comma = digits.contains(',') && number(&digits.replacen(',', ".", 1)).is_some();
        return Err(match is_comma {
            true => UnitError::Comma { pointed: text.replacen(',', ".", 1) },
            false => UnitError::NoNumber { wanted },
        });
    };
    if unit.is_empty() {
        return Err(UnitError::NoUnit { choices: choices(digits, value, units) });
    }
    match units.iter().find(|(names, _)| names.contains(&unit)) {
        Some((_, size)) => Ok(value * size),
        None => Err(UnitError::UnknownUnit { unit: unit.to_owned(), choices: choices(digits, value, units) }),
    }
}

fn positive(value: f64, most: f64, wanted: Wanted) -> Result<f64, UnitError> {
    if value > 0.0 && value <= most {
        Ok(value)
    } else if value > most {
        Err(UnitError::TooLarge { wanted })
    } else {
        Err(UnitError::Zero { wanted })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_of_work_are_printed_alike() {
        for (said, printed) in [
            ("1.5 h", "1 h 30 min"),
            ("2 h 30 min", "2 h 30 min"),
            ("1 1/2 hours", "1 h 30 min"),
            ("90 minutes", "1 h 30 min"),
            ("2 hours", "2 h"),
            ("1h 5min", "1 h 5 min"),
            ("45 min", "45 min"),
            ("an evening", "an evening"),
            ("2 to 3 h", "2 to 3 h"),
        ] {
            assert_eq!(time(said), printed, "{said}");
        }
    }

    #[test]
    fn every_way_to_write_a_length() {
        for text in ["17.5 in", "17 1/2 in", "17½ in", "17 ½ in", "17.5\"", "44.45 cm", "444.5 mm", "0.4445 m"] {
            let mm = Length::parse(text).unwrap().value();
            assert!((mm - 444.5).abs() < 1e-9, "{text}: {mm}");
        }
        assert_eq!(Length::parse("1/2 in").unwrap(), Length::mm(12.7));
        assert_eq!(Length::parse("2 ft").unwrap(), Length::mm(609.6));
    }

    #[test]
    fn what_is_not_a_length_says_why() {
        let wrong = |text| Length::parse(text).unwrap_err();
        let wanted = Wanted::Length;
        assert!(matches!(wrong("17"), UnitError::NoUnit { choices } if choices[0].text == "17 mm"));
        assert!(matches!(wrong("17 im"), UnitError::UnknownUnit { unit, .. } if unit == "im"));
        assert!(matches!(wrong("9e99 mm"), UnitError::UnknownUnit { .. }));
        assert_eq!(wrong("-3 mm"), UnitError::Negative { wanted });
        assert_eq!(wrong("0 mm"), UnitError::Zero { wanted });
        assert_eq!(wrong("17,5 mm"), UnitError::Comma { pointed: "17.5 mm".to_owned() });
        assert!(["1 1/0 in", "", "½½ in"].into_iter().all(|text| wrong(text) == UnitError::NoNumber { wanted }));
        assert_eq!(wrong("99999999999999999999999 m"), UnitError::TooLarge { wanted });
    }

    #[test]
    fn money_is_exact() {
        assert_eq!(Money::parse("4.20").unwrap(), Money::coins(420));
        assert_eq!(Money::parse("4.2").unwrap(), Money::coins(420));
        assert_eq!(Money::parse("18").unwrap(), Money::coins(1800));
        assert!(Money::parse("4.205").is_err());
        assert!(Money::parse("-1").is_err());
        assert!(Money::parse(".5").is_err());
    }

    #[test]
    fn a_change_has_a_sign() {
        assert_eq!(Length::parse_signed("-1 in").unwrap(), Length::mm(-25.4));
        assert_eq!(Length::parse_signed("+2 in").unwrap(), Length::mm(50.8));
    }

    #[test]
    fn forces_and_masses() {
        // 1 lbf = 4.448 221 615 260 5 N (NIST SP 811, appendix B.8; from memory).
        assert!((Force::parse("1 lbf").unwrap().value() - 4.448_221_615_260_5).abs() < 1e-12);
        assert_eq!(Mass::parse_per_metre("0.6 g/m").unwrap(), Mass::grams(0.6));
    }
}
