//! What is said about what cones and covers hide, in English.

use crate::english;
use crate::remark::said::hidden::Hidden;

/// What was found.
pub fn headline(said: &Hidden) -> String {
    match said {
        Hidden::EyeOutside { cone, pin, inside, eye, assumed } => format!(
            "{cone} is {} inside; the eye of {pin}, {}{}, does not go in",
            inside.hundredths(),
            eye.hundredths(),
            english::assumed(*assumed)
        ),
        Hidden::EyePullsOut { cone, pin, tip, eye, assumed } => format!(
            "the tip of {cone} is {} wide; the eye of {pin}, {}{}, pulls out",
            tip.hundredths(),
            eye.hundredths(),
            english::assumed(*assumed)
        ),
        Hidden::EyeTooSmall { pin, loops, open, assumed, needed } => format!(
            "{loops} loops need {} in the eye of {pin}, of which {} are open{}",
            needed.at_least(2),
            open.hundredths(),
            english::assumed(*assumed)
        ),
        Hidden::BeadsInCone { cone, beads, out, needed } => format!(
            "the {beads} beads beside the crimps need {} side by side and do not go into {cone} as far as they should: it \
             comes to stand {} farther out",
            needed.at_least(2),
            out.tenths()
        ),
        Hidden::CrimpsInCone { cone, crimps, inside, depth, needed, .. } => format!(
            "{crimps} crimps side by side need {}; {cone} is {} inside where they begin, {} below its tip",
            needed.at_least(2),
            inside.hundredths(),
            depth.tenths()
        ),
        Hidden::CrimpsShow { cone, out } => {
            format!("the crimps stand out of the mouth of {cone} by {}", out.tenths())
        }
        Hidden::CoverTooShort { cover, crimp, is, needed } => {
            format!("{cover} is {} long and does not hide {crimp}, which is {}", is.hundredths(), needed.hundredths())
        }
        Hidden::CoverTooNarrow { cover, over, inside, broad } => format!(
            "{cover} is {} inside and does not close over {}, {} broad",
            inside.hundredths(),
            over.as_deref().unwrap_or("the knot in it"),
            broad.hundredths()
        ),
    }
}

/// What to change.
pub fn help(said: &Hidden) -> String {
    match said {
        Hidden::EyeOutside { eye, .. } => format!("use a cone of at least {} inside", eye.at_least(2)),
        Hidden::EyePullsOut { eye, .. } => format!("use a cone whose tip is narrower than {}", eye.hundredths()),
        Hidden::EyeTooSmall { needed, .. } => {
            format!("use a pin whose eye is open by {}, or gather the strands on a ring", needed.at_least(2))
        }
        Hidden::BeadsInCone { .. } => {
            "use a wider or shorter cone, or begin and end the strands with smaller beads".to_owned()
        }
        Hidden::CrimpsInCone { broadest, .. } => {
            format!("use crimps of at most {} outside, a wider cone, or one crimp for two strands", broadest.at_most(2))
        }
        Hidden::CrimpsShow { out, .. } => format!("use a cone longer by {}, or shorter loops", out.tenths()),
        Hidden::CoverTooShort { needed, .. } => {
            format!("use a cover of at least {} long, or shorter crimps", needed.at_least(1))
        }
        Hidden::CoverTooNarrow { broad, .. } => {
            format!("use a cover of at least {} inside, or something smaller in it", broad.at_least(2))
        }
    }
}
