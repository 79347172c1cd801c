// Registers the service worker once the page stands. Events of the window:
//   falsewright-update        from here: a new version waits
//   falsewright-apply-update  to here: the user wants it now; the page reloads once
"use strict";

(() => {
  if (!("serviceWorker" in navigator)) return;
  const container = navigator.serviceWorker;

  const announce = () => window.dispatchEvent(new CustomEvent("falsewright-update"));

  const watch = (registration) => {
    if (registration.waiting && container.controller) announce();
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker?.addEventListener("statechange", () => {
        if (worker.state === "installed" && container.controller) announce();
      });
    });

    window.addEventListener("falsewright-apply-update", () => {
      container.addEventListener("controllerchange", () => location.reload(), { once: true });
      registration.waiting?.postMessage("skip-waiting");
    });

    const look = () => navigator.onLine && registration.update().catch(() => {});
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
    setInterval(look, 3_600_000);
  };

  window.addEventListener("TrunkApplicationStarted", () => {
    container
      .register("sw.js", { updateViaCache: "none" })
      .then(watch)
      .catch((error) => console.warn("Falsewright will not open without a network:", error.message));
  });
})();
