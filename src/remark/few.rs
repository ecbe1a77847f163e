//! As many remarks of a code as anybody reads.

use std::collections::BTreeMap;

use super::{Code, Remark, english};

/// Remarks of one code that are shown with their lines.
const MOST: usize = 50;

/// Of each code as many remarks as are shown, in their order, and a line for each code of which there are more.
pub fn few<'r>(remarks: impl IntoIterator<Item = &'r Remark>) -> (Vec<&'r Remark>, String) {
    let mut met = BTreeMap::<Code, usize>::new();
    let is_shown = |remark: &&Remark| {
        let count = met.entry(remark.code()).or_default();
        *count += 1;
        *count <= MOST
    };
    let shown = remarks.into_iter().filter(is_shown).collect();
    let more =
        met.into_iter().filter(|(_, count)| *count > MOST).map(|(code, count)| english::left_off(code, count - MOST));
    (shown, more.collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remark::said::language::Language;

    #[test]
    fn a_code_is_shown_so_often_and_the_rest_is_counted() {
        let of = |said: Language, count| std::iter::repeat_n(Remark::new(said), count);
        let key = |key| Language::MissingKey { key };
        let twice = Language::KeyTwice { key: "x".to_owned() };
        let remarks: Vec<_> = of(key("x"), 53).chain(of(twice, 50)).collect();
        let (shown, more) = few(&remarks);
        let count = |code| shown.iter().filter(|remark| remark.code() == code).count();
        assert_eq!([count(Code::MissingKey), count(Code::Yaml)], [50, 50]);
        assert_eq!(more, "3 more of missing-key: --messages short shows all\n");
    }
}
