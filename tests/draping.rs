//! Whole designs, hung: where beads slide, what the neck and the neighbours do.

use festoon::design::{self, Choice, Design, Rest, Train, nth};
use festoon::drape::body::skin::Surface;
use festoon::drape::chain::{Chain, Content};
use festoon::drape::clearance::clearances;
use festoon::drape::hang::{Link, Unhung, solve};
use festoon::drape::{Drape, Fault, Hung, Joint, Seat, Waypoint, Worn, hang, on_way};
use festoon::geometry::{Extent, Point};
use festoon::pattern;
use festoon::source::Source;
use festoon::units::NEWTON_PER_GRAM;

const STOCK: &str = "
beads:
  big: { name: big, shape: round, size: 8 mm, hole: 1 mm, mass: 0.7 g, colour: '#336699' }
  six: { name: six, shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, colour: '#996633' }
  lead: { name: lead, shape: round, size: 10 mm, hole: 1 mm, mass: 6 g, colour: '#333333' }
  wide: { name: wide, shape: round, size: 8 mm, hole: 3 mm, mass: 0.6 g, colour: '#339966' }
  three: { name: three, shape: round, size: 3 mm, hole: 1 mm, mass: 0.04 g, colour: '#663399' }
  ten: { name: ten, shape: round, size: 10 mm, hole: 1 mm, mass: 1.3 g, colour: '#663333' }
cords:
  thread: { name: thread, kind: thread, diameter: 0.2 mm, mass: 0.05 g/m, colour: '#ffffff' }
  wire: { name: wire, kind: wire, diameter: 0.4 mm, mass: 0.6 g/m, colour: '#aaaaaa' }
findings:
  wirehook: { name: ear wire, kind: ear wire, length: 15 mm }
  bar: { name: end bar, kind: end bar, length: 5 mm, holes: 2, spacing: 7 mm }
  hook: { name: clasp, kind: clasp, length: 10 mm }
  crimp: { name: crimp, kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm, mass: 0.05 g }
  pin: { name: pin, kind: head pin, gauge: 21, length: 50 mm }
  links: { name: chain, kind: chain, link: 4 mm, mass: 6 g }
";

/// A strand on wire with knotted ends.
fn strand(name: &str, length: &str, beads: &str) -> String {
    format!("  - {{ name: {name}, cord: wire, {length} ends: knot, beads: [{beads}] }}\n")
}

fn design(kind: &str, strands: &str, rest: &str) -> Design {
    with_findings(kind, "", strands, rest)
}

fn with_findings(kind: &str, findings: &str, strands: &str, rest: &str) -> Design {
    let text = format!("festoon: 1\ntitle: test\nkind: {kind}\n{STOCK}{findings}strands:\n{strands}{rest}");
    let (pattern, remarks) = pattern::read(&Source::new("test", text));
    let (design, more) = design::resolve(&pattern.unwrap_or_else(|| panic!("{remarks:?}")), &Choice::default());
    design.unwrap_or_else(|| panic!("{more:?}"))
}

fn necklace(strands: &str) -> Design {
    design("necklace", strands, "wear: { neck base: 370 mm }\n")
}

/// Potential energy, in N mm, of a strand whose trains start there.
fn energy(design: &Design, starts: &[f64], span: f64) -> f64 {
    let chain = Chain::new(design, &design.strands[nth(0)], starts);
    let joints = solve(&chain.links, Point::new(span, 0.0)).expect("it hangs").joints;
    let places = chain.links.iter().zip(joints.windows(2));
    places.map(|(link, pair)| link.weight * pair[0].between(pair[1], link.centre).y).sum()
}

fn assert_least(design: &Design, starts: &[f64], span: f64) {
    let least = energy(design, starts, span);
    for train in 0..starts.len() {
        let Rest::Free(from, to) = design.strands[nth(0)].trains[train].rest else { continue };
        for slide in [-20.0, -1.0, -0.1, -0.01, 0.01, 0.1, 1.0, 20.0] {
            let mut other = starts.to_vec();
            other[train] = (starts[train] + slide).clamp(from, to);
            assert!(energy(design, &other, span) >= least - 1e-12, "train {train} rests lower {slide} mm on");
        }
    }
}

