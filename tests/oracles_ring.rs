//! Closed rings of beads against beads as polygons, and against figures that a pencil gives.
//!
//! A second derivation: each bead is the polygon of its profile (`Bead::half_width` at 400 places of its length), laid
//! where the ring says. Polygons are parted by their sides (separating axes), with nothing of the ring's own formulas.

use std::f64::consts::PI;

use festoon::design::{Bead, Choice, nth};
use festoon::geometry::Point;
use festoon::geometry::chord::{Chord, Profile};
use festoon::geometry::nose::{Nose, Oval};
use festoon::geometry::taut::close;
use festoon::source::Source;
use festoon::{Piece, piece};

/// Places along a bead at which its profile is taken.
const PLACES: u32 = 400;

/// A bracelet tied bead to bead of so many repeats of beads, each `id: sizes`.
fn ring(beads: &[&str], times: u32) -> Piece {
    let ids: Vec<_> = beads.iter().filter_map(|bead| bead.split(':').next()).collect();
    let text = format!(
        "festoon: 1\ntitle: Ring\nkind: bracelet\nbeads:\n  {}\ncords:\n  cord: {{ kind: thread, diameter: 0.3 mm }}\n\
         strands:\n  - name: round\n    cord: cord\n    ends: [knot]\n    beads: [{{ repeat: {times}, of: [{}] }}]\n",
        beads.join("\n  "),
        ids.join(", ")
    );
    let (piece, remarks) = piece(&Source::new("ring.yaml", &text), &Choice::default(), None);
    piece.unwrap_or_else(|| panic!("{text}\n{remarks:?}"))
}

/// A bead's outline, its hole along x: what the hole has taken at its ends is not of it.
fn outline(bead: &Bead) -> Vec<Point> {
    let half = 0.5 * bead.along.value();
    // Close together near the ends, where a ball's profile is steep.
    let place = |step: u32| -half * libm::cos(PI * f64::from(step) / f64::from(PLACES));
    let upper = (0..=PLACES).map(|step| Point::new(place(step), bead.half_width(place(step))));
    let upper = upper.filter(|at| at.y >= 0.5 * bead.hole.value());
    let lower = upper.clone().rev().map(|at| Point::new(at.x, -at.y));
    upper.chain(lower).collect()
}

/// Where the beads of a ring lie, as polygons.
fn laid(piece: &Piece) -> Vec<Vec<Point>> {
    let ring = piece.drape.ring().expect("a ring");
    let bits: Vec<_> = piece.design.strands[nth(0)].bits().collect();
    let seats = ring.round.seats.iter().zip(&bits);
    let at = |(seat, bit): (&festoon::drape::Seat, &&festoon::design::Bit)| {
        let bead = &piece.design.beads[bit.what.bead().expect("a bead")];
        outline(bead).into_iter().map(|point| seat.centre + point.turned(seat.angle)).collect()
    };
    seats.map(at).collect()
}

/// How far two polygons lie apart across the side that parts them best; less than nothing where they overlap.
fn apart(one: &[Point], other: &[Point]) -> f64 {
    let across = |sides: &[Point], from: &[Point], to: &[Point]| {
        let count = sides.len();
        (0..count)
            .filter_map(|at| {
                let side = sides[(at + 1) % count] - sides[at];
                let normal = side.left() * (1.0 / side.length());
                let reach = |points: &[Point], sign: f64| {
                    points.iter().map(|at| sign * at.dot(normal)).fold(f64::MIN, f64::max)
                };
                // Both ways, whichever way round the sides go.
                let gap = f64::max(-reach(to, -1.0) - reach(from, 1.0), -reach(from, -1.0) - reach(to, 1.0));
                (side.length() > 1e-9).then_some(gap)
            })
            .fold(f64::MIN, f64::max)
    };
    across(one, one, other).max(across(other, one, other))
}

/// How near to the origin a polygon comes.
fn clear(polygon: &[Point]) -> f64 {
    let side = |from: Point, to: Point| {
        let way = to - from;
        let share = if way.length() > 0.0 { (-from.dot(way) / way.dot(way)).clamp(0.0, 1.0) } else { 0.0 };
        from.between(to, share).length()
    };
    let next = polygon.iter().cycle().skip(1);
    polygon.iter().zip(next).map(|(from, to)| side(*from, *to)).fold(f64::INFINITY, f64::min)
}

