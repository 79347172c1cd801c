// The catalogue: the supplier's value in place of ours, its way through results and report, and files of items.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, downloaded, saved } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

/** The ratio that stands in the tag of a mark on the drawing. */
const ratio = async (page, mark) => {
  const name = await page.getByTestId(`ratio-${mark}`).getAttribute("aria-label");
  return name.match(/\d+\.\d\d$/)[0];
};

/** The worst ratio of a mark's checks, as it is printed. */
const worst = (checks, mark) => {
  const ratios = checks.filter((check) => check.member.startsWith(`${mark} `)).map((check) => check.ratio);
  return Math.max(...ratios).toFixed(2);
};

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

/** The mark of the row of ties whose ratio is greatest, and the code of its item. */
async function governingTie(page) {
  const scheme = await saved(page);
  const ties = compute(scheme).checks.filter((check) => check.check === "tension");
  const mark = ties.sort((a, b) => b.ratio - a.ratio)[0].member.split(" ")[0];
  return { scheme, mark, ratio: ties[0].ratio };
}

async function file(page, name, text) {
  const buffer = Buffer.from(text);
  await page.getByTestId("import-items").setInputFiles({ name, mimeType: "text/plain", buffer });
}

test("a supplier's value: replaced, computed with, told, taken back, and carried by a file", () => withPage(SCREENS.desk, async ({ page, context, site }) => {
  await demo(page);
  const { scheme, mark } = await governingTie(page);
  const before = await ratio(page, mark);
  assert.equal(before, worst(compute(scheme).checks, mark));

  // From the row of ties to its working load: touch the value, type the supplier's, give the source.
  await page.locator(`[data-testid="ratio-${mark}"] text`).click();
  await page.getByTestId("used-tie").click();
  const element = page.getByTestId("element");
  await element.getByTestId("value-working_kn").click();
  const number = element.getByTestId("supply-number");
  assert.ok(await number.evaluate((input) => input === document.activeElement), "the field has the focus");
  const stated = Number(await number.inputValue());
  assert.equal(await element.getByTestId("supply-source").inputValue(), "supplier's data");
  await number.fill(String(stated * 0.8).replace(".", ","));
  await element.getByTestId("supply-source").fill("sheet 7, 2026");
  await element.getByTestId("supply-source").press("Enter");
  await element.getByTestId("ours-working_kn").waitFor();

  // One item in the file; the page's ratios are what the mechanics gives for it.
  const replaced = await saved(page);
  assert.equal(replaced.items.length, 1);
  assert.ok(Math.abs(replaced.items[0].working_kn - stated * 0.8) < 1e-9);
  const native = compute(replaced);
  const after = await ratio(page, mark);
  assert.equal(after, worst(native.checks, mark));
  assert.ok(Number(after) > Number(before) * 1.2, `${before} to ${after}`);

  // Everything that reports says so: title block, notes, the worked check, schedule, quantities.
  const code = replaced.items[0].code;
  assert.equal(await page.getByTestId("supplied").innerText(), code);
  await page.getByTestId("leaf-notes").click();
  const note = page.getByTestId("notes").getByRole("listitem").filter({ hasText: "is by supplier's data, sheet 7, 2026" });
  assert.match(await note.innerText(), new RegExp(`working load ${stated * 0.8}\\skN instead of ${stated}\\skN`));
  assert.ok(native.checks.some((check) => check.member.startsWith(`${mark} `) && check.source.endsWith(`; ${code}, by supplier's data`)));
  await page.getByTestId("leaf-schedule").click();
  await page.getByTestId("schedule").getByText("by supplier's data").first().waitFor();
  const bill = await downloaded(page, () => page.getByTestId("csv").click());
  assert.match(bill.text, /by supplier's data/);

  // Undo and redo, then one touch back to ours.
  await page.getByTestId("undo").click();
  assert.deepEqual((await saved(page)).items, []);
  assert.equal(await ratio(page, mark), before);
  assert.equal(await page.getByTestId("supplied").count(), 0);
  await page.getByTestId("redo").click();
  assert.equal(await ratio(page, mark), after);
  await page.getByTestId("supplied").click();
  const row = page.getByTestId(`item-${code}`);
  await row.getByTestId("ours-working_kn").click();
  await row.getByTestId("ours-working_kn").waitFor({ state: "detached" });
  assert.deepEqual(await saved(page), scheme);
  await page.getByTestId("undo").click();

  // Out as CSV and JSON, and into a fresh page.
  await page.getByTestId("item-files").click();
  const csv = await downloaded(page, () => page.getByTestId("own-csv").click());
  const json = await downloaded(page, () => page.getByTestId("own-json").click());
  assert.match(csv.name, /-items\.csv$/);
  assert.match(csv.text.split("\r\n")[0], /working_kn \(kN, working\)/);
  await withPage(SCREENS.desk, async ({ page }) => {
    await demo(page);
    await page.getByTestId("leaf-items").click();
    await page.getByTestId("item-files").click();
    for (const { name, text } of [csv, json]) {
      await file(page, name, text);
      await page.getByTestId("import").filter({ hasText: "1 items read, 1 of them new or changed" }).waitFor();
      assert.equal(await ratio(page, mark), after);
      assert.deepEqual((await saved(page)).items, replaced.items);
      await page.getByTestId("undo").click();
      assert.equal(await ratio(page, mark), before);
    }
  }, { site });
}));

test("a faulty file of items is told by line and column and changes nothing", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await page.getByTestId("leaf-items").click();
  await page.getByTestId("item-files").click();
  const all = await downloaded(page, () => page.getByTestId("all-csv").click());
  const before = await saved(page);
  const lines = all.text.split("\r\n");
  const at = lines.findIndex((line) => line.startsWith("TIE20,"));
  lines[at] = lines[at].replace(/,0\.02,/, ",20 mm,");
  lines[at + 1] = lines[at + 1].replace(/,[^,]*$/, ",,,,,,,,,,,,,");
  await file(page, "faulty.csv", lines.join("\r\n"));
  const faults = page.getByTestId("import-faults").getByRole("listitem");
  await faults.first().waitFor();
  const told = await faults.allInnerTexts();
  assert.ok(told.includes(`Line ${at + 1}, column "diameter_m (m, size)": "20 mm" is not a number; give one with a decimal point and no unit.`), told.join("\n"));
  assert.ok(told.some((fault) => fault.startsWith(`Line ${at + 2}`)), told.join("\n"));
  assert.deepEqual(await saved(page), before);
  await page.getByTestId("undo").click();
  await page.getByTestId("start").waitFor();
}));

