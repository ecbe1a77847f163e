//! How the strands hang: whether they go round the neck, leave one another room, and look meant.

use crate::design::{Bit, Design, Phrase, Strand, WornOpen};
use crate::drape::{self, Clearance, Drape, Worn};
use crate::materials::Article;
use crate::pattern::{CordKind, Kind, Settle};
use crate::remark::Remark;
use crate::remark::said::hang::{Hang, Room, Round, Unrest, Way};
use crate::trade::bodies::HEAD;
use crate::units::Length;

use super::strung;

/// Share of the compared length along which neighbours may touch: an assumption.
const TOUCHING: f64 = 0.5;
/// The share along which they may still touch once a remedy is taken: beads come to lie a little otherwise.
const ROOMY: f64 = 0.4;
/// How deep in mm strands lie in one another at least where they lie on one another: what their outlines are not
/// known better than.
const INTO: f64 = 0.05;
/// Lengths in mm by which a strand is tried longer.
const LONGER: [f64; 12] = [5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 150.0];
/// Lengths in mm by which the holes of bars are tried wider apart than what would part the outlines that
/// overlap most.
const WIDER: [f64; 8] = [0.0, 0.1, 0.5, 1.0, 2.0, 3.0, 5.0, 8.0];
/// Most strands that are hung again, side by side, to see whether a remedy helps.
const FEW: usize = 4;
/// What goes round a neck with less to spare, in mm, hardly does: an assumption.
const HARDLY: f64 = 10.0;
/// How much lower, in mm, one strand hangs than another where that is told: an assumption.
const LOWER: f64 = 1.0;
/// Share of a strand whose beads do not slide that may be left over as bare cord: an assumption.
const LEFT_OVER: f64 = 0.4;

/// Remarks about how strands hang.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let strands = || design.strands.iter();
    // Twisted strands are one.
    let judged = if design.twist.is_some() { 1 } else { design.strands.len() };
    let lacks = |at| drape.worn.as_ref().and_then(|worn| worn.spare.get(at)).map_or(0.0, |spare| 0.0 - spare);
    let short = design.strands.entries().take(judged);
    let short = short.filter_map(|(at, strand)| too_short(strand, Length::mm(lacks(at)), design));
    // Strands that came to no rest may have room.
    let settled = drape.clearances.iter().filter(|_| drape.unrest.is_none());
    let crowds = settled.filter_map(|clearance| crowded(clearance, design));
    let several = drape.worn.iter().filter_map(|worn| several_places(worn, design));
    let worn = drape.worn.iter().filter_map(|worn| Some(restless(*worn.unrest.as_ref()?, &worn.spare)));
    let unsettled = drape.unrest.iter().map(|unrest| unsettled(*unrest, design)).chain(worn);
    let unsettled = unsettled.filter_map(|said| of_all(said, design));
    let bare = strands().filter(|strand| design.cords[strand.cord].kind != CordKind::Chain).filter_map(left_over);
    let uneven = strands().filter_map(|strand| uneven_ends(strand, design));
    let over = strands().filter_map(|strand| over_head(strand, design));
    short.chain(over).chain(crowds).chain(several).chain(unsettled).chain(bare).chain(uneven).collect()
}

/// A necklace closed at its longest must go round the neck, if only as a choker above its base, with what is strung on it
/// between it and the skin: so it lacks a length.
fn too_short(strand: &Strand, lacks: Length, design: &Design) -> Option<Remark> {
    let (_, closure) = design.closure_length();
    let (tail, through) = match design.closure.open() {
        Some(WornOpen::Hanging) => return None,
        Some(WornOpen::Through(tail)) => (*tail, true),
        None => (Length::ZERO, false),
    };
    let (is, wear) = (design.reach_of(strand) + closure - tail, &design.wear);
    let hangs = design.heading.kind == Kind::Necklace && !design.is_ring();
    let takes = wear.narrowest.max(is + lacks);
    let said = || Hang::TooShort {
        what: round(strand, design),
        through,
        is,
        takes,
        girth: wear.narrowest,
        base: wear.girth,
        basis: *wear.source,
        assumed: wear.source.is_assumed(),
    };
    (hangs && !wear.is_guessed() && is < takes).then(|| Remark::new(said()).at(strand.length_place))
}

