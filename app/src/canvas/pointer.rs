//! From events of the browser to the editor's inputs.

use crate::editor::{Button, Key, KeyInput, Modifiers, PointerInput, PointerKind, ScreenPoint, Tool, View, Wheel};
use crate::store::{Phase, Store};
use falsewright_core::scheme::Id;
use gloo_events::{EventListener, EventListenerOptions, EventListenerPhase};
use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent, MouseEvent, MouseEventInit, PointerEvent, SvgElement, WheelEvent};

const LINE_PX: f64 = 16.0;
const LONG_PRESS_MS: u32 = 500;
/// A finger this near to the middle of a mark touches it, px.
const MARK_REACH_PX: f64 = 22.0;
/// As the browser numbers buttons.
const SECOND_BUTTON: i16 = 2;

thread_local! {
    static SPACE_HELD: Cell<bool> = const { Cell::new(false) };
    /// The long press was on a mark: the click that ends it is no tap.
    static MARK_HELD: Cell<bool> = const { Cell::new(false) };
    /// The finger that is down on a mark: once another comes, both are for the drawing.
    static ON_MARK: Cell<Option<PointerInput>> = const { Cell::new(None) };
    /// One finger is down, in its place and not for long.
    static TOUCHING: Cell<bool> = const { Cell::new(false) };
    /// The left upper corner of the view on which a pointer is down, in the window: to ask for it anew at each move of a
    /// drag would make the browser lay out the page twice.
    static CORNER: Cell<Option<ScreenPoint>> = const { Cell::new(None) };
    static LONG_PRESS: RefCell<Option<(Timeout, ScreenPoint)>> = const { RefCell::new(None) };
}

/// Sends pointers and wheel on a view to the editor, for as long as the view is laid out.
pub fn attach(svg: &SvgElement, store: Store, view: View) {
    let mut heard = Vec::new();
    let mut listen = |svg: &SvgElement, name, then: Box<dyn FnMut(&Event)>| heard.push(listen(svg, name, then));
    for (name, phase) in [
        ("pointerdown", Phase::Down),
        ("pointermove", Phase::Move),
        ("pointerup", Phase::Up),
        ("pointercancel", Phase::Cancel),
    ] {
        let target = svg.clone();
        let then = move |event: &Event| {
            if let Some(event) = event.dyn_ref::<PointerEvent>() {
                on_pointer(&target, store, view, phase, event);
            }
        };
        listen(svg, name, Box::new(then));
    }
    let target = svg.clone();
    let on_wheel = move |event: &Event| {
        if let Some(event) = event.dyn_ref::<WheelEvent>() {
            event.prevent_default();
            store.enter(view);
            on_wheel(&target, store, event);
        }
    };
    listen(svg, "wheel", Box::new(on_wheel));
    let target = svg.clone();
    let on_menu = move |event: &Event| {
        event.prevent_default();
        if let Some(event) = event.dyn_ref::<MouseEvent>() {
            on_context_menu(&target, store, view, event);
        }
    };
    listen(svg, "contextmenu", Box::new(on_menu));
    for name in ["gesturestart", "gesturechange", "touchstart"] {
        let hold_off = |event: &Event| {
            if !has_own_action(event) {
                event.prevent_default();
            }
        };
        listen(svg, name, Box::new(hold_off));
    }
    let heard = StoredValue::new_local(heard);
    on_cleanup(move || {
        heard.try_update_value(Vec::clear);
    });
}

/// Whether an event falls on a mark of the drawing that acts by itself.
fn has_own_action(event: &Event) -> bool {
    let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    element.is_some_and(|element| element.closest("[data-own]").ok().flatten().is_some())
}

/// The element that a mark belongs to.
fn own_element(event: &Event) -> Option<Id> {
    let element = event.target()?.dyn_into::<Element>().ok()?.closest("[data-own]").ok().flatten()?;
    element.get_attribute("data-own")?.parse().ok().map(Id)
}

/// Whether it is a finger that asks, as some browsers tell of a long press: it is waited for here already.
fn is_touch(event: &Event) -> bool {
    event.dyn_ref::<PointerEvent>().is_some_and(|event| event.pointer_type() == "touch")
}

/// Listens actively, so that the browser's own scrolling and zooming can be held off.
fn listen(target: &SvgElement, name: &'static str, mut then: Box<dyn FnMut(&Event)>) -> EventListener {
    let options = EventListenerOptions { phase: EventListenerPhase::Bubble, passive: false };
    EventListener::new_with_options(target, name, options, move |event| then(event))
}

