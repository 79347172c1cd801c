use super::unfolding;
use crate::language::{key, t};
use crate::memo::Memo;
use crate::persistence::{Theme, keep_theme, theme};
use crate::widgets::Form;
use leptos::prelude::*;

const THEMES: [(Theme, &str); 4] = [
    (Theme::System, key("As the system")),
    (Theme::Light, key("Light")),
    (Theme::Dark, key("Dark")),
    (Theme::Sunlight, key("Sunlight")),
];

/// How this user likes the page, whatever the scheme; and the keys.
#[component]
pub fn PageSettings() -> impl IntoView {
    let chosen = RwSignal::new(theme());
    let theme = Form::new(Memo::new(move |_| chosen.get()), move |theme| {
        keep_theme(theme);
        chosen.set(theme);
    });
    let row = |(named, does): (&'static str, &'static str)| view! { <dt>{named}</dt> <dd>{does}</dd> }.into_any();
    unfolding::part("page-settings", t("This page: look and keys"), |_| {
        view! {
            <div class="fields">
                {theme.choice(key("Look of the page"), &THEMES, |theme: &Theme| *theme, |theme, value| *theme = value)}
            </div>
            <h3>{t("Keys")}</h3>
            <dl class="worked">{keys().into_iter().map(row).collect_view()}</dl>
        }
        .into_any()
    })
}

/// What keys do.
fn keys() -> [(&'static str, &'static str); 14] {
    [
        ("F6", t("From the drawing to the margin, the title block, the pens")),
        ("V L J S T F O H", t("Take up a pen")),
        ("Arrows", t("Move the cursor; what is selected; the sheet with the hand. Shift: further, Ctrl: finer")),
        ("Space, Enter", t("Press at the cursor")),
        ("Shift Space", t("Take hold at the cursor; arrows pull, Space lets go")),
        ("Page Down, Page Up", t("To the next place for the pen in hand; from mark to mark")),
        ("3.6 Enter", t("A length in the direction of the cursor, or of what is selected")),
        ("450; 500 Enter", t("A point of the outline, across and up")),
        (t("Enter"), t("Closes the outline, keeps what is proposed")),
        ("Delete", t("Removes what is selected")),
        ("Shift F10", t("What can be done")),
        ("Ctrl Z, Ctrl Y", t("Undo, redo")),
        ("Ctrl +, Ctrl −, Ctrl 0", t("Nearer, further, 1 : 50")),
        (t("Escape"), t("Backs out")),
    ]
}
