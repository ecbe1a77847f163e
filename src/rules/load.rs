//! What the cord bears, and what the wearer bears.

use crate::design::{Cord, Design, Index, Strand};
use crate::drape::{Drape, Hung};
use crate::pattern::Kind;
use crate::remark::Remark;
use crate::remark::said::hang::Hang;
use crate::remark::said::wearing::{Bears, Wearing};
use crate::units::{Force, Mass};

/// How many times its largest tension a cord should bear: an assumption.
const MARGIN: f64 = 5.0;
/// Mass from which a piece is called heavy: an assumption.
const HEAVY: Mass = Mass::grams(150.0);

/// Remarks about strength and weight.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let hung = design.strands.iter().zip(&drape.strands);
    let weak = hung.filter_map(|(strand, hung)| weak_cord(strand, &design.cords[strand.cord], largest(strand, hung)));
    let cords = design.cords.entries().filter(|(_, cord)| !cord.is_pin);
    let unknown = cords.filter_map(|(index, cord)| unknown_strength(index, cord, design, drape));
    weak.chain(unknown).chain(heavy(design)).collect()
}

/// Largest tension in each leg of the cord: a chain that hangs pulls hardest at one of its ends.
fn largest(strand: &Strand, hung: &Hung) -> Force {
    Force::newtons(hung.tension.first.max(hung.tension.last) / f64::from(strand.legs))
}

fn weak_cord(strand: &Strand, cord: &Cord, load: Force) -> Option<Remark> {
    let strength = cord.strength?;
    (strength < load * MARGIN).then(|| {
        let (strand, name) = (strand.name.clone(), cord.name.clone());
        Remark::new(Hang::WeakCord { strand, cord: name, load, strength, margin: MARGIN }).at(cord.place)
    })
}

/// Nothing pulls at what is laid straight.
fn unknown_strength(index: Index<Cord>, cord: &Cord, design: &Design, drape: &Drape) -> Option<Remark> {
    let on_cord = design.strands.iter().zip(&drape.strands).filter(|(strand, _)| strand.cord == index);
    let tensions = on_cord.map(|(strand, hung)| largest(strand, hung));
    let load = tensions.reduce(Force::max).filter(|tension| *tension > Force::ZERO)?;
    let said = || Hang::StrengthUnknown { cord: cord.name.clone(), load, margin: MARGIN };
    cord.strength.is_none().then(|| Remark::new(said()).at(cord.place))
}

/// What a piece of a kind weighs on.
const fn bears(kind: Kind) -> Bears {
    match kind {
        Kind::Necklace | Kind::Strap => Bears::Neck,
        Kind::Bracelet => Bears::Arm,
        Kind::Anklet => Bears::Foot,
        Kind::Earrings => Bears::Ears,
    }
}

fn heavy(design: &Design) -> Option<Remark> {
    let (mass, bears) = (design.mass(), bears(design.heading.kind));
    (mass > HEAVY).then(|| Remark::new(Wearing::HeavyPiece { mass, from: HEAVY, bears }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn a_cord_bears_five_times_its_tension() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        drape.strands[nth(0)].tension.last = 2.0;
        design = design.changed(|model| model.cords[nth(0)].strength = Some(Force::newtons(10.0))).unwrap();
        assert_eq!(check(&design, &drape), []);
        design = design.changed(|model| model.cords[nth(0)].strength = Some(Force::newtons(9.9))).unwrap();
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::WeakCord]);
        design = design.changed(|model| model.cords[nth(0)].strength = None).unwrap();
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::StrengthUnknown]);
    }

    #[test]
    fn heavy_from_150_grams() {
        let (mut design, drape) = (sample::necklace(), sample::drape());
        let rest = design.mass().value() - design.strands[nth(0)].trains[0].bits[0].mass;
        design =
            design.changed(|model| model.strands[nth(0)].trains[0].bits[0].mass = HEAVY.value() - rest - 0.01).unwrap();
        assert_eq!(check(&design, &drape), []);
        design =
            design.changed(|model| model.strands[nth(0)].trains[0].bits[0].mass = HEAVY.value() - rest + 0.01).unwrap();
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::HeavyPiece]);
    }
}
