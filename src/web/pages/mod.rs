//! The pages, one file a family. A handler reads the request, calls one use case and shows one view.

pub mod assets;
pub mod home;
pub mod language;
pub mod password;
pub mod round;
pub mod sign_in;
