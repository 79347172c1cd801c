// Drawing the outline: by a rough stroke, by pulling at what is drawn, by typing.
import assert from "node:assert/strict";
import { test } from "node:test";
import { dimensions, drag, mapping, move, pen, saved, screen, sketch, sketchByFinger, tap, typeDimension } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

const OUTER = [[0, 0.1], [4, 0], [4.05, 3.6], [0.05, 3.5], [0.05, 0.15]];
const INNER = [[0.5, 0.55], [3.5, 0.5], [3.55, 3.05], [0.45, 3.1], [0.5, 0.6]];

for (const name of ["desk", "tablet"]) {
  test(`a rough stroke is straightened, shown, and kept or refused at a ${name}`, () => withPage(SCREENS[name], async ({ page, context }) => {
    const stroke = (points) => (name === "desk" ? sketch(page, points) : sketchByFinger(page, context, points));
    await page.getByTestId("start-outline").click();
    await stroke(OUTER);
    await page.getByTestId("keep").waitFor();
    assert.ok((await dimensions(page)).some((one) => one.id === "dimension-width" && Math.abs(one.value - 4000) <= 100));
    if (name === "desk") await page.keyboard.press("Escape");
    else await page.getByTestId("refuse").tap();
    await page.getByTestId("keep").waitFor({ state: "detached" });
    assert.deepEqual(await dimensions(page), []);

    await stroke(OUTER);
    await stroke(INNER);
    if (name === "desk") await page.keyboard.press("Enter");
    else await page.getByTestId("keep").tap();
    await page.getByTestId("keep").waitFor({ state: "detached" });
    const { section } = await saved(page);
    assert.equal(section.outline.length, 4);
    assert.equal(section.cells.length, 1);
    assert.equal(section.cells[0].corners.length, 4);
    const x = (ring) => [Math.min, Math.max].map((of) => of(...ring.map((corner) => corner.x_m)));
    const [[left, right], [from, to]] = [x(section.outline), x(section.cells[0].corners)];
    assert.ok(Math.abs(from - left - (right - to)) < 1e-9, "the walls are equal");
    for (const corner of [...section.outline, ...section.cells[0].corners]) {
      for (const value of [corner.x_m, corner.z_m]) assert.ok(Math.abs(value * 20 - Math.round(value * 20)) < 1e-6, `${value}`);
    }
    await page.getByTestId("undo").click();
    assert.equal((await saved(page)).section.cells.length, 0);
  }));

  test(`a value that would break the section is refused in its place at a ${name}`, () => withPage(SCREENS[name], async ({ page }) => {
    await page.getByTestId("start-box").click();
    const before = await saved(page);
    const width = async () => (await dimensions(page)).find((one) => one.id === "dimension-width").value;
    assert.equal(await width(), 4900);
    await typeDimension(page, "dimension-width", "0.2");
    const why = page.getByTestId("typing-why");
    await why.waitFor();
    assert.match(await why.innerText(), /\w+ .*\./);
    assert.deepEqual(await saved(page), before);
    const wrong = [["3**2", /missing/], ["4 yd", /no unit/], ["1.2.3", /no number/]];
    for (const [text, reason] of wrong) {
      await page.getByTestId("typing").fill(text);
      await page.getByTestId("typing").press("Enter");
      await why.filter({ hasText: reason }).waitFor();
    }
    for (const [text, value] of [["4500+2*300", 5100], ["4,9+0.3", 5200], ["5 m", 5000]]) {
      if (!(await page.getByTestId("typing").isVisible())) await page.getByTestId("dimension-width").locator("text").click();
      await page.getByTestId("typing").fill(text);
      await page.getByTestId("typing").press("Enter");
      await page.getByTestId("typing").waitFor({ state: "detached" });
      assert.equal(await width(), value);
    }
  }));
}