/// A right click asks about what is there; the menu key and a long press on a mark about what is selected.
fn on_context_menu(svg: &SvgElement, store: Store, view: View, event: &MouseEvent) {
    if store.peek(|editor| editor.tool()) == Tool::Outline || is_touch(event) {
        return;
    }
    store.enter(view);
    let at = place(svg, f64::from(event.client_x()), f64::from(event.client_y()));
    if event.button() != SECOND_BUTTON {
        store.set_menu(Some(at));
        return;
    }
    if !has_own_action(event) {
        let modifiers = modifiers(false, false);
        let input = PointerInput { id: 0, kind: PointerKind::Mouse, at, button: Button::Main, modifiers };
        store.pointer(view, Phase::Down, input);
        store.hold(at);
        store.pointer(view, Phase::Cancel, input);
    }
    store.set_menu(Some(at));
}

/// Opens the list of what can be done once a finger has stayed in its place.
fn wait_for_long_press(store: Store, at: ScreenPoint) {
    let then = move || {
        TOUCHING.set(false);
        store.hold(at);
    };
    let waiting = Timeout::new(LONG_PRESS_MS, then);
    LONG_PRESS.with_borrow_mut(|long_press| *long_press = Some((waiting, at)));
}

/// A mark that a finger holds adds its element to the selection.
fn wait_on_mark(store: Store, at: ScreenPoint, id: Id) {
    let then = move || {
        MARK_HELD.set(true);
        if !store.has_chosen(id) {
            store.toggle(id);
        }
        store.set_menu(Some(at));
    };
    let waiting = Timeout::new(LONG_PRESS_MS, then);
    LONG_PRESS.with_borrow_mut(|long_press| *long_press = Some((waiting, at)));
}

/// Whether the click now is only the end of a long press on a mark.
pub(super) fn ends_long_press() -> bool {
    MARK_HELD.replace(false)
}

fn forget_long_press() {
    LONG_PRESS.with_borrow_mut(|long_press| *long_press = None);
}

fn on_pointer(svg: &SvgElement, store: Store, view: View, phase: Phase, event: &PointerEvent) {
    let button = match (phase, event.button(), event.buttons()) {
        (Phase::Move, _, 0) => Button::None,
        (Phase::Move, _, buttons) if buttons & 1 != 0 => Button::Main,
        (Phase::Move, _, buttons) if buttons & 4 != 0 => Button::Middle,
        (Phase::Down | Phase::Up | Phase::Cancel, 0 | -1, _) => Button::Main,
        (Phase::Down | Phase::Up | Phase::Cancel, 1, _) => Button::Middle,
        _ => Button::Second,
    };
    let kind = match event.pointer_type().as_str() {
        "touch" => PointerKind::Touch,
        "pen" => PointerKind::Pen,
        _ => PointerKind::Mouse,
    };
    if phase != Phase::Move {
        CORNER.set(None);
    }
    let at = place(svg, f64::from(event.client_x()), f64::from(event.client_y()));
    if phase == Phase::Down {
        CORNER.set(Some(corner(svg)));
    }
    let modifiers = modifiers(event.shift_key(), event.ctrl_key() || event.meta_key());
    let moved = |from: ScreenPoint| from.distance(at) > kind.slop_px();
    let input = PointerInput { id: event.pointer_id(), kind, at, button, modifiers };
    match phase {
        Phase::Down => {
            MARK_HELD.set(false);
            let another = kind == PointerKind::Touch && !event.is_primary();
            if has_own_action(event) && !another {
                if let Some(id) = own_element(event).filter(|_| kind == PointerKind::Touch) {
                    wait_on_mark(store, at, id);
                }
                ON_MARK.set((kind == PointerKind::Touch).then_some(input));
                return;
            }
            if let Some(first) = ON_MARK.take().filter(|_| another) {
                let _ = svg.set_pointer_capture(first.id);
                store.pointer(view, Phase::Down, first);
            }
            let _ = svg.set_pointer_capture(event.pointer_id());
            let _ = svg.focus();
        }
        Phase::Up | Phase::Cancel => {
            ON_MARK.set(None);
            let _ = svg.release_pointer_capture(event.pointer_id());
        }
        Phase::Move => {}
    }
    if phase == Phase::Up && TOUCHING.replace(false) && touches_mark(svg, store, view, event, input) {
        forget_long_press();
        return;
    }
    match phase {
        Phase::Down if kind == PointerKind::Touch && event.is_primary() => {
            TOUCHING.set(true);
            wait_for_long_press(store, at);
        }
        Phase::Move if !LONG_PRESS.with_borrow(|of| of.as_ref().is_some_and(|(_, from)| moved(*from))) => {}
        _ => {
            TOUCHING.set(false);
            forget_long_press();
        }
    }
    if phase == Phase::Move && event.buttons() != 0 {
        store.leave_menu(at, kind.slop_px());
    }
    store.pointer(view, phase, input);
}

