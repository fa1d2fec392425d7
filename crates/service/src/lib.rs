//! The HTTP API of Combclear. The only crate that knows HTTP.
//!
//! ```text
//! app.rs        App and Clock: the shared state of the handlers
//! router.rs     every route, registered once with `routes!`; the layers around them
//! document.rs   the OpenAPI document                     kinds.rs    entries in it, one schema for each kind
//! examples.rs   worked examples for the document, made from the forms
//! extract.rs    extractors for path, query and body, each with its problem
//! problem/      the one error type; the list of problems; conversion of other errors
//! entries.rs    the journal: append, read                 pages.rs    entries and pages, as sent
//! holdings.rs   the list of holdings, and the verification of their chains
//! documents.rs  proofs of purchase: attach, list, download
//! file_name.rs  their file names
//! colonies.rs   where colonies stand, what is in them, whether they may be supered
//! course.rs     courses and terms, as sent
//! apiaries.rs   the same for whole apiaries
//! due.rs        what must or may be done, as JSON or a calendar
//! stock.rs      what is left of each lot
//! register.rs   the legal register: as JSON, CSV, page and PDF, for other programs, and as a pack
//! accept.rs     the media type that a client prefers
//! leaflets.rs   the rules with their sources             medicines.rs the medicines of a holding
//! laws.rs       the law on medicine records               retention.rs   how long records must be kept
//! metrics.rs    what the operator sees from outside
//! service.rs    health, the document and its page, help on problems
//! access.rs     who may do what, where keys are asked for
//! host.rs       the host names it answers to              origin.rs   the pages elsewhere that may call it
//! freshness.rs  which answers may be kept, and whether a kept one still holds
//! kept.rs       the answers that this process keeps itself
//! doubt.rs      what an answer about today says where the clock is behind the journal
//! body.rs       bodies: how many bytes of them are in memory at a time, and how long they may take
//! work.rs       work that takes long, off the threads that take requests in, and how much of it at a time
//! certificate.rs the certificate with which it encrypts
//! serve.rs      listening, and permitted addresses
//! ```
//!
//! # Guarantees
//!
//! - Every answer that is not a success is a problem document (RFC 9457), whichever layer made it.
//! - Input is read strictly: unknown fields and query parameters are refused.
//! - An append completes even if its client hangs up. Sent again under the same id it is recorded once.
//! - The document at `/openapi.json` is made from the routes that are served.
//!
//! # To add an endpoint
//!
//! 1. Write the handler: `verb_resource`, which becomes the operation's id. Take `Path`, `Query` and `JsonText` from
//!    `extract.rs`; without query parameters take `Query<Nothing>`, so that unknown ones are refused.
//!    What looks at one colony or apiary is asked with `App::ask`; what looks at a whole holding, with `App::report`.
//!    An answer whose day is today unless the query names it is sent with `Doubt`.
//! 2. Describe it with `#[utoipa::path]`: its first line is the summary; list `Problems` among the responses.
//! 3. Register it in `router.rs`.
//! 4. Test it in `tests/api`, in the file of its address, and rewrite the document as that test says.
#![deny(missing_docs)]

mod accept;
mod access;
mod apiaries;
mod app;
mod body;
mod certificate;
mod colonies;
mod document;
mod documents;
mod doubt;
mod due;
mod entries;
mod examples;
mod extract;
mod file_name;
mod flat;
mod forms;
mod freshness;
mod holdings;
mod host;
mod kept;
mod kinds;
mod language;
mod laws;
mod leaflets;
mod medicines;
mod metrics;
mod options;
mod origin;
mod packed;
mod page;
mod pages;
mod problem;
mod register;
mod retention;
mod router;
mod serve;
mod service;
mod stock;
mod visit;
mod work;

pub use access::Rate;
pub use app::{App, Clock};
pub use certificate::{BadCertificate, Certificate};
pub use document::openapi;
pub use origin::{NotAnOrigin, Origin};
pub use router::router;
pub use serve::{NotLoopback, Patience, check_address, serve};
pub use work::Limits;
