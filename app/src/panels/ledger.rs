use crate::store::Store;
use falsewright_core::results::{LedgerEntry, LedgerLevel};
use leptos::prelude::*;

/// Greatest part by which a path of loads may fail to close.
const CLOSES: f64 = 1e-3;

/// What comes in and what goes out at each level of the path of loads.
#[component]
pub fn Ledger() -> impl IntoView {
    let store = Store::here();
    let entries = move || store.settled.get().design.results.ledger.iter().cloned().map(entry).collect_view();
    view! {
        <section class="ledger" aria-label="Path of loads" data-testid="ledger">
            <p class="quiet">"From the fresh concrete down to the ground, or across to the ties: each level must pass on what it takes."</p>
            {entries}
        </section>
    }
}

fn entry(entry: LedgerEntry) -> impl IntoView {
    let level = |level: LedgerLevel| {
        view! {
            <tr>
                <td>{level.level}</td>
                <td class="n">{format!("{:.2}", level.into_kn)}</td>
                <td class="n">{format!("{:.2}", level.out_kn)}</td>
            </tr>
        }
    };
    let closes = entry.difference.abs() <= CLOSES;
    view! {
        <table>
            <caption>{format!("{}, {}", entry.pour, entry.case)}</caption>
            <thead><tr><th>"Level"</th><th class="n">"in, kN"</th><th class="n">"out, kN"</th></tr></thead>
            <tbody>{entry.levels.into_iter().map(level).collect_view()}</tbody>
            <tfoot>
                <tr>
                    <td colspan="3" class:fail=!closes>
                        {format!("{} Difference {:.4} %.", if closes { "Closes." } else { "▲ Does not close." }, entry.difference * 100.0)}
                    </td>
                </tr>
            </tfoot>
        </table>
    }
}
