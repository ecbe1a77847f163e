//! What is said about a line: letters of runs, lengths of bare cord and counts of beads above it, and letters
//! beside the beads of branches, those of a run of one bead once.

use crate::design::{Bead, Bit, Dangle, Design, Finding, Index, What};
use crate::geometry::Point;
use crate::paint::layout::text::Type;
use crate::paint::mark::{Anchor, Mark};
use crate::paint::{outline, style};
use crate::sheet::english;
use crate::sheet::said::BareCord;
use crate::units::{Length, UnitStyle};

use super::RowLine;
use super::spans::{Span, Spanned};

/// Height of one row of labels in mm.
const ROW: f64 = style::BODY * 1.12;
/// How far above the foot of their row they stand, as a share of it.
const FOOT: f64 = 0.12;
/// Room in mm that the brackets below them take, that above them, and how far their ends reach down.
const BRACKET: f64 = 1.6;
const BRACKET_TOP: f64 = 0.5;
const BRACKET_ENDS: f64 = 0.8;
/// How far a bracket keeps off the ends of its stretch: a share of that, and most in mm.
const BRACKET_INSET: (f64, f64) = (0.1, 0.4);
/// Most rows of labels: a label that is wider than its run goes up a row.
const ROWS: usize = 2;
/// Least room in mm between labels, so that neighbours do not read as one word: a space.
const LABELS_APART: f64 = 0.2 * style::BODY;
/// Bare cord from this length on, in mm, has its length printed.
const LEAST_GAP: f64 = 8.0;
/// Room in mm between a branch and its letters.
const BESIDE_BRANCH: f64 = 0.8;
/// From a bead up to the foot of its number, in mm.
const ABOVE_BEAD: f64 = 1.6;
/// How far the tick below a number keeps off it, and off its bead, in mm.
const TICK_CLEAR: [f64; 2] = [0.4, 0.2];
/// How the letters beside branches look.
pub const LETTER: Type = Type::SMALL_STRONG;

/// A stretch of a line with what is printed over it.
struct Labelled {
    from: f64,
    to: f64,
    said: LabelWords,
    face: Type,
}

/// What is printed over a stretch.
enum LabelWords {
    /// A run of beads: its letter, how many it has in all, how many of them stand before the stretch, how many on it, and the
    /// marks of the caps that hug its first and its last.
    Run { letter: String, total: u32, before: u32, shown: u32, caps: [String; 2] },
    /// A length, the best words first.
    Words(Vec<String>),
}

/// A label in its place.
struct RunLabel {
    words: String,
    face: Type,
    left: f64,
    row: usize,
}

/// The labels of a line.
pub struct LineLabels {
    labels: Vec<RunLabel>,
    brackets: Vec<(f64, f64)>,
    /// How many runs are too short for their letter.
    pub left_out: usize,
}

impl LineLabels {
    /// Finds room for the labels of a line.
    pub fn new(line: &RowLine<'_, '_>) -> Self {
        let mut labels = Self { labels: Vec::new(), brackets: Vec::new(), left_out: 0 };
        let mut taken = [0.0; ROWS];
        let (stretches, width) = (stretches(line), line.of.width);
        for (at, stretch) in stretches.iter().enumerate() {
            let is_last = at + 1 == stretches.len();
            let spare = if is_last && !stretch.said.is_length() { width - stretch.to } else { 0.0 };
            labels.brackets.extend((!stretch.said.is_single()).then_some((stretch.from, stretch.to)));
            match place(stretch, &mut taken, spare, width) {
                Some(label) => labels.labels.push(label),
                None => labels.left_out += 1,
            }
        }
        labels
    }

    /// Height in mm with brackets.
    pub fn height(&self) -> f64 {
        self.rows() as f64 * ROW + BRACKET
    }

    fn rows(&self) -> usize {
        self.labels.iter().map(|label| label.row + 1).max().unwrap_or(1)
    }

