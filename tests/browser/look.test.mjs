// The looks of the page: kept, readable, still when asked for, and told to screen readers.
import assert from "node:assert/strict";
import { test } from "node:test";
import { drag, openTitleBlock, pen, tap } from "./desk.mjs";
import { SCREENS, opened, withPage } from "./harness.mjs";
import { THEMES, theme } from "./states.mjs";

const look = (page) => page.evaluate(() => document.documentElement.dataset.theme);

async function demo(page) {
  await page.getByTestId("start-demo").click();
  await page.locator('.tag[data-testid^="ratio-"] rect').first().waitFor();
}

test("a look is chosen on the page and kept over a reload", () => withPage({ ...SCREENS.desk, colorScheme: "dark" }, async ({ page }) => {
  assert.equal(await look(page), "dark", "as the system asks");
  await openTitleBlock(page);
  await page.getByTestId("page-settings").locator("summary").click();
  const field = page.getByTestId("field-look-of-the-page");
  for (const [choice, wanted] of [["Light", "light"], ["Sunlight", "sunlight"], ["As the system", "dark"], ["Sunlight", "sunlight"]]) {
    await field.selectOption({ label: choice });
    assert.equal(await look(page), wanted);
  }
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(await paper(), "rgb(255, 255, 255)");
  assert.equal(await page.locator("meta[name=theme-color]").getAttribute("content"), "#ffffff");
  await page.reload();
  await opened(page);
  assert.equal(await look(page), "sunlight");
  assert.equal(await field.locator("option:checked").textContent(), "Sunlight");
  await page.emulateMedia({ colorScheme: "light" });
  assert.equal(await look(page), "sunlight");
}));

test("more contrast is given to a system that asks for it", () => withPage({ ...SCREENS.desk, contrast: "more" }, async ({ page }) => {
  assert.equal(await look(page), "sunlight");
  await page.emulateMedia({ colorScheme: "dark", contrast: "more" });
  await page.waitForFunction(() => document.documentElement.dataset.theme === "dark");
  assert.equal(await page.evaluate(() => getComputedStyle(document.body).color), "rgb(255, 255, 255)");
}));

test("the system's own colours are kept", () => withPage({ ...SCREENS.desk, forcedColors: "active" }, async ({ page }) => {
  await demo(page);
  const faults = await page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement("i"));
    const system = (name) => {
      probe.style.color = name;
      return getComputedStyle(probe).color;
    };
    const allowed = ["Canvas", "CanvasText", "Highlight", "HighlightText", "GrayText"].map(system);
    probe.remove();
    const of = (selector, property) => [...document.querySelectorAll(selector)].map((element) => getComputedStyle(element)[property]);
    const used = [...of(".tag rect", "fill"), ...of(".tag text", "fill"), ...of(".figure .concrete", "stroke"), ...of(".dimension text", "fill")];
    return used.length > 20 ? [...new Set(used)].filter((colour) => colour.startsWith("rgb") && !allowed.includes(colour)) : ["nothing drawn"];
  });
  assert.deepEqual(faults, []);
}));

for (const name of THEMES) {
  const least = name === "sunlight" ? 7 : 4.5;
  test(`the writing on the drawing has a contrast of ${least} to its ground, ${name}`, () => withPage(SCREENS.desk, async ({ page }) => {
    await demo(page);
    await theme(page, name);
    await page.waitForTimeout(200);
    const faults = await page.evaluate((least) => {
      const root = getComputedStyle(document.documentElement);
      const probe = document.body.appendChild(document.createElement("i"));
      const rgb = (colour) => {
        probe.style.color = colour;
        return getComputedStyle(probe).color.match(/[\d.]+/g).slice(0, 3).map(Number);
      };
      const light = (colour) => rgb(colour).map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
        .reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
      const contrast = (a, b) => {
        const [low, high] = [light(a), light(b)].sort((x, y) => x - y);
        return (high + 0.05) / (low + 0.05);
      };
      const faults = [];
      const check = (what, text, ground) => {
        if (contrast(text, ground) < least) faults.push(`${what}: ${text} on ${ground} is ${contrast(text, ground).toFixed(2)}`);
      };
      const svg = document.querySelector(".drawing");
      const paper = root.getPropertyValue("--paper");
      // All tones, whether the demo shows them or not.
      for (const tone of [...Array(10).keys(), "over"]) {
        const tag = document.createElementNS("http://www.w3.org/2000/svg", "g");
        tag.setAttribute("class", `tag tone-${tone}`);
        tag.innerHTML = "<rect/><text>0</text>";
        svg.append(tag);
        check(`tag ${tone}`, getComputedStyle(tag.querySelector("text")).fill, getComputedStyle(tag.querySelector("rect")).fill);
        tag.remove();
        const ratio = Object.assign(document.createElement("span"), { className: `ratio tone-${tone}` });
        document.body.append(ratio);
        check(`ratio ${tone}`, getComputedStyle(ratio).color, getComputedStyle(ratio).backgroundColor);
        ratio.remove();
      }
      for (const text of svg.querySelectorAll(".dimension text, .tag.value text, .scale-bar text")) {
        check(text.textContent, getComputedStyle(text).fill, paper);
      }
      for (const name of ["--ink", "--quiet", "--guide", "--force", "--over"]) check(name, root.getPropertyValue(name), paper);
      probe.remove();
      return faults;
    }, least);
    assert.deepEqual(faults, []);
  }));
}

