use super::*;
use crate::design::{
    Choice, Crimp, Dangle, Design, Form, Held, Joins, KnotCover, Lot, Pack, Part, Price, Sold, Stated, Wire, WornOpen,
    nth,
};
use crate::pattern::Overhead;
use crate::remark::{Code, Level};
use crate::source::Source;
use crate::units::{Force, Length, Mass, Money};

/// A necklace of 20 beads that slide on 420 mm, and four of another kind beside them.
fn sound() -> Design {
    let text = "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: { shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, \
                colour: '#5d7f5b' }\n  b: { shape: round, size: 8 mm, hole: 1 mm, mass: 0.6 g, colour: '#5d7f5b' }\n\
                cords:\n  wire: { kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }\nfindings:\n  crimp: { kind: crimp, \
                length: 2 mm, outside: 2 mm, inside: 1.3 mm }\nstrands:\n  - { name: only, cord: wire, length: 420 mm, \
                ends: crimp, beads: [20 a, 4 b] }\nwear: { neck base: 370 mm }\n";
    let (piece, remarks) = crate::piece(&Source::new("test.yaml", text), &Choice::default(), None);
    piece.unwrap_or_else(|| panic!("{remarks:?}")).design
}

/// The flaw of that design where something of it is changed.
fn flaw(change: impl FnOnce(&mut Model)) -> Option<Flaw> {
    let mut model = Model::clone(&sound());
    change(&mut model);
    model.flaw()
}

fn strand(change: impl FnOnce(&mut Strand)) -> Option<Flaw> {
    flaw(|design| change(&mut design.strands[nth(0)]))
}

#[test]
fn each_promise_that_is_broken_is_found() {
    let at = nth(0);
    assert_eq!(flaw(|_| {}), None);
    assert_eq!(flaw(|design| design.beads[nth(1)].along = Length::ZERO), Some(Flaw::BeadSize(nth(1))));
    assert_eq!(flaw(|design| design.cords[nth(0)].diameter = Length::ZERO), Some(Flaw::CordSize(nth(0))));
    assert_eq!(flaw(|design| design.cords[nth(0)].stiffness = Stated::Stated(f64::NAN)), Some(Flaw::CordSize(nth(0))));
    let thin = Form::Crimp(Crimp::new(Length::mm(2.0), Length::mm(2.0), Length::ZERO));
    assert_eq!(flaw(|design| design.findings[nth(0)].form = thin), Some(Flaw::FindingSize(nth(0))));
    let round = Form::KnotCover(KnotCover { bead: Some(nth(2)), ..KnotCover::new(Length::mm(6.0)) });
    assert_eq!(flaw(|design| design.findings[nth(0)].form = round), Some(Flaw::UnknownOf(nth(0))));
    assert_eq!(flaw(|design| design.copies = 0), Some(Flaw::NoCopies));
    assert_eq!(strand(|only| only.cord = nth(1)), Some(Flaw::Unknown(at)));
    assert_eq!(strand(|only| only.ends[1].findings = vec![nth(7)]), Some(Flaw::Unknown(at)));
    assert_eq!(strand(|only| only.chart = vec![Phrase::Run(1, nth(2))]), Some(Flaw::Unknown(at)));
    let hung = Dangle::new(None, vec![Bit::new(What::Finding(nth(3)), [1.0; 2], 0.1)], 2.0);
    assert_eq!(strand(|only| only.trains[0].bits[0].what = What::Dangle(hung)), Some(Flaw::Unknown(at)));
    assert_eq!(strand(|only| only.trains[0].bits[3].mass = f64::NAN), Some(Flaw::Number(at)));
}

#[test]
fn what_of_beads_and_cords_may_be_unsaid_is_none_the_less_a_size() {
    let cord = |change: fn(&mut Cord)| flaw(|model| change(&mut model.cords[nth(0)]));
    let stranded = |filaments| Some(Wire { filaments: Stated::Stated(filaments), metal: None });
    assert_eq!(flaw(|model| model.cords[nth(0)].wire = stranded(7)), None);
    assert_eq!(flaw(|model| model.cords[nth(0)].wire = stranded(0)), Some(Flaw::CordSize(nth(0))));
    let wrong: [fn(&mut Cord); 3] = [
        |cord| cord.coil = Some(Length::ZERO),
        |cord| cord.link = Some(Length::mm(-1.0)),
        |cord| cord.strength = Some(Force::newtons(0.0)),
    ];
    assert_eq!(wrong.map(cord), [Some(Flaw::CordSize(nth(0))); 3]);
    let tolerant = |mm| flaw(|model| model.beads[nth(0)].tolerance = Stated::Stated(Length::mm(mm)));
    assert_eq!([0.0, -0.1].map(tolerant), [None, Some(Flaw::BeadSize(nth(0)))]);
}

