//! Reading on where a file cannot be read: the usual slips of the pen are told and mended, so that
//! everything else that is wrong is told in the same run; what is no usual slip is told and left out.
//!
//! A mend counts only if it is needed: without it the mended text is not readable.

mod part;
mod scan;
mod slip;
mod value;

use std::ops::Range;

use crate::remark::Remark;
use crate::source::Place;

pub use slip::Slip;
pub use value::bare_colour;

/// Longest text, in bytes, in which slips are looked for: fifty times a long pattern.
const LONGEST: usize = 400_000;
/// Most slips that are mended: a file with more is no pattern.
const MOST: usize = 60;
/// Most parts that are left out.
const MOST_LOST: usize = 12;

/// A change of the text.
#[derive(Clone, Debug)]
struct Edit {
    /// The bytes that are taken out.
    cut: Range<usize>,
    /// What is put in their place.
    put: String,
}

/// A slip, its place and its mend.
#[derive(Clone, Debug)]
struct Found {
    slip: Slip,
    place: Place,
    edit: Edit,
}

/// A text with changes, in which places of the text as written can be found.
#[derive(Clone, Debug, Default)]
pub struct Mended {
    /// The changed text.
    pub text: String,
    edits: Vec<Edit>,
}

impl Mended {
    /// A text as it was written.
    pub fn unchanged(text: &str) -> Self {
        Self { text: text.to_owned(), edits: Vec::new() }
    }

    fn new(text: &str, edits: &[&Edit]) -> Self {
        let mut edits: Vec<Edit> = edits.iter().map(|edit| (*edit).clone()).collect();
        edits.sort_by_key(|edit| (edit.cut.start, edit.cut.end));
        let mut mended = Self::default();
        let mut done = 0;
        for edit in edits {
            // Of changes that overlap the first wins.
            if edit.cut.start >= done {
                mended.text += &text[done..edit.cut.start];
                mended.text += &edit.put;
                done = edit.cut.end;
                mended.edits.push(edit);
            }
        }
        mended.text += &text[done..];
        mended
    }

    /// The byte of the text as written where a byte of this text comes from.
    pub fn origin(&self, byte: usize) -> usize {
        let (mut put, mut cut) = (0, 0);
        for edit in &self.edits {
            let start = edit.cut.start + put - cut;
            if byte < start {
                break;
            }
            if byte < start + edit.put.len() {
                return (edit.cut.start + (byte - start)).min(edit.cut.end);
            }
            put += edit.put.len();
            cut += edit.cut.len();
        }
        byte + cut - put
    }
}

/// A text that cannot be read, made readable.
pub struct Mending {
    /// The text to read; nothing where no part of it is readable.
    pub mended: Option<Mended>,
    /// What was wrong.
    pub remarks: Vec<Remark>,
    /// What was left out.
    pub lost: Vec<Place>,
}

/// Mends a text, as `fault` judges it: a remark where a text is not readable.
pub fn mend(text: &str, fault: impl Fn(&Mended) -> Option<Remark>) -> Mending {
    let found = if text.len() > LONGEST { Vec::new() } else { scan::slips(text) };
    let found: Vec<_> = found.into_iter().take(MOST).collect();
    let (parts, mut remarks) = leave_out(text, &found, &fault);
    let lost: Vec<_> = parts.iter().map(|part| Place { start: part.cut.start, end: part.cut.end }).collect();
    let with = |skip: Option<usize>| {
        let kept = found.iter().enumerate().filter(|(at, _)| Some(*at) != skip).map(|(_, found)| &found.edit);
        Mended::new(text, &kept.chain(&parts).collect::<Vec<_>>())
    };
    let whole = with(None);
    if fault(&whole).is_some() {
        return Mending { mended: None, remarks, lost };
    }
    let needed = |at: &usize| fault(&with(Some(*at))).is_some();
    let needed: Vec<_> = (0..found.len()).filter(needed).map(|at| found[at].clone()).collect();
    remarks.extend(said(&needed));
    remarks.sort_by_key(|remark| remark.place);
    let edits = needed.iter().map(|found| &found.edit).chain(&parts).collect::<Vec<_>>();
    let mended = Mended::new(text, &edits);
    let mended = if fault(&mended).is_none() { mended } else { whole };
    Mending { mended: Some(mended), remarks, lost }
}

/// The slips as remarks; tabs are told once, with how many lines have them.
fn said(found: &[Found]) -> Vec<Remark> {
    let tabs = found.iter().filter(|found| found.slip == Slip::Tab).count();
    let mut told = false;
    let first = |found: &&Found| found.slip != Slip::Tab || !std::mem::replace(&mut told, true);
    let remark = |found: &Found| {
        let remark = found.slip.remark(found.place);
        match found.slip {
            Slip::Tab if tabs > 1 => {
                let help = format!("{}; {} more lines have one", remark.help, tabs - 1);
                remark.help(help)
            }
            _ => remark,
        }
    };
    found.iter().filter(first).map(remark).collect()
}

/// Leaves out what stays unreadable, part by part, each with its remark.
fn leave_out(text: &str, found: &[Found], fault: &impl Fn(&Mended) -> Option<Remark>) -> (Vec<Edit>, Vec<Remark>) {
    let (mut parts, mut remarks): (Vec<Edit>, Vec<Remark>) = (Vec::new(), Vec::new());
    for _ in 0..MOST_LOST {
        let edits = found.iter().map(|found| &found.edit).chain(&parts).collect::<Vec<_>>();
        let Some(remark) = fault(&Mended::new(text, &edits)) else { break };
        let start = remark.place.map_or(0, |place| place.start);
        let part = part::around(text, start, &parts.iter().map(|part| part.cut.clone()).collect::<Vec<_>>());
        let again = parts.iter().any(|other| other.cut.start < part.end && part.start < other.cut.end);
        parts.retain(|other| !(part.start <= other.cut.start && other.cut.end <= part.end));
        parts.push(Edit { put: blank(&text[part.clone()]), cut: part });
        if !again {
            remarks.push(remark);
        }
    }
    (parts, remarks)
}

/// As many line breaks and nothing else.
fn blank(text: &str) -> String {
    text.chars().map(|c| if c == '\n' { '\n' } else { ' ' }).collect()
}
