// The options of a job: laid in a tray, two beside each other, shown to others, kept and opened from files.
import assert from "node:assert/strict";
import { test } from "node:test";
import { downloaded, fill, openTitleBlock, pen, saved, tap } from "./desk.mjs";
import { SCREENS, opened, withPage } from "./harness.mjs";

const kept = (page) => page.waitForFunction(() => /^saved/i.test(document.querySelector('[data-testid="saved"]').textContent));

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

/** Opens the tray and makes a copy of the option on the sheet. */
async function copied(page) {
  await page.getByTestId("options").click();
  await page.getByTestId("option-copy").click();
  await page.getByTestId("option-1").waitFor();
}

/** Makes the way of the option on the sheet so wide, mm. */
async function widthOfWay(page, millimetres) {
  await page.locator('[data-testid="ratio-A1"] text').click();
  await fill(page, "clear-width", millimetres);
  await page.keyboard.press("Escape");
  await page.getByTestId("element").waitFor({ state: "detached" });
}

const part = (page, option, name) => page.locator(`[data-testid="option-${option}"] [data-part="${name}"]`).innerText();
const names = (page) => page.locator('[data-testid^="option-name-"]').evaluateAll((all) => all.map((input) => input.value));
const onSheet = (page) => page.locator(".print .face[aria-current]").getAttribute("data-testid");
const clear = (page) => page.getByTestId("clear").innerText();

/** Waits until the figures of an option are other than these. */
async function other(page, option, name, than) {
  await page.waitForFunction(([option, name, than]) => {
    const found = document.querySelector(`[data-testid="option-${option}"] [data-part="${name}"]`);
    return found && found.textContent !== than;
  }, [option, name, than]);
}

for (const name of ["desk", "tablet"]) {
  test(`a copy is changed, compared, shown and kept on a ${name}`, () => withPage(SCREENS[name], async ({ page }) => {
    await demo(page);
    assert.equal(await page.locator(".prints").count(), 0, "folded while there is one option");
    await copied(page);
    assert.equal(await onSheet(page), "option-1");
    const before = await part(page, 0, "clear");
    assert.match(before, /^3\d{3} × 3\d{3} mm$/);
    assert.equal(await part(page, 1, "clear"), before);
    assert.match(await part(page, 0, "weight"), /^\d{5} kg$/);
    assert.match(await part(page, 0, "pieces"), /^\d+ pieces$/);

    await widthOfWay(page, 2500);
    await other(page, 1, "clear", before);
    assert.equal(await part(page, 0, "clear"), before, "the other option is as it was");
    assert.equal((await part(page, 1, "clear")).split(" mm")[0], await clear(page), "as the title block has it");

    // Beside each other: the same scale and place, differences in line and sign, and in figures.
    await page.getByTestId("compare-0").click();
    const pane = page.getByTestId("beside");
    await pane.locator('[data-apart="way-A1"]').waitFor();
    const places = () => page.locator("svg.drawing > g[transform^=matrix]").evaluateAll((all) => all.map((g) => g.getAttribute("transform")));
    const [live, still] = await places();
    assert.equal(live, still);
    for (const drawing of [page.getByTestId("drawing"), pane]) {
      const way = drawing.locator('[data-apart="way-A1"]');
      assert.match(await way.getAttribute("aria-label"), /^Clear way A1: differs/);
      const { width, dashes } = await way.evaluate((path) => {
        const { strokeWidth, strokeDasharray } = getComputedStyle(path);
        return { width: parseFloat(strokeWidth), dashes: strokeDasharray };
      });
      assert.ok(width >= 2 && dashes !== "none", `${width} ${dashes}`);
      assert.ok((await drawing.locator(".tag.sign text").allTextContents()).includes("≠"));
      assert.equal(await drawing.locator('[data-apart^="pour-"]').count(), 0, "the concrete is the same");
    }
    const row = page.locator('tr[data-row="Clear width, mm"]');
    const [a, b, change] = (await row.locator("td").allInnerTexts());
    assert.equal(Number(change.replace("−", "-")), Number(b) - Number(a));
    assert.ok(Number(a) > 3000 && Number(b) < 2700, `${a} ${b}`);
    assert.match(await row.innerText(), /≠/);
    assert.doesNotMatch(await page.locator('tr[data-row="Concrete of a bay, m³"]').innerText(), /≠/);

    // A change is followed on both sides, and the other can be taken in hand in its place.
    await widthOfWay(page, 2400);
    await page.waitForFunction((b) => !document.querySelector('tr[data-row="Clear width, mm"]').textContent.includes(b), b);
    await page.getByTestId("take-in-hand").click();
    await page.waitForFunction((a) => document.querySelector('[data-testid="clear"]').textContent.startsWith(a), a);
    assert.equal(await page.getByTestId("option").innerText(), "A");
    assert.equal(await pane.locator('[data-apart="way-A1"]').count(), 1);
    await page.getByTestId("drawing").focus();
    await page.keyboard.press("Escape");
    await pane.waitFor({ state: "detached" });
    assert.equal(await page.getByTestId("compare").count(), 0);

    // Shown to others: figures and caution, no tools; keys go through the options and change nothing.
    const whole = await saved(page);
    assert.deepEqual([whole.options.length, whole.at], [2, 0]);
    await page.getByTestId("present").click();
    const shown = page.getByTestId("presenting");
    await shown.waitFor();
    assert.match(await page.getByTestId("present-clear").innerText(), new RegExp(`^${a} × `));
    await page.waitForFunction(() => /^\d+\.\d m\/h/.test(document.querySelector('[data-testid="present-rate"]').textContent));
    assert.match(await shown.innerText(), /No substitute for a competent designer/);
    for (const hidden of ["pen-select", "title-block", "options-tray", "leaf-notes"]) {
      assert.equal(await page.getByTestId(hidden).isVisible(), false, hidden);
    }
    await page.keyboard.press("ArrowRight");
    await page.waitForFunction(() => document.querySelector('[data-testid="present-clear"]').textContent.startsWith("24"));
    await page.keyboard.press("Delete");
    await page.keyboard.press("Control+z");
    await page.getByTestId("present-earlier").click();
    assert.match(await page.getByTestId("present-clear").innerText(), new RegExp(`^${a} × `));
    const { x, y, width, height } = await page.getByTestId("drawing").boundingBox();
    await page.mouse.click(x + width * 0.4, y + height * 0.3);
    assert.equal(await page.getByTestId("typing").count(), 0);
    await page.keyboard.press("Escape");
    await shown.waitFor({ state: "detached" });
    assert.deepEqual(await saved(page), whole);

    // Named in place, and all is there after a reload, with the steps of each.
    await page.getByTestId("option-name-1").fill("Narrow way");
    await page.getByTestId("option-name-1").press("Enter");
    await kept(page);
    const last = await saved(page);
    await page.reload();
    await opened(page);
    await page.locator(".print").nth(1).waitFor();
    assert.deepEqual(await names(page), ["A", "Narrow way"]);
    assert.deepEqual(await saved(page), last);
    await page.locator(".print .face").nth(1).click();
    await page.getByTestId("leaf-steps").click();
    const steps = await page.getByTestId("steps").getByRole("listitem").allInnerTexts();
    assert.deepEqual(steps.map((text) => text.replace(/^\d+\s*/, "").trim()).slice(0, 3), ["Rename", "Change opening", "Change opening"]);
  }));
}

