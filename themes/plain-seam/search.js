// Searches the catalogue by words, craft and skill. The words lie in a script beside the page, so that
// this works without a network and from a folder. Without this script the lists by craft and skill serve.
"use strict";

(() => {
  const form = document.querySelector("form.search");
  const { alike, words } = globalThis.catalogueWords;
  const found = document.querySelector(".found");
  const lists = document.querySelector(".months");
  const items = [...lists.querySelectorAll("[data-recipe]")];
  const known = Object.keys(words);
  const SHORT = 2;  // a word of so few letters need not be there when there are longer ones

  const folded = (text) => [...text.normalize("NFKD").toLowerCase().replace(/\p{M}/gu, "")]
    .map((sign) => (Object.hasOwn(alike, sign) ? alike[sign] : sign)).join("");

  // What a typed word weighs in each recipe: a whole word counts twice, a beginning once; the best holds.
  const weighed = (typed) => {
    const best = new Map();
    for (const word of known) {
      if (!word.startsWith(typed)) continue;
      const times = word === typed ? 2 : 1;
      const held = words[word];
      for (let place = 0; place < held.length; place += 2) {
        const weight = held[place + 1] * times;
        if (weight > (best.get(held[place]) ?? 0)) best.set(held[place], weight);
      }
    }
    return best;
  };

  // The recipes that have every word, the heaviest first; of equals the earlier in the catalogue.
  const ranked = (query) => {
    const typed = [...new Set(folded(query).match(/[\p{L}\p{N}]+/gu) ?? [])];
    const longer = typed.filter((word) => [...word].length > SHORT);
    const needed = longer.length ? longer : typed;
    const each = new Map(typed.map((word) => [word, weighed(word)]));
    return items.map((item, number) => ({
      item,
      has: needed.every((word) => each.get(word).has(number)),
      weight: typed.reduce((sum, word) => sum + (each.get(word).get(number) ?? 0), 0),
    })).filter((one) => one.has).sort((one, other) => other.weight - one.weight).map((one) => one.item);
  };

  const show = () => {
    const query = form.elements.q.value.trim();
    const chosen = [...form.querySelectorAll("select")].filter((choice) => choice.value)
      .map((choice) => new Set(choice.value.split(" ")));
    const searching = query !== "" || chosen.length > 0;
    found.hidden = !searching;
    lists.hidden = searching;
    const fitting = ranked(query).filter((item) => chosen.every((slugs) => slugs.has(item.dataset.recipe)));
    found.querySelector("ol").replaceChildren(...(searching ? fitting.map((item) => item.cloneNode(true)) : []));
    found.querySelector("h2").hidden = fitting.length === 0;
    const { none, one, many } = form.dataset;
    form.querySelector("[role=status]").textContent = fitting.length === 0 ? none
      : fitting.length === 1 ? one : many.replace("{n}", fitting.length);
  };

  form.elements.q.value = new URLSearchParams(location.search).get("q") ?? form.elements.q.value;
  form.addEventListener("input", show);
  form.addEventListener("submit", (event) => { event.preventDefault(); show(); });
  show();
})();
