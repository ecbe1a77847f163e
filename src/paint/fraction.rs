//! Fractions: how large they are set, and the spacing of those written with the fraction slash: `15⁄16`.
//!
//! The font's small figures are 0.39 em high, too low to be told apart in small type: fractions are set [`LARGER`].
//!
//! Shapers set such figures from the font's own small ones (the OpenType features `numr` and `dnom`,
//! which Unicode's fraction slash asks for). Those are all as wide as one another, so that a narrow 1
//! stands loose in its place; the font's ready-made ½ and ¾ are set closer. What is taken off beside a
//! 1 makes the two even.

/// Mark between the parts of a fraction.
pub const SLASH: char = '⁄';

/// What is taken off behind a 1, in em. Its right side bearing in the bundled fonts is wider than that
/// of the other small figures by 0.09 em; a little stays, so that nothing touches in small type.
const BEHIND_ONE: f64 = 0.07;
/// What is taken off before a 1: its left side bearing is wider by 0.05 em.
const BEFORE_ONE: f64 = 0.04;

/// How much larger fractions are set than the words about them, so that their figures are 1.2 mm high in the smallest type.
pub const LARGER: f64 = 1.2;
/// Fractions of one character.
const READY: &str = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞";

/// A text in runs, and whether each is a fraction.
#[must_use]
pub fn runs(text: &str) -> Vec<(bool, &str)> {
    let is_ready = |c: char| READY.contains(c);
    if !text.contains(SLASH) && !text.contains(is_ready) {
        return vec![(false, text)];
    }
    let chars: Vec<char> = text.chars().collect();
    let is_in = |at: usize| is_ready(chars[at]) || in_fraction(&chars, at);
    let starts = text.char_indices().enumerate().filter(|(at, _)| *at > 0 && is_in(*at) != is_in(at - 1));
    let mut runs = Vec::new();
    let (mut from, mut inside) = (0, is_in(0));
    for (_, (start, _)) in starts {
        runs.push((inside, &text[from..start]));
        (from, inside) = (start, !inside);
    }
    runs.push((inside, &text[from..]));
    runs
}

/// How far each character moves to the left of where it would stand, from its neighbour before it, in
/// em of the words about it; empty for a text without such a fraction.
#[must_use]
pub fn tucks(text: &str) -> Vec<f64> {
    if !text.contains(SLASH) {
        return Vec::new();
    }
    let chars: Vec<char> = text.chars().collect();
    (0..chars.len()).map(|at| LARGER * tuck(&chars, at)).collect()
}

fn tuck(chars: &[char], at: usize) -> f64 {
    let Some(before) = at.checked_sub(1) else { return 0.0 };
    let one = |at: usize| chars[at] == '1' && in_fraction(chars, at);
    let behind = if one(before) && in_fraction(chars, at) { BEHIND_ONE } else { 0.0 };
    let figures = chars[before].is_ascii_digit();
    behind + if figures && one(at) { BEFORE_ONE } else { 0.0 }
}

/// Whether a character is a slash or one of the figures about one.
fn in_fraction(chars: &[char], at: usize) -> bool {
    let about = || ends_in_slash(chars[at..].iter()) || ends_in_slash(chars[..at].iter().rev());
    chars[at] == SLASH || chars[at].is_ascii_digit() && about()
}

/// Whether a slash comes first after figures.
fn ends_in_slash<'a>(mut chars: impl Iterator<Item = &'a char>) -> bool {
    chars.find(|c| !c.is_ascii_digit()) == Some(&SLASH)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ones_are_tucked_in_within_fractions_alone() {
        assert!(tucks("11 in, 16 ½ in").is_empty());
        let [behind, both] = [BEHIND_ONE, BEHIND_ONE + BEFORE_ONE].map(|tuck| LARGER * tuck);
        assert_eq!(tucks("11 3⁄16"), [0.0, 0.0, 0.0, 0.0, 0.0, 0.0, behind]);
        assert_eq!(tucks("1⁄16 1"), [0.0, behind, 0.0, behind, 0.0, 0.0]);
        assert_eq!(tucks("11⁄16"), [0.0, both, behind, 0.0, behind]);
    }

    #[test]
    fn runs_make_up_the_text() {
        assert_eq!(runs("11 in"), [(false, "11 in")]);
        assert_eq!(runs("11 3⁄16 in"), [(false, "11 "), (true, "3⁄16"), (false, " in")]);
        assert_eq!(runs("½ or 3 ¾"), [(true, "½"), (false, " or 3 "), (true, "¾")]);
        assert_eq!(runs(""), [(false, "")]);
    }
}
