//! Files: no input is written over, names are obeyed or refused, and what cannot be written whole is
//! not written.

#![cfg(unix)]
#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// A sound pattern without a remark.
const SOUND: &str = include_str!("../src/cli/new/strap.yaml");

/// An empty folder but for `strap.yaml`.
struct Desk(PathBuf);

impl Desk {
    fn new(name: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("files-{name}"));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join("strap.yaml"), SOUND).unwrap();
        Self(folder)
    }

    /// Runs the program here: exit code and what was said.
    fn run(&self, arguments: &[&str]) -> (i32, String) {
        let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
        let ran = command.args(arguments).current_dir(&self.0).stdin(Stdio::null()).output().unwrap();
        (ran.status.code().expect("ends by itself"), String::from_utf8_lossy(&ran.stderr).into_owned())
    }

    /// Runs a line of a shell here, `$F` being the program.
    fn shell(&self, line: &str) -> (i32, String) {
        let mut command = Command::new("sh");
        command.args(["-c", line]).env("F", env!("CARGO_BIN_EXE_festoon"));
        let ran = command.current_dir(&self.0).stdin(Stdio::null()).output().unwrap();
        (ran.status.code().expect("ends by itself"), String::from_utf8_lossy(&ran.stderr).into_owned())
    }

    fn path(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    fn names(&self) -> Vec<String> {
        let entries = fs::read_dir(&self.0).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut names: Vec<_> = entries.collect();
        names.sort();
        names
    }

    fn begins(&self, name: &str, with: &[u8]) -> bool {
        fs::read(self.path(name)).unwrap().starts_with(with)
    }
}

#[test]
fn pipes_and_devices_are_no_patterns() {
    let desk = Desk::new("pipes");
    assert_eq!(desk.shell("mkfifo pipe.yaml").0, 0);
    for name in ["pipe.yaml", "/dev/zero", "/dev/tty0", "/dev/null"] {
        for command in ["check", "measure", "materials", "sheet", "picture", "preview"] {
            let (code, said) = desk.run(&[command, name]);
            assert_eq!(code, 2, "{command} {name}: {said}");
        }
    }
    let (code, said) = desk.run(&["materials", "strap.yaml", "--stash", "pipe.yaml"]);
    assert!(code == 2 && said.contains("pipe.yaml: this is a pipe or a device"), "{said}");
}

#[cfg(target_os = "linux")]
#[test]
fn a_file_of_the_system_that_says_it_is_empty_is_not_read() {
    let desk = Desk::new("system");
    symlink("/proc/version", desk.path("link.yaml")).unwrap();
    for name in ["/proc/version", "link.yaml"] {
        let (code, said) = desk.run(&["check", name]);
        assert!(code == 1 && said.contains("nothing stands where a group of keys is meant"), "{name}: {said}");
    }
}

#[test]
fn a_pattern_is_never_written_over() {
    let desk = Desk::new("inputs");
    fs::create_dir(desk.path("sub")).unwrap();
    fs::rename(desk.path("strap.yaml"), desk.path("strap.pdf")).unwrap();
    symlink("strap.pdf", desk.path("link.pdf")).unwrap();
    fs::hard_link(desk.path("strap.pdf"), desk.path("twin.pdf")).unwrap();
    let whole = desk.path("strap.pdf");
    for output in ["strap.pdf", "./sub/../strap.pdf", "link.pdf", "twin.pdf", whole.to_str().unwrap()] {
        for pattern in ["strap.pdf", "link.pdf"] {
            let (code, said) = desk.run(&["sheet", pattern, "-o", output]);
            assert!(code == 2 && said.contains("is not written over"), "{output}: {said}");
        }
    }
    for (command, name, output) in [("picture", "strap.png", "strap.png"), ("proof", "strap-1.svg", "strap.svg")] {
        fs::copy(desk.path("strap.pdf"), desk.path(name)).unwrap();
        assert_eq!(desk.run(&[command, name, "-o", output]).0, 2, "{command}");
        assert_eq!(fs::read_to_string(desk.path(name)).unwrap(), SOUND);
    }
    for line in ["$F measure strap.pdf >> strap.pdf", "$F measure strap.pdf 1<> strap.pdf"] {
        let (code, said) = desk.shell(line);
        assert!(code == 2 && said.contains("also standard output"), "{line}: {said}");
    }
    assert_eq!(fs::read_to_string(whole).unwrap(), SOUND);
}