test("options are put in order, put away and brought back, and undo is for what was done last", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await copied(page);
  await page.getByTestId("option-copy").click();
  await page.getByTestId("option-2").waitFor();
  assert.deepEqual(await names(page), ["A", "B", "C"]);
  await widthOfWay(page, 3000);
  await page.getByTestId("option-earlier").click();
  await page.getByTestId("option-earlier").click();
  assert.deepEqual(await names(page), ["C", "A", "B"]);
  await page.getByTestId("undo").click();
  assert.deepEqual(await names(page), ["A", "C", "B"]);
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Control+z");
  assert.deepEqual(await names(page), ["A", "B", "C"]);

  await page.getByTestId("option-away").click();
  await page.getByTestId("message").filter({ hasText: "Option C is put away" }).waitFor();
  assert.deepEqual(await names(page), ["A", "B"]);
  await page.getByTestId("undo").click();
  assert.deepEqual(await names(page), ["A", "B", "C"]);
  assert.match(await clear(page), /^30/);
  await page.getByTestId("redo").click();
  assert.deepEqual(await names(page), ["A", "B"]);

  // It is there after a reload too, with its steps.
  await kept(page);
  await page.reload();
  await opened(page);
  await page.getByTestId("put-away").locator("summary").click();
  await page.getByTestId("bring-back").click();
  await page.locator(".print").nth(2).waitFor();
  assert.deepEqual(await names(page), ["A", "B", "C"]);
  assert.match(await clear(page), /^30/);
  await page.getByTestId("undo").click();
  assert.deepEqual(await names(page), ["A", "B"], "bringing it back was the last thing done");
  await page.getByTestId("redo").click();
  await widthOfWay(page, 2900);
  await page.getByTestId("undo").click();
  assert.match(await clear(page), /^30/, "now its own step is");
  await page.getByTestId("undo").click();
  assert.match(await clear(page), /^35/);

  // By keys alone: along the prints, and out of the tray.
  await page.locator(".print .face").nth(2).focus();
  await page.keyboard.press("ArrowLeft");
  assert.equal(await page.getByTestId("option").innerText(), "B");
  const named = page.getByRole("button", { name: /^Option B\. Worst ratio 0\.\d+ \d+ × \d+ mm \d+ kg \d+ pieces$/ });
  assert.ok(await named.evaluate((face) => face === document.activeElement), "the focus is on the option named so");
  await page.keyboard.press("Shift+PageUp");
  assert.equal(await page.getByTestId("option").innerText(), "A");
  await page.locator(".print .face").nth(0).focus();
  await page.keyboard.press("Escape");
  assert.equal(await page.locator(".prints").count(), 0);
  assert.equal(await page.locator(":focus").getAttribute("data-testid"), "options");
}));

