// A hinged shutter: what it tells, where it is drawn, what it leaves to be seen to.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, drag, dragByFinger, fill, saved, speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";
import { pull, hinged } from "./states.mjs";

for (const name of ["desk", "tablet"]) {
  test(`a shutter is hinged, swung clear of what stands, and put back on a ${name}`, () => withPage(SCREENS[name], async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await hinged(page, "S6");
    const told = page.getByTestId("swing");
    await told.getByText("Cannot swing: S6 facing overlaps F1 primary as they stand.").waitFor();
    const swung = page.locator('g.figure[data-testid="swing-S6"]');
    await swung.locator("path.swung.short").waitFor();
    const gap = page.locator(".element ul.checks li").filter({ hasText: "gap when swung" });
    assert.match(await gap.innerText(), /> 99/);

    await page.getByTestId("field-falsework-out-before").click();
    await told.getByText(/^Swings clear up to 45\.\d°, where S6 primary meets the concrete of P2\.$/).waitFor();
    await swung.locator("path.swung:not(.short)").waitFor();
    const before = await swung.locator("path.swung").getAttribute("d");
    await fill(page, "swung-by", 15);
    await page.waitForFunction((before) => document.querySelector('[data-testid="swing-S6"] path.swung').getAttribute("d") !== before, before);

    const scheme = await saved(page);
    const { hinge } = scheme.shutters.find(({ hinge }) => hinge);
    assert.deepEqual(hinge, { above_top_m: 0.15, off_m: 0.15, angle_deg: 15, drop_m: 0, gap_m: 0.02, falsework_out: true });
    const { checks, hold_points: holds } = compute(scheme);
    const check = checks.find(({ member }) => member === "S6 gap when swung");
    assert.ok(check.resistance > 0.02 && check.resistance < 0.1, JSON.stringify(check));
    assert.ok(holds.some(({ points }) => points.some((point) => point.startsWith("The ties of S6 and the falsework of its pour are out"))));

    await pull(page, "leaf-element");
    await fill(page, "swung-by", 50);
    await gap.getByText("> 99").waitFor();
    for (let undone = 0; undone < 4; undone += 1) await page.getByTestId("undo").click();
    await swung.waitFor({ state: "detached" });
    await told.waitFor({ state: "detached" });
  }));
}

for (const name of ["desk", "tablet"]) {
  test(`the hinge and the end that swings are pulled on a ${name}`, () => withPage(SCREENS[name], async ({ page, context }) => {
    await page.getByTestId("start-demo").click();
    await hinged(page, "S6");
    const pull = (from, to) => (name === "tablet" ? dragByFinger(page, context, from, to) : drag(page, from, to));
    const hinge = async () => (await saved(page)).shutters.find(({ hinge }) => hinge).hinge;
    // S6 stands on the face at x = 0.45 from 0.55 to 4.8, swung about (0.6, 4.95) to the right.
    const end = (degrees) => {
      const [turn, arm] = [(degrees * Math.PI) / 180, [-0.15, -4.4]];
      return [0.6 + arm[0] * Math.cos(turn) - arm[1] * Math.sin(turn), 4.95 + arm[0] * Math.sin(turn) + arm[1] * Math.cos(turn)];
    };
    await fill(page, "swung-by", 30);
    await pull(end(30), end(24));
    const swung = await hinge();
    assert.ok(Math.abs(swung.angle_deg - 24) <= 0.5 && (2 * swung.angle_deg) % 1 === 0, JSON.stringify(swung));
    await pull([0.6, 4.95], [0.8, 5.15]);
    const { off_m, above_top_m } = await hinge();
    assert.ok(Math.abs(off_m - 0.35) < 0.051 && Math.abs(above_top_m - 0.35) < 0.051, JSON.stringify({ off_m, above_top_m }));
    // Delete takes away what is selected: the hinge, not its shutter.
    await page.getByTestId("drawing").focus();
    await page.keyboard.press("Delete");
    await page.locator('g.figure[data-testid="swing-S6"]').waitFor({ state: "detached" });
    assert.equal((await saved(page)).shutters.length, 8);
  }));
}

test("a swing is told in German, by the screen reader's name too", () => withPage(SCREENS.desk, async ({ page }) => {
  await speak(page, "de");
  await page.getByTestId("start-demo").click();
  await hinged(page, "S6");
  await page.getByText("Kann nicht schwenken: S6 Schalhaut überschneidet F1").waitFor();
  assert.match(await page.locator('g.figure[data-testid="swing-S6"]').getAttribute("aria-label"), /S6, geschwenkt/);
}));
