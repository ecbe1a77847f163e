//! What must be true of every bead's and finding's drawing.
