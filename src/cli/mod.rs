//! The commands. Only this folder prints.
//!
//! Exit codes: 0 done (warnings allowed), 1 the pattern has errors and nothing was written, 2 usage
//! or file trouble.

mod check;
mod describe;
mod desk;
mod explain;
mod fit;
mod gallery;
mod hash;
mod input;
mod listing;
mod lsp;
mod materials;
mod measure;
mod names;
mod new;
mod output;
mod pages;
mod picture;
mod proof;
mod report;
mod schema;
mod sheet;
mod shelves;
mod swap;

use std::process::ExitCode;

use clap::{Args, Parser, Subcommand};

use festoon::Piece;
use festoon::design::Choice;
use festoon::remark::said::quantity::NoQuantity;
use festoon::units::{Length, UnitStyle};

use fit::FitOptions;
use shelves::ShelfOptions;

/// Draws bead jewellery patterns to scale: from one YAML file to measured strands and printable sheets.
#[derive(Parser)]
#[command(name = "festoon", version, about, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
    #[command(flatten)]
    messages: report::Messages,
}

#[derive(Subcommand)]
enum Command {
    /// Draw the printable sheet
    Sheet(sheet::Options),
    /// Draw strands and findings at actual size, to lay the work on
    Proof(proof::Options),
    /// Draw a picture for a catalogue page
    Picture(picture::Options),
    /// Make pictures, sheets and pages of all patterns of a folder
    Gallery(gallery::Options),
    /// Design a piece at a page in your browser: its text and the piece side by side
    Design(desk::Options),
    /// Show a piece in your browser and redraw it when the pattern is saved
    Preview(desk::Options),
    /// Help an editor over standard input and output (Language Server Protocol)
    Lsp,
    /// Say what is wrong with patterns, or could be
    Check(check::Options),
    /// Print lengths, drops, weights and tension
    Measure(measure::Options),
    /// List what to buy and cut, and what it costs
    Materials(materials::Options),
    /// Print the words for a shop's page
    Listing(listing::Options),
    /// Print a commented pattern to start from
    New(new::Options),
    /// Print the JSON Schema of the pattern language, or of a shelf
    Schema(schema::Options),
    /// Explain a remark at length
    Explain(explain::Options),
    /// Print completions for a shell
    Completions(describe::Options),
    /// Print the manual page
    Man,
}

/// Which variant of a pattern is wanted, for whom, and from which shelves.
#[derive(Args, Clone, Default)]
struct VariantOptions {
    /// A size that the pattern names
    #[arg(long, value_name = "NAME")]
    size: Option<String>,
    /// A colourway that the pattern names
    #[arg(long, value_name = "NAME")]
    colourway: Option<String>,
    #[command(flatten)]
    measures: FitOptions,
    #[command(flatten)]
    shelves: ShelfOptions,
}

impl VariantOptions {
    fn choice(&self) -> Choice {
        Choice { size: self.size.clone(), colourway: self.colourway.clone(), fit: self.measures.fit() }
    }
}

/// How lengths are told.
#[derive(Args, Clone, Copy, Debug)]
struct Units {
    /// How lengths are printed, whatever the pattern says
    #[arg(long, value_parser = units)]
    units: Option<UnitStyle>,
}

fn length(text: &str) -> Result<Length, String> {
    Length::parse(text).map_err(|error| format!("`{text}` {}", NoQuantity::from(error)))
}

fn units(word: &str) -> Result<UnitStyle, String> {
    match word {
        "in" => Ok(UnitStyle::In),
        "mm" => Ok(UnitStyle::Mm),
        "both" => Ok(UnitStyle::Both),
        _ => Err("one of in, mm, both".to_owned()),
    }
}

impl Units {
    /// The piece in the units asked for.
    fn of(self, piece: Piece) -> Piece {
        match self.units {
            Some(units) => piece.told_in(units),
            None => piece,
        }
    }
}

/// Why a command did not do what was asked.
enum Failure {
    /// The pattern has errors, which have been reported.
    Pattern,
    /// A file or an argument is at fault.
    Trouble(String),
}

impl Failure {
    fn trouble(message: impl std::fmt::Display) -> Self {
        Self::Trouble(message.to_string())
    }
}

/// Says what is wrong with the arguments, which may be names of files from anywhere.
fn usage(error: &clap::Error) -> ExitCode {
    report::news(error.render().to_string().trim_end());
    ExitCode::from(2)
}

/// Runs the program.
pub fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) if error.use_stderr() => return usage(&error),
        Err(asked) => asked.exit(),
    };
    match done(&arguments) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Pattern) => ExitCode::from(1),
        Err(Failure::Trouble(message)) => {
            report::trouble(&message);
            ExitCode::from(2)
        }
    }
}

/// Does what the arguments ask for.
fn done(arguments: &Arguments) -> Result<(), Failure> {
    let messages = &arguments.messages;
    match &arguments.command {
        Command::Sheet(options) => sheet::run(options, messages),
        Command::Proof(options) => proof::run(options, messages),
        Command::Picture(options) => picture::run(options, messages),
        Command::Gallery(options) => gallery::run(options, messages),
        Command::Design(options) => desk::run(options, desk::Mode::Design, messages),
        Command::Preview(options) => desk::run(options, desk::Mode::Look, messages),
        Command::Lsp => lsp::run(),
        Command::Check(options) => check::run(options, messages),
        Command::Measure(options) => measure::run(options, messages),
        Command::Materials(options) => materials::run(options, messages),
        Command::Listing(options) => listing::run(options, messages),
        Command::New(options) => new::run(options),
        Command::Schema(options) => schema::run(options),
        Command::Explain(options) => explain::run(options),
        Command::Completions(options) => describe::completions(options),
        Command::Man => describe::manual(),
    }
}
