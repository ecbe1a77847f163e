//! A pattern file's keys, as types. The doc comments are the language reference's wording and reach
//! editors through the JSON Schema.

use crate::source::At;
use crate::units::{Force, Length, Mass, Money, UnitStyle};

use super::dict::Dict;
use super::items::Item;
use super::record::record;
use super::shelf::Shelves;
use super::values::{
    Allowed, BeadColour, BeadSize, Body, Change, Colour, Hours, Measured, PerMetre, Ratio, Stiffness, Tilt, Turns,
    Whole, Within, YesNo,
};
use super::words::{CordKind, Drilled, FindingKind, Finish, Kind, Open, Outline, Settle, Shape, Skill, SoldBy};

record!(
    /// A bead jewellery pattern.
    Pattern {
        /// Version of the pattern language: 1.
        festoon: At<Whole>,
        /// The piece's name.
        title: At<String>,
        /// One sentence about the piece.
        summary: Option<String>,
        /// necklace, bracelet, anklet, earrings or strap.
        kind: At<Kind>,
        /// Printed at the foot of each page.
        designer: Option<String>,
        /// What a buyer may do with the pattern; printed at the foot of each page.
        permissions: Option<String>,
        /// How much practice the maker should have.
        skill: Option<Skill>,
        /// How long the making takes, in words.
        time: Option<String>,
        /// How the sheet prints lengths: in, mm or both.
        units: Option<UnitStyle>,
        /// The currency of all prices, such as EUR.
        currency: Option<String>,
        /// The files in which beads, cords and findings stand that several patterns share; what the pattern writes
        /// itself wins.
        shelf: Option<Shelves>,
        /// The beads, each under the id that the strands use.
        beads: Dict<Bead>,
        /// The cords.
        cords: Dict<Cord>,
        /// The findings.
        findings: Option<Dict<Finding>>,
        /// What is bought with several kinds of bead in it.
        assorted: Dict<Assorted>,
        /// How many times the piece goes round; 1 unless you say.
        wraps: Option<At<Turns>>,
        /// How many times the strands are twisted round one another, once their first ends are closed.
        twist: Option<At<Turns>>,
        /// The strands in the order they are hooked on, innermost first.
        strands: At<Vec<At<Strand>>>,
        /// What joins the strands' ends.
        closure: Option<At<Closure>>,
        /// The body that the piece is made for.
        wear: Option<At<Wear>>,
        /// The same design in other lengths.
        sizes: Option<Vec<Size>>,
        /// Other colours: under each name the beads that change.
        colourways: Option<Dict<Dict<Recolour>>>,
        /// What the maker asks for her work.
        price: Option<At<Price>>,
        /// The designer's own figures, to be checked.
        expect: Option<Expect>,
        /// How the wearer looks after the piece.
        care: Option<String>,
        /// Anything else the maker should know.
        notes: Option<String>,
        /// Codes of warnings and advice that are meant to be so, anywhere in the piece.
        allow: Option<Vec<At<Allowed>>>,
    }
);

record!(
    /// One kind of bead.
    Bead {
        /// Its name on the sheet; else its id.
        name: Option<String>,
        /// Its outline along the hole.
        shape: At<Shape>,
        /// Across the hole: `6 mm`; or across x along: `6 x 4 mm`; seed beads: `11/0`.
        size: At<BeadSize>,
        /// Through the flat side, for squares and coins.
        thick: Option<At<Length>>,
        /// Diameter of the hole.
        hole: Option<At<Length>>,
        /// Which way its hole runs; across it, it hangs from a ring or bail.
        drilled: Option<At<Drilled>>,
        /// How many holes lie side by side in it, each for a strand of its own; 1 unless you say.
        holes: Option<At<Whole>>,
        /// How far apart they are, from middle to middle.
        apart: Option<At<Length>>,
        /// Plus or minus on the length along the hole.
        tolerance: Option<At<Length>>,
        /// So many strung measure so much: `10 = 59 mm`.
        measured: Option<At<Measured>>,
        /// Looks up a density.
        material: Option<At<String>>,
        /// Mass of one, instead of a material.
        mass: Option<Mass>,
        /// Its colour, as `"#5d7f5b"`; unless you say, that of the metal that is its material.
        colour: Option<BeadColour>,
        /// How it takes the light.
        finish: Option<Finish>,
        /// How it is sold.
        sold: Option<At<Sold>>,
        /// Beads that can stand in for it.
        instead: Option<Vec<At<String>>>,
    }
);

