//! The word chart says the very row that is strung: its text is read back, bead by bead.

use festoon::design::{Bit, Design, Phrase, What, nth};
use festoon::materials::{Amount, Order, materials};
use festoon::pattern::Settle;
use festoon::steps::english::chart;
use festoon::units::{Length, UnitStyle};
use proptest::prelude::*;

use crate::designs::{design, strand};

fn text(chart: Vec<Phrase>) -> String {
    let design = design(vec![strand("inner", 400.0, &[0], chart)]);
    chart::whole(&design, &design.strands[nth(0)], UnitStyle::Both).to_string()
}

fn a(count: u32) -> Phrase {
    Phrase::Run(count, nth(0))
}

fn b(count: u32) -> Phrase {
    Phrase::Run(count, nth(1))
}

fn c(count: u32) -> Phrase {
    Phrase::Run(count, nth(2))
}

#[test]
fn a_repeat_and_what_follows() {
    assert_eq!(text(vec![Phrase::Times(11, vec![a(5), b(1)]), a(5)]), "5A 1B, 11 times, then 5A");
}

#[test]
fn nested_repeats_stand_in_brackets() {
    let inner = Phrase::Times(4, vec![a(3), b(1)]);
    assert_eq!(text(vec![Phrase::Times(6, vec![inner, c(1)])]), "[[3A 1B], 4 times, then 1C], 6 times");
}

#[test]
fn a_mirror_is_told_once() {
    let side = vec![a(5), b(1)];
    assert_eq!(
        text(vec![Phrase::Mirror(side.clone(), vec![c(1)])]),
        "5A 1B, then 1C in the middle, then the same backwards"
    );
    assert_eq!(text(vec![a(2), Phrase::Mirror(side, vec![])]), "2A, then [5A 1B, then the same backwards]");
}

#[test]
fn repeats_of_repeats_are_multiplied_and_runs_added() {
    let twice = Phrase::Times(2, vec![Phrase::Times(3, vec![a(1), b(1)])]);
    assert_eq!(
        text(vec![twice, Phrase::Times(4, vec![c(2)]), c(1), Phrase::Times(2, vec![b(1), a(1)])]),
        "1A 1B, 6 times, then 9C, then [1B 1A], twice"
    );
}

#[test]
fn a_list_written_out_is_told_as_a_repeat() {
    let row: Vec<_> = (0..7).map(|at| if at % 2 == 0 { a(5) } else { b(1) }).collect();
    assert_eq!(text(row), "5A 1B, 3 times, then 5A");
    let twice = vec![a(5), b(1), a(5), b(1)];
    assert_eq!(text(twice), "5A 1B 5A 1B");
}

#[test]
fn repeats_that_are_spread_apart_stay_apart() {
    let mut one = strand("inner", 400.0, &[0], vec![Phrase::Times(4, vec![a(1), a(2)]), Phrase::Finding(nth(2)), a(3)]);
    one.settle = Settle::Spread;
    let design = design(vec![one]);
    assert_eq!(
        chart::whole(&design, &design.strands[nth(0)], UnitStyle::Both).to_string(),
        "3A, 4 times, then (bar: stop), then 3A"
    );
}

/// Of the design made by hand, each bead takes what its size says: 25 of 6 mm with holes of 1 mm,
/// 25 × √(6² − 1²) = 147.9 mm.
#[test]
fn of_many_beads_of_a_kind_the_length_is_told() {
    assert_eq!(text(vec![a(25)]), "25A over 5 13⁄16 in (148 mm)");
}

#[test]
fn a_row_without_a_pattern_is_told_in_tens() {
    let row = vec![a(3), b(1), a(8), b(2)];
    assert_eq!(
        text(vec![c(2), Phrase::Ordered(row), c(2)]),
        "2C, then 14 in this order: (3–10) 3A 1B 4A (11–16) 4A 2B, then 2C"
    );
    let eleven = vec![a(3), b(1), a(7)];
    assert_eq!(text(vec![Phrase::Ordered(eleven)]), "11 in this order: (1–10) 3A 1B 6A (11) 1A");
    assert_eq!(text(vec![Phrase::Ordered(vec![a(3), b(1), a(2)])]), "3A 1B 2A");
}

