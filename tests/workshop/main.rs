//! The workshop through the command: shelves, pieces made to measure, kits and shop pages.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

mod fit;
mod kits;
mod listing;
mod shelf;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What a run of the program left.
pub struct Ran {
    /// The exit code.
    pub code: i32,
    /// What it printed.
    pub out: String,
    /// What it said beside.
    pub err: String,
}

/// A folder in which the program runs.
pub struct Desk(PathBuf);

impl Desk {
    /// An empty folder for a test of that name.
    pub fn new(name: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("workshop").join(name);
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        Self(folder)
    }

    /// The same with a file, in whatever folder it names.
    pub fn with(self, file: &str, text: &str) -> Self {
        fs::create_dir_all(self.path(file).parent().unwrap()).unwrap();
        fs::write(self.path(file), text).unwrap();
        self
    }

    /// Where a file of it stands.
    pub fn path(&self, file: &str) -> PathBuf {
        self.0.join(file)
    }

    /// What a file of it holds.
    pub fn read(&self, file: &str) -> String {
        fs::read_to_string(self.path(file)).unwrap()
    }

    /// Runs the program there; its remarks are one line each.
    pub fn run(&self, arguments: &[&str]) -> Ran {
        self.run_as("short", arguments)
    }

    /// The same with remarks in another style.
    pub fn run_as(&self, style: &str, arguments: &[&str]) -> Ran {
        let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let output = command.args(["--messages", style]).args(arguments).current_dir(&self.0).output().unwrap();
        Ran {
            code: output.status.code().expect("the program ends by itself"),
            out: String::from_utf8_lossy(&output.stdout).into_owned(),
            err: String::from_utf8_lossy(&output.stderr).into_owned(),
        }
    }

    /// What a run prints that succeeds.
    pub fn told(&self, arguments: &[&str]) -> String {
        let ran = self.run(arguments);
        assert_eq!(ran.code, 0, "{arguments:?}: {}", ran.err);
        ran.out
    }
}
