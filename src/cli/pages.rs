//! Arguments and files of the commands that draw pages.

use std::borrow::Cow;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use rayon::prelude::*;

use festoon::Piece;
use festoon::art::Ink;
use festoon::export::{self, About, Day, Effort, ExportError};
use festoon::paint::mark::Page;
use festoon::source::Source;
use festoon::trade::paper::Paper;
use festoon::units::INCH;

use super::names::{self, Target};
use super::{Failure, Units, VariantOptions, input, output, report};

/// Most pixels of all pages of a run together.
const MOST_PIXELS: f64 = 400e6;

/// Resolution of labels as PNG, in dots an inch.
const LABEL_DPI: f64 = 300.0;
/// Most pixels of the pages that are drawn side by side: 80 MB, two pages of A4 at 300 dpi.
const PIXELS_AT_ONCE: f64 = 20e6;

/// What is drawn, on what, and where it goes.
#[derive(Args)]
pub struct Printout {
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
    pub paper: Paper,
    /// Resolution of PNG in dots per inch, from 10 to 1200; all pages together may have 400 megapixels
    #[arg(long, default_value_t = 300.0, value_parser = dpi)]
    dpi: f64,
    /// What to print with: colour; grey or outline, where a mark of its own tells each bead apart
    #[arg(long, value_parser = ink, default_value = "colour")]
    pub ink: Ink,
    /// Write the PDF to keep for years, dated so (2026-11-27): it claims to be PDF/A-2u
    #[arg(long, value_name = "DAY")]
    archive: Option<Day>,
    #[command(flatten)]
    units: Units,
    #[command(flatten)]
    variant: VariantOptions,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    Pdf,
    Png,
    Svg,
}

impl Format {
    /// The endings of their files.
    const ENDINGS: [&str; 3] = ["pdf", "png", "svg"];

    pub const fn ending(self) -> &'static str {
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

pub fn paper(word: &str) -> Result<Paper, String> {
    Paper::named(word).ok_or_else(|| "one of a4, letter, a3, tabloid, a5, legal, half-letter".to_owned())
}

fn dpi(text: &str) -> Result<f64, String> {
    let dpi = text.parse::<f64>().map_err(|error| error.to_string())?;
    if (10.0..=1200.0).contains(&dpi) { Ok(dpi) } else { Err("from 10 to 1200".to_owned()) }
}

fn ink(word: &str) -> Result<Ink, String> {
    Ink::named(word).ok_or_else(|| "one of colour, grey, outline".to_owned())
}

impl Printout {
    /// Reads the pattern, with the units asked for.
    pub fn load(&self, messages: &report::Messages) -> Result<(Piece, Source), Failure> {
        let (piece, _, source) = input::load(&self.pattern, &self.variant, None, messages)?;
        Ok((self.units.of(piece), source))
    }

    /// Writes the pages in every format that is asked for. Files that are not named by the maker are
    /// named like the pattern, with an ending that tells what they hold.
    pub fn write(&self, (piece, source): &(Piece, Source), pages: &[Page], holds: &str) -> Result<(), Failure> {
        let target = names::target(self.output.as_deref(), &Format::ENDINGS)?;
        let about = About { archived: self.archive, ..about(piece) };
        let sources = std::slice::from_ref(source);
        let mut files = Vec::new();
        for format in self.formats(&target)? {
            files.extend(render(pages, &about, format, self.dpi)?.into_iter().map(|file| (format, file)));
        }
        match (&target, files.as_slice()) {
            (Target::Output, [(_, file)]) => output::print(file),
            (Target::Device(path), [(_, file)]) => save(path, file, sources),
            (Target::Output | Target::Device(_), _) => {
                Err(Failure::trouble("standard output and devices take one file: ask for --format pdf"))
            }
            (Target::Folder(folder), _) => {
                let stem = names::stem(&self.pattern, &self.variant, "sheet") + holds;
                save_all(folder, &Stem { stem: stem.into(), ending: None }, &files, pages.len(), sources)
            }
            (Target::File(path), _) => {
                save_all(path.parent().unwrap_or(path), &Stem::of(path), &files, pages.len(), sources)
            }
        }
    }

    /// The formats asked for, of which a file to keep has one alone.
    fn formats(&self, target: &Target) -> Result<Vec<Format>, Failure> {
        let formats = self.named(target)?;
        match formats.iter().find(|format| self.archive.is_some() && **format != Format::Pdf) {
            Some(other) => Err(Failure::trouble(format!(
                "--archive is of PDF alone, which keeps letters and tags: draw {} by a command of its own, without it",
                other.ending()
            ))),
            None => Ok(formats),
        }
    }