/// What goes round a neck: a strand, or all of them where they are twisted.
fn round(strand: &Strand, design: &Design) -> Round {
    let twisted = design.twist.as_ref().map(|twist| Round::Twisted(twist.turns));
    twisted.unwrap_or_else(|| Round::Strand(strand.name.clone()))
}

/// A necklace whose ends are tied to each other goes on over the head, as its inside goes over it: a grown head, for
/// none is known of children.
fn over_head(strand: &Strand, design: &Design) -> Option<Remark> {
    let tied = design.heading.kind == Kind::Necklace && design.closure.is_empty() && design.sprung().is_none();
    let stretches = design.cords[strand.cord].kind == CordKind::Elastic;
    let inside = strand.finished - widest(strand, design) * std::f64::consts::PI;
    let said = || Hang::OverHead { strand: strand.name.clone(), inside, head: HEAD };
    let is_caught = tied && !stretches && !design.wear.child && inside < HEAD;
    is_caught.then(|| Remark::new(said()).at(strand.length_place))
}

/// Width of a strand's widest bead, or else of its cord.
fn widest(strand: &Strand, design: &Design) -> Length {
    strung(strand).map(|bead| design.beads[bead].across).fold(strand.cord_width(design), Length::max)
}

/// Whether two strands lack room: they lie in one another, or touch along more than half, without pushing one another
/// aside; or they are rows that bars hold side by side and of which any beads lie in one another.
fn is_crowded(clearance: &Clearance, design: &Design) -> bool {
    let into = clearance.least < -INTO;
    let lacks = into || clearance.touching > TOUCHING;
    into && go_round_a_limb(design) || lacks && clearance.hardest <= 0.0
}

fn go_round_a_limb(design: &Design) -> bool {
    matches!(design.heading.kind, Kind::Bracelet | Kind::Anklet)
}

/// Two strands that have no room beside one another.
fn crowded(clearance: &Clearance, design: &Design) -> Option<Remark> {
    let [inner, outer] = clearance.between.map(|index| &design.strands[index]);
    is_crowded(clearance, design).then(|| {
        let said = Hang::StrandsCrowd {
            strands: [inner, outer].map(|strand| strand.name.clone()),
            on: clearance.least < -INTO,
            share: clearance.touching,
            closest: [clearance.at.x, -clearance.at.y].map(Length::mm),
            room: more_room(clearance, design),
        };
        Remark::new(said).at(outer.length_place)
    })
}

/// Strands that meet at both ends and of which one hangs lower on the neck than another that is no shorter: so nearly of one
/// length they find several places there, and the drape shows one.
fn several_places(worn: &Worn, design: &Design) -> Option<Remark> {
    if design.twist.is_some() || design.are_held_apart() || design.joined().next().is_some() {
        return None;
    }
    let strands = design.strands.iter().zip(&worn.drops).zip(&worn.lines);
    let hanging: Vec<_> = strands.filter(|(_, line)| !line.is_empty()).map(|(strand, _)| strand).collect();
    let amiss = |(lower, drop): &(&Strand, &f64)| {
        let is_above = |(other, less): &&(&Strand, &f64)| lower.finished <= other.finished && **drop > **less + LOWER;
        Some((lower.name.clone(), hanging.iter().find(is_above)?.0))
    };
    let (lower, other) = hanging.iter().find_map(amiss)?;
    Some(Remark::new(Hang::SeveralPlaces { strands: [lower, other.name.clone()] }).at(other.length_place))
}

/// What gives two strands room, tried by hanging them so: one way or another, or both together.
fn more_room(clearance: &Clearance, design: &Design) -> Room {
    let bars = BarsBetween::holding(clearance, design);
    let (wider, longer) = (wider(clearance, design, bars), longer(clearance, design));
    let ways = if bars.apart > 0.0 { [wider, longer] } else { [longer, wider] };
    let ways: Vec<_> = ways.into_iter().flatten().collect();
    if ways.is_empty() {
        return both(clearance, design, bars).map_or(Room::None, Room::Both);
    }
    Room::Either(ways)
}

/// Bars that hold two strands apart, or could.
#[derive(Clone, Copy)]
struct BarsBetween {
    /// How far apart they hold them, in mm; 0 where there are none.
    apart: f64,
    /// How far apart they would hold them without overlap where they overlap most, in mm.
    needed: f64,
}

impl BarsBetween {
    fn holding(clearance: &Clearance, design: &Design) -> Self {
        let [inner, outer] = clearance.between.map(|index| design.strands[index].aside);
        let apart = (outer - inner).value().max(0.0);
        Self { apart, needed: ((apart - clearance.least) * 10.0).ceil() / 10.0 }
    }

