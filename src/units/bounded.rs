//! Numbers of the language with what they count or measure, and between what they lie.

/// What a number counts or measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// A length, in mm.
    Millimetres,
    /// A mass, in g.
    Grams,
    /// A force, in N.
    Newtons,
    /// How stiff a cord is, in N mm².
    Stiffness,
    /// A time, in hours.
    Hours,
    /// An angle, in degrees.
    Degrees,
    /// A share, in hundredths.
    Percent,
    /// A plain number.
    Plain,
    /// A whole number of things.
    Count,
    /// The signs of a text.
    Signs,
    /// The entries of a list or group.
    Entries,
}

impl Unit {
    /// A number with the sign of its unit, where that has one: `0.02 mm`, `20 m`.
    pub(super) fn measured(self, number: f64) -> String {
        match self {
            Self::Millimetres if number.abs() >= 1_000.0 => format!("{} m", number / 1_000.0),
            Self::Millimetres => format!("{number} mm"),
            Self::Grams if number >= 1_000.0 => format!("{} kg", number / 1_000.0),
            Self::Grams if number < 0.01 => format!("{} mg", number * 1_000.0),
            Self::Grams => format!("{number} g"),
            Self::Newtons => format!("{number} N"),
            Self::Stiffness => format!("{number} N mm²"),
            Self::Hours => format!("{number} h"),
            Self::Degrees => format!("{number} deg"),
            Self::Percent => format!("{number} %"),
            Self::Plain | Self::Count | Self::Signs | Self::Entries => format!("{number}"),
        }
    }
}
