// A user at the drawing: everything by real pointer and key events, places given in metres of the section.
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** How the drawing, or another view of the sheet, maps its metres to the screen now. */
export async function mapping(page, view = "drawing") {
  return page.getByTestId(view).evaluate((svg) => {
    const [scale, , , , x, y] = svg.querySelector("g[transform^=matrix]").getAttribute("transform").match(/-?[\d.]+/g).map(Number);
    const { left, top, width, height } = svg.getBoundingClientRect();
    return { scale, x: left + x, y: top + y, left, top, width, height };
  });
}

/** Where a point of the section, or of another view, is on the screen. */
export async function screen(page, [x, z], view) {
  const map = await mapping(page, view);
  return { x: map.x + x * map.scale, y: map.y - z * map.scale };
}

export async function move(page, point, view) {
  const { x, y } = await screen(page, point, view);
  await page.mouse.move(x, y, { steps: 3 });
}

export async function tap(page, point, view) {
  await move(page, point, view);
  await page.mouse.down();
  await page.mouse.up();
}

export async function drag(page, from, to, view) {
  await move(page, from, view);
  await page.mouse.down();
  const { x, y } = await screen(page, to, view);
  await page.mouse.move(x, y, { steps: 12 });
  await page.mouse.up();
}

/** A drag by a finger. */
export async function dragByFinger(page, context, from, to, view) {
  const [start, end] = [await screen(page, from, view), await screen(page, to, view)];
  const session = await context.newCDPSession(page);
  const send = (type, place) => session.send("Input.dispatchTouchEvent", { type, touchPoints: place ? [{ ...place, id: 1 }] : [] });
  await send("touchStart", start);
  for (let i = 1; i <= 8; i += 1) {
    await send("touchMove", { x: start.x + ((end.x - start.x) * i) / 8, y: start.y + ((end.y - start.y) * i) / 8 });
  }
  await send("touchEnd");
}

/** The way of a hand that wobbles by a few pixels from point to point. */
function wobbling(places) {
  return places.slice(1).flatMap((to, leg) => Array.from({ length: 16 }, (_, i) => {
    const [from, t] = [places[leg], (i + 1) / 16];
    const off = ((i * 7 + leg * 3) % 5) - 2;
    return { x: from.x + (to.x - from.x) * t + off, y: from.y + (to.y - from.y) * t - off };
  }));
}

/** A rough stroke by the mouse through points of the section. */
export async function sketch(page, points) {
  const places = await Promise.all(points.map((point) => screen(page, point)));
  await page.mouse.move(places[0].x, places[0].y);
  await page.mouse.down();
  for (const { x, y } of wobbling(places)) await page.mouse.move(x, y);
  await page.mouse.up();
}

/** A rough stroke by a finger through points of the section. */
export async function sketchByFinger(page, context, points) {
  const places = await Promise.all(points.map((point) => screen(page, point)));
  const session = await context.newCDPSession(page);
  const send = (type, place) => session.send("Input.dispatchTouchEvent", { type, touchPoints: place ? [{ ...place, id: 1 }] : [] });
  await send("touchStart", places[0]);
  for (const place of wobbling(places)) await send("touchMove", place);
  await send("touchEnd");
}

/** The dimensions written on the drawing: test id, value in mm, whether it is read across. */
export async function dimensions(page) {
  return page.locator('[data-testid^="dimension-"]').evaluateAll((groups) => groups.map((group) => {
    const text = group.querySelector("text");
    const { width, height } = text.getBoundingClientRect();
    return { id: group.dataset.testid, value: Number(text.textContent), across: width > height };
  }));
}

/** Touches a dimension and types its value; the field stays open where the value is refused. */
export async function typeDimension(page, id, text) {
  await page.getByTestId(id).locator("text").click();
  await page.getByTestId("typing").fill(text);
  await page.getByTestId("typing").press("Enter");
}

export async function pen(page, name) {
  await page.getByTestId(`pen-${name}`).click();
}

/** Types a length while drawing. */
export async function type(page, text) {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** Changes a field of the selected element. */
export async function fill(page, field, value) {
  const input = page.getByTestId(`field-${field}`);
  await input.fill(String(value));
  await input.press("Enter");
}

/** Does something that downloads a file, and gives its text. */
export async function downloaded(page, act) {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  const chunks = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk);
  return { name: download.suggestedFilename(), text: Buffer.concat(chunks).toString("utf8") };
}

/** The scheme as the page saves it. */
export async function saved(page) {
  const { text } = await downloaded(page, () => openTitleBlock(page).then(() => page.getByTestId("save-file").click()));
  return JSON.parse(text);
}

/** Brings the buttons of the title block into sight. */
export async function openTitleBlock(page) {
  const save = page.getByTestId("save-file");
  if (!(await save.isVisible())) await page.getByTestId("title-block").locator("button.more").click();
}

/** Lets the page speak another language. */
export async function speak(page, code) {
  await page.getByTestId("language").selectOption(code);
  await speaks(page, code);
}

/** Waits until the page speaks a language. */
export async function speaks(page, code) {
  await page.waitForFunction((code) => document.documentElement.lang === code, code);
  await page.getByTestId("pen-select").waitFor();
}

/** Waits until the margin tells of what is drawn: it follows a drag once the pointer rests. */
export async function settled(page) {
  await page.locator('section.notes[aria-busy="false"]').waitFor({ state: "attached" });
}

/** Everything the page has computed, as it is written on the sheet; what keeps a number and its unit on one line is a space. */
export async function written(page) {
  await settled(page);
  const tags = await page.locator('[data-testid^="ratio-"]').evaluateAll((tags) =>
    tags.map((tag) => `${tag.getAttribute("data-testid")} ${tag.getAttribute("aria-label")}`).sort());
  const spaced = (text) => text.replaceAll("\u00a0", " ");
  return { tags: tags.map(spaced), worst: spaced(await page.getByTestId("worst").innerText()) };
}

/** What the mechanics gives natively. */
export function compute(scheme) {
  const file = join(mkdtempSync(join(tmpdir(), "falsewright-")), "scheme.json");
  writeFileSync(file, JSON.stringify(scheme));
  const run = spawnSync("cargo", ["run", "--quiet", "-p", "falsewright-core", "--example", "scheme", "--", file], { cwd: ROOT });
  assert.equal(run.status, 0, String(run.stderr));
  return JSON.parse(run.stdout);
}
