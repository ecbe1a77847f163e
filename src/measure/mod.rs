//! Measures: the numbers of a resolved and hung piece, as a table to read or JSON for programs.
//!
//! The JSON is a contract that other programs read: x to the right, y up and z towards who looks, in mm, from the
//! strand's first end; angles in degrees from +x, counter-clockwise; `direction` is the unit vector along a bead's hole;
//! masses in grams, tension in newtons. All strands' first ends stand in one frame in which each `hang` has its own,
//! `from_mm`, and each of `clearances` its `at`. Where a bead lies on the neck stands in its `worn`, from the middle of the
//! neck's base, as does the `at` of the piece's `worn.contacts`.
//!
//! How close two neighbouring strands hang is told in `clearances`, and which strands touch on the neck in `worn.contacts`, in
//! the same keys: `least_mm` is less than nothing where they lie in one another, `touching_share` of the first, farther than
//! 25 mm from its ends, touches, and `hardest_n_per_cm` is the hardest push along any 10 mm of it, left open where strands are
//! twisted. `least_at_ends_mm` is of what is strung nearer than 25 mm to an end of either, where strands of one ring or cone have no room to
//! lie side by side; none where nothing of it comes near. On the neck `least_mm` is none where strands touch there alone.
//! Keys are never renamed or removed within a version of the language.

mod table;
mod whole;

use serde::Serialize;

use crate::design::{Bead, Bias, Bit, Design, Entries, Index, Strand, What};
use crate::drape::{Clearance, Drape, Hung, Seat, Waypoint, Worn, on_way};
use crate::geometry::Point3;
use crate::materials::{Order, materials, render};
use crate::pattern::{Kind, VERSION};
use crate::piece::Piece;
use crate::remark::Remark;
use crate::remark::escape::in_json;
use crate::remark::render::{Record, records};
use crate::source::Source;
use crate::units::{Length, UnitStyle};

use whole::whole;
pub use whole::{CoilMeasures, ContactMeasures, LengthRange, PieceMeasures, RingMeasures, TwistMeasures, WornMeasures};

/// The numbers of a piece.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct Measures {
    pub festoon: u32,
    pub title: String,
    pub kind: Kind,
    pub size: Option<String>,
    pub colourway: Option<String>,
    pub strands: Vec<StrandMeasures>,
    pub clearances: Vec<ClearanceMeasures>,
    pub piece: PieceMeasures,
    pub materials: serde_json::Value,
    pub remarks: Vec<Record>,
}

/// The numbers of a strand.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct StrandMeasures {
    pub name: String,
    /// The pin on which all of it hangs, where it has no cord.
    #[serde(skip)]
    pub on_pin: Option<String>,
    pub finished_mm: f64,
    pub beaded_mm: f64,
    pub beaded_spread_mm: f64,
    pub beaded_worst_mm: f64,
    /// What that would be in words, where it is more than half a bead.
    #[serde(skip)]
    pub bias: Option<Bias>,
    /// How many knots are tied among what is strung.
    #[serde(skip)]
    pub knots: u32,
    pub bare_mm: f64,
    /// Cord beyond all bare cord that the beads take up when they are closed to a round.
    pub slack_mm: f64,
    pub cut_mm: f64,
    /// How it lies where strands are twisted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub twist: Option<LayMeasures>,
    /// Cord of that which its knots take up.
    pub in_knots_mm: f64,
    pub mass_g: f64,
    /// How stiff its cord is, E I; left out where that is nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stiffness_n_mm2: Option<f64>,
    /// Which of these numbers are assumed.
    #[serde(skip)]
    pub assumed: Assumptions,
    pub hang: HangMeasures,
    pub beads: Vec<BeadMeasures>,
}

/// Which numbers of a strand follow from what the pattern does not say.
#[derive(Clone, Copy, Debug)]
#[non_exhaustive]
pub struct Assumptions {
    /// How stiff its cord is.
    pub stiffness: bool,
    /// By how much its beads may be off.
    pub tolerances: bool,
    /// What is cut for its ends, or for its knots.
    pub cut: bool,
}

/// How a strand lies in a twist.
#[derive(Debug, Serialize)]
#[non_exhaustive]
pub struct LayMeasures {
    /// From the line round which all lie to its middle, drawn taut.
    pub radius_mm: f64,
    /// How much longer it is than its way.
    pub slack_mm: f64,
    /// How long it must be for the twisted piece to reach as far as the shortest strand is long; none where so many
    /// turns do not go into that.
    pub needed_mm: Option<f64>,
}

