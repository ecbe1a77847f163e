//! `festoon check --swap OLD=NEW`: what changes when one bead stands in for another.

use festoon::design::{Bead, Choice, Design, Entries, resolve};
use festoon::english::commas;
use festoon::hung;
use festoon::pattern::{Pattern, read};
use festoon::remark::{Code, Remark, has_errors, suggest};
use festoon::source::Source;

use super::{Failure, output, report};

/// A bead and its stand-in.
#[derive(Clone, Debug)]
pub struct Swap {
    from: String,
    to: String,
}

impl Swap {
    /// Reads `reed=moss`.
    pub fn parse(text: &str) -> Result<Self, String> {
        let (from, to) = text.split_once('=').ok_or("write two beads, like reed=moss")?;
        Ok(Self { from: from.trim().to_owned(), to: to.trim().to_owned() })
    }
}

/// Prints old and new lengths and counts of every strand, and reports what the swap gives rise to.
pub fn run(source: &Source, choice: &Choice, swap: &Swap, messages: &report::Messages) -> Result<(), Failure> {
    let (pattern, remarks) = read(source);
    let Some(pattern) = pattern else { return refuse(&remarks, source, messages) };
    for id in [&swap.from, &swap.to] {
        known(&pattern, id)?;
    }
    let (old, remarks) = resolve(&pattern, choice);
    let Some(old) = old else { return refuse(&remarks, source, messages) };
    let (new, remarks) = resolve(&pattern.swapped(&swap.from, &swap.to), choice);
    let mut remarks: Vec<_> = remarks.into_iter().filter(|remark| remark.code() != Code::Unused).collect();
    if let Some(new) = &new {
        remarks.extend(hung(&pattern, new, None).1);
        output::say(&table(&old, new, swap))?;
    }
    let remarks = pattern.unsilenced(remarks);
    report::remarks(&remarks, source, messages);
    if has_errors(&remarks) { Err(Failure::Pattern) } else { Ok(()) }
}

fn refuse(remarks: &[Remark], source: &Source, messages: &report::Messages) -> Result<(), Failure> {
    report::remarks(remarks, source, messages);
    Err(Failure::Pattern)
}

fn known(pattern: &Pattern, id: &str) -> Result<(), Failure> {
    if pattern.beads.get(id).is_some() {
        return Ok(());
    }
    let all = || format!("it defines: {}", commas(pattern.beads.ids()));
    let help = suggest(id, pattern.beads.ids(), all);
    Err(Failure::Trouble(format!("the pattern defines no bead `{id}`: {help}")))
}

fn table(old: &Design, new: &Design, swap: &Swap) -> String {
    let mut text = format!("{} in place of {}\n", swap.to, swap.from);
    for (before, after) in old.strands.iter().zip(&new.strands) {
        let row = |what: &str, old: String, new: String| {
            let change = if old == new { "unchanged".to_owned() } else { format!("now {new}") };
            format!("  {what:<10} {old:<28} {change}\n")
        };
        let count = |design: &Design, counts: Entries<u32, Bead>| {
            let named = design.beads.iter().zip(counts).filter(|(_, count)| *count > 0);
            commas(named.map(|(bead, count)| format!("{count} {}", bead.id)))
        };
        text += &format!("\n{}\n", before.name);
        text += &row("beads", count(old, before.counts(old)), count(new, after.counts(new)));
        text += &row("beaded", before.beaded().tenths(), after.beaded().tenths());
        text += &row("bare cord", before.bare().tenths(), after.bare().tenths());
        text += &row("finished", before.finished.tenths(), after.finished.tenths());
    }
    text
}
