// Follows a reader's choice along the compiler's own way, which stands in the page as data: what was typed,
// which way holds for it, the words and the shapes that come of it. `reckoning.js` reckons.
"use strict";

const following = ((reckoning) => {
  const {
    FUNCTIONS, UNITS, ZERO, ONE, fraction, number, add, multiply, divide, size, compare, times, half_up, factor,
  } = reckoning;

  // The values of a size's nodes for one choice, each reckoned when it is asked for.
  // `variables` are, for each offer, its value in each system, and whether it stands there as stated.
  const reckoned = (nodes, variables) => {
    const values = new Array(nodes.length);
    const node = (place) => {
      if (values[place] === undefined) {
        const [name, ...given] = nodes[place];
        if (name === "chosen") values[place] = variables[given[0]][given[1]];
        else if (name === "+") values[place] = sum(given);
        else values[place] = FUNCTIONS[name](...given.map(argument));
      }
      return values[place];
    };
    const form = ([constant, ...terms]) => {
      let total = number(constant);
      for (let i = 0; i < terms.length; i += 2) total = add(total, multiply(number(terms[i + 1]), node(terms[i])));
      return total;
    };
    const sum = ([constant, ...terms]) => {
      let total = constant;
      for (let i = 0; i < terms.length; i += 2) total += terms[i + 1] * node(terms[i]);
      return total;
    };
    const argument = (given) => {
      if (Array.isArray(given)) return given[0] === "+" ? sum(given.slice(1)) : form(given);
      if (typeof given === "number") return given;
      return given[0] === "#" ? node(Number(given.slice(1))) : given.slice(1);
    };
    const stands = (relation, sign) => ({ ">": sign > 0, ">=": sign >= 0, "=": sign === 0, "!": sign !== 0 })[relation];
    const holds = (guards) => {
      try {
        return guards.every(([relation, given]) => {
          const value = argument(given);
          return stands(relation, typeof value === "number" ? value : Number(value.n > 0n) - Number(value.n < 0n));
        });
      } catch (fault) {
        if (fault instanceof RangeError) return false;
        throw fault;
      }
    };
    return { node, holds };
  };

  // What a typed value is in both systems, as an author's single value is carried over.
  const taken = (offer, system, value) => {
    const pairs = [offer.own, offer.least, offer.most].map((pair) => pair.map(number));
    const here = system === "metric" ? 0 : 1, there = 1 - here;
    let pair = pairs.find((each) => compare(each[here], value) === 0);
    let together = pair !== undefined;
    if (!pair) {
      pair = [];
      pair[here] = value;
      const least = pairs[1][there], most = pairs[2][there], over = carried(offer.kind, here, value);
      pair[there] = compare(over, least) < 0 ? least : compare(over, most) > 0 ? most : over;
      together = compare(over, pair[there]) !== 0;
    }
    const stated = (place) => (together || place === here ? ONE : ZERO);
    return { metric: pair[0], imperial: pair[1], "stated in metric": stated(0), "stated in imperial": stated(1) };
  };
  const carried = (kind, here, value) => {
    if (kind === "number") return value;
    const inMetric = number(kind === "length" ? "127/5" : "45359237/1600000");  // mm in an inch, g in an ounce
    const over = here === 0 ? divide(value, inMetric) : multiply(value, inMetric);
    let step;
    if (kind === "weight") step = number(here === 0 ? "1/4" : 5);
    else step = number(here === 1 ? 1 : compare(size(over), ONE) < 0 ? "1/16" : "1/8");
    const rounded = half_up(over, step);
    return rounded.n ? rounded : over;
  };

  // Reading what was typed, by the rules of the compiler's lexer: `3`, `2.5`, `5/8`, `1 1/2`, `1½`.
  const VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5",
    "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
  };
  const SPELLINGS = {
    mm: "mm", cm: "cm", m: "m", in: "in", '"': "in", "″": "in", inch: "in", inches: "in", ft: "ft", yd: "yd",
    yard: "yd", yards: "yd", g: "g", kg: "kg", oz: "oz", lb: "lb",
  };
  const KINDS = { g: "weight", kg: "weight", oz: "weight", lb: "weight" };
  const READ = /^(?:(\d+) (\d+)\/(\d+)|(\d+)\/(\d+)|(\d*) ?([¼½¾⅐-⅞])|(\d*\.\d+|\d+))\s*([a-z"″]*)$/u;
  const COMMA = /^(\d+),(\d+)(\s*[a-z"″]*)$/u;
  const read = (text, offer, system, decimal = ".") => {
    let typed = text.trim();
    const comma = COMMA.exec(typed);
    if (comma && decimal !== ",") return { comma: `${comma[1]}.${comma[2]}${comma[3]}` };
    if (comma) typed = `${comma[1]}.${comma[2]}${comma[3]}`;
    const found = READ.exec(typed);
    if (!found || (typed.match(/\d+/g) ?? []).some((digits) => digits.length > 12)) return { unread: true };
    const unit = found[9] ? SPELLINGS[found[9]] : offer.units[system === "metric" ? 0 : 1];
    if (found[9] && (!unit || (KINDS[unit] ?? "length") !== offer.kind)) return { unread: true };
    if (found[3] === undefined ? Number(found[5]) === 0 : Number(found[3]) === 0) return { unread: true };
    let value;
    if (found[1] !== undefined) value = add(number(found[1]), fraction(BigInt(found[2]), BigInt(found[3])));
    else if (found[4] !== undefined) value = fraction(BigInt(found[4]), BigInt(found[5]));
    else if (found[7] !== undefined) value = add(number(found[6] || 0), number(VULGAR[found[7]]));
    else {
      const [whole, part = ""] = found[8].split(".");
      value = fraction(BigInt((whole || "0") + part), 10n ** BigInt(part.length));
    }
    if (!unit) return { value, system, unit: "" };
    return { value: multiply(value, factor(unit)), system: UNITS[unit][0], unit };
  };

  // Which way holds for what was chosen.
  const follow = (size, choices) => {
    const values = reckoned(size.nodes, choices);
    return { values, way: size.ways.find((way) => values.holds(way.when)) };
  };

  // The nearest value that can be followed, in steps in which a reader types; nothing where none is near.
  const MOST_STEPS = 40;
  const nearest = (of, choices, place, system, value) => {
    const offer = of.offers[place], here = system === "metric" ? 0 : 1;
    const step = number(offer.steps[here]);
    const [least, most] = [offer.least, offer.most].map((end) => number(end[here]));
    for (let turn = 1; turn <= 2 * MOST_STEPS; turn += 1) {
      const away = (turn % 2 ? 1 : -1) * Math.floor(turn / 2);
      const near = add(half_up(value, step), times(step, BigInt(away)));
      if (compare(near, least) < 0 || compare(near, most) > 0) continue;
      const { way } = follow(of, choices.map((each, at) => (at === place ? taken(offer, system, near) : each)));
      if (way && !way.broken) return near;
    }
    return null;
  };

  const FIRST_MARK = 0x100000;
  // A text in parts: words as they are, and between them those that marks stand for.
  const parts = (values, marked) =>
    marked.split(/([\u{100000}-\u{10fffe}])/u)
      .map((part, place) => (place % 2 ? values.node(part.codePointAt(0) - FIRST_MARK) : part));
  const text = (values, marked) =>
    marked.replace(/[\u{100000}-\u{10fffe}]/gu, (mark) => values.node(mark.codePointAt(0) - FIRST_MARK));

  return { taken, read, follow, nearest, parts, text };
})(typeof module === "undefined" ? reckoning : require("./reckoning.js"));

// Drawings, from the compiler's shapes, whose places are numbers or nodes.
const drawing = (() => {
  const CAP_TO_SIZE = 0.35, ARROW_HEAD = 2.2, TURN = Math.PI / 7;
  const escaped = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  const short = (value) => String(Number(value.toFixed(2)));
  const run = (places) => {
    const points = [];
    for (let i = 0; i < places.length; i += 2) points.push(`${short(places[i])} ${short(places[i + 1])}`);
    return `M${points.join("L")}`;
  };
  const head = ([x, y], [toX, toY]) => {
    const along = Math.atan2(toY - y, toX - x);
    const length = Math.min(ARROW_HEAD, Math.hypot(toX - x, toY - y) / 3);
    const barb = (turn) => [toX - length * Math.cos(along + turn), toY - length * Math.sin(along + turn)];
    return run([...barb(-TURN), toX, toY, ...barb(TURN)]);
  };

  // The shapes with all numbers and words in their places.
  const settled = (drawn, values, text) => {
    const place = (given) => (Array.isArray(given) ? values.node(given[0]) : given);
    const words = (marked) => text(values, marked);
    const shapes = drawn.shapes.map(([kind, ...rest]) => {
      const given = rest.map((each) => (Array.isArray(each) ? each.map(place) : each));
      if (kind === "words") given[1] = words(given[1]);
      return [kind, ...given];
    });
    return { size: drawn.size.map(place), alt: words(drawn.alt), caption: words(drawn.caption), shapes };
  };

  const element = ([kind, ...given], hatch, ident) => {
    switch (kind) {
      case "line": return `<path class="${given[0]}" d="${run(given[1])}"/>`;
      case "box": {
        const [left, top, right, bottom] = given[2];
        const corners = [left, top, right, top, right, bottom, left, bottom];
        return filled(given[0], given[1], `${run(corners)}Z`, hatch, ident);
      }
      case "area": return filled(given[0], given[1], `${run(given[2])}Z`, hatch, ident);
      case "disc": {
        const [x, y, r] = given[2];
        const half = `a${short(r)} ${short(r)} 0 1 0 `;
        const outline = `M${short(x - r)} ${short(y)}${half}${short(2 * r)} 0${half}${short(-2 * r)} 0z`;
        return filled(given[0], given[1], outline, hatch, ident);
      }
      case "arrow": {
        const [ink, [x, y, toX, toY], both] = given;
        const heads = head([x, y], [toX, toY]) + (both ? head([toX, toY], [x, y]) : "");
        return `<path class="${ink}" d="${run([x, y, toX, toY])}${heads}"/>`;
      }
      default: {
        const [[x, y], words, size, anchor, turned, bold] = given;
        const at = `x="${short(x)}" y="${short(y + size * CAP_TO_SIZE)}"`;
        const rotate = turned ? ` transform="rotate(${short(turned)} ${short(x)} ${short(y)})"` : "";
        const look = `font-size="${short(size)}" text-anchor="${anchor}"${bold ? ' class="bold"' : ""}`;
        return `<text ${at} ${look}${rotate}>${escaped(words)}</text>`;
      }
    }
  };
  const filled = (ink, edge, outline, hatch, ident) => {
    if (!hatch[ink]) return `<path class="${ink} ${edge}" d="${outline}"/>`;
    const distance = hatch[ink];
    return `<pattern id="${ident}" width="${distance}" height="${distance}" patternUnits="userSpaceOnUse"`
      + ` patternTransform="rotate(45)"><path class="${ink}" d="M0 0v${distance}"/></pattern>`
      + `<path fill="url(#${ident})" d="${outline}"/>${edge ? `<path class="${edge}" d="${outline}"/>` : ""}`;
  };

  const svg = (shown, scale, widest, hatch, ident) => {
    const [width, height] = shown.size;
    const by = Math.min(scale, widest / width);
    const shapes = shown.shapes.map((shape, place) => element(shape, hatch, `${ident}-${place}`)).join("");
    return `<svg class="drawing" role="img" width="${short(width * by)}mm" height="${short(height * by)}mm"`
      + ` viewBox="0 0 ${short(width)} ${short(height)}"><title>${escaped(shown.alt)}</title>${shapes}</svg>`;
  };
  const figure = (shown, ...how) => {
    const caption = shown.caption ? `<figcaption>${escaped(shown.caption)}</figcaption>` : "";
    return svg(shown, ...how) + caption;
  };
  return { settled, figure };
})();

if (typeof module !== "undefined") module.exports = { ...following, drawing };
