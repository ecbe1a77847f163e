//! Places as browsers and editors count them: in UTF-16 code units.

/// How many units stand before a byte.
#[must_use]
pub fn units(text: &str, byte: usize) -> usize {
    let end = (0..=byte.min(text.len())).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
    text[..end].encode_utf16().count()
}

/// The byte at which so many units end; the text's end where it has fewer.
#[must_use]
pub fn byte(text: &str, units: usize) -> usize {
    let mut passed = 0;
    for (at, sign) in text.char_indices() {
        if passed >= units {
            return at;
        }
        passed += sign.len_utf16();
    }
    text.len()
}

/// The line of a byte, from 0, and how many units stand before it in that line.
#[must_use]
pub fn line(text: &str, at: usize) -> (usize, usize) {
    let at = byte(text, units(text, at));
    let start = text[..at].rfind('\n').map_or(0, |at| at + 1);
    (text[..at].matches('\n').count(), units(&text[start..], at - start))
}

/// The byte behind so many units of a line that is counted from 0; the line's end where it has fewer.
#[must_use]
pub fn byte_in_line(text: &str, line: usize, units: usize) -> usize {
    let start = text.split_inclusive('\n').take(line).map(str::len).sum::<usize>();
    let rest = text[start..].split('\n').next().unwrap_or_default();
    start + byte(rest, units)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_and_bytes_lead_to_one_another() {
        let text = "a½𝄞\nü";
        for (at, _) in text.char_indices() {
            assert_eq!(byte(text, units(text, at)), at);
        }
        assert_eq!(units(text, text.len()), 6);
        assert_eq!(byte(text, 99), text.len());
    }

    #[test]
    fn lines_and_units_lead_to_bytes_and_back() {
        let text = "a½𝄞\nü: x\n";
        for (at, _) in text.char_indices() {
            let (line, units) = line(text, at);
            assert_eq!(byte_in_line(text, line, units), at);
        }
        assert_eq!(line(text, text.find('x').unwrap_or(0)), (1, 3));
        assert_eq!(byte_in_line(text, 0, 99), text.find('\n').unwrap_or(0), "the line's end");
        assert_eq!(byte_in_line(text, 9, 0), text.len());
    }
}
