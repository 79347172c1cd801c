use crate::editor::Tool;
use crate::language::{t, told};
use crate::memo::Memo;
use crate::persistence::{kept, open_file, open_text};
use crate::store::Store;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Section, Walls, heron_lane};
use leptos::prelude::*;

const WALLS: Walls = Walls { wall_m: 0.45, roof_m: 0.45, base_m: 0.5, haunch_m: 0.25 };

/// What a blank sheet offers.
#[component]
pub fn Start() -> impl IntoView {
    let store = Store::here();
    let blank = Memo::new(move |_| {
        store.scheme.with(|scheme| scheme.section.outline.is_empty())
            && store.overlay.with(|overlay| overlay.preview.is_empty())
            && store.tool.get() != Tool::Outline
    });
    let section = move |section: fn() -> Section| {
        move |_| {
            store.edit(Edit::SetSection(section()));
            store.fit();
        }
    };
    let shelf = move || {
        let sheets = kept();
        (!sheets.is_empty()).then(|| {
            let sheet = |sheet: crate::persistence::Kept| {
                let label = say!("Earlier sheet of {}", sheet.when);
                let name = label.clone();
                view! { <li><button on:click=move |_| open_text(store, &name, &sheet.text)>{label}</button></li> }
                    .into_any()
            };
            view! {
                <details>
                    <summary>{t("Earlier sheets")}</summary>
                    <ul>{sheets.into_iter().map(sheet).collect_view()}</ul>
                </details>
            }
            .into_any()
        })
    };
    let sheet = move || {
        view! {
            <section class="start" aria-label=t("A new sheet") data-testid="start">
                <h2>{t("A blank sheet")}</h2>
                <p>{t("Draw the concrete section of a culvert, then place shutters, ties, falsework and an opening on it.")}</p>
                <div class="choices">
                    <button data-testid="start-outline" on:click=move |_| store.run(|editor| editor.set_tool(Tool::Outline))>
                        <svg viewBox="0 0 48 32" aria-hidden="true"><path d="M6 28V8l14-4 22 6v18M6 28h20" stroke-dasharray="4 3"/></svg>
                        {t("Draw an outline")}
                    </button>
                    <button data-testid="start-box" on:click=section(|| Section::box_cell(4.0, 3.0, WALLS))>
                        <svg viewBox="0 0 48 32" aria-hidden="true"><path d="M8 3h32v26H8zM13 11l3-3h16l3 3v13H13z"/></svg>
                        {t("Box")}
                    </button>
                    <button data-testid="start-twin" on:click=section(|| Section::twin_box(3.5, 3.0, WALLS, 0.4))>
                        <svg viewBox="0 0 48 32" aria-hidden="true"><path d="M2 5h44v22H2zM6 9h16v14H6zM26 9h16v14H26z"/></svg>
                        {t("Twin box")}
                    </button>
                    <button data-testid="start-trough" on:click=section(|| Section::u_trough(5.0, 3.0, 0.45, 0.5, 0.25))>
                        <svg viewBox="0 0 48 32" aria-hidden="true"><path d="M6 4h5v17l3 3h20l3-3V4h5v25H6z"/></svg>
                        {t("Trough")}
                    </button>
                    <button data-testid="start-portal" on:click=section(|| Section::portal(5.0, 3.0, 0.45, 0.5, 0.25))>
                        <svg viewBox="0 0 48 32" aria-hidden="true"><path d="M6 28V4h36v24h-5V12l-3-3H14l-3 3v16z"/></svg>
                        {t("Portal")}
                    </button>
                    <button
                        class="demo"
                        data-testid="start-demo"
                        on:click=move |_| {
                            match heron_lane() {
                                Ok(scheme) => store.open(scheme),
                                Err(error) => store.tell(Some(told(&error.sentence()))),
                            }
                        }
                    >
                        <svg viewBox="0 0 48 32" aria-hidden="true">
                            <path d="M4 4h40v24H4zM9 12l4-4h22l4 4v12H9zM14 12v12M18 12v12M30 12v12M34 12v12M14 14h20"/>
                        </svg>
                        {t("Heron Lane subway, a worked demo")}
                    </button>
                    <label class="file">
                        <input type="file" data-testid="start-file" on:change=move |event| open_file(store, &event)/>
                        {t("Open a file")}
                    </label>
                </div>
                {move || shelf()}
            </section>
        }.into_any()
    };
    move || blank.get().then(sheet)
}
