//! What leaflet rules are about, and what people state or confirm.

use serde::{Deserialize, Serialize};

use super::rule_kinds::rule_kinds;

macro_rules! stated {
    (stated) => {
        true
    };
    (confirmed) => {
        false
    };
}

macro_rules! topics {
    ($(
        $(#[$doc:meta])+
        $topic:ident = $text:literal, $known:ident, $number:ident $(per $apart:tt)? { $($fields:tt)* } $(together $together:tt)?
    )+) => {
        /// What a rule speaks of.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        // The derive does not see a word that comes through this macro: it is named by rule, and by hand where it differs.
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum Topic {
            $($(#[$doc])+ #[serde(rename = $text)] $topic,)+
        }

        impl Topic {
            /// Every topic.
            pub const ALL: &[Topic] = &[$(Topic::$topic),+];

            /// The topic as it is written in leaflets.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Topic::$topic => $text,)+ }
            }

            /// Whether a keeper who reads it on a leaflet states its value, since supers depend on it. Other topics are
            /// confirmed.
            #[must_use]
            pub const fn is_stated(self) -> bool {
                match self { $(Topic::$topic => stated!($known),)+ }
            }
        }
    };
}

rule_kinds!(topics);
