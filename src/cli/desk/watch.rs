//! Watching the pattern's file.

use std::path::Path;
use std::time::Duration;

use notify::{Config, PollWatcher, RecommendedWatcher, RecursiveMode, Watcher};
use tokio::sync::watch::{self, Receiver, Sender};

use super::file::File;
use crate::cli::output;

/// How often the file is looked at where the system does not tell of changes.
const EVERY: Duration = Duration::from_millis(500);
/// How long a program is given to end what it writes.
const SETTLED: Duration = Duration::from_millis(30);

/// The version that the file holds, told whenever it is another, as long as the watcher is kept.
pub fn versions(file: &File) -> (Receiver<String>, Option<Box<dyn Watcher>>) {
    let (sender, receiver) = watch::channel(file.held().version);
    let by_looking = Config::default().with_poll_interval(EVERY);
    let watcher = watching::<RecommendedWatcher>(file, sender.clone(), Config::default())
        .or_else(|| watching::<PollWatcher>(file, sender, by_looking));
    (receiver, watcher)
}

fn watching<W: Watcher + 'static>(file: &File, sender: Sender<String>, config: Config) -> Option<Box<dyn Watcher>> {
    let mut watcher = W::new(telling(file, sender), config).ok()?;
    follow(&mut watcher, file).then(|| Box::new(watcher) as Box<dyn Watcher>)
}

/// Watches the folders of the file and of what links lead to: a file that is replaced is another one.
fn follow(watcher: &mut impl Watcher, file: &File) -> bool {
    let target = output::followed(file.path()).unwrap_or_else(|_| file.path().to_owned());
    let watched = [file.path(), &target].map(|path| watcher.watch(output::folder(path), RecursiveMode::NonRecursive));
    watched.iter().all(Result::is_ok)
}

fn telling(file: &File, sender: Sender<String>) -> impl FnMut(notify::Result<notify::Event>) + use<> {
    let file = File::new(file.path().to_owned());
    let name = file.path().file_name().map(ToOwned::to_owned);
    move |event| {
        let concerns = |path: &Path| path.file_name().map(ToOwned::to_owned) == name;
        let linked = file.path().is_symlink();
        if event.is_ok_and(|event| linked || event.paths.iter().any(|path| concerns(path))) {
            std::thread::sleep(SETTLED);
            let version = file.held().version;
            sender.send_if_modified(|known| {
                let is_new = *known != version;
                known.clone_from(&version);
                is_new
            });
        }
    }
}