    /// The labels from the upper edge of their height.
    pub fn marks(&self) -> Vec<Mark> {
        let rows = self.rows();
        let text = |label: &RunLabel| {
            let baseline = (rows - label.row) as f64 * ROW - ROW * FOOT;
            label.face.mark(&label.words, Point::new(label.left, baseline), Anchor::Start)
        };
        let top = rows as f64 * ROW + BRACKET_TOP;
        let corners = |(from, to): &(f64, f64)| {
            let inset = ((to - from) * BRACKET_INSET.0).min(BRACKET_INSET.1);
            let (from, to) = (from + inset, to - inset);
            let foot = top + BRACKET_ENDS;
            outline::polyline(&[(from, foot), (from, top), (to, top), (to, foot)].map(|(x, y)| Point::new(x, y)))
        };
        let brackets = self.brackets.iter().flat_map(corners).collect();
        let stroke = Some(style::RULE_LINE);
        let mut marks: Vec<_> = self.labels.iter().map(text).collect();
        marks.push(Mark::Shape { outline: brackets, fill: None, stroke });
        marks
    }
}

/// Puts a label over its stretch: the best words that have room over it and what is spare behind it, or the shortest.
fn place(stretch: &Labelled, taken: &mut [f64; ROWS], spare: f64, width: f64) -> Option<RunLabel> {
    let room = stretch.to - stretch.from;
    let words = stretch.said.words();
    let mut widths = words.iter().map(|words| (words, stretch.face.width(words)));
    let from = |wide: f64| (stretch.from + (room - wide) / 2.0).clamp(0.0, (width - wide).max(0.0));
    let pushed = |wide: f64| from(wide).max(taken[0] + LABELS_APART);
    let fits = |wide: f64| wide <= room || pushed(wide) + wide <= stretch.to + spare;
    let (words, wide) = widths.clone().find(|(_, wide)| fits(*wide)).or_else(|| widths.next_back())?;
    let left = if wide > room && fits(wide) { pushed(wide) } else { from(wide) };
    let row = taken.iter().position(|taken| *taken <= left)?;
    taken[row] = left + wide + LABELS_APART;
    Some(RunLabel { words: words.clone(), face: stretch.face, left, row })
}

/// What is printed over the line, from left to right.
fn stretches(line: &RowLine<'_, '_>) -> Vec<Labelled> {
    let design = line.of.design();
    let link = design.cords[line.of.strand.cord].link;
    let (mut stretches, caps): (Vec<Labelled>, _) = (Vec::new(), design.strung_caps());
    let (mut last, mut open) = (None, String::new());
    for span in line.spans.iter().filter(|span| !span.is_knot()) {
        let bead = span.bead();
        match (stretches.last_mut(), bead, cap(&caps, span)) {
            (Some(stretch), Some(_), _) if bead == last => {
                stretch.to = span.end_x();
                stretch.said.goes_on(span);
            }
            (_, Some(index), _) => stretches.push(begun(span, &design.beads[index], std::mem::take(&mut open))),
            (_, None, Some((which, true))) => [open, _] = english::cap(which, caps.len()),
            (Some(stretch), None, Some((which, false))) => stretch.said.close(which, caps.len()),
            (_, None, _) => stretches.extend(bare(line.of.units, link, span)),
        }
        last = bead;
    }
    stretches
}

/// A run that begins with a bead, behind the mark of a cap that hugs it.
fn begun(span: &Span<'_>, bead: &Bead, open: String) -> Labelled {
    let (before, total) = span.run;
    let caps = [open, String::new()];
    let said = LabelWords::Run { letter: bead.letter.clone(), total, before, shown: 1, caps };
    Labelled { from: span.x, to: span.end_x(), said, face: Type::STRONG }
}

impl LabelWords {
    /// Whether it is said of one bead, over which its letter stands.
    const fn is_single(&self) -> bool {
        matches!(self, Self::Run { total: 1, .. })
    }

    /// Whether it is a length, which stands over nothing but the stretch that it tells.
    const fn is_length(&self) -> bool {
        matches!(self, Self::Words(_))
    }

    /// Shows more of the run: one bead, or all that are left out.
    fn goes_on(&mut self, span: &Span<'_>) {
        if let Self::Run { shown, .. } = self {
            *shown += span.left_out().max(1);
        }
    }

    /// Marks the cap that hugs the last bead of a run.
    fn close(&mut self, which: usize, sorts: usize) {
        if let Self::Run { caps: [_, close], .. } = self {
            [_, *close] = english::cap(which, sorts);
        }
    }

