// The writing on the drawing can be read: no text stands on another, no mark on a dimension, and all of it is on the sheet.
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

/** Marks that cover a dimension line, its text or each other. */
function covered(page) {
  return page.evaluate(() => {
    const faults = [];
    for (const svg of document.querySelectorAll("svg.drawing:not(.still)")) {
      const { left, top } = svg.getBoundingClientRect();
      const marks = [...svg.querySelectorAll(".tag:has(rect)")].map((tag) => {
        const box = tag.querySelector("rect").getBoundingClientRect();
        return { name: tag.dataset.testid, left: box.left - left, right: box.right - left, top: box.top - top, bottom: box.bottom - top };
      });
      const crosses = (mark, [x1, y1, x2, y2]) => Array.from({ length: 201 }, (_, i) => i / 200).some((t) => {
        const [x, y] = [x1 + (x2 - x1) * t, y1 + (y2 - y1) * t];
        return x > mark.left + 0.5 && x < mark.right - 0.5 && y > mark.top + 0.5 && y < mark.bottom - 0.5;
      });
      const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5;
      for (const dimension of svg.querySelectorAll(".dimension")) {
        const line = dimension.querySelector(".dimension-line").getAttribute("d").match(/-?[\d.]+/g).slice(0, 4).map(Number);
        const text = dimension.querySelector("text").getBoundingClientRect();
        const box = { left: text.left - left, right: text.right - left, top: text.top - top, bottom: text.bottom - top };
        for (const mark of marks) {
          if (crosses(mark, line)) faults.push(`${mark.name} on the line of ${dimension.dataset.testid}`);
          if (over(mark, box)) faults.push(`${mark.name} on ${dimension.querySelector("text").textContent}`);
        }
      }
      marks.forEach((mark, i) => marks.slice(i + 1).filter((other) => over(mark, other)).forEach((other) => faults.push(`${mark.name} on ${other.name}`)));
    }
    return faults;
  });
}

/** What of the works and their dimensions is not wholly on the views laid out: the ground goes on beyond them. */
function cutOff(page) {
  return page.evaluate(() => [...document.querySelectorAll("svg.drawing:not(.still)")].flatMap((svg) => {
    const view = svg.getBoundingClientRect();
    const parts = [...svg.querySelectorAll(".figure:not([data-testid$=ground], [data-testid$=floor]) path, .dimension-line, .dimension text, .tag rect")];
    return parts.flatMap((part) => {
      const box = part.getBoundingClientRect();
      const inside = box.left >= view.left - 1 && box.right <= view.right + 1 && box.top >= view.top - 1 && box.bottom <= view.bottom + 1;
      return inside || box.width + box.height === 0 ? [] : [part.closest("[data-testid]").dataset.testid];
    });
  }));
}

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`all that is placed is on the sheet of a ${name}, with its dimensions`, () => withPage(screen, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    for (const view of ["section", "elevation", "plan", "all"]) {
      const button = page.getByTestId(`view-${view}`);
      if (!(await button.isVisible())) continue;
      await button.click();
      await page.waitForTimeout(200);
      assert.deepEqual(await cutOff(page), [], view);
    }
    await page.getByTestId("view-section").click();
    // It uses the room that there is.
    const used = await page.evaluate(() => {
      const frame = document.querySelector("svg.drawing").getBoundingClientRect();
      const boxes = [...document.querySelectorAll(".figure:not([data-testid=ground]) path, .dimension-line, .dimension text")].map((part) => part.getBoundingClientRect()).filter((box) => box.width + box.height > 0);
      const span = (low, high) => Math.max(...boxes.map((box) => box[high])) - Math.min(...boxes.map((box) => box[low]));
      return Math.max(span("left", "right") / frame.width, span("top", "bottom") / frame.height);
    });
    assert.ok(used > 0.85, `${used}`);
  }));

  test(`no label covers another on a ${name}`, () => withPage(screen, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    const plain = await overlaps(page);
    assert.ok(plain.count >= 4, `${plain.count} texts`);
    assert.deepEqual(plain.over, []);
    assert.deepEqual(await covered(page), []);
    // What is selected brings its own labels.
    for (const tag of ["ratio-S1", "ratio-T1"]) {
      const text = page.locator(`[data-testid="${tag}"] text`);
      if (!(await text.isVisible())) continue;
      await text.click();
      assert.deepEqual((await overlaps(page)).over, [], tag);
      assert.deepEqual(await covered(page), [], tag);
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
      assert.deepEqual(await covered(page), [], view);
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
