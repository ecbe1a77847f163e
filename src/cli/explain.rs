//! `festoon explain`: a remark at length.

use clap::Args;

use festoon::remark::{Code, suggest};

use super::{Failure, output};

/// Arguments of `explain`.
#[derive(Args)]
pub struct Options {
    /// The remark's code, such as overfull; without one, all codes are listed
    code: Option<String>,
}

/// Prints an explanation, or the list of codes.
pub fn run(options: &Options) -> Result<(), Failure> {
    let Some(name) = &options.code else {
        let lines: Vec<_> =
            Code::ALL.iter().map(|code| format!("{:<22} {}\n", code.name(), code.level().word())).collect();
        return output::print(lines.concat().as_bytes());
    };
    match Code::named(name) {
        Some(code) => output::print(explain(code).as_bytes()),
        None => Err(Failure::Trouble(unknown(name))),
    }
}

fn explain(code: Code) -> String {
    format!("{} ({})\n\n{}\n", code.name(), code.level().word(), code.explanation())
}

fn unknown(name: &str) -> String {
    let names = Code::ALL.iter().map(|code| code.name());
    let help = suggest(name, names, || "`festoon explain` lists all codes".to_owned());
    format!("there is no remark `{name}`: {help}")
}
