//! Reading on where a file cannot be read: the usual slips of the pen are told and mended, so that
//! everything else that is wrong is told in the same run; what is no usual slip is told and left out.
//!
//! A mend counts only if it is needed: without it the mended text is not readable.

mod part;
mod scan;
mod value;

use std::ops::Range;

use crate::remark::Remark;
use crate::remark::said::language::Language;
use crate::remark::said::slip::Slip;
use crate::source::Place;

pub use value::bare_colour;

/// Longest text, in bytes, in which slips are looked for: fifty times a long pattern.
const LONGEST: usize = 400_000;
/// Most slips that are mended: a file with more is no pattern.
const MOST: usize = 60;
/// Most parts that are left out.
const MOST_LOST: usize = 12;

/// A change of the text.
#[derive(Clone, Debug)]
struct Correction {
    /// The bytes that are taken out.
    cut: Range<usize>,
    /// What is put in their place.
    put: String,
}

/// A slip, its place and its mend.
#[derive(Clone, Debug)]
struct FoundSlip {
    slip: Slip,
    place: Place,
    edit: Correction,
}

/// A text with changes, in which places of the text as written can be found.
#[derive(Clone, Debug, Default)]
pub struct Mended {
    /// The changed text.
    pub text: String,
    edits: Vec<Correction>,
}

impl Mended {
    /// A text as it was written.
    pub fn unchanged(text: &str) -> Self {
        Self { text: text.to_owned(), edits: Vec::new() }
    }

    fn new(text: &str, edits: &[&Correction]) -> Self {
        let mut edits: Vec<Correction> = edits.iter().map(|edit| (*edit).clone()).collect();
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

/// A text that could not be read, made readable.
pub struct Mending<T> {
    /// What was read, and from which text; nothing where no part of it is readable.
    pub read: Option<(T, Mended)>,
    /// What was wrong.
    pub remarks: Vec<Remark>,
    /// What was left out.
    pub lost: Vec<Place>,
}

/// Mends a text that cannot be read as it is written, for which there is a remark.
pub fn mend<T>(text: &str, unread: Remark, read: impl Fn(&Mended) -> Result<T, Remark>) -> Mending<T> {
    let found = if text.len() > LONGEST { Vec::new() } else { scan::slips(text) };
    let found: Vec<_> = found.into_iter().take(MOST).collect();
    let mut mender = Mender { text, read, needed: vec![true; found.len()], found, parts: Vec::new(), last: None };
    let mut remarks = mender.leave_out(unread);
    if mender.last.is_some() {
        mender.drop_needless(0..mender.found.len(), mender.parts.is_empty());
        remarks.extend(said(&mender.needed()));
        remarks.sort_by_key(|remark| remark.place);
    }
    let lost = mender.parts.iter().map(|part| Place { file: 0, start: part.cut.start, end: part.cut.end }).collect();
    Mending { read: mender.last, remarks, lost }
}

/// A text that is mended.
struct Mender<'t, T, R> {
    text: &'t str,
    read: R,
    /// What look like slips.
    found: Vec<FoundSlip>,
    /// Which of them are mended.
    needed: Vec<bool>,
    /// What is left out.
    parts: Vec<Correction>,
    /// The last text that was readable.
    last: Option<(T, Mended)>,
}

impl<T, R: Fn(&Mended) -> Result<T, Remark>> Mender<'_, T, R> {
    /// Reads the text with its mends, and keeps what was read.
    fn try_reading(&mut self) -> Result<(), Remark> {
        let kept = self.found.iter().zip(&self.needed).filter(|(_, needed)| **needed).map(|(found, _)| &found.edit);
        let mended = Mended::new(self.text, &kept.chain(&self.parts).collect::<Vec<_>>());
        self.last = Some(((self.read)(&mended)?, mended));
        Ok(())
    }

