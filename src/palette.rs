//! In what colours a piece is drawn: those of its pattern, in the colourway that was chosen. Its design has none.

use std::collections::BTreeMap;

use crate::design::{Bead, Cord, Design, Entries, Finding, Index};
use crate::paint::mark::Rgb;
use crate::pattern::{self, CordKind, Dict, Finish, Pattern, Recolour};
use crate::trade::metals;

/// How a bead looks, beside its shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Coat {
    /// Its colour.
    pub colour: Rgb,
    /// How it takes the light.
    pub finish: Finish,
}

impl Default for Coat {
    /// That of a bead of which no colour is known: glossy grey.
    fn default() -> Self {
        Self { colour: metals::PLAIN, finish: Finish::Gloss }
    }
}

/// The colours of a design's beads, cords and findings, each in the design's order. What it does not have, such as
/// another design's, is grey.
#[derive(Clone, Debug, Default, PartialEq)]
#[non_exhaustive]
pub struct Palette {
    /// How beads look.
    pub beads: Entries<Coat, Bead>,
    /// The colours of cords.
    pub cords: Entries<Rgb, Cord>,
    /// The colours of findings.
    pub findings: Entries<Rgb, Finding>,
}

impl Coat {
    /// A colour in a finish.
    #[must_use]
    pub const fn new(colour: Rgb, finish: Finish) -> Self {
        Self { colour, finish }
    }
}

impl Palette {
    /// The colours of a design that a pattern was resolved to, in its colourway.
    #[must_use]
    pub fn of(pattern: &Pattern, design: &Design) -> Self {
        let (beads, way) = (by_id(&pattern.beads), recolours(pattern, design.heading.colourway.as_deref()));
        let (cords, findings) = (by_id(&pattern.cords), pattern.findings.as_ref().map(by_id).unwrap_or_default());
        Self::written(
            design,
            |bead| coat(&beads, &way, &bead.id),
            |cord| Some(cords.get(cord.id.as_str())?.colour?.0),
            |finding| Some(findings.get(finding.id.as_str())?.colour?.0),
        )
    }

    /// The colours of a design of which nobody says any: beads are grey, cords and findings as is usual of their kind and
    /// metal.
    #[must_use]
    pub fn usual(design: &Design) -> Self {
        Self::written(design, |_| None, |_| None, |_| None)
    }

    /// The colours that are written, and what is usual in place of others.
    fn written(
        design: &Design,
        bead: impl Fn(&Bead) -> Option<Coat>,
        cord: impl Fn(&Cord) -> Option<Rgb>,
        finding: impl Fn(&Finding) -> Option<Rgb>,
    ) -> Self {
        let beads = design.beads.iter().map(|one| bead(one).unwrap_or_default()).collect();
        let cords = design.cords.iter().map(|one| cord(one).unwrap_or_else(|| of_kind(one))).collect();
        let mut palette = Self { beads, cords, findings: Entries::default() };
        let own = |one: &Finding| finding(one).unwrap_or_else(|| palette.of_making(one));
        palette.findings = design.findings.iter().map(own).collect();
        palette.match_pins(design);
        palette
    }

    /// What stands for a pin has its colour.
    fn match_pins(&mut self, design: &Design) {
        for (at, cord) in design.cords.entries().filter(|(_, cord)| cord.is_pin) {
            let pin = design.findings.find(|finding| finding.id == cord.id);
            self.cords[at] = pin.map_or(self.cords[at], |pin| self.finding(pin));
        }
    }

    /// The colour of the cord that a finding is wound of, or of its metal, by its material, else by its name.
    fn of_making(&self, finding: &Finding) -> Rgb {
        let wound = finding.tassel().and_then(|tassel| tassel.wound).map(|(cord, _)| self.cord(cord));
        let names = [finding.material.as_deref(), Some(finding.name.as_str())];
        wound.or_else(|| names.into_iter().flatten().find_map(metals::colour)).unwrap_or(metals::PLAIN)
    }

    /// How a bead looks.
    #[must_use]
    pub fn bead(&self, at: Index<Bead>) -> Coat {
        self.beads.get(at).copied().unwrap_or_default()
    }

    /// The colour of a cord.
    #[must_use]
    pub fn cord(&self, at: Index<Cord>) -> Rgb {
        self.cords.get(at).copied().unwrap_or(metals::PLAIN)
    }

    /// The colour of a finding.
    #[must_use]
    pub fn finding(&self, at: Index<Finding>) -> Rgb {
        self.findings.get(at).copied().unwrap_or(metals::PLAIN)
    }
}

/// The usual colour of a cord's kind: of a chain that of the metal that its name says.
fn of_kind(cord: &Cord) -> Rgb {
    match cord.kind {
        CordKind::Chain => metals::colour(&cord.name).unwrap_or(metals::PLAIN),
        CordKind::Wire | CordKind::MemoryWire => Rgb(0xb9, 0xb6, 0xae),
        CordKind::Thread | CordKind::Silk => Rgb(0xd8, 0xcf, 0xbc),
        CordKind::Leather => Rgb(0x5b, 0x43, 0x32),
        CordKind::Elastic => Rgb(0xd5, 0xd9, 0xdc),
    }
}

/// One of the colourways that a pattern is made in, for showing them beside one another.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Colourway {
    /// Its name; the colours that the beads are written with have none.
    pub name: Option<String>,
    /// Whether it is the one that was asked for.
    pub chosen: bool,
    /// The colours of the design's beads, in their order.
    pub colours: Vec<Rgb>,
    /// What those of them that it names anew are called in it, by their letters.
    pub names: Vec<(String, String)>,
}

