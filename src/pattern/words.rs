//! The closed lists of words of the pattern language: kinds, shapes, finishes.

use crate::remark::said::wanted::Wanted;

/// Declares an enum whose variants are words a pattern may write.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, schemars::JsonSchema)]
        pub enum $name {
            $($(#[$vdoc])* #[serde(rename = $word)] $variant,)*
        }

        impl $name {
            /// Every one, in the order the documentation lists them.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];
            /// What the list is a list of, for messages.
            pub const WHAT: Wanted = Wanted::$name;

            /// The word that a pattern writes.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$variant => $word,)*
                }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(self.word())
            }
        }
    };
}

words!(
    /// What sort of piece the pattern makes.
    Kind {
        /// Hung round the neck.
        Necklace = "necklace",
        /// Closed round the wrist.
        Bracelet = "bracelet",
        /// Closed round the ankle.
        Anklet = "anklet",
        /// A pair, hung from ear wires.
        Earrings = "earrings",
        /// Holds spectacles or a badge.
        Strap = "strap",
    }
);

words!(
    /// How much practice the maker should have.
    Skill {
        /// For somebody who has never strung beads.
        FirstPiece = "first piece",
        /// For somebody who has strung a piece or two.
        Beginner = "beginner",
        /// For somebody who closes crimps without looking it up.
        Intermediate = "intermediate",
        /// For somebody who gathers many strands.
        Advanced = "advanced",
    }
);

words!(
    /// The outline of a bead along its hole.
    Shape {
        /// A ball.
        Round = "round",
        /// A ball pressed along the hole: wider than long.
        Rondelle = "rondelle",
        /// A ball stretched along the hole.
        Oval = "oval",
        /// Two cones base to base, the tips cut off by the hole.
        Bicone = "bicone",
        /// A cube, drilled through two faces.
        Cube = "cube",
        /// A flat square cushion, drilled edge to edge.
        Square = "square",
        /// A cylinder drilled along its axis.
        Tube = "tube",
        /// A tube that bulges.
        Barrel = "barrel",
        /// A teardrop drilled along its long axis.
        Drop = "drop",
        /// A disc drilled through its edge.
        Coin = "coin",
        /// An uneven fragment.
        Chip = "chip",
        /// A small ring of cut glass cane.
        Seed = "seed",
    }
);

words!(
    /// Which way a bead's hole runs.
    Drilled {
        /// Along it.
        Lengthwise = "lengthwise",
        /// Across its tip, from side to side: it hangs.
        Tip = "tip",
        /// Through its face near its edge, from front to back: it hangs.
        Front = "front",
    }
);

words!(
    /// The outline of a charm.
    Outline {
        /// A round plate.
        Disc = "disc",
        /// Five points.
        Star = "star",
        /// Pointed at both ends, with a rib.
        Leaf = "leaf",
        /// Two lobes and a point.
        Heart = "heart",
        /// A narrow plate.
        Bar = "bar",
    }
);

words!(
    /// How a bead's surface takes the light.
    Finish {
        /// Shiny.
        Gloss = "gloss",
        /// Dull.
        Matte = "matte",
        /// Mirrors like polished metal.
        Metallic = "metallic",
        /// Glows softly.
        Pearl = "pearl",
        /// Lets light through, blurred.
        Frosted = "frosted",
        /// Lets light through.
        Clear = "clear",
        /// Cut in flat facets.
        Faceted = "faceted",
    }
);

words!(
    /// What a cord is made of.
    CordKind {
        /// Coated steel wire.
        Wire = "wire",
        /// Plied thread.
        Thread = "thread",
        /// Twisted silk, for knotting.
        Silk = "silk",
        /// Leather lace.
        Leather = "leather",
        /// Stretch cord.
        Elastic = "elastic",
        /// Chain used as a strand.
        Chain = "chain",
        /// Hard spring steel, sold as a coil that keeps its round.
        MemoryWire = "memory wire",
    }
);

