//! Tests of the engine as a whole.
