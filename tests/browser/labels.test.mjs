// The writing on the drawing can be read: no text stands on another.
import assert from "node:assert/strict";
import { test } from "node:test";
import { SCREENS, withPage } from "./harness.mjs";

/** Texts of the views on the sheet that overlap by more than a pixel both ways. */
function overlaps(page) {
  return page.evaluate(() => {
    const texts = [...document.querySelectorAll("svg.drawing text")].filter((text) => text.textContent.trim() && text.checkVisibility());
    const boxes = texts.map((text) => ({ text: text.textContent, box: text.getBoundingClientRect() }));
    const shared = (a, b, low, high) => Math.min(a[high], b[high]) - Math.max(a[low], b[low]);
    const pairs = boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => [a, b]));
    const over = pairs.filter(([{ box: a }, { box: b }]) => shared(a, b, "left", "right") > 1 && shared(a, b, "top", "bottom") > 1);
    return { count: boxes.length, over: over.map(([a, b]) => `${a.text} on ${b.text} at ${a.box.x.toFixed(0)}, ${a.box.y.toFixed(0)}`) };
  });
}

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`no label covers another on a ${name}`, () => withPage(screen, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    const plain = await overlaps(page);
    assert.ok(plain.count >= 4, `${plain.count} texts`);
    assert.deepEqual(plain.over, []);
    // What is selected brings its own labels.
    for (const tag of ["ratio-S1", "ratio-T1"]) {
      const text = page.locator(`[data-testid="${tag}"] text`);
      if (!(await text.isVisible())) continue;
      await text.click();
      assert.deepEqual((await overlaps(page)).over, [], tag);
    }
    if (name === "phone") {
      await page.keyboard.press("Escape");
      const quiet = await page.locator('[data-testid^="dimension-"]').evaluateAll((all) => all.map((one) => one.dataset.testid).sort());
      assert.deepEqual(quiet, ["dimension-height", "dimension-width"]);
    }
  }));

  test(`nor on the elevation, on the plan and on all views of a ${name}`, () => withPage(screen, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    for (const view of ["elevation", "plan", "all"]) {
      const button = page.getByTestId(`view-${view}`);
      assert.equal(await button.isVisible(), view !== "all" || name === "desk");
      if (!(await button.isVisible())) continue;
      await button.click();
      await page.getByTestId(view === "all" ? "drawing" : `${view}-heading`).waitFor();
      const plain = await overlaps(page);
      assert.ok(plain.count >= 6, `${plain.count} texts`);
      assert.deepEqual(plain.over, [], view);
      for (const tag of ["elevation-ratio-S5", "elevation-ratio-T4", "plan-ratio-F1", "plan-ratio-L1"]) {
        const text = page.locator(`[data-testid="${tag}"] text`);
        if (!(await text.isVisible())) continue;
        await text.click();
        assert.deepEqual((await overlaps(page)).over, [], `${tag} on ${view}`);
      }
      await page.keyboard.press("Escape");
    }
  }));
}
