//! From one bead to another, evenly.
//!
//! Of n beads the share of the second one grows from nothing to all: half way through bead i + 1 it is
//! (i + ½) / n, so that the first i beads are to hold i² / (2n) of it. They hold that number rounded: as a running
//! total is kept, nowhere more than half a bead is wanting. The second half is the first one backwards with the
//! two beads changed round, so that both ends look alike and each bead has half of all; of an odd number the middle
//! one is the first bead.

/// Of each place of a fade, whether it has the second bead.
pub fn turns(beads: u32) -> Vec<bool> {
    let held = |first: u32| (u64::from(first).pow(2) + u64::from(beads)) / (2 * u64::from(beads).max(1));
    let half: Vec<bool> = (0..beads / 2).map(|at| held(at + 1) > held(at)).collect();
    let middle = std::iter::repeat_n(false, (beads % 2) as usize);
    let back: Vec<bool> = half.iter().rev().map(|turned| !turned).collect();
    half.into_iter().chain(middle).chain(back).collect()
}

#[cfg(test)]
mod tests {
    use super::turns;

    fn word(beads: u32) -> String {
        turns(beads).into_iter().map(|turned| if turned { 'B' } else { 'A' }).collect()
    }

    #[test]
    fn short_fades_are_what_the_hand_draws() {
        assert_eq!(word(2), "AB");
        assert_eq!(word(5), "AAABB");
        assert_eq!(word(12), "AAABABABABBB");
    }

    #[test]
    fn each_bead_has_half_and_the_ends_mirror_each_other() {
        for beads in 2..400 {
            let row = turns(beads);
            let turned = row.iter().filter(|turned| **turned).count();
            assert_eq!(turned, beads as usize / 2, "{beads}");
            let mirrored = row.iter().zip(row.iter().rev()).filter(|(one, other)| one == other).count();
            assert_eq!(mirrored, beads as usize % 2, "{beads}: only the middle of an odd row meets itself");
        }
    }

    /// The second derivation: the share that is wanted is added up place by place, in floating point.
    #[test]
    fn the_running_total_is_never_off_by_more_than_half_a_bead() {
        for beads in 2..400_u32 {
            let (mut wanted, mut held) = (0.0, 0.0);
            for (at, turned) in (0..beads).zip(turns(beads)) {
                wanted += (f64::from(at) + 0.5) / f64::from(beads);
                held += f64::from(u8::from(turned));
                let odd = if beads % 2 == 1 { 0.5 } else { 0.0 };
                assert!(f64::abs(wanted - held) <= 0.5 + odd + 1e-9, "{at} of {beads}: {wanted} {held}");
            }
        }
    }
}
