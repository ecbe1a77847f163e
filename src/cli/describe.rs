//! `festoon completions` and `festoon man`: the command line as shells and readers of manuals see it.

use clap::{Args, CommandFactory};
use clap_complete::{Shell, generate};

use super::{Arguments, Failure, output};

/// Arguments of `completions`.
#[derive(Args)]
pub struct Options {
    /// The shell
    shell: Shell,
}

/// Prints completions for a shell.
pub fn completions(options: &Options) -> Result<(), Failure> {
    let mut script = Vec::new();
    generate(options.shell, &mut Arguments::command(), "festoon", &mut script);
    output::print(&script)
}

/// Prints the manual page, in roff.
pub fn manual() -> Result<(), Failure> {
    let mut page = Vec::new();
    clap_mangen::Man::new(Arguments::command()).render(&mut page).map_err(Failure::trouble)?;
    output::print(&page)
}
