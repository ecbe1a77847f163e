//! Whether the legend's beads can be told apart without their letters. A remark for a bead names the
//! first bead before it that it looks like.

use crate::design::{Bead, Design};
use crate::paint::mark::Rgb;
use crate::palette::Palette;
use crate::remark::Remark;
use crate::remark::said::wearing::Wearing;
use crate::trade::sight::{Lab, Sight, ciede2000, seen_by};
use crate::units::Length;

/// Least CIEDE2000 difference of two colours that are told apart on paper: an assumption, about ten
/// times what is just noticed side by side.
const APART: f64 = 10.0;
/// Ratio of sizes that are told apart: an assumption.
const SIZES_APART: f64 = 1.2;

/// Beads that are compared: no legend that people read is longer.
const MOST: usize = 500;

/// A remark for each bead that looks like one before it.
pub fn check(design: &Design, palette: &Palette) -> Vec<Remark> {
    let look = |(at, bead)| SeenColours::of(bead, palette.bead(at).colour);
    let looks: Vec<_> = design.beads.entries().take(MOST).map(look).collect();
    let alike = |at: usize| looks[..at].iter().find_map(|other| looks[at].like(other));
    (0..looks.len()).filter_map(alike).collect()
}

/// A bead as each kind of eye sees it.
struct SeenColours<'a> {
    bead: &'a Bead,
    seen: [Lab; 4],
}

impl<'a> SeenColours<'a> {
    fn of(bead: &'a Bead, colour: Rgb) -> Self {
        Self { bead, seen: Sight::ALL.map(|sight| Lab::of(seen_by(colour, sight))) }
    }

    fn like(&self, other: &Self) -> Option<Remark> {
        let (one, bead) = (other.bead, self.bead);
        let sizes = [(one.across, bead.across), (one.along, bead.along), (*one.thick, *bead.thick)];
        if one.shape != bead.shape || sizes.into_iter().any(|(one, other)| sizes_differ(one, other)) {
            return None;
        }
        let differences = self.seen.iter().zip(&other.seen).map(|(a, b)| ciede2000(*a, *b));
        let (sight, apart) = Sight::ALL.into_iter().zip(differences).find(|(_, apart)| *apart < APART)?;
        let beads = [one, bead].map(|bead| bead.name.clone());
        let letters = [one, bead].map(|bead| bead.letter.clone());
        Some(Remark::new(Wearing::LookAlike { beads, letters, sight, apart }).at(bead.place))
    }
}

fn sizes_differ(one: Length, other: Length) -> bool {
    one.value().max(other.value()) >= SIZES_APART * one.value().min(other.value())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::nth;
    use crate::palette::Coat;
    use crate::pattern::Shape;
    use crate::remark::Code;
    use crate::rules::sample;

    /// What is said of two beads that differ in colour, and in what else is changed.
    fn compared(colours: [Rgb; 2], change: fn(&mut Bead)) -> Vec<Remark> {
        let necklace = sample::necklace();
        let mut other = Bead { letter: "Z".to_owned(), ..necklace.beads[nth(0)].clone() };
        change(&mut other);
        let design = necklace.changed(|model| model.beads.extend([other])).unwrap();
        let beads = colours.map(|colour| Coat { colour, ..Coat::default() }).to_vec().into();
        check(&design, &Palette { beads, ..Palette::usual(&design) })
    }

    fn remarks(one: Rgb, other: Rgb) -> Vec<Remark> {
        compared([one, other], |_| {})
    }

    #[test]
    fn near_colours_look_alike_to_everyone() {
        let found = remarks(Rgb(0x5d, 0x7f, 0x5b), Rgb(0x60, 0x82, 0x5e));
        assert!(found[0].headline().contains("to everyone"), "{}", found[0].headline());
        assert_eq!(remarks(Rgb(0x20, 0x20, 0x40), Rgb(0xd0, 0xd0, 0xa0)), []);
    }

    #[test]
    fn some_colours_look_alike_to_some_eyes() {
        let found = remarks(Rgb(0xa0, 0x6e, 0x3c), Rgb(0x6e, 0x82, 0x32));
        assert_eq!(sample::codes(&found), [Code::LookAlike]);
        assert!(found[0].headline().contains("cones"), "{}", found[0].headline());
    }

    #[test]
    fn size_and_shape_tell_apart() {
        assert!(sizes_differ(Length::mm(6.0), Length::mm(5.0)));
        assert!(!sizes_differ(Length::mm(5.9), Length::mm(5.0)));
        let alike = |change| compared([Rgb::BLACK; 2], change).len();
        assert_eq!(alike(|_| {}), 1);
        assert_eq!(alike(|other| other.shape = Shape::Cube), 0);
        assert_eq!(alike(|other| other.across = Length::mm(8.0)), 0);
        assert_eq!(alike(|other| other.along = Length::mm(8.0)), 0);
        assert_eq!(alike(|other| other.thick = crate::design::Stated::Stated(Length::mm(3.0))), 0);
    }
}
