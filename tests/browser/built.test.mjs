// What is measured on site takes the place of what is drawn.
import assert from "node:assert/strict";
import { test } from "node:test";
import { fill, saved, tap } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";
import { pull } from "./states.mjs";

test("a width measured on site is the clear way, and is told of where it differs from the drawing", () => withPage(SCREENS.tablet, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  await tap(page, [4.05, 3.0]);
  await page.getByTestId("room").waitFor();
  const guard = (await saved(page)).openings[0].guard_m;
  await fill(page, "width-built", 4000);
  await page.getByTestId("room").getByText("as built").waitFor();
  const width = Math.floor(4000 - 2000 * guard);
  await page.getByTestId("clear").filter({ hasText: `${width} × ` }).waitFor();
  assert.equal((await saved(page)).openings[0].built_width_m, 4);
  await pull(page, "leaf-notes");
  await page.getByTestId("notes").getByText(/forces are those of the drawing/).waitFor();
  await pull(page, "leaf-element");
  // Emptied, the drawing counts again.
  await fill(page, "width-built", "");
  await page.getByTestId("room").getByText("above the floor").waitFor();
  assert.equal((await saved(page)).openings[0].built_width_m, undefined);
}));
