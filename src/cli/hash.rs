//! Hashes that tell whether a thing is the same as before: FNV-1a with 128 bits (Fowler, Noll, Vo and
//! Eastlake, RFC 9923).

use std::io::{self, Read, Write};
use std::path::Path;

use crate::cli::input;

const BASIS: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;

/// What has been hashed so far.
struct Hash(u128);

impl Write for Hash {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0 = bytes.iter().fold(self.0, |sum, byte| (sum ^ u128::from(*byte)).wrapping_mul(PRIME));
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Hash {
    fn told(&self) -> String {
        format!("{:032x}", self.0)
    }
}

/// A hash of things and their borders.
pub fn hash(things: impl IntoIterator<Item: AsRef<[u8]>>) -> String {
    let mut sum = Hash(BASIS);
    for thing in things {
        // No text holds this byte: 0xff never stands in UTF-8.
        let _ = sum.write(thing.as_ref()).and_then(|_| sum.write(&[0xff]));
    }
    sum.told()
}

/// The hash of a file's bytes alone; none of what is no file, or cannot be read.
pub fn hash_of_file(path: &Path) -> Option<String> {
    let mut sum = Hash(BASIS);
    io::copy(&mut input::ending(path).ok()?.chain(&[0xff_u8][..]), &mut sum).ok()?;
    Some(sum.told())
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    #[test]
    fn things_and_their_borders_are_told_apart() {
        assert_ne!(hash(["ab", "c"]), hash(["a", "bc"]));
        assert_eq!(hash(["ab"]), hash(["ab"]));
        assert_eq!(hash(<[&str; 0]>::default()), "6c62272e07bb014262b821756295c58d");
    }

    /// The sum of "foobar" (RFC 9923, test vectors of the 128-bit FNV-1a; value recalled).
    #[test]
    fn the_sum_is_that_of_the_standard() {
        let mut sum = Hash(BASIS);
        sum.write_all(b"foobar").expect("hashing cannot fail");
        assert_eq!(sum.told(), "343e1662793c64bf6f0d3597ba446f18");
    }

    #[test]
    fn a_file_has_the_hash_of_its_bytes() {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        assert_eq!(hash_of_file(&path), fs::read(&path).ok().map(|bytes| hash([bytes])));
        assert_eq!(hash_of_file(Path::new("/")), None);
    }
}
