//! `festoon preview`: a page on this machine that redraws when the pattern is saved.
//!
//! A small server answers this machine alone, each browser by itself. The page asks twice a second
//! whether the pattern's text has changed, and loads the sheet's pages anew when it has.

mod http;

use std::net::{Ipv4Addr, TcpListener};
use std::panic::AssertUnwindSafe;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use clap::Args;

use festoon::export::{self, Effort};
use festoon::pattern::parts;
use festoon::remark::has_errors;
use festoon::remark::plain::plain;
use festoon::sheet;
use festoon::source::Source;
use festoon::trade::paper::Paper;
use festoon::{art::Ink, piece};

use super::{Failure, Variant, input, pages, report};

use http::{Answer, serve};

/// Resolution of the pages on the screen.
const DPI: f64 = 144.0;
/// Most browsers that are answered at a time.
const MOST_CLIENTS: usize = 64;
/// The page that asks for changes.
const SHELL: &str = include_str!("preview/shell.html");

/// Arguments of `preview`.
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
    variant: Variant,
}

/// Serves until the program is stopped.
pub fn run(options: &Options, messages: &report::Messages) -> Result<(), Failure> {
    input::source(&options.pattern, messages)?;
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, options.port)).map_err(Failure::trouble)?;
    let address = listener.local_addr().map_err(Failure::trouble)?;
    report::news(&format!("open http://{address}/ in a browser; stop with Ctrl-C"));
    let empty = Preview { options, text: None, drawn: 0, pages: Vec::new(), said: String::new() };
    let (preview, clients) = (Mutex::new(empty), AtomicUsize::new(0));
    std::thread::scope(|scope| {
        for stream in listener.incoming().flatten() {
            if clients.fetch_add(1, Ordering::Relaxed) >= MOST_CLIENTS {
                // Dropped at once: the page asks again.
                clients.fetch_sub(1, Ordering::Relaxed);
                continue;
            }
            scope.spawn(|| {
                // A browser that goes away in the middle is no reason to stop.
                let _ = serve(stream, address, |path| answer(&preview, path));
                clients.fetch_sub(1, Ordering::Relaxed);
            });
        }
    });
    Ok(())
}

/// Answers from the sheet; should drawing ever fail, so does that answer, and the next one tries again.
fn answer(preview: &Mutex<Preview<'_>>, path: &str) -> Answer {
    let draw = || preview.lock().unwrap_or_else(PoisonError::into_inner).answer(path);
    std::panic::catch_unwind(AssertUnwindSafe(draw)).unwrap_or_else(|_| Answer::failed())
}

/// The sheet as it was last drawn.
struct Preview<'a> {
    options: &'a Options,
    /// The pattern's text that was drawn.
    text: Option<String>,
    /// How often it was drawn.
    drawn: u32,
    /// The pages as PNG; those of the last sound pattern where this one has errors.
    pages: Vec<Vec<u8>>,
    /// The remarks.
    said: String,
}

impl Preview<'_> {
    fn answer(&mut self, path: &str) -> Answer {
        match path {
            "/" => Answer::page(SHELL),
            "/state" => {
                self.redraw();
                Answer::json(&serde_json::json!({
                    "version": format!("{}-{}", std::process::id(), self.drawn),
                    "pages": self.pages.len(),
                    "remarks": self.said,
                }))
            }
            other => {
                let number = other.strip_prefix("/page/").and_then(|rest| rest.parse::<usize>().ok());
                let page = number.and_then(|number| self.pages.get(number));
                page.map_or_else(Answer::missing, |page| Answer::picture(page))
            }
        }
    }

    /// Draws the pattern anew where its text has changed, or says why it cannot be read.
    fn redraw(&mut self) {
        match input::text(&self.options.pattern) {
            Ok(source) if self.text.as_deref() == Some(source.text()) => {}
            Ok(source) => self.draw(&source),
            Err(unread) => self.tell(unread.message()),
        }
    }

    /// Says why there is nothing new to draw.
    fn tell(&mut self, reason: String) {
        if self.text.take().is_some() || self.said != reason {
            self.said = reason;
            self.drawn += 1;
        }
    }

    fn draw(&mut self, source: &Source) {
        let (piece, remarks) = piece(source, &self.options.variant.choice(), None);
        self.said = plain(&remarks, source, &parts(source), false);
        if let Some(piece) = piece.filter(|_| !has_errors(&remarks)) {
            let style = sheet::Style { paper: self.options.paper, ink: Ink::Colour, prices: false };
            let drawn = sheet::pages(&piece, &style);
            self.pages = drawn.iter().filter_map(|page| export::png(page, DPI, Effort::Preview).ok()).collect();
        }
        self.text = Some(source.text().to_owned());
        self.drawn += 1;
    }
}
