// Lets the reader choose the measures that a recipe leaves to its maker: inputs for them, and everything in
// the page that follows. `following.js` follows. Without these scripts the page shows the recipe's own values.
"use strict";

(() => {
  const data = globalThis.pressclothChoices;
  // A page that was kept from an earlier release may lack a script: it shows the recipe's own values.
  if (!data || typeof following === "undefined") return;
  const { number, compare, measure_text, number_text, divide, factor } = reckoning;
  const { taken, read, follow, nearest, parts, text } = following;
  const { words, tongue, look, hatch } = data;
  const { recipe, version } = document.body.dataset;
  const SYSTEMS = ["metric", "imperial"];
  const shelf = {
    read(key) { try { return localStorage.getItem(`presscloth ${key}`); } catch { return null; } },
    write(key, value) {
      try {
        if (value === null) localStorage.removeItem(`presscloth ${key}`);
        else localStorage.setItem(`presscloth ${key}`, value);
      } catch { /* a browser may refuse */ }
    },
  };
  const say = (message, values) => message.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);

  // Numbers and units in the way of the page's language, as the compiler words them.
  const inTongue = (figures) => {
    const [whole, decimals] = figures.split(".");
    const long = /^-?\d{5,}$/.test(whole) && tongue.thousands;
    const grouped = long ? whole.replace(/\B(?=(\d{3})+$)/g, tongue.thousands) : whole;
    return decimals === undefined ? grouped : `${grouped}${tongue.decimal}${decimals}`;
  };
  const MEASURE = /(-?\d+(?: \d+\/\d+|\/\d+)?(?:\.\d+)?) ([a-z]+²?)(?![a-z])/g;
  const worded = (printed) => {
    if (!/[a-z]/.test(printed)) return inTongue(printed);
    return printed.replace(MEASURE, (_, figures, unit) => {
      const [one, several] = tongue.units[unit] ?? [unit, unit];
      return `${inTongue(figures)} ${figures === "1" || /^-?\d+\/\d+$/.test(figures) ? one : several}`;
    });
  };
  // Words in drawings are as long as the language makes them.
  reckoning.FUNCTIONS.length_of = (printed) => worded(printed).length;
  const both = (texts) => {
    const shown = SYSTEMS.map((_, place) => worded(texts[place])).filter((_, place) => isPrinted[place]);
    return shown.length > 1 ? `${shown[leading]} (${shown[1 - leading]})` : shown[0];
  };
  const isPrinted = SYSTEMS.map((system) => document.querySelector(`.${system}`) !== null);
  if (!isPrinted.includes(true)) isPrinted.fill(true);
  const first = document.querySelector("span.metric, span.imperial");
  const leading = isPrinted[0] && isPrinted[1] && first?.classList.contains("imperial") ? 1 : 0;

  const make = (name, attributes = {}, ...inside) => {
    const made = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    made.append(...inside);
    return made;
  };
  // A measure as the page writes it, its fractions built.
  const built = (words) =>
    words.split(/\b(\d+\/\d+)\b/)
      .map((part, place) => (place % 2 ? make("span", { class: "fraction" }, part) : part));

  for (const [name, size] of Object.entries(data.sizes)) {
    const section = document.getElementById(`size-${name}`);
    if (!section) continue;
    const numbers = [...section.querySelectorAll("[data-f]")].map((of) => ({ of, own: [...of.childNodes] }));
    const pieces = section.querySelector(".pieces .drawings");
    const ownPieces = pieces ? [...pieces.childNodes] : [];
    const figures = [...section.querySelectorAll(".steps svg.drawing")]
      .map((svg) => svg.closest("figure"))
      .map((of) => ({ of, own: [...of.childNodes] }));
    const keyOf = (offer) => `${recipe} ${name} version ${version} choice ${offer.name}`;
    const own = (offer) => taken(offer, SYSTEMS[leading], number(offer.own[leading]));
    const choices = size.offers.map(own);
    const rows = size.offers.map((offer, place) => makeRow(offer, place));
    const isOwn = (choice, offer) =>
      SYSTEMS.every((system, place) => compare(choice[system], number(offer.own[place])) === 0);

    function makeRow(offer, place) {
      const inputs = SYSTEMS.map((system, at) => {
        const unit = offer.units[at];
        const [one, several] = tongue.units[unit] ?? [unit, unit];
        const input = make("input", {
          type: "text", inputmode: "decimal", autocomplete: "off", size: "7",
          id: `${name}-choice-${place}-${system}`,
        });
        input.addEventListener("change", () => typed(place, system, input));
        return make("label", { class: system }, input, ` ${several ?? one}`);
      });
      const shown = offer.kind === "number" ? [inputs[leading]] : inputs.filter((_, at) => isPrinted[at]);
      if (leading) shown.reverse();
      for (const label of shown) {
        const unit = label.textContent.trim();
        label.querySelector("input").setAttribute("aria-label", unit ? `${offer.name}, ${unit}` : offer.name);
      }
      const [ownText, least, most] = offer.texts.map(both);
      const back = make("button", { type: "button" }, say(words.own, { own: ownText }));
      back.addEventListener("click", () => { choose(place, own(offer), null); tell(place, ""); });
      const said = make("p", { class: "said", role: "status" });
      const range = make("span", { class: "range" }, say(words.range, { least, most }));
      const note = offer.note ? [make("p", { class: "note" }, offer.note)] : [];
      const inputLine = make("p", { class: "inputs" }, ...shown, back);
      const title = make("p", { class: "name" }, make("strong", {}, offer.name), " ", range);
      const row = make("div", { class: "offer" }, title, inputLine, ...note, said);
      return { row, inputLine, inputs: inputs.map((label) => label.querySelector("input")), back, said };
    }

    function tell(place, message) {
      const { said, inputs } = rows[place];
      said.textContent = message;
      for (const input of inputs) input.toggleAttribute("aria-invalid", message !== "");
    }

    // The value as it is typed into a field, in its unit.
    function show(place) {
      const offer = size.offers[place], choice = choices[place], row = rows[place];
      SYSTEMS.forEach((system, at) => {
        const unit = offer.units[at];
        const value = unit ? divide(choice[system], factor(unit)) : choice[system];
        const shown = unit ? measure_text(value, unit).slice(0, -unit.length - 1) : number_text(value);
        row.inputs[at].value = inTongue(shown);
      });
      row.back.hidden = isOwn(choice, offer);
      row.inputLine.dataset.value = both(SYSTEMS.map((_, at) => textOf(offer, at)));
    }

    function typed(place, system, input) {
      const offer = size.offers[place];
      const text = input.value;
      const found = read(text, offer, system, tongue.decimal);
      const stays = both(SYSTEMS.map((each, at) => textOf(offer, at)));
      if (found.comma) return tell(place, say(words.comma, { point: found.comma, typed: text, own: stays }));
      if (found.unread) return tell(place, say(words.unread, { typed: text, own: stays }));
      const here = found.system === "metric" ? 0 : 1;
      const inUnit = (value) =>
        worded(found.unit ? measure_text(divide(value, factor(found.unit)), found.unit) : number_text(value));
      const shown = inUnit(found.value);
      const [least, most] = [offer.least, offer.most].map((end) => number(end[here]));
      if (compare(found.value, least) < 0 || compare(found.value, most) > 0) {
        const [low, high] = [offer.texts[1][here], offer.texts[2][here]].map(worded);
        return tell(place, say(words.outside, { typed: shown, least: low, most: high, own: stays }));
      }
      const choice = taken(offer, found.system, found.value);
      const refused = choose(place, choice, JSON.stringify([found.system, text]));
      if (!refused) return tell(place, "");
      const near = refused.why ? null : nearest(size, choices, place, found.system, found.value);
      const message = near ? words.near : refused.message;
      tell(place, say(message, { typed: shown, why: refused.why, near: near && inUnit(near), own: stays }));
    }

    function textOf(offer, at) {
      const choice = choices[size.offers.indexOf(offer)], unit = offer.units[at];
      const value = unit ? divide(choice[SYSTEMS[at]], factor(unit)) : choice[SYSTEMS[at]];
      return unit ? measure_text(value, unit) : number_text(value);
    }

    // Takes a choice up; or tells why it cannot be, and leaves everything as it was.
    function choose(place, choice, kept) {
      const now = choices.map((each, at) => (at === place ? choice : each));
      if (now.every((each, at) => isOwn(each, size.offers[at]))) putBack();
      else {
        const { values, way } = follow(size, now);
        if (!way) return { message: words.lost };
        if (way.broken) return { message: words.broken, why: way.broken.map((why) => text(values, why)).join("; ") };
        put(values, way);
      }
      choices[place] = choice;
      shelf.write(keyOf(size.offers[place]), kept);
      show(place);
      return null;
    }

    function putBack() {
      for (const { of, own } of [...numbers, ...figures]) { of.replaceChildren(...own); of.classList.remove("follows"); }
      pieces?.replaceChildren(...ownPieces);
      changed.hidden = true;
    }

    function put(values, way) {
      numbers.forEach(({ of, own }, place) => {
        const inside = parts(values, way.put[place])
          .flatMap((part, at) => built(at % 2 ? worded(part) : part));
        const same = own.map((each) => each.textContent).join("") === inside.map((each) => each.textContent ?? each).join("");
        of.replaceChildren(...(same ? own : inside));
        of.classList.toggle("follows", !same);
      });
      changed.hidden = false;
      const drawn = (ways) => ways.find((each) => values.holds(each.when));
      const shown = (each, widest, ident) =>
        drawing.figure(drawing.settled(size.drawings[each], wordedValues, text), look[0], widest, hatch, ident);
      const wordedValues = { node: (at) => { const v = values.node(at); return typeof v === "string" ? worded(v) : v; } };
      if (pieces && way.pieces.length) {
        const found = drawn(way.pieces);
        const made = (found?.of ?? []).map((each, at) => {
          const figure = make("figure");
          figure.innerHTML = shown(each, look[1], `${name}-followed-${at}`);
          return figure;
        });
        pieces.replaceChildren(...(found ? made : [...ownPieces, make("p", {}, words.drawing)]));
      }
      figures.forEach(({ of, own }, at) => {
        const ways = way.steps[at] ?? [];
        const found = drawn(ways);
        if (!ways.length) of.replaceChildren(...own);
        else if (found) of.innerHTML = shown(found.of[0], look[2], `${name}-followed-step-${at}`);
        else of.replaceChildren(...own, make("p", {}, words.drawing));
      });
    }

    const changed = make("p", { class: "changed", hidden: "" }, words.changed);
    const form = make("fieldset", { class: "yours" }, make("legend", {}, words.yours), ...rows.map((each) => each.row), changed);
    const papers = section.querySelector(":scope > .papers, :scope > .size-name");
    if (papers) papers.after(form); else section.prepend(form);
    size.offers.forEach((offer, place) => {
      show(place);
      const kept = shelf.read(keyOf(offer));
      if (kept === null) return;
      try {
        const [system, text] = JSON.parse(kept);
        const found = read(text, offer, system, tongue.decimal);
        const here = found.system === "metric" ? 0 : 1;
        const inside = found.value && compare(found.value, number(offer.least[here])) >= 0
          && compare(found.value, number(offer.most[here])) <= 0;
        if (inside) choose(place, taken(offer, found.system, found.value), kept);
      } catch { /* what was kept by an earlier page is left */ }
    });
  }
})();
