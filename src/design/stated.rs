//! What the maker stated, told from what is assumed because she did not.

use std::ops::Deref;

/// A value and where it comes from; read like the value itself.
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

    /// What is stated, where that is, in place of this.
    #[must_use]
    pub fn unless(self, stated: Option<T>) -> Self {
        stated.map_or(self, Self::Stated)
    }

    /// Whether the pattern does not say it.
    #[must_use]
    pub const fn is_assumed(&self) -> bool {
        matches!(self, Self::Assumed(_))
    }

    /// The value where it is stated.
    #[must_use]
    pub fn stated(self) -> Option<T> {
        match self {
            Self::Stated(value) => Some(value),
            Self::Assumed(_) => None,
        }
    }

    /// What follows from it, which is as much assumed.
    pub fn map<U>(self, follows: impl FnOnce(T) -> U) -> Stated<U> {
        match self {
            Self::Stated(value) => Stated::Stated(follows(value)),
            Self::Assumed(value) => Stated::Assumed(follows(value)),
        }
    }
}

impl<T> Deref for Stated<T> {
    type Target = T;

    fn deref(&self) -> &T {
        match self {
            Self::Stated(value) | Self::Assumed(value) => value,
        }
    }
}
