// The elevation of a shutter and the plan of the falsework: views of the one sheet, by mouse, finger and keys.
import assert from "node:assert/strict";
import { test } from "node:test";
import { drag, dragByFinger, move, saved, tap, typeDimension } from "./desk.mjs";
import { SCREENS, opened, withPage } from "./harness.mjs";

/** Places of the demo: between two primaries of S5, at its second row; a leg line, between two bents. */
const BETWEEN = 3.62;
const ROW = { id: 45, mark: "T4", z: 2.2 };
const LEG_Y = 3.275;

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

async function lay(page, view) {
  await page.getByTestId(`view-${view}`).click();
}

const close = (a, b, by = 0.026) => assert.ok(Math.abs(a - b) <= by, `${a} is not ${b}`);
const drawn = (page, figure) => page.locator(`[data-testid="${figure}"] path`).evaluateAll((all) => all.map((path) => path.getAttribute("d")).join());
const chosen = (page, figure) => page.getByTestId(figure).evaluate((element) => element.classList.contains("selected"));

/** Level of the middle of a figure, on a view where levels go up. */
const level = (page, figure) => page.getByTestId(figure).evaluate((element) => {
  const { y, height } = element.getBBox();
  return y + height / 2;
});

test("a row pulled in the elevation is moved on the section, and the spacing is typed", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await lay(page, "all");
  const { id, mark } = ROW;
  const before = { section: await drawn(page, `tie-${mark}`), elevation: await drawn(page, `elevation-tie-${mark}`) };
  await drag(page, [BETWEEN, ROW.z], [BETWEEN, ROW.z + 0.3], "drawing-elevation");
  const moved = (await saved(page)).ties.find((row) => row.id === id).z_m;
  close(moved, ROW.z + 0.3, 0.051);
  for (const [view, figure] of [["section", `tie-${mark}`], ["elevation", `elevation-tie-${mark}`]]) {
    const now = await drawn(page, figure);
    assert.notEqual(now, before[view], view);
    assert.ok(await chosen(page, figure), `${figure} is selected`);
  }
  close(await level(page, `tie-${mark}`), moved, 1e-3);
  close(await level(page, `elevation-tie-${mark}`), moved, 1e-3);

  // Distance along the bay: one field, on the view that was touched; ties of both shutters follow.
  const spacing = page.getByTestId("elevation-dimension-along-34");
  assert.equal(await spacing.locator("text").textContent(), "10 × 920");
  await typeDimension(page, "elevation-dimension-along-34", "800");
  assert.equal(await spacing.locator("text").textContent(), "12 × 767");
  const { shutters } = await saved(page);
  assert.deepEqual([34, 35].map((id) => shutters.find((shutter) => shutter.id === id).primaries.max_m), [0.8, 0.8]);
  await page.getByTestId("undo").click();
  await page.getByTestId("undo").click();
  assert.equal(await spacing.locator("text").textContent(), "10 × 920");
  assert.equal(await drawn(page, `tie-${mark}`), before.section);

  // The level of a row is typed on either view.
  await typeDimension(page, `elevation-dimension-ties-${id}`, "1300");
  close((await saved(page)).ties.find((row) => row.id === id).z_m, 2.25, 1e-9);
}));

test("leg lines, bents and the way are pulled on the plan", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await lay(page, "plan");
  const before = await saved(page);
  const line = before.falsework[0].leg_lines[0];
  await drag(page, [line.x_m, LEG_Y], [line.x_m + 0.2, LEG_Y], "drawing-plan");
  let scheme = await saved(page);
  close(scheme.falsework[0].leg_lines.find((other) => other.id === line.id).x_m, line.x_m + 0.2, 0.051);
  await page.getByTestId("element").waitFor();
  await typeDimension(page, `plan-dimension-legs-${line.id}`, "2450");
  scheme = await saved(page);
  close(scheme.falsework[0].leg_lines.find((other) => other.id === line.id).x_m, 2.9, 1e-9);

  // Between the first two leg lines there is nothing but the bent.
  const lines = scheme.falsework[0].leg_lines;
  const x = (lines[0].x_m + lines[1].x_m) / 2;
  const bent = scheme.falsework[0].bents.edge_m + 2 * 1.15;
  await drag(page, [x, bent], [x, bent + 0.6], "drawing-plan");
  assert.ok((await saved(page)).falsework[0].bents.max_m > before.falsework[0].bents.max_m);
  await typeDimension(page, `plan-dimension-along-${before.falsework[0].id}`, "1.15");
  assert.equal((await saved(page)).falsework[0].bents.max_m, 1.15);

  const way = scheme.openings[0];
  const right = way.left_m + way.width_m;
  await drag(page, [right, LEG_Y], [right - 0.2, LEG_Y], "drawing-plan");
  const narrower = (await saved(page)).openings[0];
  close(narrower.width_m, way.width_m - 0.2, 0.051);
  await lay(page, "section");
  assert.equal(await page.getByTestId("dimension-opening-width-" + way.id).locator("text").textContent(), String(Math.round(narrower.width_m * 1000)));
}));

