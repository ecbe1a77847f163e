//! Materials and making steps, from designs made by hand and from generated ones.

#[path = "goods/assorted.rs"]
mod assorted;
#[path = "support/beside.rs"]
mod beside;
#[path = "goods/chart.rs"]
mod chart;
#[path = "goods/cutting.rs"]
mod cutting;
#[path = "support/designs.rs"]
mod designs;
#[path = "goods/kits.rs"]
mod kits;
#[path = "goods/lots.rs"]
mod lots;
#[path = "goods/named.rs"]
mod named;
#[path = "goods/plain.rs"]
mod plain;
#[path = "goods/pooled.rs"]
mod pooled;
#[path = "goods/render.rs"]
mod render;
#[path = "goods/rows.rs"]
mod rows;
#[path = "support/shelved.rs"]
mod shelved;
#[path = "goods/stash.rs"]
mod stash;
#[path = "goods/steps.rs"]
mod steps;
#[path = "goods/tails.rs"]
mod tails;
#[path = "goods/told.rs"]
mod told;
#[path = "goods/worked.rs"]
mod worked;
#[path = "goods/written.rs"]
mod written;
