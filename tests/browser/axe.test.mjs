// No state of the page breaks a rule of WCAG 2.2 A and AA that a program can find: axe, in every theme at every size.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { SCREENS, withPage } from "./harness.mjs";
import { THEMES, eachState, theme } from "./states.mjs";

const AXE = readFileSync(new URL("./node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"];

async function violations(page) {
  const found = await page.evaluate((tags) => window.axe.run(document, { runOnly: tags, resultTypes: ["violations"] }), TAGS);
  assert.ok(found.passes.length > 5, "the rules were run");
  const node = ({ target, failureSummary }) => `  ${target.join(" ")}: ${failureSummary.split("\n").slice(1).join(" ").trim()}`;
  return found.violations.map(({ id, help, nodes }) => [`${id}: ${help}`, ...nodes.slice(0, 4).map(node)].join("\n"));
}

for (const [name, screen] of Object.entries(SCREENS)) {
  for (const look of THEMES) {
    test(`axe finds nothing on a ${name}, ${look}`, () => withPage(screen, async ({ page }) => {
      await page.evaluate(AXE);
      await theme(page, look);
      const all = [];
      await eachState(page, async (state) => {
        const found = await violations(page);
        if (found.length) all.push(`${state}:\n${found.join("\n")}`);
      });
      assert.equal(all.join("\n"), "");
    }));
  }
}

test("axe would find a fault", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.evaluate(AXE);
  await page.getByTestId("start-box").evaluate((button) => button.replaceChildren());
  assert.match((await violations(page)).join("\n"), /button-name/);
}));
