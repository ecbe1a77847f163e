//! Watching the pattern's file and its shelves.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use notify::event::{AccessKind, AccessMode};
use notify::{Config, Event, EventKind, PollWatcher, RecommendedWatcher, RecursiveMode, Watcher};
use tokio::sync::watch::{self, Receiver, Sender};

use festoon::source::Source;

use super::file::File;
use crate::cli::hash::hash;
use crate::cli::output;
use crate::cli::shelves::ShelfOptions;

/// How often files are looked at where the system does not tell of changes.
const EVERY: Duration = Duration::from_millis(500);
/// How long a program is given to end what it writes.
const SETTLED: Duration = Duration::from_millis(30);

/// Told where a program that has written a file closes it.
const WRITTEN: EventKind = EventKind::Access(AccessKind::Close(AccessMode::Write));

/// Watches files as long as it is kept.
pub struct Watch {
    seen: Arc<WatchedFiles>,
    watched: Mutex<Watched>,
}

/// The folders that are watched; none where nothing can watch.
struct Watched {
    watcher: Option<Box<dyn Watcher + Send>>,
    folders: BTreeSet<PathBuf>,
}

/// The files that are watched.
struct WatchedFiles {
    file: File,
    shelves: ShelfOptions,
    /// The shelves that texts have named.
    names: Mutex<BTreeSet<String>>,
    /// What the pattern's file holds, by a version that tells it from all else,
    of_file: Sender<String>,
    /// and what all shelves hold together.
    of_shelves: Sender<String>,
}

impl Watch {
    pub fn new(file: File, shelves: ShelfOptions) -> Self {
        let (of_file, of_shelves) = (watch::channel(file.held().version).0, watch::channel(String::new()).0);
        let seen = Arc::new(WatchedFiles { file, shelves, names: Mutex::default(), of_file, of_shelves });
        let by_looking = Config::default().with_poll_interval(EVERY);
        let watcher = watcher::<RecommendedWatcher>(&seen, Config::default())
            .or_else(|| watcher::<PollWatcher>(&seen, by_looking));
        let watch = Self { seen, watched: Mutex::new(Watched { watcher, folders: BTreeSet::new() }) };
        watch.follow();
        watch
    }

    /// The versions of the pattern's file: that of now, then each that it comes to hold.
    pub fn file(&self) -> Receiver<String> {
        self.seen.of_file.subscribe()
    }

    /// The versions of the shelves.
    pub fn shelves(&self) -> Receiver<String> {
        self.seen.of_shelves.subscribe()
    }

    /// Watches the shelves of a text from now on too, and tells what they hold: whoever read them before looks again.
    pub fn also(&self, source: &Source) {
        let called = source.shelves().iter().filter_map(|shelf| shelf.called.clone());
        let new: Vec<_> = called.filter(|name| !held(&self.seen.names).contains(name)).collect();
        if !new.is_empty() {
            held(&self.seen.names).extend(new);
            self.follow();
        }
    }

    /// Watches the folders of all files, and of what links lead to: a file that is replaced is another one.
    fn follow(&self) {
        let files = self.seen.files();
        let targets = files.iter().filter_map(|path| output::followed(path).ok());
        let folders = files.iter().cloned().chain(targets).map(|path| output::folder(&path).to_owned());
        held(&self.watched).extend(folders.collect());
        told(&self.seen.of_shelves, self.seen.shelves_version());
    }
}

impl Watched {
    /// Watches other folders too. One that is not there is not watched; when it comes, whoever looks at the text
    /// again sees it.
    fn extend(&mut self, folders: BTreeSet<PathBuf>) {
        let Some(watcher) = &mut self.watcher else { return };
        let mut watched = |folder: &PathBuf| watcher.watch(folder, RecursiveMode::NonRecursive).is_ok();
        let new: Vec<_> =
            folders.into_iter().filter(|folder| !self.folders.contains(folder)).filter(&mut watched).collect();
        self.folders.extend(new);
    }
}

/// Tells a version that is not the one told last.
fn told(versions: &Sender<String>, now: String) {
    versions.send_if_modified(|known| {
        let is_new = *known != now;
        *known = now;
        is_new
    });
}

/// A watcher that can watch the folder of the pattern's file.
fn watcher<W: Watcher + Send + 'static>(seen: &Arc<WatchedFiles>, config: Config) -> Option<Box<dyn Watcher + Send>> {
    let hears = Arc::clone(seen);
    let mut watcher = W::new(move |event: notify::Result<Event>| hears.heed(event), config).ok()?;
    watcher.watch(output::folder(seen.file.path()), RecursiveMode::NonRecursive).ok()?;
    Some(Box::new(watcher))
}

fn held<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl WatchedFiles {
    fn names(&self) -> Vec<String> {
        held(&self.names).iter().cloned().collect()
    }

    /// The pattern's file and those of its shelves.
    fn files(&self) -> Vec<PathBuf> {
        let path = self.file.path();
        let shelves = self.shelves.files(output::folder(path), &self.names());
        std::iter::once(path.to_owned()).chain(shelves).collect()
    }

    fn shelves_version(&self) -> String {
        let texts = self.shelves.texts(output::folder(self.file.path()), &self.names());
        hash(texts.into_iter().map(|text| text.unwrap_or_else(|reason| reason)))
    }

    fn heed(&self, event: notify::Result<Event>) {
        let Ok(event) = event else { return };
        // Files that are opened and read, by this program among others, are the same afterwards.
        if event.kind.is_access() && event.kind != WRITTEN {
            return;
        }
        let files = self.files();
        let concerns = |path: &PathBuf| files.iter().any(|file| file.file_name() == path.file_name());
        let linked = files.iter().any(|file| file.is_symlink());
        if linked || event.paths.iter().any(concerns) {
            std::thread::sleep(SETTLED);
            told(&self.of_file, self.file.held().version);
            told(&self.of_shelves, self.shelves_version());
        }
    }
}
