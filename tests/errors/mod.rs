//! What is wrong with a file of leaflets or laws, as its author gets to read it.

mod gallery;
mod laws;
mod leaflets;