#[test]
fn names_come_from_all_of_the_patterns_name() {
    let desk = Desk::new("names");
    for name in ["v1.2.yaml", "v1.3.yaml", "...yaml"] {
        fs::copy(desk.path("strap.yaml"), desk.path(name)).unwrap();
        assert_eq!(desk.run(&["picture", name, "--pixels", "50"]).0, 0, "{name}");
        assert_eq!(desk.run(&["sheet", name]).0, 0, "{name}");
    }
    let made: Vec<_> = desk.names().into_iter().filter(|name| !name.ends_with(".yaml")).collect();
    assert_eq!(made, ["...pdf", "...png", "v1.2.pdf", "v1.2.png", "v1.3.pdf", "v1.3.png"]);
}

#[test]
fn names_asked_for_are_obeyed_or_refused() {
    let desk = Desk::new("asked");
    for output in ["X.jpg", "out.v2", "X.", "strap.yaml"] {
        for command in ["sheet", "proof", "picture"] {
            let (code, said) = desk.run(&[command, "strap.yaml", "-o", output]);
            assert!(code == 2 && said.contains("write a file's name"), "{command} {output}: {said}");
        }
    }
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "X.pdf", "--format", "png"]).0, 2);
    assert_eq!(desk.run(&["picture", "strap.yaml", "-o", "X.svg", "--format", "png"]).0, 2);
    assert_eq!(desk.names(), ["strap.yaml"]);
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "X.PDF"]).0, 0);
    assert_eq!(desk.run(&["picture", "strap.yaml", "-o", "out.v2/", "--format", "svg"]).0, 0);
    assert_eq!(desk.names(), ["X.PDF", "out.v2", "strap.yaml"]);
    assert!(desk.begins("X.PDF", b"%PDF") && desk.path("out.v2/strap.svg").exists());
}

#[test]
fn a_file_to_keep_is_a_pdf_alone_and_dated() {
    let desk = Desk::new("archive");
    for asked in [["--format", "pdf,png"], ["-o", "X.svg"]] {
        let (code, said) = desk.run(&[["sheet", "strap.yaml", "--archive", "2026-11-27"].as_slice(), &asked].concat());
        assert!(code == 2 && said.contains("--archive is of PDF alone") && said.contains("without it"), "{said}");
    }
    let (code, said) = desk.run(&["sheet", "strap.yaml", "--archive", "2026-02-30"]);
    assert!(code == 2 && said.contains("a day of the calendar is meant, such as 2026-11-27"), "{said}");
    assert_eq!(desk.names(), ["strap.yaml"]);
    for output in ["one.pdf", "two.pdf"] {
        assert_eq!(desk.run(&["sheet", "strap.yaml", "--archive", "2026-11-27", "-o", output]).0, 0);
    }
    let [one, two] = ["one.pdf", "two.pdf"].map(|name| fs::read(desk.path(name)).unwrap());
    assert!(one == two && String::from_utf8_lossy(&one).contains("<pdfaid:part>2<"));
    assert_eq!(desk.run(&["sheet", "strap.yaml", "--archive", "2026-11-27", "--booklet", "-o", "folded.pdf"]).0, 0);
    assert!(String::from_utf8_lossy(&fs::read(desk.path("folded.pdf")).unwrap()).contains("<pdfaid:part>2<"));
}

