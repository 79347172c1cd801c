//! Browsers translate a function of WebAssembly hastily when it is first called, and well once it has run often. So the
//! page works the demo out while it idles, and draws it without showing it: the first drag is then as smooth as later ones.

use crate::canvas::paint::{Shown, scene};
use crate::store::now_ms;
use crate::worked::Worked;
use falsewright_core::catalogue::Catalogue;
use falsewright_core::scheme::{Scheme, heron_lane};
use leptos::prelude::{request_idle_callback, set_timeout};
use std::hint::black_box;
use std::rc::Rc;
use std::time::Duration;

/// As often as is of use.
const RUNS: usize = 20;

/// A slow device takes no more than this.
const ENOUGH_MS: f64 = 300.0;

/// After that the page stands, on a slow device as well.
const BEGINS: Duration = Duration::from_millis(500);

/// Begins when the page stands.
pub fn warm_up() {
    let begin = || {
        if let Ok(demo) = heron_lane() {
            run(Rc::new((demo, Catalogue::generic())), RUNS, ENOUGH_MS);
        }
    };
    set_timeout(begin, BEGINS);
}

/// One run when there is nothing else to do, then the next.
fn run(demo: Rc<(Scheme, Catalogue)>, left: usize, left_ms: f64) {
    request_idle_callback(move || {
        let start_ms = now_ms();
        let (scheme, catalogue) = &*demo;
        let worked = Worked::out(scheme, catalogue);
        black_box(scene(scheme, Some(&worked.design), catalogue, Shown::default()));
        let left_ms = left_ms - (now_ms() - start_ms);
        if left > 1 && left_ms > 0.0 {
            run(demo.clone(), left - 1, left_ms);
        }
    });
}
