//! `festoon gallery`: pictures, sheets and pages of every pattern of a folder.

mod progress;
mod record;
mod work;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use clap::Args;
use rayon::prelude::*;

use festoon::export::{self, About};
use festoon::gallery::{self, Entry, FIGURES};
use festoon::paint::font;
use festoon::paint::mark::Weight;
use festoon::remark::Remark;
use festoon::source::Source;
use festoon::trade::paper::Paper;

use super::picture::Looks;
use super::{Failure, report};
use progress::Progress;
use record::{Record, hash, refresh};

/// The contact sheet's file.
const CONTACT: &str = "contact.pdf";
/// The fonts' files.
const FONTS: [(&str, Weight); 2] =
    [("fonts/SourceSans3-Regular.ttf", Weight::Regular), ("fonts/SourceSans3-Semibold.ttf", Weight::Semibold)];

/// Arguments of `gallery`.
#[derive(Args)]
pub struct Options {
    /// The folder of pattern files
    folder: PathBuf,
    /// The folder to write
    #[arg(short, long, value_name = "DIR")]
    output: PathBuf,
    /// What the gallery is called
    #[arg(long, default_value = "Patterns")]
    title: String,
    /// The paper of sheets and contact sheet
    #[arg(long, value_parser = super::pages::paper, default_value = "a4")]
    paper: Paper,
    /// Print suggested prices too
    #[arg(long)]
    with_prices: bool,
    #[command(flatten)]
    looks: Looks,
    /// Write over files that are not the gallery's own
    #[arg(long)]
    force: bool,
}

impl Options {
    /// The folder of all patterns' folders.
    fn pieces(&self) -> PathBuf {
        self.output.join("pieces")
    }

    /// What every page depends on, in words.
    fn asked(&self) -> String {
        format!("{} {:?} {:?} {}", env!("CARGO_PKG_VERSION"), self.looks, self.paper, self.with_prices)
    }
}

/// What became of one pattern.
enum Made {
    /// It has a page.
    Page { path: PathBuf, entry: Box<Entry>, hash: String, is_new: bool },
    /// It could not be made, and has the page of before where there was one.
    Failed { fault: Fault, kept: Option<Box<Entry>> },
}

/// Why a pattern could not be made.
enum Fault {
    /// It has errors.
    Broken(Source, Vec<Remark>),
    /// A file is at fault, or the program.
    Trouble(String),
}

impl Made {
    fn entry(&self) -> Option<&Entry> {
        match self {
            Self::Page { entry, .. } => Some(entry),
            Self::Failed { kept, .. } => kept.as_deref(),
        }
    }
}

/// Makes the gallery: everything that can be made, whatever is wrong with the rest.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let paths = patterns(&options.folder)?;
    open(options).map_err(Failure::Trouble)?;
    let progress = Progress::new(paths.len());
    let one = |path: &PathBuf| {
        let made = work::make(path, options);
        progress.step(path, &made);
        made
    };
    let made: Vec<Made> = paths.par_iter().map(one).collect();
    progress.finish();
    bind(options, &made).map_err(Failure::Trouble)?;
    let names: BTreeSet<_> = paths.iter().map(|path| work::name(path).to_lowercase()).collect();
    // Where a file system does not tell capitals from small letters, these are the same folder.
    record::sweep(&options.pieces(), |name| names.contains(&name.to_lowercase()));
    conclude(&made, messages)
}

/// Makes the gallery's folder its own, and clears away what a killed run left unfinished.
fn open(options: &Options) -> Result<(), String> {
    let (out, fonts) = (&options.output, options.output.join("fonts"));
    record::claim(&options.pieces(), &[], true)?;
    record::claim(&fonts, &[], true)?;
    if Record::read(out, "").is_none() {
        record::owned(
            out,
            &["index.html", CONTACT]
                .into_iter()
                .chain(FONTS.map(|(name, _)| name))
                .map(str::to_owned)
                .collect::<Vec<_>>(),
            options.force,
        )?;
        Record::default().write(out)?;
    }
    [out, &fonts].into_iter().for_each(|folder| record::tidy(folder));
    Ok(())
}

