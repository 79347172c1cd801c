// Measures the built page: what it weighs, how soon it stands, how smoothly it follows a drag. `cargo xtask measure`
// runs it; it prints a table and ends with 1 where a value is beyond its limit.
import { readFileSync, readdirSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { extname, join } from "node:path";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { mapping, screen } from "./desk.mjs";
import { DIST, SCREENS, stored, withPage } from "./harness.mjs";

/** A slow tablet beside the machine that measures. */
const SLOWED = 4;
const MOVES = 120;
/** Places snap, so that not every move changes the scheme. */
const LEAST_SOLVED = MOVES / 2;
const OPENINGS = 7;
const TAB_MS = 1500;
/** Nobody draws sooner; meanwhile the page rehearses (app/src/warming.rs). */
const LOOK_MS = 2000;

/** Where each drag takes hold, in metres of the demo's section, and how far it goes. */
const DRAGS = {
  "an opening": { from: [4.05, 3.0], by: [0.3, 0] },
  "a corner": { from: [8.1, 5.45], by: [0.3, 0] },
  "the end of a shutter": { select: [-0.25, 4.0], from: [-0.185, 5.5], by: [0, 0.3] },
};

const kb = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;
const ms = (value) => `${value.toFixed(1)} ms`;

function quantile(values, part) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
}

/** What a first visit loads; fonts stand apart, since the page is usable before them. */
function weights() {
  const names = readdirSync(DIST, { recursive: true }).map(String);
  const code = names.filter((name) => [".html", ".wasm", ".js", ".css"].includes(extname(name)));
  const weigh = (name) => {
    const bytes = readFileSync(join(DIST, name));
    return { name, gzip: gzipSync(bytes, { level: 9 }).length, brotli: brotliCompressSync(bytes).length };
  };
  const fonts = names.filter((name) => extname(name) === ".woff2").map((name) => readFileSync(join(DIST, name)).length);
  return { files: code.map(weigh).sort((a, b) => b.gzip - a.gzip), fonts: sum(fonts) };
}

const sum = (numbers) => numbers.reduce((all, number) => all + number, 0);

async function slow(page, rate) {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  return session;
}

/** Traces the browser while `act` runs. */
async function traced(browser, act) {
  const session = await browser.newBrowserCDPSession();
  const events = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...value));
  const includedCategories = ["devtools.timeline", "disabled-by-default-devtools.timeline", "blink.user_timing"];
  await session.send("Tracing.start", { transferMode: "ReportEvents", traceConfig: { includedCategories } });
  await act();
  const complete = new Promise((resolve) => session.once("Tracing.tracingComplete", resolve));
  await session.send("Tracing.end");
  await complete;
  await session.detach();
  return events;
}

/**
 * From the start of each pointer event's dispatch to the end of the frame's painting on the page's main thread, ms; only
 * of events that changed the scheme.
 */
function eventToPaint(events) {
  const solved = events.filter(({ name, ph }) => name === "falsewright.solve" && ph === "b").map(({ ts }) => ts);
  const solves = ({ ts, dur }) => solved.some((at) => at >= ts && at <= ts + dur);
  const moves = events.filter(({ name, args }) => name === "EventDispatch" && args?.data?.type === "pointermove").filter(solves);
  const threads = new Set(moves.map(({ pid, tid }) => `${pid} ${tid}`));
  const commits = events
    .filter(({ name, pid, tid }) => name === "Commit" && threads.has(`${pid} ${tid}`))
    .map(({ ts, dur = 0 }) => ts + dur)
    .sort((a, b) => a - b);
  return moves.flatMap(({ ts }) => {
    const painted = commits.find((end) => end > ts);
    return painted === undefined ? [] : [(painted - ts) / 1000];
  });
}

async function dragged(page, { select, from, by }) {
  if (select) {
    const { x, y } = await screen(page, select);
    await page.mouse.click(x, y);
  }
  const { scale } = await mapping(page);
  const start = await screen(page, from);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  const events = await traced(page.context().browser(), async () => {
    for (let i = 1; i <= MOVES; i++) {
      const part = Math.sin(0.7 * i);
      await page.mouse.move(start.x + by[0] * part * scale, start.y - by[1] * part * scale);
    }
  });
  await page.mouse.up();
  return events;
}

const timings = (page, name) => page.evaluate((name) => {
  const found = performance.getEntriesByName(name, "measure").map(({ duration }) => duration);
  performance.clearMeasures(name);
  return found;
}, name);

