// Keeps the reader's choices: the size of each recipe, the measuring system, and what is ticked off.
// Without this script the page works as well; it only forgets.
"use strict";

(() => {
  const { recipe, version } = document.body.dataset;
  const shelf = {
    read(key) {
      try { return localStorage.getItem(`presscloth ${key}`); } catch { return null; }
    },
    write(key, value) {
      try { localStorage.setItem(`presscloth ${key}`, value); } catch { /* a browser may refuse */ }
    },
  };

  // Size and system: radio buttons whose id is what is kept.
  const keepChoice = (name, key) => {
    const choices = document.querySelectorAll(`input[name="${name}"]`);
    const kept = document.getElementById(shelf.read(key) ?? "");
    if (kept && kept.name === name) kept.checked = true;
    for (const choice of choices) {
      choice.addEventListener("change", () => shelf.write(key, choice.id));
    }
  };
  keepChoice("size", `${recipe} size`);
  keepChoice("system", "system");

  // A link to a place in a size that is not shown would lead nowhere: show that size.
  const showTarget = () => {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const section = target?.closest("[data-size]");
    if (!section || section.checkVisibility?.()) return;
    const choice = document.getElementById(`choose-${section.dataset.size}`);
    if (choice) choice.checked = true;
    target.scrollIntoView();
  };
  addEventListener("hashchange", showTarget);
  showTarget();

  // Ticks belong to one size of one version: a corrected handout is begun afresh.
  for (const section of document.querySelectorAll("[data-size]")) {
    const key = `${recipe} ${section.dataset.size} version ${version} ticks`;
    const boxes = [...section.querySelectorAll('input[type="checkbox"]')];
    const ticked = new Set((shelf.read(key) ?? "").split(" "));
    for (const box of boxes) {
      box.checked = ticked.has(box.id);
      box.addEventListener("change", () => {
        shelf.write(key, boxes.filter((each) => each.checked).map((each) => each.id).join(" "));
      });
    }
  }
})();
