//! `festoon preview`: a page on this machine that redraws when the pattern is saved.
//!
//! A small server answers this machine alone, each browser by itself. The page asks twice a second
//! whether the pattern's text has changed, and loads the sheet's pages anew when it has.

mod http;

use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::panic::AssertUnwindSafe;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError, TryLockError};
use std::thread;
use std::time::Duration;

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
/// How long to wait for another browser where the system has no room for one now.
const PAUSE: Duration = Duration::from_millis(50);
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
    input::pattern(&options.pattern, &options.variant.shelves, messages)?;
    let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, options.port)).map_err(Failure::trouble)?;
    let address = listener.local_addr().map_err(Failure::trouble)?;
    report::news(&format!("open http://{address}/ in a browser; stop with Ctrl-C"));
    let preview = Preview { options, drawing: Mutex::default(), shown: Mutex::default() };
    answer_all(&listener, address, &preview);
    Ok(())
}

/// Answers browsers, each in a thread of its own, as long as the program runs.
fn answer_all(listener: &TcpListener, address: SocketAddr, preview: &Preview<'_>) {
    let clients = AtomicUsize::new(0);
    thread::scope(|scope| {
        loop {
            let Ok((stream, _)) = listener.accept() else {
                thread::sleep(PAUSE);
                continue;
            };
            if clients.fetch_add(1, Ordering::Relaxed) >= MOST_CLIENTS {
                // Dropped at once: the page asks again.
                clients.fetch_sub(1, Ordering::Relaxed);
                continue;
            }
            let serve = || {
                // A browser that goes away in the middle is no reason to stop.
                let _ = serve(stream, address, |path| preview.answer(path));
                clients.fetch_sub(1, Ordering::Relaxed);
            };
            if thread::Builder::new().spawn_scoped(scope, serve).is_err() {
                clients.fetch_sub(1, Ordering::Relaxed);
            }
        }
    });
}

/// The sheet as it is drawn and shown.
struct Preview<'a> {
    options: &'a Options,
    /// Held while one browser's request draws; the others are shown what there is meanwhile.
    drawing: Mutex<()>,
    /// What was drawn last; held no longer than to copy or replace it.
    shown: Mutex<Arc<Shown>>,
}

/// The sheet as it was last drawn.
#[derive(Clone, Default)]
struct Shown {
    /// The pattern's text that was drawn, with its shelves.
    source: Option<Source>,
    /// How often it was drawn.
    drawn: u32,
    /// The pages as PNG; those of the last sound pattern where this one has errors.
    pages: Vec<Arc<[u8]>>,
    /// The remarks.
    said: String,
}

impl Preview<'_> {
    /// Answers from the sheet; should drawing ever fail, so does that answer, and the next one tries again.
    fn answer(&self, path: &str) -> Answer {
        std::panic::catch_unwind(AssertUnwindSafe(|| self.answer_of(path))).unwrap_or_else(|_| Answer::failed())
    }

    fn answer_of(&self, path: &str) -> Answer {
        match path {
            "/" => Answer::page(SHELL),
            "/state" => {
                self.redraw();
                let shown = self.shown();
                Answer::json(&serde_json::json!({
                    "version": format!("{}-{}", std::process::id(), shown.drawn),
                    "pages": shown.pages.len(),
                    "remarks": shown.said,
                }))
            }
            other => {
                let number = other.strip_prefix("/page/").and_then(|rest| rest.parse::<usize>().ok());
                let shown = self.shown();
                let page = number.and_then(|number| shown.pages.get(number));
                page.map_or_else(Answer::missing, |page| Answer::picture(page))
            }
        }
    }

    fn shown(&self) -> Arc<Shown> {
        Arc::clone(&self.shown.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Draws the pattern anew where its text has changed and nobody draws it yet, or says why it cannot
    /// be read.
    fn redraw(&self) {
        let _drawing = match self.drawing.try_lock() {
            Ok(drawing) => drawing,
            Err(TryLockError::Poisoned(drawing)) => drawing.into_inner(),
            Err(TryLockError::WouldBlock) => return,
        };
        let shown = self.shown();
        let next = match input::shelved(&self.options.pattern, &self.options.variant.shelves) {
            Ok(source) if shown.source.as_ref() == Some(&source) => None,
            Ok(source) => Some(shown.with(&source, self.options)),
            Err(unread) => shown.without(unread.message()),
        };
        if let Some(next) = next {
            *self.shown.lock().unwrap_or_else(PoisonError::into_inner) = Arc::new(next);
        }
    }
}

impl Shown {
    /// The same pages with why there is nothing new to draw, unless that was said.
    fn without(&self, reason: String) -> Option<Self> {
        let is_news = self.source.is_some() || self.said != reason;
        is_news.then(|| Self { source: None, said: reason, drawn: self.drawn + 1, pages: self.pages.clone() })
    }

    /// The sheet of a text.
    fn with(&self, source: &Source, options: &Options) -> Self {
        let (piece, remarks) = piece(source, &options.variant.choice(), None);
        let pages = piece.filter(|_| !has_errors(&remarks)).map(|piece| {
            let style = sheet::Style { paper: options.paper, ink: Ink::Colour, prices: false };
            let drawn = sheet::pages(&piece, &style);
            drawn.iter().filter_map(|page| export::png(page, DPI, Effort::Preview).ok()).map(Arc::from).collect()
        });
        Self {
            source: Some(source.clone()),
            drawn: self.drawn + 1,
            pages: pages.unwrap_or_else(|| self.pages.clone()),
            said: plain(&remarks, source, &parts(source), false),
        }
    }
}
