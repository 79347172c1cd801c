use super::unfolding;
use crate::language::{t, told};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::cutting_stock::{Bar, Plan};
use falsewright_core::quantities::{CutList, cut_lists};
use falsewright_core::scheme::Stock;
use falsewright_core::scheme::edit::Edit;
use leptos::prelude::*;

/// Stock lengths as they are typed.
#[derive(Clone, PartialEq)]
struct Written {
    stock: Stock,
    timber: String,
    beams: String,
    steel: String,
    tubes: String,
    rods: String,
}

/// What bars are bought in, and how pieces are cut from them.
#[component]
pub fn Cutting() -> impl IntoView {
    let store = Store::here();
    let stock = Memo::new(move |_| store.scheme.with(|scheme| scheme.stock.clone()));
    let put = move |stock| store.edit(Edit::SetStock(stock));
    let whether = Form::new(stock, put);
    let is_asked = Memo::new(move |_| stock.with(Option::is_some));
    let all = Memo::new(move |_| stock.get().into_iter().map(write).collect::<Vec<_>>());
    let form = Form::of_several(all, move |all: Vec<Written>| {
        if let Some(stock) = all.into_iter().next().and_then(|written| read(store, written)) {
            put(Some(stock));
        }
    });
    unfolding::part("cutting", t("Cutting from stock"), move |open| {
        let found = move || stock.get().filter(|_| open.get()).map(|stock| lists(store, &stock));
        view! {
            <div class="fields">
                {whether.toggle("Cut pieces from stock lengths", Option::is_some, |of, wanted| {
                    *of = wanted.then(Stock::default);
                })}
                {move || is_asked.get().then(|| fields(form))}
            </div>
            {move || found()}
        }
        .into_any()
    })
}

fn fields(form: Form<Written>) -> AnyView {
    view! {
        {form.text("Timber lengths", |of| &of.timber, |of, text| of.timber = text)}
        {form.text("Beam lengths", |of| &of.beams, |of, text| of.beams = text)}
        {form.text("Steel lengths", |of| &of.steel, |of, text| of.steel = text)}
        {form.text("Tube lengths", |of| &of.tubes, |of, text| of.tubes = text)}
        {form.text("Tie rod lengths", |of| &of.rods, |of, text| of.rods = text)}
        {form.number("Saw cut", Unit::FINE, |of| of.stock.saw_m, |of, value| of.stock.saw_m = value)}
    }
    .into_any()
}

fn write(stock: Stock) -> Written {
    let lengths = |lengths_m: &[f64]| lengths_m.iter().map(|&m| Unit::M.written(m)).collect::<Vec<_>>().join("; ");
    let [timber, beams, steel, tubes, rods] =
        [&stock.timber_m, &stock.beams_m, &stock.steel_m, &stock.tubes_m, &stock.rods_m].map(|of| lengths(of));
    Written { timber, beams, steel, tubes, rods, stock }
}

/// None, and said so, where a length is none.
fn read(store: Store, written: Written) -> Option<Stock> {
    let lengths = |text: &str| {
        let lengths = text.split(';').map(str::trim).filter(|length| !length.is_empty());
        let all: Option<Vec<f64>> = lengths.map(|length| Unit::M.read(length)).collect();
        if all.is_none() {
            store.tell(Some(say!("“{}” has something else than lengths. Write them such as 3.6; 4.8.", text)));
        }
        all
    };
    Some(Stock {
        timber_m: lengths(&written.timber)?,
        beams_m: lengths(&written.beams)?,
        steel_m: lengths(&written.steel)?,
        tubes_m: lengths(&written.tubes)?,
        rods_m: lengths(&written.rods)?,
        saw_m: written.stock.saw_m,
    })
}

/// How the set of one bay is cut.
pub(super) fn lists(store: Store, stock: &Stock) -> AnyView {
    let worked = store.settled.get();
    let lists = cut_lists(stock, &worked.design.model, &store.catalogue.get());
    view! {
        <table data-testid="cut-lists">
            <thead>
                <tr><th>{t("Bars for one bay's set, and their pieces")}</th><th class="n">{t("Bought")}</th></tr>
            </thead>
            <tbody>{lists.iter().map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn row(CutList { item, plan }: &CutList) -> AnyView {
    let too_long = (!plan.too_long.is_empty()).then(|| {
        let pieces = pieces(&plan.too_long);
        view! { <div class="fails">{say!("▲ Longer than any bar: {}", pieces)}</div> }.into_any()
    });
    let waste = (plan.bought_mm > 0).then(|| view! { <div class="quiet">{waste(plan)}</div> }.into_any());
    let bars = plan.bars.iter().map(|bar| view! { <div>{in_words(bar)}</div> }.into_any()).collect_view();
    view! {
        <tr>
            <td><strong>{told(item)}</strong> {bars} {too_long} {waste}</td>
            <td class="n">{units::quantity(metres(plan.bought_mm), "m", 1)}</td>
        </tr>
    }
    .into_any()
}

/// Such as `4 × 6.000 m: 2 × 2.700 m + 1 × 0.500 m`.
fn in_words(bar: &Bar) -> String {
    format!("{} × {}: {}", bar.count, length(bar.stock_mm), pieces(&bar.pieces))
}

fn pieces(of: &[(u32, u32)]) -> String {
    of.iter().map(|&(mm, count)| format!("{count} × {}", length(mm))).collect::<Vec<_>>().join(" + ")
}

fn waste(plan: &Plan) -> String {
    let part = |mm: u64| units::number(100.0 * mm as f64 / plan.bought_mm as f64, 1);
    let beyond_least_mm = plan.bought_mm.saturating_sub(plan.least_mm);
    if beyond_least_mm == 0 {
        say!("Waste {} %, the least there is", part(plan.waste_mm))
    } else {
        say!("Waste {} %, of which no more than {} % could be saved", part(plan.waste_mm), part(beyond_least_mm))
    }
}

fn length(mm: u32) -> String {
    units::length(metres(mm.into()), false, 3)
}

fn metres(mm: u64) -> f64 {
    mm as f64 / 1e3
}
