//! How long it takes from a pattern's text to all that a sheet says, before it becomes a file.

mod support;

use divan::{Bencher, black_box};
use festoon::art::Ink;
use festoon::design::{Choice, resolve};
use festoon::materials::{Order, materials};
use festoon::pages;
use festoon::paint::metrics;
use festoon::sheet::Style;
use festoon::steps::english::told;
use festoon::trade::paper::Paper;
use festoon::units::UnitStyle;
use festoon::{drape, pattern, piece, rules};

fn main() {
    divan::main();
}

#[divan::bench]
fn read_500_beads(bencher: Bencher<'_, '_>) {
    let source = support::pattern(500);
    bencher.bench_local(|| pattern::read(black_box(&source)));
}

#[divan::bench]
fn resolve_500_beads(bencher: Bencher<'_, '_>) {
    let written = pattern::read(&support::pattern(500)).0.expect("a sound pattern");
    bencher.bench_local(|| resolve(black_box(&written), &Choice::default()));
}

#[divan::bench]
fn hang_500_beads(bencher: Bencher<'_, '_>) {
    let design = support::piece(500).design;
    bencher.bench_local(|| drape::hang(black_box(&design), None));
}

#[divan::bench(sample_count = 10)]
fn hang_500_beads_in_contact(bencher: Bencher<'_, '_>) {
    let design = support::gathered(500).design;
    bencher.bench_local(|| drape::hang(black_box(&design), None));
}

/// Limit: 0.1 s.
#[divan::bench(sample_count = 20)]
fn saltmarsh_on_the_board(bencher: Bencher<'_, '_>) {
    let design = piece(&support::saltmarsh(), &Choice::default(), None).0.expect("a sound pattern").design;
    bencher.bench_local(|| drape::hang_unworn(black_box(&design), None));
}

/// Limit: 1 s.
#[divan::bench(sample_count = 5)]
fn five_strands_of_200_beads_in_full_contact(bencher: Bencher<'_, '_>) {
    let design = support::touching(5, 200).design;
    bencher.bench_local(|| drape::hang_unworn(black_box(&design), None));
}

/// They are too many to be laid side by side, and it is told. Limit: 60 s.
#[divan::bench(sample_count = 3)]
fn nearly_20_000_beads_in_contact(bencher: Bencher<'_, '_>) {
    let design = support::touching(50, 300).design;
    bencher.bench_local(|| drape::hang_unworn(black_box(&design), None));
}

#[divan::bench]
fn rules_of_500_beads(bencher: Bencher<'_, '_>) {
    let piece = support::piece(500);
    bencher.bench_local(|| rules::check(black_box(&piece.design), &piece.drape, &piece.telling, &piece.palette));
}

#[divan::bench]
fn marks_of_500_beads(bencher: Bencher<'_, '_>) {
    let piece = support::piece(500);
    let style = Style { paper: Paper::A4, ink: Ink::Colour, prices: false };
    bencher.bench_local(|| {
        metrics::forget();
        pages(black_box(&piece), &style)
    });
}

/// Reading, resolving, hanging, rules, materials, steps and the marks of all pages.
#[divan::bench]
fn everything_before_the_file(bencher: Bencher<'_, '_>) {
    let source = support::pattern(500);
    let style = Style { paper: Paper::A4, ink: Ink::Colour, prices: false };
    bencher.bench_local(|| {
        metrics::forget();
        let piece = piece(black_box(&source), &Choice::default(), None).0.expect("a sound pattern");
        (materials(&piece.design, &Order::default()), told(&piece.design, UnitStyle::Both), pages(&piece, &style))
    });
}
