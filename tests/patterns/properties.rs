//! What is true of every shipped pattern in every size and colourway.

use std::collections::BTreeSet;

use festoon::design::{Bead, Design, Index, Strand, What, nth};
use festoon::drape::chain::Chain;
use festoon::drape::{Drape, Hung, Joint};
use festoon::geometry::Point;
use festoon::materials::{Amount, Article, Order, materials};
use festoon::remark::Level;
use festoon::{Piece, design::Choice};

use super::shipped::{Shipped, named, shipped};

/// Lengths in mm that differ by less are the same: rounding in sums of some hundred links.
const SAME: f64 = 1e-6;
/// A row may be longer than its strand by less than this, as it must be to be overfull.
const OVER: f64 = 1.1e-3;

fn every(check: impl Fn(&str, &Piece)) {
    for shipped in shipped() {
        for choice in shipped.choices() {
            let (piece, _) = shipped.piece(&choice);
            check(&format!("{} {choice:?}", shipped.name), &piece);
        }
    }
}

fn every_strand(check: impl Fn(&str, &Design, &Strand, &Hung)) {
    every(|what, piece| {
        for (strand, hung) in piece.design.strands.iter().zip(&piece.drape.strands) {
            check(&format!("{what} {}", strand.name), &piece.design, strand, hung);
        }
    });
}

#[test]
fn beads_bare_cord_and_ends_make_up_the_finished_length() {
    every_strand(|what, _, strand, _| {
        let ends: f64 = strand.ends.iter().map(|end| end.takes.value()).sum();
        let whole = strand.beaded().value() + strand.bare().value() + ends;
        assert!((whole - strand.finished.value()).abs() < OVER, "{what}: {whole} is not {}", strand.finished);
    });
}

#[test]
fn trains_lie_inside_their_strand_one_after_another() {
    every_strand(|what, _, strand, hung| {
        let mut at = strand.ends[0].takes.value();
        for (train, start) in strand.trains.iter().zip(&hung.starts) {
            assert!(*start >= at - SAME, "{what}: {start} is before {at}");
            at = start + train.length();
        }
        let room = strand.finished.value() - strand.ends[1].takes.value();
        assert!(at <= room + OVER, "{what}: {at} is beyond {room}");
    });
}

#[test]
fn seats_follow_one_another_inside_the_strand() {
    every_strand(|what, _, strand, hung| {
        let stations: Vec<_> = hung.seats.iter().map(|seat| seat.station).collect();
        assert!(stations.windows(2).all(|pair| pair[0] < pair[1]), "{what}: {stations:?}");
        let inside = |station: &f64| (0.0..=strand.finished.value()).contains(station);
        assert!(stations.iter().all(inside), "{what}: {stations:?}");
        let seated = strand.bits().filter(|bit| bit.what != What::Gap).count();
        assert_eq!(hung.seats.len(), seated, "{what}");
    });
}

/// The shipped piece whose strands come towards who looks and go away: its links are seen shortened.
const TWISTED: &str = "hawser";

#[test]
fn twisted_strands_are_seen_no_longer_than_they_are() {
    let (piece, _) = named(TWISTED).piece(&Choice::default());
    for (strand, hung) in piece.design.strands.iter().zip(&piece.drape.strands) {
        let seen: f64 = hung.joints.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
        let twisted = piece.design.twist.as_ref().unwrap().length().value();
        assert!(seen > twisted - 0.5 && seen < strand.finished.value(), "{seen}");
        // Along its way it is stretched or shrunk by no more than the line's bend and gathered ends make of it.
        let over = |pair: &[Joint]| pair[0].at.distance(pair[1].at) - 1.01 * (pair[1].station - pair[0].station);
        assert!(hung.joints.windows(2).map(over).fold(f64::NEG_INFINITY, f64::max) < 0.0, "{}", strand.name);
    }
}

/// Half the breadth of the broadest bead that is shipped, in mm, and more.
const BROAD: f64 = 10.0;

