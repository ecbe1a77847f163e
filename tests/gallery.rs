//! Galleries: what is made, what is skipped and what is left alone.

#![allow(clippy::unwrap_used, reason = "a test that cannot run the program fails")]

#[path = "gallery/pages.rs"]
mod pages;
#[path = "gallery/parts.rs"]
mod parts;

use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, SystemTime};

const BROKEN: &str = "festoon: 1\ntitle: Flotsam\nkind: necklace\nbeads: { x: { shape: rund } }\n";

/// A folder of patterns and the gallery made from it.
struct Gallery {
    folder: PathBuf,
}

impl Gallery {
    fn new(name: &str, patterns: &[&str]) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(folder.join("in")).unwrap();
        let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("patterns");
        for pattern in patterns {
            let file = format!("{pattern}.yaml");
            fs::copy(shipped.join(&file), folder.join("in").join(&file)).unwrap();
        }
        Self { folder }
    }

    /// Makes it; gives the exit code and what was said.
    fn make(&self, arguments: &[&str]) -> (i32, String) {
        let ran = self.command(arguments).output().unwrap();
        (ran.status.code().unwrap(), String::from_utf8(ran.stderr).unwrap())
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let (from, to) = (self.folder.join("in"), self.out());
        let mut command = Command::new(env!("CARGO_BIN_EXE_festoon"));
        command.arg("gallery").args([&from, Path::new("-o"), &to]).args(["--pixels", "60"]).args(arguments);
        command
    }

    /// Every file with its bytes.
    fn files(&self) -> BTreeMap<PathBuf, Vec<u8>> {
        let (mut files, mut folders) = (BTreeMap::new(), vec![self.out()]);
        while let Some(folder) = folders.pop() {
            for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
                if path.is_dir() {
                    folders.push(path);
                } else {
                    files.insert(path.clone(), fs::read(path).unwrap());
                }
            }
        }
        files
    }

    fn out(&self) -> PathBuf {
        self.folder.join("out")
    }

    fn page(&self, name: &str) -> String {
        fs::read_to_string(self.out().join(name)).unwrap()
    }

    fn written(&self, name: &str) -> SystemTime {
        fs::metadata(self.out().join(name)).unwrap().modified().unwrap()
    }
}

#[test]
fn what_did_not_change_is_not_drawn_again() {
    let gallery = Gallery::new("gallery-skips", &["whelk", "dune"]);
    assert!(gallery.make(&[]).1.contains("2 drawn, 0 unchanged"));
    let files = ["pieces/whelk/picture.png", "pieces/dune/picture.png", "contact.pdf", "index.html", "festoon.json"];
    let before = files.map(|file| gallery.written(file));
    let parts = ["", "fonts", "pieces/whelk"].map(|folder| gallery.out().join(folder).join(".festoon-killed.part"));
    parts.iter().for_each(|part| fs::write(part, "half").unwrap());
    assert!(gallery.make(&[]).1.contains("0 drawn, 2 unchanged"));
    assert!(!parts.iter().any(|part| part.exists()), "what a killed run has left is cleared away");
    assert_eq!(files.map(|file| gallery.written(file)), before);

    let whelk = gallery.folder.join("in/whelk.yaml");
    let text = fs::read_to_string(&whelk).unwrap().replace("title: Whelk", "title: Winkle");
    fs::write(&whelk, text).unwrap();
    assert!(gallery.make(&[]).1.contains("1 drawn, 1 unchanged"));
    assert!(gallery.page("index.html").contains(">Winkle<"));

    fs::remove_file(gallery.out().join("pieces/dune/small.png")).unwrap();
    assert!(gallery.make(&[]).1.contains("1 drawn, 1 unchanged"), "a file that is gone is made again");
    assert!(gallery.make(&["--ground", "slate"]).1.contains("2 drawn"), "other options make other pictures");
}