    /// What may be printed, the best first: a run's count and letter, of a single bead the letter alone; of a run
    /// that a line's end breaks how many of its beads stand here, `5D…` and `…1D`.
    fn words(&self) -> Vec<String> {
        match self {
            Self::Run { letter, total: 1, caps: [open, close], .. } => vec![format!("{open}{letter}{close}")],
            Self::Run { letter, total, before, shown, caps: [open, close] } => {
                let [from, on] = [*before > 0, before + shown < *total].map(|goes_on| if goes_on { "…" } else { "" });
                vec![format!("{open}{from}{shown}{letter}{on}{close}")]
            }
            Self::Words(words) => words.clone(),
        }
    }
}

/// Which of the caps stands there, if one does, and whether it hugs what comes after it.
fn cap(caps: &[Index<Finding>], span: &Span<'_>) -> Option<(usize, bool)> {
    let Spanned::Bit(Bit { what: What::Finding(finding), turned, .. }, _) = span.thing else { return None };
    Some((caps.iter().position(|cap| cap == finding)?, *turned))
}

fn bare(units: UnitStyle, link: Option<Length>, span: &Span<'_>) -> Option<Labelled> {
    let bare = match span.thing {
        Spanned::Bare { loose: false } if link.is_some() => BareCord::Links(counted(span.cord, link?)),
        Spanned::Bare { loose: true } => BareCord::About(Length::mm(span.cord)),
        Spanned::Bare { loose: false } if span.cord >= LEAST_GAP => BareCord::Fixed(Length::mm(span.cord)),
        _ => return None,
    };
    let said = LabelWords::Words(english::bare_cord(bare, units));
    Some(Labelled { from: span.x, to: span.end_x(), said, face: Type::TINY.coloured(style::INK) })
}

/// How many links of chain a length has.
fn counted(length: f64, link: Length) -> u64 {
    (length / link.value()).round() as u64
}

/// Height in mm of a line's numbers with their ticks, nothing where it has none.
pub fn counts_height(spans: &[Span<'_>]) -> f64 {
    let has_number = |span: &Span<'_>| numbered(span).is_some() || span.left_out() > 0;
    if spans.iter().any(has_number) { ABOVE_BEAD + style::TINY * style::CAPITAL } else { 0.0 }
}

/// The number of every tenth bead, all at one height above the beads but where something taller stands in the way, with a
/// short tick down to it; above the cut where beads are left out, how many they are and how long.
pub fn counts(line: &RowLine<'_, '_>, cord: f64) -> Vec<Mark> {
    let (mut taken, mut ticks, mut marks) = (0.0, Vec::new(), Vec::new());
    let level = NumberLevel::new(line);
    for span in &line.spans {
        let centred = |words: &str| {
            let wide = Type::TINY.width(words);
            (span.centre() - wide / 2.0).clamp(0.0, (line.of.width - wide).max(0.0))
        };
        let words = left_out(span, line.of.units).into_iter().chain(numbered(span));
        let fits =
            |words: &String| centred(words) >= taken + if span.left_out() > 0 { 2.0 * LABELS_APART } else { 0.0 };
        if let Some(words) = words.into_iter().find(fits) {
            let left = centred(&words);
            let right = left + Type::TINY.width(&words);
            taken = right + LABELS_APART;
            let baseline = cord - level.above([left, right]) - ABOVE_BEAD;
            marks.push(Type::TINY.mark(&words, Point::new(left, baseline), Anchor::Start));
            let foot = Point::new(span.centre(), cord - span.reach.above - TICK_CLEAR[1]);
            if span.left_out() == 0 {
                ticks.extend(outline::line(Point::new(span.centre(), baseline + TICK_CLEAR[0]), foot));
            }
        }
    }
    marks.push(Mark::Shape { outline: ticks, fill: None, stroke: Some(style::QUIET_LINE) });
    marks
}

/// Over what the numbers of a line stand.
struct NumberLevel<'l, 'a, 'd> {
    line: &'l RowLine<'a, 'd>,
    /// How far its beads reach up.
    beads: f64,
}

