//! Whether the bundled font can draw every character that the sheet prints.

use crate::design::{Design, Heading};
use crate::paint::metrics;
use crate::remark::Remark;
use crate::remark::said::wearing::{Text, Wearing};
use crate::source::Place;
use crate::units::Telling;

/// A remark for each text with characters that print as empty boxes.
pub fn check(design: &Design, telling: &Telling) -> Vec<Remark> {
    let heading = heading(&design.heading, telling).into_iter().filter_map(|(key, text)| remark(Text::Key(key), text));
    let articles =
        articles(design).filter_map(|(name, text, place)| Some(remark(Text::Named(name.to_owned()), text)?.at(place)));
    heading.chain(articles).collect()
}

fn remark(text: Text, printed: &str) -> Option<Remark> {
    let missing = metrics::missing(printed);
    (!missing.is_empty()).then(|| Remark::new(Wearing::MissingGlyph { text, missing }))
}

/// What stands above the drawing and beside prices, with its pattern key.
fn heading<'a>(heading: &'a Heading, telling: &'a Telling) -> Vec<(&'static str, &'a str)> {
    let others = [
        ("summary", &heading.summary),
        ("designer", &heading.designer),
        ("permissions", &heading.permissions),
        ("time", &heading.time),
        ("notes", &heading.notes),
        ("currency", &telling.currency),
        ("size", &heading.size),
        ("colourway", &heading.colourway),
    ];
    let others = others.into_iter().filter_map(|(key, text)| Some((key, text.as_deref()?)));
    std::iter::once(("title", heading.title.as_str())).chain(others).collect()
}

/// Names and materials of all that the piece is made of, each with its article's name and place.
fn articles(design: &Design) -> impl Iterator<Item = (&str, &str, Place)> {
    let beads = design.beads.iter().map(|bead| (&bead.name, bead.material.as_ref(), bead.place));
    let findings = design.findings.iter().map(|finding| (&finding.name, finding.material.as_ref(), finding.place));
    let cords = design.cords.iter().map(|cord| (&cord.name, None, cord.place));
    let strands = design.strands.iter().map(|strand| (&strand.name, None, strand.place));
    let all = beads.chain(findings).chain(cords).chain(strands);
    all.flat_map(|(name, material, place)| {
        std::iter::once(name).chain(material).map(move |text| (name.as_str(), text.as_str(), place))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Model, nth};
    use crate::remark::Code;
    use crate::rules::sample;

    #[test]
    fn characters_that_the_font_has_not_are_named_with_their_place() {
        let mut design =
            sample::necklace().changed(|model| model.heading.title = "Ωμέγα и ½ — “Žlutý”".into()).unwrap();
        assert_eq!(check(&design, &Telling::default()), []);
        design = design
            .changed(|model| {
                model.heading.title = "骨 and 珠".into();
                model.beads[nth(0)].name = "骨 bead".into();
            })
            .unwrap();
        let found = check(&design, &Telling::default());
        assert_eq!(sample::codes(&found), [Code::MissingGlyph, Code::MissingGlyph]);
        assert!(
            found[0].headline().contains("in the title") && found[0].headline().contains("骨 (U+9AA8), 珠 (U+73E0)")
        );
        assert_eq!((found[0].place, found[1].place), (None, Some(design.beads[nth(0)].place)));
    }

    #[test]
    fn every_text_that_is_printed_is_looked_at() {
        let mut design = sample::necklace();
        let texts: [fn(&mut Model); 6] = [
            |design| design.heading.notes = Some("珠".into()),
            |design| design.heading.permissions = Some("珠".into()),
            |design| design.beads[nth(0)].material = Some("珠".into()),
            |design| design.cords[nth(0)].name = "珠".into(),
            |design| design.findings[nth(0)].name = "珠".into(),
            |design| design.strands[nth(0)].name = "珠".into(),
        ];
        for (count, text) in texts.into_iter().enumerate() {
            design = design.changed(text).unwrap();
            assert_eq!(check(&design, &Telling::default()).len(), count + 1);
        }
    }
}
