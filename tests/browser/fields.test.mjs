// Fields of the title block and the margin: what they take, and what they say of what they do not.
import assert from "node:assert/strict";
import { test } from "node:test";
import { saved, speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

test("a temperature is taken as one number or by hours; what is neither is told of and put back", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  const striking = page.getByTestId("striking");
  await striking.locator("summary").click();
  const wanted = striking.getByLabel("Compute when forms may go");
  if (!(await wanted.isChecked())) await wanted.check();
  const field = striking.getByLabel(/^Temperature/);
  const type = async (text) => {
    await field.fill(text);
    await field.press("Enter");
  };
  await type("24 h 15, 48 h 8.5");
  const message = page.getByTestId("message");
  assert.equal(await field.inputValue(), "24 h 15; 48 h 8.5");
  assert.ok(!(await message.isVisible()));

  await type("warm");
  await message.filter({ hasText: "“warm” is no temperature" }).waitFor();
  assert.equal(await field.inputValue(), "24 h 15; 48 h 8.5");

  await speak(page, "de");
  const german = page.getByTestId("striking").getByLabel(/^Temperatur/);
  assert.equal(await german.inputValue(), "24 h 15; 48 h 8,5");
  await german.fill("24 h 15,5; 48 h 9");
  await german.press("Enter");
  const { hardening } = (await saved(page)).striking;
  assert.deepEqual(hardening.temperature, { by: "history", hours_celsius: [[24, 15.5], [48, 9]] });
}));