test("a standard section becomes the transfer beam, and an own item a copy, by keys alone", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const scheme = await saved(page);
  const press = async (id) => {
    await page.getByTestId(id).first().focus();
    await page.keyboard.press("Enter");
  };
  await page.locator('[data-testid^="ratio-A1"]').first().focus();
  await page.keyboard.press("Enter");
  await press("used-transfer-beam");
  await press("sections");
  await page.getByTestId("section-search").focus();
  await page.keyboard.type("he 300");
  await page.getByTestId("section-grade").selectOption("S355");
  await press("section-HE-300-B");
  await page.getByTestId("used-transfer-beam").filter({ hasText: "HE 300 B S355" }).waitFor();
  const chosen = await saved(page);
  assert.equal(chosen.openings[0].transfer, "HE300B-S355");
  assert.equal(await page.getByTestId("field-transfer-beams").inputValue(), "HE300B-S355");
  assert.equal(await page.getByTestId("supplied").count(), 0, "a standard section is no supplier's data");
  await page.getByTestId("undo").click();
  assert.deepEqual(await saved(page), scheme);

  // A copy under a new code, with a value of its own.
  await press("leaf-items");
  await page.getByTestId("item-search").focus();
  await page.keyboard.type("tie20");
  await page.getByTestId("item-TIE20").getByRole("button").first().focus();
  await page.keyboard.press("Enter");
  await press("copy-item");
  await page.getByTestId("copy-code").fill("TIE20");
  await page.keyboard.press("Enter");
  await page.getByRole("alert").filter({ hasText: "taken" }).waitFor();
  await page.getByTestId("copy-code").fill("TIE20-HIGH");
  await page.keyboard.press("Enter");
  const own = page.getByTestId("item-TIE20-HIGH");
  await own.getByTestId("value-working_kn").focus();
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => document.activeElement?.dataset.testid === "supply-number");
  await page.keyboard.type("-4");
  await page.keyboard.press("Enter");
  await own.getByTestId("supply-fault").filter({ hasText: "working load of -4 kN is not possible" }).waitFor();
  await own.getByTestId("supply-number").fill("200");
  await page.keyboard.press("Enter");
  await own.getByTestId("supply-number").waitFor({ state: "detached" });
  assert.ok(await own.getByTestId("value-working_kn").evaluate((button) => button === document.activeElement), "the focus comes back");
  const items = (await saved(page)).items;
  assert.deepEqual(items.map((item) => [item.code, item.working_kn]), [["TIE20-HIGH", 200]]);
}));

for (const name of ["tablet", "phone"]) {
  test(`the catalogue under a finger on a ${name}`, () => withPage(SCREENS[name], async ({ page }) => {
    await page.getByTestId("start-demo").tap();
    await page.locator('[data-testid^="ratio-"]').first().waitFor();
    await page.getByTestId("leaf-items").tap();
    await page.getByTestId("items-in-use").tap();
    await page.getByTestId("item-files").tap();
    await page.locator('[data-testid^="item-TIE"] > button').first().tap();
    await page.getByTestId("value-working_kn").tap();
    await page.getByTestId("copy-item").tap();
    await page.getByTestId("sections").tap();
    const least = name === "tablet" ? 16 : 12;
    const faults = await page.getByTestId("catalogue").evaluate((catalogue, least) => {
      const shown = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
      const controls = [...catalogue.querySelectorAll("button, input, select")].filter(shown);
      const box = (element) => (element.closest("label") ?? element).getBoundingClientRect();
      const small = controls.filter((element) => box(element).height < 44 || box(element).width < 44);
      const named = (element) => element.getAttribute("aria-label") || element.textContent.trim() || element.closest("label")?.textContent.trim();
      const texts = [...catalogue.querySelectorAll("*")].filter(shown).filter((element) =>
        [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim()));
      const size = (element) => parseFloat(getComputedStyle(element).fontSize);
      const wide = controls.filter((element) => box(element).right > catalogue.getBoundingClientRect().right + 1);
      const told = (what) => (element) => `${what}: ${element.dataset.testid ?? element.textContent.trim().slice(0, 40)}`;
      return [
        ...small.map(told("small")),
        ...controls.filter((element) => !named(element)).map(told("nameless")),
        ...texts.filter((element) => size(element) < least).map(told("fine print")),
        ...wide.map(told("beyond the edge")),
      ];
    }, least);
    assert.deepEqual(faults, []);
  }));
}
