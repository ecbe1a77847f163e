//! Sizes: every strand is solved anew. Fills change their counts, mirrors stay mirrors, a focal bead
//! stays in the middle, and strands keep their spacing.

use festoon::Piece;
use festoon::design::{Basis, Choice, Design, Stated, What, nth, resolve};
use festoon::drape::Seat;
use festoon::pattern::read;
use festoon::source::Source;
use festoon::trade::bodies::Sex;

use super::shipped::{Shipped, named, shipped};

/// What sits on a strand, in order.
fn row(design: &Design, strand: usize) -> Vec<&What> {
    design.strands[nth(strand)].bits().map(|bit| &bit.what).collect()
}

/// The plain piece and all its sizes.
fn sized(shipped: &Shipped) -> Vec<Piece> {
    shipped.choices().iter().filter(|choice| choice.colourway.is_none()).map(|choice| shipped.piece(choice).0).collect()
}

#[test]
fn lengths_change_by_what_the_size_says() {
    let saltmarsh = named("saltmarsh");
    let (plain, _) = saltmarsh.piece(&Choice::default());
    for (size, change) in [("short", -25.4), ("long", 50.8)] {
        let other = saltmarsh.sized(size);
        for (strand, before) in other.design.strands.iter().zip(&plain.design.strands) {
            let found = (strand.finished - before.finished).value();
            assert!((found - change).abs() < 1e-9, "{size} {}: {found}", strand.name);
        }
    }
}

#[test]
fn strands_keep_their_spacing() {
    let lengths = |piece: &Piece| piece.design.strands.iter().map(|strand| strand.finished.value()).collect::<Vec<_>>();
    for piece in sized(&named("saltmarsh")) {
        let steps: Vec<_> = lengths(&piece).windows(2).map(|pair| pair[1] - pair[0]).collect();
        assert!(steps.iter().all(|step| (step - 50.8).abs() < 1e-9), "{steps:?}");
    }
}

#[test]
fn fills_count_anew_and_others_stay() {
    let saltmarsh = named("saltmarsh");
    let counts = |piece: &Piece| {
        let design = &piece.design;
        let beads: Vec<u32> = design.strands.iter().map(|strand| strand.counts(design).iter().sum()).collect();
        <[u32; 3]>::try_from(beads).unwrap()
    };
    let (plain, _) = saltmarsh.piece(&Choice::default());
    let [inner, middle, outer] = counts(&plain);
    let long = counts(&saltmarsh.sized("long"));
    assert_eq!(long[0], inner);
    assert!(long[1] > middle && long[2] > outer, "{long:?} after {:?}", counts(&plain));
}

#[test]
fn a_fill_takes_as_many_whole_repeats_as_fit() {
    // 78 mm for ten, so 7.8 mm each; the ends take a guard of 4 mm and a crimp of 2 mm on both sides.
    for piece in sized(&named("dune")) {
        let size = piece.design.heading.size.as_deref();
        let asked = 17.0 * 25.4 + size.map_or(0.0, |size| if size == "short" { -25.4 } else { 76.2 });
        let fits = f64::floor((asked - 12.0) / 7.8);
        assert_eq!(f64::from(piece.design.counts()[nth(0)]), fits, "{size:?}");
    }
}

#[test]
fn a_mirror_with_a_fill_keeps_its_focal_bead_in_the_middle() {
    for (name, focal) in [("slack-tide", "stone"), ("shingle", "chip")] {
        for piece in sized(&named(name)) {
            let row = row(&piece.design, 0);
            let (middle, mirrored): (_, Vec<_>) = (row[row.len() / 2], row.iter().rev().copied().collect());
            assert_eq!(row, mirrored, "{name} {:?}", piece.design.heading.size);
            assert_eq!(row.len() % 2, 1, "{name}");
            assert!(matches!(middle, What::Bead(bead) if piece.design.beads[*bead].id == focal), "{name}: {middle:?}");
        }
    }
}

#[test]
fn sliding_rows_that_are_mirrors_rest_centred() {
    let mut found = 0;
    for shipped in shipped() {
        for piece in sized(&shipped) {
            found += centred(&shipped.name, &piece);
        }
    }
    // Three strands in three sizes, and one strand in three sizes.
    assert_eq!(found, 12);
}

