//! What the margin tells.

use super::timing::now_ms;
use crate::editor::Editor;
use crate::memo::Memo;
use crate::worked::Worked;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

/// While a drag goes on, the margin waits until the pointer rests so long.
const REST_MS: f64 = 100.0;

/// Follows `worked` once the drawing has been painted; during a drag, once the pointer rests.
pub fn settled(editor: RwSignal<Editor>, worked: Memo<Arc<Worked>>) -> ReadSignal<Arc<Worked>> {
    let (settled, set) = signal(worked.get_untracked());
    let wait = Rc::new(Wait {
        due_ms: Cell::default(),
        timer: Cell::default(),
        then: move || {
            let now = worked.get_untracked();
            if !settled.with_untracked(|settled| Arc::ptr_eq(settled, &now)) {
                set.set(now);
            }
        },
    });
    Effect::new(move || {
        worked.track();
        let wait = wait.clone();
        if editor.with_untracked(Editor::is_dragging) {
            wait.until(now_ms() + REST_MS);
        } else {
            request_animation_frame(move || wait.until(0.0));
        }
    });
    settled
}

/// Something that is done once a time has come, which changes may put off.
struct Wait<F> {
    due_ms: Cell<f64>,
    timer: Cell<Option<TimeoutHandle>>,
    then: F,
}

impl<F: Fn() + 'static> Wait<F> {
    /// What waits for an earlier time looks again when that has come: to set a timer at each move of a drag is dear.
    fn until(self: Rc<Self>, due_ms: f64) {
        let sooner = due_ms < self.due_ms.replace(due_ms);
        match self.timer.take() {
            Some(timer) if sooner => timer.clear(),
            Some(timer) => return self.timer.set(Some(timer)),
            None => {}
        }
        self.start();
    }

    fn start(self: Rc<Self>) {
        let rest = Duration::from_millis((self.due_ms.get() - now_ms()).max(0.0).ceil() as u64);
        let wait = self.clone();
        let look = move || {
            wait.timer.set(None);
            if wait.due_ms.get() > now_ms() {
                wait.start();
            } else {
                (wait.then)();
            }
        };
        self.timer.set(set_timeout_with_handle(look, rest).ok());
    }
}
