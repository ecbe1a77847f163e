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
use crate::cli::shelves::Shelves;

/// How often files are looked at where the system does not tell of changes.
const EVERY: Duration = Duration::from_millis(500);
/// How long a program is given to end what it writes.
const SETTLED: Duration = Duration::from_millis(30);

/// Told where a program that has written a file closes it.
const WRITTEN: EventKind = EventKind::Access(AccessKind::Close(AccessMode::Write));

/// What the files hold, by versions that tell one from every other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct News {
    /// The pattern's file.
    pub file: String,
    /// All shelves together.
    pub shelves: String,
}

/// Watches files as long as it is kept.
pub struct Watch {
    seen: Arc<Seen>,
    watcher: Mutex<Option<Box<dyn Watcher + Send>>>,
}

/// The files that are watched.
struct Seen {
    file: File,
    shelves: Shelves,
    /// The shelves that texts have named.
    names: Mutex<BTreeSet<String>>,
    sender: Sender<News>,
}

impl Watch {
    pub fn new(file: File, shelves: Shelves) -> Self {
        let news = News { file: file.held().version, shelves: String::new() };
        let seen = Arc::new(Seen { file, shelves, names: Mutex::default(), sender: watch::channel(news).0 });
        let by_looking = Config::default().with_poll_interval(EVERY);
        let watcher = watcher::<RecommendedWatcher>(&seen, Config::default())
            .or_else(|| watcher::<PollWatcher>(&seen, by_looking));
        let watch = Self { seen, watcher: Mutex::new(watcher) };
        watch.follow();
        watch
    }

    /// Told whenever a file holds something else.
    pub fn news(&self) -> Receiver<News> {
        self.seen.sender.subscribe()
    }

    /// Watches the shelves of a text from now on too.
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
        let folders: BTreeSet<_> =
            files.iter().cloned().chain(targets).map(|path| output::folder(&path).to_owned()).collect();
        if let Some(watcher) = held(&self.watcher).as_mut() {
            // A folder that is not there is not watched; when it comes, whoever looks at the text again sees it.
            folders.iter().for_each(|folder| drop(watcher.watch(folder, RecursiveMode::NonRecursive)));
        }
        let shelves = self.seen.shelves_version();
        self.seen.sender.send_if_modified(|known| {
            known.shelves = shelves;
            false
        });
    }
}

/// A watcher that can watch the folder of the pattern's file.
fn watcher<W: Watcher + Send + 'static>(seen: &Arc<Seen>, config: Config) -> Option<Box<dyn Watcher + Send>> {
    let hears = Arc::clone(seen);
    let mut watcher = W::new(move |event: notify::Result<Event>| hears.heed(event), config).ok()?;
    watcher.watch(output::folder(seen.file.path()), RecursiveMode::NonRecursive).ok()?;
    Some(Box::new(watcher))
}

fn held<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Seen {
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
            let news = News { file: self.file.held().version, shelves: self.shelves_version() };
            self.sender.send_if_modified(|known| {
                let is_new = *known != news;
                known.clone_from(&news);
                is_new
            });
        }
    }
}
