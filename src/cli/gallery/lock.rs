//! One gallery at a time in a folder, or several parts of one.

use std::fs::{self, File, TryLockError};
use std::io;
use std::path::Path;

use crate::cli::report;

/// The file that is held while a gallery is at work; it stays, as another may wait for it.
const LOCK: &str = "festoon.lock";

/// Waits until nobody else writes to a gallery's folder, and keeps it until the file and all its copies
/// are closed, those that child processes hold among them.
pub fn hold(folder: &Path) -> Result<File, String> {
    taken(folder, File::try_lock, File::lock)
}

/// The same beside others that hold it together with this one: the parts of a gallery.
pub fn share(folder: &Path) -> Result<File, String> {
    taken(folder, File::try_lock_shared, File::lock_shared)
}

/// The file of a name in a folder, both of which are made where they are not there.
pub fn opened(folder: &Path, name: &str) -> Result<File, String> {
    let path = folder.join(name);
    let trouble = |reason: &dyn std::fmt::Display| format!("{}: {reason}", path.display());
    fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    if path.symlink_metadata().is_ok_and(|there| !there.is_file()) {
        return Err(trouble(&"this is no file: take it away"));
    }
    File::options().create(true).truncate(false).write(true).open(&path).map_err(|error| trouble(&error))
}

fn taken(
    folder: &Path,
    at_once: fn(&File) -> Result<(), TryLockError>,
    wait: fn(&File) -> io::Result<()>,
) -> Result<File, String> {
    let file = opened(folder, LOCK)?;
    match at_once(&file) {
        Ok(()) => return Ok(file),
        Err(TryLockError::WouldBlock) => {
            report::news(&format!("{}: waiting for another gallery to be done", folder.display()));
        }
        Err(TryLockError::Error(_)) => report::news(&format!("{}: cannot be kept from others here", folder.display())),
    }
    // Where files cannot be locked, this fails again, and whoever starts two galleries must take care.
    let _ = wait(&file);
    Ok(file)
}
