//! What the cord bears, and what the wearer bears.

use crate::design::{Cord, Design, Index, Strand};
use crate::drape::{Drape, Hung};
use crate::pattern::Kind;
use crate::remark::{Code, Remark};

/// How many times its largest tension a cord should bear: an assumption.
const MARGIN: f64 = 5.0;
/// Mass in grams from which a piece is called heavy: an assumption.
const HEAVY: f64 = 150.0;
/// What breaks necklaces.
const SNAG: &str = "a snag, not weight, breaks most necklaces, and no margin covers that";

/// Remarks about strength and weight.
pub fn check(design: &Design, drape: &Drape) -> Vec<Remark> {
    let hung = design.strands.iter().zip(&drape.strands);
    let weak = hung.filter_map(|(strand, hung)| weak_cord(strand, &design.cords[strand.cord], largest(strand, hung)));
    let unknown = design.cords.entries().filter_map(|(index, cord)| unknown_strength(index, cord, design, drape));
    weak.chain(unknown).chain(heavy(design)).collect()
}

/// Largest tension in newtons in each leg of the cord: a chain that hangs pulls hardest at one of its
/// ends.
fn largest(strand: &Strand, hung: &Hung) -> f64 {
    hung.tension.first.max(hung.tension.last) / f64::from(strand.legs)
}

fn weak_cord(strand: &Strand, cord: &Cord, tension: f64) -> Option<Remark> {
    let strength = cord.strength?.value();
    (strength < MARGIN * tension).then(|| {
        let headline = format!(
            "strand {} pulls with {tension:.2} N at {}, which breaks at {strength:.1} N: {:.1} times, less than {MARGIN}",
            strand.name,
            cord.name,
            strength / tension
        );
        let help = format!("use a cord that bears {:.1} N; {SNAG}", MARGIN * tension);
        Remark::words(Code::WeakCord, headline).at(cord.place).helping(help)
    })
}

/// Nothing pulls at what is laid straight.
fn unknown_strength(index: Index<Cord>, cord: &Cord, design: &Design, drape: &Drape) -> Option<Remark> {
    let on_cord = design.strands.iter().zip(&drape.strands).filter(|(strand, _)| strand.cord == index);
    let tensions = on_cord.map(|(strand, hung)| largest(strand, hung));
    let tension = tensions.reduce(f64::max).filter(|tension| *tension > 0.0)?;
    cord.strength.is_none().then(|| {
        let headline =
            format!("the strength of {} is not written, so its load of {tension:.2} N is not checked", cord.name);
        let least = (MARGIN * tension * 10.0).ceil() / 10.0;
        let help = format!("write `strength:` from the spool; it should be {least:.1} N or more; {SNAG}");
        Remark::words(Code::StrengthUnknown, headline).at(cord.place).helping(help)
    })
}

/// What a piece of a kind weighs on.
const fn bears(kind: Kind) -> &'static str {
    match kind {
        Kind::Necklace | Kind::Strap => "the neck",
        Kind::Bracelet => "the arm",
        Kind::Anklet => "the foot",
        Kind::Earrings => "the ears",
    }
}

fn heavy(design: &Design) -> Option<Remark> {
    let grams = design.mass().value();
    (grams > HEAVY).then(|| {
        let headline =
            format!("the piece weighs {grams:.0} g; from {HEAVY:.0} g on it may tire {}", bears(design.heading.kind));
        Remark::words(Code::HeavyPiece, headline).helping("use smaller or lighter beads, or fewer strands")
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::rules::sample;
    use crate::units::Force;

    #[test]
    fn a_cord_bears_five_times_its_tension() {
        let (mut design, mut drape) = (sample::necklace(), sample::drape());
        drape.strands[0].tension.last = 2.0;
        design.cords[nth(0)].strength = Some(Force::newtons(10.0));
        assert_eq!(check(&design, &drape), []);
        design.cords[nth(0)].strength = Some(Force::newtons(9.9));
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::WeakCord]);
        design.cords[nth(0)].strength = None;
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::StrengthUnknown]);
    }

    #[test]
    fn heavy_from_150_grams() {
        let (mut design, drape) = (sample::necklace(), sample::drape());
        let rest = design.mass().value() - design.strands[0].trains[0].bits[0].mass;
        design.strands[0].trains[0].bits[0].mass = HEAVY - rest - 0.01;
        assert_eq!(check(&design, &drape), []);
        design.strands[0].trains[0].bits[0].mass = HEAVY - rest + 0.01;
        assert_eq!(sample::codes(&check(&design, &drape)), [Code::HeavyPiece]);
    }
}
