//! Remarks as text: full with snippets, short, or JSON.
