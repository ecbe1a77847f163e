//! Neighbouring beads where a strand that hangs bends: rims touch, and the cord between lies bare.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::fs;

use festoon::design::{Choice, Design, Strand, nth};
use festoon::drape::chain::Chain;
use festoon::drape::hang::{Link, solve};
use festoon::drape::{Hung, Seat, hang_alone};
use festoon::geometry::Point;
use festoon::source::Source;
use festoon::units::Length;
use festoon::{Piece, piece};

/// A bend in radians up to which neighbours part (`drape/open.rs`).
const SHARPEST: f64 = 2.0;

/// Rounds of strands in contact come to rest where nothing moves by more than this, in mm (`drape/contact/rounds.rs`).
const STILL: f64 = 0.01;

/// How much deeper in mm two neighbours on a strand lie in one another as they are drawn than where they are packed
/// straight; less than nothing where they are parted.
fn depth(design: &Design, strand: &Strand, [one, other]: [&Seat; 2]) -> Option<f64> {
    let bits = &strand.trains[one.train].bits;
    let (first, second) = (&bits[one.bit], bits.get(other.bit)?);
    let beads = [first, second].map(|bit| bit.what.bead().map(|at| &design.beads[at]));
    let (Some(front), Some(back)) = (beads[0], beads[1]) else { return None };
    let shared = [first, second].iter().any(|bit| design.shared_bit(bit, strand).is_some());
    let turn = other.angle - one.angle;
    if one.train != other.train || one.bit + 1 != other.bit || front.hangs() || back.hangs() || shared {
        return None;
    }
    let seen = (other.centre - one.centre).turned(-one.angle);
    // Beads are alike on both sides: the inner side of the bend is that of -y.
    let centre = Point::new(seen.x, -seen.y * turn.signum());
    let [near, far] = [front.hole.value(), back.hole.value()].map(|hole| 0.5 * hole);
    let noses = [front.facing_noses()[1].beside(far), back.facing_noses()[0].beside(near)];
    let packed = Point::new(first.length() - first.before + second.before, 0.0);
    let by = |centre, turn: f64| noses[0].parted(&noses[1], centre, turn).by;
    Some(by(packed, 0.0) - by(centre, turn.abs()))
}

/// How deep neighbours lie in one another at most, and how far they are parted where they turn by as much as a degree.
fn gapes(design: &Design, strand: &Strand, hung: &Hung) -> [f64; 2] {
    let mut gapes = [0.0_f64; 2];
    for pair in hung.seats.windows(2).filter(|pair| (pair[1].angle - pair[0].angle).abs() < SHARPEST) {
        let deep = depth(design, strand, [&pair[0], &pair[1]]).unwrap_or_default();
        gapes = [gapes[0].max(deep), gapes[1].max(-deep)];
    }
    gapes
}

fn of(text: &str) -> Piece {
    piece(&Source::new("t", text), &Choice::default(), None).0.unwrap()
}

/// All shipped pieces that hang from points; what lies over a rail turns at its edges, where no neck has any.
#[test]
fn no_neighbours_lie_in_one_another_and_none_gape() {
    let patterns = fs::read_dir("patterns").unwrap().map(|file| file.unwrap().path());
    let mut seen = 0;
    for path in patterns.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")) {
        let text = fs::read_to_string(&path).unwrap();
        let read = piece(&Source::new("shipped", &text), &Choice::default(), None).0;
        let Some(Piece { design, drape, .. }) = read.filter(|piece| !piece.design.is_ring()) else { continue };
        if design.closure.open().is_some() || design.twist.is_some() {
            continue;
        }
        for (strand, hung) in design.strands.iter().zip(&drape.strands).filter(|_| design.meeting().is_none()) {
            let [deep, gap] = gapes(&design, strand, hung);
            let name = path.display();
            assert!(deep < STILL && gap < STILL, "{name}, {}: {deep} mm deep, {gap} mm apart", strand.name);
            seen += 1;
        }
    }
    assert!(seen > 15, "{seen} strands were looked at");
}

const STOCK: &str = "festoon: 1\ntitle: t\nkind: necklace\nwear: { neck base: 370 mm }\nbeads:
  cube: { shape: cube, size: 4 mm, hole: 1 mm, mass: 0.2 g, colour: '#336699' }
  ball: { shape: round, size: 14 mm, hole: 1 mm, mass: 3 g, colour: '#336699' }
cords: { thread: { kind: thread, diameter: 0.3 mm, mass: 0.1 g/m } }\n";