#[test]
fn a_symmetric_strand_rests_in_the_middle_exactly() {
    let design = necklace(&strand("a", "length: 450 mm,", "20 big, 3 six, 20 big"));
    let drape = hang(&design, None).unwrap();
    let hung = &drape.strands[nth(0)];
    let Rest::Free(from, to) = design.strands[nth(0)].trains[0].rest else { panic!("it slides") };
    assert_eq!(hung.starts[0], 0.5 * (from + to));
    for (joint, other) in hung.joints.iter().zip(hung.joints.iter().rev()) {
        assert!(joint.at.distance(Point::new(drape.span - other.at.x, other.at.y)) < 1e-9);
        assert!((joint.station + other.station - 450.0).abs() < 1e-9);
    }
}

#[test]
fn an_uneven_strand_rests_off_the_middle_where_its_energy_is_least() {
    for span in [30.0, 128.0, 300.0, 420.0] {
        let design = necklace(&strand("a", "length: 450 mm,", "20 six, 10 big, 2 lead"));
        let hung = &hang(&design, Some(span)).unwrap().strands[nth(0)];
        assert_least(&design, &hung.starts, span);
        let Rest::Free(from, to) = design.strands[nth(0)].trains[0].rest else { panic!("it slides") };
        assert!((hung.starts[0] - 0.5 * (from + to)).abs() > 1.0);
    }
}

#[test]
fn the_mirrored_strand_rests_in_the_mirror() {
    let rests = |beads| hang(&necklace(&strand("a", "length: 450 mm,", beads)), Some(200.0)).unwrap();
    let (one, other) = (rests("20 six, 10 big, 2 lead"), rests("2 lead, 10 big, 20 six"));
    let place = |seat: &festoon::drape::Seat| seat.centre;
    let back = other.strands[nth(0)].seats.iter().rev().map(place).map(|p| Point::new(200.0 - p.x, p.y));
    for (here, there) in one.strands[nth(0)].seats.iter().map(place).zip(back) {
        assert!(here.distance(there) < 1e-5);
    }
}

#[test]
fn several_trains_settle_together() {
    let design = necklace(&strand("a", "length: 450 mm,", "12 six, 3 lead, 9 big"));
    let train = &design.strands[nth(0)].trains[0];
    let (first, last) = train.bits.split_at(14);
    let [first, last] = [first, last].map(|bits| Train::new(bits.to_vec(), Rest::At(0.0)));
    let (middle, end) = (200.0, 450.0);
    let to = [middle - first.length(), end - last.length()];
    let rests = [Rest::Free(0.0, to[0]), Rest::Free(middle, to[1])];
    let trains = vec![Train::new(first.bits, rests[0]), Train::new(last.bits, rests[1])];
    let design = design.changed(|model| model.strands[nth(0)].trains = trains).expect("a design");
    let hung = &hang(&design, Some(150.0)).unwrap().strands[nth(0)];
    assert_least(&design, &hung.starts, 150.0);
}

/// Light cord under heavy beads runs straight to them; the beads' own part is the rounded foot: an arc
/// of a catenary y = a cosh(x/a) that meets the straight legs at their slope, half the train over a.
/// With 12 links in the arc the drop may differ from the smooth one's by 119 mm / 12².
#[test]
fn a_heavy_train_on_light_cord_makes_a_v_with_a_rounded_foot() {
    let text = strand("a", "length: 450 mm,", "12 lead").replace("wire", "thread");
    let design = necklace(&text);
    let hung = &hang(&design, Some(150.0)).unwrap().strands[nth(0)];
    let leg = hung.starts[0];
    let (foot, _) = hung.at(leg);
    for station in [0.25, 0.5, 0.75].map(|share| share * leg) {
        assert!(hung.at(station).0.distance(Point::ORIGIN.between(foot, station / leg)) < 0.01);
    }
    let half = 0.5 * design.strands[nth(0)].trains[0].length();
    let slope = |a: f64| libm::atan(half / a);
    let breadth = |a: f64| leg * libm::cos(slope(a)) + a * libm::asinh(half / a);
    let (mut low, mut high) = (0.1, 1000.0);
    for _ in 0..100 {
        let a = 0.5 * (low + high);
        *if breadth(a) < 75.0 { &mut low } else { &mut high } = a;
    }
    let drop = leg * libm::sin(slope(low)) + libm::hypot(low, half) - low;
    assert!((hung.drop - drop).abs() < 119.0 / 144.0, "{} is not {drop}", hung.drop);
    let uniform = vec![Link { length: 1.0, weight: 0.01, centre: 0.5 }; 450];
    let even = solve(&uniform, Point::new(150.0, 0.0)).unwrap().joints;
    assert!(even[82].distance(Point::ORIGIN.between(even[164], 0.5)) > 2.0, "a catenary's leg bows");
}