/// By how much more than it takes straight a link may reach, as its beads part from their neighbours at its two bends.
fn parting(joints: &[Joint], link: usize) -> f64 {
    let along = |at: usize| Some((joints.get(at + 1)?.at - joints.get(at)?.at).angle());
    let turn = |from: Option<f64>, to: Option<f64>| {
        let turned = (to? - from?).rem_euclid(std::f64::consts::TAU);
        Some(turned.min(std::f64::consts::TAU - turned))
    };
    let turns = [turn(link.checked_sub(1).and_then(along), along(link)), turn(along(link), along(link + 1))];
    turns.into_iter().flatten().map(|turn| BROAD * libm::tan(turn / 2.0)).sum()
}

/// Beads part where a strand bends: bare cord gives that, what is left bare for the round too, and what lacks is told. Cord
/// at the inner side of holes makes the way along their axes longer still.
#[test]
fn no_link_is_stretched() {
    every_strand(|what, design, strand, hung| {
        if !what.starts_with(TWISTED) {
            let spare = Chain::new(design, strand, &hung.starts).spare;
            let (mut all, mut most) = (0.0, 0.0);
            for (link, pair) in hung.joints.windows(2).enumerate() {
                let (length, chord) = (pair[1].station - pair[0].station, pair[0].at.distance(pair[1].at));
                let parts = parting(&hung.joints, link);
                assert!(chord < length + spare[link] + parts + SAME, "{what} at {}: {chord}", pair[0].station);
                (all, most) = (all + chord - length, most + parts);
            }
            let told = spare.iter().sum::<f64>() + hung.lacks;
            assert!((told - SAME..told + most + SAME).contains(&all), "{what}: {all} longer, {told} told");
        }
        let last = hung.joints.last().unwrap();
        assert!((last.station - strand.finished.value()).abs() < OVER, "{what}: ends at {}", last.station);
        // A strand hangs from its ends, or from where it leaves a rail.
        let held = |end: &Point| hung.joints.iter().any(|joint| joint.at.distance(*end) < SAME);
        assert!(hung.ends.iter().all(held), "{what}: misses its end");
        assert!(hung.residual < 1e-9 * strand.finished.value(), "{what}: {}", hung.residual);
    });
}

#[test]
fn the_ring_holds_every_seat_in_order() {
    every(|what, piece| {
        // What lies open on memory wire is not closed.
        let closed = piece.design.spring().is_none();
        for ring in piece.drape.rings.iter().filter(|_| closed) {
            assert_eq!(ring.round.seats.len(), piece.drape.strands[ring.strand].seats.len(), "{what}");
            let seats = ring.round.seats.iter().map(|seat| seat.centre);
            let way: Vec<_> =
                [ring.round.ends[0]].into_iter().chain(seats).chain(ring.closing.iter().copied()).collect();
            let turn = |pair: &[Point]| (pair[1].angle() - pair[0].angle()).rem_euclid(std::f64::consts::TAU);
            assert!(way.windows(2).all(|pair| turn(pair) < 1.5), "{what}: {way:?}");
            let whole: f64 = way.windows(2).map(turn).sum();
            assert!((whole - std::f64::consts::TAU * f64::from(piece.design.rounds())).abs() < 1e-9, "{what}: {whole}");
            let inside = ring.inside_girth / std::f64::consts::TAU;
            assert!(way.iter().all(|at| at.length() > inside), "{what}");
        }
    });
}