test("haunch, batter, crown and joint are pulled with a live value, and a digit types it", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-box").click();
  let { section } = await saved(page);
  const [floor] = section.cells[0].corners;
  const readout = page.locator(".readout text");

  // A haunch out of the corner of the floor.
  await tap(page, [floor.x_m, floor.z_m]);
  const handle = page.locator(".handle[rx='4.5']").first();
  const box = await handle.boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  const to = await screen(page, [floor.x_m + 0.26, floor.z_m + 0.25]);
  await page.mouse.move(to.x, to.y, { steps: 6 });
  assert.match(await readout.textContent(), /haunch \d+ × \d+ mm/);
  await page.mouse.up();
  await page.keyboard.type("2");
  await page.getByTestId("typing").waitFor();
  await page.keyboard.type("00+50");
  await page.keyboard.press("Enter");
  ({ section } = await saved(page));
  assert.deepEqual(section.cells[0].corners[0].cut, { before_m: 0.25, after_m: 0.25 });

  // The right wall leans by its head; a joint goes up; a corner is nudged.
  const [, foot, head] = section.outline;
  await tap(page, [foot.x_m, (foot.z_m + head.z_m) / 2]);
  const ends = await page.locator(".handle[rx='4.5']").evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top));
  const end = page.locator(".handle[rx='4.5']").nth(ends.indexOf(Math.min(...ends)));
  const at = await end.boundingBox();
  const map = await mapping(page);
  await page.mouse.move(at.x + 4.5, at.y + 4.5);
  await page.mouse.down();
  await page.mouse.move(at.x + 4.5 - 0.15 * map.scale, at.y + 4.5, { steps: 6 });
  assert.match(await readout.textContent(), /batter \d+ mm\s+1 : \d+/);
  await page.mouse.up();
  section = (await saved(page)).section;
  assert.ok(section.outline[2].x_m < head.x_m - 0.1 && section.outline[1].x_m === foot.x_m);

  await pen(page, "joint");
  await drag(page, [2, 1.2], [2, 0.65]);
  await pen(page, "select");
  await move(page, [-0.2, 0.65]);
  await page.mouse.down();
  const up = await screen(page, [-0.2, 0.9]);
  await page.mouse.move(up.x, up.y, { steps: 6 });
  assert.match(await readout.textContent(), /above the base \d+ mm/);
  await page.mouse.up();
  const joint = async () => (await saved(page)).section.joints[0].z_m;
  const level = await joint();
  await page.keyboard.press("ArrowUp");
  assert.ok(Math.abs((await joint()) - level - 0.005) < 1e-9);
  await page.keyboard.press("Shift+ArrowDown");
  assert.ok(Math.abs((await joint()) - level + 0.045) < 1e-9);
}));

test("the reason of snapping is in sight at the edge of a phone", () => withPage(SCREENS.phone, async ({ page }) => {
  await page.getByTestId("start-outline").tap();
  const sheet = await page.getByTestId("drawing").boundingBox();
  await tap(page, [0, 0]);
  const { x, y } = await screen(page, [0, 0]);
  for (const across of [sheet.x + sheet.width - 30, x + 80]) {
    await page.mouse.move(across, y);
    const word = page.locator(".snap-word");
    await word.waitFor();
    const { x: left, width } = await word.boundingBox();
    assert.ok(left >= sheet.x && left + width <= sheet.x + sheet.width, `from ${left} to ${left + width} on ${sheet.width}`);
  }
}));

test("the reason of snapping is said, and a toggle suspends it on a tablet", () => withPage(SCREENS.tablet, async ({ page }) => {
  await page.getByTestId("start-box").tap();
  await pen(page, "outline");
  const { section } = await saved(page);
  const [, corner] = section.outline;
  const word = page.locator(".snap-word");
  await move(page, [corner.x_m + 0.03, corner.z_m - 0.03]);
  assert.equal(await word.textContent(), "corner");
  await move(page, [corner.x_m + 0.03, (section.outline[2].z_m + corner.z_m) / 2]);
  assert.equal(await word.textContent(), "middle of edge");
  await page.getByTestId("snaps").tap();
  assert.equal(await page.getByTestId("snaps").getAttribute("aria-pressed"), "false");
  await move(page, [corner.x_m + 0.03, corner.z_m - 0.03]);
  assert.equal(await word.count(), 0);
}));
