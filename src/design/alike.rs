//! Strands that are strung alike, so that what is said of one holds for all of them.

use super::{Index, Model, Strand};

impl Model {
    /// The indices of the strands, those together that are cut and strung alike, in the order of the first of each.
    #[must_use]
    pub fn alike(&self) -> Vec<Vec<Index<Strand>>> {
        let mut groups: Vec<Vec<Index<Strand>>> = Vec::new();
        for (at, strand) in self.strands.entries() {
            match groups.iter_mut().find(|group| self.strung_alike(&self.strands[group[0]], strand)) {
                Some(group) => group.push(at),
                None => groups.push(vec![at]),
            }
        }
        groups
    }

    /// Whether strands are cut and strung alike. What goes through holes of one thing does not: each has its own.
    fn strung_alike(&self, one: &Strand, other: &Strand) -> bool {
        let cord = |strand: &Strand| (strand.cord, strand.legs, strand.settle, strand.finished, strand.cut());
        let shares = |strand: &Strand| strand.bits().any(|bit| self.shared_bit(bit, strand).is_some());
        cord(one) == cord(other)
            && one.ends == other.ends
            && one.chart == other.chart
            && one.bits().eq(other.bits())
            && !shares(one)
            && !shares(other)
    }
}

#[cfg(test)]
mod tests {
    use crate::design::{Choice, Index};
    use crate::source::Source;

    /// The groups of a piece of three strands, of which the last two have beads and a length.
    fn groups(beads: [&str; 2], length: &str) -> Vec<Vec<usize>> {
        let strand = |name: &str, beads: &str, length: &str| {
            format!("  - {{ name: {name}, cord: wire, length: {length}, ends: crimp, beads: [{beads}] }}\n")
        };
        let text = format!(
            "festoon: 1\ntitle: t\nkind: necklace\nbeads:\n  a: {{ shape: round, size: 6 mm, hole: 1 mm, mass: 0.3 g, \
             colour: '#5d7f5b' }}\ncords:\n  wire: {{ kind: wire, diameter: 0.4 mm, mass: 0.6 g/m }}\nfindings:\n  crimp: \
             {{ kind: crimp, length: 2 mm, outside: 2 mm, inside: 1.3 mm }}\nstrands:\n{}{}{}wear: {{ neck base: 370 mm }}\n",
            strand("one", "20 a", "420 mm"),
            strand("two", beads[0], "420 mm"),
            strand("three", beads[1], length),
        );
        let (piece, remarks) = crate::piece(&Source::new("test.yaml", text), &Choice::default(), None);
        let alike = piece.unwrap_or_else(|| panic!("{remarks:?}")).design.alike();
        alike.into_iter().map(|group| group.into_iter().map(Index::number).collect()).collect()
    }

    #[test]
    fn strands_are_alike_in_their_beads_and_their_length() {
        assert_eq!(groups(["20 a", "20 a"], "420 mm"), [vec![0, 1, 2]]);
        assert_eq!(groups(["21 a", "20 a"], "420 mm"), [vec![0, 2], vec![1]]);
        assert_eq!(groups(["20 a", "20 a"], "430 mm"), [vec![0, 1], vec![2]]);
    }
}
