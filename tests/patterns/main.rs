//! The shipped patterns and the patterns that `festoon new` prints: their numbers, what is true of
//! each of them, what they show together, and the schema that they follow.

mod coverage;
mod properties;
mod reference;
mod schema;
mod shipped;
mod sizes;
