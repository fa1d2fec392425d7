//! The typesetter, if this program was built with it.

use std::sync::Arc;

use combclear_papers::Typesetter;

/// The typesetter that comes with the program.
#[cfg(feature = "pdf")]
pub(crate) fn built_in() -> Option<Arc<dyn Typesetter>> {
    Some(Arc::new(combclear_pdf::BuiltIn))
}

/// None: this program was built without.
#[cfg(not(feature = "pdf"))]
pub(crate) fn built_in() -> Option<Arc<dyn Typesetter>> {
    None
}
