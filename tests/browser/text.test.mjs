// All that is written can be read: large enough, not cut off, nothing on top of it, in every state at every size.
import assert from "node:assert/strict";
import { test } from "node:test";
import { speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";
import { eachState } from "./states.mjs";

/** Least sizes, px: of all writing, and of what is read on a tablet. */
const LEAST = { desk: 12, tablet: 16, phone: 12 };

/** What is wrong with the writing that is seen. */
function faults(page, least) {
  return page.evaluate((least) => {
    const found = new Set();
    const seen = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !element.closest(".unseen, .skips, noscript, defs");
    // What an element is cut by: boxes that hide what overflows; those that scroll show it in time.
    const clip = (element, from) => {
      let box = { left: 0, top: 0, right: innerWidth, bottom: innerHeight };
      let hides = false;
      for (let parent = element; parent && parent !== document.documentElement; parent = parent.parentElement) {
        const style = getComputedStyle(parent);
        if (style.overflowX === "visible" && style.overflowY === "visible") continue;
        const frame = parent.getBoundingClientRect();
        box = { left: Math.max(box.left, frame.left), top: Math.max(box.top, frame.top), right: Math.min(box.right, frame.right), bottom: Math.min(box.bottom, frame.bottom) };
        const scrolls = (overflow, size, shown) => overflow === "auto" || overflow === "scroll" ? size > shown + 1 : false;
        if (scrolls(style.overflowY, parent.scrollHeight, parent.clientHeight) || scrolls(style.overflowX, parent.scrollWidth, parent.clientWidth)) {
          const part = { ...from };
          part.top = Math.max(from.top, box.top);
          part.bottom = Math.min(from.bottom, box.bottom);
          part.left = Math.max(from.left, box.left);
          part.right = Math.min(from.right, box.right);
          return { box, part, hides };
        }
        if (from.right > frame.right + 1.5 || from.bottom > frame.bottom + 3 || from.left < frame.left - 1.5 || from.top < frame.top - 3) hides = true;
      }
      return { box, part: from, hides };
    };
    const texts = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode;
      const parent = node.parentElement;
      if (!node.textContent.trim() || ["SCRIPT", "STYLE", "OPTION"].includes(parent.tagName) || !seen(parent)) continue;
      const inDrawing = parent.closest("svg.drawing") !== null;
      const size = parseFloat(getComputedStyle(parent).fontSize);
      const short = node.textContent.trim().slice(0, 40);
      if (size < least) found.add(`“${short}” is ${size} px`);
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const rect of range.getClientRects()) {
        if (rect.width < 1) continue;
        const { part, hides } = clip(parent, rect);
        if (part.right - part.left < 2 || part.bottom - part.top < rect.height * 0.6) continue;
        if (!inDrawing) {
          if (hides) found.add(`“${short}” is cut off`);
          if (part.right > innerWidth + 1 || part.left < -1) found.add(`“${short}” leaves the screen`);
        }
        texts.push({ node, parent, inDrawing, short, rect: part });
      }
    }
    // Written in a field.
    for (const field of document.querySelectorAll("input[type=text], select")) {
      if (!seen(field)) continue;
      const size = parseFloat(getComputedStyle(field).fontSize);
      if (size < least) found.add(`${field.dataset.testid} is written in ${size} px`);
      const [box, panel] = [field.getBoundingClientRect(), field.closest(".leaf, .title-block")?.getBoundingClientRect()];
      if (panel && (box.right > panel.right + 1 || box.left < panel.left - 1)) found.add(`${field.dataset.testid} leaves its panel`);
      if (field.tagName === "INPUT" && field.scrollWidth > field.clientWidth + 1 && field.getBoundingClientRect().width > 0) found.add(`${field.dataset.testid} cuts off “${field.value}”`);
    }
    const over = ".menu, .message, .typing-place, .start";
    for (const [i, a] of texts.entries()) {
      for (const b of texts.slice(i + 1)) {
        const layers = [a, b].map((one) => one.parent.closest(over));
        if (a.node === b.node || layers[0] !== layers[1]) continue;
        const shared = (low, high) => Math.min(a.rect[high], b.rect[high]) - Math.max(a.rect[low], b.rect[low]);
        if (shared("left", "right") > 2 && shared("top", "bottom") > 4) found.add(`“${a.short}” and “${b.short}” stand on each other`);
      }
    }
    return [...found];
  }, least);
}

/** Lets the page speak German and write US customary units. */
async function speakOtherwise(page) {
  const data = page.locator(".title-block button.more");
  const folded = await data.isVisible();
  if (folded) await data.click();
  await speak(page, "de");
  await page.getByTestId("units").selectOption("us");
  await page.getByTestId("pen-select").waitFor();
  if (folded) await data.click();
}

for (const [name, screen] of Object.entries(SCREENS)) for (const speech of ["", ", in German and US units"]) {
  test(`all writing can be read on a ${name}${speech}`, () => withPage(screen, async ({ page }) => {
    if (speech) await speakOtherwise(page);
    const all = new Map();
    await eachState(page, async (state) => {
      await page.waitForTimeout(150);
      for (const fault of await faults(page, LEAST[name])) all.set(fault, all.get(fault) ?? state);
    });
    assert.deepEqual([...all].map(([fault, state]) => `${state}: ${fault}`), []);
  }));
}