/// Bare cord between trains, gaps, knots, branches and what closes the ends: nothing is lost.
#[test]
fn a_chain_is_as_long_and_as_heavy_as_its_strand() {
    let beads = "5 six, { space: 12.5 mm }, { knot: 1.2 mm }, 3 big, { dangle: [lead, six], on: pin }, 4 six";
    let design = necklace(&strand("a", "length: 450 mm,", beads).replace("ends: knot", "ends: crimp"));
    let strand = &design.strands[nth(0)];
    for share in [0.0, 0.3, 1.0] {
        let Rest::Free(from, to) = strand.trains[0].rest else { panic!("it slides") };
        let chain = Chain::new(&design, strand, &[from + share * (to - from)]);
        assert!((chain.length() - 450.0).abs() < 1e-9, "{}", chain.length());
        let bits: f64 = strand.trains[0].bits.iter().map(|bit| bit.mass).sum();
        let crimps = 2.0 * design.findings[strand.ends[0].findings[0]].mass.value();
        let grams = bits + crimps + 0.6 * 0.45;
        let weight: f64 = chain.links.iter().map(|link| link.weight).sum();
        assert!((weight / NEWTON_PER_GRAM - grams).abs() < 1e-9);
        let longest = chain.links.iter().zip(&chain.pieces).filter(|(_, piece)| **piece == Content::Cord);
        assert!(longest.map(|(link, _)| link.length).fold(0.0, f64::max) <= 1.0 + 1e-12);
    }
}

#[test]
fn every_seat_is_where_its_station_is() {
    let hung = &hang(&necklace(&strand("a", "length: 450 mm,", "20 six, 10 big")), None).unwrap().strands[nth(0)];
    assert_eq!(hung.seats.len(), 30);
    for seat in &hung.seats {
        let (place, angle) = hung.at(seat.station);
        assert!(place.distance(seat.centre) < 1e-9 && (angle - seat.angle).abs() < 1e-9);
    }
    assert_eq!(hung.at(-1.0).0, hung.ends[0]);
    assert!(hung.at(451.0).0.distance(hung.ends[1]) < 1e-6);
    let Extent { low, high } = hung.bounds();
    assert!((low.y + hung.drop).abs() < 1e-9 && high.y.abs() < 1e-9 && low.x <= 0.0);
}

#[test]
fn a_strand_shorter_than_the_span_is_a_fault() {
    let strands = strand("a", "length: 450 mm,", "20 six") + &strand("b", "length: 300 mm,", "20 six");
    let found = hang(&necklace(&strands), Some(320.0)).map(|drape| drape.span);
    assert!(
        matches!(found, Err(Fault { strand, why: Unhung::TooShort(by), .. }) if strand == nth(1) && (by - 20.0).abs() < 1e-9)
    );
}

#[test]
fn a_bar_holds_strands_apart() {
    let strands = strand("a", "length: 430 mm,", "20 six") + &strand("b", "length: 460 mm,", "20 six");
    let design = design("necklace", &strands, "closure: { each side: [bar], right: [hook] }\n");
    let drape = hang(&design, Some(130.0)).unwrap();
    assert_eq!(drape.strands[nth(1)].ends, [Point::new(-7.0, 0.0), Point::new(137.0, 0.0)]);
    assert_eq!(drape.span, 130.0);
}

#[test]
fn strands_held_apart_come_round_the_neck_apart() {
    let strands = strand("a", "length: 430 mm,", "20 six") + &strand("b", "length: 460 mm,", "20 six");
    let rest = "closure: { each side: [bar], right: [hook] }\nwear: { neck base: 370 mm }\n";
    let worn = hang(&design("necklace", &strands, rest), None).unwrap().worn.unwrap();
    assert_eq!(worn.unrest, None);
    // The bar holds the ends 7 mm apart on the nape, and the outer strand lies lower all along.
    let end = |strand: usize| on_way(&worn.lines[nth(strand)], 0.0).unwrap().0;
    assert!((end(0).distance(end(1)) - 7.0).abs() < 0.02, "{:?} {:?}", end(0), end(1));
    assert!(worn.drops[nth(1)] > worn.drops[nth(0)]);
}

