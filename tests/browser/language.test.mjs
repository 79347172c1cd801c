// The page in German and in US customary units: nothing is left in English or in SI, nothing is lost, all of it fits.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { mapping, speaks, typeDimension } from "./desk.mjs";
import { SCREENS, opened, stored, withPage } from "./harness.mjs";

const german = JSON.parse(readFileSync(new URL("../../static/language/de.json", import.meta.url), "utf8"));
/** Short texts that stand on the page as they are in both languages, or that users, sources and formulas bring in. */
const OTHER = new Set(Object.entries(german).filter(([english, other]) => english !== other).map(([english]) => english));

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('[data-testid^="ratio-"]').first().waitFor();
}

async function choose(page, field, value) {
  const data = page.locator(".title-block button.more");
  if (await data.isVisible() && (await data.getAttribute("aria-expanded")) === "false") await data.click();
  await page.getByTestId(field).selectOption(value);
}

/** Every text that can be read or is said, but for formulas and their sources. */
function texts(page) {
  return page.evaluate(() => {
    const found = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { parentElement, textContent } = walker.currentNode;
      if (parentElement.closest("dd, .fine, noscript, script, style, option[lang]")?.matches(".formula, .fine, noscript, script, style, option")) continue;
      if (textContent.trim()) found.push(textContent.trim());
    }
    for (const element of document.querySelectorAll("[aria-label], [title], [placeholder]")) {
      if (element.matches("tr")) continue;
      for (const name of ["aria-label", "title", "placeholder"]) if (element.hasAttribute(name)) found.push(element.getAttribute(name));
    }
    return found;
  });
}

/** What is wider than the box that it stands in, or than the screen. */
function clipped(page) {
  return page.evaluate(() => {
    const wide = [];
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) wide.push(`page: ${scrollWidth} in ${clientWidth}`);
    for (const field of document.querySelectorAll(".amount input")) {
      if (field.checkVisibility() && field.scrollWidth > field.clientWidth + 1) wide.push(`${field.dataset.testid}: ${field.value}`);
    }
    for (const element of document.querySelectorAll("button, label span, summary, th, td, caption, dt, dd, p, h2, h3, [role=tab], .unit")) {
      if (!element.checkVisibility() || element.closest(".unseen")) continue;
      if (getComputedStyle(element).display.startsWith("inline")) continue;
      if (element.scrollWidth > element.clientWidth + 1) wide.push(`${element.textContent.slice(0, 40)}: ${element.scrollWidth} in ${element.clientWidth}`);
      const [{ left, right }, of] = [element.getBoundingClientRect(), element.closest(".margin, .pens, .title-block, .board, body").getBoundingClientRect()];
      if (right > of.right + 1 || left < of.left - 1) wide.push(`${element.textContent.slice(0, 40)}: from ${left} to ${right} in ${of.left} to ${of.right}`);
    }
    return wide;
  });
}

async function leaf(page, name) {
  await page.getByTestId(`leaf-${name}`).click();
}

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`speaks German on a ${name}, and nothing is cut off`, () => withPage(screen, async ({ page }) => {
    await demo(page);
    await choose(page, "language", "de");
    await speaks(page, "de");
    assert.equal(await page.getByTestId("pen-shutter").innerText(), "Schalung");
    for (const of of ["notes", "schedule", "steps", "loads", "items"]) {
      await leaf(page, of);
      const all = await texts(page);
      const english = all.filter((text) => OTHER.has(text));
      assert.deepEqual(english, [], `left in English beside ${of}`);
      const sentences = all.filter((text) => /\b(the|with|which|are|not|carries|row of|is)\b/.test(text));
      assert.deepEqual(sentences, [], `English sentences beside ${of}`);
      assert.deepEqual(await clipped(page), [], `cut off beside ${of}`);
    }
    const notes = await (await leaf(page, "notes"), page.getByTestId("notes").innerText());
    assert.match(notes, /Traggerüst|Schalung|Abfangträger/);
    assert.match(await page.getByTestId("ratio-S1").getAttribute("aria-label"), /^S1 [01],\d\d: S1 (Hauptträger|Nebenträger|Schalhaut|Fuß), .*, Ausnutzung [01],\d\d$/);
  }));
}