async function motion(rate) {
  const rows = [];
  for (const [what, drag] of Object.entries(DRAGS)) {
    await withPage(SCREENS.desk, async ({ page }) => {
      await page.getByTestId("start-demo").click();
      await page.locator("g.figure").first().waitFor();
      await stored(page);
      await page.waitForTimeout(LOOK_MS);
      await slow(page, rate);
      await timings(page, "falsewright.solve");
      const paints = eventToPaint(await dragged(page, drag));
      const solves = await timings(page, "falsewright.solve");
      if (paints.length < LEAST_SOLVED) throw new Error(`the drag of ${what} changed the scheme ${solves.length} times, seen in the trace ${paints.length} times`);
      rows.push({ what, paints, solves });
    });
  }
  return rows;
}

/** Marks in the page when the kept drawing has been painted, and when all that stands around it has been. */
function markOpening() {
  const mark = (name, selector, then) => {
    const look = () => {
      if (!document.querySelector(selector)) return requestAnimationFrame(look);
      // What is set going in a frame comes after its painting.
      setTimeout(() => {
        performance.mark(name);
        then();
      });
    };
    requestAnimationFrame(look);
  };
  mark("painted", "g.figure path", () => mark("whole", ".sheet:has(.leaf > *):has(.data > *)", () => console.debug("whole")));
}

/** From the start of the navigation until each of these marks, ms, with everything from the cache. */
async function openings(rate) {
  const times = [];
  await withPage(SCREENS.desk, async ({ page, context, site }) => {
    await page.getByTestId("start-demo").click();
    await page.getByTestId("saved").filter({ hasText: "Saved" }).waitFor({ state: "attached" });
    await stored(page);
    await page.close();
    for (let i = 0; i < OPENINGS; i++) {
      const again = await context.newPage();
      // Until the browser has made its own parts of the tab, which takes the same cores.
      await again.waitForTimeout(TAB_MS);
      await slow(again, rate);
      await again.addInitScript(markOpening);
      // Nothing is asked of the page meanwhile, since it would have to run that as well.
      const whole = again.waitForEvent("console", (message) => message.text() === "whole");
      await again.goto(site.url);
      await whole;
      const marks = () => Object.fromEntries(["painted", "whole"].map((name) => [name, performance.getEntriesByName(name)[0].startTime]));
      times.push(await again.evaluate(marks));
      await again.close();
    }
  });
  return times;
}

const table = [];
let met = true;
function row(what, value, wanted = "", good = true) {
  met &&= good;
  table.push([what, good ? value : `${value} (beyond)`, wanted]);
}

const { files, fonts } = weights();
const total = { gzip: sum(files.map(({ gzip }) => gzip)), brotli: sum(files.map(({ brotli }) => brotli)) };
for (const { name, gzip, brotli } of files) row(`transfer of ${name.replace(/-[0-9a-f]{16}/, "")}`, `${kb(gzip)} gzip, ${kb(brotli)} brotli`);
row("transfer of all code", `${kb(total.gzip)} gzip, ${kb(total.brotli)} brotli`, "< 500 kB", total.gzip < 500e3);
row("fonts, all of them", kb(fonts));

for (const rate of [1, SLOWED]) {
  const speed = rate === 1 ? "at full speed" : `slowed ${rate} times`;
  const limited = (value, limit) => (rate === SLOWED ? [`< ${limit} ms`, value < limit] : []);
  const opened = await openings(rate);
  const middle = (mark) => quantile(opened.map((marks) => marks[mark]), 0.5);
  row(`opening from the cache until the drawing is painted, ${speed}`, ms(middle("painted")), ...limited(middle("painted"), 1000));
  row(`and until all around it is painted, ${speed}`, ms(middle("whole")));
  const drags = await motion(rate);
  for (const { what, paints } of drags) {
    const [half, high] = [quantile(paints, 0.5), quantile(paints, 0.95)];
    row(`drag of ${what}, pointer event to paint, ${speed}`, `${ms(half)}, 95 % under ${ms(high)}`, ...limited(high, 16.7));
  }
  const solve = quantile(drags.flatMap(({ solves }) => solves), 0.5);
  row(`the demo worked out at each of these events, ${speed}`, ms(solve), ...(rate === 1 ? ["< 5 ms", solve < 5] : []));
}

console.log(`Medians on ${cpus().length} cores (${cpus()[0]?.model}), load ${loadavg()[0].toFixed(1)}\n`);
console.log(["| What | Measured | Wanted |", "|---|---|---|", ...table.map((cells) => `| ${cells.join(" | ")} |`)].join("\n"));
process.exitCode = met ? 0 : 1;
