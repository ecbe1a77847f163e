//! Why a text is not the quantity that is meant, in English.

use std::fmt;

use crate::english::commas;
use crate::remark::said::quantity::NoQuantity;
use crate::units::{UnitError, Wanted, WithUnit};

impl fmt::Display for NoQuantity {
    /// What is wrong and what to write instead, as a clause that follows the quoted text.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}: {}", reason(self), help(self))
    }
}

/// What is wrong, as a clause that follows the quoted text.
pub fn reason(why: &NoQuantity) -> String {
    let plain = match why {
        NoQuantity::Unit(error) => return unit_reason(error),
        NoQuantity::NoneAtAll => "is none at all",
        NoQuantity::TooMany { .. } => "is more than any piece holds",
        NoQuantity::Whole | NoQuantity::WholeOrNone => "is not a whole number",
        NoQuantity::Factor => "is not a factor",
        NoQuantity::Share => "is not a share",
        NoQuantity::YesNo => "is neither yes nor no",
        NoQuantity::Colour => "is not a colour",
        NoQuantity::Measurement => "is not a measurement",
        NoQuantity::Margin => "does not say how near",
        NoQuantity::Body => "is not a body",
        NoQuantity::UnitStyle => "is not a way to print lengths",
    };
    plain.to_owned()
}

/// What is wrong with a number or its unit, as a clause that follows the quoted text.
pub fn unit_reason(error: &UnitError) -> String {
    match error {
        UnitError::NoUnit { .. } => "has no unit".to_owned(),
        UnitError::UnknownUnit { unit, .. } => format!("has an unknown unit, `{unit}`"),
        UnitError::NoNumber { .. } => "does not begin with a number".to_owned(),
        UnitError::Comma { .. } => "has a comma in its number".to_owned(),
        UnitError::Negative { .. } => "is less than nothing".to_owned(),
        UnitError::Zero { .. } => "is nothing at all".to_owned(),
        UnitError::TooLarge { wanted } => format!("is too large for {}", name(*wanted)),
        UnitError::Not { wanted } => format!("is not {}", name(*wanted)),
    }
}

/// What to write instead of a number and its unit.
pub fn unit_help(error: &UnitError) -> String {
    match error {
        UnitError::NoUnit { choices } | UnitError::UnknownUnit { choices, .. } => {
            let texts: Vec<_> = choices.iter().map(|WithUnit { text, .. }| text.as_str()).collect();
            format!("say which unit: {}", commas(texts))
        }
        UnitError::NoNumber { wanted } | UnitError::Not { wanted } => {
            let (what, like) = example(*wanted);
            format!("write {what} {like}")
        }
        UnitError::Comma { pointed } => format!("write decimals with a point: {pointed}"),
        UnitError::Negative { wanted } => {
            format!("write it without the minus sign, {}", example(*wanted).1)
        }
        UnitError::Zero { wanted } => format!("write {} greater than zero", name(*wanted)),
        UnitError::TooLarge { .. } => "check the number and the unit".to_owned(),
    }
}

const fn name(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::Length => "a length",
        Wanted::Change => "a length that a piece can have",
        Wanted::Mass => "a mass",
        Wanted::MassPerMetre => "a mass for each metre",
        Wanted::Force => "a force",
        Wanted::Money => "a price",
        Wanted::Time => "a time",
        Wanted::Turns => "a number of turns",
        Wanted::Angle => "an angle",
        Wanted::Stiffness => "a stiffness",
    }
}

/// How it is written, after `write`.
/// What is written where something is wanted, and like what.
const fn example(wanted: Wanted) -> (&'static str, &'static str) {
    match wanted {
        Wanted::Length => ("it", "like 17 1/2 in or 445 mm"),
        Wanted::Change => ("it", "like -1 in or +50 mm"),
        Wanted::Mass => ("it", "like 0.29 g"),
        Wanted::MassPerMetre => ("it", "like 0.6 g/m"),
        Wanted::Force => ("it", "like 60 N or 15 lbf"),
        Wanted::Money => ("a number with at most two decimals,", "like 4.20"),
        Wanted::Time => ("it", "like 1.5 h or 90 min"),
        Wanted::Turns => ("how many times,", "like 3 or 3 1/2"),
        Wanted::Angle => ("it", "like 20 deg"),
        Wanted::Stiffness => ("it", "like 1.8 N mm²"),
    }
}

/// What to write instead.
pub fn help(why: &NoQuantity) -> String {
    let plain = match why {
        NoQuantity::TooMany { most } => return format!("write at most {most}"),
        NoQuantity::Unit(error) => return unit_help(error),
        NoQuantity::NoneAtAll | NoQuantity::Whole => "write a whole number of at least 1",
        NoQuantity::WholeOrNone => "write 0, 1 or how many you mean",
        NoQuantity::Factor => "write a number such as 2.5",
        NoQuantity::Share => "write hundredths such as 15 %",
        NoQuantity::YesNo => "write yes or no",
        NoQuantity::Colour => "write six hex digits in quotes, like \"#5d7f5b\"",
        NoQuantity::Measurement => "write it like 10 = 59 mm",
        NoQuantity::Margin => "write it like 12 in within 1/4 in",
        NoQuantity::Body => "write woman or man and a percentile from 1 to 99, like woman 50",
        NoQuantity::UnitStyle => "write in, mm or both",
    };
    plain.to_owned()
}
