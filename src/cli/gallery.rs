//! `festoon gallery`: pictures, sheets and pages of every pattern of a folder.
//!
//! Each pattern is drawn by a process of its own, and so is the contact sheet: what ends one takes no
//! other with it.

mod child;
mod lock;
mod progress;
mod record;
mod share;
mod work;

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

use clap::Args;
use rayon::prelude::*;

use festoon::english::list;
use festoon::export;
use festoon::gallery::{self, Exhibit, FIGURES};
use festoon::paint::font;
use festoon::paint::mark::Weight;
use festoon::pattern;
use festoon::trade::paper::Paper;

use super::fit::FitOptions;
use super::picture::Looks;
use super::shelves::ShelfOptions;
use super::{Failure, input, names, pages, report};
use crate::cli::hash::hash;
use child::Ended;
use progress::Progress;
use record::Folder;
use share::Share;

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
    #[command(flatten)]
    shelves: ShelfOptions,
    #[command(flatten)]
    measures: FitOptions,
    /// Write over files that are not the gallery's own
    #[arg(long)]
    force: bool,
    /// Draw one part of the patterns alone, side by side with others or on other machines: 3/8
    #[arg(long, value_name = "PART/PARTS", value_parser = Share::parse, conflicts_with = "index")]
    part: Option<Share>,
    /// Make index, pages and contact sheet from what all parts have drawn
    #[arg(long)]
    index: bool,
    /// Draw this pattern alone: for the gallery's own processes
    #[arg(long, hide = true)]
    only: Option<PathBuf>,
    /// Draw the contact sheet alone: for the gallery's own process
    #[arg(long, hide = true)]
    only_contact: bool,
}

impl Options {
    /// The folder of all patterns' folders.
    fn pieces(&self) -> PathBuf {
        self.output.join("pieces")
    }

    /// What every page depends on, in words.
    fn asked(&self) -> String {
        format!(
            "{} {:?} {:?} {} {:?}",
            env!("CARGO_PKG_VERSION"),
            self.looks,
            self.paper,
            self.with_prices,
            self.measures
        )
    }
}

/// What became of one pattern.
struct Made {
    path: PathBuf,
    /// What its page shows, as drawn now or before, and the hash of what that was made from.
    page: Option<(Exhibit, String)>,
    how: How,
}

/// How a pattern came by its page.
enum How {
    /// It was drawn.
    Drawn,
    /// Nothing has changed.
    Unchanged,
    /// It has errors; the page is that of before.
    Broken(String),
    /// A file is at fault, or the program; the page is that of before.
    Trouble(String),
}

impl Made {
    fn entry(&self) -> Option<&Exhibit> {
        self.page.as_ref().map(|(entry, _)| entry)
    }

    /// The page where it shows the pattern as it is now.
    fn fresh(&self) -> Option<&(Exhibit, String)> {
        self.page.as_ref().filter(|_| matches!(self.how, How::Drawn | How::Unchanged))
    }
}

/// Makes the gallery: everything that can be made, whatever is wrong with the rest.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    if let Some(path) = &options.only {
        return work::draw(path, options, messages);
    }
    let paths = patterns(&options.folder)?;
    if options.only_contact {
        return draw_contact(options, &paths).map_err(Failure::Trouble);
    }
    if let Some(share) = options.part {
        return draw_share(share, options, paths, messages);
    }
    let lock = lock::hold(&options.output).map_err(Failure::Trouble)?;
    let mut out = open(options).map_err(Failure::Trouble)?;
    let made = if options.index { indexed(options, &paths)? } else { make_all(&paths, options, &lock, messages) };
    bind(options, &mut out, &made).map_err(Failure::Trouble)?;
    let contact = contact(options, &mut out, &made, &lock, messages);
    let names: BTreeSet<_> = paths.iter().map(|path| work::name(path).to_lowercase()).collect();
    // Where a file system does not tell capitals from small letters, these are the same folder.
    record::sweep(&options.pieces(), |name| names.contains(&name.to_lowercase()));
    conclude(&made, contact)?;
    share::clear(&options.output);
    Ok(())
}

/// Draws the patterns that fall to a share, and leaves word of it.
fn draw_share(
    share: Share,
    options: &Options,
    paths: Vec<PathBuf>,
    messages: &report::Messages,
) -> Result<(), Failure> {
    let lock = lock::share(&options.output).map_err(Failure::Trouble)?;
    record::refuse_link(&options.pieces()).map_err(Failure::Trouble)?;
    let _alone = share::hold(&options.output, share).map_err(Failure::Trouble)?;
    let own: Vec<_> = paths.into_iter().filter(|path| share.draws(path)).collect();
    let made = make_all(&own, options, &lock, messages);
    share::write(&options.output, share, &made).map_err(Failure::Trouble)?;
    conclude(&made, Ok(()))
}

