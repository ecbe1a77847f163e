//! Neighbouring beads where a strand that hangs bends: rims touch, and the cord between lies bare.

#![allow(clippy::unwrap_used, reason = "a test without a piece fails")]

use std::fs;

use festoon::design::{Choice, Design, Strand, nth};
use festoon::drape::chain::Chain;
use festoon::drape::hang::{Link, solve};
use festoon::drape::{Hung, Seat, Waypoint, hang_alone, on_way};
use festoon::geometry::{Point, Point3};
use festoon::source::Source;
use festoon::units::Length;
use festoon::{Piece, piece};

/// A bend in radians up to which neighbours part (`drape/open.rs`).
const SHARPEST: f64 = 2.0;

/// Rounds of strands in contact come to rest where nothing moves by more than this, in mm (`drape/contact/rounds.rs`).
const STILL: f64 = 0.01;

/// Something on a strand, where it is and the unit vector along its hole.
type Placed<'a> = (&'a Seat, Point3, Point3);

/// Turns of less than this, in radians, are rounding, and have no side.
const ROUNDING: f64 = 1e-9;

/// What is worn lies still where no joint moves by more than this, in mm (`drape/body/mod.rs`).
const LIES_STILL: f64 = 0.05;

/// How much deeper in mm two neighbours on a strand lie in one another as they are drawn than where they are packed
/// straight; less than nothing where they are parted.
fn depth(design: &Design, strand: &Strand, [(one, at, along), (other, next, onward)]: [Placed<'_>; 2]) -> Option<f64> {
    let bits = &strand.trains[one.train].bits;
    let (first, second) = (&bits[one.bit], bits.get(other.bit)?);
    let beads = [first, second].map(|bit| bit.what.bead().map(|at| &design.beads[at]));
    let (Some(front), Some(back)) = (beads[0], beads[1]) else { return None };
    let shared = [first, second].iter().any(|bit| design.shared_bit(bit, strand).is_some());
    if one.train != other.train || one.bit + 1 != other.bit || front.hangs() || back.hangs() || shared {
        return None;
    }
    // Beads are alike on all sides: the inner side of the bend is that of -y.
    let inward = onward - along * onward.dot(along);
    let inward = inward.unit().filter(|_| turn(along, onward) > ROUNDING).unwrap_or_default();
    let centre = Point::new((next - at).dot(along), 0.0 - (next - at).dot(inward));
    let [near, far] = [front.hole.value(), back.hole.value()].map(|hole| 0.5 * hole);
    let noses = [front.facing_noses()[1].beside(far), back.facing_noses()[0].beside(near)];
    let packed = Point::new(first.length() - first.before + second.before, 0.0);
    let by = |centre, turn: f64| noses[0].parted(&noses[1], centre, turn).by;
    Some(by(packed, 0.0) - by(centre, turn(along, onward)))
}

/// The angle between two unit vectors, in radians.
fn turn(one: Point3, other: Point3) -> f64 {
    libm::atan2(one.cross(other).length(), one.dot(other))
}

/// How deep neighbours lie in one another at most, and how far they are parted where they turn by as much as a degree.
fn gapes(design: &Design, strand: &Strand, placed: &[Placed<'_>]) -> [f64; 2] {
    let mut gapes = [0.0_f64; 2];
    for pair in placed.windows(2).filter(|pair| turn(pair[0].2, pair[1].2) < SHARPEST) {
        let deep = depth(design, strand, [pair[0], pair[1]]).unwrap_or_default();
        gapes = [gapes[0].max(deep), gapes[1].max(-deep)];
    }
    gapes
}

/// As they hang on the board.
fn on_board(hung: &Hung) -> Vec<Placed<'_>> {
    hung.seats.iter().map(|seat| (seat, Point3::new(seat.centre.x, seat.centre.y, seat.near), seat.along())).collect()
}

/// As they lie on the neck.
fn on_neck<'a>(hung: &'a Hung, line: &[Waypoint]) -> Vec<Placed<'a>> {
    let place = |seat: &'a Seat| on_way(line, seat.station).map(|(at, along)| (seat, at, along));
    hung.seats.iter().filter_map(place).collect()
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
            let [deep, gap] = gapes(&design, strand, &on_board(hung));
            let name = path.display();
            assert!(deep < STILL && gap < STILL, "{name}, {}: {deep} mm deep, {gap} mm apart", strand.name);
            seen += 1;
        }
    }
    assert!(seen > 15, "{seen} strands were looked at");
}