#[test]
fn earrings_hang_plumb_with_their_beads_at_the_bottom() {
    let design = design("earrings", &strand("a", "length: 60 mm,", "5 six"), "closure: { left: [wirehook] }\n");
    let drape = hang(&design, None).unwrap();
    let hung = &drape.strands[nth(0)];
    assert_eq!(hung.ends, [Point::ORIGIN, hung.joints[hung.joints.len() - 1].at]);
    assert!((hung.drop - 60.0).abs() < 1e-9 && hung.joints.iter().all(|joint| joint.at.x == 0.0));
    let lowest = hung.seats.last().unwrap();
    assert!(lowest.station > 56.9 && (lowest.angle + std::f64::consts::FRAC_PI_2).abs() < 1e-12);
    assert!(hung.tension.first > 0.0 && hung.tension.last == 0.0 && drape.rings.is_empty() && drape.worn.is_none());
}

#[test]
fn a_bracelet_lies_straight_and_closes_to_a_ring() {
    let design = design("bracelet", &strand("a", "", "22 big"), "wear: { wrist: 150 mm, ease: 10 mm }\n");
    let drape = hang(&design, None).unwrap();
    let ring = drape.ring().unwrap();
    // 22 balls touch beside their holes' edges, as 4 sin(pi / 22) = 0.57 mm is more than 0.5 mm.
    let radius = 4.0 / libm::sin(std::f64::consts::PI / 22.0);
    assert!(ring.round.seats.iter().all(|seat| (seat.centre.length() - radius).abs() < 1e-9));
    assert!((ring.inside_girth - std::f64::consts::TAU * (radius - 4.0)).abs() < 1e-9);
    assert!(drape.strands[nth(0)].joints.iter().all(|joint| joint.at == Point::new(joint.station, 0.0)));
}

#[test]
fn the_last_bead_of_a_ring_meets_the_first_like_any_other() {
    let closed = |rest: &str| design("bracelet", &strand("a", "", "{ repeat: 10, of: [wide, big] }"), rest);
    // At each of 20 joints both balls reach to the wider hole's edge, sqrt(4² - 1.5²) mm.
    let reach = f64::sqrt(4.0 * 4.0 - 1.5 * 1.5);
    let ring = closed("wear: { wrist: 120 mm, ease: 10 mm }\n");
    assert!((ring.strands[nth(0)].finished.value() - 40.0 * reach).abs() < 1e-9);
    let inside = hang(&ring, None).unwrap().ring().unwrap().inside_girth;
    // Bent they touch at the inner side of those edges, as 4 sin(pi / 20) = 0.63 mm is less than 1.5 mm.
    let radius = reach / libm::tan(std::f64::consts::PI / 20.0) + 1.5 - 4.0;
    assert!((inside - std::f64::consts::TAU * radius).abs() < 1e-6);
    // With a clasp between them the last one reaches to its own hole's edge, and each end takes a loop and a knot, of two
    // and a half and three widths of the wire of 0.4 mm.
    let clasped = closed("closure: { right: [hook] }\nwear: { wrist: 120 mm, ease: 10 mm }\n");
    let own = f64::sqrt(4.0 * 4.0 - 0.5 * 0.5);
    let ends = 2.0 * (2.5 + 3.0) * 0.4;
    assert!((clasped.strands[nth(0)].finished.value() - 39.0 * reach - own - ends).abs() < 1e-9);
}

#[test]
fn every_row_of_a_bracelet_closes() {
    let rows = strand("a", "", "22 big") + &strand("b", "", "24 big");
    let design = design("bracelet", &rows, "closure: { each side: [bar] }\nwear: { wrist: 150 mm, ease: 10 mm }\n");
    let drape = hang(&design, None).unwrap();
    assert_eq!(drape.rings.iter().map(|ring| ring.strand).collect::<Vec<_>>(), [nth(0), nth(1)]);
    assert_eq!(drape.ring().unwrap().strand, nth(0));
    let apart: Vec<_> = design.abreast().into_iter().map(|length| length.value()).collect();
    assert_eq!(apart, [0.0, 7.0]);
}

