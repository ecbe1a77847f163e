//! The codes of all remarks, how grave each is, and its explanation at length.

use serde::Serialize;

/// How grave a remark is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// The piece cannot be made as written; nothing is produced.
    Error,
    /// The piece can be made but something is likely wrong.
    Warning,
    /// Worth knowing.
    Advice,
}

impl Level {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Advice => "advice",
        }
    }
}

macro_rules! codes {
    ($($variant:ident = $code:literal, $level:ident, $explain:literal;)*) => {
        /// A stable name for one kind of remark.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code {
            $(#[doc = $explain] $variant,)*
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
            pub const fn level(self) -> Level {
                match self {
                    $(Self::$variant => Level::$level,)*
                }
            }

            /// The explanation that `festoon explain` prints, with formula and source.
            #[must_use]
            pub const fn explanation(self) -> &'static str {
                match self {
                    $(Self::$variant => $explain,)*
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

codes! {
    Yaml = "yaml", Error,
        "The file is not YAML that festoon reads: a bracket that does not close, a tab in the \
         indentation, the same key twice, nesting beyond any pattern, or aliases that swell.";
    NotText = "not-text", Error,
        "A pattern is a text file in UTF-8 of at most 4 MiB. This one is not.";
    UnknownKey = "unknown-key", Error,
        "The pattern language has no such key in this place. festoon does not guess what an \
         unknown key means: a typing slip would silently lose an instruction.";
    MissingKey = "missing-key", Error,
        "Something that the piece cannot be made without is not written.";
    WrongKind = "wrong-kind", Error,
        "A list stands where a single value is meant, or the other way round.";
    UnknownWord = "unknown-word", Error,
        "Some keys take one word from a fixed list (shape, finish, kind, settle). This word is \
         not on the list.";
    BadQuantity = "bad-quantity", Error,
        "A length, mass, force, price, time, share or count is not written as one. Every quantity \
         carries its unit: a bare number could be inches or millimetres.";
    UnknownId = "unknown-id", Error,
        "A strand, closure or sale names a bead, cord or finding that the pattern does not define.";
    Version = "version", Error,
        "The first key says which version of the pattern language the file is written in. This \
         program reads version 1.";
}
