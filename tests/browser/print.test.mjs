// The page on paper: drawing, title block, notes, limits, schedule, path of loads and every check, from any screen and look.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, mapping, saved } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** What an A4 sheet has between margins of 10 mm, px. */
const PAPER = { width: 1047, height: 718 };

async function onPaper(page, act) {
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize(PAPER);
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.getByTestId("printed").waitFor();
  await act();
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
}

const seen = (page, selector) => page.locator(selector).evaluateAll((all) => all.filter((one) => one.checkVisibility()).length);

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`everything is on paper, from a ${name}`, () => withPage({ ...screen, colorScheme: "dark" }, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator("g.figure").first().waitFor();
    const { checks, findings } = compute(await saved(page));
    await page.getByTestId("drawing").focus();
    await page.keyboard.press("Control+0");
    const before = await mapping(page);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const [, width, height] = pdf.match(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/).map(Number);
    assert.ok(width > height, "the sheet lies");
    assert.deepEqual(await mapping(page), before, "the screen shows what it did");
    assert.ok(pdf.match(/\/Type \/Page\b/g).length > 5);

    await onPaper(page, async () => {
      assert.equal(await page.locator("html").getAttribute("data-theme"), "light");
      assert.equal(await seen(page, ".pens, .margin, .title-block .data, .view-names, .grid-fine, .options"), 0);
      assert.equal(await seen(page, ".printed tbody tr:has(.ratio)"), checks.length);
      assert.equal(await seen(page, ".printed ol li"), findings.length);
      assert.ok(await seen(page, '.printed [data-testid="schedule"] td.mark button') > 10, "marks of the schedule");
      assert.match(await page.locator(".printed header").innerText(), /Heron Lane subway[^]*No substitute/);
      const { drawing, figures, summary, wide } = await page.evaluate(() => {
        const box = (selector) => document.querySelector(selector).getBoundingClientRect();
        const figures = [...document.querySelectorAll(".drawing.section .figure:not(:has(.ground-line))")].map((figure) => figure.getBoundingClientRect());
        return { drawing: box(".drawing.section"), figures, summary: box(".title-block .summary"), wide: document.documentElement.scrollWidth };
      });
      assert.ok(wide <= PAPER.width, `${wide} px wide`);
      assert.ok(summary.top >= drawing.bottom - 1, "the title block stands under the drawing");
      const [left, right] = [Math.min(...figures.map((one) => one.left)), Math.max(...figures.map((one) => one.right))];
      assert.ok(right - left > 0.4 * drawing.width, "the drawing fills its sheet");
      for (const figure of figures) {
        assert.ok(figure.left >= drawing.left && figure.right <= drawing.right && figure.top >= drawing.top && figure.bottom <= drawing.bottom);
      }
    });
    assert.equal(await page.locator("html").getAttribute("data-theme"), "dark");
    assert.equal(await page.getByTestId("printed").count(), 0);
    assert.equal(await page.locator(".drawing.section").getAttribute("viewBox"), null);
  }));
}