#[test]
fn drops_on_a_bar_hang_from_their_own_holes() {
    let rows = strand("a", "", "20 six") + &strand("b", "", "14 six");
    let design = design("earrings", &rows, "closure: { left: [bar, wirehook] }\n");
    let drape = hang(&design, None).unwrap();
    for (hung, aside) in drape.strands.iter().zip([0.0, 7.0]) {
        assert!(hung.joints.iter().all(|joint| joint.at.x == aside), "{aside}");
    }
    // Beads of 6 mm, holes 7 mm apart.
    assert!((drape.clearances[0].least - 1.0).abs() < 0.05, "{:?}", drape.clearances);
}

#[test]
fn a_body_of_other_proportions_wears_it_otherwise() {
    let worn = |said: &str| {
        let wear = format!("wear: {{ neck base: 370 mm, {said} }}\n");
        let design = design("necklace", &strand("a", "length: 500 mm,", "40 six"), &wear);
        let drape = hang(&design, None).unwrap();
        (drape.span, drape.worn.unwrap())
    };
    let (span, usual) = worn("ease: 1 mm");
    // A circle of 370 mm, and the usual neck 1.2 times as broad as deep; either body's base measures 370 mm.
    let (round, circle) = worn("breadth to depth: 1");
    assert!((round - 370.0 / std::f64::consts::PI).abs() < 1e-9 && span > round);
    assert!([&circle, &usual].iter().all(|worn| (worn.skin.girth() - 370.0).abs() < 0.02));
    // The more a chest leans back, the less of a drop is seen from the front.
    let drop = |tilt| worn(&format!("chest tilt: {tilt} deg")).1.drops[nth(0)];
    assert!(drop(40) < drop(20) - 5.0 && drop(20) < drop(5) - 1.0);
    assert!((drop(20) - usual.drops[nth(0)]).abs() < 1e-9);
}

#[test]
fn an_extender_is_let_out_as_far_as_it_takes_to_go_round() {
    let worn = |girth: f64| {
        let closure =
            format!("closure: {{ left: [{{ links: 60 mm }}] , right: [hook] }}\nwear: {{ neck base: {girth} mm }}\n");
        let design = design("necklace", &strand("a", "length: 380 mm,", "40 six"), &closure);
        let (least, most) = design.closure_length();
        (hang(&design, None).unwrap().worn.unwrap(), least.value(), most.value())
    };
    let (easy, least, most) = worn(360.0);
    assert!(least < most && easy.closure == least && easy.drops[nth(0)] > 0.0);
    let (tight, ..) = worn(380.0 + least + 20.0);
    assert!((tight.closure - least - 20.0).abs() < 1e-9);
    // It just goes round the base, and lies higher.
    assert!(
        tight.lines[nth(0)].len() > 2 && tight.drops[nth(0)] < easy.drops[nth(0)] - 5.0,
        "{} {}",
        tight.drops[nth(0)],
        easy.drops[nth(0)]
    );
    // What does not go round the base goes round the neck above it, and what does not go round that is not worn.
    let (high, ..) = worn(380.0 + most + 1.0);
    assert!(high.closure == most && !high.lines[nth(0)].is_empty() && high.unrest.is_none());
    let (short, ..) = worn((380.0 + most) / 0.85);
    assert!(short.closure == most && short.lines[nth(0)].is_empty());
}

#[test]
fn hanging_twice_gives_the_same_bits() {
    let strands = strand("a", "length: 430 mm,", "20 six, 9 big") + &strand("b", "length: 460 mm,", "5 lead, 20 six");
    let design = necklace(&strands);
    assert_eq!(format!("{:?}", hang(&design, None)), format!("{:?}", hang(&design, None)));
}

#[test]
fn on_the_neck_longer_strands_hang_lower_and_none_cuts_into_it() {
    for beads in ["40 six", "35 ten", "10 six, 3 lead, 20 big"] {
        let mut last = 0.0;
        for length in [370, 371, 373, 376, 380, 390, 400, 420, 450, 500, 600, 900] {
            let design = necklace(&strand("a", &format!("length: {length} mm,"), beads));
            let worn = hang(&design, None).unwrap().worn.unwrap();
            // Pieces of another length end elsewhere along the neck: half a millimetre.
            assert!(worn.drops[nth(0)] > last - 0.5, "{length} mm drops {} after {last}", worn.drops[nth(0)]);
            last = worn.drops[nth(0)];
            assert_clear_of_the_neck(&worn);
        }
        assert!(last > 200.0);
    }
}

