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
}
