//! How deep neighbouring strands of shipped patterns lie in one another: the tables of DEVELOPERS.md.
//!
//! On the neck that is reckoned here from the places of beads alone, as any other program reads them: each is a ball, or one
//! that is swept along its hole.

use std::fs;

use festoon::Piece;
use festoon::design::{Choice, Index, Strand};
use festoon::drape::body::skin::Surface;
use festoon::drape::{Clearance, Drape, Worn, WornClearance, hang_alone, on_way};
use festoon::geometry::Point3;

use super::shipped::{Shipped, root, shipped};

/// What outlines are known to, in mm: a round one stands out from its polygon by 0.02 mm, on both sides of a gap.
const KNOWN: f64 = 0.04;

/// How deep, in mm; less than nothing is a gap.
fn deep(clearance: &Clearance) -> String {
    format!("{:.2} mm", 0.0 - clearance.least).replace("-0.00", "0.00")
}

/// The rows of a pattern, one for each two strands beside one another, alone and in contact.
fn rows(shipped: &Shipped) -> Vec<String> {
    let (piece, _) = shipped.piece(&Choice::default());
    let Drape { clearances, unrest, worn, .. } = &piece.drape;
    assert_eq!(*unrest, None, "{}", shipped.name);
    assert!(worn.as_ref().is_none_or(|worn| worn.unrest.is_none()), "{} on the neck", shipped.name);
    let alone = hang_alone(&piece.design, None).unwrap().clearances;
    assert_eq!(alone.len(), clearances.len(), "{}", shipped.name);
    let row = |(alone, clearance): (&Clearance, &Clearance)| {
        assert!(clearance.least > -KNOWN, "{}: {clearance:?}", shipped.name);
        let [one, other] = clearance.between.map(|strand| &piece.design.strands[strand].name);
        let title = &piece.design.heading.title;
        format!("| {title} | {one}, {other} | {} | {} |", deep(alone), deep(clearance))
    };
    alone.iter().zip(clearances).map(row).collect()
}

#[test]
fn no_strand_of_a_shipped_pattern_lies_in_another_and_the_table_says_so() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let table: Vec<String> = shipped().iter().flat_map(rows).collect();
    let told = |row: &String| text.lines().any(|line| line == row);
    assert!(table.iter().all(told), "the table of DEVELOPERS.md is now\n{}", table.join("\n"));
}

/// How far from its ends strands are compared, in mm, as on the board.
const ENDS: f64 = 25.0;
/// How deep anything may lie in anything else on the neck, in mm.
const REST: f64 = 0.01;

/// Strands that are nearer to one another than this, in mm, are told to touch.
const TOUCHES: f64 = 0.05;

/// And where strands are twisted, which are tubes as wide as they are on average: half of what Hawser's rounds of 4 mm and its
/// seeds are wider than that, and what they come nearer where their line bends.
const TWISTED: f64 = 0.4;

/// A bead on the neck.
struct Swept {
    at: Point3,
    along: Point3,
    /// Half of the way along which its ball is swept, and how far that reaches.
    half: f64,
    reach: f64,
    station: f64,
}

impl Swept {
    fn ends(&self) -> [Point3; 2] {
        [self.at - self.along * self.half, self.at + self.along * self.half]
    }

    /// How far it is from another, outline to outline: the nearest places of two straight lines are found from both in turn,
    /// each time the nearest on the one to that on the other, which comes nearer each time as both are convex.
    fn gap(&self, other: &Self) -> f64 {
        let (mut one, mut to) = (self.at, other.nearest(self.at));
        for _ in 0..50 {
            one = self.nearest(to);
            to = other.nearest(one);
        }
        one.distance(to) - self.reach - other.reach
    }

    fn nearest(&self, place: Point3) -> Point3 {
        self.at + self.along * (place - self.at).dot(self.along).clamp(-self.half, self.half)
    }
}

