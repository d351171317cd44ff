//! Spoonround: who needs a follow-up, why, and by when.