test("line weights are one step up in sunlight", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const weights = () => page.evaluate(() => [".concrete", ".member", ".joint"].map((name) => parseFloat(getComputedStyle(document.querySelector(`.figure ${name}`)).strokeWidth)));
  await theme(page, "light");
  const light = await weights();
  await theme(page, "sunlight");
  const sunlight = await weights();
  // ISO 128: each width is √2 times the one before.
  for (const [i, weight] of light.entries()) assert.ok(Math.abs(sunlight[i] / weight / Math.SQRT2 - 1) < 0.02, `${light} ${sunlight}`);
}));

test("nothing moves by itself where reduced motion is asked for", () => withPage({ ...SCREENS.desk, reducedMotion: "reduce" }, async ({ page }) => {
  await demo(page);
  const moving = () => page.evaluate(() => [...document.querySelectorAll("*")].filter((element) => {
    const style = getComputedStyle(element);
    const lasts = (times) => times.split(",").some((time) => parseFloat(time) > 0);
    return lasts(style.transitionDuration) || lasts(style.animationDuration) || style.scrollBehavior === "smooth";
  }).length);
  assert.equal(await moving(), 0);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  assert.ok((await moving()) > 0);
}));

test("all that is placed, and its result, has a name", () => withPage(SCREENS.desk, async ({ page }) => {
  await demo(page);
  const drawing = await page.getByTestId("drawing").ariaSnapshot();
  for (const [what, pattern] of [
    ["shutters", /img ".*S1.*"/], ["rows of ties", /img ".*T1.*"/], ["falsework", /img ".*F1.*"/], ["opening", /img ".*(opening|clear way).*"/i],
    ["ratios", /button ".*ratio \d\.\d\d"/], ["dimensions", /button "Width of the section 8100 mm"/], ["notes", /button "Note 1: .*"|img "Note 1: .*"/],
  ]) assert.match(drawing, pattern, what);
  const unnamed = await page.locator("svg.drawing [role]").evaluateAll((all) => all.filter((one) => !one.getAttribute("aria-label")?.trim()).map((one) => one.outerHTML.slice(0, 120)));
  assert.deepEqual(unnamed, []);
  const page_ = await page.locator("body").ariaSnapshot();
  for (const pattern of [/application "Section of the culvert/, /complementary "Margin/, /tab "Notes/, /region "Title block"/, /navigation "Pens"/, /Worst ratio/]) {
    assert.match(page_, pattern);
  }
}));

test("a change is told once, with the worst ratio, and a drag is silent until it ends", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-box").click();
  await page.getByTestId("spoken").getByText(/^Draw section/).waitFor();
  await pen(page, "shutter");
  await page.evaluate(() => {
    window.told = [];
    const log = (list) => list.forEach(({ target }) => {
      const element = target.nodeType === 1 ? target : target.parentElement;
      const live = element?.closest("[aria-live], [role=status], [role=alert], [role=log]");
      if (live?.textContent.trim()) window.told.push(live.textContent.trim());
    });
    new MutationObserver(log).observe(document.body, { subtree: true, childList: true, characterData: true });
  });
  const told = async () => {
    await page.waitForFunction(() => window.told.length > 0);
    await page.waitForTimeout(900);
    return page.evaluate(() => window.told.splice(0));
  };
  await tap(page, [0, 2]);
  const first = await told();
  assert.equal(first.length, 1, `${first}`);
  assert.match(first[0], /^Add shutter\. Worst ratio (▲ )?\d.*: S1/);
  await pen(page, "ties");
  await told();
  await drag(page, [0, 1.5], [0, 2.4]);
  const rows = await told();
  assert.equal(rows.length, 1, `${rows}`);
  assert.match(rows[0], /Worst ratio/);
  await page.getByTestId("undo").click();
  assert.match((await told()).join(), /^Back to: Add shutter/);
}));
