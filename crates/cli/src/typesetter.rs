//! The typesetter, if this program was built with it.

use std::sync::Arc;

use combclear_papers::Typesetter;

/// The built-in typesetter.
#[cfg(feature = "pdf")]
#[expect(clippy::unnecessary_wraps, reason = "a program that was built without the typesetter has none")]
pub(crate) fn built_in() -> Option<Arc<dyn Typesetter>> {
    Some(Arc::new(combclear_pdf::BuiltIn))
}

/// None: built without the feature `pdf`.
#[cfg(not(feature = "pdf"))]
pub(crate) fn built_in() -> Option<Arc<dyn Typesetter>> {
    None
}