/// Draws patterns side by side, each in a process of its own.
fn make_all(paths: &[PathBuf], options: &Options, lock: &File, messages: &report::Messages) -> Vec<Made> {
    let progress = Progress::new(paths.len());
    let threads = rayon::current_num_threads().div_ceil(paths.len().max(1));
    let one = |path: &PathBuf| {
        let made =
            make(path, options, &|| child::run(&[OsStr::new("--only"), path.as_os_str()], threads, lock, messages));
        progress.step(&made);
        made
    };
    let made = paths.par_iter().map(one).collect();
    progress.finish();
    made
}

/// What all shares have drawn. A pattern that has changed since, or that no share has drawn, is at fault.
fn indexed(options: &Options, paths: &[PathBuf]) -> Result<Vec<Made>, Failure> {
    let drawn = share::read(&options.output).map_err(Failure::Trouble)?;
    let one = |path: &PathBuf| {
        let was = drawn.get(&work::name(path));
        let how = match was {
            Some(Some(_)) if is_same(path, options) => How::Unchanged,
            Some(None) => How::Broken(report::told(&format!("{}: its part could not draw it", path.display()))),
            _ => How::Trouble(report::told(&format!("{}: changed since the parts were drawn", path.display()))),
        };
        Made { path: path.clone(), page: work::known(path, options), how }
    };
    Ok(paths.iter().map(one).collect())
}

/// Makes the gallery's folder its own, and clears away what a killed run left unfinished.
fn open(options: &Options) -> Result<Folder, String> {
    let (out, fonts) = (&options.output, options.output.join("fonts"));
    [&options.pieces(), &fonts].into_iter().try_for_each(|folder| record::refuse_link(folder))?;
    let mut folder = Folder::open(out.clone(), "", options.force);
    folder.claim(["index.html", CONTACT].into_iter().chain(FONTS.map(|(name, _)| name)))?;
    [out, &fonts].into_iter().for_each(|folder| record::tidy(folder));
    folder.save()?;
    Ok(folder)
}

/// What a pattern's page shows, drawn anew unless it was made from the same before. A pattern that
/// cannot be drawn keeps the page it has.
fn make(path: &Path, options: &Options, draw: &dyn Fn() -> Ended) -> Made {
    let made = |how| Made { path: path.to_owned(), page: work::known(path, options), how };
    let name = work::name(path);
    if name == "." || name == ".." {
        return made(How::Trouble(report::told(&format!("{}: no folder can be called so: rename it", path.display()))));
    }
    record::tidy(&work::folder(path, options));
    if is_same(path, options) {
        return made(How::Unchanged);
    }
    match draw() {
        Ended::Done => made(How::Drawn),
        Ended::Broken(words) => made(How::Broken(words)),
        Ended::Trouble(words) => made(How::Trouble(words)),
    }
}

/// Whether a pattern's files were made from just what it says now.
fn is_same(path: &Path, options: &Options) -> bool {
    let known = work::known(path, options);
    let now = || work::text(path, options).map(|source| work::made_from(&source, options));
    known.is_some_and(|(_, made_from)| now() == Some(made_from))
}

/// The folder's pattern files in the order of their names.
fn patterns(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let trouble = |reason: &dyn std::fmt::Display| Failure::trouble(format!("{}: {reason}", folder.display()));
    let entries = fs::read_dir(folder).map_err(|error| trouble(&error))?;
    let files = entries.map(|entry| entry.map(|entry| entry.path())).collect::<Result<Vec<_>, _>>();
    let is_pattern = |path: &PathBuf| names::is_yaml(path) && !is_shelf(path);
    let mut paths: Vec<_> = files.map_err(|error| trouble(&error))?.into_iter().filter(is_pattern).collect();
    paths.sort_by(|a, b| work::name(a).cmp(&work::name(b)).then_with(|| a.cmp(b)));
    if let Some(twins) = paths.windows(2).find(|pair| work::name(&pair[0]) == work::name(&pair[1])) {
        // `windows` gives pairs.
        let names = [&twins[0], &twins[1]].map(|path| path.display().to_string());
        return Err(Failure::trouble(format!("{} would have one page: rename one", list(&names))));
    }
    if paths.is_empty() { Err(trouble(&"there is no pattern file (.yaml) here")) } else { Ok(paths) }
}