impl<'l, 'a, 'd> NumberLevel<'l, 'a, 'd> {
    fn new(line: &'l RowLine<'a, 'd>) -> Self {
        Self { line, beads: line.most(|span| if span.bead().is_some() { span.reach.above } else { 0.0 }) }
    }

    /// How far up stands what is between two places, at least the beads.
    fn above(&self, [left, right]: [f64; 2]) -> f64 {
        let is_there =
            |span: &&Span<'_>| span.centre() + span.reach.aside > left && span.centre() - span.reach.aside < right;
        self.line.spans.iter().filter(is_there).map(|span| span.reach.above).fold(self.beads, f64::max)
    }
}

/// The number of every tenth bead.
fn numbered(span: &Span<'_>) -> Option<String> {
    span.number.filter(|number| number.is_multiple_of(10)).map(|number| number.to_string())
}

/// How many beads are left out, and how long they are, then ever shorter.
fn left_out(span: &Span<'_>, units: UnitStyle) -> Vec<String> {
    if span.left_out() == 0 { Vec::new() } else { english::more_beads(span.left_out(), Length::mm(span.cord), units) }
}

/// The letters of a line's branches with the cord at a height: to the right of each branch, or else
/// to its left; none where its neighbours leave no room.
pub fn beside_branches(line: &RowLine<'_, '_>, cord: f64) -> Vec<Mark> {
    let (branches, others): (Vec<&Span<'_>>, Vec<&Span<'_>>) =
        line.spans.iter().partition(|span| span.branch().is_some());
    let row = others.iter().map(|span| span.reach.below).fold(0.0, f64::max);
    let mut taken: Vec<_> = branches.iter().map(|span| room_of(span)).collect();
    let mut marks = Vec::new();
    for span in &branches {
        let letters = of_branch(line.of.design(), span, cord, cord + row);
        let wide = letters.iter().map(|(words, _)| LETTER.width(words)).fold(0.0, f64::max);
        let (left, right) = room_of(span);
        let is_free = |x: &f64| {
            let inside = *x >= 0.0 && x + wide <= line.of.width;
            inside && taken.iter().all(|(from, to)| x + wide <= *from + style::ROUNDED || *x >= to - style::ROUNDED)
        };
        let Some(x) = [right, left - wide].into_iter().find(is_free) else { continue };
        taken.push((x - BESIDE_BRANCH, x + wide + BESIDE_BRANCH));
        marks.extend(letters.iter().map(|(words, y)| LETTER.mark(words, Point::new(x, *y), Anchor::Start)));
    }
    marks
}

/// What a branch takes of the line, with room beside it.
fn room_of(span: &Span<'_>) -> (f64, f64) {
    let half = span.reach.aside + BESIDE_BRANCH;
    (span.centre() - half, span.centre() + half)
}

/// The letters of one branch with their baselines, without those that would reach above a height.
fn of_branch(design: &Design, span: &Span<'_>, cord: f64, lowest: f64) -> Vec<(String, f64)> {
    let Some(branch) = span.branch() else { return Vec::new() };
    let baseline =
        |level: f64| cord + span.hang.unwrap_or_default() + level * span.scale + LETTER.size * style::HALF_CAPITAL;
    let all = runs(branch, design).into_iter().map(|(words, level)| (words, baseline(level)));
    all.filter(|(_, y)| y - LETTER.size >= lowest).collect()
}

/// The runs of a branch, each with how far in mm its middle lies below the branch's top.
pub fn runs(branch: &Dangle, design: &Design) -> Vec<(String, f64)> {
    let levels = branch.levels(design);
    let beads: Vec<_> = branch.bits.iter().zip(levels).map(|(bit, level)| (bit.what.bead(), level)).collect();
    let runs = beads.chunk_by(|one, next| one.0 == next.0 && one.0.is_some());
    let run = |run: &[(Option<Index<Bead>>, f64)]| match run {
        [(Some(bead), first), ..] => {
            let last = run.last().map_or(*first, |(_, level)| *level);
            let letter = &design.beads[*bead].letter;
            let words = if run.len() == 1 { letter.clone() } else { format!("{}{letter}", run.len()) };
            Some((words, first.midpoint(last)))
        }
        _ => None,
    };
    runs.filter_map(run).collect()
}
