//! The list of problems.

use axum::http::StatusCode;
use serde::{Serialize, Serializer};

macro_rules! problems {
    ($($kind:ident = $slug:literal, $status:ident, $title:literal, $what_to_do:literal;)+) => {
        /// A kind of problem. It is written as the path of its page.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(crate) enum ProblemKind {
            $($kind,)+
        }

        impl ProblemKind {
            /// Every kind.
            pub(crate) const ALL: &[ProblemKind] = &[$(ProblemKind::$kind),+];

            /// The last part of its path. Never renamed: clients depend on it.
            pub(crate) const fn slug(self) -> &'static str {
                match self { $(ProblemKind::$kind => $slug,)+ }
            }

            pub(crate) const fn status(self) -> StatusCode {
                match self { $(ProblemKind::$kind => StatusCode::$status,)+ }
            }

            pub(crate) const fn title(self) -> &'static str {
                match self { $(ProblemKind::$kind => $title,)+ }
            }

            const fn what_to_do(self) -> &'static str {
                match self { $(ProblemKind::$kind => $what_to_do,)+ }
            }
        }
    };
}

problems! {
    BadParameter = "bad-parameter", BAD_REQUEST, "a part of the address cannot be used",
        "A part of the path or a query parameter is not of its form, is out of its range, or is none that this address \
         takes. `errors` names it and says how to write it. Dates are civil dates like 2026-04-11.";
    MalformedJson = "malformed-json", BAD_REQUEST, "the body is not JSON",
        "The body breaks off or breaks the rules of JSON at the line and column given. Nothing was recorded. Mend it and \
         send it again under the same id.";
    UnreadableBody = "unreadable-body", BAD_REQUEST, "the body cannot be read",
        "The body did not arrive as a whole, or is not UTF-8 text. Nothing was recorded. Send it again under the same id.";
    ForeignHost = "foreign-host", FORBIDDEN, "asked for under another name",
        "Without keys the service answers only under the names of this machine itself: localhost, 127.0.0.1, [::1]. A page \
         from elsewhere that had its own name point here could otherwise read and write the journal.";
    UnknownPath = "unknown-path", NOT_FOUND, "no such path",
        "Nothing is served there. /openapi.json lists every path, /docs shows them. A `/` within a name is not possible; \
         other signs are percent-encoded.";
    UnknownHolding = "unknown-holding", NOT_FOUND, "no such holding",
        "No entry is recorded under this name. GET /holdings lists the names that have entries. Recording a first entry \
         makes a new holding.";
    UnknownEntry = "unknown-entry", NOT_FOUND, "no such entry",
        "The holding has no entry with this id. If you sent it and got no answer, send it again under the same id: it is \
         recorded once. GET /holdings/{holding}/entries lists what is recorded.";
    UnknownDocument = "unknown-document", NOT_FOUND, "no such document",
        "No entry of the holding attaches a document with this hash. GET /holdings/{holding}/documents lists those that are \
         attached.";
    MissingDocument = "missing-document", NOT_FOUND, "the document itself is not kept",
        "An entry attaches the document, but its content is not here: the entry came in without it, or the content was taken \
         away. Send the same file again with PUT under the id of the entry, or import an export that has it.";
    UnknownColony = "unknown-colony", NOT_FOUND, "no such colony",
        "No entry of the holding mentions a colony of this name, or the one that did was struck out. Names are exact, \
         capital letters included. If the colony is there but not in the record, record an entry of kind \
         colony_established.";
    UnknownApiary = "unknown-apiary", NOT_FOUND, "no such apiary",
        "No apiary of this name is recorded. Names are exact, capital letters included. If it is new, record an entry of \
         kind apiary_details.";
    UnknownLeaflet = "unknown-leaflet", NOT_FOUND, "no such leaflet",
        "There is no built-in leaflet of this id for this jurisdiction. GET /leaflets lists those that there are. A \
         medicine without one can be described with terms of its own.";
    UnknownLaw = "unknown-law", NOT_FOUND, "no such law",
        "No law of this jurisdiction is built in. GET /laws lists those that there are; a member state of the Union without \
         one of its own has that of the Union. What the law asks there is not known to this program: ask the authority.";
    UnknownProblem = "unknown-problem", NOT_FOUND, "no such problem",
        "There is no page on a problem of this name. The `type` of a problem document is the address of its page.";
    WrongMethod = "wrong-method", METHOD_NOT_ALLOWED, "wrong method for this path",
        "The path is right, the method is not. The Allow header lists those it takes. Entries are never changed or \
         deleted: record a new entry that names the wrong one in `corrects`.";
    SameIdOtherContent = "same-id-other-content", CONFLICT, "the id is already used for another entry",
        "An entry with this id is recorded, and what was sent differs from it. Nothing was recorded. GET the entry to \
         compare. If this is a new entry, make a new id for it. If the recorded one is wrong, record a new entry that \
         names it in `corrects` and gives the reason.";
    BodyTooLarge = "body-too-large", PAYLOAD_TOO_LARGE, "the body is too large",
        "A body is at most 4 MiB, a document at most 10 MB. Nothing was recorded. Send entries in several batches; scan a \
         document with fewer dots, or photograph it smaller.";
    WrongMediaType = "wrong-media-type", UNSUPPORTED_MEDIA_TYPE, "the body is not declared as JSON",
        "Send the body with the header `Content-Type: application/json`. Nothing was recorded.";
    OtherDocumentType = "other-document-type", UNSUPPORTED_MEDIA_TYPE, "the document is of another type",
        "A document is a PDF, JPEG, PNG or HEIC, as its content shows; neither the name of the file nor the Content-Type \
         counts. If a Content-Type is declared, it is the right one. Nothing was recorded. Attach a scan or a photograph of the \
         paper.";
    UnfitDocument = "unfit-document", UNPROCESSABLE_ENTITY, "the document is not all there",
        "The document is empty, or looks cut off: its end is missing. Nothing was recorded. Copy it anew from where it came \
         from, look whether it opens, and send that under the same id.";
    AlteredDocument = "altered-document", INTERNAL_SERVER_ERROR, "the document was altered",
        "What is kept in its place is not what was attached, so it is not handed out. Bring the journal back from a copy, or \
         import an export from before the change into a new database.";
    UnreadableEntry = "unreadable-entry", UNPROCESSABLE_ENTITY, "the entry does not have the fields of its kind",
        "A field is missing, unknown or of the wrong form. `errors` names each with a JSON pointer. Nothing was recorded. \
         The fields of every kind of entry are in /openapi.json and at /docs.";
    RefusedEntry = "refused-entry", UNPROCESSABLE_ENTITY, "the entry cannot be true",
        "The entry contradicts what is recorded: a removal before the placing, a colony or lot that nobody entered, a day \
         in the future and the like. Nothing was recorded, of a batch neither. `errors` says what contradicts. If the \
         recorded entry is the wrong one, correct that first. A broken rule is no reason for a refusal: record what \
         happened.";
    StoreFailed = "store-failed", INTERNAL_SERVER_ERROR, "the journal cannot be read or written",
        "The database could not do its work; `errors` says how to mend it, the log of the service says more. After a \
         failed append look the entry up by its id, or send it again under the same id: it is recorded once.";
    Internal = "internal", INTERNAL_SERVER_ERROR, "a fault in this program",
        "This is a fault of the program, not of the request. The log of the service says more; look there for the \
         request's x-request-id. An append may be sent again under the same id: it is recorded once.";
    StoreBusy = "store-busy", SERVICE_UNAVAILABLE, "the journal is busy",
        "Somebody else is writing to the journal. Nothing was recorded. Try again in a moment, with the same id.";
    NotReady = "not-ready", SERVICE_UNAVAILABLE, "not ready to answer",
        "The database does not answer. The log of the service says more.";
    Timeout = "timeout", SERVICE_UNAVAILABLE, "it took too long",
        "No answer was ready within 30 seconds. An append goes on all the same: look the entry up by its id, or send it \
         again under the same id. It is recorded once.";
}

impl ProblemKind {
    /// The kind with this slug.
    pub(crate) fn from_slug(slug: &str) -> Option<ProblemKind> {
        ProblemKind::ALL.iter().copied().find(|kind| kind.slug() == slug)
    }

    /// Its page.
    pub(crate) fn page(self) -> String {
        format!("{}\n\nHTTP status {}\n\n{}\n", self.title(), self.status(), self.what_to_do())
    }
}

impl Serialize for ProblemKind {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&format_args!("/problems/{}", self.slug()))
    }
}