test("goes back to English, and keeps the language and the units over a reload", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const before = await texts(page);
  await choose(page, "language", "de");
  await speaks(page, "de");
  await page.reload();
  await opened(page);
  await speaks(page, "de");
  assert.equal(await page.getByTestId("leaf-notes").innerText().then((text) => text.split(" ")[0]), "Hinweise");
  await choose(page, "units", "us");
  await page.getByTestId("dimension-width").getByText("′").waitFor();
  await page.reload();
  await opened(page);
  await page.getByTestId("dimension-width").getByText("′").waitFor();
  await choose(page, "units", "si");
  await choose(page, "language", "en");
  await speaks(page, "en");
  const after = await texts(page);
  const missing = before.filter((text) => !after.includes(text) && !/Sav|Undo/.test(text));
  assert.deepEqual(missing, []);
}));

test("loses nothing when the language changes: what is selected, shown and done stays", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await typeDimension(page, "dimension-width", "6.1 m");
  await page.getByTestId("ratio-S1").locator("text").click();
  await page.keyboard.press("Control++");
  const [steps, map] = [page.getByTestId("undo"), await mapping(page)];
  await choose(page, "language", "de");
  await speaks(page, "de");
  assert.deepEqual(await mapping(page), map);
  assert.match(await page.getByTestId("element").locator("h2").innerText(), /^Wandschalung S1$/);
  assert.equal(await page.getByTestId("language").evaluate((field) => field === document.activeElement), true);
  await page.getByTestId("leaf-steps").click();
  assert.match(await page.getByTestId("steps").innerText(), /Länge eintippen/);
  await steps.click();
  await page.getByTestId("dimension-width").getByText("8100").waitFor();
}));

test("speaks the language that the browser asks for", () => withPage({ ...SCREENS.desk, locale: "de-AT" }, async ({ page }) => {
  await speaks(page, "de");
  assert.equal(await page.getByTestId("pen-ties").innerText(), "Anker");
}));

test("changes to German with the network cut", () => withPage(SCREENS.desk, async ({ page, context, site }) => {
  await stored(page);
  await demo(page);
  await context.setOffline(true);
  await site.close();
  await choose(page, "language", "de");
  await speaks(page, "de");
  await page.goto("about:blank");
  await page.goto(site.url);
  await opened(page);
  await speaks(page, "de");
}));

/** The corners of the section as they are kept. */
function corners(page) {
  return page.evaluate(() => JSON.parse(localStorage.getItem("falsewright.scheme")).section.outline.map(({ x_m: x, z_m: z }) => ({ x, z })));
}

test("shows feet and inches and reads them as they are typed", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  await choose(page, "units", "us");
  const width = page.getByTestId("dimension-width").locator("text");
  await page.getByTestId("dimension-width").getByText("′").waitFor();
  assert.match(await width.textContent(), /^\d+′-\d+( \d+\/\d+)?″$/);
  for (const [typed, metres] of [[`18'-6 1/2"`, 18.5 * 0.3048 + 0.5 * 0.0254], ["19", 19 * 0.3048], ["5.9 m", 5.9]]) {
    await typeDimension(page, "dimension-width", typed);
    await page.getByTestId("typing").waitFor({ state: "detached" });
    await page.getByTestId("saved").getByText("Saved").waitFor();
    await page.waitForTimeout(500);
    const xs = (await corners(page)).map(({ x }) => x);
    const got = Math.max(...xs) - Math.min(...xs);
    assert.ok(Math.abs(got - metres) < 1e-9, `${typed}: ${got} m for ${metres} m`);
  }
  assert.equal(await width.textContent(), "19′-4 5/16″");
  const shown = (await texts(page)).filter((text) => /\d (kN|kPa|mm|kNm|m³|m\/h|kg|°C|MPa)\b/.test(text));
  assert.deepEqual(shown, [], "left in SI");
}));

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`no label covers another in US units and German on a ${name}`, () => withPage(screen, async ({ page }) => {
    await demo(page);
    await choose(page, "units", "us");
    await choose(page, "language", "de");
    await speaks(page, "de");
    assert.deepEqual(await clipped(page), []);
    await page.evaluate(() => document.querySelector(".title-block button.more")?.checkVisibility() && document.querySelector(".title-block.open button.more")?.click());
    await page.getByTestId("fit").click();
    const over = await page.evaluate(() => {
      const texts = [...document.querySelectorAll("svg.drawing text")].filter((text) => text.textContent.trim() && text.checkVisibility());
      const boxes = texts.map((text) => ({ text: text.textContent, box: text.getBoundingClientRect() }));
      const shared = (a, b, low, high) => Math.min(a[high], b[high]) - Math.max(a[low], b[low]);
      const pairs = boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => [a, b]));
      return pairs.filter(([{ box: a }, { box: b }]) => shared(a, b, "left", "right") > 1 && shared(a, b, "top", "bottom") > 1).map(([a, b]) => `${a.text} on ${b.text}`);
    });
    assert.deepEqual(over, []);
  }));
}