#[test]
fn a_loop_hangs_from_both_ends_side_by_side() {
    let (piece, _) = named("whelk").piece(&Choice::default());
    let hung = &piece.drape.strands[nth(0)];
    // The sides are held as far apart as the beads, of size 8/0, are broad.
    assert!((hung.ends[1].x - hung.ends[0].x - 2.5).abs() < SAME && hung.ends[0].y == hung.ends[1].y);
    let lowest = hung.seats.iter().min_by(|a, b| a.centre.y.total_cmp(&b.centre.y)).unwrap();
    assert!(matches!(lowest.bit(&piece.design.strands[nth(0)]).what, What::Dangle(_)));
    for (seat, other) in hung.seats.iter().zip(hung.seats.iter().rev()) {
        let middle = (seat.centre.x + other.centre.x - hung.ends[0].x - hung.ends[1].x) / 2.0;
        assert!(middle.abs() < SAME && (seat.centre.y - other.centre.y).abs() < SAME, "{seat:?} {other:?}");
    }
    let (least, _) = piece.design.piece_length();
    // The ear wire of 18 mm, the loop as deep as it hangs, and the branch below it.
    let What::Dangle(branch) = &lowest.bit(&piece.design.strands[nth(0)]).what else { panic!() };
    let deep = hung.ends[0].y - lowest.centre.y;
    assert!((least.value() - 18.0 - deep - branch.drop).abs() < 0.01, "{least:?} for {deep}");
}

#[test]
fn every_bead_that_is_strung_is_bought() {
    every(|what, piece| {
        let bought = bought(&piece.design);
        for (at, bead) in piece.design.beads.entries() {
            let strung: u32 = piece.design.strands.iter().map(|strand| strand.counts(&piece.design)[at]).sum();
            assert!(strung > 0, "{what}: {} is in the legend and not strung", bead.id);
            // A bead with several holes hangs on as many strands, and is there once.
            let holes = bead.bores.map_or(1, |bores| bores.count);
            assert!(strung.is_multiple_of(holes), "{what}: {} on {strung} strands", bead.id);
            // Knots at the ends may be tied round beads, which are no part of the row.
            let knotted = piece.design.strands.iter().flat_map(|strand| strand.in_end_knots(&piece.design));
            let knotted = u32::try_from(knotted.filter(|bead| *bead == at).count()).unwrap();
            assert_eq!(
                bought[at.number()],
                Some(u64::from((strung / holes + knotted) * piece.design.copies)),
                "{what}: {}",
                bead.id
            );
        }
    });
}

/// What the materials say is needed of each bead.
fn bought(design: &Design) -> Vec<Option<u64>> {
    let materials = materials(design, &Order::default());
    let need = |at: Index<Bead>| {
        let line = materials.lines.iter().find(|line| line.article == Article::Bead(at))?;
        match line.need {
            Amount::Count(count) => Some(count),
            Amount::Length(_) => None,
        }
    };
    design.beads.indices().map(need).collect()
}

#[test]
fn a_colourway_moves_nothing() {
    for shipped in shipped() {
        let (plain, _) = shipped.piece(&Choice::default());
        for choice in shipped.choices().iter().filter(|choice| choice.colourway.is_some()) {
            let (piece, _) = shipped.piece(choice);
            assert_eq!(places(&piece.drape), places(&plain.drape), "{} {choice:?}", shipped.name);
            assert_ne!(piece.palette.beads, plain.palette.beads, "{} {choice:?}", shipped.name);
        }
    }
}

fn places(drape: &Drape) -> Vec<Vec<festoon::drape::Seat>> {
    drape.strands.iter().map(|hung| hung.seats.clone()).collect()
}

#[test]
fn warnings_are_those_that_the_opening_comment_names() {
    let showing: Vec<_> = shipped().into_iter().filter(|shipped| !warnings(shipped).is_empty()).collect();
    for shipped in &showing {
        for code in warnings(shipped) {
            let named = shipped.opening().contains(&format!("`{code}`"));
            assert!(named, "{}: the opening comment does not name {code}", shipped.name);
        }
    }
    assert!(showing.len() <= 2, "at most two patterns show a warning");
}

/// Codes of the warnings of all variants.
fn warnings(shipped: &Shipped) -> BTreeSet<&'static str> {
    let remarks = shipped.choices().into_iter().flat_map(|choice| shipped.piece(&choice).1);
    remarks.filter(|remark| remark.level() == Level::Warning).map(|remark| remark.code().name()).collect()
}

#[test]
fn every_pattern_opens_with_what_one_should_see() {
    for shipped in shipped() {
        assert!(shipped.opening().starts_with("One sees "), "{}", shipped.name);
    }
}
