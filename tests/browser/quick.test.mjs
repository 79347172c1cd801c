// From a blank sheet to a complete scheme in few actions: each touch, stroke and typed value counts as one.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dimensions, drag, pen, saved, settled, sketch, sketchByFinger, tap } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

const MOST_ACTIONS = 25;

for (const name of ["desk", "tablet"]) {
  test(`a whole single-cell scheme in ${MOST_ACTIONS} actions at a ${name}`, () => withPage(SCREENS[name], async ({ page, context }) => {
    let actions = 0;
    const act = async (done) => {
      actions += 1;
      await done;
    };
    const touch = (id) => act(name === "desk" ? page.getByTestId(id).click() : page.getByTestId(id).tap());
    const stroke = (points) => act(name === "desk" ? sketch(page, points) : sketchByFinger(page, context, points));
    const type = async (id, text) => {
      await act(page.getByTestId(id).locator("text").click());
      await page.getByTestId("typing").fill(text);
      await act(page.getByTestId("typing").press("Enter"));
    };

    // A box in a box, sketched; then the sizes that matter are typed.
    await touch("start-outline");
    await stroke([[1, 0.1], [6.1, 0], [6.05, 4.6], [1.05, 4.5], [1.05, 0.15]]);
    await stroke([[1.5, 0.55], [5.6, 0.5], [5.55, 4.05], [1.45, 4.1], [1.5, 0.6]]);
    const clear = async (across) => {
      const chain = (await dimensions(page)).filter((one) => one.id.startsWith("dimension-edges-") && one.across === across);
      return chain.sort((a, b) => b.value - a.value)[0].id;
    };
    await type(await clear(true), "4.2 m");
    await type(await clear(false), "3,3+0.3");

    await touch("pen-joint");
    await act(tap(page, [3, (await floor(page)) + 0.15]));
    await touch("pen-shutter");
    await touch("all-outer");
    await touch("all-inner");
    await touch("pen-ties");
    await touch("hold-all");
    await touch("pen-legs");
    await act(tap(page, [3.5, 3]));
    await touch("pen-opening");
    const middle = await middleOfCell(page);
    await act(drag(page, [middle - 1, 1.6], [middle + 1, 1.6]));

    assert.ok(actions <= MOST_ACTIONS, `${actions} actions`);
    const scheme = await saved(page);
    const [cell] = scheme.section.cells;
    const size = (of) => {
      const values = cell.corners.map((corner) => corner[of]);
      return Math.max(...values) - Math.min(...values);
    };
    assert.ok(Math.abs(size("x_m") - 4.2) < 1e-9 && Math.abs(size("z_m") - 3.6) < 1e-9, `${size("x_m")} by ${size("z_m")}`);
    assert.equal(scheme.section.cells.length, 1);
    assert.equal(scheme.section.joints.length, 1);
    assert.equal(scheme.shutters.length, 8);
    for (const { id } of scheme.shutters) {
      assert.ok(scheme.ties.some((row) => row.shutter === id || row.to.id === id), `shutter ${id} is not held`);
    }
    assert.equal(scheme.falsework.length, 1);
    assert.equal(scheme.openings.length, 1);
    assert.ok(Math.abs(scheme.ground.level_m - Math.min(...scheme.section.outline.map((corner) => corner.z_m))) < 1e-9);
    // What is offered is sound as it stands.
    await settled(page);
    assert.deepEqual(await page.locator("[data-testid=notes] .fail").allInnerTexts(), []);
  }));
}

async function middleOfCell(page) {
  const [cell] = (await saved(page)).section.cells;
  const places = cell.corners.map((corner) => corner.x_m);
  return (Math.min(...places) + Math.max(...places)) / 2;
}

/** Level of the floor of the cell. */
async function floor(page) {
  const [cell] = (await saved(page)).section.cells;
  return Math.min(...cell.corners.map((corner) => corner.z_m));
}
