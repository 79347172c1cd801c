use crate::language::{key, t, told};
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::decimals::Bound;
use falsewright_core::scheme::{Hinge, Id, Shutter};
use leptos::prelude::*;

/// How hinged shutters swing off their concrete, and of one of them how far it can.
pub fn fields(store: Store, form: Form<Shutter>, one: Option<Id>) -> AnyView {
    macro_rules! number {
        ($label:expr, $unit:expr, $field:ident) => {
            form.number(
                $label,
                $unit,
                |of| hinge(of).$field,
                |of, value| of.hinge = Some(Hinge { $field: value, ..hinge(of) }),
            )
        };
    }
    let reach = move || {
        let worked = store.settled.get();
        let swing = worked.design.results.swings.iter().find(|swing| Some(swing.shutter) == one)?;
        Some(match (swing.clear_deg, &swing.meets) {
            (Some(0.0), Some(meets)) => say!("Cannot swing: {}.", told(meets)),
            (Some(clear), Some(meets)) => {
                say!("Swings clear up to {}, where {}.", units::limit(clear, "°", 1, Bound::Lower), told(meets))
            }
            _ => t("Nothing is in the way of its swing.").to_owned(),
        })
    };
    view! {
        {one.map(|_| view! { <p class="wide" data-testid="swing">{move || reach()}</p> }.into_any())}
        {number!(key("Hinge above the top"), Unit::MM, above_top_m)}
        {number!(key("Hinge off the face"), Unit::MM, off_m)}
        {number!(key("Swung by"), Unit::of("°", 1), angle_deg)}
        {number!(key("Then lowered by"), Unit::MM, drop_m)}
        {number!(key("Gap when swung"), Unit::MM, gap_m)}
        {form.toggle("Falsework out before", |of| hinge(of).falsework_out, |of, out| of.hinge = Some(Hinge { falsework_out: out, ..hinge(of) }))}
    }
    .into_any()
}

fn hinge(shutter: &Shutter) -> Hinge {
    shutter.hinge.unwrap_or_default()
}
