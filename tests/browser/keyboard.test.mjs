// The whole job without a pointer: only keys are pressed.
import assert from "node:assert/strict";
import { test } from "node:test";
import { saved } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** Least contrast of what shows the focus to its ground: WCAG 2.2, 1.4.11 and 2.4.13. */
const FOCUS_CONTRAST = 3;

/** Presses keys one after the other; those in quotes are typed. */
async function press(page, ...keys) {
  for (const key of keys) {
    if (key.startsWith("'")) await page.keyboard.type(key.slice(1));
    else await page.keyboard.press(key);
  }
}

/** Presses Tab until something with this test id has the focus. */
async function tabTo(page, id, most = 80) {
  for (let count = 0; count < most; count += 1) {
    if ((await focused(page)) === id) return;
    await page.keyboard.press("Tab");
  }
  assert.fail(`Tab does not come to ${id}, but to ${await focused(page)}`);
}

const focused = (page) => page.evaluate(() => document.activeElement?.dataset.testid ?? document.activeElement?.tagName);

const spoken = (page, words) => page.getByTestId("spoken").filter({ hasText: words }).waitFor({ state: "attached" });
const marks = (page, kind) => page.locator(`.tag[data-testid^="ratio-${kind}"]`).evaluateAll((tags, kind) =>
  tags.map((tag) => tag.dataset.testid.slice(6)).filter((mark) => new RegExp(`^${kind}\\d+$`).test(mark)), kind);

test("from a blank sheet to a checked scheme by keys alone", () => withPage(SCREENS.desk, async ({ page }) => {
  await tabTo(page, "start-outline");
  await press(page, "Enter");
  await page.waitForFunction(() => document.activeElement?.dataset.testid === "drawing");

  // The outline by a typed point and lengths in the direction of the arrows, the cell by typed points.
  await press(page, "'0;0", "Enter", "ArrowRight", "'7.2 m + 2*450", "Enter", "ArrowUp", "'5.45m", "Enter", "ArrowLeft", "'8100", "Enter", "Enter");
  await page.getByTestId("dimension-width").waitFor();
  await press(page, "Escape", "'l");
  await press(page, "'450;500", "Enter", "'7650;500", "Enter", "'7650;5000", "Enter", "'450;5000", "Enter", "Enter");
  await spoken(page, /Nothing is checked yet/);
  const size = await page.locator('[data-testid^="dimension-"] text').allTextContents();
  for (const value of ["8100", "5450", "7200", "4500"]) assert.ok(size.includes(value), `${value} in ${size}`);

  // A joint above the base, shutters on all walls, ties on all shutters, falsework and a way through it.
  await press(page, "Escape", "'j", "PageDown");
  const level = async () => Number((await page.locator(".readout text").textContent()).match(/above the base (\d+)/)[1]);
  for (let count = 0; count < 60 && (await level()) > 700; count += 1) await press(page, "ArrowDown");
  await press(page, "Space");
  await press(page, "Escape", "'s", "PageDown", "Space");
  await spoken(page, /Add shutter.*Worst ratio/);
  for (let count = 0; count < 7; count += 1) await press(page, "PageDown", "Space");
  const shutters = (await marks(page, "S")).length;
  assert.ok(shutters >= 4, `${shutters} shutters`);
  await press(page, "'t");
  await tabTo(page, "hold-all");
  await press(page, "Enter");
  await spoken(page, /ties.*Worst ratio/i);
  const ties = (await marks(page, "T")).length;
  assert.ok(ties >= 2, `${ties} rows of ties`);
  await press(page, "F6", "F6", "F6", "F6");
  assert.equal(await focused(page), "drawing");
  await press(page, "'f", "PageDown", "Space");
  await page.locator('.tag[data-testid^="ratio-F1"]').first().waitFor({ state: "attached" });
  await press(page, "'o", "PageDown", "Shift+ArrowLeft", "Space", "Shift+ArrowRight", "Shift+ArrowRight", "Space");
  await page.locator('[data-testid^="dimension-opening-width"]').first().waitFor({ state: "attached" });
  await spoken(page, /opening.*Worst ratio/i);

  // A dimension is gone to and typed; undo brings it back, and that is told.
  const width = page.getByTestId("dimension-width").locator("text");
  await press(page, "Escape", "Escape", "'v");
  for (let count = 0; count < 200 && (await focused(page)) !== "dimension-width"; count += 1) await press(page, "PageDown");
  await press(page, "Enter");
  assert.equal(await focused(page), "typing");
  await press(page, "Control+a", "'8.2", "Enter");
  await page.waitForFunction(() => document.querySelector('[data-testid="dimension-width"] text').textContent === "8200");
  await press(page, "Control+z");
  await page.waitForFunction(() => document.querySelector('[data-testid="dimension-width"] text').textContent === "8100");
  await spoken(page, /^Back to: /);
  assert.equal(await width.textContent(), "8100");

  // The worst note is read with its formula.
  await press(page, "F6");
  for (let count = 0; count < 6 && (await focused(page)) !== "leaf-notes"; count += 1) await press(page, "ArrowLeft");
  await press(page, "Enter", "Tab", "Tab");
  assert.equal(await page.evaluate(() => document.activeElement.closest("[data-testid]").dataset.testid), "note-1");
  await press(page, "Enter");
  assert.equal(await page.evaluate(() => document.activeElement.getAttribute("aria-expanded")), "true");
  const first = page.getByTestId("note-1");
  assert.ok((await first.innerText()).length > 20);
}));

