// The page on paper: drawing, title block, notes, limits, schedule, path of loads and every check, from any screen and look.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, fill, mapping, openTitleBlock, saved } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** What an A4 sheet has between margins of 10 mm, px. */
const PAPER = { width: 1047, height: 718 };

async function onPaper(page, act) {
  const screen = page.viewportSize();
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize(PAPER);
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await page.getByTestId("printed").waitFor();
  await act();
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize(screen);
}

const seen = (page, selector) => page.locator(selector).evaluateAll((all) => all.filter((one) => one.checkVisibility()).length);

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`everything is on paper, from a ${name}`, () => withPage({ ...screen, colorScheme: "dark" }, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.locator("g.figure").first().waitFor();
    await openTitleBlock(page);
    await fill(page, "revision", "C2");
    const scheme = await saved(page);
    assert.equal(scheme.revision, "C2");
    const { shutters, falsework } = scheme;
    const { checks, findings, hold_points: holds } = compute(scheme);
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
      assert.equal(await seen(page, ".pens, .margin, .title-block"), 0);
      assert.equal(await page.locator(".board").evaluate((board) => board.clientWidth * board.clientHeight), 0);
      assert.equal(await seen(page, ".printed tbody tr:has(.ratio)"), checks.length);
      assert.equal(await seen(page, ".printed ol li"), findings.length);
      const toSign = await page.locator(".to-sign tbody tr").allInnerTexts();
      const spaced = toSign.map((text) => text.replaceAll("\u00a0", " ").trim());
      assert.deepEqual(spaced, holds.flatMap(({ stage, points }) => [stage, ...points]));
      assert.ok(await seen(page, '.printed [data-testid="schedule"] td.mark button') > 10, "marks of the schedule");
      assert.equal(await page.locator("#hatch-fresh circle").first().evaluate((dot) => getComputedStyle(dot).visibility), "visible");
      const { sheets, wide } = await page.evaluate(() => {
        const box = (element) => element.getBoundingClientRect().toJSON();
        const sheets = [...document.querySelectorAll(".printed article")].map((article) => ({
          all: box(article),
          drawing: box(article.querySelector(".drawing")),
          figures: [...article.querySelectorAll(".figure:not(:has(.ground-line))")].map(box),
          heading: article.querySelector(".scale-bar .heading").textContent,
          bar: box(article.querySelector(".scale-bar path")).width,
          scale: article.querySelector(".scale-bar text:not(.heading)").textContent,
          summary: box(article.querySelector(".summary")),
          text: article.querySelector("header").innerText,
        }));
        return { sheets, wide: document.documentElement.scrollWidth };
      });
      assert.ok(wide <= PAPER.width, `${wide} px wide`);
      assert.ok(shutters.length > 1);
      assert.deepEqual(sheets.map((sheet) => sheet.heading.replace(/\d+/, "")), ["Cross-section", ...shutters.map(() => "Elevation of S"), ...falsework.map(() => "Plan of F")]);
      assert.equal(new Set(sheets.map((sheet) => sheet.heading)).size, sheets.length, "each is drawn once");
      for (const { all, bar, drawing, figures, heading, scale, summary, text } of sheets) {
        assert.ok(all.height <= PAPER.height, `${heading}: ${all.height} px high`);
        assert.match(text, /Heron Lane subway[^]*Revision C2[^]*No substitute/);
        assert.ok(summary.top >= drawing.bottom - 1, "the title block stands under the drawing");
        // 277 mm of paper are `PAPER.width` px.
        const [, metres, reduction] = scale.match(/^([\d.]+) m, 1 : (\d+) on A4$/).map(Number);
        assert.ok([5, 10, 20, 25, 50, 75, 100, 125, 200].includes(reduction), scale);
        assert.ok(Math.abs(bar - metres * 1000 / reduction / 277 * PAPER.width) < 1.5, `${scale} is ${bar} px long`);
        const high = Math.max(...figures.map((one) => one.bottom)) - Math.min(...figures.map((one) => one.top));
        const long = Math.max(...figures.map((one) => one.right)) - Math.min(...figures.map((one) => one.left));
        assert.ok(long > 0.4 * drawing.width || high > 0.55 * drawing.height, `${heading} fills its sheet`);
        for (const figure of figures) {
          assert.ok(figure.left >= drawing.left && figure.right <= drawing.right && figure.top >= drawing.top && figure.bottom <= drawing.bottom, heading);
        }
      }
    });
    assert.equal(await page.locator("html").getAttribute("data-theme"), "dark");
    assert.equal(await page.getByTestId("printed").count(), 0);
    assert.equal(await page.locator(".drawing.section").getAttribute("viewBox"), null);
  }));
}

test("what is compared or presented is on paper as it is when worked on", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  const written = () => page.locator(".printed article").evaluateAll((all) => all.map((one) => [...one.querySelectorAll("text")].map((text) => text.textContent).sort()));
  let worked = null;
  await onPaper(page, async () => worked = await written());
  assert.ok(worked.length > 3);
  assert.ok(worked[0].length > 40, `${worked[0].length} texts on the section`);
  await page.getByTestId("options").click();
  await page.getByTestId("option-copy").click();
  await page.getByTestId("compare-0").click();
  await page.getByTestId("beside").waitFor();
  await onPaper(page, async () => assert.deepEqual(await written(), worked));
  await page.getByTestId("beside-close").click();
  await page.getByTestId("present").click();
  await onPaper(page, async () => assert.deepEqual(await written(), worked));
}));