test("a tap selects the same element on all views, and the elevation follows", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await lay(page, "all");
  const line = (await saved(page)).falsework[0].leg_lines[1];
  await tap(page, [line.x_m, LEG_Y], "drawing-plan");
  for (const figure of ["leg-L2", "plan-leg-L2"]) assert.ok(await chosen(page, figure), figure);
  await page.locator('[data-testid="ratio-S7"] text').click();
  assert.match(await page.getByTestId("elevation-heading").textContent(), /S7$/);
  for (const figure of ["shutter-S7", "elevation-shutter-S7"]) assert.ok(await chosen(page, figure), figure);
  await page.getByTestId("subject-elevation").selectOption({ label: "Wall shutter S1" });
  assert.match(await page.getByTestId("elevation-heading").textContent(), /S1$/);
  await page.locator('[data-testid="plan-ratio-F1"] text').click();
  assert.ok(await chosen(page, "falsework-F1"));
  // Whatever is hovered on one view is lit on the others.
  await page.keyboard.press("Escape");
  await move(page, [line.x_m, LEG_Y], "drawing-plan");
  const lit = await page.locator(".figure.hovered").evaluateAll((all) => all.map((one) => one.dataset.testid));
  assert.deepEqual(lit, ["leg-L2", "plan-leg-L2"]);
}));

test("a view is taken by keys, named for screen readers, and kept over a reload", () => withPage(SCREENS.desk, async ({ page }) => {
  assert.ok(!(await page.getByTestId("view-plan").isVisible()), "a blank sheet has only its section");
  await demo(page);
  await page.getByTestId("view-section").focus();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  const plan = page.getByRole("application", { name: "Plan of the falsework over the length of a bay" });
  await plan.waitFor();
  assert.equal(await page.getByTestId("view-plan").getAttribute("aria-pressed"), "true");
  assert.equal(await page.getByTestId("drawing").count(), 0, "a view that is not laid out is not drawn");
  // Arrow keys act on what the view shows: sideways moves the line.
  const line = (await saved(page)).falsework[0].leg_lines[0];
  await tap(page, [line.x_m, LEG_Y], "drawing-plan");
  await plan.focus();
  await page.keyboard.press("ArrowRight");
  close((await saved(page)).falsework[0].leg_lines[0].x_m, line.x_m + 0.005, 1e-9);
  await page.waitForFunction(() => /kept|saved/i.test(document.querySelector('[data-testid="saved"]').textContent));
  await page.reload();
  await opened(page);
  await plan.waitFor();
  assert.equal(await page.getByTestId("view-plan").getAttribute("aria-pressed"), "true");
}));

test("pan and zoom of each view are its own", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await lay(page, "all");
  const scales = () => page.locator("svg.drawing > g[transform^=matrix]").evaluateAll((all) => all.map((g) => g.getAttribute("transform")));
  const before = await scales();
  const box = await page.getByTestId("drawing-plan").boundingBox();
  await page.mouse.move(box.x + 100, box.y + 300);
  await page.mouse.wheel(0, -200);
  const after = await scales();
  assert.deepEqual([after[0], after[1]], [before[0], before[1]]);
  assert.notEqual(after[2], before[2]);
  await page.getByTestId("fit").click();
  assert.deepEqual(await scales(), before);
}));

test("fingers work on one view at a time on a tablet", () => withPage(SCREENS.tablet, async ({ page, context }) => {
  await demo(page);
  assert.ok(!(await page.getByTestId("view-all").isVisible()));
  await page.getByTestId("view-elevation").tap();
  const { id } = ROW;
  await dragByFinger(page, context, [BETWEEN, ROW.z], [BETWEEN, ROW.z + 0.3], "drawing-elevation");
  close((await saved(page)).ties.find((row) => row.id === id).z_m, ROW.z + 0.3, 0.051);
  // A tie pulled along the bay spaces them all.
  const now = (await saved(page)).ties.find((row) => row.id === id).z_m;
  await dragByFinger(page, context, [0.4 + 2 * 0.92, now], [0.4 + 2 * 0.92 + 0.5, now], "drawing-elevation");
  assert.ok((await saved(page)).shutters.find((shutter) => shutter.id === 34).primaries.max_m > 1);
  await page.getByTestId("view-plan").tap();
  const line = (await saved(page)).falsework[0].leg_lines[2];
  await dragByFinger(page, context, [line.x_m, LEG_Y], [line.x_m + 0.2, LEG_Y], "drawing-plan");
  close((await saved(page)).falsework[0].leg_lines[2].x_m, line.x_m + 0.2, 0.051);
  // A finger where there is nothing moves the sheet.
  const before = await page.locator("svg.drawing > g[transform^=matrix]").getAttribute("transform");
  await dragByFinger(page, context, [9.5, 5], [9, 6], "drawing-plan");
  assert.notEqual(await page.locator("svg.drawing > g[transform^=matrix]").getAttribute("transform"), before);
}));
