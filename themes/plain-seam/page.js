// Keeps the reader's choices: the size of each recipe, the measuring system, what is ticked off, and
// where the reader was; shows one step at a time. Without this script the page works as well; it only
// forgets, and shows all steps.
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
  const worded = (element, values) =>
    element.dataset.words.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);

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

  // A drawing that is moved sideways can be reached without a pointer.
  const sideways = new ResizeObserver((seen) => {
    for (const { target } of seen) {
      if (target.scrollWidth > target.clientWidth) target.tabIndex = 0;
      else target.removeAttribute("tabindex");
    }
  });
  for (const figure of document.querySelectorAll("figure")) sideways.observe(figure);

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

  // Where was I: the step last looked at by itself, or the one after the step last ticked.
  const placeKey = `${recipe} version ${version} step`;
  const stepsOf = (section) => [...section.querySelectorAll("ol.steps > li:not(.elsewhere)")];
  const keepPlace = (step) => shelf.write(placeKey, step.id);
  for (const section of document.querySelectorAll("[data-size]")) {
    const steps = stepsOf(section);
    steps.forEach((step, index) => {
      step.querySelector(".did input")?.addEventListener("change", (event) => {
        keepPlace(event.target.checked ? steps[index + 1] ?? step : step);
      });
    });
  }
  const kept = document.getElementById(shelf.read(placeKey) ?? "");
  if (kept) {
    const offer = document.getElementById("where-was-i").content.cloneNode(true);
    const words = offer.querySelector("[data-words]");
    words.textContent = worded(words, { number: kept.value });
    offer.querySelector("a").href = `#${kept.id}`;
    document.querySelector("header.title").after(offer);
  }

  // One step at a time: the step itself moves into a window and back, so that its box stays its own.
  const view = document.getElementById("one-step");
  const [name, body] = [document.getElementById("one-step-name"), view.querySelector(".body")];
  const [back, next] = ["back", "next"].map((way) => view.querySelector(`[value="${way}"]`));
  let steps = [];
  let at = 0;
  let awake = null;

  const putBack = () => {
    const shown = body.firstElementChild;
    if (shown) steps[at].append(shown);
  };
  const show = (index) => {
    putBack();
    at = index;
    body.append(steps[at].querySelector(".step"));
    body.scrollTop = 0;
    name.textContent = worded(name, { number: steps[at].value, last: steps.at(-1).value });
    back.disabled = at === 0;
    next.disabled = at === steps.length - 1;
    body.focus();
    keepPlace(steps[at]);
  };
  const go = (way) => {
    if (steps[at + way]) show(at + way);
  };
  const stayAwake = async () => {
    try { awake = await navigator.wakeLock?.request("screen"); } catch { /* a browser may refuse */ }
  };
  const open = (section) => {
    steps = stepsOf(section);
    const place = steps.findIndex((step) => step.id === shelf.read(placeKey));
    view.showModal();
    show(Math.max(place, 0));
    stayAwake();
  };

  view.querySelector('[value="close"]').addEventListener("click", () => view.close());
  back.addEventListener("click", () => go(-1));
  next.addEventListener("click", () => go(1));
  view.addEventListener("close", () => {
    putBack();
    awake?.release();
    steps[at].scrollIntoView({ block: "center" });
  });
  view.addEventListener("keydown", (event) => {
    if (event.target.matches('input:not([type="checkbox"]), select, textarea')) return;
    const way = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[event.key];
    if (!way) return;
    event.preventDefault();
    const before = body.scrollTop;
    // A pedal sends the page keys: what is too long for the screen is read to its end first.
    if (event.key.startsWith("Page")) body.scrollBy({ top: way * body.clientHeight * 0.8, behavior: "instant" });
    if (body.scrollTop === before) go(way);
  });
  document.addEventListener("visibilitychange", () => {
    if (view.open && document.visibilityState === "visible") stayAwake();
  });
  addEventListener("beforeprint", () => { if (view.open) view.close(); });

  // The way to each part of a size, from its own headings.
  for (const section of document.querySelectorAll("[data-size]")) {
    const ways = document.createElement("p");
    ways.className = "ways";
    for (const heading of section.querySelectorAll(":scope > section > :is(h2, h3)[id]")) {
      const way = document.createElement("a");
      way.href = `#${heading.id}`;
      way.textContent = heading.textContent;
      ways.append(way);
    }
    const name = section.querySelector(".size-name");
    if (name) name.after(ways); else section.prepend(ways);
  }

  for (const section of document.querySelectorAll("[data-size]")) {
    const heading = section.querySelector("section.steps > :is(h2, h3)");
    if (!heading) continue;
    const offer = document.getElementById("to-one-step").content.cloneNode(true);
    offer.querySelector("button").addEventListener("click", () => open(section));
    heading.after(offer);
  }
})();
