//! Pictures as files: their size, what is transparent, that nothing is cut, and that they never vary.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs;
use std::io::Cursor;
use std::path::Path;
use std::process::{Command, Output};

/// A picture read back.
struct Image {
    width: usize,
    height: usize,
    channels: usize,
    per_metre: u32,
    data: Vec<u8>,
}

fn festoon(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
    command.args(arguments).current_dir(env!("CARGO_MANIFEST_DIR")).output().unwrap()
}

/// What `picture` writes to standard output.
fn picture(pattern: &str, arguments: &[&str]) -> Vec<u8> {
    let pattern = format!("patterns/{pattern}.yaml");
    let ran = festoon(&[&["picture", &pattern, "-o", "-"], arguments].concat());
    assert_eq!(ran.status.code(), Some(0), "{}", String::from_utf8_lossy(&ran.stderr));
    ran.stdout
}

fn image(file: &[u8]) -> Image {
    let mut reader = png::Decoder::new(Cursor::new(file)).read_info().unwrap();
    let mut data = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut data).unwrap();
    let channels = frame.color_type.samples();
    let per_metre = reader.info().pixel_dims.unwrap();
    assert_eq!(per_metre.unit, png::Unit::Meter);
    assert!(reader.info().srgb.is_some(), "marked sRGB");
    Image { width: frame.width as usize, height: frame.height as usize, channels, per_metre: per_metre.xppu, data }
}

impl Image {
    fn pixel(&self, x: usize, y: usize) -> &[u8] {
        &self.data[(y * self.width + x) * self.channels..][..self.channels]
    }

    /// All pixels of the frame so many pixels wide along the edges.
    fn edge(&self, breadth: usize) -> impl Iterator<Item = &[u8]> {
        let inside = move |at: usize, size: usize| at >= breadth && at + breadth < size;
        let places = (0..self.height).flat_map(|y| (0..self.width).map(move |x| (x, y)));
        places.filter(move |(x, y)| !(inside(*x, self.width) && inside(*y, self.height))).map(|(x, y)| self.pixel(x, y))
    }
}

/// Width in mm that an SVG states.
fn svg_width(svg: &str) -> f64 {
    svg.split_once("width=\"").unwrap().1.split_once("mm\"").unwrap().0.parse().unwrap()
}

#[test]
fn the_longer_side_has_the_pixels_asked_for_and_the_file_its_true_size() {
    for (shape, width, height) in [("square", 300, 300), ("4:5", 240, 300), ("3:2", 300, 200)] {
        let file = image(&picture("whelk", &["--pixels", "300", "--shape", shape]));
        assert_eq!((file.width, file.height, file.channels), (width, height, 3), "{shape}");
        let svg = String::from_utf8(picture("whelk", &["--format", "svg", "--shape", shape])).unwrap();
        let expected = width as f64 / svg_width(&svg) * 1000.0;
        assert!((f64::from(file.per_metre) - expected).abs() <= 0.002 * expected, "{shape}: {expected}");
    }
}

#[test]
fn nothing_is_cut_on_nothing() {
    for entry in fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("patterns")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|ending| ending != "yaml") {
            continue;
        }
        let name = path.file_stem().unwrap().to_str().unwrap();
        let file = image(&picture(name, &["--ground", "transparent", "--pixels", "200"]));
        assert_eq!(file.channels, 4, "{name}");
        // Only the faint rim of the wide shadow may come near the edge.
        assert!(file.edge(4).all(|pixel| pixel[3] < 24), "{name}");
        let solid = file.data.chunks(4).filter(|pixel| pixel[3] == 255).count();
        assert!(solid > 0, "{name}: nothing is solid");
    }
}

#[test]
fn the_margin_of_plain_ground_keeps_its_colour() {
    let file = image(&picture("rockpool", &["--pixels", "240", "--colour", "#204060"]));
    let near = |pixel: &[u8]| pixel.iter().zip([0x20_i32, 0x40, 0x60]).all(|(a, b)| (i32::from(*a) - b).abs() < 70);
    assert!(file.edge(5).all(near));
}

#[test]
fn the_same_piece_gives_the_same_bytes_on_every_ground() {
    for ground in ["plain", "linen", "slate", "transparent", "neck"] {
        let draw = || picture("saltmarsh", &["--pixels", "160", "--ground", ground]);
        assert!(draw() == draw(), "{ground}");
    }
}

#[test]
fn grounds_differ() {
    let draw = |ground| picture("moonwrack", &["--pixels", "120", "--ground", ground]);
    let files = ["plain", "linen", "slate", "transparent", "neck"].map(draw);
    for (at, one) in files.iter().enumerate() {
        assert!(files[at + 1..].iter().all(|other| one != other));
    }
}

#[test]
fn beads_on_the_bust_are_those_of_the_front() {
    // A row of one kind of bead: what lies behind the neck is not drawn.
    let count = |ground: &str| {
        let svg = String::from_utf8(picture("dune", &["--format", "svg", "--ground", ground])).unwrap();
        svg.matches("xlink:href=\"#p0-bead").count()
    };
    let (worn, laid) = (count("neck"), count("plain"));
    assert!(worn > laid / 2 && worn < laid, "{worn} of {laid}");
}

#[test]
fn the_bust_is_seen_from_farther_off_with_a_caption() {
    let width = |arguments: &[&str]| {
        let all = [&["--format", "svg", "--ground", "neck"], arguments].concat();
        svg_width(&String::from_utf8(picture("saltmarsh", &all)).unwrap())
    };
    assert!(width(&["--caption"]) > 1.25 * width(&[]));
}

