// The site as files and as an app: it opens at every size, from any folder, and without a network.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readFileSync, readdirSync, statSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { test } from "node:test";
import { DIST, SCREENS, opened, serveSite, stored, withPage } from "./harness.mjs";

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`opens on a ${name} with nothing to complain of`, () => withPage(screen, async ({ page }) => {
    assert.equal(await page.title(), "Falsewright");
    const { scrollWidth, clientWidth } = await page.evaluate(() => document.documentElement);
    assert.ok(!(scrollWidth > clientWidth), `the page is ${scrollWidth} px wide on a screen of ${clientWidth}`);
  }));
}

for (const [name, screen] of Object.entries(SCREENS)) {
  test(`on a ${name} the drawing is painted first, and what follows does not move it`, () => withPage(screen, async ({ page }) => {
    await page.getByTestId("start-demo").click();
    await page.getByTestId("saved").filter({ hasText: "Saved" }).waitFor({ state: "attached" });
    await page.addInitScript(() => {
      window.look = () => {
        const drawing = document.querySelector(".drawing");
        const { x, y, width, height } = drawing.getBoundingClientRect();
        const written = [...drawing.querySelectorAll("text")].map((text) => text.textContent);
        const scale = drawing.querySelector("g:has(> g > .figure)").getAttribute("transform");
        return { box: [x, y, width, height], scale, written, pens: document.querySelectorAll(".pens button").length };
      };
      const first = () => {
        if (!document.querySelector("g.figure path")) return requestAnimationFrame(first);
        window.first = window.look();
        window.around = document.querySelectorAll(".leaf > *, .data > *").length;
      };
      requestAnimationFrame(first);
    });
    await page.reload();
    await page.locator(".sheet:has(.leaf > *):has(.data > *)").waitFor();
    const { first, now, around } = await page.evaluate(() => ({ first: window.first, now: window.look(), around: window.around }));
    assert.equal(around, 0, "the drawing did not come first");
    assert.ok(first.written.length > 10 && first.pens > 8, JSON.stringify(first));
    assert.deepEqual(first, now);
  }));
}

test("the precache list names every file with its digest", () => {
  const worker = readFileSync(join(DIST, "sw.js"), "utf8");
  const listed = [...worker.matchAll(/^ {2}\["([^"]+)", "([^"]+)"\],$/gm)].map(([, file, digest]) => [file, digest]);
  const present = walk(DIST).filter((file) => file !== "sw.js").sort();
  assert.deepEqual(listed.map(([file]) => file), present);
  for (const [file, digest] of listed) {
    const actual = createHash("sha256").update(readFileSync(join(DIST, file))).digest("base64");
    assert.equal(digest, `sha256-${actual}`, file);
  }
});

test("the manifest is complete and its icons are what it says", async () => {
  const manifest = JSON.parse(readFileSync(join(DIST, "manifest.webmanifest"), "utf8"));
  for (const key of ["name", "short_name", "id", "theme_color", "background_color"]) assert.ok(manifest[key], key);
  assert.equal(manifest.start_url, "./");
  assert.equal(manifest.scope, "./");
  assert.equal(manifest.display, "standalone");
  const pngs = manifest.icons.filter((icon) => icon.type === "image/png");
  for (const icon of pngs) assert.equal(pngSize(join(DIST, icon.src)), icon.sizes, icon.src);
  assert.deepEqual(pngs.map((icon) => icon.sizes), ["192x192", "512x512", "512x512"]);
  assert.equal(pngs.filter((icon) => icon.purpose === "maskable").length, 1);
  assert.equal(pngSize(join(DIST, "icons/apple-touch-icon.png")), "180x180");
});

test("the browser finds the app installable", () => withPage(SCREENS.desk, async ({ page, context }) => {
  await stored(page);
  const session = await context.newCDPSession(page);
  const { errors } = await session.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
  const reasons = installabilityErrors.map((error) => error.errorId).filter((reason) => reason !== "in-incognito");
  assert.deepEqual(reasons, []);
}));

test("opens with the network cut after the first visit", () => withPage(SCREENS.desk, async ({ page, context, site }) => {
  await stored(page);
  const before = await drawn(page);
  await context.setOffline(true);
  await site.close();
  for (const path of ["", "index.html", "?from=home#there"]) {
    await page.goto("about:blank");
    await page.goto(site.url + path);
    await opened(page);
    assert.equal(await drawn(page), before, path);
  }
}));

test("works from a folder of a host", async () => {
  const site = await serveSite({ folder: "/some/folder/" });
  await withPage(SCREENS.desk, async ({ page, context }) => {
    await stored(page);
    await context.setOffline(true);
    await page.reload();
    await opened(page);
    const caches = await page.evaluate(() => window.caches.keys());
    assert.equal(caches.length, 1);
    assert.ok(caches[0].includes("/some/folder/"), caches[0]);
  }, { site });
  await site.close();
});

test("a new version waits until the user asks for it", async () => {
  const site = await serveSite();
  await withPage(SCREENS.desk, async ({ page }) => {
    await stored(page);
    const old = (await page.evaluate(() => window.caches.keys()))[0];
    await page.evaluate(() => window.addEventListener("falsewright-update", () => { window.updateWaits = true; }));

    const worker = readFileSync(join(DIST, "sw.js"), "utf8");
    site.replace["sw.js"] = worker.replace(/const VERSION = "[^"]+"/, 'const VERSION = "next"');
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await page.waitForFunction(() => window.updateWaits);
    assert.ok((await page.evaluate(() => window.caches.keys())).includes(old), "the old version still serves");

    const reloaded = page.waitForEvent("load");
    await page.evaluate(() => window.dispatchEvent(new CustomEvent("falsewright-apply-update")));
    await reloaded;
    await opened(page);
    const names = await page.evaluate(() => window.caches.keys());
    assert.equal(names.length, 1);
    assert.ok(names[0].endsWith(" next"), names[0]);
  }, { site });
  await site.close();
});

test("the policy stops a request to another host", () => withPage(SCREENS.desk, async ({ page }) => {
  const outcome = await page.evaluate(() => fetch("http://192.0.2.1/").then(() => "sent", (error) => error.name));
  assert.equal(outcome, "TypeError");
}, { allow: [/Content Security Policy/, /foreign request: http:\/\/192\.0\.2\.1/, /Fetch API cannot load/] }));

/** The drawing, as its texts and the number of its marks. */
function drawn(page) {
  return page.evaluate(() => [...document.querySelectorAll("svg")]
    .map((svg) => `${svg.querySelectorAll("*").length} ${svg.textContent}`).join("\n"));
}

function pngSize(file) {
  const bytes = readFileSync(file);
  assert.equal(bytes.toString("latin1", 1, 4), "PNG", file);
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

function walk(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? walk(path) : [relative(DIST, path).split(sep).join("/")];
  });
}