/// A strand of 4 mm cubes.
fn cubes(length: &str, beads: &str) -> Piece {
    of(&format!("{STOCK}strands: [{{ name: only, cord: thread, ends: knot, {length} beads: [{beads}] }}]\n"))
}

/// By hand: equal cubes touch at their inner rims, so that these are as far apart along the row as cubes are long, and both
/// axes go on by 2 tan(t/2) for each turn t. Their cord lies 0.35 mm off the axes: it takes 2 (2 - 0.35) sin(t/2), of the
/// slack that is left for a round and a quarter; what it does not take lies bare.
#[test]
fn cubes_touch_at_their_inner_rims() {
    let Piece { design, drape, .. } = cubes("", "100 cube");
    let hung = &drape.strands[nth(0)];
    let rims = |seat: &Seat, along: f64| seat.centre + Point::new(along, 2.0).turned(seat.angle);
    let (mut parted, mut takes) = (0.0, 0.0);
    for pair in hung.seats.windows(2) {
        let apart = rims(&pair[0], 2.0).distance(rims(&pair[1], -2.0));
        assert!(apart < 1e-5, "{apart}");
        let half = 0.5 * (pair[1].angle - pair[0].angle);
        parted += 4.0 * libm::tan(half);
        takes += 2.0 * 1.65 * libm::sin(half);
    }
    let (strand, round) = (&design.strands[nth(0)], 1.25 * std::f64::consts::TAU * 1.65);
    assert!(
        strand.finished.value() == 400.0 && (strand.slack.value() - round).abs() < 0.02 * round,
        "{:?}",
        strand.slack
    );
    let length: f64 = hung.joints.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
    assert!((length - 400.0 - strand.slack.value() - parted + takes).abs() < 1e-4, "{length}: {parted}, {takes}");
    assert!((5.6..6.1).contains(&parted) && hung.lacks == 0.0, "a turn of some 2.9 radians, each 2 mm: {parted}");
}

/// Cord does not stretch: what parts beads is taken from the cord that lies bare beside them.
#[test]
fn bare_cord_gives_what_parts_beads() {
    let Piece { design, drape, .. } = cubes("length: 420 mm,", "50 cube, ball, 50 cube");
    let hung = &drape.strands[nth(0)];
    let length: f64 = hung.joints.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum();
    // Its cord lies at the inner side of each hole, 0.35 mm off the axes, and cuts the corner where they meet: beside cubes
    // alone as far out as their rims.
    let halves = || hung.seats.windows(2).map(|pair| 0.5 * (pair[1].angle - pair[0].angle));
    let least: f64 = halves().map(|half| 0.7 * libm::sin(half)).sum();
    let most: f64 = halves().map(|half| 4.0 * libm::tan(half) * (1.0 - libm::cos(half))).sum::<f64>() + least;
    let longer = length - (design.strands[nth(0)].finished + design.strands[nth(0)].slack).value();
    assert!((least..most).contains(&longer) && least > 0.9 && most < 1.3, "{least}, {longer}, {most}");
    assert_eq!(hung.lacks, 0.0);
}

/// What `drape/open.rs` leaves out, by statics: cubes that slide freely press on one another at their rims. So the inner
/// rims are a chain of links as long as cubes, whose weights, off its line by half a cube, act as if the force across were
/// greater alike in all links: it hangs as any chain between its own ends, half a cube inside of the strand's.
#[test]
fn cubes_that_slide_freely_would_hang_rounder_by_as_much_as_is_told() {
    let Piece { mut design, .. } = cubes("", "100 cube");
    // None of its cord is left bare.
    design = design.changed(|model| model.strands[nth(0)].slack = Length::ZERO).expect("a design");
    let drape = hang_alone(&design, None).unwrap();
    let (strand, hung) = (&design.strands[nth(0)], &drape.strands[nth(0)]);
    let chain = Chain::new(&design, strand, &hung.starts);
    let links: Vec<Link> = chain.links.iter().copied().filter(|link| link.length > 0.0).collect();
    let lean = Point::towards(hung.seats[0].angle).left() * 2.0;
    let rims = solve(&links, Point::new(hung.ends[1].x - 2.0 * lean.x, 0.0)).unwrap();
    let outer = |(joint, along): (&Point, &Point)| *joint + lean - along.left() * 2.0;
    let free: Vec<Point> = rims.joints.iter().zip(&rims.directions).map(outer).collect();
    let beside = |at: Point| free.iter().map(|free| free.distance(at)).fold(f64::INFINITY, f64::min);
    let most = hung.joints[..100].iter().map(|joint| beside(joint.at)).fold(0.0, f64::max);
    assert!((0.1..0.2).contains(&most), "{most} mm");
}
