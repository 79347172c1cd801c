// A drag at the drawing: only what it changes is drawn anew, and all is in order again once it rests.
import assert from "node:assert/strict";
import { test } from "node:test";
import { screen, settled } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** The ratios of elements in the order in which screen readers and keys come to them. */
const ratios = (page) => page.locator(".tag").evaluateAll((tags) => tags
  .filter((tag) => /^ratio-[A-Z]+\d+$/.test(tag.dataset.testid))
  .map((tag) => Number(/ratio.*?(\d+\.\d+)$/.exec(tag.getAttribute("aria-label"))?.[1])));

const descending = (values) => values.every((value, i) => i === 0 || value <= values[i - 1]);

test("a drag writes only what is another, and tells the rest once it rests", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.getByTestId("ratio-S5").waitFor({ state: "attached" });
  const face = await screen(page, [-0.2, 5.2]);
  await page.mouse.click(face.x, face.y);
  const [end, up] = [await screen(page, [-0.185, 5.5]), await screen(page, [-0.185, 5.9])];
  await page.mouse.move(end.x, end.y);
  await page.mouse.down();
  await page.mouse.move(end.x, (end.y + up.y) / 2, { steps: 4 });
  await page.evaluate(() => {
    window.seen = { left: [], written: new Set() };
    const named = (node) => node.closest?.(".figure")?.dataset.testid;
    new MutationObserver((all) => all.forEach(({ target, removedNodes }) => {
      window.seen.left.push(...[...removedNodes].filter((node) => node.classList?.contains("figure")).map(named));
      window.seen.written.add(named(target));
    })).observe(document.querySelector(".drawing"), { subtree: true, childList: true, attributes: true, characterData: true });
  });
  await page.mouse.move(up.x, up.y, { steps: 8 });
  const { left, written } = await page.evaluate(() => ({ left: window.seen.left, written: [...window.seen.written].filter(Boolean) }));
  assert.deepEqual(left, [], "figures were taken out of the drawing");
  const pulled = await page.locator(".figure.selected").getAttribute("data-testid");
  assert.ok(written.includes(pulled), `${pulled} is not drawn anew, only ${written}`);
  for (const still of ["pour-P1", "pour-P2", "falsework-F1", "way-A1"]) {
    assert.ok(!written.includes(still), `${still} is written anew`);
  }
  await settled(page);
  const during = await ratios(page);
  assert.ok(during.length > 10 && descending(during), `${during}`);
  await page.mouse.up();
  await settled(page);
  assert.ok(descending(await ratios(page)), `${await ratios(page)}`);
}));