/// Whether a file is a shelf; what cannot be read is taken for a pattern, so that it is told.
fn is_shelf(path: &Path) -> bool {
    input::text(&path.to_string_lossy()).is_ok_and(|source| pattern::is_shelf(&source))
}

/// Writes the pages and the fonts.
fn bind(options: &Options, out: &mut Folder, made: &[Made]) -> Result<(), String> {
    let entries: Vec<_> = made.iter().filter_map(Made::entry).cloned().collect();
    for (at, entry) in entries.iter().enumerate() {
        let neighbour = |at: Option<usize>| at.and_then(|at| entries.get(at));
        let page = gallery::page(&options.title, entry, neighbour(at.checked_sub(1)), neighbour(at.checked_add(1)));
        let mut folder = Folder::open(options.pieces().join(&entry.folder), &entry.folder, options.force);
        folder.write("index.html", page.as_bytes())?;
        folder.save()?;
    }
    out.write("index.html", gallery::index(&options.title, &entries).as_bytes())?;
    FONTS.into_iter().try_for_each(|(name, weight)| out.write(name, font::file(weight)))
}

/// Makes the contact sheet anew where it is not of these patterns, and records what it is of.
fn contact(
    options: &Options,
    out: &mut Folder,
    made: &[Made],
    lock: &File,
    messages: &report::Messages,
) -> Result<(), String> {
    let fresh: Vec<_> = made.iter().filter_map(Made::fresh).collect();
    let path = options.output.join(CONTACT);
    if made.iter().all(|made| made.entry().is_none()) {
        out.prune(|file| file != CONTACT);
    }
    let of = contact_hash(options, &fresh);
    if fresh.is_empty() || out.record.made_from == of && path.exists() {
        return out.close(of, None);
    }
    out.begin()?;
    let threads = rayon::current_num_threads();
    match child::run(&[OsStr::new("--only-contact")], threads, lock, messages) {
        Ended::Done => {
            *out = Folder::open(options.output.clone(), "", options.force);
            out.close(of, None)
        }
        Ended::Broken(words) | Ended::Trouble(words) => Err(words),
    }
}

/// What the contact sheet is made from.
fn contact_hash(options: &Options, fresh: &[&(Exhibit, String)]) -> String {
    let asked = options.asked();
    let pages = fresh.iter().flat_map(|(entry, made_from)| [entry.folder.as_str(), made_from]);
    hash([asked.as_str(), &options.title].into_iter().chain(pages))
}

/// Draws all patterns on paper. Pieces are made anew, a page of them at a time.
fn draw_contact(options: &Options, paths: &[PathBuf]) -> Result<(), String> {
    let fresh: Vec<_> = paths.iter().filter(|path| is_same(path, options)).collect();
    let count = fresh.len().div_ceil(FIGURES);
    let page = |(at, paths): (usize, &[&PathBuf])| {
        let entries: Vec<_> = paths.iter().filter_map(|path| Some((path, work::known(path, options)?.0))).collect();
        let pieces: Vec<_> =
            entries.iter().filter_map(|(path, entry)| Some((work::piece(path, options)?, entry))).collect();
        gallery::contact(&options.title, &pieces, at + 1, count, options.paper)
    };
    let about = pages::about_all(&options.title);
    let sheet = export::pdf(fresh.chunks(FIGURES).enumerate().map(page), &about).map_err(|error| error.to_string())?;
    let mut out = Folder::open(options.output.clone(), "", options.force);
    out.write(CONTACT, &sheet)?;
    out.save()
}

/// Reports what is wrong, in the order of the files, and sums up.
fn conclude(made: &[Made], contact: Result<(), String>) -> Result<(), Failure> {
    let count = |is: fn(&How) -> bool| made.iter().filter(|made| is(&made.how)).count();
    for made in made {
        if let How::Broken(words) | How::Trouble(words) = &made.how {
            report::passed_on(words);
            if let Some(entry) = made.entry() {
                report::news(&format!("{}: the page of before is kept", entry.folder));
            }
        }
    }
    if let Err(words) = &contact {
        report::passed_on(words);
    }
    let [drawn, same] = [count(|how| matches!(how, How::Drawn)), count(|how| matches!(how, How::Unchanged))];
    let [broken, trouble] = [count(|how| matches!(how, How::Broken(_))), count(|how| matches!(how, How::Trouble(_)))];
    report::news(&format!("{drawn} drawn, {same} unchanged, {broken} with errors"));
    match (broken, trouble) {
        _ if trouble > 0 || contact.is_err() => Err(Failure::trouble("not every file could be read or written")),
        (0, _) => Ok(()),
        _ => Err(Failure::Pattern),
    }
}
