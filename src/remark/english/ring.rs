//! What is said about how closed rings go round, in English.

use crate::english;
use crate::remark::said::ring::{Count, Misfit, Remedy, Ring};
use crate::trade::bodies::Site;
use crate::trade::ease::RingFit;
use crate::trade::english::sits;
use crate::units::Length;

/// What was found.
pub fn headline(said: &Ring) -> String {
    match said {
        Ring::Round { misfit, strand, hooked, limb, girth, room, ease, assumed, .. } => format!(
            "the closed ring{}{} measures {} inside; {} of {} with {} of ease{} asks for {}",
            strand.as_ref().map(|name| format!(" of strand {name}")).unwrap_or_default(),
            if *hooked { hooking(*misfit) } else { "" },
            (*girth + *room).tenths(),
            round(*limb),
            girth.tenths(),
            ease.tenths(),
            english::assumed(*assumed),
            (*girth + *ease).tenths()
        ),
        Ring::UnevenRows { strands: [one, other], insides: [wide, narrow] } => format!(
            "strand {one} measures {} inside and strand {other} {}: it stands off beside it",
            wide.tenths(),
            narrow.tenths()
        ),
    }
}

/// What to change.
pub fn help(said: &Ring) -> String {
    match said {
        Ring::Round { misfit, remedy, .. } => remedied(remedy, *misfit),
        Ring::UnevenRows { strands: [one, _], insides: [wide, narrow] } => {
            format!("make strand {one} {} shorter, or allow it: `allow: [uneven-rows]`", (*wide - *narrow).tenths())
        }
    }
}

const fn hooking(misfit: Misfit) -> &'static str {
    if misfit.is_wide() { ", hooked as short as it goes," } else { ", hooked as long as it goes," }
}

const fn round(limb: Site) -> &'static str {
    match limb {
        Site::NeckBase => "a neck, above its base,",
        Site::Wrist => "a wrist",
        Site::Ankle => "an ankle",
    }
}

fn remedied(remedy: &Remedy, misfit: Misfit) -> String {
    match remedy {
        Remedy::Nearest => {
            "as many beads are strung as come nearest, the same count for each `fill`; write the count of \
                            one of them yourself, or another `ease:`"
                .to_owned()
        }
        Remedy::Repeats { count, now, sides, length } => format!(
            "take {} repeats{} instead of {now} (`length: {}`): {}",
            count.times,
            on(*sides),
            length.at_least(1),
            measures(count)
        ),
        Remedy::ShorterList { counts: [one, other], sides } => format!(
            "no whole count of repeats{} fits: {}, {}; repeat a shorter list, or write another `ease:`",
            on(*sides),
            measures(one),
            measures(other)
        ),
        Remedy::Length { by, twisted, fit } => changed(*by, misfit, *twisted, *fit),
    }
}

const fn on(sides: bool) -> &'static str {
    if sides { " on each side" } else { "" }
}

fn measures(count: &Count) -> String {
    format!("{} measure {} inside", count.times, count.inside.tenths())
}

fn changed(by: Length, misfit: Misfit, twisted: bool, fit: Option<RingFit>) -> String {
    let (by, way) = (by.tenths(), if misfit.is_wide() { "shorter" } else { "longer" });
    let what = if twisted {
        format!("the twisted strands {by} {way} (each of them a little more)")
    } else {
        format!("the row {by} {way}")
    };
    let named = fit.map(|fit| format!("; as it is the fit is {}", sits(fit))).unwrap_or_default();
    format!("make {what}, or write another `ease:`{named}")
}
