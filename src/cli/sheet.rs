//! `festoon sheet`: the printable sheet.

use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};

use festoon::export::{self, About, Effort};
use festoon::sheet::mark::Page;
use festoon::sheet::{self, Style};
use festoon::trade::paper::Paper;
use festoon::units::UnitStyle;

use super::{Failure, Variant, input, output, report};

/// Arguments of `sheet`.
#[derive(Args)]
pub struct Options {
    /// The pattern file; - is standard input
    pattern: String,
    /// The file to write, or a folder; - is standard output
    #[arg(short, long, value_name = "FILE|DIR")]
    output: Option<PathBuf>,
    /// What to write: pdf, png, svg
    #[arg(long, value_enum, value_delimiter = ',')]
    format: Vec<Format>,
    /// The paper
    #[arg(long, value_parser = paper, default_value = "a4")]
    paper: Paper,
    /// Resolution of PNG in dots per inch
    #[arg(long, default_value_t = 300.0, value_parser = dpi)]
    dpi: f64,
    /// How lengths are printed, whatever the pattern says
    #[arg(long, value_parser = units)]
    units: Option<UnitStyle>,
    /// Print what the materials cost and what the piece might be sold for
    #[arg(long)]
    with_prices: bool,
    #[command(flatten)]
    variant: Variant,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    Pdf,
    Png,
    Svg,
}

impl Format {
    const fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Png => "png",
            Self::Svg => "svg",
        }
    }

    fn named(ending: &str) -> Option<Self> {
        [Self::Pdf, Self::Png, Self::Svg].into_iter().find(|format| format.ending() == ending)
    }
}

/// Reads the name of a paper.
pub fn paper(word: &str) -> Result<Paper, String> {
    Paper::named(word).ok_or_else(|| "one of a4, letter, a3, tabloid, a5, legal".to_owned())
}

fn dpi(text: &str) -> Result<f64, String> {
    let dpi = text.parse::<f64>().map_err(|error| error.to_string())?;
    if (10.0..=4800.0).contains(&dpi) { Ok(dpi) } else { Err("from 10 to 4800".to_owned()) }
}

fn units(word: &str) -> Result<UnitStyle, String> {
    match word {
        "in" => Ok(UnitStyle::In),
        "mm" => Ok(UnitStyle::Mm),
        "both" => Ok(UnitStyle::Both),
        _ => Err("one of in, mm, both".to_owned()),
    }
}

/// Draws the sheet and writes it in every format that is asked for.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let (mut piece, _, _) = input::load(&options.pattern, &options.variant.choice(), None, messages)?;
    if let Some(units) = options.units {
        piece.design.heading.units = units;
    }
    let pages = sheet::pages(
        &piece,
        &Style { paper: options.paper, ink: festoon::art::Ink::Colour, prices: options.with_prices },
    );
    let heading = &piece.design.heading;
    let about = About {
        title: heading.title.clone(),
        author: heading.designer.clone().unwrap_or_default(),
        keywords: Vec::new(),
    };
    let mut files = Vec::new();
    for format in formats(options) {
        files.extend(render(&pages, &about, format, options.dpi)?.into_iter().map(|file| (format, file)));
    }
    deliver(options, files, pages.len())
}

/// The formats asked for by `--format`, by the output's ending, or PDF.
fn formats(options: &Options) -> Vec<Format> {
    if !options.format.is_empty() {
        return options.format.clone();
    }
    let ending = options.output.as_deref().and_then(Path::extension).and_then(|ending| ending.to_str());
    vec![ending.and_then(Format::named).unwrap_or(Format::Pdf)]
}

/// One file for all pages, or one a page.
fn render(pages: &[Page], about: &About, format: Format, dpi: f64) -> Result<Vec<Vec<u8>>, Failure> {
    match format {
        Format::Pdf => Ok(vec![export::pdf(pages, about).map_err(Failure::trouble)?]),
        Format::Png => {
            pages.iter().map(|page| export::png(page, dpi, Effort::File).map_err(Failure::trouble)).collect()
        }
        Format::Svg => Ok(pages.iter().map(|page| export::svg(page).into_bytes()).collect()),
    }
}

fn deliver(options: &Options, files: Vec<(Format, Vec<u8>)>, pages: usize) -> Result<(), Failure> {
    if options.output.as_deref().is_some_and(|path| path.as_os_str() == "-") {
        return match files.as_slice() {
            [(_, file)] => output::print(file),
            _ => Err(Failure::trouble("standard output takes one file: ask for --format pdf")),
        };
    }
    let (folder, stem) = name(options);
    let mut page = 0;
    for (format, bytes) in files {
        page = if format == Format::Pdf { 0 } else { page % pages + 1 };
        let number = if format == Format::Pdf || pages == 1 { String::new() } else { format!("-{page}") };
        let path = folder.join(format!("{stem}{number}.{}", format.ending()));
        output::write(&path, &bytes)?;
        report::news(&format!("wrote {}", path.display()));
    }
    Ok(())
}

/// The folder and the start of the file names.
fn name(options: &Options) -> (PathBuf, String) {
    let stem =
        |path: &Path| path.file_stem().map_or_else(|| "sheet".into(), |stem| stem.to_string_lossy().into_owned());
    let pattern = if options.pattern == "-" { "sheet".to_owned() } else { stem(Path::new(&options.pattern)) };
    let variant = [&options.variant.size, &options.variant.colourway].into_iter().flatten();
    let pattern = variant.fold(pattern, |name, part| format!("{name}-{}", part.replace(' ', "-")));
    match &options.output {
        None => (PathBuf::new(), pattern),
        Some(path) if path.is_dir() || path.extension().is_none() => (path.clone(), pattern),
        Some(path) => (path.parent().unwrap_or_else(|| Path::new("")).to_owned(), stem(path)),
    }
}
