//! Writing results whole or not at all.

use std::fs::{self, File, Permissions};
use std::io::{self, ErrorKind, Write, stdout};
use std::path::{Path, PathBuf};

use tempfile::{Builder, NamedTempFile};

use festoon::remark::escape::escaped;
use festoon::source::Source;

use super::Failure;

/// How the names of files begin and end that are not whole yet.
pub const PART: [&str; 2] = [".festoon-", ".part"];
/// Most links that are followed to a file, as many as Linux follows (path_resolution(7)).
const MOST_LINKS: usize = 40;

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

/// Writes a result made from a pattern and its shelves, none of which it may replace. A file is replaced whole, where a
/// link leads to one as well; a device or pipe is written to.
pub fn write(path: &Path, bytes: &[u8], inputs: &[Source]) -> Result<(), Failure> {
    let trouble = |error: io::Error| Failure::trouble(format!("{}: {error}", path.display()));
    match fs::metadata(path) {
        Ok(there) if there.is_dir() => return Err(trouble(ErrorKind::IsADirectory.into())),
        Ok(there) if !there.is_file() => return pour(path, bytes).map_err(trouble),
        _ => {}
    }
    if let Some(file) = input(path, inputs) {
        let what = if file == 0 { "the pattern" } else { "a shelf" };
        let reason = format!("is {what} that is read, and is not written over; name another file");
        return Err(Failure::trouble(format!("{} {reason}", path.display())));
    }
    followed(path).and_then(|target| replace(&target, bytes)).map_err(trouble)
}

/// Which of the files that were read a path leads to.
fn input(path: &Path, inputs: &[Source]) -> Option<u16> {
    inputs
        .iter()
        .flat_map(Source::files)
        .find(|file| same_file::is_same_file(path, &file.name).unwrap_or(false))
        .map(Source::file)
}

/// Writes into a device or pipe; a reader that has gone away is no error.
fn pour(path: &Path, bytes: &[u8]) -> io::Result<()> {
    match File::options().write(true).open(path).and_then(|mut file| file.write_all(bytes)) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        done => done,
    }
}

/// The place that links lead to, whether or not a file is there.
pub fn followed(path: &Path) -> io::Result<PathBuf> {
    let mut place = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&place) {
            Ok(next) => place = folder(&place).join(next),
            Err(_) => return Ok(place),
        }
    }
    Err(io::Error::other("links lead round and round"))
}

/// Writes a file beside the place and moves it there, so that a failed run leaves the old file as it
/// was. The new file may be read and written by whoever might read and write the old one.
pub fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let old = fs::metadata(path).ok().map(|there| there.permissions());
    if old.as_ref().is_some_and(Permissions::readonly) {
        return Err(io::Error::new(ErrorKind::PermissionDenied, "this file is protected from writing"));
    }
    let part = part(folder(path), bytes)?;
    if let Some(old) = old {
        part.as_file().set_permissions(old)?;
    }
    part.persist(path).map_err(|error| error.error)?;
    Ok(())
}

/// The bytes in a file of a name that nobody can foresee; it goes away unless it is moved. It is held
/// locked, so that what a killed run has left is told from it.
pub fn part(folder: &Path, bytes: &[u8]) -> io::Result<NamedTempFile> {
    fs::create_dir_all(folder)?;
    let [prefix, suffix] = PART;
    let mut part = builder().prefix(prefix).suffix(suffix).tempfile_in(folder)?;
    // Where files cannot be locked nothing is cleared away either.
    let _ = part.as_file().lock();
    part.write_all(bytes)?;
    part.as_file().sync_data()?;
    Ok(part)
}

/// Files that may be read as other new files are, where the system asks a mode.
fn builder() -> Builder<'static, 'static> {
    #[cfg_attr(not(unix), expect(unused_mut, reason = "no mode to set"))]
    let mut builder = Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    builder
}

/// The folder that a file stands in.
pub fn folder(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}