/// How a strand hangs.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct HangMeasures {
    /// Where its first end is, from which its beads are told, where clearances are: across, and up.
    pub from_mm: [f64; 2],
    pub span_mm: f64,
    pub drop_mm: f64,
    /// Cord that the beads want where they part, beyond all that lies bare.
    pub lacks_mm: f64,
    pub tension_n: TensionMeasures,
    pub iterations: u32,
    pub residual_mm: f64,
}

/// Tension in a strand.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct TensionMeasures {
    pub first: f64,
    pub lowest: f64,
    pub last: f64,
}

/// Where a bead hangs.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct BeadMeasures {
    pub bead: String,
    pub station_mm: f64,
    pub x_mm: f64,
    pub y_mm: f64,
    /// Towards who looks; nothing but where strands are twisted.
    pub z_mm: f64,
    pub angle_deg: f64,
    /// The unit vector along its hole.
    pub direction: [f64; 3],
    /// On the neck, for what is worn round one and reaches round.
    pub worn: Option<PlaceMeasures>,
}

/// Where a bead lies on the neck, from the middle of its base: x to the right as one looks at its front, y up, z
/// towards who looks.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct PlaceMeasures {
    pub x_mm: f64,
    pub y_mm: f64,
    pub z_mm: f64,
    /// The unit vector along its hole.
    pub direction: [f64; 3],
}

/// How close two strands come.
#[derive(Debug, Serialize)]
#[expect(missing_docs, reason = "the keys are the contract, which the module describes")]
#[non_exhaustive]
pub struct ClearanceMeasures {
    pub between: [String; 2],
    pub least_mm: f64,
    pub at: [f64; 2],
    pub touching_share: f64,
    /// The hardest push along any 10 mm.
    pub hardest_n_per_cm: f64,
    /// The least of what is strung in the first and last 25 mm.
    pub least_at_ends_mm: Option<f64>,
}

impl PlaceMeasures {
    fn new(at: Point3, along: Point3) -> Self {
        Self { x_mm: at.x, y_mm: at.y, z_mm: at.z, direction: along.into() }
    }
}

impl Measures {
    /// Takes a piece's numbers.
    #[must_use]
    pub fn new(piece: &Piece, remarks: &[Remark], source: &Source) -> Self {
        let Piece { design, drape, .. } = piece;
        let hung = design.strands.indices().zip(&drape.strands);
        let needed = design.twist.as_ref().zip(design.untwisted());
        let needed = needed.and_then(|(twist, wanted)| twist.needed(wanted));
        let strand = |(index, hung)| {
            let lay = lay(design, index, needed.as_ref());
            StrandMeasures { twist: lay, ..strand(design, index, hung, OnNeck::of(drape, index)) }
        };
        Self {
            festoon: VERSION,
            title: design.heading.title.clone(),
            kind: design.heading.kind,
            size: design.heading.size.clone(),
            colourway: design.heading.colourway.clone(),
            strands: hung.map(strand).collect(),
            clearances: drape.clearances.iter().map(|clearance| self::clearance(design, clearance)).collect(),
            piece: whole(piece),
            materials: render::array(&materials(design, &Order::default())),
            remarks: records(remarks, source),
        }
    }

    /// The JSON that other programs read.
    #[must_use]
    pub fn json(&self) -> String {
        #[expect(clippy::expect_used, reason = "strings, numbers and lists of them always serialise")]
        let text = serde_json::to_string_pretty(self).expect("plain data serialises");
        in_json(&text) + "\n"
    }

    /// The table for people.
    #[must_use]
    pub fn table(&self, units: UnitStyle) -> String {
        table::table(self, units)
    }
}

/// A strand on its neck.
#[derive(Clone, Copy)]
struct OnNeck<'a> {
    worn: &'a Worn,
    way: &'a [Waypoint],
}

impl<'a> OnNeck<'a> {
    /// None where it is not worn there.
    fn of(drape: &'a Drape, strand: Index<Strand>) -> Option<Self> {
        let worn = drape.worn.as_ref()?;
        Some(Self { worn, way: worn.lines.get(strand)? })
    }
}

