//! The certificate with which the service encrypts.

use std::path::Path;
use std::sync::Arc;

use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::ServerConfig;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};

/// A certificate and its key.
#[derive(Clone)]
pub struct Certificate {
    pub(crate) acceptor: TlsAcceptor,
}

/// A certificate that cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum BadCertificate {
    /// A file cannot be read, or holds nothing of the kind.
    #[error("`{file}`: {why}")]
    File {
        /// The file.
        file: String,
        /// What is wrong with it.
        why: String,
    },
    /// Certificate and key do not go together.
    #[error("{0}")]
    Apart(String),
}

impl Certificate {
    /// Reads a certificate, with those that vouch for it, and its private key from two PEM files.
    ///
    /// # Errors
    /// A file cannot be read, or the two do not go together.
    pub fn read(certificate: &Path, key: &Path) -> Result<Certificate, BadCertificate> {
        let bad = |file: &Path, why: String| BadCertificate::File { file: file.display().to_string(), why };
        let chain = CertificateDer::pem_file_iter(certificate)
            .and_then(Iterator::collect::<Result<Vec<_>, _>>)
            .map_err(|error| bad(certificate, error.to_string()))?;
        if chain.is_empty() {
            return Err(bad(certificate, "there is no certificate in it".to_owned()));
        }
        let key = PrivateKeyDer::from_pem_file(key).map_err(|error| bad(key, error.to_string()))?;
        let apart = |error: tokio_rustls::rustls::Error| BadCertificate::Apart(error.to_string());
        let config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(apart)?
            .with_no_client_auth()
            .with_single_cert(chain, key)
            .map_err(apart)?;
        Ok(Certificate { acceptor: TlsAcceptor::from(Arc::new(config)) })
    }
}
