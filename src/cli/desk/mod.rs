//! `festoon design` and `festoon preview`: a page on this machine at which a piece is designed, or looked at.
//!
//! One server answers this machine alone, each browser by itself. It keeps nothing but the pattern's file: the page
//! sends the text that it is about with every question, and is told when another program changes the file.

mod answer;
mod ask;
mod file;
mod guard;
mod html;
mod look;
mod page;
mod routes;
mod serve;
mod start;
mod take;
mod view;
mod watch;

use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::PathBuf;
use std::sync::{Arc, Mutex};

use clap::Args;
use festoon::source::Source;
use festoon::trade::paper::Paper;

use super::{Failure, VariantOptions, input, output, pages, report};

use ask::Drawn;
use file::File;
use watch::Watch;

/// Arguments of `design` and `preview`.
#[derive(Args)]
pub struct Options {
    /// The pattern file
    pattern: String,
    /// The port on this machine; any free one unless told
    #[arg(long, default_value_t = 0)]
    port: u16,
    /// The paper
    #[arg(long, value_parser = pages::paper, default_value = "a4")]
    paper: Paper,
    #[command(flatten)]
    variant: VariantOptions,
}

/// Whether the page may change the pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// It may: `design`.
    Design,
    /// It shows it alone: `preview`.
    Look,
}

/// What all answers are made from.
pub struct Desk {
    mode: Mode,
    file: File,
    address: SocketAddr,
    /// A part of every path, which no page of anybody else can know.
    token: String,
    paper: Paper,
    variant: VariantOptions,
    watch: Watch,
    /// The piece that was drawn last, for the views of it.
    drawn: Mutex<Option<Arc<Drawn>>>,
}

impl Desk {
    /// A text under the file's name, with its shelves as they are now, which are watched from then on.
    fn source(&self, text: &str) -> Source {
        let source = self.variant.shelves.beside_now(Source::new(self.file.name(), text));
        self.watch.also(&source);
        source
    }
}

/// Serves until the program is stopped.
pub fn run(options: &Options, mode: Mode, messages: &report::Messages) -> Result<(), Failure> {
    if options.pattern == "-" {
        return Err(Failure::trouble("standard input cannot be watched or saved to: name the pattern's file"));
    }
    let path = PathBuf::from(&options.pattern);
    let is_new = mode == Mode::Design && !path.exists() && output::folder(&path).is_dir();
    if !is_new {
        input::pattern(&options.pattern, &options.variant.shelves, messages)?;
    }
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, options.port)).map_err(Failure::trouble)?;
    let address = listener.local_addr().map_err(Failure::trouble)?;
    let file = File::new(path);
    let watch = Watch::new(file.clone(), options.variant.shelves.clone());
    let desk = Desk {
        mode,
        file,
        address,
        token: token()?,
        paper: options.paper,
        variant: options.variant.clone(),
        watch,
        drawn: Mutex::default(),
    };
    report::news(&format!("open http://{address}/{}/ in a browser; stop with Ctrl-C", desk.token));
    serve::serve(listener, routes::routes(desk)).map_err(Failure::trouble)
}

/// 128 bits by chance.
fn token() -> Result<String, Failure> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).map_err(Failure::trouble)?;
    Ok(format!("{:032x}", u128::from_be_bytes(bytes)))
}
