//! What stringing wire is made of, and how stiff that makes it.

use super::Context;
use super::assumed::metre;
use super::stated::Stated;
use super::stock::Wire;
use crate::pattern::{self, CordKind};
use crate::remark::said::article::Article;
use crate::remark::{Remark, near};
use crate::source::At;
use crate::trade::{densities, stiffness};
use crate::units::{Length, Mass};

/// What wire is made of; nothing of other cord, which must not say it.
pub fn of(id: &str, written: &pattern::Cord, context: &mut Context) -> Option<Option<Wire>> {
    if written.kind != CordKind::Wire {
        return context.refuse_if(misplaced(id, written)).map(|()| None);
    }
    let filaments = match &written.filaments {
        Some(count) => Stated::Stated(lay(count, context)?),
        None => Wire::default().filaments,
    };
    let metal = written.material.as_ref();
    if written.stiffness.is_none() {
        metal.iter().for_each(|metal| know(id, metal, context));
    }
    Some(Some(Wire { filaments, metal: metal.map(|metal| metal.value.clone()) }))
}

/// What cord that is no wire says of what only wire has.
fn misplaced(id: &str, written: &pattern::Cord) -> Option<Remark> {
    let filaments = written.filaments.as_ref().map(|at| ("filaments", at.place));
    let (word, place) = filaments.or(written.material.as_ref().map(|at| ("material", at.place)))?;
    Some(Remark::new(Article::OfWire { id: id.to_owned(), kind: written.kind.word(), word }).at(place))
}

/// A number of filaments that lie in a wire.
fn lay(count: &At<pattern::Whole>, context: &mut Context) -> Option<u32> {
    let filaments = count.value.0;
    if stiffness::filaments().any(|known| known == filaments) {
        return Some(filaments);
    }
    let wrong = Article::NoLay { filaments, known: stiffness::filaments().collect() };
    context.refuse(Remark::new(wrong).at(count.place))
}

/// Leaves a remark where it is not known how stiff a metal is.
fn know(id: &str, metal: &At<String>, context: &mut Context) {
    if stiffness::modulus(&metal.value).is_none() {
        let known: Vec<_> = stiffness::names().collect();
        let meant = near(&metal.value, known.iter().copied());
        let told = Article::NoModulus { id: id.to_owned(), metal: metal.value.clone(), known, meant };
        context.remarks.push(Remark::new(told).at(metal.place));
    }
}

/// What a metre of solid wire weighs by its metal, else of steel; of stranded wire nothing, which has air between its filaments.
pub fn solid_mass(wire: &Wire, diameter: Length) -> Option<Mass> {
    let is_solid = wire.filaments == Stated::Stated(1);
    let density = densities::of_wire(wire.metal.as_deref()).filter(|_| is_solid)?;
    Some(metre(diameter, density))
}

/// How stiff a cord is, in N mm², by what it is made of where the pattern does not say it: what turns freely by its links, or
/// keeps a round of its own, must not say.
pub fn stiffness(id: &str, written: &pattern::Cord, made: Stated<f64>, context: &mut Context) -> Option<Stated<f64>> {
    let Some(stated) = &written.stiffness else { return Some(made) };
    let keeps_round = written.kind == CordKind::MemoryWire;
    if !keeps_round && written.kind != CordKind::Chain {
        return Some(Stated::Stated(stated.value.0));
    }
    let wrong = Article::Stiffness { id: id.to_owned(), kind: written.kind.word(), keeps_round };
    context.refuse(Remark::new(wrong).at(stated.place))
}
