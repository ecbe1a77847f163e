//! What remarks say, as data: which of all things it is, with its arguments. Only `remark::english` turns it
//! into words.

pub mod article;
pub mod bar;
pub mod buying;
pub mod closing;
pub mod closure;
pub mod fit;
pub mod hang;
pub mod hidden;
pub mod language;
pub mod naming;
pub mod own;
pub mod quantity;
pub mod ring;
pub mod rows;
pub mod selling;
pub mod shaping;
pub mod shelves;
pub mod slip;
pub mod spot;
pub mod stash;
pub mod strand;
pub mod turns;
pub mod variant;
pub mod wanted;
pub mod wearing;
pub mod winding;

use super::Code;

/// What is said, by what it is about.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Said {
    /// About how a pattern is written.
    Language(language::Language),
    /// About shelves.
    Shelving(shelves::Shelving),
    /// About what names mean.
    Naming(naming::Naming),
    /// About beads, cords and findings by themselves.
    Article(article::Article),
    /// About how things are sold, as it is written.
    Selling(selling::Selling),
    /// About the shapes and sizes of findings.
    Shaping(shaping::Shaping),
    /// About what closes a piece, as it is written.
    Closure(closure::Closure),
    /// About strands, their lengths and their lists.
    Strand(strand::Strand),
    /// About what stands where it may not.
    Misplaced(spot::Misplaced),
    /// About rows that are worked out.
    Rows(rows::Rows),
    /// About how often a piece goes round or is twisted, as it is written.
    Turns(turns::Turns),
    /// About sizes, colourways, and whom a piece is made for.
    Variant(variant::Variant),
    /// About how strands hang and lie.
    Hang(hang::Hang),
    /// About packs, prices and lots.
    Buying(buying::Buying),
    /// About what is at hand.
    Stash(stash::Stash),
    /// About whether a piece closes and stays closed.
    Closing(closing::Closing),
    /// About how closed rings go round.
    Ring(ring::Ring),
    /// About bars and what holds several strands.
    Bar(bar::Bar),
    /// About torsades, coils and wraps.
    Winding(winding::Winding),
    /// About whether one thing fits in or on another.
    Fit(fit::Fit),
    /// About what cones and covers hide.
    Hidden(hidden::Hidden),
    /// About who wears a piece, and who reads of it.
    Wearing(wearing::Wearing),
    /// About what festoon itself got wrong.
    Own(own::Own),
}

impl Said {
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::Language(said) => said.code(),
            Self::Shelving(said) => said.code(),
            Self::Naming(said) => said.code(),
            Self::Article(said) => said.code(),
            Self::Selling(said) => said.code(),
            Self::Shaping(said) => said.code(),
            Self::Closure(said) => said.code(),
            Self::Strand(said) => said.code(),
            Self::Misplaced(said) => said.code(),
            Self::Rows(said) => said.code(),
            Self::Turns(said) => said.code(),
            Self::Variant(said) => said.code(),
            Self::Hang(said) => said.code(),
            Self::Buying(said) => said.code(),
            Self::Stash(said) => said.code(),
            Self::Closing(said) => said.code(),
            Self::Ring(said) => said.code(),
            Self::Bar(said) => said.code(),
            Self::Winding(said) => said.code(),
            Self::Fit(said) => said.code(),
            Self::Hidden(said) => said.code(),
            Self::Wearing(said) => said.code(),
            Self::Own(said) => said.code(),
        }
    }
}

impl Said {
    /// The word that is offered for one that is not known; it may be what is written there with a mend.
    #[must_use]
    pub fn meant(&self) -> Option<&str> {
        match self {
            Self::Language(said) => said.meant(),
            Self::Naming(said) => said.meant(),
            Self::Rows(said) => said.meant(),
            Self::Stash(said) => said.meant(),
            _ => None,
        }
    }
}

/// Lets what is about one thing stand for all that may be said.
macro_rules! from {
    ($topic:ident::$of:ident as $variant:ident) => {
        impl From<$topic::$of> for Said {
            fn from(said: $topic::$of) -> Self {
                Self::$variant(said)
            }
        }
    };
}

from!(language::Language as Language);
from!(shelves::Shelving as Shelving);
from!(naming::Naming as Naming);
from!(article::Article as Article);
from!(selling::Selling as Selling);
from!(shaping::Shaping as Shaping);
from!(closure::Closure as Closure);
from!(strand::Strand as Strand);
from!(spot::Misplaced as Misplaced);
from!(rows::Rows as Rows);
from!(turns::Turns as Turns);
from!(variant::Variant as Variant);
from!(hang::Hang as Hang);
from!(buying::Buying as Buying);
from!(stash::Stash as Stash);
from!(closing::Closing as Closing);
from!(ring::Ring as Ring);
from!(bar::Bar as Bar);
from!(winding::Winding as Winding);
from!(fit::Fit as Fit);
from!(hidden::Hidden as Hidden);
from!(wearing::Wearing as Wearing);
from!(own::Own as Own);
