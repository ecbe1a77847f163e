//! `festoon picture`: an image for catalogue pages.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use festoon::design::Choice;
use festoon::export::{self, Effort};
use festoon::paint::mark::Rgb;
use festoon::picture::{self, Ground, Proportion, Setting};
use festoon::source::Source;
use festoon::{Piece, pattern};

use super::names::{self, Target};
use super::{Failure, Units, VariantOptions, input, output, pages, report};

/// Arguments of `picture`.
#[derive(Args)]
pub struct Options {
    /// The pattern file; - is standard input
    pattern: String,
    /// The file to write, or a folder; - is standard output
    #[arg(short, long, value_name = "FILE|DIR")]
    output: Option<PathBuf>,
    /// Every colourway side by side
    #[arg(long, conflicts_with = "colourway")]
    all_colourways: bool,
    /// png or svg
    #[arg(long, value_enum)]
    format: Option<Format>,
    #[command(flatten)]
    looks: Looks,
    #[command(flatten)]
    variant: VariantOptions,
}

/// Most pixels of a picture's longer side: each shadow is drawn as large as the picture.
const MOST_PIXELS: i64 = 4_000;

/// What a picture looks like.
#[derive(Args, Clone, Debug)]
pub struct Looks {
    /// What the piece lies on
    #[arg(long, value_enum, default_value = "plain")]
    ground: GroundWord,
    /// Width to height
    #[arg(long, value_parser = proportion, default_value = "square")]
    shape: Proportion,
    /// Colour of the plain ground
    #[arg(long, value_parser = colour, default_value = "#f4efe6", value_name = "#RRGGBB")]
    colour: Rgb,
    /// Write title and length below
    #[arg(long)]
    caption: bool,
    /// Pixels of the longer side, from 16 to 4000: at most 0.5 GB is held
    #[arg(long, default_value_t = 2000, value_parser = clap::value_parser!(u32).range(16..=MOST_PIXELS))]
    pub pixels: u32,
    #[command(flatten)]
    units: Units,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum GroundWord {
    Plain,
    Linen,
    Slate,
    Transparent,
    Neck,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    Png,
    Svg,
}

impl Format {
    /// The endings of their files.
    const ENDINGS: [&str; 2] = ["png", "svg"];

    const fn ending(self) -> &'static str {
        match self {
            Self::Png => "png",
            Self::Svg => "svg",
        }
    }

    fn named(ending: &str) -> Option<Self> {
        [Self::Png, Self::Svg].into_iter().find(|format| format.ending() == ending)
    }
}

fn proportion(word: &str) -> Result<Proportion, String> {
    match word {
        "square" | "1:1" => Ok(Proportion::Square),
        "4:5" => Ok(Proportion::Upright),
        "3:2" => Ok(Proportion::Level),
        _ => Err("one of square, 4:5, 3:2".to_owned()),
    }
}

fn colour(text: &str) -> Result<Rgb, String> {
    Rgb::parse(text).ok_or_else(|| "six hexadecimal digits, like #f4efe6".to_owned())
}

impl Looks {
    /// How the picture is made.
    pub const fn setting(&self) -> Setting {
        let ground = match self.ground {
            GroundWord::Plain => Ground::Plain(self.colour),
            GroundWord::Linen => Ground::Linen,
            GroundWord::Slate => Ground::Slate,
            GroundWord::Transparent => Ground::Transparent,
            GroundWord::Neck => Ground::Neck,
        };
        Setting { ground, proportion: self.shape, caption: self.caption }
    }

    /// The piece in the units asked for.
    pub fn of(&self, piece: Piece) -> Piece {
        self.units.of(piece)
    }
}

/// Draws the picture and writes it.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let target = names::target(options.output.as_deref(), &Format::ENDINGS)?;
    let format = format(options, &target)?;
    let source = input::pattern(&options.pattern, &options.variant.shelves, messages)?;
    let pieces = pieces(&source, options, messages)?;
    let setting = options.looks.setting();
    let page = picture::picture(&pieces, &setting);
    let bytes = match format {
        Format::Svg => export::svg(&page).into_bytes(),
        Format::Png => {
            let dpi = picture::resolution(&page, options.looks.pixels);
            let draw = if setting.ground == Ground::Transparent { export::transparent_png } else { export::png };
            draw(&page, dpi, Effort::File).map_err(Failure::trouble)?
        }
    };
    deliver(options, &target, format, &bytes, &source)
}

/// The piece in the variant that is asked for, or in every colourway, the pattern's own first.
fn pieces(source: &Source, options: &Options, messages: &report::Messages) -> Result<Vec<Piece>, Failure> {
    let mut choices = vec![options.variant.choice()];
    if options.all_colourways {
        let names = pattern::read(source).0.and_then(|pattern| pattern.colourways);
        let way = |name: &str| Choice { colourway: Some(name.to_owned()), ..options.variant.choice() };
        choices.extend(names.iter().flat_map(|ways| ways.ids()).map(way));
    }
    let piece = |choice| Ok(options.looks.of(input::resolved(source, choice, None, messages)?.0));
    choices.iter().map(piece).collect()
}

/// The format asked for by `--format` or by the output's ending, which must agree, or PNG.
fn format(options: &Options, target: &Target) -> Result<Format, Failure> {
    let named = match target {
        Target::File(path) | Target::Device(path) => names::ending(path).as_deref().and_then(Format::named),
        Target::Output | Target::Folder(_) => None,
    };
    match (options.format, named) {
        (Some(asked), Some(named)) if asked != named => {
            Err(Failure::trouble(format!("--format {} asks for another file than -o", asked.ending())))
        }
        (asked, named) => Ok(asked.or(named).unwrap_or(Format::Png)),
    }
}

fn deliver(options: &Options, target: &Target, format: Format, bytes: &[u8], source: &Source) -> Result<(), Failure> {
    let path = match target {
        Target::Output => return output::print(bytes),
        Target::File(path) | Target::Device(path) => path.clone(),
        Target::Folder(folder) => {
            let stem = names::stem(&options.pattern, &options.variant, "picture");
            folder.join(format!("{stem}.{}", format.ending()))
        }
    };
    pages::save(&path, bytes, std::slice::from_ref(source))
}
