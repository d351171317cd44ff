//! What a case file may not hold is named with its case and key.
