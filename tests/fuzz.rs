//! Shipped patterns, spoiled at random: each gives a piece or an error that says what to change,
//! never a panic, and every remark can be shown in every style.

use festoon::design::Choice;
use festoon::piece;
use festoon::remark::render::{Style, render};
use festoon::remark::{Level, has_errors};
use festoon::source::Source;
use proptest::prelude::*;
use proptest::sample::Index;

/// Shipped patterns of every kind, with every way to settle.
const PATTERNS: &[&str] = &[
    include_str!("../patterns/saltmarsh.yaml"),
    include_str!("../patterns/halyard.yaml"),
    include_str!("../patterns/rockpool.yaml"),
    include_str!("../patterns/shingle.yaml"),
    include_str!("../patterns/tideline.yaml"),
    include_str!("../patterns/whelk.yaml"),
];

/// What a slip of the hand, or malice, may put in a token's place.
const SLIPS: &[&str] = &[
    "",
    "0",
    "-1",
    "1",
    "7",
    "99999",
    "100001",
    "4294967296",
    "1e400",
    ".nan",
    "~",
    "mm",
    "in",
    "6 x 4 mm",
    "900 in",
    "1/0 in",
    "½",
    "½ in",
    "0.0001 mm",
    "fill",
    "knot",
    "[",
    "]",
    "{",
    "}",
    "[]",
    "{}",
    ":",
    ": ",
    "- ",
    "#",
    "\"",
    "'",
    "|",
    "&a",
    "*a",
    "<<",
    "\t",
    "\n",
    "\u{feff}",
    "\u{0}",
    "ß",
    "🙂",
    "yes",
    "repeat",
    "mirror",
    "of",
    "slide",
    "spread",
    "fixed",
    "crimp",
    "end bar",
    "chain",
    "seed",
    "15/0",
];

/// One way to spoil a text, at a token or line that its index picks.
#[derive(Clone, Debug)]
enum Slip {
    Delete(Index),
    Double(Index),
    Replace(Index, &'static str),
    Swap(Index, Index),
    Scale(Index, i32),
    Indent(Index, usize),
    DropLine(Index),
    DoubleLine(Index),
    Cut(Index),
}

fn slip() -> impl Strategy<Value = Slip> {
    let index = any::<Index>;
    prop_oneof![
        index().prop_map(Slip::Delete),
        index().prop_map(Slip::Double),
        (index(), prop::sample::select(SLIPS)).prop_map(|(at, word)| Slip::Replace(at, word)),
        (index(), index()).prop_map(|(one, other)| Slip::Swap(one, other)),
        (index(), -6..7).prop_map(|(at, power)| Slip::Scale(at, power)),
        (index(), 0_usize..9).prop_map(|(at, depth)| Slip::Indent(at, depth)),
        index().prop_map(Slip::DropLine),
        index().prop_map(Slip::DoubleLine),
        index().prop_map(Slip::Cut),
    ]
}

/// The text in tokens: words and numbers whole, every other character by itself.
fn tokens(text: &str) -> Vec<String> {
    let mut tokens: Vec<String> = Vec::new();
    let mut in_word = false;
    for c in text.chars() {
        let is_word = c.is_alphanumeric() || c == '.';
        match tokens.last_mut().filter(|_| is_word && in_word) {
            Some(word) => word.push(c),
            None => tokens.push(c.into()),
        }
        in_word = is_word;
    }
    tokens
}

fn spoil(text: &str, slip: &Slip) -> String {
    let in_tokens = |change: &dyn Fn(&mut Vec<String>)| changed(tokens(text), change).concat();
    let in_lines = |change: &dyn Fn(&mut Vec<String>)| changed(lines(text), change).concat();
    match slip {
        Slip::Delete(at) => in_tokens(&|tokens| drop(tokens.remove(at.index(tokens.len())))),
        Slip::Double(at) => in_tokens(&|tokens| double(tokens, at)),
        Slip::Replace(at, word) => in_tokens(&|tokens| put(tokens, at, (*word).into())),
        Slip::Swap(one, other) => in_tokens(&|tokens| swap(tokens, one, other)),
        Slip::Scale(at, power) => in_tokens(&|tokens| scale(tokens, at, *power)),
        Slip::Indent(at, depth) => in_lines(&|lines| {
            let line = lines[at.index(lines.len())].trim_start_matches(' ').to_owned();
            put(lines, at, " ".repeat(*depth) + &line);
        }),
        Slip::DropLine(at) => in_lines(&|lines| drop(lines.remove(at.index(lines.len())))),
        Slip::DoubleLine(at) => in_lines(&|lines| double(lines, at)),
        Slip::Cut(at) => in_tokens(&|tokens| tokens.truncate(at.index(tokens.len()))),
    }
}

fn lines(text: &str) -> Vec<String> {
    text.split_inclusive('\n').map(str::to_owned).collect()
}

/// The parts after a change; a text without any part stays as it is.
fn changed(mut parts: Vec<String>, change: &dyn Fn(&mut Vec<String>)) -> Vec<String> {
    if !parts.is_empty() {
        change(&mut parts);
    }
    parts
}

fn put(parts: &mut [String], at: &Index, word: String) {
    parts[at.index(parts.len())] = word;
}

fn swap(parts: &mut [String], one: &Index, other: &Index) {
    let (one, other) = (one.index(parts.len()), other.index(parts.len()));
    parts.swap(one, other);
}

fn double(parts: &mut Vec<String>, at: &Index) {
    let at = at.index(parts.len());
    parts.insert(at, parts[at].clone());
}

/// Multiplies one of the numbers by a power of ten.
fn scale(tokens: &mut [String], at: &Index, power: i32) {
    let numbers: Vec<usize> = (0..tokens.len()).filter(|&at| tokens[at].parse::<f64>().is_ok()).collect();
    if numbers.is_empty() {
        return;
    }
    let token = &mut tokens[numbers[at.index(numbers.len())]];
    if let Ok(number) = token.parse::<f64>() {
        *token = (number * 10_f64.powi(power)).to_string();
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn spoiled_patterns_give_a_piece_or_an_error_with_help(
        pattern in prop::sample::select(PATTERNS), slips in prop::collection::vec(slip(), 1..5),
    ) {
        let text = slips.iter().fold(pattern.to_owned(), |text, slip| spoil(&text, slip));
        let source = Source::new("spoiled.yaml", text);
        let (piece, remarks) = piece(&source, &Choice::default(), None);
        prop_assert!(piece.is_some() || has_errors(&remarks), "{:#?}", remarks);
        for remark in remarks.iter().filter(|remark| remark.level() == Level::Error) {
            prop_assert!(!remark.headline.is_empty() && !remark.help.is_empty(), "{:?}", remark);
        }
        for style in [Style::Full, Style::Short, Style::Json] {
            let shown = render(&remarks, &source, style, false);
            let all = remarks.iter().all(|remark| shown.contains(remark.code.name()));
            prop_assert!(all, "{}", shown);
        }
    }
}
