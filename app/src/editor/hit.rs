//! What is under a pointer.
