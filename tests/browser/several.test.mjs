// Several elements selected by pointer, finger and box, and what is done with all of them.
import assert from "node:assert/strict";
import { test } from "node:test";
import { drag, fill, move, pen, saved, screen, tap } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** The middle of a row of ties in the demo's left wall. */
const row = (level) => [0.225, level];

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

const heading = (page) => page.getByTestId("element").getByRole("heading").innerText();

/** Levels of the rows that tie the upper left wall. */
async function levels(page) {
  return (await saved(page)).ties.filter((of) => of.shutter === 34 && of.to.end === "shutter").map((of) => of.z_m);
}

async function shiftTap(page, point) {
  await page.keyboard.down("Shift");
  await tap(page, point);
  await page.keyboard.up("Shift");
}

/** A finger that stays in one place. */
async function longPress(page, session, point, then = []) {
  const { x, y } = await screen(page, point);
  const send = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  await send("touchStart", [{ x, y }]);
  await page.getByTestId("menu").waitFor();
  for (const point of then) await send("touchMove", [await screen(page, point)]);
  await send("touchEnd", []);
}

test("Shift, boxes and keys select several; arrows, fields and Delete are for all", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await tap(page, row(2.2));
  await shiftTap(page, row(3.45));
  assert.equal(await heading(page), "2 rows of ties");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Shift+ArrowUp");
  assert.deepEqual((await levels(page)).map((level) => Math.round(level * 1000)), [950, 2255, 3505, 4550]);

  // What they have in common is shown, what differs is left empty, and what is entered holds for both.
  assert.equal(await page.getByTestId("field-level").inputValue(), "");
  const items = page.getByTestId("field-item");
  assert.equal(await items.inputValue(), "TIE20");
  await items.selectOption("TIE15");
  assert.deepEqual((await saved(page)).ties.filter((of) => of.shutter === 34 && of.item === "TIE15").length, 2);

  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Delete");
  assert.deepEqual(await levels(page), [0.95, 4.55]);
  for (let step = 0; step < 4; step += 1) await page.keyboard.press("Control+z");
  assert.deepEqual(await levels(page), [0.95, 2.2, 3.45, 4.55]);

  await drag(page, [-1.2, 1.9], [1.1, 5.2]);
  assert.equal(await heading(page), "3 rows of ties");
  await drag(page, [1.6, 5.2], [-1.2, 1.9]);
  assert.equal(await heading(page), "2 shutters and 4 rows of ties");

  // While the box is drawn the sheet says what it takes.
  await move(page, [-1.2, 1.9]);
  await page.mouse.down();
  const { x, y } = await screen(page, [1.1, 5.2]);
  await page.mouse.move(x, y, { steps: 4 });
  await page.getByTestId("hint").filter({ hasText: "wholly inside" }).waitFor();
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await page.keyboard.press("Control+a");
  const { shutters, ties, openings } = await saved(page);
  assert.match(await heading(page), new RegExp(`^${shutters.length} shutters, ${ties.length} rows of ties, 1 .* ${openings.length} opening$`));
}));

test("Escape backs out to the hand, and the hand selects what it taps", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await tap(page, row(2.2));
  await page.keyboard.press("Escape");
  await page.getByTestId("element").waitFor({ state: "detached" });
  await page.keyboard.press("Escape");
  assert.equal(await page.locator('.pens [data-testid="pen-hand"]').getAttribute("aria-pressed"), "true");
  await tap(page, row(2.2));
  await page.getByTestId("element").waitFor();
}));

test("what can be done here: by right click, menu key and keys alone", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const before = await saved(page);
  const at = await screen(page, row(2.2));
  await page.mouse.click(at.x, at.y, { button: "right" });
  const menu = page.getByTestId("menu");
  await menu.waitFor();
  assert.ok(await menu.getByTestId("menu-duplicate").isVisible());
  await page.keyboard.press("Escape");
  await menu.waitFor({ state: "detached" });
  assert.ok(await page.getByTestId("element").isVisible(), "the selection stays");

  // By keys: the list opens with the focus in it, arrows go through it, Enter does.
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Shift+F10");
  await menu.waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.dataset.testid);
  assert.equal(await focused(), "menu-copy");
  while ((await focused()) !== "menu-duplicate") await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await menu.waitFor({ state: "detached" });
  assert.equal((await saved(page)).ties.length, before.ties.length + 1);

  // It holds nothing up: a press elsewhere closes it and does what it always does.
  await page.mouse.click(at.x, at.y, { button: "right" });
  await menu.waitFor();
  await tap(page, row(4.55));
  await menu.waitFor({ state: "detached" });
  assert.equal(await page.getByTestId("field-level").inputValue(), "4550");
}));

test("a shutter goes to the opposite face and in the mirror, or says why not", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-box").click();
  await page.getByTestId("pen-shutter").click();
  await tap(page, [0, 2]);
  await page.getByTestId("opposite").click();
  assert.equal((await saved(page)).shutters.length, 2);
  await pen(page, "select");
  await tap(page, [-0.2, 1.2]);
  await page.getByTestId("opposite").click();
  await page.getByTestId("message").filter({ hasText: "Shutter S2 is there already" }).waitFor();
  await shiftTap(page, [0.65, 1.2]);
  assert.equal(await heading(page), "2 shutters");
  await page.getByTestId("mirror").click();
  await fill(page, "secondaries-apart", 200);
  const apart = (await saved(page)).shutters.map((of) => of.secondaries.max_m);
  assert.deepEqual(apart, [0.25, 0.25, 0.2, 0.2], "the two new ones are selected");
}));

test("a finger selects several by long presses and by a box", () => withPage(SCREENS.tablet, async ({ page, context }) => {
  await demo(page);
  const session = await context.newCDPSession(page);
  await longPress(page, session, row(3.45));
  for (const { height } of await page.getByTestId("menu").getByRole("menuitem").evaluateAll((all) => all.map((of) => of.getBoundingClientRect().toJSON()))) {
    assert.ok(height >= 44, `${height} px`);
  }
  // Beside the tag of the other.
  await longPress(page, session, [-0.4, 4.55]);
  assert.equal(await heading(page), "2 rows of ties");
  await page.getByTestId("menu-remove").tap();
  assert.deepEqual(await levels(page), [0.95, 2.2]);
  await page.getByTestId("undo").tap();
  await longPress(page, session, [1.6, 6.3], [[1, 5], [-0.9, 1.9]]);
  assert.equal(await heading(page), "2 shutters and 4 rows of ties");
  // A mark that is held adds its element.
  const mark = await page.locator('[data-testid="ratio-S8"] rect').boundingBox();
  const at = { x: mark.x + mark.width / 2, y: mark.y + mark.height / 2 };
  await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [at] });
  await page.getByTestId("menu").waitFor();
  await session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  assert.equal(await heading(page), "3 shutters and 4 rows of ties");
}));