    const fn way(self, apart: f64) -> Way {
        let apart = Length::mm(apart);
        if self.apart > 0.0 { Way::WiderBars(apart) } else { Way::EndBar(apart) }
    }
}

/// The ends held farther apart: by as much as the outlines overlap, or by what more it takes.
fn wider(clearance: &Clearance, design: &Design, bars: BarsBetween) -> Option<Way> {
    let held = |by| design.held_apart(Length::mm(bars.needed + by));
    let by = least(&WIDER, held, clearance)?;
    Some(bars.way(bars.needed + by))
}

/// The longer strand longer still, where strands hang: rows round a limb lie side by side, however long.
fn longer(clearance: &Clearance, design: &Design) -> Option<Way> {
    if go_round_a_limb(design) {
        return None;
    }
    let [one, other] = clearance.between;
    let [inner, outer] = clearance.between.map(|index| &design.strands[index]);
    let longer = if inner.finished > outer.finished { one } else { other };
    let by = least(&LONGER, |by| design.lengthened(longer, Length::mm(by)), clearance)?;
    Some(Way::Longer(design.strands[longer].name.clone(), Length::mm(by)))
}

/// The longer strand longer, and the ends held apart.
fn both(clearance: &Clearance, design: &Design, bars: BarsBetween) -> Option<[Way; 2]> {
    let longer = longer(clearance, &design.held_apart(Length::mm(bars.needed))?)?;
    Some([longer, bars.way(bars.needed)])
}

/// The least of rising steps that gives two strands room, among those from which on all seem to.
fn least(steps: &[f64], stepped: impl Fn(f64) -> Option<Design>, crowd: &Clearance) -> Option<f64> {
    let seems = |step: &&f64| stepped(**step).is_some_and(|other| seems_roomy(&other, crowd));
    let seeming = steps.iter().rev().take_while(seems).count();
    let mut seeming = steps[steps.len() - seeming..].iter().copied();
    seeming.find(|step| stepped(*step).is_some_and(|other| has_room(&other, crowd)))
}

/// Whether two strands touch little as each hangs alone.
fn seems_roomy(other: &Design, crowd: &Clearance) -> bool {
    let alone = drape::clearance_of(other, crowd.between);
    alone.is_some_and(|alone| alone.touching <= ROOMY && (!go_round_a_limb(other) || alone.least >= -INTO))
}

/// Whether two strands push one another aside, or need not; of many strands, whether they need not.
fn has_room(other: &Design, crowd: &Clearance) -> bool {
    let alone = || drape::clearance_of(other, crowd.between);
    let hung = || {
        let drape = drape::hang_unworn(other, None).ok()?;
        drape.clearances.into_iter().find(|clearance| clearance.between == crowd.between)
    };
    let clearance = if other.strands.len() > FEW { alone() } else { hung() };
    clearance.is_some_and(|clearance| !is_crowded(&clearance, other))
}

/// Strands that came to no rest as they hang.
fn unsettled(unrest: Unrest, design: &Design) -> Hang {
    let joined = design.joined().next();
    match (unrest, joined) {
        (Unrest::Lost { rounds }, Some((shared, ..))) => {
            Hang::NotFlat { joined_by: Article::from(shared).name(design).to_owned(), rounds }
        }
        _ => Hang::Unsettled(unrest),
    }
}

/// A piece that came to no rest on the neck, its strands so much longer in mm than what goes round.
fn restless(unrest: Unrest, spare: &[f64]) -> Hang {
    let tightest = spare.iter().copied().filter(|spare| *spare >= 0.0).fold(f64::INFINITY, f64::min);
    match unrest {
        Unrest::Lost { .. } if tightest < HARDLY => Hang::HardlyRound { spare: Length::mm(tightest) },
        _ => Hang::Restless(unrest),
    }
}

/// What is said of all strands together.
fn of_all(said: Hang, design: &Design) -> Option<Remark> {
    Some(Remark::new(said).at(design.strands.first()?.length_place))
}