/// Every colourway, the beads' own colours first; nothing where the pattern names no other.
#[must_use]
pub fn colourways(pattern: &Pattern, design: &Design) -> Vec<Colourway> {
    let named = pattern.colourways.iter().flat_map(|ways| ways.ids());
    let all: Vec<_> = std::iter::once(None).chain(named.map(Some)).collect();
    let own = by_id(&pattern.beads);
    let way = |name: Option<&str>| {
        let way = recolours(pattern, name);
        Colourway {
            name: name.map(str::to_owned),
            chosen: name == design.heading.colourway.as_deref(),
            colours: design.beads.iter().filter_map(|bead| Some(coat(&own, &way, &bead.id)?.colour)).collect(),
            names: design.beads.iter().filter_map(|bead| renamed(&way, bead)).collect(),
        }
    };
    if all.len() > 1 { all.into_iter().map(way).collect() } else { Vec::new() }
}

/// What a pattern says of each id.
type ById<'a, T> = BTreeMap<&'a str, &'a T>;

fn by_id<T>(written: &Dict<T>) -> ById<'_, T> {
    // Of what is written twice, the first counts.
    written.entries.iter().rev().map(|(key, one)| (key.value.as_str(), one)).collect()
}

/// What a colourway says of beads; the beads' own colours are none.
fn recolours<'a>(pattern: &'a Pattern, way: Option<&str>) -> ById<'a, Recolour> {
    let way = pattern.colourways.as_ref().and_then(|ways| ways.get(way?));
    way.map(by_id).unwrap_or_default()
}

/// A bead's letter and its name in a colourway, where that has one for it.
fn renamed(way: &ById<'_, Recolour>, bead: &Bead) -> Option<(String, String)> {
    Some((bead.letter.clone(), way.get(bead.id.as_str())?.name.clone()?))
}

/// How a bead looks in a colourway, or by itself.
fn coat(own: &ById<'_, pattern::Bead>, way: &ById<'_, Recolour>, id: &str) -> Option<Coat> {
    let (own, other) = (own.get(id)?, way.get(id));
    let finish = other.and_then(|other| other.finish).or(own.finish);
    let written = other.map(|other| other.colour).or(own.colour.map(|own| own.0)).map(|colour| colour.0);
    let metal = || metals::colour(&own.material.as_ref()?.value);
    Some(Coat { colour: written.or_else(metal)?, finish: finish.unwrap_or(Finish::Gloss) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Choice, nth};
    use crate::source::Source;

    /// A brass hook, and a gilt pin on which two beads of glass and one of brass hang, in two colourways.
    const TEXT: &str = "festoon: 1
title: t
kind: earrings
beads:
  a: { shape: round, size: 6 mm, hole: 1 mm, material: glass, colour: '#5d7f5b' }
  b: { shape: round, size: 4 mm, hole: 1 mm, material: glass, colour: '#c9d6d8', finish: matte }
  c: { shape: round, size: 3 mm, hole: 1 mm, material: brass }
findings:
  hook: { kind: ear wire, length: 20 mm, material: brass }
  pin: { kind: head pin, length: 50 mm, gauge: 22, colour: '#c29a3f' }
closure: { left: [hook] }
strands: [{ name: s, cord: pin, beads: [a, b, c] }]
colourways: { dusk: { a: { name: rose, colour: '#d98c9a', finish: pearl } } }
";

    fn piece(colourway: Option<&str>) -> (Pattern, Design) {
        let (pattern, remarks) = crate::pattern::read(&Source::new("p", TEXT.to_owned()));
        let pattern = pattern.unwrap_or_else(|| panic!("{remarks:?}"));
        let choice = Choice { colourway: colourway.map(str::to_owned), ..Choice::default() };
        let (design, remarks) = crate::design::resolve(&pattern, &choice);
        (pattern, design.unwrap_or_else(|| panic!("{remarks:?}")))
    }

    #[test]
    fn a_colourway_gives_beads_its_colour_and_finish_and_leaves_others() {
        let (pattern, design) = piece(Some("dusk"));
        let palette = Palette::of(&pattern, &design);
        assert_eq!(palette.bead(nth(0)), Coat { colour: Rgb(0xd9, 0x8c, 0x9a), finish: Finish::Pearl });
        assert_eq!(palette.bead(nth(1)), Coat { colour: Rgb(0xc9, 0xd6, 0xd8), finish: Finish::Matte });
        let ways = colourways(&pattern, &design);
        assert_eq!(ways.iter().map(|way| way.chosen).collect::<Vec<_>>(), [false, true]);
        assert_eq!(ways[1].names, [("A".to_owned(), "rose".to_owned())]);
    }

    #[test]
    fn what_says_no_colour_has_that_of_its_making() {
        let (pattern, design) = piece(None);
        let palette = Palette::of(&pattern, &design);
        let hook = design.findings.find(|finding| finding.id == "hook").unwrap();
        assert_eq!(Some(palette.finding(hook)), metals::colour("brass"));
        assert_eq!(palette.bead(nth(2)).colour, palette.finding(hook));
        let pin = design.cords.find(|cord| cord.is_pin).unwrap();
        assert_eq!(palette.cord(pin), Rgb(0xc2, 0x9a, 0x3f));
    }

    #[test]
    fn what_a_palette_does_not_have_is_grey() {
        let (_, design) = piece(None);
        let usual = Palette::usual(&design);
        assert_eq!(usual.bead(nth(0)), Coat::default());
        assert_eq!(Palette::default().cord(nth(7)), metals::PLAIN);
    }
}