#[test]
fn colourways_stand_side_by_side_with_their_names() {
    let svg = String::from_utf8(picture("saltmarsh", &["--format", "svg", "--all-colourways"])).unwrap();
    for name in [">Saltmarsh<", ">dusk<", ">low tide<"] {
        assert!(svg.contains(name), "{name}");
    }
    let one = String::from_utf8(picture("saltmarsh", &["--format", "svg", "--caption"])).unwrap();
    let share = svg_width(&svg) / svg_width(&one);
    // A tall piece needs less than a square; its caption needs a cell at least 0.6 as wide as high.
    assert!((1.8 - 1e-6..3.0).contains(&share), "{share}");
    assert!(one.contains("17 ¾ to 19") && one.contains("long</text>"), "the caption says how long it is");
}

#[test]
fn the_alternative_names_kind_and_beads() {
    let svg = String::from_utf8(picture("whelk", &["--format", "svg"])).unwrap();
    let text = svg.split_once("<desc id=\"page_desc\">").unwrap().1.split_once("</desc>").unwrap().0;
    assert!(text.starts_with("Whelk: a pair of earrings") && text.contains(", with "), "{text}");
}

/// Where the stamps of symbols stand that begin so, with the symbol.
fn stamps<'a>(svg: &'a str, start: &str) -> Vec<(&'a str, [f64; 2])> {
    let uses = svg.split("<use ").skip(1).map(|rest| rest.split_once('>').unwrap().0);
    let place = |tag: &'a str| {
        let id = tag.split_once("href=\"#")?.1.split_once('"')?.0;
        let at = tag.split_once("translate(")?.1.split_once(')')?.0;
        let mut numbers = at.split([' ', ',']).map(|number| number.parse().unwrap());
        Some((id, [numbers.next()?, numbers.next()?]))
    };
    uses.filter_map(place).filter(|(id, _)| id.starts_with(start)).collect()
}

#[test]
fn the_second_earring_is_the_first_mirrored() {
    let svg = String::from_utf8(picture("whelk", &["--format", "svg"])).unwrap();
    let middle = svg_width(&svg) / 2.0;
    let beads = stamps(&svg, "p0-bead");
    let (first, second): (Vec<_>, Vec<_>) = beads.into_iter().partition(|(_, at)| at[0] < middle);
    assert!(first.len() > 10 && first.len() == second.len());
    for (one, other) in first.iter().zip(&second) {
        assert!((one.1[0] + other.1[0] - 2.0 * middle).abs() < 0.01, "{one:?} {other:?}");
        assert!((one.1[1] - other.1[1]).abs() < 0.01, "{one:?} {other:?}");
    }
    let hooks = stamps(&svg, "p0-finding").into_iter().filter(|(id, _)| id.ends_with("-mirrored"));
    assert!(hooks.clone().count() > 0 && hooks.into_iter().all(|(id, at)| at[0] > middle && defines(&svg, id)));
}

/// Whether an SVG defines a symbol.
fn defines(svg: &str, id: &str) -> bool {
    svg.contains(&format!("id=\"{id}\""))
}

#[test]
fn shadows_are_deeper_on_dark_stone() {
    let opacities = |ground: &str| {
        let svg = String::from_utf8(picture("rockpool", &["--format", "svg", "--ground", ground])).unwrap();
        assert!(svg.contains("flood-color=\"#000000\""), "{ground}");
        let shadows = svg.split("flood-opacity=\"").skip(1).map(|rest| rest.split_once('"').unwrap().0);
        shadows.map(|opacity| opacity.parse().unwrap()).collect::<Vec<f64>>()
    };
    let (light, dark) = (opacities("plain"), opacities("slate"));
    assert_eq!((light.len(), dark.len()), (2, 2), "a short shadow and a wide one");
    assert!(light.iter().zip(&dark).all(|(light, dark)| dark > light), "{light:?} {dark:?}");
}

#[test]
fn strands_share_their_spacer_bars() {
    let pattern = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("patterns/pierhead.yaml")).unwrap();
    // The second finding but one, by its place in the file.
    assert!(pattern.find("  end: {").unwrap() < pattern.find("  bar: {").unwrap());
    for ground in ["plain", "neck"] {
        let svg = String::from_utf8(picture("pierhead", &["--format", "svg", "--ground", ground])).unwrap();
        assert_eq!(stamps(&svg, "p0-finding-2-").len(), 2, "{ground}: a bar on each side");
    }
}

#[test]
fn bad_arguments_and_bad_patterns_have_their_exit_codes() {
    let code = |arguments: &[&str]| festoon(arguments).status.code();
    assert_eq!(code(&["picture", "patterns/whelk.yaml", "--colour", "beige"]), Some(2));
    assert_eq!(code(&["picture", "patterns/whelk.yaml", "--shape", "5:4"]), Some(2));
    assert_eq!(code(&["picture", "patterns/whelk.yaml", "--pixels", "3"]), Some(2));
    assert_eq!(code(&["picture", "patterns/none.yaml", "-o", "-"]), Some(2));
    assert_eq!(code(&["picture", "patterns/saltmarsh.yaml", "--colourway", "noon", "-o", "-"]), Some(1));
    let both = ["picture", "patterns/saltmarsh.yaml", "--colourway", "dusk", "--all-colourways"];
    assert_eq!(code(&both), Some(2));
}