record!(
    /// One kind of cord.
    Cord {
        /// Its name on the sheet; else its id.
        name: Option<String>,
        /// What it is made of.
        kind: CordKind,
        /// Its diameter.
        diameter: Option<At<Length>>,
        /// Its American wire gauge, instead of a diameter.
        gauge: Option<At<Whole>>,
        /// Of memory wire, the inside diameter of its coil.
        coil: Option<At<Length>>,
        /// Of a chain, so many links measure so much: `10 = 28 mm`.
        links: Option<At<Measured>>,
        /// Cord that one tight overhand knot takes up, beyond its length on the strand: what ten knots make
        /// the cord shorter, divided by ten. Else ten times the diameter.
        "take-up" as take_up: Option<Length>,
        /// Breaking strength from the spool.
        strength: Option<Force>,
        /// Of wire, how many filaments lie in it: 1 in solid wire; 7, 19, 21 or 49 in stranded. Else 49.
        filaments: Option<At<Whole>>,
        /// Of wire, its metal: `copper`. Else steel.
        material: Option<At<String>>,
        /// How stiff it is, E I: `1.8 N mm²`. Else wire is as stiff as its filaments, and other cord not at all.
        stiffness: Option<At<Stiffness>>,
        /// Mass of a metre: `0.6 g/m`.
        mass: Option<PerMetre>,
        /// Whether it comes with its own needle.
        needle: Option<YesNo>,
        /// Its colour.
        colour: Option<Colour>,
        /// How it is sold.
        sold: Option<At<Sold>>,
    }
);

record!(
    /// One kind of finding.
    Finding {
        /// Its name on the sheet; else its id.
        name: Option<String>,
        /// What it does.
        kind: At<FindingKind>,
        /// Along the piece; of a pin, its wire.
        length: Option<At<Length>>,
        /// Outside diameter or width.
        outside: Option<At<Length>>,
        /// Inside diameter: of a crimp or ring, or of a cone just inside its mouth.
        inside: Option<At<Length>>,
        /// Outside diameter of a cone's wide end.
        mouth: Option<At<Length>>,
        /// Inside diameter of a cone's narrow end.
        tip: Option<At<Length>>,
        /// Diameter of its wire.
        wire: Option<At<Length>>,
        /// American wire gauge of its wire.
        gauge: Option<At<Whole>>,
        /// Length of one chain link.
        link: Option<At<Length>>,
        /// Distance between a bar's holes.
        spacing: Option<At<Length>>,
        /// How many holes a bar has.
        holes: Option<At<Whole>>,
        /// Mass of one, or of a metre of chain.
        mass: Option<Mass>,
        /// What it is made of.
        material: Option<At<String>>,
        /// Its colour.
        colour: Option<Colour>,
        /// Of a tassel, how many threads hang.
        threads: Option<At<Whole>>,
        /// Of a tassel that is made with the piece, the cord that it is wound of.
        cord: Option<At<String>>,
        /// Of a charm, its outline.
        outline: Option<At<Outline>>,
        /// Whether a clasp opens by itself when pulled.
        breakaway: Option<YesNo>,
        /// Whether a jump ring is soldered shut and does not open.
        closed: Option<At<YesNo>>,
        /// Of a knot cover, the bead that the knot in it is tied round.
        bead: Option<At<String>>,
        /// The finding with which it is sold as one thing.
        "comes with" as comes_with: Option<At<String>>,
        /// How it is sold.
        sold: Option<At<Sold>>,
    }
);

record!(
    /// Several kinds of bead that are bought as one thing.
    Assorted {
        /// Its name on the sheet; else its id.
        name: Option<String>,
        /// How it is sold: by graduated strand, or by mix.
        sold: At<Sold>,
        /// How many of each bead one graduated strand holds, or in which parts a mix holds them.
        holds: Dict<At<Whole>>,
    }
);

record!(
    /// How an article is sold.
    Sold {
        /// strand, hank, pack, each, grams, spool, length or turns; of several kinds together graduated strand or mix.
        by: At<SoldBy>,
        /// How many strands a hank has.
        strands: Option<Whole>,
        /// Length of a strand, one of a hank, a spool or cut piece.
        length: Option<Length>,
        /// How many in a pack, or turns of a coil.
        count: Option<Whole>,
        /// How much by mass.
        mass: Option<Mass>,
        /// Price of one such lot.
        price: Option<Money>,
        /// Of whom it is bought.
        from: Option<String>,
    }
);

