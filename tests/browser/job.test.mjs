// The whole job, as an engineer does it on the first day: from a blank sheet to a checked scheme, its bill and its file.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, downloaded, drag, fill, mapping, move, openTitleBlock, pen, saved, settled, tap, type, written } from "./desk.mjs";
import { SCREENS, opened, stored, withPage } from "./harness.mjs";

test("the whole job from a blank sheet", () => withPage(SCREENS.desk, async ({ page, context }) => {
  // The outline by pointer and typed lengths, the cell as a rectangle.
  await page.getByTestId("start-outline").click();
  const map = await mapping(page);
  const x = Math.ceil((map.left + 60 - map.x) / map.scale);
  const z = Math.ceil((map.y - map.top - map.height + 60) / map.scale);
  await tap(page, [x, z]);
  await move(page, [x + 2, z]);
  await type(page, "7.2 m + 2*450");
  await move(page, [x + 8.1, z + 2]);
  await type(page, "5.45m");
  await move(page, [x + 6, z + 5.45]);
  await type(page, "8100");
  await page.keyboard.press("Enter");
  await page.getByTestId("fit").click();
  await pen(page, "outline");
  await drag(page, [x + 0.45, z + 0.5], [x + 7.65, z + 5]);
  let scheme = await saved(page);
  assert.deepEqual(corners(scheme.section.outline, x, z), [[0, 0], [8.1, 0], [8.1, 5.45], [0, 5.45]]);
  assert.deepEqual(corners(scheme.section.cells[0].corners, x, z), [[0.45, 0.5], [7.65, 0.5], [7.65, 5], [0.45, 5]]);

  // A joint above the kickers, then shutters and ties on both walls.
  await pen(page, "joint");
  await tap(page, [x + 4, z + 0.65]);
  await pen(page, "shutter");
  for (const wall of [0, 0.45, 7.65, 8.1]) await tap(page, [x + wall, z + 2.75]);
  await pen(page, "ties");
  for (const wall of [0, 8.1]) await drag(page, [x + wall, z + 2.75], [x + wall, z + 3.65]);

  // Falsework, and a way through it.
  await pen(page, "legs");
  await tap(page, [x + 4.05, z + 4]);
  await pen(page, "opening");
  await drag(page, [x + 2.2, z + 2], [x + 5.8, z + 2]);

  scheme = await saved(page);
  assert.deepEqual(scheme.section.joints.map((joint) => round(joint.z_m - z)), [0.65]);
  assert.equal(scheme.shutters.length, 4);
  const levels = (wall) => scheme.ties.filter((row) => row.shutter === wall).map((row) => round(row.z_m - z));
  const tied = [...new Set(scheme.ties.map((row) => row.shutter))];
  assert.equal(tied.length, 2, "one of the two shutters of each wall holds its rows");
  for (const wall of tied) assert.ok(levels(wall).length >= 5, `rows at ${levels(wall)}`);
  assert.ok(scheme.ties.every((row) => row.to.end === "shutter"));
  assert.equal(scheme.falsework.length, 1);
  assert.equal(scheme.openings.length, 1);

  // Utilisations stand at the members, and are those that the mechanics gives for the saved file.
  const before = await written(page);
  for (const mark of ["S1", "S2", "S3", "S4"]) assert.ok(before.tags.some((tag) => tag.startsWith(`ratio-${mark} `)), mark);
  const native = compute(scheme);
  // Room that there is does not count.
  const counted = native.checks.filter(({ check, ratio }) => check !== "clearance" || !(ratio <= 1));
  const worst = Math.max(...counted.map((check) => check.ratio));
  const governing = counted.filter((check) => check.ratio > worst - 1e-9);
  assert.ok(governing.some((check) => before.worst === `${check.member}, ${check.where}`), before.worst);
  assert.ok(before.tags.some((tag) => tag.endsWith(` ${worst.toFixed(2)}`)), `${worst}\n${before.tags.join("\n")}`);
  assert.ok(native.ledger.length > 0 && native.ledger.every((entry) => entry.difference < 1e-3));

  // Soldiers, and so ties, far further apart overload the ties; a note says so and opens into its formula. The tied
  // shutter opposite follows.
  const tieNote = page.getByTestId("notes").getByRole("listitem").filter({ hasText: /tie carries .* in tension/ });
  const soldiersApart = async (millimetres) => {
    await select(page, "S1");
    await fill(page, "primaries-apart", millimetres);
    await page.getByTestId("leaf-notes").click();
  };
  assert.equal(await tieNote.count(), 0);
  await pen(page, "select");
  await soldiersApart(3600);
  await tieNote.first().waitFor();
  await tieNote.first().getByRole("button").click();
  assert.match(await tieNote.first().getByTestId("worked").innerText(), /kN/);
  const overloaded = compute(await saved(page)).checks.filter((check) => check.check === "tension" && check.ratio > 1);
  assert.ok(overloaded.length > 0);

  // Back to where they were, by typing and by undo.
  await soldiersApart(scheme.shutters[0].primaries.max_m * 1000);
  await tieNote.first().waitFor({ state: "detached" });
  assert.deepEqual(await written(page), before);
  await page.getByTestId("undo").click();
  await tieNote.first().waitFor();
  await page.getByTestId("redo").click();
  await tieNote.first().waitFor({ state: "detached" });

  // The bill.
  await page.getByTestId("leaf-schedule").click();
  const csv = await downloaded(page, () => page.getByTestId("csv").click());
  assert.match(csv.name, /\.csv$/);
  const lines = csv.text.trim().split("\r\n");
  assert.equal(lines[0], "mark,item,size,count,unit,mass (kg),mass of a piece (kg)");
  assert.equal(lines.length - 1, native.quantities.length);
  assert.equal(lines.length - 1, await page.getByTestId("schedule").locator("tbody tr").count());

  // Reload, and open the file on a new sheet: the same drawing, the same numbers.
  await page.waitForFunction(() => /kept|saved/i.test(document.querySelector('[data-testid="saved"]').textContent));
  await page.reload();
  await opened(page);
  assert.deepEqual(await written(page), before);
  await openTitleBlock(page);
  await page.getByTestId("new-sheet").click();
  await page.getByTestId("start").waitFor();
  await page.getByTestId("start-file").setInputFiles({ name: "scheme.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(scheme)) });
  await page.locator('[data-testid="ratio-S1"]').waitFor();
  await page.getByTestId("fit").click();
  assert.deepEqual(await written(page), before);

  // The same with the network cut: it opens and computes.
  await stored(page);
  await context.setOffline(true);
  await page.reload();
  await opened(page);
  assert.deepEqual(await written(page), before);
  await soldiersApart(3600);
  await tieNote.first().waitFor();
}));

test("the demo opens with every check passed", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
  const { checks } = compute(await saved(page));
  assert.ok(checks.length > 50);
  assert.deepEqual(checks.filter((check) => !(check.ratio <= 1)).map((check) => `${check.member} ${check.check}`), []);
  await settled(page);
  assert.equal(await page.locator("[data-testid=notes] .fail").count(), 0);
}));

