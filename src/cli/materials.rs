//! `festoon materials`: what to buy, cut, pack and pay, for one pattern or several together.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use festoon::Piece;
use festoon::design::Choice;
use festoon::english::commas;
use festoon::materials::render::{self, Separator};
use festoon::materials::{self, Batch, MOST_MAKERS, Materials, Order, Pool, Stash};
use festoon::pattern;
use festoon::remark::has_errors;
use festoon::sheet::{self, Style};
use festoon::source::Source;
use festoon::trade::paper::Paper;

use super::{Failure, VariantOptions, input, output, pages, report};

/// Arguments of `materials`.
#[derive(Args)]
pub struct Options {
    /// Pattern files, which are bought for together; - is standard input
    #[arg(required = true, value_name = "PATTERN")]
    patterns: Vec<String>,
    /// How many makers are supplied, each making one of each piece
    #[arg(long, default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=i64::from(MOST_MAKERS)))]
    makers: u32,
    /// Pack kits, each bag with its own spare: so many, 12, or by size and colourway, short=3,long/dusk=9
    #[arg(long, value_name = "KITS", value_delimiter = ',', value_parser = Bags::parse, conflicts_with = "makers")]
    kits: Vec<Bags>,
    /// Draw labels for the kits, to cut apart, in a file that ends in .pdf, .png or .svg
    #[arg(long, value_name = "FILE", requires = "kits")]
    labels: Option<PathBuf>,
    /// The paper of the labels
    #[arg(long, value_parser = pages::paper, default_value = "a4")]
    paper: Paper,
    /// Share of the beads to buy beyond the count
    #[arg(long, default_value = "5%", value_parser = share)]
    spare: f64,
    /// Share of the findings to buy beyond the count
    #[arg(long, default_value = "0%", value_parser = share, value_name = "SPARE")]
    spare_findings: f64,
    /// A file of what is in hand: ids with counts or lengths
    #[arg(long, value_name = "FILE")]
    stash: Option<String>,
    /// How the list is printed
    #[arg(long, value_enum, default_value = "table")]
    format: Format,
    /// What stands between the cells of CSV: a comma; a semicolon, and then decimals have commas; or a tab
    #[arg(long, value_enum, default_value = "comma")]
    separator: SeparatorWord,
    #[command(flatten)]
    variant: VariantOptions,
}

#[derive(Clone, Copy, ValueEnum)]
enum Format {
    Table,
    Csv,
    Json,
}

#[derive(Clone, Copy, ValueEnum)]
enum SeparatorWord {
    Comma,
    Semicolon,
    Tab,
}

impl SeparatorWord {
    const fn separator(self) -> Separator {
        match self {
            Self::Comma => Separator::Comma,
            Self::Semicolon => Separator::Semicolon,
            Self::Tab => Separator::Tab,
        }
    }
}

/// So many bags of a variant.
#[derive(Clone, Debug)]
struct Bags {
    /// Names of a size, a colourway, or both; none for the pattern as written.
    of: Vec<String>,
    count: u32,
}

impl Bags {
    /// Reads `12`, `short=3` or `long/dusk=9`.
    fn parse(text: &str) -> Result<Self, String> {
        let (of, count) = text.rsplit_once('=').unwrap_or(("", text));
        let count = count.trim().parse().ok().filter(|count| (1..=MOST_MAKERS).contains(count));
        let of = of.split('/').map(str::trim).filter(|name| !name.is_empty()).map(str::to_owned).collect();
        let wrong = || format!("write how many, from 1 to {MOST_MAKERS}: 12, or short=3");
        count.map(|count| Self { of, count }).ok_or_else(wrong)
    }

    /// The variant of a pattern that these are of.
    fn choice(&self, source: &Source, base: &Choice) -> Result<Choice, Failure> {
        let mut choice = base.clone();
        if self.of.is_empty() {
            return Ok(choice);
        }
        // What is wrong with one that cannot be read is told where it is drawn.
        let Some(pattern) = pattern::read(source).0 else { return Ok(choice) };
        let (sizes, ways) = (pattern.size_names(), pattern.colourway_names());
        for name in &self.of {
            let one = Some(name.clone());
            if sizes.contains(name) {
                choice.size = one;
            } else if ways.contains(name) {
                choice.colourway = one;
            } else {
                let all = commas(sizes.iter().chain(&ways));
                let known = if all.is_empty() { "it has none".to_owned() } else { format!("it has {all}") };
                return Err(Failure::trouble(format!("{}: no size or colourway `{name}`; {known}", source.name)));
            }
        }
        Ok(choice)
    }
}

