// The page in each of its states, for tests that look at all of it.
import { pen, tap } from "./desk.mjs";

export const THEMES = ["light", "dark", "sunlight"];

/** Chooses the look of the page, as its own field does. */
export async function theme(page, name) {
  await page.evaluate((name) => {
    document.documentElement.dataset.chosenTheme = name;
    window.dispatchEvent(new Event("falsewright-theme"));
  }, name);
}

/** Goes through the states of a page that has just opened; calls `look` with the name of each. */
export async function eachState(page, look) {
  await look("start");
  await page.getByTestId("start-outline").click();
  await look("outline");
  await tap(page, [0, 0]);
  await tap(page, [3, 0]);
  await look("blank sheet, drawing");
  await page.keyboard.press("Escape");
  await pen(page, "select");
  await page.getByTestId("start-demo").click();
  await page.locator('.tag[data-testid^="ratio-"] rect').first().waitFor();
  await look("demo");
  for (const name of ["outline", "joint", "shutter", "ties", "legs", "opening", "hand", "select"]) {
    await pen(page, name);
    if (["outline", "shutter", "ties"].includes(name)) await look(`pen ${name}`);
  }
  await page.getByTestId("show-moment").click();
  await page.getByTestId("show-deflection").click();
  await look("diagrams");
  await page.getByTestId("show-moment").click();
  await page.getByTestId("show-deflection").click();

  await pull(page, "leaf-notes");
  await page.getByTestId("note-1").locator("button.note").click();
  await pull(page, "leaf-notes");
  await look("a note with its element");
  const formula = page.getByTestId("notes").locator("li").filter({ has: page.getByTestId("worked") });
  if (await formula.count()) await look("a note with its formula");
  for (const leaf of ["schedule", "steps", "loads", "items"]) {
    await pull(page, `leaf-${leaf}`);
    await look(leaf);
  }
  await page.locator("button.item").first().click();
  await page.getByTestId("leaf").or(page.locator("#leaf")).first().evaluate((leaf) => leaf.scrollTo(0, 0));
  await look("an item of the catalogue");
  await page.locator("button.value").first().click();
  await look("a value of an item");
  await choose(page);
  await pull(page, "leaf-element");
  await look("an element");
  await page.locator(".checks summary").first().click();
  await look("an element's check");
  await hinged(page, "S6");
  await page.getByTestId("swing").scrollIntoViewIfNeeded();
  await look("a hinged shutter");
  await page.getByTestId("undo").click();
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Shift+F10");
  await page.getByTestId("menu").waitFor();
  await look("menu");
  await page.keyboard.press("Escape");
  await page.locator('[data-testid="dimension-width"] text').click();
  await page.getByTestId("typing").fill("0.1");
  await page.getByTestId("typing").press("Enter");
  await page.getByTestId("typing-why").waitFor();
  await look("a dimension that is refused");
  await page.getByTestId("typing").press("Escape");
  await page.keyboard.press("Escape");

  for (const view of ["elevation", "plan"]) {
    await page.getByTestId(`view-${view}`).click();
    await look(view);
  }
  await page.getByTestId("view-section").click();

  await page.getByTestId("options").click();
  await page.getByTestId("option-copy").click();
  await page.locator(".print").nth(1).waitFor();
  await look("the tray of options");
  await page.getByTestId("compare-0").click();
  await page.getByTestId("beside").waitFor();
  await look("two options");
  await page.getByTestId("beside-close").click();
  await page.getByTestId("present").click();
  await page.getByTestId("presenting").waitFor();
  await look("shown to others");
  await page.keyboard.press("Escape");
  await page.getByTestId("presenting").waitFor({ state: "detached" });
  await page.getByTestId("options").click();

  const more = page.getByTestId("title-block").locator("button.more");
  if (await more.isVisible()) await more.click();
  for (const id of ["site-card", "hold-points", "loads-and-limits", "striking", "moving", "page-settings"]) {
    const part = page.getByTestId(id);
    if (!(await part.count())) continue;
    await part.locator("summary").click();
    await part.scrollIntoViewIfNeeded();
    await look(id);
    await part.locator("summary").click();
  }
  await look("title block");
}

/** Makes a shutter hinged and has its leaf up. */
export async function hinged(page, mark) {
  await page.locator(`.tag[data-testid="ratio-${mark}"]:has(rect)`).focus();
  await page.keyboard.press("Enter");
  await pull(page, "leaf-element");
  await page.getByTestId("field-hinged").click();
  await page.getByTestId("swing").waitFor();
}

/** Brings a leaf of the margin up. */
export async function pull(page, id) {
  const tab = page.getByTestId(id);
  if (!(await page.locator("#leaf").isVisible()) || (await tab.getAttribute("aria-selected")) !== "true") await tab.click();
  if (!(await page.locator("#leaf").isVisible())) await tab.click();
}

/** Selects an element that has checks. */
async function choose(page) {
  await page.locator('.tag[data-testid^="ratio-"]:has(rect)').first().focus();
  await page.keyboard.press("Enter");
  await page.getByTestId("element").waitFor({ state: "attached" });
}