/// Strands of one length have no room beside one another on a neck: one crosses over the other. At rest each is in tension,
/// so that its way is no shorter than the strand (statics of a cord, which cannot be pushed), and where they have parted
/// from their common ends none lies in the other.
#[test]
fn strands_of_one_length_lie_over_one_another_on_the_neck() {
    for cord in ["cord: wire", "cord: thread"] {
        let rows = strand("one", "", "66 six") + &strand("other", "", "66 six");
        let design = necklace(&rows.replace("cord: wire", cord));
        let worn = hang(&design, None).unwrap().worn.unwrap();
        assert_eq!(worn.unrest, None);
        let finished = design.strands[nth(0)].finished.value();
        let lengths = worn.lines.iter().map(|line| line.windows(2).map(|pair| pair[0].at.distance(pair[1].at)).sum());
        for length in lengths.collect::<Vec<f64>>() {
            // Beads part where it bends.
            assert!((finished..1.015 * finished).contains(&length), "{length} of {finished}");
        }
        for station in 30..360 {
            let (place, _) = on_way(&worn.lines[nth(0)], f64::from(station)).unwrap();
            let to = |at: i32| on_way(&worn.lines[nth(1)], 0.5 * f64::from(at)).unwrap().0.distance(place);
            let least = (1..778).map(to).fold(f64::INFINITY, f64::min);
            assert!(least > 6.0 - 0.05, "{least} mm from one another at {station} mm");
        }
    }
}

/// How near the balls of two strands come to one another on the neck, farther from their ends than so much; less than nothing
/// where they overlap. Their middles are taken off the strands' lines.
fn nearest_balls(design: &Design, drape: &Drape, ends: f64) -> f64 {
    let worn = drape.worn.as_ref().expect("it is worn");
    let balls = |at: usize| {
        let (strand, line) = (&design.strands[nth(at)], &worn.lines[nth(at)]);
        let inner = ends..strand.finished.value() - ends;
        let seats = drape.strands[nth(at)].seats.iter().filter(|seat| inner.contains(&seat.station));
        let ball = |seat: &Seat| {
            let bead = seat.bit(strand).what.bead()?;
            Some((on_way(line, seat.station)?.0, 0.5 * design.beads[bead].across.value()))
        };
        seats.filter_map(ball).collect::<Vec<_>>()
    };
    let (one, other) = (balls(0), balls(1));
    let gaps = one.iter().flat_map(|one| other.iter().map(move |other| one.0.distance(other.0) - one.1 - other.1));
    gaps.fold(f64::INFINITY, f64::min)
}

/// Solid bodies do not lie in one another: by the middles and radii of balls alone, wide ones between narrow ones too.
#[test]
fn balls_of_two_strands_do_not_lie_in_one_another_on_the_neck() {
    let rows = [
        ["{ repeat: 15, of: [ten, 6 three] }", "{ repeat: 16, of: [ten, 6 three] }"],
        ["{ repeat: 24, of: [ten, 2 three] }, ten", "{ repeat: 26, of: [ten, 2 three] }, ten"],
        ["{ repeat: 15, of: [6 three, ten] }, 6 three", "{ repeat: 19, of: [ten, 5 three] }, ten"],
    ];
    for rows in rows {
        let [one, other] = rows.map(|beads| strand(if beads == rows[0] { "one" } else { "other" }, "", beads));
        let design = necklace(&(one + &other).replace("cord: wire", "cord: thread"));
        let drape = hang(&design, None).unwrap();
        assert_eq!(drape.worn.as_ref().unwrap().unrest, None, "{rows:?}");
        let gap = nearest_balls(&design, &drape, 40.0);
        assert!(gap > -0.01, "{rows:?}: {gap} mm");
    }
}

