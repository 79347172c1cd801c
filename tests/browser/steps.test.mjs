// The list of steps in the margin: every one kept, gone to by a tap, and still there after a reload.
import assert from "node:assert/strict";
import { test } from "node:test";
import { drag, pen, saved, tap } from "./desk.mjs";
import { SCREENS, opened, withPage } from "./harness.mjs";

const kept = (page) => page.waitForFunction(() => /^saved/i.test(document.querySelector('[data-testid="saved"]').textContent));

for (const name of ["desk", "tablet"]) {
  test(`steps are listed, gone to, and survive a reload on a ${name}`, () => withPage(SCREENS[name], async ({ page }) => {
    await page.getByTestId("start-box").click();
    await pen(page, "shutter");
    await tap(page, [0, 2]);
    await pen(page, "legs");
    await drag(page, [1.5, 2], [2.4, 2]);
    await page.getByTestId("leaf-steps").click();
    const list = page.getByTestId("steps").getByRole("listitem");
    assert.deepEqual(await list.allInnerTexts().then((all) => all.map((text) => text.replace(/\s+/g, " ").trim())),
      ["3 Space leg lines", "2 Add shutter", "1 Draw section", "0 Blank sheet"]);
    const whole = await saved(page);
    await page.getByTestId("step-1").click();
    assert.equal((await saved(page)).shutters.length, 0);
    assert.equal(await list.count(), 4, "what was taken back stays in the list");
    await kept(page);
    await page.reload();
    await opened(page);
    await page.getByTestId("leaf-steps").click();
    assert.equal(await page.locator("[aria-current=step]").getAttribute("data-testid"), "step-1");
    await page.getByTestId("step-3").click();
    assert.deepEqual(await saved(page), whole);
    await page.getByTestId("step-0").click();
    await page.getByTestId("start").waitFor();
    await kept(page);
    await page.reload();
    await opened(page);
    await page.getByTestId("redo").click();
    await page.getByTestId("start").waitFor({ state: "detached" });
  }));
}

test("a hundred and fifty steps are kept, and each arrow key is one", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
  await tap(page, [0.225, 2.2]);
  for (let step = 0; step < 75; step += 1) {
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowDown");
  }
  await page.keyboard.press("Shift+ArrowUp");
  await kept(page);
  await page.reload();
  await opened(page);
  await page.getByTestId("leaf-steps").click();
  assert.equal(await page.getByTestId("steps").getByRole("listitem").count(), 153);
  await page.getByTestId("step-1").click();
  const level = async () => (await saved(page)).ties.find((of) => of.id === 45).z_m;
  assert.equal(await level(), 2.2);
  await page.getByTestId("step-152").click();
  assert.ok(Math.abs((await level()) - 2.25) < 1e-9);
}));
