//! One gallery at a time in a folder.

use std::fs::{self, File, TryLockError};
use std::path::Path;

use crate::cli::report;

/// The file that is held while a gallery is at work; it stays, as another may wait for it.
const LOCK: &str = "festoon.lock";

/// Waits until nobody else writes to a gallery's folder, and keeps it until the file and all its copies
/// are closed, those that child processes hold among them.
pub fn hold(folder: &Path) -> Result<File, String> {
    let path = folder.join(LOCK);
    let trouble = |reason: &dyn std::fmt::Display| format!("{}: {reason}", path.display());
    fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    if path.symlink_metadata().is_ok_and(|there| !there.is_file()) {
        return Err(trouble(&"this is no file: take it away"));
    }
    let file = File::options().create(true).truncate(false).write(true).open(&path).map_err(|error| trouble(&error))?;
    match file.try_lock() {
        Ok(()) => return Ok(file),
        Err(TryLockError::WouldBlock) => {
            report::news(&format!("{}: waiting for another gallery to be done", folder.display()));
        }
        Err(TryLockError::Error(_)) => report::news(&format!("{}: cannot be kept from others here", folder.display())),
    }
    // Where files cannot be locked, this fails again, and whoever starts two galleries must take care.
    let _ = file.lock();
    Ok(file)
}
