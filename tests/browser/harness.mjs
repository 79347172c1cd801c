// What every browser test stands on: the built site on a port of its own, a browser, and an eye on what goes wrong.
import assert from "node:assert/strict";
import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { delimiter, extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

export const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));

/** The screens that the page is made for. */
export const SCREENS = {
  desk: { viewport: { width: 1440, height: 900 } },
  tablet: { viewport: { width: 1024, height: 768 }, hasTouch: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

const MEDIA_TYPES = {
  ".css": "text/css",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".txt": "text/plain",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
};

/** Serves dist/ under `folder`; `replace` holds texts that stand in for files. */
export async function serveSite({ folder = "/", replace = {} } = {}) {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://site").pathname);
    const name = path.startsWith(folder) ? path.slice(folder.length) || "index.html" : undefined;
    const file = name === undefined ? undefined : join(DIST, normalize(`/${name}`));
    if (!file || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": MEDIA_TYPES[extname(file)] ?? "application/octet-stream" });
    if (name in replace) response.end(replace[name]);
    else createReadStream(file).pipe(response);
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${server.address().port}${folder}`,
    replace,
    close: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(resolve));
    },
  };
}

/**
 * Runs `job` on a new page of a new browser profile at the site, then fails on anything that went wrong behind it:
 * errors on the console, uncaught errors, requests to another host.
 */
export async function withPage(screen, job, { site: given, path = "", allow = [] } = {}) {
  const site = given ?? (await serveSite());
  const browser = await launch();
  const problems = [];
  const unexpected = () => problems.filter((problem) => !allow.some((pattern) => pattern.test(problem)));
  try {
    const context = await browser.newContext({ locale: "en-GB", ...screen, acceptDownloads: true });
    context.setDefaultTimeout(15_000);
    watch(context, new URL(site.url).host, problems);
    const page = await context.newPage();
    await page.goto(site.url + path);
    await opened(page);
    await within(300_000, job({ page, context, site }));
    assert.equal(unexpected().length, 0, "something went wrong behind the page");
  } catch (error) {
    if (unexpected().length === 0) throw error;
    throw new Error(`${error.message}\nBehind the page:\n${unexpected().join("\n")}`, { cause: error });
  } finally {
    await browser.close();
    if (!given) await site.close();
  }
}

/** Waits until the drawing stands. */
export async function opened(page) {
  await page.locator("svg").first().waitFor();
}

/** Waits until the service worker has stored the whole site and answers for this page. */
export async function stored(page) {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

async function within(milliseconds, job) {
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not done after ${milliseconds / 1000} s`)), milliseconds);
  });
  await Promise.race([job, late]).finally(() => clearTimeout(timer));
}

function watch(context, host, problems) {
  context.on("console", (message) => {
    if (message.type() === "error") problems.push(`console: ${message.text()}`);
  });
  context.on("weberror", (error) => problems.push(`uncaught: ${error.error().stack ?? error.error()}`));
  context.on("request", (request) => {
    const url = new URL(request.url());
    if (!["data:", "blob:"].includes(url.protocol) && url.host !== host) problems.push(`foreign request: ${url}`);
  });
}

async function launch() {
  const executablePath = process.env.FALSEWRIGHT_CHROMIUM ?? find(["chromium", "chromium-browser", "google-chrome"]);
  assert.ok(executablePath, "no Chromium on the PATH; on Debian: apt-get install chromium");
  return chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

function find(names) {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find((file) => existsSync(file));
}