test("the elevation and the plan are worked by keys as the section is", () => withPage(SCREENS.desk, async ({ page }) => {
  await tabTo(page, "start-demo");
  await press(page, "Enter");
  await page.getByTestId("dimension-width").waitFor();
  const before = await saved(page);
  const scheme = () => saved(page);
  /** Lays out a view and goes to its drawing. */
  const lay = async (view) => {
    await tabTo(page, `view-${view}`);
    await press(page, "Enter", "F6", "F6", "F6", "F6");
    assert.equal(await focused(page), `drawing-${view}`);
  };

  // A row of ties is put between two others, selected with the cursor, and nudged up.
  await lay("elevation");
  await press(page, "'t", "PageDown", "PageDown", "Space");
  await spoken(page, /row of ties.*Worst ratio/i);
  let { ties } = await scheme();
  const fresh = ties.find((row) => before.ties.every((other) => other.id !== row.id));
  assert.equal(ties.length, before.ties.length + 1);
  await page.getByTestId("drawing-elevation").focus();
  await press(page, "Escape", "Escape", "'v", "ArrowRight");
  await page.locator(".drawing.elevation .cursor").waitFor();
  await spoken(page, /^.+; .+ mm$/);
  await press(page, "Space", "ArrowUp", "ArrowUp");
  ties = (await scheme()).ties;
  const level = ties.find((row) => row.id === fresh.id).z_m;
  assert.ok(Math.abs(level - fresh.z_m - 0.01) < 1e-9, `${level} from ${fresh.z_m}`);

  // A line of legs likewise; one that is held is pulled along by the arrows.
  await lay("plan");
  await press(page, "'f", "PageDown", "PageDown", "Space");
  await spoken(page, /leg line.*Worst ratio/i);
  const lines = (await scheme()).falsework[0].leg_lines;
  assert.equal(lines.length, before.falsework[0].leg_lines.length + 1);
  const line = lines.find((one) => before.falsework[0].leg_lines.every((other) => other.id !== one.id));
  await page.getByTestId("drawing-plan").focus();
  await press(page, "Escape", "Escape", "'v", "ArrowLeft");
  await page.locator(".drawing.plan .cursor").waitFor();
  await press(page, "ArrowRight", "Shift+Space", "ArrowRight", "ArrowRight");
  await page.locator(".drawing.plan .cursor.holds").waitFor();
  await press(page, "Space");
  const moved = (await scheme()).falsework[0].leg_lines.find((one) => one.id === line.id).x_m;
  assert.ok(moved > line.x_m + 0.02, `${moved} from ${line.x_m}`);
  await press(page, "Control+z", "Control+z");
  assert.equal((await scheme()).falsework[0].leg_lines.length, before.falsework[0].leg_lines.length);
}));

test("the focus is always seen, at every stop of Tab", () => withPage(SCREENS.desk, async ({ page }) => {
  await tabTo(page, "start-demo");
  await press(page, "Enter");
  await page.locator('.tag[data-testid^="ratio-"] rect').first().waitFor();
  const faults = [];
  const stops = new Set();
  for (let count = 0; count < 120; count += 1) {
    await page.keyboard.press("Tab");
    const seen = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === document.body) return undefined;
      const shown = element.matches(".file input") ? element.closest(".file") : element;
      const style = getComputedStyle(shown);
      const colour = (text) => text.match(/[\d.]+/g).slice(0, 3).map(Number);
      const light = (text) => colour(text).map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
        .reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
      const [a, b] = [light(style.outlineColor), light(getComputedStyle(document.body).backgroundColor)];
      const box = shown.getBoundingClientRect();
      const above = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 200));
      return {
        what: element.dataset.testid ?? element.id ?? element.textContent.slice(0, 20),
        width: style.outlineStyle === "none" ? 0 : parseFloat(style.outlineWidth),
        contrast: (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05),
        inView: box.bottom > 0 && box.top < innerHeight && (shown.contains(above) || above?.contains(shown) || shown.closest("svg") !== null),
      };
    });
    if (!seen) break;
    stops.add(seen.what);
    if (seen.width < 2 || seen.contrast < FOCUS_CONTRAST || !seen.inView) faults.push(JSON.stringify(seen));
  }
  assert.ok(stops.size > 25, `${[...stops]}`);
  assert.deepEqual(faults, []);
}));

test("letters are for the drawing, and not for the margin", () => withPage(SCREENS.desk, async ({ page }) => {
  await tabTo(page, "start-box");
  await press(page, "Enter");
  await page.getByTestId("dimension-width").waitFor();
  await press(page, "F6", "'l");
  assert.equal(await page.getByTestId("pen-outline").getAttribute("aria-pressed"), "false");
  await press(page, "Shift+F6", "'l");
  assert.equal(await page.getByTestId("pen-outline").getAttribute("aria-pressed"), "true");
}));

test("tabs of the margin are one stop, gone through by arrows", () => withPage(SCREENS.desk, async ({ page }) => {
  await tabTo(page, "start-demo");
  await press(page, "Enter");
  await page.getByTestId("dimension-width").waitFor();
  await press(page, "F6");
  assert.equal(await focused(page), "leaf-notes");
  await press(page, "ArrowRight", "Enter");
  assert.equal(await page.getByTestId("leaf-schedule").getAttribute("aria-selected"), "true");
  await press(page, "Tab");
  assert.equal(await page.evaluate(() => document.activeElement.id), "leaf");
  assert.equal(await page.locator("#leaf").getAttribute("aria-labelledby"), "leaf-schedule");
}));
