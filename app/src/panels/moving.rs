use super::checks::ChecksOf;
use super::folds::Folds;
use super::unfolding;
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::results::{BayMove, JackLine};
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Moving, Slide};
use leptos::prelude::*;

/// How bays are taken from where they were cast, and what that asks of jacks and rams.
#[component]
pub fn MovedBays() -> impl IntoView {
    let store = Store::here();
    let opened = expect_context::<Folds>().opened;
    let moving = Memo::new(move |_| store.scheme.with(|scheme| scheme.moving));
    let whether = Form::new(moving, move |moving| store.edit(Edit::SetMoving(moving)));
    let form = whether.within();
    let is_moved = Memo::new(move |_| moving.with(Option::is_some));
    let is_slid = Memo::new(move |_| moving.with(|moving| moving.is_some_and(|moving| moving.slide.is_some())));
    let found = move || {
        let worked = store.settled.get();
        let moved = worked.design.results.moved.clone()?;
        let owner = worked.design.model.pours.first()?.id;
        let checks = worked.design.results.checks.iter().filter(|check| check.owner == owner).cloned().collect();
        Some(view! { {table(&moved)} <ChecksOf checks opened/> }.into_any())
    };
    unfolding::part("moving", t("Moving the bay"), move |_| {
        view! {
            <div class="fields">
                {whether.toggle("Bays are lifted by jacks", Option::is_some, |of, wanted| {
                    *of = wanted.then(Moving::default);
                })}
                {move || is_moved.get().then(|| lift(form))}
                {move || is_slid.get().then(|| slide(form))}
            </div>
            {move || found()}
        }
        .into_any()
    })
}

fn lift(form: Form<Moving>) -> AnyView {
    macro_rules! number {
        ($label:expr, $unit:expr, $field:ident) => {
            form.number($label, $unit, |of| of.lift.$field, |of, value| of.lift.$field = value)
        };
        ($label:expr, count $field:ident) => {
            form.count($label, |of| of.lift.$field, |of, count| of.lift.$field = count)
        };
    }
    view! {
        {form.number("Carried with it", Unit::of("kN", 0), |of| of.carried_kn, |of, value| of.carried_kn = value)}
        {number!(key("Lines of jacks"), count lines)}
        {number!(key("Jacks in a line"), count jacks)}
        {number!(key("Outer lines from the edges"), Unit::MM, edge_m)}
        {number!(key("A jack lifts"), Unit::of("kN", 0), jack_kn)}
        {number!(key("Unevenness of jacks"), Unit::NONE, unevenness)}
        {number!(key("Travel of a jack"), Unit::MM, travel_m)}
        {number!(key("Lifted by"), Unit::MM, height_m)}
        {number!(key("Side of its plate"), Unit::MM, plate_m)}
        {number!(key("Below the plate bears"), Unit::of("kPa", 0), allowable_kpa)}
        {form.toggle("Then slid along", |of| of.slide.is_some(), |of, wanted| of.slide = wanted.then(Slide::default))}
    }
    .into_any()
}

fn slide(form: Form<Moving>) -> AnyView {
    macro_rules! number {
        ($label:expr, $unit:expr, $field:ident) => {
            form.number(
                $label,
                $unit,
                |of| slid(of).$field,
                |of, value| of.slide = Some(Slide { $field: value, ..slid(of) }),
            )
        };
    }
    view! {
        {number!(key("Slid by"), Unit::M, distance_m)}
        {number!(key("Rise of its path"), PER_THOUSAND, rise)}
        {number!(key("Friction at the start"), Unit::NONE, start_friction)}
        {number!(key("Friction while sliding"), Unit::NONE, running_friction)}
        {form.count("Rams", |of| slid(of).rams, |of, rams| of.slide = Some(Slide { rams, ..slid(of) }))}
        {number!(key("A ram pushes"), Unit::of("kN", 0), ram_kn)}
        {number!(key("Stroke of a ram"), Unit::MM, stroke_m)}
        {number!(key("Gets on by"), Unit::of("m/h", 2), rate_m_h)}
    }
    .into_any()
}

const PER_THOUSAND: Unit = Unit::scaled("‰", 1e-3, 1);

fn slid(moving: &Moving) -> Slide {
    moving.slide.unwrap_or_default()
}

/// Forces of the jacks, and what sliding takes.
pub(super) fn table(moved: &BayMove) -> impl IntoView + use<> {
    let row = |line: &JackLine| {
        view! {
            <tr>
                <td>{line.mark.clone()}</td>
                <td class="n">{units::length(line.x_m, false, 2)}</td>
                <td class="n">{line.jacks.to_string()}</td>
                <td class="n">{units::amount(line.force_kn, "kN", 0)}</td>
            </tr>
        }
        .into_any()
    };
    let weight = say!(
        "{} lifted, centre of gravity at x = {}. Goes of the jacks: {}.",
        units::quantity(moved.weight_kn, "kN", 0),
        units::length(moved.centre.x, false, 2),
        moved.goes
    );
    let pushed = moved.push.as_ref().map(|push| {
        say!(
            "Pushed with {} at the start and {} after; {} strokes, {} hours.",
            units::quantity(push.start_kn, "kN", 0),
            units::quantity(push.running_kn, "kN", 0),
            push.strokes,
            units::number(push.hours, 1)
        )
    });
    view! {
        <table data-testid="jack-lines">
            <thead>
                <tr>
                    <th>{t("Line")}</th>
                    <th class="n">{t("at x")}</th>
                    <th class="n">{t("jacks")}</th>
                    <th class="n">{format!("{}, {}", t("each"), units::unit("kN"))}</th>
                </tr>
            </thead>
            <tbody>{moved.lines.iter().map(row).collect_view()}</tbody>
        </table>
        <p class="quiet">{weight}</p>
        {pushed.map(|pushed| view! { <p class="quiet">{pushed}</p> }.into_any())}
    }
}