/// What is bought at a time holds something, whatever is bought.
#[test]
fn a_lot_that_holds_nothing_is_none() {
    let (none, some) = (Length::ZERO, Length::mm(400.0));
    let full = [Lot::Strand(some), Lot::Hank(12, some), Lot::Pack(1), Lot::Each, Lot::Grams(Mass::grams(5.0))];
    let empty = [
        Lot::Strand(none),
        Lot::Hank(12, none),
        Lot::Hank(0, some),
        Lot::Pack(0),
        Lot::Grams(Mass::ZERO),
        Lot::Length(none),
    ];
    for lot in full {
        assert_eq!(flaw(|model| model.beads[nth(0)].sold = Some(Sold::new(lot))), None);
    }
    for lot in empty {
        let sold = Some(Sold::new(lot));
        let found = [
            flaw(|model| model.beads[nth(0)].sold.clone_from(&sold)),
            flaw(|model| model.cords[nth(0)].sold.clone_from(&sold)),
            flaw(|model| model.findings[nth(0)].sold.clone_from(&sold)),
        ];
        assert_eq!(found, [Flaw::BeadSize(nth(0)), Flaw::CordSize(nth(0)), Flaw::FindingSize(nth(0))].map(Some));
    }
}

/// NaN is neither before nor behind anything: a place that is none passes where ends alone are compared.
#[test]
fn a_train_rests_somewhere() {
    let rests = |rest| strand(|only| only.trains[0].rest = rest);
    let number = Some(Flaw::Number(nth(0)));
    assert_eq!([Rest::At(10.0), Rest::Free(10.0, 20.0), Rest::Free(10.0, 10.0)].map(rests), [None; 3]);
    assert_eq!([Rest::At(f64::NAN), Rest::Free(f64::NAN, 20.0), Rest::Free(10.0, f64::NAN)].map(rests), [number; 3]);
    assert_eq!(rests(Rest::Free(9.0, 5.0)), number);
}

#[test]
fn what_goes_for_the_whole_piece_is_looked_over() {
    assert_eq!(flaw(|model| model.wear.girth = Length::ZERO), Some(Flaw::Body));
    assert_eq!(flaw(|model| model.wear.ease = Stated::Stated(Length::mm(-1.0))), Some(Flaw::Body));
    assert_eq!(flaw(|model| model.wear.build.chest_tilt = Stated::Stated(f64::NAN)), Some(Flaw::Body));
    assert_eq!([0.0, f64::NAN].map(|wraps| flaw(|model| model.wraps = wraps)), [Some(Flaw::Turns); 2]);
    let asked = |change: fn(&mut Price)| {
        let mut price = Price::new(2.0, Money::coins(1500));
        change(&mut price);
        flaw(|model| model.price = Some(price))
    };
    assert_eq!(asked(|_| {}), None);
    assert_eq!(asked(|price| price.hours = f64::INFINITY), Some(Flaw::Price));
    assert_eq!(asked(|price| price.retail = Stated::Stated(-1.0)), Some(Flaw::Price));
    assert_eq!(asked(|price| price.overhead = Stated::Stated(Overhead::Percent(f64::NAN))), Some(Flaw::Price));
}

#[test]
fn a_twist_is_of_the_strands_there_are() {
    let text = include_str!("../../../patterns/hawser.yaml");
    let design = crate::piece(&Source::new("hawser.yaml", text), &Choice::default(), None).0.unwrap().design;
    let fewer = design.changed(|model| model.strands = model.strands.as_slice()[1..].to_vec().into());
    assert_eq!(fewer.err(), Some(Flaw::Turns));
}

#[test]
fn the_closure_has_lengths() {
    let closed = |change: fn(&mut Part)| {
        let mut part = Part::new(nth(0), Length::mm(5.0));
        change(&mut part);
        flaw(|model| model.closure.joins = Joins::BothEnds(vec![part]))
    };
    assert_eq!(closed(|_| {}), None);
    assert_eq!(closed(|part| part.finding = nth(1)), Some(Flaw::UnknownPart));
    assert_eq!(closed(|part| part.reach = Length::mm(4.9)), Some(Flaw::PartLength));
    assert_eq!(closed(|part| part.least = Length::mm(-0.1)), Some(Flaw::PartLength));
    assert_eq!(closed(|part| part.cut = Some(Length::ZERO)), Some(Flaw::PartLength));
    let through = |tail| Joins::Open([Vec::new(), Vec::new()], WornOpen::Through(Stated::Stated(Length::mm(tail))));
    assert_eq!(
        [1.0, 0.0].map(|tail| flaw(|model| model.closure.joins = through(tail))),
        [None, Some(Flaw::PartLength)]
    );
}

