//! The store on PostgreSQL: the same schema, the same answers. Each run starts a server of its own in a temporary folder
//! and stops it at the end. Needs the Debian package `postgresql`; run with `--features postgres-tests`.

mod adopting;
mod cluster;
mod same_answers;
mod same_schema;
