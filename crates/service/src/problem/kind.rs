//! The list of problems.

use axum::http::StatusCode;
use combclear_wording::{Label, http};
use serde::{Serialize, Serializer};

use super::label;
use crate::language::words;

macro_rules! problems {
    ($($kind:ident = $slug:literal, $status:ident, $title:expr, $page:expr;)+) => {
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

            /// Its title, and the text of its page.
            const fn labels(self) -> (Label, Label) {
                match self { $(ProblemKind::$kind => ($title, $page),)+ }
            }
        }
    };
}

problems! {
    BadParameter = "bad-parameter", BAD_REQUEST, Label::ProblemBadParameter, Label::ProblemBadParameterPage;
    MalformedJson = "malformed-json", BAD_REQUEST,
        Label::ProblemMalformedJson, Label::ProblemMalformedJsonPage;
    UnreadableBody = "unreadable-body", BAD_REQUEST,
        Label::ProblemUnreadableBody, Label::ProblemUnreadableBodyPage;
    NoKey = "no-key", UNAUTHORIZED, Label::ProblemNoKey, Label::ProblemNoKeyPage;
    EndedKey = "ended-key", UNAUTHORIZED, Label::ProblemEndedKey, Label::ProblemEndedKeyPage;
    NotAllowed = "not-allowed", FORBIDDEN, Label::ProblemNotAllowed, Label::ProblemNotAllowedPage;
    ForeignHolding = "foreign-holding", FORBIDDEN,
        Label::ProblemForeignHolding, Label::ProblemForeignHoldingPage;
    ForeignHost = "foreign-host", FORBIDDEN, Label::ProblemForeignHost, Label::ProblemForeignHostPage;
    UnknownPath = "unknown-path", NOT_FOUND, Label::ProblemUnknownPath, Label::ProblemUnknownPathPage;
    UnknownHolding = "unknown-holding", NOT_FOUND,
        Label::ProblemUnknownHolding, Label::ProblemUnknownHoldingPage;
    UnknownEntry = "unknown-entry", NOT_FOUND, Label::ProblemUnknownEntry, Label::ProblemUnknownEntryPage;
    UnknownDocument = "unknown-document", NOT_FOUND,
        Label::ProblemUnknownDocument, Label::ProblemUnknownDocumentPage;
    MissingDocument = "missing-document", NOT_FOUND,
        Label::ProblemMissingDocument, Label::ProblemMissingDocumentPage;
    UnknownColony = "unknown-colony", NOT_FOUND, Label::ProblemUnknownColony, Label::ProblemUnknownColonyPage;
    UnknownApiary = "unknown-apiary", NOT_FOUND, Label::ProblemUnknownApiary, Label::ProblemUnknownApiaryPage;
    UnknownLot = "unknown-lot", NOT_FOUND, Label::ProblemUnknownLot, Label::ProblemUnknownLotPage;
    UnknownLeaflet = "unknown-leaflet", NOT_FOUND,
        Label::ProblemUnknownLeaflet, Label::ProblemUnknownLeafletPage;
    UnknownLaw = "unknown-law", NOT_FOUND, Label::ProblemUnknownLaw, Label::ProblemUnknownLawPage;
    UnknownProblem = "unknown-problem", NOT_FOUND,
        Label::ProblemUnknownProblem, Label::ProblemUnknownProblemPage;
    WrongMethod = "wrong-method", METHOD_NOT_ALLOWED,
        Label::ProblemWrongMethod, Label::ProblemWrongMethodPage;
    SameIdOtherContent = "same-id-other-content", CONFLICT,
        Label::ProblemSameIdOtherContent, Label::ProblemSameIdOtherContentPage;
    HoldingExists = "holding-exists", CONFLICT,
        Label::ProblemHoldingExists, Label::ProblemHoldingExistsPage;
    StalledBody = "stalled-body", REQUEST_TIMEOUT,
        Label::ProblemStalledBody, Label::ProblemStalledBodyPage;
    BodyTooLarge = "body-too-large", PAYLOAD_TOO_LARGE,
        Label::ProblemBodyTooLarge, Label::ProblemBodyTooLargePage;
    WrongMediaType = "wrong-media-type", UNSUPPORTED_MEDIA_TYPE,
        Label::ProblemWrongMediaType, Label::ProblemWrongMediaTypePage;
    OtherDocumentType = "other-document-type", UNSUPPORTED_MEDIA_TYPE,
        Label::ProblemOtherDocumentType, Label::ProblemOtherDocumentTypePage;
    UnfitDocument = "unfit-document", UNPROCESSABLE_ENTITY,
        Label::ProblemUnfitDocument, Label::ProblemUnfitDocumentPage;
    AlteredDocument = "altered-document", INTERNAL_SERVER_ERROR,
        Label::ProblemAlteredDocument, Label::ProblemAlteredDocumentPage;
    UnreadableEntry = "unreadable-entry", UNPROCESSABLE_ENTITY,
        Label::ProblemUnreadableEntry, Label::ProblemUnreadableEntryPage;
    RefusedEntry = "refused-entry", UNPROCESSABLE_ENTITY,
        Label::ProblemRefusedEntry, Label::ProblemRefusedEntryPage;
    TooManyRequests = "too-many-requests", TOO_MANY_REQUESTS,
        Label::ProblemTooManyRequests, Label::ProblemTooManyRequestsPage;
    StoreFailed = "store-failed", INTERNAL_SERVER_ERROR,
        Label::ProblemStoreFailed, Label::ProblemStoreFailedPage;
    StoreUntrusted = "store-untrusted", INTERNAL_SERVER_ERROR,
        Label::ProblemStoreUntrusted, Label::ProblemStoreUntrustedPage;
    StoreFull = "store-full", INSUFFICIENT_STORAGE, Label::ProblemStoreFull, Label::ProblemStoreFullPage;
    Internal = "internal", INTERNAL_SERVER_ERROR, Label::ProblemInternal, Label::ProblemInternalPage;
    StoreBusy = "store-busy", SERVICE_UNAVAILABLE, Label::ProblemStoreBusy, Label::ProblemStoreBusyPage;
    StoreUnreachable = "store-unreachable", SERVICE_UNAVAILABLE,
        Label::ProblemStoreUnreachable, Label::ProblemStoreUnreachablePage;
    ServiceBusy = "service-busy", SERVICE_UNAVAILABLE,
        Label::ProblemServiceBusy, Label::ProblemServiceBusyPage;
    NotReady = "not-ready", SERVICE_UNAVAILABLE, Label::ProblemNotReady, Label::ProblemNotReadyPage;
    Timeout = "timeout", SERVICE_UNAVAILABLE, Label::ProblemTimeout, Label::ProblemTimeoutPage;
}

impl ProblemKind {
    /// The kind with this slug.
    pub(crate) fn from_slug(slug: &str) -> Option<ProblemKind> {
        ProblemKind::ALL.iter().copied().find(|kind| kind.slug() == slug)
    }

    /// After how many seconds the same request may succeed, if that is a matter of time.
    pub(crate) fn retry_after(self) -> Option<u16> {
        match self {
            ProblemKind::StoreBusy | ProblemKind::TooManyRequests => Some(1),
            ProblemKind::ServiceBusy => Some(2),
            ProblemKind::StoreUnreachable | ProblemKind::NotReady | ProblemKind::Timeout => Some(5),
            _ => None,
        }
    }

    pub(crate) fn title(self) -> &'static str {
        label(self.labels().0)
    }

    /// Its page.
    pub(crate) fn page(self) -> String {
        let status = http::status(words(), &self.status().to_string());
        format!("{}\n\n{status}\n\n{}\n", self.title(), label(self.labels().1))
    }
}

impl Serialize for ProblemKind {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&format_args!("/problems/{}", self.slug()))
    }
}
