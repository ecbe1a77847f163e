//! Whether what hangs side by side from a bar's loops has room there.

use crate::design::{Bit, Dangle, Design, Joins, Strand, What};
use crate::drape::{Drape, Hung};
use crate::geometry::Point;
use crate::remark::Remark;
use crate::remark::said::hang::Hang;
use crate::units::Length;

/// How far in mm neighbours may lie in one another: they turn aside by that. An assumption.
const INTO: f64 = 0.5;

/// A remark about each two neighbours that hang in one another.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let spaced = matches!(design.closure.joins, Joins::Above(_));
    let hung = design.strands.iter().zip(&drape.strands).filter(|_| spaced);
    let rows: Vec<_> = hung.map(|(strand, hung)| (strand, bodies(strand, hung, design))).collect();
    rows.windows(2).filter_map(|pair| crowded(&pair[0], &pair[1])).collect()
}

/// Something that hangs: its middle, and half of its breadth and height in mm.
struct HangingBox<'a> {
    name: &'a str,
    at: Point,
    half: [f64; 2],
}

/// All beads and findings of a strand that hangs straight down, with those that hang from it.
fn bodies<'a>(strand: &Strand, hung: &Hung, design: &'a Design) -> Vec<HangingBox<'a>> {
    let on_cord = hung.seats.iter().map(|seat| (seat.bit(strand), seat.centre));
    let all = on_cord.flat_map(|(bit, at)| match &bit.what {
        What::Dangle(dangle) => below(dangle, at, strand, design),
        _ => body(bit, at, strand, design).into_iter().collect(),
    });
    all.collect()
}

/// What hangs on a branch, from its lowest point up.
fn below<'a>(dangle: &Dangle, from: Point, strand: &Strand, design: &'a Design) -> Vec<HangingBox<'a>> {
    let mut foot = from.y - dangle.drop;
    let each = dangle.bits.iter().rev().filter_map(|bit| {
        let at = Point::new(from.x, foot + 0.5 * bit.length());
        foot += bit.length();
        body(bit, at, strand, design)
    });
    each.collect()
}

/// A finding of which nobody knows how broad it is takes what its cord does.
fn body<'a>(bit: &Bit, at: Point, strand: &Strand, design: &'a Design) -> Option<HangingBox<'a>> {
    let (name, across) = match bit.what {
        What::Bead(bead) => (&design.beads[bead].name, design.beads[bead].across),
        What::Finding(finding) => {
            let finding = &design.findings[finding];
            (&finding.name, finding.across().unwrap_or_else(|| strand.cord_width(design)))
        }
        What::Gap | What::Knot | What::Dangle(_) => return None,
    };
    Some(HangingBox { name, at, half: [0.5 * across.value(), 0.5 * bit.length()] })
}

/// How deep two lie in one another, across: they are taken as ellipses.
fn into(one: &HangingBox<'_>, other: &HangingBox<'_>) -> f64 {
    let apart = [one.at.x - other.at.x, one.at.y - other.at.y].map(f64::abs);
    let room = [0, 1].map(|way| one.half[way] + other.half[way]);
    let beside = 1.0 - (apart[1] / room[1]).powi(2);
    if beside > 0.0 { room[0] * beside.sqrt() - apart[0] } else { 0.0 }
}

fn crowded(one: &(&Strand, Vec<HangingBox<'_>>), other: &(&Strand, Vec<HangingBox<'_>>)) -> Option<Remark> {
    let pairs = one.1.iter().flat_map(|body| other.1.iter().map(move |beside| (body, beside)));
    let worst = pairs.filter(|(one, other)| one.at.x != other.at.x).map(|(one, other)| (into(one, other), one, other));
    let (deep, body, beside) = worst.max_by(|a, b| a.0.total_cmp(&b.0)).filter(|(deep, ..)| *deep > INTO)?;
    let apart = Length::mm((body.at.x - beside.at.x).abs());
    let strands = [one.0, other.0].map(|strand| strand.name.clone());
    let bodies = [body, beside].map(|body| body.name.to_owned());
    let said = Hang::DropsCrowd { strands, bodies, apart, deep: Length::mm(deep) };
    Some(Remark::new(said).at(other.0.place))
}
