//! Requests and answers: the only room that names the web framework.

pub mod html;
pub mod secret;
