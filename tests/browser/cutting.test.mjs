// Pieces cut from stock lengths: typed in the title block, told with their bars and waste, also on paper.
import assert from "node:assert/strict";
import { test } from "node:test";
import { fill, saved, speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

const plain = (text) => text.replaceAll("\u00a0", " ");

test("pieces are cut from the stock lengths that are typed", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  const part = page.getByTestId("cutting");
  await part.locator("summary").click();
  assert.equal(await page.getByTestId("cut-lists").count(), 0);
  await part.getByLabel("Cut pieces from stock lengths").check();
  const rods = page.getByTestId("cut-lists").getByRole("row", { name: /Tie rod 15/ });
  await rods.waitFor();

  // All rods from bars of 4.5 m; the pieces and the waste add up to what is bought.
  await fill(page, "tie-rod-lengths", "4.5");
  await rods.getByText(/^\d+ × 4\.500.m: /).first().waitFor();
  assert.deepEqual((await saved(page)).stock.rods_m, [4.5]);
  const text = plain(await rods.innerText());
  let bought = 0;
  let used = 0;
  for (const [, bars, pieces] of text.matchAll(/^(\d+) × 4\.500 m: (.*)$/gm)) {
    bought += bars * 4.5;
    for (const [, count, length] of pieces.matchAll(/(\d+) × ([\d.]+) m/g)) used += bars * count * length;
  }
  assert.equal(plain(await rods.locator("td:last-child").innerText()), `${bought.toFixed(1)} m`);
  assert.equal(text.match(/Waste ([\d.]+) %/)[1], (100 * (1 - used / bought)).toFixed(1));

  // What is no length is told of and changes nothing; a bar too short for a piece is marked.
  await fill(page, "tie-rod-lengths", "4.5; long");
  await page.getByTestId("message").getByText(/has something else than lengths/).waitFor();
  assert.deepEqual((await saved(page)).stock.rods_m, [4.5]);
  await fill(page, "beam-lengths", "1");
  await page.getByTestId("cut-lists").getByText(/▲ Longer than any bar/).first().waitFor();

  await speak(page, "de");
  await page.getByTestId("cut-lists").getByText(/▲ Länger als jeder Stab/).first().waitFor();
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  await page.getByTestId("printed").getByTestId("cut-lists").waitFor({ state: "attached" });
}));
