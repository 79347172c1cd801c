// The look of the page before anything is drawn: as chosen, else as the system asks. Event of the window:
//   falsewright-theme   to here: another look was chosen; it stands in data-chosen-theme of the root
"use strict";

(() => {
  const PAPER = { light: "#f8f4ea", dark: "#14263d", sunlight: "#ffffff" };
  const root = document.documentElement;
  let printing = false;
  const [dark, contrast] = ["(prefers-color-scheme: dark)", "(prefers-contrast: more)"].map((query) => matchMedia(query));

  const kept = () => {
    try {
      return localStorage.getItem("falsewright.theme");
    } catch {
      return null;
    }
  };

  const show = () => {
    const chosen = root.dataset.chosenTheme ?? kept();
    const asked = dark.matches ? "dark" : contrast.matches ? "sunlight" : "light";
    // Paper is white, whatever the screen.
    root.dataset.theme = printing ? "light" : chosen in PAPER ? chosen : asked;
    document.querySelector("meta[name=theme-color]").content = PAPER[root.dataset.theme];
  };

  for (const query of [dark, contrast]) query.addEventListener("change", show);
  window.addEventListener("falsewright-theme", show);
  for (const [event, now] of [["beforeprint", true], ["afterprint", false]]) {
    window.addEventListener(event, () => {
      printing = now;
      show();
    });
  }
  show();
})();