/// Checks each strand of one sliding train that reads the same from both ends, which are closed alike; says how many.
fn centred(name: &str, piece: &Piece) -> usize {
    let strands = piece.design.strands.iter().zip(&piece.drape.strands).enumerate();
    let slides = strands.filter(|(at, (strand, _))| {
        let row = row(&piece.design, *at);
        strand.trains.len() == 1
            && strand.bare().value() > 1.0
            && strand.ends[0] == strand.ends[1]
            && row.iter().eq(row.iter().rev())
            && strand.settle == festoon::pattern::Settle::Slide
    });
    let mut count = 0;
    for (_, (strand, hung)) in slides {
        let middle = (hung.seats[0].station + hung.seats[hung.seats.len() - 1].station) / 2.0;
        let (half, span) = (strand.finished.value() / 2.0, hung.ends[0].x + hung.ends[1].x);
        assert!((middle - half).abs() < 1e-9, "{name} {}: {middle} is not {half}", strand.name);
        // Strands that push one another aside are at rest when nothing moves by 0.01 mm.
        let known = if piece.drape.presses.is_empty() { 1e-6 } else { 1e-3 };
        for (seat, other) in hung.seats.iter().zip(hung.seats.iter().rev()) {
            assert!((seat.centre.x + other.centre.x - span).abs() < known, "{name} {}", strand.name);
            assert!((seat.centre.y - other.centre.y).abs() < known, "{name} {}", strand.name);
        }
        count += 1;
    }
    count
}

#[test]
fn a_size_may_name_its_own_body() {
    let tideline = named("tideline");
    let girth = |piece: &Piece| piece.design.wear.girth.value();
    let (plain, _) = tideline.piece(&Choice::default());
    let [small, large] = ["small", "large"].map(|size| tideline.sized(size));
    assert!(girth(&small) < girth(&plain) && girth(&plain) < girth(&large));
    for piece in [small, plain, large] {
        let inside = piece.drape.ring().unwrap().inside_girth;
        let asked = (piece.design.wear.girth + *piece.design.wear.ease).value();
        assert!((inside - asked).abs() <= 2.5, "{inside} for {asked}");
    }
}

#[test]
fn stops_keep_their_distance_from_the_nearer_end() {
    // Groyne has stops at 110, 200, 300 and 390 mm on 500 mm; one more in the middle for the test.
    let groyne = named("groyne")
        .source
        .text()
        .replace("{ mirror: [2 buoy, pebble], about: [buoy] }", "{ stop: crimp, at: 250 mm }");
    let sizes = "sizes: [{ name: long, change: +40 mm }, { name: short, change: -40 mm }]\n";
    let source = Source::new("groyne", format!("{groyne}\n{sizes}"));
    let stations = |size: Option<&str>| {
        let choice = Choice { size: size.map(str::to_owned), ..Choice::default() };
        let (piece, remarks) = festoon::piece(&source, &choice, None);
        let piece = piece.unwrap_or_else(|| panic!("{remarks:?}"));
        let hung = &piece.drape.strands[nth(0)];
        let strand = &piece.design.strands[nth(0)];
        let is_stop = |seat: &&Seat| matches!(seat.bit(strand).what, What::Finding(_));
        hung.seats.iter().filter(is_stop).map(|seat| seat.station.round()).collect::<Vec<_>>()
    };
    assert_eq!(stations(None), [110.0, 200.0, 250.0, 300.0, 390.0]);
    assert_eq!(stations(Some("long")), [110.0, 200.0, 270.0, 340.0, 430.0]);
    assert_eq!(stations(Some("short")), [110.0, 200.0, 230.0, 260.0, 350.0]);
}

#[test]
fn a_size_keeps_what_it_does_not_say_of_its_wearer() {
    let sandhopper = named("sandhopper").source.text().to_owned();
    let text = format!("{sandhopper}\nsizes: [{{ name: older, change: +20 mm, wear: {{ body: woman 5 }} }}]\n");
    let (pattern, remarks) = read(&Source::new("sandhopper", text));
    let pattern = pattern.unwrap_or_else(|| panic!("{remarks:?}"));
    let older = Choice { size: Some("older".to_owned()), ..Choice::default() };
    let wear = |choice| resolve(&pattern, choice).0.unwrap().wear.clone();
    let (plain, older) = (wear(&Choice::default()), wear(&older));
    // The pattern's own neck is given; the size's body counts before it, and the wearer is still a child.
    assert!(plain.child && older.child);
    assert_eq!(*plain.source, Basis::Measured);
    assert_eq!(older.source, Stated::Stated(Basis::Table(Sex::Woman, 5)));
    assert!(older.girth > plain.girth);
}