#[test]
fn what_is_no_bead_stands_in_brackets() {
    let gap = Phrase::Gap(Length::mm(12.7));
    let row = vec![a(5), gap, Phrase::Knot, Phrase::Finding(nth(2)), Phrase::Dangle(Some(nth(1)), vec![c(1), a(2)])];
    assert_eq!(text(row), "5A (½ in / 12.7 mm bare) (knot), then (bar: stop), then (dangle: 1C 2A on a head pin)");
}

/// Reads a chart's text back into what it puts on the cord, one word each.
pub struct Reader<'a>(pub &'a str);

/// The name before a station, as in `knot K1 at 40 mm`.
fn named(word: &str) -> &str {
    word.split(" at ").next().unwrap_or(word)
}

impl Reader<'_> {
    fn eat(&mut self, word: &str) -> bool {
        let rest = self.0.strip_prefix(word);
        self.0 = rest.unwrap_or(self.0);
        rest.is_some()
    }

    fn take(&mut self, mut belongs: impl FnMut(char) -> bool) -> String {
        let at = self.0.find(|c| !belongs(c)).unwrap_or(self.0.len());
        let (word, rest) = self.0.split_at(at);
        self.0 = rest;
        word.to_owned()
    }

    pub fn sequence(&mut self) -> Vec<String> {
        let mut row = Vec::new();
        loop {
            let clause = self.clause();
            let middle = self.eat(" in the middle");
            if self.eat(", then the same backwards") {
                self.names();
                let side = if middle { row.clone() } else { [row.clone(), clause.clone()].concat() };
                let backwards: Vec<_> = side.into_iter().rev().collect();
                return [row, clause, backwards].concat();
            }
            row.extend(clause);
            self.names();
            if !self.eat(", then ") {
                return row;
            }
        }
    }

    fn clause(&mut self) -> Vec<String> {
        if let Some((count, rest)) =
            self.0.split_once(" in this order: ").filter(|(count, _)| count.parse::<usize>().is_ok())
        {
            self.0 = rest;
            let row = self.tens();
            assert_eq!(Ok(row.len()), count.parse(), "an ordered row has as many beads as it says");
            return row;
        }
        let once = if self.eat("[") { self.bracket() } else { self.words() };
        let before = self.0;
        if self.eat(", once") {
            return once;
        }
        if self.eat(", twice") {
            return vec![once; 2].concat();
        }
        if self.eat(", ") {
            let digits = self.take(|c| c.is_ascii_digit());
            if self.eat(" times") {
                return vec![once; digits.parse().expect("digits make a number")].concat();
            }
        }
        self.0 = before;
        once
    }

    /// `(1–10) 3A 1B 6A (11–14) 4A`
    fn tens(&mut self) -> Vec<String> {
        let mut row = Vec::new();
        while self.0.trim_start().starts_with(|c: char| c.is_ascii_digit())
            || self.0.trim_start().strip_prefix('(').is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
        {
            self.eat(" ");
            row.extend(self.word());
        }
        row
    }

    /// Names of what stays in its place in a repeat.
    fn names(&mut self) {
        let Some((names, rest)) = self.0.strip_prefix(" (").and_then(|rest| rest.split_once(')')) else { return };
        let is_named = ["stop", "knot", "bar", "group"].iter().any(|kind| names.starts_with(kind));
        if is_named && names.contains(' ') && !names.contains(':') && !names.contains(" at ") {
            self.0 = rest;
        }
    }

    fn bracket(&mut self) -> Vec<String> {
        let row = self.sequence();
        assert!(self.eat("]"), "a bracket closes before: {}", self.0);
        row
    }

    fn words(&mut self) -> Vec<String> {
        let mut row = self.word();
        while self.0.starts_with(" (")
            || self.0.starts_with(' ') && self.0[1..].starts_with(|c: char| c.is_ascii_digit())
        {
            self.eat(" ");
            row.extend(self.word());
        }
        row
    }

    fn word(&mut self) -> Vec<String> {
        if self.eat("(dangle: ") {
            let row = self.sequence();
            self.take(|c| c != ')');
            self.eat(")");
            return vec![format!("({})", row.join(" "))];
        }
        if self.eat("(") {
            let mut open = 1;
            let is_inside = |c| {
                open += i32::from(c == '(') - i32::from(c == ')');
                open > 0
            };
            let other = self.take(is_inside);
            self.eat(")");
            // A stop's and a bar's finding follows a colon; the start of a group puts nothing on the cord.
            if let Some((_, what)) = other.split_once(": ") {
                return vec![what.split(", hole ").next().unwrap_or(what).to_owned()];
            }
            return match named(&other).split(' ').collect::<Vec<_>>().as_slice() {
                ["knot", ..] => vec!["knot".to_owned()],
                [group] if group.starts_with('G') => Vec::new(),
                // `(11–20)` says which beads follow.
                [tens] if tens.starts_with(|c: char| c.is_ascii_digit()) => Vec::new(),
                words => words.last().map(|word| (*word).to_owned()).into_iter().collect(),
            };
        }
        let count: usize = self.take(|c| c.is_ascii_digit()).parse().expect("a run begins with its count");
        let letter = self.take(|c| c.is_ascii_uppercase());
        if self.eat(" over ") {
            self.length();
        }
        vec![letter; count]
    }

    /// `5 13⁄16 in (148 mm)`, in one unit or in both.
    fn length(&mut self) {
        let after = |unit: &str| self.0.find(unit).map(|at| at + unit.len());
        self.0 = &self.0[[" mm", " in"].into_iter().filter_map(after).min().expect("a length has a unit")..];
        let both = self.0.strip_prefix(" (").and_then(|rest| rest.split_once(" mm)"));
        let is_number = |(number, _): &(&str, &str)| number.parse::<f64>().is_ok();
        self.0 = both.filter(is_number).map_or(self.0, |(_, rest)| rest);
    }
}

