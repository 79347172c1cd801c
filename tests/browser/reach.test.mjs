// Whatever can be touched is large enough for a finger and known by name; fingers and left hands can do all.
import assert from "node:assert/strict";
import { test } from "node:test";
import { mapping, pen, saved, screen } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";
import { eachState } from "./states.mjs";

/** Least side of a target under a finger, CSS px: WCAG 2.2, 2.5.5 (AAA). */
const LEAST = 44;

for (const name of ["tablet", "phone"]) {
  test(`all controls on a ${name} are large enough and named`, () => withPage(SCREENS[name], async ({ page }) => {
    const all = new Set();
    let count = 0;
    await eachState(page, async (state) => {
      const found = await page.evaluate((least) => {
        const shown = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !element.closest(".skips:not(:focus-within)");
        const box = (element) => (element.closest("label") ?? element).getBoundingClientRect();
        const controls = [...document.querySelectorAll("button, input, select, summary, a[href]")].filter(shown);
        const faults = controls.flatMap((element) => {
          const { width, height } = box(element);
          const label = element.getAttribute("aria-label") || element.textContent.trim() || element.closest("label")?.textContent.trim();
          const what = `${element.tagName.toLowerCase()} ${element.dataset.testid ?? label ?? ""}`;
          return [
            ...(width < least - 0.5 || height < least - 0.5 ? [`${what} is ${width.toFixed(0)} × ${height.toFixed(0)}`] : []),
            ...(label ? [] : [`${what} has no name`]),
          ];
        });
        return { count: controls.length, faults };
      }, LEAST);
      count += found.count;
      found.faults.forEach((fault) => all.add(`${fault} (${state})`));
    });
    assert.ok(count > 300, `${count} controls`);
    assert.deepEqual([...all], []);
  }));
}

/** One finger, and a second one. */
async function fingers(page, context) {
  const session = await context.newCDPSession(page);
  const send = (type, ...touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  return {
    tap: async (x, y) => {
      await send("touchStart", { x, y, id: 1 });
      await send("touchEnd");
    },
    hold: async (x, y) => {
      await send("touchStart", { x, y, id: 1 });
      await page.waitForTimeout(700);
      await send("touchEnd");
    },
    send,
  };
}

for (const name of ["tablet", "phone"]) {
  test(`marks of the drawing are touched within a finger's reach on a ${name}`, () => withPage(SCREENS[name], async ({ page, context }) => {
    await page.getByTestId("start-box").tap();
    await pen(page, "shutter");
    await page.getByTestId("all-outer").tap();
    await pen(page, "select");
    await page.keyboard.press("Escape");
    await page.locator('[data-testid="ratio-S2"] rect').waitFor();
    await page.getByTestId("fit").tap();
    await page.waitForTimeout(300);
    const { tap } = await fingers(page, context);
    const blocks = await page.locator(".tag:has(rect), .dimension").evaluateAll((all) => all.map((one) => {
      const { x, y, width, height } = one.querySelector("rect").getBoundingClientRect();
      return { id: one.dataset.testid, x: x + width / 2, y: y + height / 2, width, height };
    }));
    let tried = 0;
    for (const mark of ["S1", "S2"]) {
      const { id, x, y } = blocks.find((one) => one.id === `ratio-${mark}`);
      for (const beside of [-20, 20]) {
        const at = { x, y: y + beside };
        const near = (one) => Math.abs(one.x - at.x) < Math.max(one.width / 2, 22) && Math.abs(one.y - at.y) < Math.max(one.height / 2, 22);
        if (blocks.some((one) => one.id !== id && near(one))) continue;
        tried += 1;
        await tap(at.x, at.y);
        await page.waitForFunction((mark) => document.querySelector('[data-testid="leaf-element"]')?.textContent === mark, mark);
        await page.keyboard.press("Escape");
        await page.getByTestId("leaf-element").waitFor({ state: "detached" });
      }
    }
    assert.ok(tried > 0, `no mark stands alone: ${JSON.stringify(blocks)}`);
  }));

  test(`a handle is pulled from 20 px beside it on a ${name}`, () => withPage(SCREENS[name], async ({ page, context }) => {
    await page.getByTestId("start-box").tap();
    await page.getByTestId("fit").tap();
    const { section } = await saved(page);
    const { tap, send } = await fingers(page, context);
    const closed = page.getByTestId("title-block").locator("button.more");
    if ((await closed.getAttribute("aria-expanded")) === "true") await closed.tap();
    const corner = section.outline[2];
    const at = await screen(page, [corner.x_m, corner.z_m]);
    await tap(at.x, at.y);
    await page.locator(".handle").first().waitFor({ state: "attached" });
    const from = { x: at.x + 14, y: at.y - 14, id: 1 };
    await send("touchStart", from);
    for (const step of [10, 20, 40]) await send("touchMove", { ...from, y: from.y - step });
    await send("touchEnd");
    const after = (await saved(page)).section.outline[2];
    assert.ok(after.z_m > corner.z_m + 0.05 || after.x_m !== corner.x_m, `${JSON.stringify(after)}`);
  }));
}

test("on a phone the margin, the title block and the tray make way for each other", () => withPage(SCREENS.phone, async ({ page }) => {
  await page.getByTestId("start-demo").tap();
  const data = page.getByTestId("title-block").locator("button.more");
  const open = async () => ({
    margin: await page.locator("#leaf").isVisible(),
    data: (await data.getAttribute("aria-expanded")) === "true",
    tray: (await page.getByTestId("options").getAttribute("aria-expanded")) === "true",
  });
  const one = { margin: false, data: false, tray: false };
  for (const [name, button] of [["tray", page.getByTestId("options")], ["data", data], ["margin", page.getByTestId("leaf-notes")], ["tray", page.getByTestId("options")], ["margin", page.getByTestId("leaf-steps")], ["data", data]]) {
    await button.tap();
    await page.waitForTimeout(150);
    assert.deepEqual(await open(), { ...one, [name]: true });
    const drawing = await page.getByTestId("drawing").boundingBox();
    assert.ok(drawing.height > 110, `${name} leaves ${drawing.height} px of the drawing`);
  }
}));

test("on a desk the margin has room, and the files and the caution stay in sight", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  for (const [leaf, part] of [["notes", 0.35], ["schedule", 0.6], ["steps", 0.6], ["loads", 0.6], ["items", 0.6]]) {
    await page.getByTestId(`leaf-${leaf}`).click();
    await page.waitForTimeout(150);
    const { height } = await page.locator("#leaf").boundingBox();
    assert.ok(height > part * SCREENS.desk.viewport.height, `${leaf} has ${height} px`);
    for (const kept of [".title-block .files", ".title-block .caution"]) {
      const { y, height } = await page.locator(kept).boundingBox();
      assert.ok(y + height <= SCREENS.desk.viewport.height - 8, `${kept} beside ${leaf}`);
    }
  }
  // The last of the data is reached by scrolling, and by keys as anything is.
  await page.getByTestId("leaf-notes").click();
  const last = page.locator(".title-block .settings summary").last();
  await last.focus();
  await page.keyboard.press("Enter");
  await page.waitForTimeout(150);
  const { y } = await page.locator(".title-block .settings details[open] > :not(summary)").first().boundingBox();
  const caution = await page.locator(".title-block .caution").boundingBox();
  assert.ok(y + 40 < caution.y, "what is unfolded is in sight");
}));

