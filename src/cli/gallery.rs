//! `festoon gallery`: pictures, sheets and pages of every pattern of a folder.

mod manifest;
mod progress;
mod work;

use std::collections::{BTreeMap, BTreeSet};
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
use super::{Failure, output, report};
use manifest::{Manifest, hash};
use progress::Progress;

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
}

/// What became of one pattern.
enum Made {
    /// It has a page.
    Page { path: PathBuf, entry: Entry, hash: String, is_new: bool },
    /// It has errors.
    Broken(Source, Vec<Remark>),
    /// A file is at fault.
    Trouble(String),
}

/// Makes the gallery: everything that can be made, whatever is wrong with the rest.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let paths = patterns(&options.folder)?;
    let known = Manifest::read(&options.output);
    let progress = Progress::new(paths.len());
    let one = |path: &PathBuf| {
        let made = work::make(path, options, &known);
        progress.step(path, &made);
        made
    };
    let made: Vec<Made> = paths.par_iter().map(one).collect();
    progress.finish();
    bind(options, &known, &made)?;
    conclude(&made, messages)
}

/// The folder's pattern files in the order of their names.
fn patterns(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let trouble = |reason: &dyn std::fmt::Display| Failure::trouble(format!("{}: {reason}", folder.display()));
    let entries = fs::read_dir(folder).map_err(|error| trouble(&error))?;
    let files = entries.filter_map(Result::ok).map(|entry| entry.path());
    let is_pattern = |path: &PathBuf| path.extension().is_some_and(|ending| ending == "yaml" || ending == "yml");
    let mut paths: Vec<_> = files.filter(is_pattern).collect();
    paths.sort_by(|a, b| a.file_stem().cmp(&b.file_stem()).then_with(|| a.cmp(b)));
    if let Some(twins) = paths.windows(2).find(|pair| pair[0].file_stem() == pair[1].file_stem()) {
        // `windows` gives pairs.
        let names = [&twins[0], &twins[1]].map(|path| path.display().to_string());
        return Err(Failure::trouble(format!("{} would have one page: rename one", names.join(" and "))));
    }
    if paths.is_empty() { Err(trouble(&"there is no pattern file (.yaml) here")) } else { Ok(paths) }
}

/// Writes the pages, the contact sheet, the fonts and the manifest.
fn bind(options: &Options, known: &Manifest, made: &[Made]) -> Result<(), Failure> {
    let pages = || made.iter().filter_map(|made| if let Made::Page { entry, .. } = made { Some(entry) } else { None });
    let entries: Vec<Entry> = pages().cloned().collect();
    let out = &options.output;
    for (at, entry) in entries.iter().enumerate() {
        let neighbour = |at: Option<usize>| at.and_then(|at| entries.get(at));
        let page = gallery::page(&options.title, entry, neighbour(at.checked_sub(1)), neighbour(at.checked_add(1)));
        refresh(&work::folder(out, &entry.folder).join("index.html"), page.as_bytes())?;
    }
    refresh(&out.join("index.html"), gallery::index(&options.title, &entries).as_bytes())?;
    for (name, weight) in FONTS {
        refresh(&out.join(name), font::file(weight))?;
    }
    let manifest = manifest(made, &entries);
    let contact = out.join(CONTACT);
    if !entries.is_empty() && (manifest.contact != known.contact || !contact.exists()) {
        output::replace(&contact, &contact_sheet(options, made)?).map_err(Failure::trouble)?;
    }
    manifest.sweep(known, out)?;
    refresh(&Manifest::path(out), manifest.text().as_bytes())
}

/// Writes a file unless it is there just so.
fn refresh(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    if fs::read(path).is_ok_and(|old| old == bytes) {
        Ok(())
    } else {
        output::replace(path, bytes).map_err(Failure::trouble)
    }
}

fn manifest(made: &[Made], entries: &[Entry]) -> Manifest {
    let known = made.iter().filter_map(|made| match made {
        Made::Page { entry, hash, .. } => Some((entry.folder.clone(), hash.clone())),
        Made::Broken(..) | Made::Trouble(_) => None,
    });
    let patterns: BTreeMap<_, _> = known.collect();
    let contact = hash(patterns.iter().flat_map(|(folder, hash)| [folder.as_str(), hash]));
    Manifest { patterns, contact, files: files(entries) }
}

/// Every file of a gallery but its manifest.
fn files(entries: &[Entry]) -> BTreeSet<String> {
    let page = |entry: &Entry| {
        let folder = format!("pieces/{}", entry.folder);
        entry.files().chain(["index.html".to_owned()]).map(move |file| format!("{folder}/{file}")).collect::<Vec<_>>()
    };
    let contact = (!entries.is_empty()).then_some(CONTACT);
    let all = ["index.html"].into_iter().chain(FONTS.map(|(name, _)| name)).chain(contact).map(str::to_owned);
    all.chain(entries.iter().flat_map(page)).collect()
}

/// All patterns on paper. Pieces are made anew, a page of them at a time.
fn contact_sheet(options: &Options, made: &[Made]) -> Result<Vec<u8>, Failure> {
    let entries = made.iter().filter_map(|made| match made {
        Made::Page { path, entry, .. } => Some((path, entry)),
        Made::Broken(..) | Made::Trouble(_) => None,
    });
    let entries: Vec<_> = entries.collect();
    let count = entries.len().div_ceil(FIGURES);
    let page = |(at, entries): (usize, &[(&PathBuf, &Entry)])| {
        let pieces: Vec<_> = entries.iter().filter_map(|(path, entry)| Some((work::piece(path)?, *entry))).collect();
        gallery::contact(&options.title, &pieces, at + 1, count, options.paper)
    };
    let about = About { title: options.title.clone(), ..About::default() };
    export::pdf(entries.chunks(FIGURES).enumerate().map(page), &about).map_err(Failure::trouble)
}

/// Reports what is wrong, in the order of the files, and sums up.
fn conclude(made: &[Made], messages: &report::Messages) -> Result<(), Failure> {
    let (mut new, mut kept, mut broken) = (0, 0, 0);
    let mut trouble = Ok(());
    for made in made {
        match made {
            Made::Page { is_new: true, .. } => new += 1,
            Made::Page { .. } => kept += 1,
            Made::Broken(source, remarks) => {
                broken += 1;
                report::remarks(remarks, source, messages);
            }
            Made::Trouble(message) => {
                report::trouble(message);
                trouble = Err(Failure::trouble("not every file could be read or written"));
            }
        }
    }
    report::news(&format!("{new} drawn, {kept} unchanged, {broken} with errors"));
    trouble.and(if broken > 0 { Err(Failure::Pattern) } else { Ok(()) })
}
