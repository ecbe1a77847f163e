//! Work in a process of its own, so that what ends it ends nothing else: a panic, a stack that
//! overflows, memory that runs out.

use std::env;
use std::ffi::{OsStr, OsString};
use std::fs::File;
use std::io;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use crate::cli::report;

/// How a child process ended.
pub enum Ended {
    /// It did what it was asked.
    Done,
    /// The pattern has errors, which these words tell.
    Broken(String),
    /// A file is at fault, or the program, as these words tell.
    Trouble(String),
}

/// Runs this program again with the same arguments and some more, on part of the work. The child keeps
/// the gallery's lock until it ends, even where this process is killed meanwhile.
pub fn run(part: &[&OsStr], threads: usize, lock: &File, messages: &report::Messages) -> Ended {
    match started(part, threads, lock, messages) {
        Ok(output) => ended(part, &output),
        Err(error) => Ended::Trouble(report::told(&format!("this program cannot start itself again: {error}"))),
    }
}

fn started(part: &[&OsStr], threads: usize, lock: &File, messages: &report::Messages) -> io::Result<Output> {
    let mut command = Command::new(env::current_exe()?);
    command.args(arguments(part, messages)).env("RAYON_NUM_THREADS", threads.to_string());
    command.stdin(lock.try_clone()?).stdout(Stdio::null()).stderr(Stdio::piped()).output()
}

/// This process's own arguments with others behind the command's name, which is the first word of its kind:
/// no option before it takes such a value.
fn arguments(part: &[&OsStr], messages: &report::Messages) -> Vec<OsString> {
    let mut words: Vec<_> = env::args_os().skip(1).collect();
    let command = words.iter().position(|word| word == "gallery").map_or(0, |at| at + 1);
    let colour = ["--color", if messages.colour() { "always" } else { "never" }].map(OsStr::new);
    words.splice(command..command, part.iter().copied().chain(colour).map(OsStr::to_owned));
    words
}

fn ended(part: &[&OsStr], output: &Output) -> Ended {
    let words = String::from_utf8_lossy(&output.stderr).into_owned();
    match output.status.code() {
        Some(0) => Ended::Done,
        Some(1) => Ended::Broken(words),
        Some(2) => Ended::Trouble(words),
        _ => {
            let what = part.last().map(|word| Path::new(word).display().to_string()).unwrap_or_default();
            let fault = "this is a fault of festoon: please report it with the pattern";
            Ended::Trouble(words + &report::told(&format!("{what}: {fault} ({})", output.status)))
        }
    }
}