#[test]
fn files_of_patterns_that_are_gone_go_too_and_no_others() {
    let gallery = Gallery::new("gallery-sweeps", &["whelk", "dune", "saltmarsh"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let there = |name: &str| gallery.out().join(name).exists();
    let mine = ["mine.txt", "pieces/whelk/mine.txt", "pieces/other/picture.png"];
    fs::create_dir_all(gallery.out().join("pieces/other")).unwrap();
    mine.iter().for_each(|name| fs::write(gallery.out().join(name), "not the gallery's").unwrap());
    fs::remove_file(gallery.folder.join("in/whelk.yaml")).unwrap();
    fs::remove_file(gallery.folder.join("in/dune.yaml")).unwrap();
    let saltmarsh = gallery.folder.join("in/saltmarsh.yaml");
    let text = fs::read_to_string(&saltmarsh).unwrap();
    let (before, rest) = text.split_once("  low tide:\n").unwrap();
    let without = format!("{before}{}", rest.split_once('\n').unwrap().1);
    fs::write(&saltmarsh, without).unwrap();

    assert_eq!(gallery.make(&[]).0, 0);
    for gone in ["pieces/whelk/picture.png", "pieces/whelk/index.html", "pieces/dune", "pieces/saltmarsh/sheet-2.pdf"] {
        assert!(!there(gone), "{gone}");
    }
    assert!(mine.into_iter().all(there), "files that the gallery did not write stay");
    assert!(there("pieces/saltmarsh/sheet-1.pdf") && there("fonts/SourceSans3-Regular.ttf") && there("contact.pdf"));
    assert!(gallery.make(&[]).1.contains("0 drawn, 1 unchanged"));
}

#[test]
fn a_record_of_any_content_costs_a_drawing_at_most() {
    let gallery = Gallery::new("gallery-records", &["whelk"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let clean = gallery.files();
    let record = gallery.page("pieces/whelk/festoon.json");
    let hostile = record.replace("\"suffix\": \"\"", "\"suffix\": \"/../../../../in/whelk.yaml\"");
    assert_ne!(record, hostile);
    for text in ["", "{", "[1]", "\0", "{\"folder\":\"../in\"}", &hostile] {
        for place in ["pieces/whelk/festoon.json", "festoon.json"] {
            fs::write(gallery.out().join(place), text).unwrap();
        }
        let (code, said) = gallery.make(&[]);
        assert!(code == 0 && said.ends_with("1 drawn, 0 unchanged, 0 with errors\n"), "{text}: {said}");
        assert!(gallery.files() == clean, "{text}");
    }
    assert!(gallery.folder.join("in/whelk.yaml").exists());
}

#[test]
fn where_the_record_is_lost_nothing_of_other_hands_is_written_over() {
    let gallery = Gallery::new("gallery-lost", &["whelk"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let clean = gallery.files();
    for (record, file) in [("pieces/whelk/festoon.json", "pieces/whelk/sheet.pdf"), ("festoon.json", "index.html")] {
        for own_words in ["written by hand", ""] {
            fs::write(gallery.out().join(record), "{").unwrap();
            fs::write(gallery.out().join(file), own_words).unwrap();
            let (code, said) = gallery.make(&[]);
            assert!(code == 2 && said.contains(&format!("{file} may not be the gallery's own: --force")), "{said}");
            assert_eq!(gallery.page(file), own_words);
        }
        assert_eq!(gallery.make(&["--force"]).0, 0, "{file}");
        assert!(gallery.files() == clean, "{file}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn files_of_the_system_that_never_end_hold_up_no_gallery() {
    let gallery = Gallery::new("gallery-endless", &["whelk"]);
    assert_eq!(gallery.make(&[]).0, 0);
    // Of its kind it is a file, says that it is empty, and goes on as long as it is read.
    let endless = Path::new("/proc/self/pagemap");
    assert!(endless.metadata().unwrap().is_file() && endless.metadata().unwrap().len() == 0);
    std::os::unix::fs::symlink(endless, gallery.folder.join("in/endless.yaml")).unwrap();
    for file in ["pieces/whelk/sheet.pdf", "index.html", "festoon.json"] {
        let path = gallery.out().join(file);
        fs::remove_file(&path).unwrap();
        std::os::unix::fs::symlink(endless, &path).unwrap();
        let (code, said) = gallery.make(&[]);
        let told = ["error[wrong-kind]: nothing stands", "is not the gallery's own", "protected from writing"];
        let is_told = told.into_iter().any(|words| said.contains(words));
        assert!(code > 0 && is_told, "{file}: {said}");
        fs::remove_file(&path).unwrap();
        assert_eq!(gallery.make(&["--force"]).0, 1, "{file}");
    }
}

#[test]
fn a_pattern_that_is_broken_for_a_moment_keeps_its_page() {
    let gallery = Gallery::new("gallery-keeps", &["whelk", "dune"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let clean = gallery.files();
    let whelk = gallery.folder.join("in/whelk.yaml");
    let text = fs::read_to_string(&whelk).unwrap();
    let kept = || {
        let (code, said) = gallery.make(&[]);
        assert!(code > 0 && said.contains("whelk: the page of before is kept"), "{said}");
        assert!(gallery.page("index.html").contains(">Whelk<"));
        for file in ["picture.png", "small.png", "sheet.pdf", "index.html"] {
            let file = gallery.out().join("pieces/whelk").join(file);
            assert!(Some(&fs::read(&file).unwrap()) == clean.get(&file), "{}", file.display());
        }
    };
    fs::write(&whelk, BROKEN).unwrap();
    kept();
    fs::write(&whelk, [0xff]).unwrap();
    kept();
    fs::remove_file(&whelk).unwrap();
    fs::create_dir(&whelk).unwrap();
    kept();
    fs::remove_dir(&whelk).unwrap();
    fs::write(&whelk, text).unwrap();
    assert_eq!(gallery.make(&[]).0, 0);
    assert!(gallery.files() == clean, "all is as it was");
}

#[test]
fn what_is_not_the_gallerys_own_is_written_over_by_force_only() {
    let gallery = Gallery::new("gallery-foreign", &["whelk"]);
    for mine in ["index.html", "pieces/whelk/picture.png"] {
        let path = gallery.out().join(mine);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(&path, "mine").unwrap();
        let (code, said) = gallery.make(&[]);
        assert!(code == 2 && said.contains("is not the gallery's own"), "{mine}: {said}");
        assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
        if mine == "index.html" {
            fs::remove_file(&path).unwrap();
        }
    }
    assert_eq!(gallery.make(&["--force"]).0, 0);
    assert!(gallery.out().join("pieces/whelk/sheet.pdf").exists());
}

#[test]
fn a_record_makes_nothing_the_gallerys_own_but_what_was_written() {
    let gallery = Gallery::new("gallery-mine", &["whelk", "dune"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let [picture, index] = ["pieces/whelk/picture.png", "index.html"].map(|name| gallery.out().join(name));
    for mine in [&picture, &index] {
        let theirs = fs::read(mine).unwrap();
        fs::write(mine, "mine").unwrap();
        let (code, said) = gallery.make(&["--ground", "slate"]);
        assert!(code == 2 && said.contains("is not the gallery's own"), "{said}");
        assert_eq!(fs::read_to_string(mine).unwrap(), "mine");
        fs::write(mine, theirs).unwrap();
        assert_eq!(gallery.make(&[]).0, 0, "the gallery knows its own files again");
    }
    fs::write(&picture, "mine").unwrap();
    assert_eq!(gallery.make(&["--ground", "slate", "--force"]).0, 0);
    assert!(fs::read(&picture).unwrap().starts_with(b"\x89PNG"));
    fs::write(&picture, "mine").unwrap();
    fs::remove_file(gallery.folder.join("in/whelk.yaml")).unwrap();
    assert_eq!(gallery.make(&["--ground", "slate"]).0, 0);
    let left: Vec<_> = fs::read_dir(picture.parent().unwrap()).unwrap().map(|file| file.unwrap().path()).collect();
    assert_eq!(left, [picture], "what is not its own is not swept either");
}

#[test]
fn what_ends_a_process_takes_one_pattern_alone() {
    for (fault, how) in [("panic", "exit status: 101"), ("abort", "signal: 6")] {
        let gallery = Gallery::new(&format!("gallery-{fault}"), &["whelk", "dune", "saltmarsh"]);
        assert_eq!(gallery.make(&[]).0, 0);
        let ran =
            gallery.command(&["--ground", "slate"]).env("FESTOON_FAULT", format!("{fault} dune")).output().unwrap();
        let said = String::from_utf8(ran.stderr).unwrap();
        assert_eq!(ran.status.code(), Some(2), "{said}");
        assert!(said.contains("dune.yaml: this is a fault of festoon") && said.contains(how), "{said}");
        assert!(said.contains("dune: the page of before is kept"), "{said}");
        assert!(said.contains("2 drawn, 0 unchanged, 0 with errors\n"), "{said}");
        assert!(gallery.make(&["--ground", "slate"]).1.contains("1 drawn, 2 unchanged"));
    }
}

#[test]
fn two_galleries_at_once_write_one_after_the_other() {
    let gallery = Gallery::new("gallery-twice", &["whelk", "dune", "saltmarsh"]);
    assert_eq!(gallery.make(&["--ground", "slate"]).0, 0);
    let clean = gallery.files();
    let start = |ground: &str| gallery.command(&["--ground", ground]).stderr(Stdio::piped()).spawn().unwrap();
    let mut first = start("linen");
    let mut line = String::new();
    BufReader::new(first.stderr.as_mut().unwrap()).read_line(&mut line).unwrap();
    let second = start("slate").wait_with_output().unwrap();
    assert!(first.wait().unwrap().success() && second.status.success());
    let said = String::from_utf8(second.stderr).unwrap();
    assert!(said.contains("waiting for another gallery to be done") && said.contains("3 drawn"), "{said}");
    assert!(gallery.files() == clean, "byte for byte what the second alone makes");
}

#[cfg(unix)]
#[test]
fn links_lead_no_gallery_elsewhere() {
    use std::os::unix::fs::symlink;
    let gallery = Gallery::new("gallery-links", &["whelk", "dune"]);
    assert_eq!(gallery.make(&[]).0, 0);
    let (pieces, far) = (gallery.out().join("pieces"), gallery.folder.join("far"));
    fs::rename(pieces.join("whelk"), &far).unwrap();
    symlink(&far, pieces.join("whelk")).unwrap();
    fs::rename(gallery.out().join("index.html"), gallery.folder.join("index.html")).unwrap();
    symlink("../index.html", gallery.out().join("index.html")).unwrap();
    fs::remove_file(gallery.folder.join("in/whelk.yaml")).unwrap();
    let before = fs::read(gallery.folder.join("index.html")).unwrap();
    assert_eq!(gallery.make(&[]).0, 0);
    assert_eq!(fs::read_dir(&far).unwrap().count(), 5, "nothing is swept behind a link");
    assert!(fs::read(gallery.folder.join("index.html")).unwrap() == before, "nor written");
    assert!(!gallery.page("index.html").contains("Whelk"));
}

#[cfg(unix)]
#[test]
fn pipes_named_like_patterns_hold_up_nothing() {
    let gallery = Gallery::new("gallery-pipes", &["whelk"]);
    let made = |name: &str| Command::new("mkfifo").arg(gallery.folder.join("in").join(name)).status().unwrap();
    assert!(made("pipe.yaml").success());
    fs::copy(gallery.folder.join("in/whelk.yaml"), gallery.folder.join("in/...yaml")).unwrap();
    fs::create_dir_all(gallery.out().join("pieces")).unwrap();
    let (code, said) = gallery.make(&[]);
    assert_eq!(code, 2);
    assert!(said.contains("pipe.yaml: this is a pipe or a device") && said.contains("rename it"), "{said}");
    assert!(said.contains("1 drawn, 0 unchanged, 0 with errors\n"), "{said}");
    fs::remove_file(gallery.folder.join("in/pipe.yaml")).unwrap();
    fs::remove_file(gallery.folder.join("in/...yaml")).unwrap();
    for file in ["pieces/whelk/sheet.pdf", "pieces/whelk/festoon.json", "index.html", "festoon.json", "festoon.lock"] {
        let path = gallery.out().join(file);
        fs::remove_file(&path).unwrap();
        assert!(Command::new("mkfifo").arg(&path).status().unwrap().success());
        let (code, said) = gallery.make(&["--ground", "slate"]);
        assert!(
            code == 0 || said.contains("the gallery's own: --force") || said.contains("is no file"),
            "{file}: {said}"
        );
        fs::remove_file(&path).unwrap();
        assert_eq!(gallery.make(&["--force"]).0, 0, "{file}");
    }
}

#[test]
fn killed_at_any_moment_the_next_run_makes_everything_right() {
    let clean = Gallery::new("gallery-clean", &["whelk", "dune", "saltmarsh"]);
    assert_eq!(clean.make(&[]).0, 0);
    let gallery = Gallery::new("gallery-killed", &["whelk", "dune", "saltmarsh"]);
    for wait in [20, 60, 150, 300, 600, 1000] {
        let mut child = gallery.command(&["--ground", "slate"]).stderr(Stdio::null()).spawn().unwrap();
        std::thread::sleep(Duration::from_millis(wait));
        child.kill().unwrap();
        child.wait().unwrap();
    }
    let twice = [gallery.command(&[]), gallery.command(&[])].map(|mut run| run.stderr(Stdio::null()).spawn().unwrap());
    let codes = twice.map(|mut run| run.wait().unwrap().code());
    assert_eq!(codes, [Some(0), Some(0)], "two galleries at once");
    let below = |gallery: &Gallery| {
        let out = gallery.out();
        let files = gallery.files().into_iter();
        files.map(|(path, bytes)| (path.strip_prefix(&out).unwrap().to_owned(), bytes)).collect::<BTreeMap<_, _>>()
    };
    let (made, right) = (below(&gallery), below(&clean));
    assert_eq!(made.keys().collect::<Vec<_>>(), right.keys().collect::<Vec<_>>());
    assert!(made == right, "byte for byte");
}

#[test]
fn a_broken_pattern_is_reported_and_the_others_made() {
    let gallery = Gallery::new("gallery-broken", &["whelk"]);
    fs::write(gallery.folder.join("in/flotsam.yaml"), BROKEN).unwrap();
    fs::write(gallery.folder.join("in/blob.yaml"), [0xff, 0xfe, 0x00]).unwrap();
    let (code, said) = gallery.make(&[]);
    assert_eq!(code, 1);
    assert!(said.contains("flotsam.yaml") && said.contains("rund") && said.contains("blob.yaml"), "{said}");
    assert!(said.ends_with("1 drawn, 0 unchanged, 2 with errors\n"), "{said}");
    let index = gallery.page("index.html");
    assert!(index.contains("Whelk") && !index.contains("Flotsam"));
}

#[test]
fn two_files_never_share_a_page() {
    let gallery = Gallery::new("gallery-twins", &["whelk"]);
    fs::copy(gallery.folder.join("in/whelk.yaml"), gallery.folder.join("in/whelk.yml")).unwrap();
    let (code, said) = gallery.make(&[]);
    assert_eq!(code, 2);
    assert!(said.contains("whelk.yaml") && said.contains("whelk.yml"), "{said}");
}

#[test]
fn a_folder_without_patterns_is_file_trouble() {
    let gallery = Gallery::new("gallery-empty", &[]);
    let (code, said) = gallery.make(&[]);
    assert_eq!(code, 2);
    assert!(said.contains("there is no pattern file"), "{said}");
}