test("elements are pasted into another option, and a blank one begins like a blank sheet", () => withPage(SCREENS.desk, async ({ page, context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.getByTestId("start-box").click();
  await pen(page, "shutter");
  await tap(page, [0, 2]);
  await page.keyboard.press("Control+c");
  await page.getByTestId("options").click();
  await page.getByTestId("option-new").click();
  await page.getByTestId("start").waitFor();
  assert.equal(await page.getByTestId("option").innerText(), "B");
  await page.getByTestId("start-box").click();
  await page.getByTestId("start").waitFor({ state: "detached" });
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Control+v");
  await page.locator('[data-testid="ratio-S1"]').waitFor();
  const { options } = await saved(page);
  assert.deepEqual(options.map((option) => [option.option ?? "", option.shutters.length]), [["", 1], ["B", 1]]);
}));

test("a file holds all options; a file of one scheme opens as ever; the job that was open is never lost", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const single = await saved(page);
  assert.ok(single.section && !("options" in single) && !("option" in single), "one option is saved as a plain scheme");
  await copied(page);
  await widthOfWay(page, 3000);
  await openTitleBlock(page);
  const { name, text } = await downloaded(page, () => page.getByTestId("save-file").click());
  assert.equal(name, "heron-lane-subway.json");
  const open = (text) => page.getByTestId("open-file").setInputFiles({ name: "job.json", mimeType: "application/json", buffer: Buffer.from(text) });

  // One scheme comes on the sheet as a step of the option in hand.
  await open(JSON.stringify({ ...single, name: "Another" }));
  await page.waitForFunction(() => document.querySelector('[data-testid="clear"]').textContent.startsWith("35"));
  assert.deepEqual(await names(page), ["A", "B"]);
  await page.getByTestId("undo").click();
  await page.waitForFunction(() => document.querySelector('[data-testid="clear"]').textContent.startsWith("30"));
  assert.deepEqual(await saved(page), JSON.parse(text));

  // Several take the place of those in the tray, which are put away; undo brings them back.
  const file = JSON.parse(text);
  file.options[0].option = "X";
  file.options[1].option = "Y";
  await open(JSON.stringify(file));
  await page.waitForFunction(() => document.querySelector('[data-testid^="option-name-"]').value === "X");
  assert.deepEqual(await names(page), ["X", "Y"]);
  assert.match(await page.getByTestId("put-away").innerText(), /2/);
  await page.getByTestId("undo").click();
  await page.waitForFunction(() => document.querySelector('[data-testid^="option-name-"]').value === "A");
  assert.deepEqual(await names(page), ["A", "B"]);

  // A faulty option is refused by name, and nothing is changed.
  const before = await saved(page);
  file.options[1].bays.length_m = -1;
  await open(JSON.stringify(file));
  await page.getByTestId("message").filter({ hasText: "In option Y" }).waitFor();
  assert.deepEqual(await saved(page), before);
}));

test("what another tab made of the job is set aside whole", () => withPage(SCREENS.desk, async ({ page, context }) => {
  await demo(page);
  await copied(page);
  await kept(page);
  const second = await context.newPage();
  await second.goto(page.url());
  await opened(second);
  await second.locator(".print").nth(1).waitFor();
  await widthOfWay(second, 3000);
  await kept(second);
  await widthOfWay(page, 3300);
  await kept(page);
  const shelf = await page.evaluate(() => JSON.parse(localStorage.getItem("falsewright.shelf")));
  const job = JSON.parse(shelf[0].text);
  assert.equal(job.options.length, 2);
  assert.ok(Math.abs(job.options[1].openings[0].width_m - 3) < 1e-9);
  await page.reload();
  await opened(page);
  await page.locator(".print").nth(1).waitFor();
  assert.match(await clear(page), /^33/);
}));

test("with all views on the sheet, options are compared in section and the views come back", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await page.getByTestId("view-all").click();
  await copied(page);
  const live = page.locator("svg.drawing:not(.still)");
  await page.waitForFunction(() => document.querySelectorAll("svg.drawing").length === 3);
  await page.getByTestId("compare-0").click();
  await page.getByTestId("beside").waitFor();
  assert.deepEqual(await live.evaluateAll((all) => all.map((svg) => svg.dataset.testid)), ["drawing"]);
  const places = () => page.locator("svg.drawing > g[transform^=matrix]").evaluateAll((all) => all.map((g) => g.getAttribute("transform")));
  const [one, other] = await places();
  assert.equal(one, other);
  await page.getByTestId("compare-end").click();
  await page.waitForFunction(() => document.querySelectorAll("svg.drawing:not(.still)").length === 3);
}));