/// The folder's pattern files in the order of their names.
fn patterns(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let trouble = |reason: &dyn std::fmt::Display| Failure::trouble(format!("{}: {reason}", folder.display()));
    let entries = fs::read_dir(folder).map_err(|error| trouble(&error))?;
    let files = entries.map(|entry| entry.map(|entry| entry.path())).collect::<Result<Vec<_>, _>>();
    let is_pattern = |path: &PathBuf| path.extension().is_some_and(|ending| ending == "yaml" || ending == "yml");
    let mut paths: Vec<_> = files.map_err(|error| trouble(&error))?.into_iter().filter(is_pattern).collect();
    paths.sort_by(|a, b| work::name(a).cmp(&work::name(b)).then_with(|| a.cmp(b)));
    if let Some(twins) = paths.windows(2).find(|pair| work::name(&pair[0]) == work::name(&pair[1])) {
        // `windows` gives pairs.
        let names = [&twins[0], &twins[1]].map(|path| path.display().to_string());
        return Err(Failure::trouble(format!("{} would have one page: rename one", names.join(" and "))));
    }
    if paths.is_empty() { Err(trouble(&"there is no pattern file (.yaml) here")) } else { Ok(paths) }
}

/// Writes the pages, the fonts, and the contact sheet with the record of what it was made from.
fn bind(options: &Options, made: &[Made]) -> Result<(), String> {
    let entries: Vec<_> = made.iter().filter_map(Made::entry).cloned().collect();
    let out = &options.output;
    for (at, entry) in entries.iter().enumerate() {
        let neighbour = |at: Option<usize>| at.and_then(|at| entries.get(at));
        let page = gallery::page(&options.title, entry, neighbour(at.checked_sub(1)), neighbour(at.checked_add(1)));
        refresh(&options.pieces().join(&entry.folder).join("index.html"), page.as_bytes())?;
    }
    refresh(&out.join("index.html"), gallery::index(&options.title, &entries).as_bytes())?;
    for (name, weight) in FONTS {
        refresh(&out.join(name), font::file(weight))?;
    }
    let contact = out.join(CONTACT);
    if entries.is_empty() {
        // There may be none.
        let _ = fs::remove_file(&contact);
    }
    let made_from = contact_hash(options, made);
    let known = Record::read(out, "").unwrap_or_default();
    if !entries.is_empty() && (known.made_from != made_from || !contact.exists()) {
        Record::default().write(out)?;
        refresh(&contact, &contact_sheet(options, made)?)?;
    }
    Record { made_from, ..Record::default() }.write(out)
}

/// What the contact sheet is made from.
fn contact_hash(options: &Options, made: &[Made]) -> String {
    let asked = options.asked();
    let pages = made.iter().filter_map(|made| match made {
        Made::Page { entry, hash, .. } => Some([entry.folder.as_str(), hash]),
        Made::Failed { .. } => None,
    });
    hash([asked.as_str(), &options.title].into_iter().chain(pages.flatten()))
}

/// All patterns on paper. Pieces are made anew, a page of them at a time.
fn contact_sheet(options: &Options, made: &[Made]) -> Result<Vec<u8>, String> {
    let entries = made.iter().filter_map(|made| match made {
        Made::Page { path, entry, .. } => Some((path, &**entry)),
        Made::Failed { .. } => None,
    });
    let entries: Vec<_> = entries.collect();
    let count = entries.len().div_ceil(FIGURES);
    let page = |(at, entries): (usize, &[(&PathBuf, &Entry)])| {
        let pieces: Vec<_> = entries.iter().filter_map(|(path, entry)| Some((work::piece(path)?, *entry))).collect();
        gallery::contact(&options.title, &pieces, at + 1, count, options.paper)
    };
    let about = About { title: options.title.clone(), ..About::default() };
    export::pdf(entries.chunks(FIGURES).enumerate().map(page), &about).map_err(|error| error.to_string())
}

/// Reports what is wrong, in the order of the files, and sums up.
fn conclude(made: &[Made], messages: &report::Messages) -> Result<(), Failure> {
    let (mut new, mut same, mut broken) = (0, 0, 0);
    let mut trouble = Ok(());
    for made in made {
        match made {
            Made::Page { is_new: true, .. } => new += 1,
            Made::Page { .. } => same += 1,
            Made::Failed { fault: Fault::Broken(source, remarks), .. } => {
                broken += 1;
                report::remarks(remarks, source, messages);
            }
            Made::Failed { fault: Fault::Trouble(message), .. } => {
                report::trouble(message);
                trouble = Err(Failure::trouble("not every file could be read or written"));
            }
        }
        if let Made::Failed { kept: Some(entry), .. } = made {
            report::news(&format!("{}: the page of before is kept", entry.folder));
        }
    }
    report::news(&format!("{new} drawn, {same} unchanged, {broken} with errors"));
    trouble.and(if broken > 0 { Err(Failure::Pattern) } else { Ok(()) })
}