/// Every bead touches the next, none lies in another or in the limb, and some lie on it.
#[track_caller]
fn assert_touching(beads: &[&str], times: u32) {
    let piece = ring(beads, times);
    let (polygons, radius) = (laid(&piece), piece.drape.ring().expect("a ring").inside_girth / (2.0 * PI));
    let count = polygons.len();
    assert_eq!(count, beads.len() * times as usize);
    for at in 0..count {
        let gap = apart(&polygons[at], &polygons[(at + 1) % count]);
        assert!(gap.abs() < 2e-3, "{beads:?}: {gap} mm between {at} and the next");
    }
    let nearest = polygons.iter().map(|polygon| clear(polygon)).fold(f64::INFINITY, f64::min);
    // A drop is kept clear at its middle, although it is broadest nearer its round end.
    let most = if beads.iter().any(|bead| bead.starts_with("drop")) { 0.05 } else { 2e-3 };
    assert!((-2e-3..most).contains(&(nearest - radius)), "{beads:?}: {nearest} is not {radius}");
}

#[test]
fn neighbours_touch_and_none_overlap() {
    const BALL: &str = "ball: { shape: round, size: 8 mm, hole: 0.6 mm, colour: \"#884444\" }";
    const TUBE: &str = "tube: { shape: tube, size: 4 x 8 mm, hole: 0.6 mm, colour: \"#448844\" }";
    const CUBE: &str = "cube: { shape: cube, size: 6 mm, hole: 0.6 mm, colour: \"#444488\" }";
    const SAUCER: &str = "saucer: { shape: rondelle, size: 8 x 5 mm, hole: 0.6 mm, colour: \"#884488\" }";
    const CONES: &str = "cones: { shape: bicone, size: 6 mm, hole: 0.6 mm, colour: \"#448888\" }";
    const KEG: &str = "keg: { shape: barrel, size: 6 x 9 mm, hole: 0.6 mm, colour: \"#888844\" }";
    const DROP: &str = "drop: { shape: drop, size: 6 x 9 mm, hole: 0.6 mm, colour: \"#222222\" }";
    for one in [BALL, TUBE, CUBE, SAUCER, CONES, KEG, DROP] {
        assert_touching(&[one], 22);
    }
    for pair in [[BALL, TUBE], [TUBE, CUBE], [CUBE, BALL], [SAUCER, TUBE], [CONES, CUBE], [KEG, BALL], [DROP, TUBE]] {
        assert_touching(&pair, 11);
    }
    assert_touching(&[BALL, TUBE, CUBE, CONES, KEG, DROP, SAUCER], 4);
}

/// By pencil: rims of n tubes as long as l close round a polygon of n sides, whose inscribed circle has the radius
/// l / (2 tan(pi / n)). The cord goes half a tube's thickness farther out: its corners are cut where it leaves the holes.
#[test]
fn tubes_close_round_the_polygon_of_their_inner_sides() {
    let piece = ring(&["tube: { shape: tube, size: 4 x 8 mm, hole: 0.3 mm, colour: \"#448844\" }"], 20);
    let (ring, lean) = (piece.drape.ring().unwrap(), PI / 20.0);
    assert!((ring.inside_girth - 2.0 * PI * 4.0 / libm::tan(lean)).abs() < 1e-6, "{}", ring.inside_girth);
    // Two mouths lie 2 mm from a common rim, their radii twice the lean apart.
    let parted = 2.0 * 2.0 * libm::sin(lean);
    let strand = &piece.design.strands[nth(0)];
    assert!((strand.slack.value() - 20.0 * parted).abs() < 1e-6, "{:?}", strand.slack);
}

/// A ball of a radius whose hole leaves the cord 0.3 mm of play.
fn ball(radius: f64) -> Chord {
    let swell = Oval { centre: Point::ORIGIN, along: radius, across: radius };
    let nose = Nose { rim: Point::new(radius, 0.0), swell };
    Chord { body: Some(Profile { noses: [nose; 2], hole: 0.0, play: 0.3 }), ..Chord::even(2.0 * radius, radius) }
}

/// An optimiser that is free to place and turn every ball finds no larger limb for as much cord.
#[test]
fn no_other_ring_of_as_much_cord_goes_round_more() {
    let table = include_str!("oracles/data/drawn_up_rings.csv");
    let rows: Vec<Vec<f64>> =
        table.lines().skip(1).map(|row| row.split(',').map_while(|cell| cell.parse().ok()).collect()).collect();
    for case in rows.chunks(3) {
        let [big, small, parts] = [case[0][0], case[0][1], case[0][2]];
        let part = [big, small, small, small, small, small].map(ball);
        let ring = close(&part.repeat(parts as usize)).unwrap();
        let (extra, inside) = ([case[0][3], case[1][3]], [case[0][4], case[1][4]]);
        let best = inside[0] + (inside[1] - inside[0]) * (ring.slack - extra[0]) / (extra[1] - extra[0]);
        let missed = best - ring.girth();
        assert!(
            (-0.02..0.02 * best).contains(&missed),
            "{big}, {small}: {} and {best} at {}",
            ring.girth(),
            ring.slack
        );
    }
    assert_eq!(rows.len(), 18);
}
