use crate::language::key;
use crate::memo::Memo;
use crate::widgets::{Form, Unit};
use falsewright_core::scheme::{Loads, SiteWind, Terrain};
use leptos::prelude::*;

/// What a wind speed is: a gust, or the basic velocity of EN 1991-1-4 in a terrain.
const SPEEDS: &[(Option<Terrain>, &str)] = &[
    (None, key("gust")),
    (Some(Terrain::Sea), key("basic, coast")),
    (Some(Terrain::I), key("basic, flat land, terrain I")),
    (Some(Terrain::II), key("basic, open country, terrain II")),
    (Some(Terrain::III), key("basic, suburb or forest, terrain III")),
    (Some(Terrain::IV), key("basic, town, terrain IV")),
];

/// Fields of wind, plant and warmth, empty where they are not given.
pub fn fields(loads: Memo<Loads>, form: Form<Loads>) -> impl IntoView {
    let given = Memo::new(move |_| loads.with(|loads| loads.wind.map(|wind| wind.terrain.is_some())));
    view! {
        {form.optional("Wind speed", Unit::of("m/s", 1), |of: &Loads| of.wind.map(|wind| wind.basic_speed_m_s), |of, value| {
            let gust = |speed| SiteWind { basic_speed_m_s: speed, ..of.wind.unwrap_or(SiteWind::gust(speed)) };
            of.wind = value.map(gust);
        })}
        {move || given.get().map(|terrain| of_wind(form, terrain))}
        {form.optional("Plant pushes", Unit::of("kN", 1), |of: &Loads| of.plant_kn, |of, value| of.plant_kn = value)}
        {form.optional("Temperature range", Unit::of("K", 0), |of: &Loads| of.temperature_range_k, |of, value| of.temperature_range_k = value)}
    }
}

/// What is asked of a wind that is given; a change after it was taken away does nothing.
fn of_wind(form: Form<Loads>, terrain: bool) -> impl IntoView {
    macro_rules! set {
        ($field:ident) => {
            |of: &mut Loads, value| {
                if let Some(wind) = &mut of.wind {
                    wind.$field = value;
                }
            }
        };
    }
    view! {
        {form.choice("Speed is", SPEEDS, |of: &Loads| of.wind.and_then(|wind| wind.terrain), set!(terrain))}
        {terrain.then(|| form.optional("Stands for", Unit::of("days", 0), |of: &Loads| of.wind.and_then(|wind| wind.stands_days), set!(stands_days)))}
        {form.number("Work stops at", Unit::of("m/s", 1), |of: &Loads| of.wind.map_or(0.0, |wind| wind.working_speed_m_s), set!(working_speed_m_s))}
        {form.optional("Wind coefficient", Unit::of("", 2), |of: &Loads| of.wind.and_then(|wind| wind.force_coefficient), set!(force_coefficient))}
    }
}
