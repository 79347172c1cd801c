// Controls can be hit by a finger and are known by name; the drawing can be used without a pointer.
import assert from "node:assert/strict";
import { test } from "node:test";
import { saved } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** Least side of a target under a finger, CSS px: WCAG 2.2, 2.5.8 (AA). */
const LEAST = 24;

for (const name of ["tablet", "phone"]) {
  test(`controls on a ${name} are large enough and named`, () => withPage(SCREENS[name], async ({ page }) => {
    await page.getByTestId("start-demo").tap();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    const faults = await page.evaluate((least) => {
      const shown = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
      const box = (element) => (element.closest("label") ?? element).getBoundingClientRect();
      return [...document.querySelectorAll("button, input, select, summary, a[href]")].filter(shown).flatMap((element) => {
        const { width, height } = box(element);
        const label = element.getAttribute("aria-label") || element.textContent.trim() || element.closest("label")?.textContent.trim();
        const what = `${element.tagName.toLowerCase()} ${element.dataset.testid ?? label ?? ""}`;
        return [
          ...(width < least || height < least ? [`${what} is ${width.toFixed(0)} × ${height.toFixed(0)}`] : []),
          ...(label ? [] : [`${what} has no name`]),
        ];
      });
    }, LEAST);
    assert.deepEqual(faults, []);
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
