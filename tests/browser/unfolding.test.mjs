// What unfolds in the margin: worked formulas, hold points.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, fill, saved, speak, tap } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

test("a check that is open stays open while its shutter changes, and the pressure unfolds into its formula", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  await tap(page, [-0.25, 4.0]);
  assert.equal(await page.locator(".element .formula").count(), 0, "no formula is made before it is asked for");
  const check = page.locator(".element ul.checks details").filter({ hasText: "secondary, shear" });
  await check.locator("summary").click();
  const before = await check.locator(".formula").innerText();

  const apart = page.getByTestId("field-secondaries-apart");
  await apart.fill("200");
  await apart.press("Enter");
  await page.waitForFunction((before) => {
    const shown = document.querySelector(".element ul.checks details[open] .formula");
    return shown && shown.innerText !== before;
  }, before);
  assert.equal(await page.locator(".element ul.checks details[open]").count(), 1);
  assert.match(await check.locator(".formula").innerText(), / = .* \/ .* = \d\.\d{3}$/);

  const pressure = page.getByTestId("pressure");
  await pressure.locator("summary").click();
  const greatest = (await pressure.locator("summary .n").innerText()).replace(/\s/g, " ");
  assert.ok((await pressure.locator(".formula").innerText()).endsWith(`the lesser ${greatest}`), greatest);
}));

test("hold points follow a change, and stay open in another language", () => withPage(SCREENS.desk, async ({ page }) => {
  const holds = page.getByTestId("hold-points");
  await holds.locator("summary").click();
  assert.match(await holds.innerText(), /No equipment stands yet/);
  await page.getByTestId("start-demo").click();
  await holds.locator("li").first().waitFor();
  await fill(page, "temperature", 8);
  await holds.getByText(/at 8\s°C or warmer/).first().waitFor();
  const shown = await holds.locator("h3, li").allInnerTexts();
  const { hold_points: computed } = compute(await saved(page));
  assert.deepEqual(shown.map((text) => text.replaceAll("\u00a0", " ")), computed.flatMap(({ stage, points }) => [stage, ...points]));
  await speak(page, "de");
  await page.getByTestId("hold-points").getByText("Während P2 betoniert wird").waitFor();
}));
