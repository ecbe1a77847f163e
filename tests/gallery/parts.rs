//! Galleries drawn in parts, side by side.

use std::fs;
use std::path::Path;
use std::process::Stdio;

use super::Gallery;

const PATTERNS: [&str; 5] = ["whelk", "dune", "halyard", "bollard", "groyne"];

#[test]
fn eight_parts_at_once_give_the_bytes_of_one_run() {
    let (whole, parts) = (Gallery::new("gallery-whole", &PATTERNS), Gallery::new("gallery-parts", &PATTERNS));
    assert_eq!(whole.make(&[]).0, 0);
    let mut runs: Vec<_> = (1..=8)
        .map(|part| {
            let mut command = parts.command(&["--part", &format!("{part}/8")]);
            command.stderr(Stdio::null()).spawn().unwrap()
        })
        .collect();
    assert!(runs.iter_mut().all(|run| run.wait().unwrap().success()));
    assert!(!parts.out().join("index.html").exists() && parts.out().join("parts/3-of-8.json").exists());
    assert_eq!(parts.make(&["--index"]).0, 0);
    let bytes = |gallery: &Gallery| {
        let files = gallery.files().into_iter();
        let files = files.map(|(path, bytes)| (path.strip_prefix(gallery.out()).unwrap().to_owned(), bytes));
        files.collect::<Vec<_>>()
    };
    let (one, eight) = (bytes(&whole), bytes(&parts));
    let names =
        |files: &[(std::path::PathBuf, Vec<u8>)]| files.iter().map(|(path, _)| path.clone()).collect::<Vec<_>>();
    assert_eq!(names(&one), names(&eight));
    assert!(one.into_iter().zip(eight).all(|(one, eight)| one == eight));
    // What is drawn is not drawn again, whoever drew it.
    assert!(parts.make(&[]).1.contains("0 drawn, 5 unchanged"));
}

#[test]
fn an_index_is_made_of_whole_galleries_alone() {
    let gallery = Gallery::new("gallery-index", &["whelk", "dune"]);
    let (code, said) = gallery.make(&["--index"]);
    assert!(code == 2 && said.contains("no part is drawn yet"), "{said}");
    assert_eq!(gallery.make(&["--part", "1/2"]).0, 0);
    let (code, said) = gallery.make(&["--index"]);
    assert!(code == 2 && said.contains("not drawn yet: part 2/2"), "{said}");
    assert_eq!(gallery.make(&["--part", "2/2"]).0, 0);
    let whelk = gallery.folder.join("in/whelk.yaml");
    let text = fs::read_to_string(&whelk).unwrap();
    fs::write(&whelk, text.replace("title: Whelk", "title: Winkle")).unwrap();
    let (code, said) = gallery.make(&["--index"]);
    assert!(code == 2 && said.contains("whelk.yaml: changed since the parts were drawn"), "{said}");
    fs::write(&whelk, text).unwrap();
    assert_eq!(gallery.make(&["--index"]).0, 0);
    assert!(!Path::new(&gallery.out().join("parts")).exists());
}

#[cfg(unix)]
#[test]
fn a_parts_lock_that_is_no_file_is_not_opened() {
    let gallery = Gallery::new("gallery-part-lock", &["whelk"]);
    let (lock, far) = (gallery.out().join("parts/1-of-1.lock"), gallery.folder.join("far"));
    fs::create_dir_all(lock.parent().unwrap()).unwrap();
    std::os::unix::fs::symlink(&far, &lock).unwrap();
    let (code, said) = gallery.make(&["--part", "1/1"]);
    assert!(code == 2 && said.contains("1-of-1.lock: this is no file: take it away"), "{said}");
    assert!(!far.exists(), "nothing is made behind a link");
    fs::remove_file(&lock).unwrap();
    assert_eq!(gallery.make(&["--part", "1/1"]).0, 0);
}
