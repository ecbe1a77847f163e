//! Reading the stash file: what is wrong is told with its place.

use festoon::design::nth;
use festoon::materials::{Article, Stash};
use festoon::remark::{Code, Remark};
use festoon::source::Source;
use festoon::units::Length;

use crate::designs::gathered;

/// The stash, or all that is said about the file.
fn read(text: &str) -> Result<Stash, Vec<(Code, String, Remark)>> {
    let (stash, told) = said(text);
    stash.ok_or(told)
}

fn said(text: &str) -> (Option<Stash>, Vec<(Code, String, Remark)>) {
    let source = Source::new("stash.yaml", text);
    let told =
        |remark: Remark| (remark.code(), source.slice(remark.place.expect("a place in the stash")).to_owned(), remark);
    let (stash, remarks) = Stash::read(&source, &gathered());
    (stash, remarks.into_iter().map(told).collect())
}

#[test]
fn one_stash_serves_many_patterns() {
    let (stash, told) = said("reed: 120\nlapis: 40\nsilver wire: 2 m\n");
    assert_eq!(stash.unwrap().count(Article::Bead(nth(0))), 120);
    assert_eq!(told, []);
}

#[test]
fn what_may_be_a_slip_is_said() {
    let (stash, told) = said("raed: 120\n");
    assert_eq!(stash.unwrap().count(Article::Bead(nth(0))), 0);
    let [(code, place, remark)] = told.as_slice() else { panic!("one remark: {told:?}") };
    assert_eq!((*code, place.as_str(), remark.help().as_str()), (Code::StashUnused, "raed", "did you mean `reed`?"));
}

#[test]
fn counts_and_lengths() {
    let stash = read("# my drawer\nreed: 120\nwire: 3 m\ncable chain: 10 in\n").unwrap();
    assert_eq!(stash.count(Article::Bead(nth(0))), 120);
    assert_eq!(stash.length(Article::Cord(nth(0))), Some(Length::mm(3000.0)));
    assert_eq!(stash.length(Article::Finding(nth(5))), Some(Length::mm(254.0)));
    assert_eq!(stash.count(Article::Bead(nth(1))), 0);
}

#[test]
fn nothing_in_hand() {
    assert_eq!(read("").unwrap(), Stash::default());
    assert_eq!(read("# empty\n\n").unwrap(), Stash::default());
}

#[test]
fn all_that_is_wrong_is_told_at_once_and_in_its_place() {
    let wrong = read("raed: 3\nreed: 1.5\nmist: 12 mm\nwire: 3\ncable chain: []\n").unwrap_err();
    let told: Vec<_> = wrong.iter().map(|(code, place, _)| (*code, place.as_str())).collect();
    assert_eq!(
        told,
        [
            (Code::StashUnused, "raed"),
            (Code::BadQuantity, "1.5"),
            (Code::BadQuantity, "12 mm"),
            (Code::BadQuantity, "3"),
            (Code::WrongKind, "["),
        ]
    );
    assert_eq!(wrong[0].2.help(), "did you mean `reed`?");
    assert!(wrong[3].2.help().contains("3 mm"), "{}", wrong[3].2.help());
}

#[test]
fn what_is_not_a_list_of_amounts_is_refused() {
    for (text, code) in [
        ("- reed\n- mist\n", Code::WrongKind),
        ("just words", Code::WrongKind),
        ("reed: {\n", Code::Yaml),
        ("reed: 1\nreed: 2\n", Code::Yaml),
    ] {
        assert_eq!(read(text).unwrap_err()[0].0, code, "{text}");
    }
}
