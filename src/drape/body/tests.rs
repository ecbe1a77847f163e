//! What rows take on the neck.

use super::super::on_way;
use super::*;
use crate::design::{Choice, Strand};
use crate::source::Source;

/// Cord that the beads of a strand take where they part on the neck, by how they lie there.
fn takes(design: &Design, strand: &Strand, line: &[Waypoint], starts: &[f64]) -> f64 {
    let chain = Chain::new(design, strand, starts);
    let hinges = Hinges::new(design, strand, &chain);
    let stations = chain.stations();
    let along = |link: usize| on_way(line, 0.5 * (stations[link] + stations[link + 1])).unwrap().1;
    let turn = |link: usize| {
        let [one, other] = [along(link), along(link + 1)];
        libm::atan2(one.cross(other).length(), one.dot(other))
    };
    (0..chain.links.len() - 1).filter_map(|link| Some(hinges.after(link)?.takes(turn(link)))).sum()
}

/// A second derivation of what a maker leaves bare for the round: the piece laid on its neck.
#[test]
fn rows_take_about_as_much_cord_on_the_neck_as_is_left_bare_for_it() {
    for name in ["dune", "eddy", "fathom", "painter", "pierhead", "sea-fret"] {
        let path = format!("{}/patterns/{name}.yaml", env!("CARGO_MANIFEST_DIR"));
        let source = Source::new(name, std::fs::read_to_string(path).unwrap());
        let piece = crate::piece(&source, &Choice::default(), None).0.unwrap();
        let worn = piece.drape.worn.as_ref().unwrap();
        let hung = piece.drape.strands.iter().zip(&worn.lines);
        for (strand, (hung, line)) in piece.design.strands.iter().zip(hung) {
            let (left, takes) = (strand.slack.value(), takes(&piece.design, strand, line, &hung.starts));
            assert!((left - takes).abs() < 0.7, "{name}, {}: {left} is left, {takes} taken", strand.name);
        }
    }
}
