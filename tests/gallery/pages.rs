//! What the pages of a gallery say, and that they stand on their own.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use super::{BROKEN, Gallery};

impl Gallery {
    /// Every HTML page, by its place below the gallery.
    fn pages(&self) -> BTreeMap<PathBuf, String> {
        let folders = fs::read_dir(self.out().join("pieces")).unwrap().map(|entry| entry.unwrap().path());
        let all = folders.chain([self.out()]).map(|folder| folder.join("index.html"));
        all.map(|path| (path.clone(), fs::read_to_string(path).unwrap())).collect()
    }
}

/// What stands in an attribute, wherever it occurs.
fn attributes<'a>(page: &'a str, name: &str) -> Vec<&'a str> {
    let start = format!(" {name}=\"");
    page.split(&start).skip(1).map(|rest| rest.split_once('"').unwrap().0).collect()
}

/// Fails unless every element is closed in order; what HTML never closes is left alone.
fn assert_well_formed(page: &str, name: &Path) {
    const EMPTY: [&str; 5] = ["meta", "link", "img", "input", "br"];
    let mut open = Vec::new();
    let without = |page: &str, element: &str| {
        let (start, end) = (format!("<{element}>"), format!("</{element}>"));
        page.split_once(&start)
            .map_or_else(|| page.to_owned(), |(before, rest)| format!("{before}{}", rest.split_once(&end).unwrap().1))
    };
    let bare = without(&without(page, "style"), "script");
    for tag in bare.split('<').skip(1).filter(|tag| !tag.starts_with('!')) {
        let inside = tag.split_once('>').unwrap_or_else(|| panic!("{}: <{tag}", name.display())).0;
        let word = inside.trim_start_matches('/').split(' ').next().unwrap();
        if inside.starts_with('/') {
            assert_eq!(open.pop(), Some(word), "{}", name.display());
        } else if !EMPTY.contains(&word) {
            open.push(word);
        }
    }
    assert!(open.is_empty(), "{}: {open:?}", name.display());
}

#[test]
fn every_pattern_and_colourway_has_picture_sheet_and_page() {
    let gallery = Gallery::new("gallery-makes", &["saltmarsh", "whelk", "rockpool"]);
    let (code, said) = gallery.make(&["--title", "Shore & <Strand>"]);
    assert_eq!(code, 0, "{said}");
    for (folder, colourways) in [("saltmarsh", 3), ("whelk", 1), ("rockpool", 1)] {
        for suffix in ["", "-1", "-2"].iter().take(colourways) {
            for file in [format!("picture{suffix}.png"), format!("small{suffix}.png"), format!("sheet{suffix}.pdf")] {
                assert!(gallery.out().join("pieces").join(folder).join(&file).exists(), "{folder}/{file}");
            }
        }
    }
    let index = gallery.page("index.html");
    assert!(index.contains("<h1>Shore &amp; &lt;Strand&gt;</h1>"));
    for title in ["Saltmarsh", "Whelk", "Rockpool"] {
        assert!(index.contains(&format!("<span class=\"title\">{title}</span>")), "{title}");
    }
    let page = gallery.page("pieces/saltmarsh/index.html");
    for word in ["reed green glass round", "124", "inner", "low tide", "24 g", "Marram Studio"] {
        assert!(page.contains(word), "{word}");
    }
    assert!(fs::read(gallery.out().join("contact.pdf")).unwrap().starts_with(b"%PDF"));
}

#[test]
fn pages_are_well_formed_and_ask_nothing_of_others() {
    let gallery = Gallery::new("gallery-pages", &["saltmarsh", "whelk", "moonwrack"]);
    fs::rename(gallery.folder.join("in/moonwrack.yaml"), gallery.folder.join("in/moon wrack #1.yaml")).unwrap();
    assert_eq!(gallery.make(&[]).0, 0);
    let pages = gallery.pages();
    assert_eq!(pages.len(), 4);
    for (path, page) in pages {
        assert_well_formed(&page, &path);
        assert!(!page.contains("//"), "{}: an address of another computer", path.display());
        assert!(attributes(&page, "alt").iter().all(|text| text.len() > 20), "{}", path.display());
        assert_eq!(attributes(&page, "alt").len(), attributes(&page, "height").len(), "room is kept for every picture");
        assert_eq!(page.matches("<img ").count(), attributes(&page, "alt").len());
        for link in [attributes(&page, "href"), attributes(&page, "src")].concat() {
            let is_file = !link.starts_with('#') && !link.starts_with("data:");
            let file = link.replace("%20", " ").replace("%23", "#");
            assert!(!is_file || path.with_file_name(file).exists(), "{}: {link}", path.display());
        }
    }
}

#[test]
fn prices_are_shown_when_asked_for_only() {
    let gallery = Gallery::new("gallery-prices", &["saltmarsh"]);
    gallery.make(&[]);
    assert!(!gallery.page("index.html").contains("class=\"price\""));
    gallery.make(&["--with-prices"]);
    assert!(gallery.page("index.html").contains(" EUR</p>"));
}

#[test]
fn without_a_sound_pattern_there_is_an_empty_index() {
    let gallery = Gallery::new("gallery-none", &[]);
    fs::write(gallery.folder.join("in/flotsam.yaml"), BROKEN).unwrap();
    let (code, said) = gallery.make(&[]);
    assert_eq!(code, 1, "{said}");
    assert!(said.ends_with("0 drawn, 0 unchanged, 1 with errors\n"), "{said}");
    let index = gallery.page("index.html");
    assert!(index.contains("0 patterns") && !index.contains("contact.pdf"));
}
