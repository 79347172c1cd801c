// Elements copied and pasted as text, by keys and by buttons, on one sheet and between two tabs.
import assert from "node:assert/strict";
import { test } from "node:test";
import { pen, saved, tap } from "./desk.mjs";
import { SCREENS, opened, withPage } from "./harness.mjs";

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

test("all that stands on one sheet is cut and pasted back by keys, as one step each", () => withPage(SCREENS.desk, async ({ page, context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await demo(page);
  const before = await saved(page);
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("Control+x");
  await page.waitForFunction(() => document.querySelectorAll('[data-testid^="ratio-"]').length === 0);
  const text = JSON.parse(await page.evaluate(() => navigator.clipboard.readText()));
  assert.deepEqual([text.falsewright, text.schema, text.shutters.length], ["elements", 1, before.shutters.length]);
  await page.keyboard.press("Control+v");
  await page.locator('[data-testid="ratio-S1"]').waitFor();
  const after = await saved(page);
  assert.deepEqual(after.ties.map((of) => of.z_m), before.ties.map((of) => of.z_m));
  assert.deepEqual(after.falsework[0].leg_lines.map((of) => of.x_m), before.falsework[0].leg_lines.map((of) => of.x_m));
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  assert.deepEqual(await saved(page), before);
  // Other text on the clipboard is told, and in a field it is text.
  await page.evaluate(() => navigator.clipboard.writeText("1 200"));
  await page.keyboard.press("Control+v");
  await page.getByTestId("message").filter({ hasText: "cannot be pasted here" }).waitFor();
  assert.deepEqual(await saved(page), before);
}));

test("a shutter is copied by a button in one tab and pasted by another in a second", () => withPage(SCREENS.desk, async ({ page, context }) => {
  await page.getByTestId("start-box").click();
  await pen(page, "shutter");
  await tap(page, [0, 2]);
  await page.getByTestId("copy").click();
  await page.getByTestId("message").filter({ hasText: "Copied 1 shutter" }).waitFor();
  await page.getByTestId("undo").click();
  // The second tab opens what the first has kept.
  await page.getByText("Saved in this browser").waitFor();
  const second = await context.newPage();
  await second.goto(page.url());
  await opened(second);
  const { x, y } = await second.getByTestId("drawing").boundingBox();
  await second.mouse.click(x + 20, y + 20, { button: "right" });
  await second.getByTestId("menu-paste").click();
  await second.locator('[data-testid="ratio-S1"]').waitFor();
  assert.equal((await saved(second)).shutters.length, 1);
}));
