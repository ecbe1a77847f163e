//! Patterns, spoiled at random: each gives a piece or an error that says what to change, soon and in
//! little memory, never a panic. Of an eighth what they make is hung, and of a share drawn whole: every page that there is.
//!
//! Every input follows from a seed and its number alone. To run many, for hours:
//!
//! ```sh
//! FESTOON_FUZZ_COUNT=1000000 FESTOON_FUZZ_SEED=7 FESTOON_FUZZ_DRAW=1 cargo test --release --test fuzz spoiled
//! ```
//!
//! `FESTOON_FUZZ_DRAW=1` hangs and draws every piece, `=10` draws each tenth. An input that fails is written to
//! `target/fuzz`; once mended, it is kept in `tests/fuzz/corpus`, which every run begins with.

#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a run of hours tells how far it came")]

#[path = "support/beside.rs"]
mod beside;
#[path = "fuzz/drawn.rs"]
mod drawn;
#[path = "support/every.rs"]
mod every;
#[path = "fuzz/finite.rs"]
mod finite;
#[path = "support/language.rs"]
mod language;
#[path = "fuzz/reach.rs"]
mod reach;
#[path = "fuzz/spoil.rs"]
mod spoil;
#[path = "fuzz/watch.rs"]
mod watch;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicU64, Ordering};
use std::{env, thread};

use festoon::design::{self, Choice};
use festoon::pattern::{self, Draft};
use festoon::piece;
use festoon::remark::render::{Notation, render};
use festoon::remark::{Code, Level, Remark, has_errors};
use festoon::source::Source;
use peak_alloc::PeakAlloc;

use spoil::Corpus;
use watch::Watch;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// Inputs of an ordinary run.
const COUNT: u64 = 20_000;
/// Of how many inputs one is hung, and of how many one is drawn, in every way, in an ordinary run.
const HUNG: u64 = 8;
const SHARE: u64 = 400;

/// A number that the environment gives.
fn given(name: &str, otherwise: u64) -> u64 {
    env::var(name).map_or(otherwise, |text| text.parse().unwrap_or_else(|_| panic!("{name}: {text} is no number")))
}

#[test]
fn kept_findings_stay_mended() {
    let corpus = Corpus::read();
    for (name, text) in spoil::findings() {
        check(&corpus.source(&name, text), true).unwrap_or_else(|fault| panic!("{name}: {fault}"));
    }
}

#[test]
fn spoiled_patterns_give_a_piece_or_an_error_with_help() {
    let run = Run::given();
    let workers = 0..given("FESTOON_FUZZ_THREADS", 2) as usize;
    let watch = Watch::new(workers.len());
    let faults: Vec<String> = thread::scope(|scope| {
        scope.spawn(|| watch.look(&MEMORY));
        let start = |worker| {
            let (run, watch) = (&run, &watch);
            scope.spawn(move || run.work(watch, worker))
        };
        let workers: Vec<_> = workers.map(start).collect();
        workers.into_iter().flat_map(|worker| worker.join().expect("a worker catches panics")).collect()
    });
    println!("{} inputs, at most {:.0} MB held", run.count, MEMORY.peak_usage_as_mb());
    assert!(faults.is_empty(), "{} of {} inputs:\n{}", faults.len(), run.count, faults.join("\n"));
}

/// A run over many inputs.
struct Run {
    corpus: Corpus,
    seed: u64,
    count: u64,
    share: u64,
    next: AtomicU64,
}

impl Run {
    fn given() -> Self {
        Self {
            corpus: Corpus::read(),
            seed: given("FESTOON_FUZZ_SEED", 1),
            count: given("FESTOON_FUZZ_COUNT", COUNT),
            share: given("FESTOON_FUZZ_DRAW", SHARE),
            next: AtomicU64::new(0),
        }
    }

    /// Checks inputs until there are no more, and gives what is wrong with them.
    fn work(&self, watch: &Watch, worker: usize) -> Vec<String> {
        let next = || Some(self.next.fetch_add(1, Ordering::Relaxed)).filter(|number| *number < self.count);
        let mut faults = Vec::new();
        while let Some(number) = next() {
            watch.begin(worker, number);
            faults.extend(self.one(number));
        }
        watch.end(worker);
        faults
    }

    /// What is wrong with what becomes of an input; the input is kept where something is.
    fn one(&self, number: u64) -> Option<String> {
        let (source, hash) = self.corpus.spoiled(self.seed, number);
        let draw = hash.is_multiple_of(self.share);
        let is_hung = draw || hash.is_multiple_of(HUNG);
        let checked = catch_unwind(AssertUnwindSafe(|| if is_hung { check(&source, draw) } else { resolved(&source) }));
        let fault = checked.unwrap_or_else(|panic| Err(format!("panics: {}", said(&*panic)))).err()?;
        let kept = watch::keep(self.seed, number, source.text());
        eprintln!("{kept}: {fault}");
        Some(format!("{kept}: {fault}"))
    }
}

fn said(panic: &(dyn std::any::Any + Send)) -> String {
    let text = panic.downcast_ref::<String>().cloned();
    text.or_else(|| panic.downcast_ref::<&str>().map(|text| (*text).to_owned())).unwrap_or_default()
}

/// Makes as much of the design of a text as can be read.
fn resolved(source: &Source) -> Result<(), String> {
    let Draft { pattern, mut remarks, holes, .. } = pattern::draft(source);
    let attempt = pattern.map(|pattern| design::attempt(&pattern, &holes, &Choice::default()));
    let is_made = attempt.as_ref().is_some_and(|attempt| attempt.design.is_some());
    remarks.extend(attempt.into_iter().flat_map(|attempt| attempt.remarks));
    told(is_made, &remarks, source)
}

/// Whether something was made or it is said why not, and what is said helps and is shown.
fn told(is_made: bool, remarks: &[Remark], source: &Source) -> Result<(), String> {
    if !is_made && !has_errors(remarks) {
        return Err(format!("no piece and no error: {remarks:#?}"));
    }
    if let Some(own) = remarks.iter().find(|remark| remark.code() == Code::OwnFault) {
        return Err(own.headline());
    }
    remarks.iter().try_for_each(helps)?;
    shows(remarks, source)
}

/// Makes and, if asked, draws the piece of a text.
fn check(source: &Source, draw: bool) -> Result<(), String> {
    let (made, remarks) = piece(source, &Choice::default(), None);
    told(made.is_some(), &remarks, source)?;
    match made.filter(|_| draw) {
        Some(piece) => drawn::check(&piece, &remarks, source),
        None => Ok(()),
    }
}

fn helps(remark: &Remark) -> Result<(), String> {
    let silent = remark.headline().is_empty() || remark.help().is_empty();
    if remark.level() == Level::Error && silent { Err(format!("says no help: {remark:?}")) } else { Ok(()) }
}

fn shows(remarks: &[Remark], source: &Source) -> Result<(), String> {
    for style in [Notation::Full, Notation::Short, Notation::Json] {
        let shown = render(remarks, source, style, false);
        if let Some(remark) = remarks.iter().find(|remark| !shown.contains(remark.code().name())) {
            return Err(format!("{style:?} does not show {remark:?}"));
        }
    }
    Ok(())
}