/// Of rows of one length none has room beside the others: at rest no two lie in one another all the same. The outer ones
/// want to be longer than they are, so that the inner ones are pressed.
#[test]
fn rows_of_one_length_come_to_rest_on_the_neck() {
    for (count, beads) in [(3, "55 big"), (3, "73 six"), (4, "55 big")] {
        for cord in ["cord: thread", "cord: wire"] {
            let rows: String = (0..count).map(|at| strand(&format!("s{at}"), "", beads)).collect();
            let worn = hang(&necklace(&rows.replace("cord: wire", cord)), None).unwrap().worn.unwrap();
            assert_eq!(worn.unrest, None, "{count} of {beads}, {cord}");
            worn.lines.iter().for_each(|line| assert_whole(line));
        }
    }
}

/// A row is a row of rigid things, in tension or pressed: from joint to joint it is no shorter than what is strung there.
fn assert_whole(line: &[Waypoint]) {
    for pair in line.windows(2) {
        let (apart, strung) = (pair[0].at.distance(pair[1].at), pair[1].station - pair[0].station);
        assert!(apart > strung - 1e-6, "{apart} mm for {strung} at {}", pair[0].station);
    }
}

fn assert_clear_of_the_neck(worn: &Worn) {
    assert_eq!(worn.unrest, None);
    for pair in worn.lines[nth(0)].windows(2) {
        let (outside, _) = worn.skin.at(pair[0].at.between(pair[1].at, 0.5));
        assert!(outside > -0.02, "cuts in by {outside} at {pair:?}");
    }
}

#[test]
fn closure_that_reaches_to_the_front_hangs_there() {
    let rest =
        "closure: { left: [{ links: 110 mm }], right: [hook, { links: 110 mm }] }\nwear: { neck base: 370 mm }\n";
    let design = design("necklace", &strand("a", "length: 250 mm,", "30 six"), rest);
    let closure: f64 = design.closure.parts().map(|part| part.least.value()).sum();
    assert!(closure > 0.5 * 370.0, "{closure}");
    let drape = hang(&design, None).unwrap();
    let worn = drape.worn.unwrap();
    assert!(worn.drops[nth(0)] > 10.0);
    assert_clear_of_the_neck(&worn);
}

#[test]
fn a_strand_shorter_than_the_neck_has_no_line_on_it() {
    let worn = hang(&necklace(&strand("a", "length: 320 mm,", "40 six")), None).unwrap().worn.unwrap();
    assert_eq!((worn.lines[nth(0)].len(), worn.drops[nth(0)]), (0, 0.0));
}

#[test]
fn what_goes_behind_the_neck_is_hidden_and_comes_back() {
    let worn = hang(&necklace(&strand("a", "length: 450 mm,", "40 six")), None).unwrap().worn.unwrap();
    let line = &worn.lines[nth(0)];
    let runs: Vec<bool> = line.chunk_by(|one, other| one.hidden == other.hidden).map(|run| run[0].hidden).collect();
    assert_eq!(runs, [true, false, true]);
    // A symmetrical piece lies symmetrically, its lowest place in the middle.
    let lowest = line.iter().min_by(|one, other| one.at.y.total_cmp(&other.at.y)).unwrap();
    assert!(lowest.at.x.abs() < 4.0 && !lowest.hidden && lowest.at.z > 0.0);
    let (left, right) = (on_way(line, 100.0).unwrap().0, on_way(line, 350.0).unwrap().0);
    // Pieces are joined from the first end on: places are right to half a millimetre.
    assert!((left.x + right.x).abs() < 0.5 && (left.y - right.y).abs() < 0.5, "{left:?} {right:?}");
}

/// A strand laid on an arc about the origin, its middle straight down.
fn on_arc(hung: &Hung, radius: f64) -> Hung {
    let length = hung.joints.last().expect("a strand has joints").station;
    let place = |joint: &Joint| {
        let angle = (joint.station - 0.5 * length) / radius - std::f64::consts::FRAC_PI_2;
        Point::towards(angle) * radius
    };
    let mut laid = hung.clone();
    laid.joints.iter_mut().for_each(|joint| joint.at = place(joint));
    laid
}

