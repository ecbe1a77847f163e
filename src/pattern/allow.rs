//! Remarks that a pattern silences where they are meant: `allow: [last-pack]` on the piece or a strand.

use crate::remark::said::language::Language;
use crate::remark::{Level, Remark};
use crate::source::{At, Place};

use super::model::Pattern;
use super::values::Allowed;

/// An entry of `allow:` and where it holds: in a strand, or everywhere.
struct Permit {
    allowed: At<Allowed>,
    within: Option<Place>,
}

impl Permit {
    fn silences(&self, remark: &Remark) -> bool {
        let inside = |strand: Place| remark.place.is_some_and(|place| strand.holds(place));
        remark.code() == self.allowed.value.0 && remark.level() != Level::Error && self.within.is_none_or(inside)
    }

    fn idle(self) -> Remark {
        Remark::new(Language::IdleAllow { code: self.allowed.value.0 }).at(self.allowed.place)
    }
}

impl Pattern {
    fn permits(&self) -> Vec<Permit> {
        let permit = |within| move |allowed: &At<Allowed>| Permit { allowed: allowed.clone(), within };
        let strands = self.strands.value.iter();
        let of_strands = strands.flat_map(|at| at.value.allow.iter().flatten().map(permit(Some(at.place))));
        self.allow.iter().flatten().map(permit(None)).chain(of_strands).collect()
    }

    /// The remarks that the pattern does not silence.
    #[must_use]
    pub fn unsilenced(&self, remarks: Vec<Remark>) -> Vec<Remark> {
        let permits = self.permits();
        remarks.into_iter().filter(|remark| !permits.iter().any(|permit| permit.silences(remark))).collect()
    }

    /// A remark for each entry of `allow:` that silences none of these remarks.
    #[must_use]
    pub fn idle_allows(&self, remarks: &[Remark]) -> Vec<Remark> {
        let idle = |permit: &Permit| !remarks.iter().any(|remark| permit.silences(remark));
        self.permits().into_iter().filter(idle).map(Permit::idle).collect()
    }
}