/// The strung row in the reader's words.
pub fn strung(design: &Design, bits: &[Bit]) -> Vec<String> {
    let word = |bit: &Bit| match &bit.what {
        What::Bead(at) => design.beads[*at].letter.clone(),
        What::Gap => "bare".to_owned(),
        What::Knot => "knot".to_owned(),
        What::Finding(at) => design.findings[*at].name.clone(),
        What::Dangle(dangle) => format!("({})", strung(design, &dangle.bits).join(" ")),
    };
    bits.iter().map(word).collect()
}

fn runs() -> impl Strategy<Value = Phrase> {
    (1u32..9, 0usize..3).prop_map(|(count, bead)| Phrase::Run(count, nth(bead)))
}

pub fn phrases() -> impl Strategy<Value = Vec<Phrase>> {
    let leaf = prop_oneof![
        6 => runs(),
        1 => Just(Phrase::Gap(Length::mm(12.0))),
        1 => Just(Phrase::Knot),
        1 => Just(Phrase::Finding(nth(2))),
        1 => prop::collection::vec(runs(), 1..4).prop_map(|row| Phrase::Dangle(Some(nth(1)), row)),
        1 => prop::collection::vec(runs(), 1..20).prop_map(Phrase::Ordered),
    ];
    let phrase = leaf.prop_recursive(3, 24, 4, |inner| {
        let list = || prop::collection::vec(inner.clone(), 1..4);
        let middle = prop::collection::vec(inner.clone(), 0..3);
        prop_oneof![
            (1u32..5, list()).prop_map(|(times, list)| Phrase::Times(times, list)),
            (list(), middle).prop_map(|(side, middle)| Phrase::Mirror(side, middle)),
        ]
    });
    prop::collection::vec(phrase, 1..5)
}

