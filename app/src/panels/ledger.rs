use crate::language::{t, told};
use crate::store::Store;
use crate::units;
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
        <section class="ledger" aria-label=t("Path of loads") data-testid="ledger">
            <p class="quiet">{t("From the fresh concrete down to the ground, or across to the ties: each level must pass on what it takes.")}</p>
            {move || entries()}
        </section>
    }
}

fn entry(entry: LedgerEntry) -> impl IntoView {
    let level = |level: LedgerLevel| {
        view! {
            <tr>
                <td>{t(level.level)}</td>
                <td class="n">{units::amount(level.into_kn, "kN", 2)}</td>
                <td class="n">{units::amount(level.out_kn, "kN", 2)}</td>
            </tr>
        }
        .into_any()
    };
    let closes = entry.difference.abs() <= CLOSES;
    let difference = units::number(entry.difference * 100.0, 4);
    let said = if closes {
        say!("Closes. Difference {} %.", difference)
    } else {
        say!("▲ Does not close. Difference {} %.", difference)
    };
    view! {
        <table>
            <caption>{format!("{}, {}", entry.pour, told(&entry.case))}</caption>
            <thead><tr><th>{t("Level of the path")}</th><th class="n">{format!("{}, {}", t("coming in"), units::unit("kN"))}</th><th class="n">{format!("{}, {}", t("going out"), units::unit("kN"))}</th></tr></thead>
            <tbody>{entry.levels.into_iter().map(level).collect_view()}</tbody>
            <tfoot>
                <tr>
                    <td colspan="3" class:fail=!closes>
                        {said}
                    </td>
                </tr>
            </tfoot>
        </table>
    }
}
