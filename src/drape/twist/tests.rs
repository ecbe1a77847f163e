//! Torsades: where their strands lie as they hang, on the neck and round a limb.

use super::*;
use crate::design::Choice;
use crate::source::Source;

const HAWSER: &str = include_str!("../../../patterns/hawser.yaml");

fn design(text: &str) -> Design {
    crate::piece(&Source::new("hawser", text), &Choice::default(), None).0.unwrap().design
}

/// The line from two points and the ways of strands round it.
fn hung(design: &Design) -> (Vec<Link>, Hanging, Axis) {
    let links = line(&chains(design), design.twist.as_ref().unwrap().length().value());
    let hanging = solve(&links, Point::new(128.0, 0.0)).unwrap();
    let axis = Axis::new(&hung_line(&links, &hanging));
    (links, hanging, axis)
}

/// Where a strand is from one end of the line to the other, a millimetre from place to place.
fn places(design: &Design, at: Index<Strand>, axis: &Axis) -> Vec<Point3> {
    let way = Winding::new(design, design.twist.as_ref().unwrap(), at).way(axis);
    let stations = (0..).map(f64::from).take_while(|station| *station < design.strands[at].finished.value());
    stations.filter_map(|station| Some(on_way(&way, station)?.0)).collect()
}

/// Hawser's strands, shorter, round a wrist, with hardly any closure.
fn bracelet() -> crate::piece::Piece {
    let closure = "closure: { each side: [eye, cone], left: [{ links: 50 mm }], right: [hook] }";
    assert!(HAWSER.contains(closure));
    let text = HAWSER
        .replace(closure, "closure: { each side: [small] }")
        .replace("findings:\n", "findings:\n  small: { kind: jump ring, inside: 1.6 mm, wire: 0.4 mm }\n")
        .replace("kind: necklace", "kind: bracelet")
        .replace("twist: 9", "twist: 4")
        .replace("440 mm", "174 mm")
        .replace("neck base: 370 mm", "wrist: 160 mm");
    crate::piece(&Source::new("hawser", &text), &Choice::default(), None).0.unwrap()
}

/// By pencil: the line goes round a circle that is as far out of the limb as half of what the strands are thick together.
/// The closure of two rings of 2 mm lies a little nearer to the limb.
#[test]
fn round_a_limb_the_twisted_length_and_thickness_count() {
    let piece = bracelet();
    let (design, ring) = (&piece.design, piece.drape.ring().unwrap());
    let twist = design.twist.as_ref().unwrap();
    let round = twist.length().value() + design.closure_length().0.value();
    let inside = round - 0.5 * TAU * twist.thickness().value();
    assert!((0.0..0.5).contains(&(ring.inside_girth - inside)), "{} is not {inside}", ring.inside_girth);
    assert!(piece.drape.worn.is_none() && piece.drape.rings.len() == 3);
    let told = piece.drape.rings.iter().all(|other| other.inside_girth == ring.inside_girth);
    assert!(told, "each strand's ring is that of all");
}

#[test]
fn round_a_limb_strands_lie_beside_one_another_and_outside_of_it() {
    let piece = bracelet();
    let limb = piece.drape.ring().unwrap().inside_girth / TAU;
    let space = |seat: &Seat| Point3::new(seat.centre.x, seat.centre.y, seat.near);
    for ring in &piece.drape.rings {
        let others = || piece.drape.rings.iter().filter(|other| other.strand != ring.strand);
        let seats = &ring.round.seats;
        for seat in &seats[8..seats.len() - 8] {
            // Half a bead of 3.3 mm, the widest way across of what is 6.7 mm thick.
            assert!(libm::hypot(seat.centre.x, seat.centre.y) > limb + 1.5, "{seat:?} in a limb of {limb}");
            let near = others().flat_map(|other| &other.round.seats).map(|other| space(other).distance(space(seat)));
            let least = near.fold(f64::INFINITY, f64::min);
            assert!(least > 3.0, "{least}");
        }
        let gone: f64 = ring.round.joints.windows(2).map(|pair| pair[1].station - pair[0].station).sum();
        let whole = piece.design.strands[ring.strand].finished.value();
        assert!((gone - whole).abs() < 1e-6, "{gone} of {whole}");
    }
}