proptest! {
    /// A list that is strung again and again and written out, so that the formula finds the repeats by itself: patterns as
    /// they are written ([`a_pattern_says_the_row_that_its_resolver_strings`]) say theirs.
    #[test]
    fn the_text_says_the_row_that_is_strung(chart in phrases(), units in 0..3, spread in any::<bool>()) {
        let mut one = strand("inner", 400.0, &[0], chart);
        one.settle = if spread { Settle::Spread } else { Settle::Slide };
        let design = design(vec![one]);
        let units = [UnitStyle::In, UnitStyle::Mm, UnitStyle::Both][units as usize];
        let text = chart::whole(&design, &design.strands[nth(0)], units).to_string();
        let mut reader = Reader(&text);
        let read = reader.sequence();
        prop_assert_eq!(reader.0, "", "all of the text is read: {}", text);
        prop_assert_eq!(read, strung(&design, &design.strands[nth(0)].trains[0].bits), "{}", text);
    }

    #[test]
    fn a_row_written_out_is_the_row_that_is_told(list in prop::collection::vec(runs(), 1..5), times in 1usize..9, after in runs()) {
        let mut chart = vec![list; times].concat();
        chart.push(after);
        let design = design(vec![strand("inner", 400.0, &[0], chart)]);
        let text = chart::whole(&design, &design.strands[nth(0)], UnitStyle::Both).to_string();
        prop_assert_eq!(Reader(&text).sequence(), strung(&design, &design.strands[nth(0)].trains[0].bits), "{}", text);
    }

    #[test]
    fn counts_in_materials_are_those_in_trains_and_charts(
        charts in prop::collection::vec(phrases(), 1..4), makers in 1u32..6, copies in 1u32..3,
    ) {
        let design = design(charts.into_iter().map(|chart| strand("one", 400.0, &[0], chart)).collect()).changed(|model| model.copies = copies).expect("a design");
        let said: String = design.strands.iter().flat_map(|strand| Reader(&chart::whole(&design, strand, UnitStyle::Both).to_string()).sequence()).collect();
        let materials = materials(&design, &Order { makers, ..Order::default() });
        for (bead, (line, in_trains)) in design.beads.iter().zip(materials.lines.iter().zip(design.counts())) {
            prop_assert_eq!(said.matches(&bead.letter).count(), in_trains as usize);
            prop_assert_eq!(line.need, Amount::Count(u64::from(in_trains * makers * copies)));
        }
    }
}

/// A row that is worked out from a rule.
fn worked_out() -> impl Strategy<Value = String> {
    prop_oneof![
        (3u32..60, 1u32..99)
            .prop_map(|(beads, seed)| format!("{{ random: {beads}, of: {{ a: 1, b: 1, c: 1 }}, seed: {seed} }}")),
        (6u32..60).prop_map(|beads| format!("{{ random: {beads}, of: {{ a: 3, b: 1 }}, apart: {{ b: 1 }} }}")),
        (2u32..60).prop_map(|beads| format!("{{ fade: {beads}, from: a, to: c }}")),
        (40u32..200).prop_map(|length| format!("{{ graduate: [a, b, c], length: {length} mm }}")),
    ]
}

/// Entries of a bead list as a pattern writes them, all but stops and `fill`.
fn entries() -> impl Strategy<Value = Vec<String>> {
    let run = || (1u32..4, prop::sample::select(vec!["a", "b", "c"])).prop_map(|(count, id)| format!("{count} {id}"));
    let hung = prop::collection::vec(run(), 1..4);
    let leaf = prop_oneof![
        6 => run(),
        1 => prop::sample::select(vec!["bar", "cap", "2 cap", "{ space: 12 mm }", "{ knot: 1 mm }"]).prop_map(str::to_owned),
        1 => hung.prop_map(|row| format!("{{ dangle: [{}], on: pin }}", row.join(", "))),
        2 => worked_out(),
    ];
    let entry = leaf.prop_recursive(2, 12, 3, |inner| {
        let list = || prop::collection::vec(inner.clone(), 1..4).prop_map(|list| list.join(", "));
        prop_oneof![
            (1u32..3, list()).prop_map(|(times, list)| format!("{{ repeat: {times}, of: [{list}] }}")),
            list().prop_map(|side| format!("{{ mirror: [{side}] }}")),
            (list(), list()).prop_map(|(side, about)| format!("{{ mirror: [{side}], about: [{about}] }}")),
        ]
    });
    prop::collection::vec(entry, 1..5)
}

