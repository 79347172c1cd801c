//! The demo computed in WebAssembly gives the very numbers that it gives natively, to the last bit.
#![cfg(target_arch = "wasm32")]

use falsewright_core::catalogue::Catalogue;
use falsewright_core::{Design, design, scheme};
use serde::Serialize;
use serde_json::Value;
use wasm_bindgen_test::wasm_bindgen_test;

/// What the example `scheme` printed natively for the demo.
const NATIVE: &str = include_str!(env!("FALSEWRIGHT_NATIVE_RESULTS", "run this test with `cargo xtask test wasm`"));

#[wasm_bindgen_test]
fn checks_are_the_same() {
    same("checks", &demo().results.checks);
}

#[wasm_bindgen_test]
fn forces_are_the_same() {
    same("ties", &demo().results.ties);
    same("legs", &demo().results.legs);
}

#[wasm_bindgen_test]
fn the_ledger_is_the_same() {
    same("ledger", &demo().results.ledger);
}

#[wasm_bindgen_test]
fn quantities_are_the_same() {
    same("quantities", &demo().quantities);
}

fn demo() -> Design {
    design(&scheme::heron_lane().unwrap(), &Catalogue::generic()).unwrap()
}

/// Both sides pass through JSON text, whose numbers are the shortest that stand for exactly one `f64`.
fn same(key: &str, here: &[impl Serialize]) {
    let native: Value = serde_json::from_str(NATIVE).unwrap();
    let native = native[key].as_array().unwrap();
    assert!(!native.is_empty(), "the demo has no {key}");
    assert_eq!(here.len(), native.len(), "number of {key}");
    for (here, native) in here.iter().zip(native) {
        let here: Value = serde_json::from_str(&serde_json::to_string(here).unwrap()).unwrap();
        assert_eq!(&here, native, "one of the {key}");
    }
}