fn share(text: &str) -> Result<f64, String> {
    let percent = text.trim().strip_suffix('%').and_then(|number| number.trim().parse::<f64>().ok());
    percent
        .filter(|percent| (0.0..=100.0).contains(percent))
        .map(|percent| percent / 100.0)
        .ok_or_else(|| "write a share from 0% to 100%, like 5%".to_owned())
}

/// One variant that is made so often.
struct Job {
    piece: Piece,
    name: String,
    count: u32,
}

/// Prints the list, and draws the labels.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    let inputs = options.patterns.iter().chain(&options.stash);
    if inputs.filter(|input| *input == "-").count() > 1 {
        return Err(Failure::trouble("standard input is one pattern or the stash: name files for the others"));
    }
    let read = |path: &String| input::pattern(path, &options.variant.shelves, messages);
    let sources: Vec<_> = options.patterns.iter().map(read).collect::<Result<_, _>>()?;
    let jobs: Vec<_> = sources.iter().map(|source| jobs(source, options, messages)).collect::<Result<_, _>>()?;
    let jobs: Vec<Job> = jobs.into_iter().flatten().collect();
    one_currency(&jobs)?;
    let list = listed(&jobs, options, messages)?;
    let telling = jobs.first().map(|job| job.piece.telling.clone()).unwrap_or_default();
    if let Some(path) = &options.labels {
        let style = Style { paper: options.paper, ..Style::default() };
        let about = pages::about_all("Labels for kits");
        pages::save_as(path, &sheet::labels(&list.kits, telling.units, &style), &about, &sources)?;
    }
    match options.format {
        Format::Table => output::say(&render::table(&list, &telling)),
        Format::Csv => output::print(render::csv(&list, options.separator.separator()).as_bytes()),
        Format::Json => output::print(render::json(&list, telling.currency.as_deref()).as_bytes()),
    }
}

/// The variants of a pattern that are made; what is said of several is told once.
fn jobs(source: &Source, options: &Options, messages: &report::Messages) -> Result<Vec<Job>, Failure> {
    let base = options.variant.choice();
    let one = [Bags { of: Vec::new(), count: options.makers }];
    let bags = if options.kits.is_empty() { &one[..] } else { &options.kits };
    let (mut jobs, mut said) = (Vec::new(), Vec::new());
    for bags in bags {
        let (piece, remarks) = festoon::piece(source, &bags.choice(source, &base)?, None);
        let new: Vec<_> = remarks.iter().filter(|remark| !said.contains(*remark)).cloned().collect();
        report::remarks(&new, source, messages);
        let piece = piece.filter(|_| !has_errors(&remarks)).ok_or(Failure::Pattern)?;
        said.extend(new);
        jobs.push(Job { name: piece.design.heading.whole_title(), piece, count: bags.count });
    }
    Ok(jobs)
}

/// Refuses prices that cannot be added up.
fn one_currency(jobs: &[Job]) -> Result<(), Failure> {
    let currencies = jobs.iter().filter_map(|job| Some((&job.name, job.piece.telling.currency.as_ref()?)));
    let mut currencies = currencies.collect::<Vec<_>>().into_iter();
    let Some((first, currency)) = currencies.next() else { return Ok(()) };
    match currencies.find(|(_, other)| *other != currency) {
        Some((name, other)) => Err(Failure::trouble(format!(
            "{first} is priced in {currency} and {name} in {other}, which cannot be added up: list them apart"
        ))),
        None => Ok(()),
    }
}

fn listed(jobs: &[Job], options: &Options, messages: &report::Messages) -> Result<Materials, Failure> {
    let all: u64 = jobs.iter().map(|job| u64::from(job.count)).sum();
    if all > u64::from(MOST_MAKERS) {
        return Err(Failure::trouble(format!("{all} pieces are more than one list is written for: {MOST_MAKERS}")));
    }
    let bagged = !options.kits.is_empty();
    let batches = jobs.iter().map(|job| {
        let Job { piece: Piece { design, palette, .. }, name, .. } = job;
        Batch { design, palette, name, pieces: job.count, bagged }
    });
    let batches: Vec<_> = batches.collect();
    let Some((first, others)) = batches.split_first() else { return Err(Failure::Pattern) };
    let order = Order {
        makers: options.makers,
        spare: options.spare,
        spare_findings: options.spare_findings,
        stash: Stash::default(),
    };
    let pool = Pool::new(*first, others.to_vec(), &order);
    let stash = match &options.stash {
        Some(path) => read_stash(&input::source(path, messages)?, &pool, messages)?,
        None => Stash::default(),
    };
    Ok(materials::of(&pool, &Order { stash, ..order }))
}

fn read_stash(source: &Source, pool: &Pool<'_>, messages: &report::Messages) -> Result<Stash, Failure> {
    let (stash, remarks) = Stash::read(source, &pool.stock);
    report::remarks(&remarks, source, messages);
    stash.ok_or(Failure::Pattern)
}
