use super::form;
use crate::language::{key, t};
use crate::store::Store;
use crate::widgets::{Form, Unit};
use falsewright_core::geometry::Point;
use falsewright_core::layout::takes_shutter;
use falsewright_core::model::FaceKind;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Corner, Cut, FaceRef, Id, Joint, Scheme};
use leptos::prelude::*;

fn find_corner(scheme: &Scheme, id: Id) -> Option<Corner> {
    let section = &scheme.section;
    let cells = section.cells.iter().flat_map(|cell| &cell.corners);
    section.outline.iter().chain(cells).find(|corner| corner.id == id).copied()
}

/// Place of a corner and the legs of its haunch or chamfer.
pub fn corner(store: Store, id: Id) -> Option<AnyView> {
    let (value, place) = form(
        store,
        move |scheme| find_corner(scheme, id),
        move |corner: Corner| Edit::MoveCorner { corner: id, to: Point::new(corner.x_m, corner.z_m) },
    )?;
    let cut = Form::new(value, move |corner: Corner| {
        let cut = corner.cut.filter(|cut| cut.before_m > 0.0 && cut.after_m > 0.0);
        store.edit(Edit::SetCut { corner: id, cut });
    });
    let leg = move |label, get: fn(&Corner) -> f64, set: fn(&mut Corner, f64)| cut.number(label, Unit::MM, get, set);
    Some(
        view! {
            <div class="fields">
                {place.number("x", Unit::SPAN, |corner| corner.x_m, |corner, value| corner.x_m = value)}
                {place.number("Level", Unit::SPAN, |corner| corner.z_m, |corner, value| corner.z_m = value)}
                {leg(key("Leg before"), |corner| corner.cut.map_or(0.0, |cut| cut.before_m), |corner, value| {
                    let after_m = corner.cut.map_or(value, |cut| cut.after_m);
                    corner.cut = Some(Cut { before_m: value, after_m });
                })}
                {leg(key("Leg after"), |corner| corner.cut.map_or(0.0, |cut| cut.after_m), |corner, value| {
                    let before_m = corner.cut.map_or(value, |cut| cut.before_m);
                    corner.cut = Some(Cut { before_m, after_m: value });
                })}
            </div>
        }
        .into_any(),
    )
}

/// Level of a construction joint.
pub fn joint(store: Store, id: Id) -> Option<AnyView> {
    let find = move |scheme: &Scheme| scheme.section.joints.iter().find(|joint| joint.id == id).copied();
    let (_, joint) = form(store, find, |joint: Joint| Edit::MoveJoint { joint: joint.id, z_m: joint.z_m })?;
    let level = joint.number("Level", Unit::SPAN, |joint| joint.z_m, |joint, value| joint.z_m = value);
    Some(view! { <div class="fields">{level}</div> }.into_any())
}

/// What can be placed on a face.
pub fn face(store: Store, of: FaceRef) -> Option<AnyView> {
    let kind = move || {
        let worked = store.settled.get();
        worked.design.model.faces.iter().find(|face| face.of == of).map(|face| face.kind)
    };
    let steep = move || {
        let worked = store.settled.get();
        worked.design.model.faces.iter().any(|face| face.of == of && takes_shutter(face))
    };
    let offer = move || {
        match kind() {
        Some(FaceKind::OuterWall | FaceKind::InnerWall) => view! {
            <p>{t("A wall face.")}</p>
            <button data-testid="add-shutter" on:click=move |_| store.edit(Edit::AddShutter(of))>{t("Put a shutter on it")}</button>
        }
        .into_any(),
        Some(FaceKind::Soffit) => view! {
            <p>{t("A soffit.")}</p>
            <button data-testid="add-falsework" on:click=move |_| store.edit(Edit::AddFalsework(of))>{t("Put falsework under it")}</button>
        }
        .into_any(),
        Some(FaceKind::SlopeUnder) => view! { <p>{t("A slope facing down: formed with the soffit that it adjoins.")}</p> }.into_any(),
        Some(FaceKind::SlopeOver) if steep() => view! {
            <p>{t("A battered wall face: fresh concrete lifts its shutter.")}</p>
            <button data-testid="add-shutter" on:click=move |_| store.edit(Edit::AddShutter(of))>{t("Put a shutter on it")}</button>
        }
        .into_any(),
        Some(FaceKind::SlopeOver) => view! { <p>{t("A slope facing up: fresh concrete lifts a form on it.")}</p> }.into_any(),
        Some(FaceKind::FreeTop) => view! { <p>{t("A free top: it needs no form.")}</p> }.into_any(),
        Some(FaceKind::CastAgainst) => view! { <p>{t("Cast against blinding, ground or earlier concrete.")}</p> }.into_any(),
        None => view! { <p>{t("An edge of the section. Drag it, or type its dimension.")}</p> }.into_any(),
    }
    };
    Some(view! { <div class="fields">{move || offer()}</div> }.into_any())
}
