//! What the margin tells.

use crate::editor::Editor;
use crate::memo::Memo;
use crate::worked::Worked;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;

/// While a drag goes on, the margin waits until the pointer rests so long.
const REST: Duration = Duration::from_millis(100);

/// Follows `worked` once the drawing has been painted; during a drag, once the pointer rests.
pub fn settled(editor: RwSignal<Editor>, worked: Memo<Arc<Worked>>) -> ReadSignal<Arc<Worked>> {
    let (settled, set) = signal(worked.get_untracked());
    let waiting: Rc<Cell<Option<TimeoutHandle>>> = Rc::default();
    Effect::new(move || {
        worked.track();
        let waiting = waiting.clone();
        let rest = if editor.with_untracked(Editor::is_dragging) { REST } else { Duration::ZERO };
        request_animation_frame(move || {
            let follow = {
                let waiting = waiting.clone();
                move || {
                    waiting.set(None);
                    set.set(worked.get_untracked());
                }
            };
            if let Some(earlier) = waiting.take() {
                earlier.clear();
            }
            waiting.set(set_timeout_with_handle(follow, rest).ok());
        });
    });
    settled
}