/// The beads of a strand on the neck.
fn swept(piece: &Piece, worn: &Worn, strand: Index<Strand>) -> Vec<Swept> {
    let (strung, hung) = (&piece.design.strands[strand], &piece.drape.strands[strand]);
    let bead = |seat: &festoon::drape::Seat| {
        let bead = &piece.design.beads[seat.bit(strung).what.bead()?];
        let (at, along) = on_way(&worn.lines[strand], seat.station)?;
        let reach = 0.5 * bead.across.value();
        Some(Swept { at, along, half: (0.5 * bead.along.value() - reach).max(0.0), reach, station: seat.station })
    };
    hung.seats.iter().filter_map(bead).collect()
}

/// How deep beads of two strands lie in one another away from their ends, in mm; less than nothing is a gap.
fn deepest(piece: &Piece, worn: &Worn, between: [Index<Strand>; 2]) -> f64 {
    let [one, other] = between.map(|strand| {
        let length = piece.design.strands[strand].finished.value();
        let mut beads = swept(piece, worn, strand);
        beads.retain(|bead| (ENDS..=length - ENDS).contains(&bead.station));
        beads
    });
    let near = |bead: &&Swept, to: &Swept| bead.at.distance(to.at) - bead.half - to.half - bead.reach - to.reach;
    let least = |to: &Swept| {
        let bound = one.iter().map(|bead| near(&bead, to)).fold(f64::INFINITY, f64::min) + 20.0;
        one.iter().filter(|bead| near(bead, to) < bound).map(|bead| bead.gap(to)).fold(f64::INFINITY, f64::min)
    };
    0.0 - other.iter().map(least).fold(f64::INFINITY, f64::min)
}

/// The least of what is told of two strands on the neck: cord and findings as well as beads.
fn least_told(told: &WornClearance) -> f64 {
    told.least.map(|(least, _)| least).into_iter().chain(told.at_ends).fold(f64::INFINITY, f64::min)
}

/// The rows of a pattern on the neck, one for each two strands that follow one another.
fn rows_on_the_neck(shipped: &Shipped) -> Vec<String> {
    let (piece, _) = shipped.piece(&Choice::default());
    let Some(worn) = &piece.drape.worn else { return Vec::new() };
    let most = if piece.design.twist.is_some() { TWISTED } else { REST };
    let strands: Vec<_> = piece.design.strands.indices().collect();
    for strand in &strands {
        let beads = swept(&piece, worn, *strand);
        let out = |bead: &Swept| bead.ends().map(|end| worn.skin.at(end).0 - bead.reach);
        let deep = 0.0 - beads.iter().flat_map(out).fold(f64::INFINITY, f64::min);
        assert!(deep < REST, "{}: {deep} mm in the body", shipped.name);
    }
    let row = |pair: &[Index<Strand>]| {
        let deep = deepest(&piece, worn, [pair[0], pair[1]]);
        assert!(deep < most, "{}, {pair:?}: {deep} mm in one another on the neck", shipped.name);
        let told = worn.clearances.iter().find(|told| told.between == pair).map(least_told);
        assert!(deep < -TOUCHES || told.is_some_and(|told| told < REST - deep), "{}, {pair:?}: {told:?}", shipped.name);
        let [one, other] = [pair[0], pair[1]].map(|strand| &piece.design.strands[strand].name);
        let deep = format!("{deep:.2} mm").replace("-0.00", "0.00");
        format!("| {} | {one}, {other} | {deep} |", piece.design.heading.title)
    };
    strands.windows(2).map(row).collect()
}

#[test]
fn no_bead_of_a_shipped_pattern_lies_in_another_on_the_neck_and_the_table_says_so() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let table: Vec<String> = shipped().iter().flat_map(rows_on_the_neck).collect();
    let told = |row: &String| text.lines().any(|line| line == row);
    assert!(table.iter().all(told), "the table of DEVELOPERS.md is now\n{}", table.join("\n"));
}
