//! Spacing of fractions written with the fraction slash: `15⁄16`.
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

/// How far each character moves to the left of where it would stand, from its neighbour before it, in
/// em; empty for a text without such a fraction.
#[must_use]
pub fn tucks(text: &str) -> Vec<f64> {
    if !text.contains(SLASH) {
        return Vec::new();
    }
    let chars: Vec<char> = text.chars().collect();
    (0..chars.len()).map(|at| tuck(&chars, at)).collect()
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
        assert_eq!(tucks("11 3⁄16"), [0.0, 0.0, 0.0, 0.0, 0.0, 0.0, BEHIND_ONE]);
        assert_eq!(tucks("1⁄16 1"), [0.0, BEHIND_ONE, 0.0, BEHIND_ONE, 0.0, 0.0]);
        assert_eq!(tucks("11⁄16"), [0.0, BEHIND_ONE + BEFORE_ONE, BEHIND_ONE, 0.0, BEHIND_ONE]);
    }
}
