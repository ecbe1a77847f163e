//! Watching over the inputs that run: none may take too long or too much memory.
//!
//! What hangs or swells never comes back to be judged, so the watch ends the whole run, and keeps and
//! names the inputs that ran at that moment. Time is the processor's, as Linux counts it for each thread, so that
//! other work on the machine makes no input late; other systems have no such count, and no limit of time.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread::sleep;
use std::time::Duration;
use std::{fs, process};

use peak_alloc::PeakAlloc;

use super::given;
use super::spoil::Corpus;

/// Most megabytes that may be held at a time, by all inputs that run together.
const MOST_MEGABYTES: f32 = 1000.0;
/// Longest that one input may take of a processor, in ns: six times what any command may in a release build.
const LONGEST: u64 = 60_000_000_000;
/// Stands for no input.
const IDLE: u64 = u64::MAX;

/// A worker and what it does.
#[derive(Default)]
struct Worker {
    /// The file in which the system counts its time.
    clock: OnceLock<String>,
    /// The input that runs.
    running: AtomicU64,
    /// What the clock showed when it began.
    since: AtomicU64,
}

impl Worker {
    /// Processor time of the worker so far, in ns; 0 where the system does not say.
    fn time(&self) -> u64 {
        let told = self.clock.get().and_then(|clock| fs::read_to_string(clock).ok()).unwrap_or_default();
        told.split(' ').next().and_then(|time| time.parse().ok()).unwrap_or_default()
    }
}

/// What runs now, and since when, for each worker.
pub struct Watch(Vec<Worker>);

impl Watch {
    pub fn new(workers: usize) -> Self {
        Self((0..workers).map(|_| Worker::default()).collect())
    }

    /// An input begins, on the worker's own thread.
    pub fn begin(&self, worker: usize, number: u64) {
        let worker = &self.0[worker];
        worker.clock.get_or_init(|| {
            let thread = fs::read_link("/proc/thread-self").unwrap_or_default();
            format!("/proc/{}/schedstat", thread.display())
        });
        worker.since.store(worker.time(), Ordering::Relaxed);
        worker.running.store(number, Ordering::Relaxed);
    }

    pub fn end(&self, worker: usize) {
        self.0[worker].running.store(IDLE, Ordering::Relaxed);
    }

    /// Looks until all workers are done.
    pub fn look(&self, memory: &PeakAlloc) {
        let numbers = || self.0.iter().map(|worker| worker.running.load(Ordering::Relaxed));
        // A worker may have begun another input since its clock was read.
        let late = |worker: &Worker| {
            let (before, time) = (worker.since.load(Ordering::Relaxed), worker.time());
            time.saturating_sub(before) > LONGEST && worker.since.load(Ordering::Relaxed) == before
        };
        while numbers().any(|number| number != IDLE) {
            let held = memory.current_usage_as_mb();
            if held > MOST_MEGABYTES || self.0.iter().any(late) {
                self.give_up(held, numbers().filter(|number| *number != IDLE).collect());
            }
            sleep(Duration::from_millis(5));
        }
    }

    fn give_up(&self, held: f32, numbers: Vec<u64>) {
        let seed = given("FESTOON_FUZZ_SEED", 1);
        let corpus = Corpus::read();
        for number in numbers {
            let kept = keep(seed, number, corpus.spoiled(seed, number).0.text());
            eprintln!("{kept} runs, when {held:.0} MB are held: too long or too much");
        }
        process::exit(101);
    }
}

/// Writes an input to a file of its own, and says which.
pub fn keep(seed: u64, number: u64, text: &str) -> String {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/target/fuzz");
    let path = format!("{folder}/{seed}-{number}.yaml");
    match fs::create_dir_all(folder).and_then(|()| fs::write(&path, text)) {
        Ok(()) => path,
        Err(error) => format!("{path} (not kept: {error})"),
    }
}