/// A strand that is longer than it need be is wound farther than it is long.
#[test]
fn stations_rise_along_a_slack_strand_and_the_closure() {
    let text = "festoon: 1\ntitle: t\nkind: necklace\ntwist: 1\nbeads:
  pin: { shape: seed, size: 15/0, material: glass, colour: '#d9b98a' }
  pea: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
cords: { wire: { kind: wire, diameter: 0.4 mm, mass: 0.6 g/m } }
findings:
  ring: { kind: jump ring, inside: 4 mm, wire: 1 mm }
  crimp: { kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }
strands:
  - { name: tight, cord: wire, ends: crimp, length: 289 mm, beads: [{ repeat: fill, of: [pin] }], settle: fill }
  - { name: loose, cord: wire, ends: crimp, length: 308 mm, beads: [{ repeat: fill, of: [pea] }], settle: fill }
closure: { each side: [ring] }
";
    let piece = crate::piece(&Source::new("t", text), &Choice::default(), None).0.unwrap();
    let closed = super::super::lay_closed(&piece.design, &piece.drape).unwrap();
    let half = 0.5 * piece.design.closure_length().0.value();
    for (strand, line) in piece.design.strands.iter().zip(&closed.lines) {
        assert!(line.windows(2).all(|pair| pair[0].station <= pair[1].station), "{}", strand.name);
        let (first, last) = (line[0].station, line[line.len() - 1].station);
        assert!((first + half).abs() < 1e-6 && (last - strand.finished.value() - half).abs() < 1e-6);
    }
}

#[test]
fn a_strand_is_as_long_in_the_twist_as_it_is_straight() {
    let design = design(HAWSER);
    let (.., axis) = hung(&design);
    for at in design.strands.indices() {
        let places = places(&design, at, &axis);
        let long: f64 = places.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
        assert!(places.windows(2).all(|pair| (pair[0].distance(pair[1]) - 1.0).abs() < 0.01));
        // Less by what it gathers at both ends.
        let whole = (places.len() - 1) as f64;
        assert!((long - whole).abs() < 0.004 * whole, "{long}, {whole}");
    }
}

#[test]
fn strands_lie_beside_one_another_all_along_the_line() {
    let design = design(HAWSER);
    let (.., axis) = hung(&design);
    let all: Vec<_> = design.strands.indices().map(|at| places(&design, at, &axis)).collect();
    for (one, other) in [(0, 1), (1, 2), (2, 0)] {
        let near = |place: &Point3| all[other].iter().map(|at| at.distance(*place)).fold(f64::INFINITY, f64::min);
        let least = all[one][20..all[one].len() - 20].iter().map(near).fold(f64::INFINITY, f64::min);
        // Beads of 3.3 and 4 mm: tubes of 3.2 mm or so with the bare cord at both ends.
        assert!(least > 3.1 && least < 3.5, "{least}");
    }
}

#[test]
fn the_line_weighs_what_the_strands_do() {
    let design = design(HAWSER);
    let (links, hanging, _) = hung(&design);
    let grams: f64 = design.strands.iter().map(|strand| strand.mass(&design).value()).sum();
    let weight: f64 = links.iter().map(|link| link.weight).sum();
    assert!((weight - grams * crate::units::NEWTON_PER_GRAM).abs() < 1e-3 * weight, "{weight}");
    // Evenly strung, it hangs as a catenary: of a length over a span sinh(x) / x is the ratio, and the least tension
    // is the weight of a span over 2x of it (textbook). Its ends weigh a little less.
    let ratio = links.iter().map(|link| link.length).sum::<f64>() / 128.0;
    let (mut low, mut high): (f64, f64) = (1e-3, 20.0);
    for _ in 0..60 {
        let middle = low.midpoint(high);
        *if libm::sinh(middle) / middle < ratio { &mut low } else { &mut high } = middle;
    }
    let least = weight / (2.0 * ratio * low);
    assert!((hanging.lowest - least).abs() < 0.02 * least, "{}, {least}", hanging.lowest);
}

#[test]
fn on_the_neck_strands_lie_round_the_line_outside_the_body() {
    let piece = crate::piece(&Source::new("hawser", HAWSER), &Choice::default(), None).0.unwrap();
    let worn = piece.drape.worn.unwrap();
    assert_eq!(worn.unrest, None);
    for line in &worn.lines {
        // Their outlines, half a bead wide, no more than half a millimetre in.
        let into = |spot: &Waypoint| worn.skin.outside(spot.at, 1.1).distance(spot.at);
        assert!(line.iter().map(into).fold(0.0, f64::max) < 0.01);
    }
}
