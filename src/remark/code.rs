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
    LastPack = "last-pack", Advice,
        "The last pack of a bead or finding is bought for the spare beads alone, or for no more \
         than a twentieth of what it holds (an assumption). packs = ceil((count + spare) / pack); \
         spare is 5 % of the count rounded up, at least 1 (common practice, no source).";
    LotTooSmall = "lot-too-small", Warning,
        "One pack, strand or bag as the pattern sells it does not hold a single one: a strand \
         holds floor(length / pitch) beads, a bag floor(mass / mass of one), and cord is not sold by \
         the pack. The article is left out of the costs.";
    SpoolTooShort = "spool-too-short", Warning,
        "A strand or chain is cut in one piece: finished length + 2 x allowance. This piece is \
         longer than the spool that the pattern names, so no cutting plan holds it.";
    Version = "version", Error,
        "The first key says which version of the pattern language the file is written in. This \
         program reads version 1.";
    TooManyBeads = "too-many-beads", Error,
        "A strand holds at most 100,000 beads, knots and spaces, counted after every repeat. A \
         count beyond that is a slip of the pen, and would only make the program slow.";
    TwiceNamed = "twice-named", Error,
        "Two strands, sizes or colourways have the same name, so that nobody could tell which is meant.";
    Overfull = "overfull", Error,
        "The beads, spaces and end findings of a strand need more cord than its finished length \
         has. The beaded length is the sum of the distances between neighbouring beads' centres: \
         sqrt(R1^2 - r^2) + sqrt(R2^2 - r^2) for drilled round beads, where r is the larger of the \
         two hole radii (drilled-sphere geometry), half the length for flat-ended ones.";
    NoFill = "no-fill", Error,
        "`repeat: fill` strings a list as often as fits into the strand's length less `leave` and \
         less what the ends take. It needs a length to fill, and a list that takes up cord.";
    MisplacedStop = "misplaced-stop", Error,
        "A stop is a finding fixed on the cord. It stands in the strand's own list (not inside a \
         repeat), inside the strand's length, in the order of the stations, and only where beads \
         slide or are spread.";
    MissingSize = "missing-size", Error,
        "A size is missing that the length, the drawing or the fit cannot do without.";
    BadSize = "bad-size", Error,
        "The sizes of an article contradict one another: a hole wider than its bead, a bead of \
         four metres, an inside wider than the outside.";
    UnknownMaterial = "unknown-material", Warning,
        "The mass of a bead is its volume times the density of its material, from a table of \
         common bead materials. A material that is not in the table needs a `mass:` of its own; \
         until then the bead is weighed as common glass, 2.5 g/cm3.";
    HoleAssumed = "hole-assumed", Advice,
        "A bead without `hole:` is taken to have a hole of 1 mm, or a quarter of its width if that \
         is less (an assumption). The hole decides how close round beads sit and whether the cord \
         passes.";
    Unused = "unused", Warning,
        "The pattern defines a bead, cord or finding that nothing uses. It is left out of the \
         legend and the materials.";
    NoLength = "no-length", Error,
        "A strand needs a `length:`, or `settle: fill` so that its length follows from its beads. \
         `sizes:` change lengths, so each strand needs one to change.";
    LengthIgnored = "length-ignored", Warning,
        "With `settle: fill` a strand's length follows from its beads; a length that is written \
         beside it and differs is not used.";
    Expected = "expected", Error,
        "The pattern's `expect:` holds the designer's own figures. The program computes others: \
         one of the two is wrong, and a pattern for sale must not leave that open.";
    NoRest = "no-rest", Error,
        "The strand cannot hang from its two points: it is shorter than the distance between \
         them, or the solver for its resting shape did not converge.";
}
