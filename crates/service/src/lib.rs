//! The HTTP API of Combclear. The only crate that knows HTTP.
//!
//! ```text
//! app.rs        App and Clock: what the handlers work with
//! router.rs     every route, registered once with `routes!`; the layers around them
//! document.rs   the OpenAPI document
//! extract.rs    path, query and body, each with its problem when it cannot be read
//! problem/      the one error type; the list of problems; how other errors become one
//! entries.rs    the journal: append, read                 pages.rs    entries and pages as they are sent
//! holdings.rs   which holdings there are, and whether their chains are sound
//! documents.rs  proofs of purchase: attach, list, hand out as they came in
//! file_name.rs  the names under which they are saved
//! colonies.rs   where a colony stands, what is in it, may it be supered
//! course.rs     courses and terms as they are sent
//! apiaries.rs   the same for whole apiaries
//! due.rs        what must or may be done, also as a calendar
//! stock.rs      what is left of each lot
//! register.rs   the legal register: as JSON, CSV, page and PDF, for other programs, and as a pack
//! accept.rs     which form a client prefers
//! leaflets.rs   the rules with their sources
//! laws.rs       what the law asks of a medicine record     retention.rs   until when records must be kept
//! service.rs    health, the document, its page, what to do about a problem
//! host.rs       the names it answers to
//! serve.rs      listening, and at which addresses
//! ```
//!
//! # What it promises
//!
//! - Every answer that is not a success is a problem document (RFC 9457), whoever made it.
//! - What a client sends is read strictly: an unknown field or query parameter is refused, never passed over.
//! - An append goes on when its client hangs up. Sent again under the same id it is recorded once.
//! - The document at `/openapi.json` is made from the routes that are served.
//!
//! # To add an endpoint
//!
//! 1. Write the handler: `verb_resource`, which becomes the operation's id. Take `Path`, `Query` and `JsonText` from
//!    `extract.rs`, also where no query parameter is taken (`Query<Nothing>`), so that unknown ones are refused.
//! 2. Describe it with `#[utoipa::path]`: its first line is the summary, `Problems` stands among the responses.
//! 3. Register it in `router.rs`.
//! 4. Test it in `tests/api`, in the file of its address, and let the document be written anew as that test says.
#![deny(missing_docs)]

mod accept;
mod apiaries;
mod app;
mod colonies;
mod course;
mod document;
mod documents;
mod due;
mod entries;
mod extract;
mod file_name;
mod holdings;
mod host;
mod laws;
mod leaflets;
mod options;
mod pages;
mod problem;
mod register;
mod retention;
mod router;
mod serve;
mod service;
mod stock;

pub use app::{App, Clock};
pub use document::openapi;
pub use router::router;
pub use serve::{NotLoopback, check_address, serve};