/// Cord beyond the last train of a strand whose beads stay where they are.
fn left_over(strand: &Strand) -> Option<Remark> {
    let strung: f64 = strand.bits().map(Bit::length).sum();
    let ends: Length = strand.ends.iter().map(|end| end.takes).sum();
    let bare = strand.finished.value() - ends.value() - strung;
    let share = bare / strand.finished.value();
    (strand.settle == Settle::Fixed && share > LEFT_OVER).then(|| {
        let said = Hang::BareCord { strand: strand.name.clone(), bare: Length::mm(bare), share };
        Remark::new(said).at(strand.length_place)
    })
}

fn uneven_ends(strand: &Strand, design: &Design) -> Option<Remark> {
    if design.closure.open().is_some() {
        return None;
    }
    let round = matches!(design.heading.kind, Kind::Necklace | Kind::Strap);
    let (first, last) = (strung(strand).next()?, strung(strand).last()?);
    let ends = [strand.chart.first(), strand.chart.last()];
    let meant = ends.iter().any(|end| matches!(end, Some(Phrase::Ordered(_))));
    (round && !meant && first != last).then(|| {
        let [first, last] = [first, last].map(|index| design.beads[index].name.clone());
        Remark::new(Hang::UnevenEnds { strand: strand.name.clone(), first, last }).at(strand.place)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Choice, nth};
    use crate::drape::Unrest;
    use crate::geometry::Point;
    use crate::remark::Code;
    use crate::rules::sample;
    use crate::source::Source;

    #[test]
    fn only_figures_that_were_found_are_told() {
        let told = |unrest| Remark::new(Hang::Unsettled(unrest)).headline();
        assert!(told(Unrest::TooMany).contains("too many parts"));
        assert!(
            told(Unrest::Short { by: 2.0 }).ends_with("is drawn 2.00 mm shorter than it is, with beads in one another")
        );
        let lost = told(Unrest::Lost { rounds: 7 });
        assert!(lost.contains("no place in 7 rounds") && !lost.contains("mm"), "{lost}");
        let left = |overlap, moves| told(Unrest::Left { rounds: 20, overlap, moves });
        let both = left(0.125, 0.0512);
        assert!(
            both.ends_with("20 rounds: outlines lie 0.12 mm in one another, and a round still moves it by 0.051 mm")
        );
        assert!(left(0.0004, 0.0512).ends_with("20 rounds: a round still moves it by 0.051 mm"));
        assert!(left(0.013, 0.0031).ends_with("20 rounds: outlines lie 0.013 mm in one another"));
    }

    #[test]
    fn what_bars_join_and_comes_to_no_rest_does_not_lie_flat() {
        let source = Source::new("pierhead.yaml", include_str!("../../patterns/pierhead.yaml").to_owned());
        let piece = crate::piece(&source, &Choice::default(), None).0.unwrap();
        let lost = Unrest::Lost { rounds: 40 };
        let Hang::NotFlat { joined_by, rounds } = unsettled(lost, &piece.design) else { panic!("it lies flat") };
        assert_eq!((joined_by.as_str(), rounds), ("spacer bar with three holes", 40));
        assert!(matches!(unsettled(lost, &sample::necklace()), Hang::Unsettled(_)));
    }

    #[test]
    fn strands_may_touch_along_half_but_not_lie_in_one_another() {
        let (design, mut drape) = (sample::necklace(), sample::drape());
        let mut crowd = |least, touching, hardest| {
            let at = Point::new(80.0, -40.0);
            drape.clearances = vec![Clearance { between: [nth(0), nth(0)], least, at, touching, hardest }];
            sample::codes(&check(&design, &drape))
        };
        // Its ends are tied to each other, and it goes over no head.
        assert_eq!(crowd(0.0, 0.5, 0.0), [Code::OverHead]);
        assert_eq!(crowd(0.0, 0.51, 0.0), [Code::OverHead, Code::StrandsCrowd]);
        assert_eq!(crowd(-2.0, 0.1, 0.0), [Code::OverHead, Code::StrandsCrowd]);
        assert_eq!(crowd(0.0, 0.51, 0.001), [Code::OverHead]);
    }

    #[test]
    fn a_necklace_goes_round_its_neck() {
        let mut design = sample::necklace();
        let mut short = |by: f64| {
            design =
                design.changed(|model| model.wear.narrowest = model.strands[nth(0)].finished + Length::mm(by)).unwrap();
            too_short(&design.strands[nth(0)], Length::ZERO, &design).map(|remark| remark.code())
        };
        assert_eq!(short(0.0), None);
        assert_eq!(short(1.0), Some(Code::TooShort));
    }
}