record!(
    /// One strand.
    Strand {
        /// Its name.
        name: At<String>,
        /// The cord it is strung on; of earrings also a head pin or eye pin, on which it hangs straight down.
        cord: At<String>,
        /// Finished, from one end loop to the other.
        length: Option<At<Length>>,
        /// What closes each end: a finding, several from the loop inward, `knot`, or of memory wire `loop`.
        ends: Option<Ends>,
        /// Extra cord for each end, beyond the finished length.
        allowance: Option<At<Length>>,
        /// What is strung.
        beads: At<Vec<At<Item>>>,
        /// How the beads come to rest.
        settle: Option<At<Settle>>,
        /// Bare cord to leave, for `repeat: fill`.
        leave: Option<At<Length>>,
        /// A knot of this length between all beads.
        knots: Option<At<Length>>,
        /// Whether the cord is folded, both legs through every bead, and its fold hitched with a
        /// lark's head at the first end.
        doubled: Option<YesNo>,
        /// Codes of warnings and advice that are meant to be so, of what stands in this strand.
        allow: Option<Vec<At<Allowed>>>,
    }
);

record!(
    /// What joins the strands' ends.
    Closure {
        /// On both sides, outward from the strands.
        "each side" as each_side: Option<Parts>,
        /// Then on the first ends' side.
        left: Option<Parts>,
        /// Then on the last ends' side.
        right: Option<Parts>,
        /// Of an earring: what both ends hang from together, so that the strand is a loop. Of another piece: what
        /// both ends go through where they meet, and what hangs there.
        "both ends" as both_ends: Option<At<Parts>>,
        /// Of a necklace whose ends nothing joins: how it is worn.
        open: Option<At<Open>>,
        /// How far the end that goes through the other hangs below it, as it is drawn.
        tail: Option<At<Length>>,
    }
);

impl Closure {
    /// Whether anything stands on one of its sides.
    #[must_use]
    pub fn has_sides(&self) -> bool {
        [&self.each_side, &self.left, &self.right].into_iter().any(Option::is_some)
    }
}

record!(
    /// The body that the piece is made for.
    Wear {
        /// Girth of the neck's base.
        "neck base" as neck_base: Option<Length>,
        /// Girth of the wrist.
        wrist: Option<Length>,
        /// Girth of the ankle.
        ankle: Option<Length>,
        /// Room between limb and piece.
        ease: Option<Length>,
        /// A body from the table, by percentile: `woman 50`.
        body: Option<Body>,
        /// How many times as broad as deep the neck is.
        "breadth to depth" as breadth_to_depth: Option<Ratio>,
        /// How far the chest leans back from upright.
        "chest tilt" as chest_tilt: Option<Tilt>,
        /// Whether the piece is for a child.
        child: Option<YesNo>,
    }
);

record!(
    /// The same design in another length.
    Size {
        /// Its name.
        name: At<String>,
        /// How much longer or shorter each strand is; else as much as its wearer's girth and ease differ from the
        /// pattern's.
        change: Option<At<Change>>,
        /// The body that this size is made for, as far as it is another.
        wear: Option<At<Wear>>,
    }
);

record!(
    /// A bead's other colour.
    Recolour {
        /// Its other name.
        name: Option<String>,
        /// Its other colour.
        colour: Colour,
        /// Its other finish.
        finish: Option<Finish>,
    }
);

record!(
    /// What the maker asks for her work.
    Price {
        /// Time of work.
        labour: Hours,
        /// Pay for an hour.
        rate: Money,
        /// Other costs: a sum, or a share of materials and labour such as `15 %`.
        overhead: Option<Overhead>,
        /// The shop's price is the cost times this; 2 unless you say.
        wholesale: Option<Factor>,
        /// The wearer's price is the cost times this; 2.5 unless you say.
        retail: Option<Factor>,
    }
);

record!(
    /// The designer's own figures.
    Expect {
        /// By strand name.
        strands: Option<Dict<ExpectStrand>>,
        /// Counts over the whole piece, by bead.
        beads: Option<Dict<At<Whole>>>,
    }
);

record!(
    /// The designer's own figures for a strand.
    ExpectStrand {
        /// Counts by bead.
        beads: Option<Dict<At<Whole>>>,
        /// How long the beads run: `12 in within 1/4 in`.
        beaded: Option<At<Within>>,
        /// The finished length.
        finished: Option<At<Within>>,
        /// What to cut.
        cut: Option<At<Within>>,
    }
);

pub use super::items::{ClosurePart, Ends, Parts};
pub use super::values::{Factor, Overhead};
