//! Watching over the inputs that run: none may take too long or too much memory.
//!
//! What hangs or swells never comes back to be judged, so the watch ends the whole run, and keeps and
//! names the inputs that ran at that moment.

use std::sync::atomic::{AtomicU64, Ordering};
use std::thread::sleep;
use std::time::{Duration, Instant};
use std::{fs, process};

use peak_alloc::PeakAlloc;

use super::given;
use super::spoil::Corpus;

/// Most megabytes that may be held at a time, by all inputs that run together.
const MOST_MEGABYTES: f32 = 1000.0;
/// Longest that one input may take, in ms: in a debug build beside other work, far above what it should.
const LONGEST: u64 = 60_000;
/// Stands for no input.
const IDLE: u64 = u64::MAX;

/// What runs now, and since when, for each worker.
pub struct Watch {
    start: Instant,
    running: Vec<(AtomicU64, AtomicU64)>,
}

impl Watch {
    pub fn new(workers: usize) -> Self {
        let idle = |_| (AtomicU64::new(0), AtomicU64::new(0));
        Self { start: Instant::now(), running: (0..workers).map(idle).collect() }
    }

    pub fn begin(&self, worker: usize, number: u64) {
        let (running, since) = &self.running[worker];
        since.store(self.now(), Ordering::Relaxed);
        running.store(number, Ordering::Relaxed);
    }

    pub fn end(&self, worker: usize) {
        self.running[worker].0.store(IDLE, Ordering::Relaxed);
    }

    fn now(&self) -> u64 {
        self.start.elapsed().as_millis().try_into().unwrap_or(u64::MAX)
    }

    /// Looks until all workers are done.
    pub fn look(&self, memory: &PeakAlloc) {
        let numbers = || self.running.iter().map(|(running, _)| running.load(Ordering::Relaxed));
        while numbers().any(|number| number != IDLE) {
            let late = |(running, since): &(AtomicU64, AtomicU64)| {
                running.load(Ordering::Relaxed) != IDLE
                    // A worker may have begun since this moment.
                    && self.now().saturating_sub(since.load(Ordering::Relaxed)) > LONGEST
            };
            let held = memory.current_usage_as_mb();
            if held > MOST_MEGABYTES || self.running.iter().any(late) {
                self.give_up(held, numbers().filter(|number| *number != IDLE).collect());
            }
            sleep(Duration::from_millis(5));
        }
    }

    fn give_up(&self, held: f32, numbers: Vec<u64>) {
        let seed = given("FESTOON_FUZZ_SEED", 1);
        let corpus = Corpus::read();
        for number in numbers {
            let kept = keep(seed, number, &corpus.spoiled(seed, number).0);
            eprintln!("{kept} runs after {} ms, when {held:.0} MB are held: too long or too much", self.now());
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
