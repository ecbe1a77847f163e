//! The numbers of a whole piece.

use serde::Serialize;

use crate::design::Design;
use crate::drape::{WornClearance, piece_length};
use crate::pattern::Kind;
use crate::piece::Piece;
use crate::trade::english;
use crate::trade::lengths::length_name;

/// The whole piece.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct PieceMeasures {
    pub finished_mm: LengthRange,
    pub mass_g: f64,
    /// The names of that whose mass is assumed.
    #[serde(skip)]
    pub assumed_masses: Vec<String>,
    /// Where its strands are twisted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub twist: Option<TwistMeasures>,
    pub ring: Option<RingMeasures>,
    pub worn: Option<WornMeasures>,
}

/// A range of lengths.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct LengthRange {
    pub least: f64,
    pub most: f64,
}

/// A torsade.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct TwistMeasures {
    pub turns: f64,
    /// From loop to loop.
    pub length_mm: f64,
    pub thickness_mm: f64,
    /// How steeply the outermost strands run across it.
    pub angle_deg: f64,
    /// The shortest strand before twisting, for which the strands say what they need.
    pub wanted_mm: f64,
}

/// A closed bracelet.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct RingMeasures {
    pub inside_girth_mm: f64,
    /// How it is wound, where it goes round more than once.
    pub coil: Option<CoilMeasures>,
}

/// A piece that goes round more than once.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct CoilMeasures {
    pub turns: f64,
    pub pitch_mm: f64,
}

/// A necklace on its neck.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct WornMeasures {
    pub drop_mm: serde_json::Map<String, serde_json::Value>,
    pub length_name: Option<&'static str>,
    /// The strands that touch there.
    pub contacts: Vec<ContactMeasures>,
}

/// Two strands that touch on the neck.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct ContactMeasures {
    pub between: [String; 2],
    pub least_mm: Option<f64>,
    pub at: Option<[f64; 3]>,
    pub touching_share: f64,
    /// The hardest push along any 10 mm.
    pub hardest_n_per_cm: Option<f64>,
    pub least_at_ends_mm: Option<f64>,
}

pub(super) fn whole(piece: &Piece) -> PieceMeasures {
    let Piece { design, drape, .. } = piece;
    let [least, most] = piece_length(design, drape);
    let worn = drape.worn.as_ref().map(|worn| {
        let names = design.strands.iter().map(|strand| strand.name.clone());
        let drops = worn.drops.iter().map(|drop| (*drop).into());
        let name = (design.heading.kind == Kind::Necklace && design.closure.open().is_none())
            .then(|| length_name(least))
            .flatten();
        WornMeasures {
            drop_mm: names.zip(drops).collect(),
            length_name: name.map(|(name, ..)| english::length_name(name)),
            contacts: worn.clearances.iter().map(|clearance| contact(design, clearance)).collect(),
        }
    });
    PieceMeasures {
        finished_mm: LengthRange { least: least.value(), most: most.value() },
        mass_g: (design.mass() * f64::from(design.copies)).value(),
        assumed_masses: design.assumed_masses().map(str::to_owned).collect(),
        twist: twisted(design),
        ring: drape.ring().map(|ring| RingMeasures {
            inside_girth_mm: ring.inside_girth,
            coil: ring.coil.as_ref().map(|coil| CoilMeasures { turns: coil.turns, pitch_mm: coil.pitch }),
        }),
        worn,
    }
}

fn contact(design: &Design, clearance: &WornClearance) -> ContactMeasures {
    ContactMeasures {
        between: clearance.between.map(|strand| design.strands[strand].name.clone()),
        least_mm: clearance.least.map(|(least, _)| least),
        at: clearance.least.map(|(_, at)| at.into()),
        touching_share: clearance.touching,
        hardest_n_per_cm: clearance.hardest,
        least_at_ends_mm: clearance.at_ends,
    }
}

fn twisted(design: &Design) -> Option<TwistMeasures> {
    let (twist, wanted) = (design.twist.as_ref()?, design.untwisted()?);
    Some(TwistMeasures {
        turns: twist.turns,
        length_mm: twist.length().value(),
        thickness_mm: twist.thickness().value(),
        angle_deg: twist.angle().to_degrees(),
        wanted_mm: wanted.value(),
    })
}