    /// Leaves out what stays unreadable, part by part, each with its remark.
    fn leave_out(&mut self, unread: Remark) -> Vec<Remark> {
        let mut remarks = Vec::new();
        let mut fault = if self.found.is_empty() { Some(unread) } else { self.try_reading().err() };
        for _ in 0..MOST_LOST {
            let Some(remark) = fault else { break };
            let start = remark.place.map_or(0, |place| place.start);
            let parts = &mut self.parts;
            let part = part::around(self.text, start, &parts.iter().map(|part| part.cut.clone()).collect::<Vec<_>>());
            let again = parts.iter().any(|other| other.cut.start < part.end && part.start < other.cut.end);
            parts.retain(|other| !(part.start <= other.cut.start && other.cut.end <= part.end));
            parts.push(Correction { put: blank(&self.text[part.clone()]), cut: part });
            if !again {
                remarks.push(remark);
            }
            fault = self.try_reading().err();
        }
        remarks
    }

    /// Drops of some slips' mends all that the text is readable without, by halves, the last first: of two mends
    /// that each suffice the first stays. Says whether it dropped them all, which is not tried where it is known
    /// that one of them is needed.
    fn drop_needless(&mut self, some: Range<usize>, one_is_needed: bool) -> bool {
        self.needed[some.clone()].fill(false);
        if some.is_empty() || !one_is_needed && self.try_reading().is_ok() {
            return true;
        }
        self.needed[some.clone()].fill(true);
        if some.len() > 1 {
            let middle = some.start + some.len() / 2;
            let dropped = self.drop_needless(middle..some.end, false);
            self.drop_needless(some.start..middle, dropped);
        }
        false
    }

    /// The slips that are mended.
    fn needed(&self) -> Vec<FoundSlip> {
        self.found.iter().zip(&self.needed).filter(|(_, needed)| **needed).map(|(found, _)| found.clone()).collect()
    }
}

/// The slips as remarks; tabs are told once, with how many lines more have them.
fn said(found: &[FoundSlip]) -> Vec<Remark> {
    let is_tab = |found: &FoundSlip| matches!(found.slip, Slip::Tab { .. });
    let tabs = found.iter().filter(|found| is_tab(found)).count();
    let first = found.iter().position(is_tab);
    let told = found.iter().enumerate().filter(|(at, found)| !is_tab(found) || Some(*at) == first);
    let remark = |(_, found): (usize, &FoundSlip)| {
        let slip = if is_tab(found) { Slip::Tab { more: tabs - 1 } } else { found.slip.clone() };
        Remark::new(Language::Slip(slip)).at(found.place)
    };
    told.map(remark).collect()
}

/// As many line breaks and nothing else.
fn blank(text: &str) -> String {
    text.chars().map(|c| if c == '\n' { '\n' } else { ' ' }).collect()
}

#[cfg(test)]
mod tests {
    use std::cell::RefCell;

    use super::*;

    /// Mends what is readable by a rule, and gives how many remarks there are and how often it was read.
    fn mended(text: &str, readable: impl Fn(&str) -> bool) -> (usize, usize) {
        let seen = RefCell::new(vec![text.to_owned()]);
        let read = |mended: &Mended| {
            assert!(!seen.borrow().contains(&mended.text), "read twice: {}", mended.text);
            seen.borrow_mut().push(mended.text.clone());
            if readable(&mended.text) { Ok(()) } else { Err(Remark::new(Language::Unreadable)) }
        };
        let mending = mend(text, Remark::new(Language::Unreadable), read);
        let readings = seen.borrow().len();
        (mending.remarks.len(), readings)
    }

    #[test]
    fn one_slip_costs_one_reading_more() {
        assert_eq!(mended("a: 1\nb = 2\n", |text| !text.contains('=')), (1, 2));
    }

    #[test]
    fn what_only_looks_like_slips_is_dropped_by_halves() {
        let text = "b = 2\n".to_owned() + &"a,, b: [1,, 2]\n".repeat(32);
        let (remarks, readings) = mended(&text, |text| !text.contains('='));
        assert!(remarks == 1 && readings < 12, "{remarks} remarks, {readings} readings");
    }

    #[test]
    fn of_two_mends_that_each_suffice_the_first_is_told() {
        assert_eq!(mended("a = 1\nb = 2\n", |text| text.matches('=').count() < 2).0, 1);
    }
}
