//! Browser walks; see the tests in this folder.