test("a long press asks what can be done", () => withPage(SCREENS.tablet, async ({ page, context }) => {
  await page.getByTestId("start-box").tap();
  const { hold } = await fingers(page, context);
  const at = await screen(page, [0, 1.5]);
  await hold(at.x, at.y);
  await page.getByTestId("menu").waitFor();
}));

test("two fingers move and zoom the sheet while an outline is drawn, and it goes on", () => withPage(SCREENS.tablet, async ({ page, context }) => {
  await page.getByTestId("start-outline").tap();
  const { tap, send } = await fingers(page, context);
  const map = await mapping(page);
  const [x, y] = [map.left + 200, map.top + 400];
  await tap(x, y);
  await tap(x + 200, y);
  const drawn = () => page.locator(".preview").getAttribute("d");
  await page.waitForFunction(() => document.querySelector(".preview").getAttribute("d").split("L").length >= 2);
  // One finger is down and begins to draw when the second comes.
  await send("touchStart", { x: x + 100, y: y - 100, id: 1 });
  await send("touchMove", { x: x + 102, y: y - 102, id: 1 });
  await send("touchStart", { x: x + 102, y: y - 102, id: 1 }, { x: x + 202, y: y - 102, id: 2 });
  for (const gap of [10, 30, 60]) await send("touchMove", { x: x + 102 - gap, y: y - 102, id: 1 }, { x: x + 202 + gap, y: y - 102, id: 2 });
  await send("touchEnd");
  const after = await mapping(page);
  assert.ok(after.scale / map.scale > 1.5, `${after.scale / map.scale}`);
  const points = (await drawn()).split("L").length;
  await tap(x, y - 200);
  assert.equal((await drawn()).split("L").length, points + 1, "the next point follows those before");
}));

for (const [name, size] of Object.entries(SCREENS).filter(([name]) => name !== "phone")) {
  test(`the pens stand at the other hand on a ${name}`, () => withPage(size, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    const x = async (id) => (await page.getByTestId(id).boundingBox()).x;
    const before = await x("pen-select");
    await page.getByTestId("hand").click();
    assert.ok((await x("pen-select")) > before + 200);
    assert.ok((await page.locator(".margin").boundingBox()).x < 20, "the margin is at the left");
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0);
    await pen(page, "ties");
    assert.equal(await page.getByTestId("pen-ties").getAttribute("aria-pressed"), "true");
  }));
}

test("a member is chosen and removed by keys alone", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").focus();
  await page.keyboard.press("Enter");
  const rows = page.locator('[data-testid^="ratio-T"]');
  await rows.first().waitFor();
  const count = (await saved(page)).ties.length;
  const become = async (wanted) => assert.equal((await saved(page)).ties.length, wanted);
  await rows.first().focus();
  await page.keyboard.press("Enter");
  await page.getByTestId("element").waitFor();
  await page.getByTestId("remove").focus();
  await page.keyboard.press("Enter");
  await become(count - 1);
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Control+z");
  await become(count);
}));
