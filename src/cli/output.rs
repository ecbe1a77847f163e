//! Writing results whole or not at all.

use std::fs;
use std::io::{ErrorKind, Write, stdout};
use std::path::Path;

use festoon::remark::escape::escaped;

use super::Failure;

/// Prints to standard output; a reader that has gone away is no error.
pub fn print(bytes: &[u8]) -> Result<(), Failure> {
    let mut out = stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(Failure::trouble(error)),
        _ => Ok(()),
    }
}

/// Prints words to standard output, with what would act on a terminal written out.
pub fn say(text: &str) -> Result<(), Failure> {
    print(escaped(text).as_bytes())
}

/// Writes a file under a temporary name and renames it, so that a failed run leaves the old file
/// as it was.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let trouble = |error: std::io::Error| Failure::trouble(format!("{}: {error}", path.display()));
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        fs::create_dir_all(folder).map_err(trouble)?;
    }
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(format!(".{}.part", std::process::id()));
    let temporary = path.with_file_name(name);
    let written = fs::write(&temporary, bytes).and_then(|()| fs::rename(&temporary, path));
    written.map_err(|error| {
        // The first error is the one to tell; a left-over is removed where that is possible.
        let _ = fs::remove_file(&temporary);
        trouble(error)
    })
}
