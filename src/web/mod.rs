//! Requests and answers: the only room that names the web framework.

pub mod extract;
pub mod failure;
pub mod form;
pub mod guard;
pub mod html;
pub mod page_key;
pub mod pages;
pub mod routes;
pub mod secret;
pub mod server;
pub mod session;
pub mod state;