#[test]
fn what_beads_are_bought_in_holds_beads_that_there_are() {
    let packed = |parts, bead| {
        let mix = Assorted::new("mix", Pack::Mix(None), 100, vec![Held::new("a".to_owned(), parts, bead)]);
        flaw(|model| model.assorted = vec![mix].into())
    };
    assert_eq!(packed(1, nth(1)), None);
    assert_eq!([packed(1, nth(2)), packed(0, nth(1))], [Some(Flaw::Pack(nth(0))); 2]);
}

#[test]
fn a_chart_and_what_fills_are_of_what_is_strung() {
    let charted = |phrase| strand(|only| only.chart = vec![phrase]);
    let [unknown, number] = [Flaw::Unknown(nth(0)), Flaw::Number(nth(0))].map(Some);
    assert_eq!([Phrase::Times(1, Vec::new()), Phrase::Links(1), Phrase::Gap(Length::ZERO)].map(charted), [None; 3]);
    assert_eq!(
        [Phrase::Times(0, Vec::new()), Phrase::Links(0), Phrase::Gap(Length::mm(-1.0))].map(charted),
        [number; 3]
    );
    let filled = |times, range: std::ops::Range<usize>| {
        let fill = FillRepeat { times, ones: vec![range], leave: Length::ZERO };
        strand(|only| only.fill = Some(fill))
    };
    assert_eq!((filled(2, 20..24), filled(2, 20..25), filled(0, 20..24)), (None, unknown, number));
}

#[test]
fn what_has_a_flaw_is_no_design() {
    let other = sound().changed(|model| model.strands[nth(0)].cord = nth(1));
    assert_eq!(other.err(), Some(Flaw::Unknown(nth(0))));
}

#[test]
fn beads_that_nothing_strings_are_found() {
    let fewer = sound().changed(|model| model.strands[nth(0)].trains[0].bits.truncate(20)).unwrap();
    assert_eq!((sound().idle(), fewer.idle()), (None, Some(nth(1))));
    let said = fewer.idle_fault().unwrap();
    assert_eq!((said.code(), said.place), (Code::OwnFault, Some(fewer.beads[nth(1)].place)));
    assert!(said.headline().contains("bead b came out strung nowhere"), "{}", said.headline());
}

/// What of a model that a pattern was resolved to has a flaw is an error with a place, and never silence.
#[test]
fn a_flaw_of_what_was_resolved_is_told_as_an_error() {
    let said = |change: fn(&mut Model)| {
        let mut model = Model::clone(&sound());
        change(&mut model);
        Design::checked(model).map_err(|(flaw, model)| flaw.own_fault(&model)).unwrap_err()
    };
    let changes: [fn(&mut Model); 4] = [
        |model| model.beads[nth(1)].along = Length::ZERO,
        |model| model.cords[nth(0)].diameter = Length::ZERO,
        |model| model.strands[nth(0)].cord = nth(1),
        |model| model.strands[nth(0)].finished = Length::mm(100.0),
    ];
    let named = ["bead b", "cord wire", "strand only", "strand only"];
    for (change, name) in changes.into_iter().zip(named) {
        let said = said(change);
        assert_eq!((said.code(), said.level()), (Code::OwnFault, Level::Error));
        assert!(said.place.is_some() && said.headline().contains(name), "{}", said.headline());
        assert!(!said.help().is_empty());
    }
}

/// What slides may lie against either end, and so just fits.
#[test]
fn no_train_leaves_its_strand_or_reaches_into_another() {
    let at = nth(0);
    let shorter = |by: f64| strand(|only| only.finished = only.finished - Length::mm(by));
    assert_eq!((shorter(0.0), shorter(0.01)), (None, Some(Flaw::Overfull(at))));
    let parted = |gap: f64| {
        strand(|only| {
            let rest = only.trains[0].bits.split_off(10);
            let Rest::Free(from, to) = only.trains[0].rest else { panic!("it slides") };
            let long = only.trains[0].length();
            only.trains[0].rest = Rest::At(from);
            only.trains.push(Train::new(rest, Rest::Free(from + long + gap, to + long)));
        })
    };
    assert_eq!((parted(0.0), parted(-0.01)), (None, Some(Flaw::Overlap(at))));
}
