//! The codes of all remarks and how grave each is. What each means at length stands in `explained/CODE.md`, on a line.

use super::declare::codes;

impl Code {
    /// Why it is said: the first sentence of its explanation.
    #[must_use]
    pub fn reason(self) -> &'static str {
        let text = self.explanation();
        let ends =
            text.match_indices(". ").find(|(at, _)| text[at + 2..].starts_with(|c: char| c.is_uppercase() || c == '`'));
        ends.map_or(text, |(at, _)| &text[..=at])
    }

    /// Whether it is about a part of the piece alone, so that nothing that is wrong elsewhere excuses it.
    #[must_use]
    pub const fn is_local(self) -> bool {
        !matches!(self, Self::TooShort | Self::Unhitched | Self::NoRest)
    }
}

codes! {
    Yaml = "yaml", Error;
    BareColour = "bare-colour", Error;
    NoShelf = "no-shelf", Error;
    TwoCurrencies = "two-currencies", Error;
    NotText = "not-text", Error;
    UnknownKey = "unknown-key", Error;
    MissingKey = "missing-key", Error;
    WrongKind = "wrong-kind", Error;
    UnknownWord = "unknown-word", Error;
    BadQuantity = "bad-quantity", Error;
    UnknownId = "unknown-id", Error;
    Misplaced = "misplaced", Error;
    NoRing = "no-ring", Error;
    RingNarrow = "ring-narrow", Warning;
    BarHoles = "bar-holes", Warning;
    HolesAstray = "holes-astray", Warning;
    RetailFactor = "retail-factor", Advice;
    LastPack = "last-pack", Advice;
    NoSpare = "no-spare", Advice;
    StashUnused = "stash-unused", Advice;
    LotTooSmall = "lot-too-small", Warning;
    SpoolTooShort = "spool-too-short", Warning;
    Version = "version", Error;
    CordTooThick = "cord-too-thick", Error;
    OneSided = "one-sided", Warning;
    ClaspTwice = "clasp-twice", Warning;
    Unjoined = "unjoined", Warning;
    NoOpening = "no-opening", Warning;
    PartLink = "part-link", Advice;
    WrongHole = "wrong-hole", Error;
    NothingHolds = "nothing-holds", Advice;
    Unhitched = "unhitched", Error;
    SlipsInside = "slips-inside", Warning;
    CrimpTooSmall = "crimp-too-small", Error;
    PinTooThick = "pin-too-thick", Error;
    PinTooShort = "pin-too-short", Error;
    EyeInCone = "eye-in-cone", Warning;
    EyeTooSmall = "eye-too-small", Warning;
    CrimpsInCone = "crimps-in-cone", Warning;
    BeadsInCone = "beads-in-cone", Warning;
    CoverTooSmall = "cover-too-small", Warning;
    CordTight = "cord-tight", Advice;
    CrimpsShow = "crimps-show", Advice;
    WireKnotted = "wire-knotted", Warning;
    KnotSlips = "knot-slips", Warning;
    WeakCord = "weak-cord", Warning;
    StrengthUnknown = "strength-unknown", Advice;
    CordTooStiff = "cord-too-stiff", Warning;
    HeavyPiece = "heavy-piece", Advice;
    TooShort = "too-short", Error;
    OverHead = "over-head", Warning;
    IdleExtender = "idle-extender", Advice;
    StrandsCrowd = "strands-crowd", Warning;
    StrandsUnsettled = "strands-unsettled", Warning;
    BareCord = "bare-cord", Advice;
    UnevenEnds = "uneven-ends", Advice;
    RingTight = "ring-tight", Warning;
    RingLoose = "ring-loose", Advice;
    FallsOff = "falls-off", Warning;
    UnevenRows = "uneven-rows", Advice;
    OddMeasure = "odd-measure", Warning;
    HugeBead = "huge-bead", Warning;
    DropsCrowd = "drops-crowd", Warning;
    LookAlike = "look-alike", Advice;
    MissingGlyph = "missing-glyph", Warning;
    ChildBreakaway = "child-breakaway", Warning;
    ChildUnmeasured = "child-unmeasured", Warning;
    DeclareMetal = "declare-metal", Advice;
    TooManyBeads = "too-many-beads", Error;
    OutOfBounds = "out-of-bounds", Error;
    NothingRepeated = "nothing-repeated", Error;
    TwiceNamed = "twice-named", Error;
    Overfull = "overfull", Error;
    NoFill = "no-fill", Error;
    SoldTwice = "sold-twice", Error;
    ScarceKind = "scarce-kind", Advice;
    NoMix = "no-mix", Error;
    MisplacedStop = "misplaced-stop", Error;
    MissingSize = "missing-size", Error;
    BadSize = "bad-size", Error;
    UnknownMaterial = "unknown-material", Warning;
    RoughWeight = "rough-weight", Advice;
    IdleAllow = "idle-allow", Advice;
    HoleAssumed = "hole-assumed", Advice;
    Unused = "unused", Warning;
    NoLength = "no-length", Error;
    OtherLimb = "other-limb", Error;
    FillShort = "fill-short", Warning;
    LengthIgnored = "length-ignored", Warning;
    Expected = "expected", Error;
    CoilSmall = "coil-small", Warning;
    BeadStiff = "bead-stiff", Error;
    OtherTurns = "other-turns", Warning;
    EndsMeet = "ends-meet", Advice;
    CannotWrap = "cannot-wrap", Error;
    CannotTwist = "cannot-twist", Error;
    TwistTight = "twist-tight", Warning;
    TwistLoose = "twist-loose", Advice;
    TwistSlack = "twist-slack", Warning;
    TwistBare = "twist-bare", Warning;
    NoRest = "no-rest", Error;
    OwnFault = "own-fault", Error;
}