/// `oracles/data/nested_strands.csv`: on concentric arcs whose centre lines lie the two half
/// diameters and the gap apart, the beads' outlines come as near as the gap. The arcs' radius is
/// 2 m, so that a bead's middle lies within 0.01 mm of its arc; the outlines are cut to 0.05 mm.
#[test]
fn beads_on_nested_arcs_clear_by_the_gap() {
    let table = include_str!("oracles/data/nested_strands.csv");
    let named = |diameter: &str| match diameter {
        "6" => "six",
        "8" => "big",
        _ => "ten",
    };
    for row in table.lines().skip(1).map(|row| row.split(',').collect::<Vec<_>>()) {
        let [gap, apart] = [row[2], row[3]].map(|cell| cell.parse::<f64>().unwrap());
        let beads = |diameter| format!("21 {}", named(diameter));
        let design = necklace(&(strand("a", "", &beads(row[0])) + &strand("b", "", &beads(row[1]))));
        let drape = hang(&design, Some(60.0)).unwrap();
        let chains: Vec<_> = design.strands.iter().map(|strand| Chain::new(&design, strand, &[0.0])).collect();
        let place = |at: usize, radius| on_arc(&drape.strands[nth(at)], radius);
        let found = clearances(&design, &chains, &[place(0, 2000.0), place(1, 2000.0 + apart)], &[]);
        assert!((found[0].least - gap).abs() < 0.05, "{} is not {gap}", found[0].least);
        assert!(found[0].at.x.abs() < 1.0);
        assert!(gap == 0.0 || found[0].touching == 0.0);
    }
}

/// Both ends of a rail bear what hangs below it: with pulls P and Q and a weight W, the upright part of Q is
/// (W² + Q² - P²) / 2W, and its moment about the other end is that of all weights (statics of a free body).
#[test]
fn a_rail_bears_what_hangs_below_it() {
    let findings = "  ring: { kind: jump ring, inside: 16 mm, wire: 2 mm, mass: 1.9 g }\n  \
                    tassel: { kind: tassel, length: 60 mm, mass: 2.5 g }\n";
    let closures = [
        "closure: { both ends: [ten, tassel] }\n",
        "closure: { open: through, left: [ring], right: [tassel], tail: 140 mm }\n",
    ];
    for closure in closures {
        let row = strand("only", "", "20 six, big, 70 six, 4 lead");
        let design = with_findings("necklace", findings, &row, closure);
        let drape = hang(&design, None).expect("it is long enough");
        let (strand, hung) = (&design.strands[nth(0)], &drape.strands[nth(0)]);
        let [left, right] = hung.ends;
        let cord = design.cords[strand.cord].mass_per_metre.value() / 1000.0;
        // No station counts what is left bare for the round.
        let spare = Chain::new(&design, strand, &hung.starts).spare;
        assert!((spare.iter().sum::<f64>() - strand.slack.value()).abs() < 1e-9 && strand.slack.value() > 0.5);
        let of_cord = hung.joints.windows(2).zip(&spare).map(|(pair, spare)| {
            (pair[0].at.between(pair[1].at, 0.5), cord * (pair[1].station - pair[0].station + spare))
        });
        let of_bits = hung.seats.iter().map(|seat| (seat.centre, seat.bit(strand).mass));
        let ends = [hung.joints.first(), hung.joints.last()].map(|joint| joint.expect("a strand has joints").at);
        let meeting = festoon::drape::fall::meeting(&design, strand, hung).expect("its ends meet");
        let mass = |at: usize| design.part_mass(design.closure.parts().nth(at).expect("two parts")).value();
        let parts = if design.closure.is_empty() {
            Vec::new()
        } else {
            vec![(ends[0].between(meeting, 0.5), mass(0)), (ends[1], mass(1))]
        };
        let below = |place: &(Point, f64)| place.0.y < -1e-9;
        let all: Vec<_> = of_cord.chain(of_bits).chain(parts).filter(below).collect();
        let weight = all.iter().map(|(_, mass)| mass).sum::<f64>() * NEWTON_PER_GRAM;
        let moment = all.iter().map(|(at, mass)| (at.x - left.x) * mass).sum::<f64>() * NEWTON_PER_GRAM;
        let (first, last) = (hung.tension.first, hung.tension.last);
        let up = (weight * weight + last * last - first * first) / (2.0 * weight);
        let span = right.x - left.x;
        assert!((up * span - moment).abs() < 1e-6 * weight * span, "{closure}: {up} N at {span} mm for {moment}");
        assert!(weight > 0.3 && last > up && drape.worn.is_some_and(|worn| worn.unrest.is_none()), "{closure}");
    }
}