#[test]
fn devices_and_pipes_are_written_into() {
    let desk = Desk::new("devices");
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "/dev/null"]).0, 0);
    let (code, said) = desk.shell("$F sheet strap.yaml -o /dev/stdout | head -c 4 > start");
    assert!(code == 0 && desk.begins("start", b"%PDF"), "{said}");
    let (code, said) = desk.shell("mkfifo p.svg; cat p.svg > read & $F picture strap.yaml -o p.svg; wait");
    assert!(code == 0 && desk.begins("read", b"<svg"), "{said}");
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "/dev/full"]).0, 2);
    let (code, said) = desk.run(&["sheet", "strap.yaml", "-o", "/dev/null", "--format", "svg"]);
    assert!(code == 2 && said.contains("take one file"), "{said}");
}

#[test]
fn links_are_followed_and_modes_kept() {
    let desk = Desk::new("links");
    fs::create_dir(desk.path("far")).unwrap();
    fs::write(desk.path("far/old.pdf"), "old").unwrap();
    fs::set_permissions(desk.path("far/old.pdf"), Permissions::from_mode(0o640)).unwrap();
    symlink("far/old.pdf", desk.path("old.pdf")).unwrap();
    symlink("far/new.pdf", desk.path("new.pdf")).unwrap();
    symlink("ring.pdf", desk.path("ring.pdf")).unwrap();
    for name in ["old.pdf", "new.pdf"] {
        assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", name]).0, 0, "{name}");
        assert!(fs::symlink_metadata(desk.path(name)).unwrap().is_symlink(), "{name}");
        assert!(desk.begins(&format!("far/{name}"), b"%PDF"), "{name}");
    }
    assert_eq!(fs::metadata(desk.path("far/old.pdf")).unwrap().permissions().mode() & 0o777, 0o640);
    assert_eq!(desk.shell("umask 027; $F sheet strap.yaml -o mode.pdf").0, 0);
    assert_eq!(fs::metadata(desk.path("mode.pdf")).unwrap().permissions().mode() & 0o777, 0o640);
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "ring.pdf"]).0, 2);
    fs::set_permissions(desk.path("mode.pdf"), Permissions::from_mode(0o400)).unwrap();
    assert_eq!(desk.run(&["sheet", "strap.yaml", "-o", "mode.pdf"]).0, 2, "protected from writing");
    let left = |folder: &str| fs::read_dir(desk.path(folder)).unwrap().count();
    assert_eq!((left("far"), left(".")), (2, 6), "{:?}", desk.names());
}

/// A limit on the size of files stands for a full disk: the kernel refuses to write further
/// (setrlimit(2): EFBIG where SIGXFSZ is ignored).
#[test]
fn what_cannot_be_written_whole_leaves_the_old_file() {
    let desk = Desk::new("full");
    fs::write(desk.path("strap.pdf"), "as it was").unwrap();
    let (code, said) = desk.shell("trap '' XFSZ; ulimit -f 8; $F sheet strap.yaml");
    assert!(code == 2 && said.contains("strap.pdf: "), "{said}");
    assert!(desk.begins("strap.pdf", b"as it was"));
    assert_eq!(desk.names(), ["strap.pdf", "strap.yaml"], "nothing is left over");
}

/// A folder that may not be written to: by its mode, which does not bind the superuser.
#[test]
fn a_folder_that_may_not_be_written_to_is_trouble() {
    let desk = Desk::new("read-only");
    let folder = desk.path("locked");
    fs::create_dir(&folder).unwrap();
    fs::set_permissions(&folder, Permissions::from_mode(0o555)).unwrap();
    let binds = fs::write(folder.join("try"), "").is_err();
    let (code, said) = desk.run(&["sheet", "strap.yaml", "-o", "locked/"]);
    assert_eq!(code, if binds { 2 } else { 0 }, "{said}");
    fs::set_permissions(&folder, Permissions::from_mode(0o755)).unwrap();
    // What binds everyone: a place that is no folder at all.
    let (code, said) = desk.run(&["sheet", "strap.yaml", "-o", "strap.yaml/x.pdf"]);
    assert!(code == 2 && said.contains("x.pdf"), "{said}");
}
