//! How far the gallery is: a bar on a terminal, a line a pattern otherwise.

use std::io::{IsTerminal, stderr};

use festoon::remark::escape;
use indicatif::{ProgressBar, ProgressStyle};

use super::{How, Made};
use crate::cli::report;

/// Tells how far the work is.
pub struct Progress {
    bar: Option<ProgressBar>,
}

impl Progress {
    /// Starts before so many patterns.
    pub fn new(patterns: usize) -> Self {
        let bar = || {
            let style = ProgressStyle::with_template("{bar:32} {pos} of {len}, {eta} left  {msg}");
            ProgressBar::new(patterns as u64).with_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()))
        };
        Self { bar: stderr().is_terminal().then(bar) }
    }

    /// One more pattern is done.
    pub fn step(&self, made: &Made) {
        let word = match made.how {
            How::Drawn => "drawn",
            How::Unchanged => "unchanged",
            How::Broken(_) => "has errors",
            How::Trouble(_) => "could not be made",
        };
        let name = made.path.file_stem().unwrap_or_default().to_string_lossy();
        match &self.bar {
            Some(bar) => {
                bar.set_message(escape::on_a_line(&name));
                bar.inc(1);
            }
            None => report::news(&format!("{name}: {word}")),
        }
    }

    /// All are done.
    pub fn finish(&self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
