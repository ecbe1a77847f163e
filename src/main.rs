//! The command line program: arguments in, files and remarks out.

mod cli;

fn main() -> std::process::ExitCode {
    cli::run()
}