fn strand(design: &Design, index: Index<Strand>, hung: &Hung, worn: Option<OnNeck<'_>>) -> StrandMeasures {
    let strand = &design.strands[index];
    StrandMeasures {
        name: strand.name.clone(),
        on_pin: strand.is_on_pin(design).then(|| design.cords[strand.cord].name.clone()),
        finished_mm: strand.finished.value(),
        beaded_mm: strand.beaded().value(),
        beaded_spread_mm: strand.spread(design).value(),
        beaded_worst_mm: strand.worst_spread(design).value(),
        bias: strand.bias(design),
        knots: strand.knots(),
        bare_mm: strand.bare().value(),
        slack_mm: strand.slack.value(),
        cut_mm: strand.cut().value(),
        twist: None,
        in_knots_mm: strand.in_knots().value(),
        mass_g: strand.mass(design).value(),
        stiffness_n_mm2: Some(strand.stiffness(design)).filter(|stiffness| *stiffness > 0.0),
        assumed: Assumptions {
            stiffness: design.cords[strand.cord].stiffness.is_assumed(),
            tolerances: strand.assumes_tolerances(design),
            cut: strand.allowance.is_assumed() || strand.in_knots() > Length::ZERO && strand.take_up.is_assumed(),
        },
        hang: hang(hung),
        beads: hung.seats.iter().flat_map(|seat| beads(design, index, hung, seat, worn)).collect(),
    }
}

/// How a strand lies in the twist, where it is told how long each is to be.
fn lay(design: &Design, index: Index<Strand>, needed: Option<&Entries<Length, Strand>>) -> Option<LayMeasures> {
    let (lay, needed) = (design.twist.as_ref()?.lay(index), needed.map(|needed| needed[index].value()));
    Some(LayMeasures { radius_mm: lay.radius, slack_mm: lay.slack, needed_mm: needed })
}

fn hang(hung: &Hung) -> HangMeasures {
    HangMeasures {
        from_mm: [hung.ends[0].x, hung.ends[0].y],
        span_mm: hung.ends[0].distance(hung.ends[1]),
        drop_mm: hung.drop,
        lacks_mm: hung.lacks,
        tension_n: TensionMeasures { first: hung.tension.first, lowest: hung.tension.lowest, last: hung.tension.last },
        iterations: hung.iterations,
        residual_mm: hung.residual,
    }
}

/// The beads at a seat: one, or all of a branch, one below the other.
fn beads(
    design: &Design,
    strand: Index<Strand>,
    hung: &Hung,
    seat: &Seat,
    worn: Option<OnNeck<'_>>,
) -> Vec<BeadMeasures> {
    let on_neck = worn.and_then(|worn| on_way(worn.way, seat.station));
    let measure = |bead: Index<Bead>, at: Point3, along: Point3, place: Option<PlaceMeasures>| BeadMeasures {
        bead: design.beads[bead].id.clone(),
        station_mm: seat.station,
        x_mm: at.x - hung.ends[0].x,
        y_mm: at.y - hung.ends[0].y,
        z_mm: at.z,
        angle_deg: along.front().angle().to_degrees(),
        direction: along.into(),
        worn: place,
    };
    match &seat.bit(&design.strands[strand]).what {
        What::Bead(bead) => {
            let place = on_neck.map(|(at, along)| PlaceMeasures::new(at, along));
            vec![BeadMeasures {
                angle_deg: seat.angle.to_degrees(),
                ..measure(*bead, seat.below(0.0), seat.along(), place)
            }]
        }
        What::Dangle(dangle) => {
            let down = worn.zip(on_neck).map(|(on, (at, _))| (at, on.worn.hanging(design, dangle, at)));
            let hanging = dangle.bits.iter().zip(dangle.levels(design));
            let bead = |(bit, below): (&Bit, f64)| {
                let place = down.map(|(at, down)| PlaceMeasures::new(at + down * below, down));
                Some(measure(bit.what.bead()?, seat.below(below), seat.down, place))
            };
            hanging.filter_map(bead).collect()
        }
        What::Gap | What::Knot | What::Finding(_) => Vec::new(),
    }
}

fn clearance(design: &Design, clearance: &Clearance) -> ClearanceMeasures {
    ClearanceMeasures {
        between: clearance.between.map(|strand| design.strands[strand].name.clone()),
        least_mm: clearance.least,
        at: [clearance.at.x, clearance.at.y],
        touching_share: clearance.touching,
        hardest_n_per_cm: clearance.hardest,
        least_at_ends_mm: clearance.at_ends,
    }
}

impl Measures {
    /// Totals of beads by id over all strands, in order of first use.
    fn bead_counts(strand: &StrandMeasures) -> Vec<(&str, usize)> {
        let mut counts: Vec<(&str, usize)> = Vec::new();
        for bead in &strand.beads {
            match counts.iter_mut().find(|(id, _)| *id == bead.bead) {
                Some((_, count)) => *count += 1,
                None => counts.push((&bead.bead, 1)),
            }
        }
        counts
    }
}

/// A length in mm, for printing.
const fn mm(value: f64) -> Length {
    Length::mm(value)
}
