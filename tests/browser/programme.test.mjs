// Sets of equipment that go from bay to bay: typed in the title block, told below the schedule, among options and on
// paper.
import assert from "node:assert/strict";
import { test } from "node:test";
import { compute, fill, saved, speak } from "./desk.mjs";
import { SCREENS, withPage } from "./harness.mjs";

const plain = (text) => text.replaceAll("\u00a0", " ");

test("uses, hire and cost of all bays are told with what the core works out", () => withPage(SCREENS.desk, async ({ page }) => {
  await page.getByTestId("start-demo").click();
  await page.locator("g.figure").first().waitFor();
  const part = page.getByTestId("programme");
  await part.locator("summary").click();
  const told = part.getByTestId("all-bays");
  const line = async (name) => plain(await told.getByRole("row", { name }).locator("td").innerText());
  assert.deepEqual([await line("Bays of each set"), await line("Time"), await line("Weeks of hire")], ["6", "42.0 d", "6"]);

  // Two sets share the bays; a set for each of seven bays is refused, for there are six.
  await fill(page, "sets-of-equipment", 2);
  await told.getByRole("row", { name: "Bays of each set" }).getByText("3").waitFor();
  await fill(page, "sets-of-equipment", 7);
  await page.getByTestId("message").getByText(/a number of sets/).waitFor();
  assert.equal((await saved(page)).programme.sets, 2);

  // A cost once a rate is known, also in the tray and among key figures.
  assert.equal(await told.getByRole("row", { name: "Cost" }).count(), 0);
  await fill(page, "hire-a-week", 40);
  await fill(page, "facing-bought", 22);
  await fill(page, "setting-and-striking", 31);
  await told.getByRole("row", { name: "Cost of work" }).waitFor();
  const { cost } = compute(await saved(page)).reuse;
  const total = cost.hire + cost.facing + cost.work;
  for (const [name, value] of [["hire", cost.hire], ["facing", cost.facing], ["work", cost.work], ["all bays", total]]) {
    assert.equal((await line(`Cost of ${name}`)).replace(/\D/g, ""), Math.round(value).toString(), name);
  }
  assert.equal(await line("Cost by facing"), `${cost.per_m2.toFixed(2)} /m²`);
  await page.getByTestId("options").click();
  const inTray = plain(await page.locator('[data-part="weight"]').first().innerText());
  assert.equal(inTray.replace(/\D/g, ""), Math.round(total).toString());
  await page.getByTestId("options").click();

  // Faster than the concrete hardens: a note.
  await fill(page, "cycle-of-a-set", 0.5);
  await page.getByTestId("notes").getByText(/A set is wanted for the next bay after 0\.5.d/).waitFor();

  await speak(page, "de");
  await page.getByTestId("programme").getByText("Blöcke je Satz, höchstens").waitFor();
  await speak(page, "en");
  await page.getByTestId("programme").getByLabel("Work out uses, hire and cost").uncheck();
  await page.getByTestId("programme").getByTestId("all-bays").waitFor({ state: "detached" });
  assert.equal((await saved(page)).programme, undefined);
}));