words!(
    /// What a finding does.
    FindingKind {
        /// A soft tube or ring pressed shut on the cord.
        Crimp = "crimp",
        /// A hollow cone that covers gathered ends.
        Cone = "cone",
        /// A wire with a loop at one end.
        EyePin = "eye pin",
        /// A wire with a flat head at one end.
        HeadPin = "head pin",
        /// The fastener, drawn as a trigger clasp.
        Clasp = "clasp",
        /// A clasp that is a ring with a sprung bolt.
        SpringRing = "spring ring",
        /// A clasp of bent wire.
        Hook = "hook",
        /// The ring of a clasp that a bar goes through.
        ToggleRing = "toggle ring",
        /// The bar of a clasp that goes through a ring.
        ToggleBar = "toggle bar",
        /// Half of a clasp whose halves screw, snap or hold together by magnets.
        BarrelHalf = "barrel half",
        /// Half of a clasp with a loop for each strand, whose halves snap into one another: a flat box and its tongue.
        BoxHalf = "box half",
        /// Half of a clasp with a loop for each strand, whose halves are tubes, of which one slides into the other.
        SlideHalf = "slide half",
        /// Chain, sold by length: an extender or a spacer.
        Chain = "chain",
        /// A ring of wire with an opening.
        JumpRing = "jump ring",
        /// A bar with holes that holds strands apart along the way.
        SpacerBar = "spacer bar",
        /// A bar with loops that strands end on.
        EndBar = "end bar",
        /// A small cup that sits on a bead's end.
        BeadCap = "bead cap",
        /// A hollow ball that hides a crimp.
        CrimpCover = "crimp cover",
        /// A horseshoe that keeps wire from wearing at the loop.
        WireGuard = "wire guard",
        /// A loop that carries a pendant.
        Bail = "bail",
        /// The hook through the ear.
        EarWire = "ear wire",
        /// A hinged cup that closes over a knot.
        KnotCover = "knot cover",
        /// A cap with a loop, glued or folded over the end of a thick cord.
        CordEnd = "cord end",
        /// A small shape that hangs by its loop.
        Charm = "charm",
        /// Threads bound to a head, which hang by a loop.
        Tassel = "tassel",
        /// A rubber loop or holder that grips an arm of a pair of spectacles.
        SpectacleLoop = "spectacle loop",
    }
);

impl FindingKind {
    /// Whether it is a clasp, or half of one.
    #[must_use]
    pub const fn is_clasp(self) -> bool {
        self.hooks() || self.counterpart().is_some()
    }

    /// The other half, of a clasp in two halves.
    #[must_use]
    pub const fn counterpart(self) -> Option<Self> {
        match self {
            Self::ToggleRing => Some(Self::ToggleBar),
            Self::ToggleBar => Some(Self::ToggleRing),
            Self::BarrelHalf | Self::BoxHalf | Self::SlideHalf => Some(self),
            _ => None,
        }
    }

    /// Whether it hooks into any ring or link.
    #[must_use]
    pub const fn hooks(self) -> bool {
        matches!(self, Self::Clasp | Self::SpringRing | Self::Hook)
    }
}

words!(
    /// How a strand's beads come to rest.
    Settle {
        /// Free on bare cord, they gather at the low point.
        Slide = "slide",
        /// Packed end to end; the strand's length follows from the beads.
        Fill = "fill",
        /// Equal bare cord between the repeats.
        Spread = "spread",
        /// Where `space` puts them, counted from the first end.
        Fixed = "fixed",
    }
);

words!(
    /// How an open necklace is worn.
    Open {
        /// Round the neck with both ends in front: hanging, or tied by who wears it.
        Hanging = "hanging",
        /// The last end goes through the ring in which the first one ends.
        Through = "through",
    }
);

words!(
    /// How an article is sold.
    SoldBy {
        /// Strung on a temporary strand of a stated length.
        Strand = "strand",
        /// Several temporary strands tied together.
        Hank = "hank",
        /// A pack of a stated count.
        Pack = "pack",
        /// One by one.
        Each = "each",
        /// By mass.
        Grams = "grams",
        /// A spool of a stated length.
        Spool = "spool",
        /// Cut to a stated length.
        Length = "length",
        /// Beads of several sizes on one strand, which `assorted` tells.
        GraduatedStrand = "graduated strand",
        /// Several kinds of bead in one bag, which `assorted` tells.
        Mix = "mix",
        /// Memory wire, by the turns of its coil.
        Turns = "turns",
    }
);