test("a faulty file is refused in words, and the drawing stays", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-box").click();
  const before = await saved(page);
  await openTitleBlock(page);
  for (const text of ["", "{", "{\"schema\": 99}", JSON.stringify({ ...before, section: { outline: [] , cells: 1 } })]) {
    await page.getByTestId("open-file").setInputFiles({ name: "bad.json", mimeType: "application/json", buffer: Buffer.from(text) });
    const message = page.getByTestId("message");
    await message.filter({ hasText: "bad.json was not opened" }).waitFor();
    await message.getByRole("button").click();
    await message.waitFor({ state: "hidden" });
  }
  assert.deepEqual(await saved(page), before);
}));

test("fingers draw, move and zoom on a tablet", () => withPage(SCREENS.tablet, async ({ page, context }) => {
  await page.getByTestId("start-demo").tap();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
  const before = await mapping(page);
  const [x, y] = [before.left + before.width / 2, before.top + before.height / 2];
  const session = await context.newCDPSession(page);
  const fingers = (gap) => [{ x: x - gap, y, id: 1 }, { x: x + gap, y, id: 2 }];
  const send = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  await send("touchStart", fingers(40));
  for (const gap of [50, 60, 70, 80]) await send("touchMove", fingers(gap));
  await send("touchEnd", []);
  const after = await mapping(page);
  assert.ok(Math.abs(after.scale / before.scale - 2) < 0.1, `zoomed by ${after.scale / before.scale}`);
  const centre = (map) => (x - map.x) / map.scale;
  assert.ok(Math.abs(centre(after) - centre(before)) * after.scale < 2, "the middle between the fingers stays");
}));

/** Selects an element by its tag on the drawing. */
async function select(page, mark) {
  await page.locator(`[data-testid="ratio-${mark}"] text`).click();
  await page.getByTestId("element").waitFor();
}

function corners(ring, x, z) {
  return ring.map((corner) => [round(corner.x_m - x), round(corner.z_m - z)]);
}

function round(value) {
  return Math.round(value * 1000) / 1000;
}