/// A tap of a finger beside a mark is for the mark, unless something narrow is under it.
fn touches_mark(svg: &SvgElement, store: Store, view: View, event: &PointerEvent, input: PointerInput) -> bool {
    let worked = store.worked.get_untracked();
    if store.peek(|editor| editor.narrow_under(input.at, &worked.design)) {
        return false;
    }
    let Some(mark) = mark_near(svg, f64::from(event.client_x()), f64::from(event.client_y())) else { return false };
    store.pointer(view, Phase::Cancel, input);
    let options = MouseEventInit::new();
    options.set_bubbles(true);
    MouseEvent::new_with_mouse_event_init_dict("click", &options).is_ok_and(|click| mark.dispatch_event(&click).is_ok())
}

/// The nearest mark whose middle is in a finger's reach.
fn mark_near(svg: &SvgElement, x: f64, y: f64) -> Option<Element> {
    let marks = svg.query_selector_all("[data-own] > rect").ok()?;
    let near = (0..marks.length()).filter_map(|index| {
        let body = marks.get(index)?.dyn_into::<Element>().ok()?;
        let frame = body.get_bounding_client_rect();
        let off = |at: f64, from: f64, size: f64| {
            ((at - from - size / 2.0).abs() - (size / 2.0 - MARK_REACH_PX).max(0.0)).max(0.0)
        };
        let (dx, dy) = (off(x, frame.left(), frame.width()), off(y, frame.top(), frame.height()));
        (dx <= MARK_REACH_PX && dy <= MARK_REACH_PX).then_some((dx.hypot(dy), body.parent_element()?))
    });
    near.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, mark)| mark)
}

fn on_wheel(svg: &SvgElement, store: Store, event: &WheelEvent) {
    // Notches of a mouse wheel zoom; two fingers on a trackpad move the sheet.
    let lines = event.delta_mode() == WheelEvent::DOM_DELTA_LINE;
    let notches = [100.0, 120.0].iter().any(|notch| event.delta_y() % notch == 0.0);
    let zooms = event.delta_x() == 0.0 && event.delta_y() != 0.0 && (lines || notches) && !event.shift_key();
    let unit = if lines { LINE_PX } else { 1.0 };
    let wheel = Wheel {
        at: place(svg, f64::from(event.client_x()), f64::from(event.client_y())),
        dx: event.delta_x() * unit,
        dy: event.delta_y() * unit,
        modifiers: modifiers(event.shift_key(), zooms || event.ctrl_key() || event.meta_key()),
    };
    store.run(|editor| editor.wheel(wheel));
}

fn place(svg: &SvgElement, x: f64, y: f64) -> ScreenPoint {
    let corner = CORNER.get().unwrap_or_else(|| corner(svg));
    ScreenPoint::new(x - corner.x, y - corner.y)
}

fn corner(svg: &SvgElement) -> ScreenPoint {
    let frame = svg.get_bounding_client_rect();
    ScreenPoint::new(frame.left(), frame.top())
}

fn modifiers(shift: bool, control: bool) -> Modifiers {
    Modifiers { shift, control, space: SPACE_HELD.get() }
}

/// Notes whether the space bar is held.
pub fn hold_space(held: bool) {
    SPACE_HELD.set(held);
}

/// The editor's name of a key press; none for keys that it does not know.
pub fn key_input(event: &KeyboardEvent) -> Option<KeyInput> {
    let key = match event.key().as_str() {
        "Escape" => Key::Escape,
        "Enter" => Key::Enter,
        "Delete" => Key::Delete,
        "Backspace" => Key::Backspace,
        "ArrowLeft" => Key::Left,
        "ArrowRight" => Key::Right,
        "ArrowUp" => Key::Up,
        "ArrowDown" => Key::Down,
        "PageDown" => Key::PageDown,
        "PageUp" => Key::PageUp,
        other => {
            let mut letters = other.chars();
            match (letters.next(), letters.next()) {
                (Some(letter), None) => Key::Char(letter),
                _ => return None,
            }
        }
    };
    Some(KeyInput { key, modifiers: modifiers(event.shift_key(), event.ctrl_key() || event.meta_key()) })
}

/// Whether an event comes from a field that takes the keys itself.
pub fn in_field(event: &Event) -> bool {
    let element = event.target().and_then(|target| target.dyn_into::<Element>().ok());
    element.is_some_and(|element| matches!(element.tag_name().as_str(), "INPUT" | "SELECT" | "TEXTAREA"))
}
