//! Why a text is not the quantity that is meant, in English.

use crate::remark::said::quantity::NoQuantity;

/// What is wrong, as a clause that follows the quoted text.
pub fn reason(why: &NoQuantity) -> &str {
    match why {
        NoQuantity::Unit(error) => &error.reason,
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
    }
}

/// What to write instead.
pub fn help(why: &NoQuantity) -> String {
    let plain = match why {
        NoQuantity::TooMany { most } => return format!("write at most {most}"),
        NoQuantity::Unit(error) => &error.help,
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
