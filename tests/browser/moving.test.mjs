// A bay that is lifted and slid: typed in the title block, seen on the drawing, in the notes, the schedule and on paper.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, fill, saved, speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

const plain = (text) => text.replaceAll("\u00a0", " ");

test("a bay is lifted by jacks and slid, with the forces that the core works out", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  const part = page.getByTestId("moving");
  await part.locator("summary").first().click();
  await part.getByLabel("Bays are lifted by jacks").check();
  const lines = page.getByTestId("jack-lines").locator("tbody tr");
  await lines.nth(1).waitFor();
  assert.equal(await lines.count(), 2);
  assert.equal(await page.locator('g.figure[data-testid^="jack-J"]').count(), 2);

  await fill(page, "lines-of-jacks", 3);
  await lines.nth(2).waitFor();
  const forces = (moved) => moved.lines.map(({ force_kn }) => Math.round(force_kn).toString());
  const shown = async () => (await lines.locator("td:last-child").allInnerTexts()).map((text) => text.replace(/\D/g, ""));
  assert.deepEqual(await shown(), forces(compute(await saved(page)).moved));

  // One of 100 kN is far too weak: a note says so, and the drawing.
  await fill(page, "a-jack-lifts", 100);
  const note = page.getByTestId("notes").getByText(/J2 lifting jack carries .* in jacking/);
  await note.waitFor();
  await page.locator("g.figure .jack.short").first().waitFor({ state: "attached" });
  await page.getByTestId("undo").click();
  await note.waitFor({ state: "detached" });

  await part.getByLabel("Then slid along").check();
  await part.getByText(/^Pushed with/).waitFor();
  const { push } = compute(await saved(page)).moved;
  const pushed = plain(await part.getByText(/^Pushed with/).innerText());
  assert.match(pushed, new RegExp(`; ${push.strokes} strokes, ${push.hours.toFixed(1)} hours`));
  await part.locator("summary").filter({ hasText: "sliding ram" }).click();
  assert.match(await part.locator(".formula").innerText(), /^\(γ u F\) \/ \(k Fw\) = /);

  await speak(page, "de");
  await page.getByTestId("moving").getByText(/^Geschoben mit/).waitFor();
  await speak(page, "en");
  await page.getByTestId("moving").getByLabel("Bays are lifted by jacks").uncheck();
  await page.getByTestId("jack-lines").waitFor({ state: "detached" });
  assert.equal(await page.locator('g.figure[data-testid^="jack-"]').count(), 0);
  assert.equal((await saved(page)).moving, undefined);
}));