/// The same on the neck, in pieces of 8 mm at most, which are straight: what opens between them is not spread over them.
#[test]
fn no_neighbours_lie_in_one_another_on_the_neck() {
    let patterns = fs::read_dir("patterns").unwrap().map(|file| file.unwrap().path());
    let (mut seen, mut all) = (0, Vec::new());
    for path in patterns.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")) {
        let text = fs::read_to_string(&path).unwrap();
        let Some(Piece { design, drape, .. }) = piece(&Source::new("shipped", &text), &Choice::default(), None).0
        else {
            continue;
        };
        let Some(worn) = drape.worn.as_ref().filter(|_| design.twist.is_none()) else { continue };
        for ((strand, hung), line) in design.strands.iter().zip(&drape.strands).zip(&worn.lines) {
            // A loop whose ends are in front is cut at its nape, out of sight, and turns there about one joint.
            let is_hidden =
                |station: f64| line.iter().rfind(|spot| spot.station <= station).is_some_and(|spot| spot.hidden);
            let mut placed = on_neck(hung, line);
            placed.retain(|(seat, ..)| design.closure.open().is_none() || !is_hidden(seat.station));
            let [deep, _] = gapes(&design, strand, &placed);
            all.extend((deep >= LIES_STILL).then(|| format!("{}, {}: {deep:.3}", path.display(), strand.name)));
            seen += 1;
        }
    }
    assert!(all.is_empty() && seen > 15, "of {seen}, mm deep: {all:?}");
}

/// By a heavy bead its row bends sharply, between pieces of two beads each. What opens there is not spread over these.
#[test]
fn beads_beside_a_kink_on_the_neck_touch_and_do_not_overlap() {
    let beads = "beads:\n  heavy: { shape: round, size: 9 mm, hole: 1 mm, mass: 90 g, colour: '#336699' }
  four: { shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, colour: '#336699' }";
    let strand = "strands: [{ name: s, cord: thread, ends: knot, beads: [58 four, heavy, 58 four] }]\n";
    let Piece { design, drape, .. } = of(&format!("{}{strand}", STOCK.replace("beads:", beads)));
    let (strand, worn) = (&design.strands[nth(0)], drape.worn.as_ref().unwrap());
    let placed = on_neck(&drape.strands[nth(0)], &worn.lines[nth(0)]);
    let [deep, _] = gapes(&design, strand, &placed);
    let sharpest = placed.windows(2).map(|pair| turn(pair[0].2, pair[1].2)).fold(0.0, f64::max);
    assert!(worn.unrest.is_none() && sharpest > 0.3, "{:?}, {sharpest}", worn.unrest);
    assert!(deep < LIES_STILL, "{deep} mm deep");
}

/// Three strands of nearly one length, gathered in cones, which lie on one another.
#[test]
fn beads_of_strands_that_crowd_on_the_neck_do_not_overlap_along_them() {
    let strand = |count: u32| format!("{{ name: s{count}, cord: thread, ends: knot, beads: [{count} six] }}");
    let six = "beads:\n  six: { shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#336699' }";
    let findings = "findings:
  cone: { kind: cone, length: 14 mm, inside: 9 mm, mouth: 10 mm, tip: 1.5 mm, mass: 0.9 g }
  eye: { kind: eye pin, gauge: 21, length: 50 mm, mass: 0.2 g }
  hook: { kind: clasp, length: 12 mm, mass: 0.9 g }\n";
    let strands = [70, 73, 76].map(strand).join(", ");
    let rest = format!("{findings}strands: [{strands}]\nclosure: {{ each side: [eye, cone], right: [hook] }}\n");
    let Piece { design, drape, .. } = of(&format!("{}{rest}", STOCK.replace("beads:", six)));
    let worn = drape.worn.as_ref().unwrap();
    assert!(worn.unrest.is_none(), "{:?}", worn.unrest);
    for ((strand, hung), line) in design.strands.iter().zip(&drape.strands).zip(&worn.lines) {
        let [deep, _] = gapes(&design, strand, &on_neck(hung, line));
        assert!(deep < LIES_STILL, "{}: {deep} mm deep", strand.name);
    }
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