    /// The formats named by `--format` or by the output's ending, which must agree, or PDF.
    fn named(&self, target: &Target) -> Result<Vec<Format>, Failure> {
        let (Target::File(path) | Target::Device(path)) = target else {
            return Ok(if self.format.is_empty() { vec![Format::Pdf] } else { self.format.clone() });
        };
        match (names::ending(path).as_deref().and_then(Format::named), self.format.as_slice()) {
            (Some(named), []) => Ok(vec![named]),
            (None, []) => Ok(vec![Format::Pdf]),
            (Some(named), asked) if asked.iter().any(|format| *format != named) => Err(Failure::trouble(format!(
                "{} is not what --format asks for: leave one out, or name a folder",
                path.display()
            ))),
            (_, asked) => Ok(asked.to_vec()),
        }
    }
}

/// How the names of files begin alike, and end, where that was asked for and does not tell what they hold.
struct Stem<'a> {
    stem: Cow<'a, str>,
    ending: Option<&'a OsStr>,
}

impl<'a> Stem<'a> {
    /// As in a maker's name.
    fn of(path: &'a Path) -> Self {
        Self { stem: path.file_stem().unwrap_or_default().to_string_lossy(), ending: path.extension() }
    }
}

/// Writes files whose names begin alike and end as was asked for, or with what they hold.
fn save_all(
    folder: &Path,
    stem: &Stem<'_>,
    files: &[(Format, Vec<u8>)],
    pages: usize,
    sources: &[Source],
) -> Result<(), Failure> {
    let mut page = 0;
    for (format, bytes) in files {
        page = if *format == Format::Pdf { 0 } else { page % pages + 1 };
        let number = if *format == Format::Pdf || pages == 1 { String::new() } else { format!("-{page}") };
        let ending = stem.ending.map_or_else(|| format.ending().into(), OsStr::to_string_lossy);
        save(&folder.join(format!("{}{number}.{ending}", stem.stem)), bytes, sources)?;
    }
    Ok(())
}

/// Writes pages to a file of a maker's name, or where its ending asks for one a page, to several that begin alike.
/// None of what was read is written over.
pub fn save_as(path: &Path, pages: &[Page], about: &About, sources: &[Source]) -> Result<(), Failure> {
    let format = names::ending(path).as_deref().and_then(Format::named);
    let wrong = || Failure::trouble(format!("{}: write a name that ends in .pdf, .png or .svg", path.display()));
    let format = format.ok_or_else(wrong)?;
    let files = render(pages, about, format, LABEL_DPI)?.into_iter().map(|file| (format, file)).collect::<Vec<_>>();
    save_all(path.parent().unwrap_or(path), &Stem::of(path), &files, pages.len(), sources)
}

/// Writes a file and says so. None of what was read is written over.
pub fn save(path: &Path, bytes: &[u8], sources: &[Source]) -> Result<(), Failure> {
    output::write(path, bytes, sources)?;
    report::news(&format!("wrote {}", path.display()));
    Ok(())
}

/// What a file of a piece says of itself.
pub fn about(piece: &Piece) -> About {
    let heading = &piece.design.heading;
    let all = about_all(&heading.title);
    About {
        author: heading.designer.clone().unwrap_or_default(),
        subject: heading.summary.clone().unwrap_or_default(),
        keywords: [heading.kind.word().to_owned()].into_iter().chain(all.keywords).collect(),
        ..all
    }
}

/// What a file of several pieces says of itself.
pub fn about_all(title: &str) -> About {
    About { title: title.to_owned(), keywords: vec!["beads".to_owned()], ..About::default() }
}

/// One file for all pages, or one a page.
fn render(pages: &[Page], about: &About, format: Format, dpi: f64) -> Result<Vec<Vec<u8>>, Failure> {
    match format {
        Format::Pdf => Ok(vec![export::pdf(pages, about).map_err(told)?]),
        Format::Png => {
            bounded(pages, dpi)?;
            let png = |page: &Page| export::png(page, dpi, Effort::File).map_err(told);
            let drawn = |some: &[Page]| some.par_iter().map(png).collect::<Vec<_>>();
            pages.chunks(at_once(pages, dpi)).flat_map(drawn).collect()
        }
        Format::Svg => Ok(pages.iter().map(|page| export::svg(page).into_bytes()).collect()),
    }
}

fn told(error: ExportError) -> Failure {
    Failure::trouble(format!("{error}; {}", error.help()))
}

/// How many pages may be drawn side by side.
fn at_once(pages: &[Page], dpi: f64) -> usize {
    let largest = pages.iter().map(|page| pixels(page, dpi)).fold(1.0, f64::max);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates")]
    let fit = (PIXELS_AT_ONCE / largest) as usize;
    fit.max(1)
}

fn pixels(page: &Page, dpi: f64) -> f64 {
    page.width * page.height * (dpi / INCH).powi(2)
}

/// Refuses pages that have more pixels together than are drawn in good time.
fn bounded(pages: &[Page], dpi: f64) -> Result<(), Failure> {
    let pixels: f64 = pages.iter().map(|page| pixels(page, dpi)).sum();
    if pixels <= MOST_PIXELS {
        return Ok(());
    }
    let most = (dpi * (MOST_PIXELS / pixels).sqrt()).floor();
    Err(Failure::trouble(format!(
        "{} pages at {dpi} dpi have {:.0} megapixels, and at most {:.0} are drawn: ask for --dpi {most} or less, or for PDF",
        pages.len(),
        pixels / 1e6,
        MOST_PIXELS / 1e6
    )))
}