/// A strand's settings and list: plain, with a `fill`, or divided by stops.
pub fn written() -> impl Strategy<Value = String> {
    let settled = |list: Vec<String>, settle: &str| format!("settle: {settle}, beads: [{}]", list.join(", "));
    let settles = || prop::sample::select(vec!["slide", "spread", "fixed", "fill"]);
    prop_oneof![
        (entries(), settles()).prop_map(move |(list, settle)| settled(list, settle)),
        (entries(), entries()).prop_map(move |(list, after)| {
            let filled = format!("{{ repeat: fill, of: [{}] }}", list.join(", "));
            // Even where bars of 3 mm alone fill it, no more findings than a piece may hold.
            settled([vec![filled], after].concat(), "slide, leave: 9000 mm")
        }),
        (entries(), entries(), prop::sample::select(vec!["slide", "spread"])).prop_map(move |(list, after, settle)| {
            let stop = |at: u32| vec![format!("{{ stop: crimp, at: {at} mm }}")];
            settled([stop(100), list, stop(9000), after, stop(19000)].concat(), settle)
        }),
    ]
}

/// The design of a strand that is written so, 20 m long.
pub fn resolved(strand: &str) -> Option<Design> {
    let text = format!(
        "festoon: 1
title: Try
kind: necklace
beads:
  a: {{ shape: round, size: 4 mm, hole: 1 mm, mass: 0.1 g, colour: '#5d7f5b' }}
  b: {{ shape: cube, size: 5 mm, hole: 1 mm, mass: 0.1 g, colour: '#8a6a4b' }}
  c: {{ shape: bicone, size: 6 mm, hole: 1 mm, mass: 0.1 g, colour: '#e9d9c8' }}
cords:
  line: {{ kind: wire, diameter: 0.4 mm, strength: 60 N, mass: 0.6 g/m }}
findings:
  crimp: {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}
  pin: {{ kind: head pin, wire: 0.6 mm, length: 200 mm }}
  bar: {{ kind: spacer bar, length: 3 mm, holes: 3, spacing: 6 mm }}
  cap: {{ kind: bead cap, length: 3 mm, outside: 5 mm }}
strands:
  - {{ name: only, cord: line, length: 20000 mm, ends: crimp, {strand} }}
"
    );
    let (pattern, _) = festoon::pattern::read(&festoon::source::Source::new("chart.yaml", text));
    festoon::design::resolve(&pattern?, &festoon::design::Choice::default()).0
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// The formula of a pattern as it is written is the row that its resolver strings.
    #[test]
    fn a_pattern_says_the_row_that_its_resolver_strings(strand in written(), units in 0..3) {
        let design = resolved(&strand).ok_or_else(|| TestCaseError::fail(strand.clone()))?;
        let trains = design.strands[nth(0)].trains.iter();
        let mut strung: Vec<_> = trains.flat_map(|train| strung(&design, &train.bits)).collect();
        // A fixed row that a space opens tells what is left bare behind it too; 20 m leave some.
        let one = &design.strands[nth(0)];
        let is_gap = |phrase: Option<&Phrase>| matches!(phrase, Some(Phrase::Gap(_)));
        if one.settle == Settle::Fixed && is_gap(one.chart.first()) && !is_gap(one.chart.last()) {
            strung.push("bare".to_owned());
        }
        let units = [UnitStyle::In, UnitStyle::Mm, UnitStyle::Both][units as usize];
        let text = chart::whole(&design, &design.strands[nth(0)], units).to_string();
        let mut reader = Reader(&text);
        let read = reader.sequence();
        prop_assert_eq!(reader.0, "", "all of the text is read: {}", text);
        prop_assert_eq!(read, strung, "{}", text);
    }
}
