//! How the codes of remarks are declared: a line each and a text of its own, from which come the enum, the names, the
//! levels and the explanations.

/// Declares [`Code`](super::Code): variant, kebab-case name and level of each.
macro_rules! codes {
    ($($variant:ident = $code:literal, $level:ident;)*) => {
        /// A stable name for one kind of remark.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[non_exhaustive]
        pub enum Code {
            $(#[doc = include_str!(concat!("explained/", $code, ".md"))] $variant,)*
        }

        impl Code {
            /// Every code, in the order the documentation lists them.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// The kebab-case name.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $code,)*
                }
            }

            /// How grave it is.
            #[must_use]
            pub const fn level(self) -> $crate::remark::Level {
                match self {
                    $(Self::$variant => $crate::remark::Level::$level,)*
                }
            }

            /// The explanation that `festoon explain` prints, with formula and source.
            #[must_use]
            pub const fn explanation(self) -> &'static str {
                match self {
                    $(Self::$variant => include_str!(concat!("explained/", $code, ".md")).trim_ascii_end(),)*
                }
            }

            /// The code of a kebab-case name.
            #[must_use]
            pub fn named(name: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|code| code.name() == name)
            }
        }
    };
}

pub(super) use codes;
