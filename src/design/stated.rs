//! What the maker stated, told from what is assumed because she did not.

/// A value, and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stated<T> {
    /// The pattern says it.
    Stated(T),
    /// The pattern does not say, and this is assumed.
    Assumed(T),
}

impl<T> Stated<T> {
    /// What is stated, or else what is assumed.
    pub fn or(stated: Option<T>, assumed: T) -> Self {
        stated.map_or(Self::Assumed(assumed), Self::Stated)
    }

    /// The value, wherever it comes from.
    #[must_use]
    pub fn value(self) -> T {
        match self {
            Self::Stated(value) | Self::Assumed(value) => value,
        }
    }

    /// The value where it is stated.
    #[must_use]
    pub fn stated(self) -> Option<T> {
        match self {
            Self::Stated(value) => Some(value),
            Self::Assumed(_) => None,
        }
    }
}
