// Reckons what follows from a reader's choice, along the compiler's own way, which stands in the page as
// data. This script adds, rounds and prints as the compiler does, with exact fractions, and draws shapes; it
// knows nothing of sewing.
"use strict";

const reckoning = (() => {
  // Exact fractions: numerator and denominator, in lowest terms, the denominator above nothing.
  const gcd = (a, b) => { while (b) [a, b] = [b, a % b]; return a < 0n ? -a : a; };
  const fraction = (n, d = 1n) => {
    if (d === 0n) throw new RangeError("divided by nothing");
    const by = gcd(n, d) * (d < 0n ? -1n : 1n);
    return by === 1n ? { n, d } : { n: n / by, d: d / by };
  };
  const number = (written) => {
    const [n, d] = String(written).split("/");
    return { n: BigInt(n), d: BigInt(d ?? 1) };
  };
  const ZERO = number(0), HALF = number("1/2"), ONE = number(1);
  const add = (a, b) => fraction(a.n * b.d + b.n * a.d, a.d * b.d);
  const subtract = (a, b) => fraction(a.n * b.d - b.n * a.d, a.d * b.d);
  const multiply = (a, b) => fraction(a.n * b.n, a.d * b.d);
  const divide = (a, b) => fraction(a.n * b.d, a.d * b.n);
  const negative = (a) => ({ n: -a.n, d: a.d });
  const size = (a) => (a.n < 0n ? negative(a) : a);
  const compare = (a, b) => { const x = a.n * b.d, y = b.n * a.d; return x < y ? -1 : x > y ? 1 : 0; };
  const floor = (a) => (a.n >= 0n ? a.n / a.d : -((-a.n + a.d - 1n) / a.d));
  const ceil = (a) => -floor(negative(a));
  const times = (a, whole) => multiply(a, { n: whole, d: 1n });

  // Rounding, as `measure/rounding.py` has it.
  const half_up = (value, step) => {
    const rounded = times(step, floor(add(divide(size(value), step), HALF)));
    return value.n < 0n ? negative(rounded) : rounded;
  };
  const onGrid = (value, step, slack, otherwise) => {
    const nearest = half_up(value, step);
    return compare(size(subtract(value, nearest)), slack) < 0 ? nearest : otherwise;
  };
  const up = (value, step, slack = ZERO) => onGrid(value, step, slack, times(step, ceil(divide(value, step))));
  const down = (value, step, slack = ZERO) => onGrid(value, step, slack, times(step, floor(divide(value, step))));
  const settled = (value, step, slack) => onGrid(value, step, slack, value);
  const SAME = { metric: number("1/1000"), imperial: number("1/25400") };

  // Numerals, as `measure/numerals.py` writes them.
  const UNITS = {
    mm: ["metric", "1"], cm: ["metric", "10"], m: ["metric", "1000"],
    in: ["imperial", "1"], ft: ["imperial", "12"], yd: ["imperial", "36"],
    g: ["metric", "1"], kg: ["metric", "1000"], oz: ["imperial", "1"], lb: ["imperial", "16"],
  };
  const factor = (unit) => number(UNITS[unit][1]);
  const fraction_text = (value) => {
    const sign = value.n < 0n ? "-" : "", n = size(value).n;
    const whole = n / value.d, over = n % value.d;
    if (!over) return `${sign}${whole}`;
    return whole ? `${sign}${whole} ${over}/${value.d}` : `${sign}${over}/${value.d}`;
  };
  const decimal_text = (value, digits) => {
    digits = Number(typeof digits === "object" ? digits.n : digits);
    const tens = 10n ** BigInt(digits);
    const scaled = multiply(half_up(value, { n: 1n, d: tens }), { n: tens, d: 1n }).n;
    const sign = scaled < 0n ? "-" : "", all = scaled < 0n ? -scaled : scaled;
    const tail = String(all % tens).padStart(digits, "0").replace(/0+$/, "");
    return all % tens ? `${sign}${all / tens}.${tail}` : `${sign}${all / tens}`;
  };
  const decimals = (value) => {
    let rest = value.d, twos = 0, fives = 0;
    while (rest % 2n === 0n) { rest /= 2n; twos += 1; }
    while (rest % 5n === 0n) { rest /= 5n; fives += 1; }
    return rest === 1n ? Math.max(twos, fives) : null;
  };
  const isRuled = (value) => [1n, 2n, 3n, 4n, 8n, 16n, 32n, 64n].includes(value.d);
  const measure_text = (value, unit) => {
    const digits = decimals(value);
    const ruled = UNITS[unit][0] === "imperial" && isRuled(value);
    return `${ruled || digits === null ? fraction_text(value) : decimal_text(value, digits)} ${unit}`;
  };
  const number_text = (value) => {
    const digits = decimals(value);
    return isRuled(value) || digits === null ? fraction_text(value) : decimal_text(value, digits);
  };

  // Printing, as `measure/printing.py` prints: a value and its text.
  const written = (value, how) => {
    const [kind, system, ...flags] = how.split(" ");
    const [physical, rooted, cut, bought] = flags.map((flag) => flag === "True");
    const metric = system === "metric";
    switch (kind) {
      case "number": return plainNumber(value);
      case "length": return lengthOf(value, system, metric, physical, rooted, cut, bought);
      case "area": return areaOf(value, metric, bought ? up : half_up);
      default: return weightOf(value, metric, bought);
    }
  };
  const plainNumber = (value) => {
    const digits = decimals(value);
    const rough = ![1n, 2n, 3n, 4n, 8n, 16n].includes(value.d) && (digits === null || digits > 4);
    const shown = rough ? half_up(value, number("1/100")) : value;
    return { value: shown, text: number_text(shown) };
  };
  const lengthOf = (value, system, metric, physical, rooted, cut, bought) => {
    const slack = SAME[system];
    if (bought) return metric ? boughtMetric(value, slack) : boughtImperial(value, slack);
    let shown;
    if (physical && cut) shown = up(value, metric ? ONE : number("1/16"), slack);
    else {
      const near = rooted ? settled(value, number(metric ? "1/20" : "1/32"), slack) : value;
      if (physical) shown = half_up(near, number(metric ? "1/10" : "1/16"));
      else shown = metric ? toTheMillimetre(near) : toTheEighth(near);
    }
    return metric ? inMillimetres(shown) : { value: shown, text: `${fraction_text(shown)} in` };
  };
  const toTheMillimetre = (value) => (times(value, 2n).d === 1n ? value : half_up(value, ONE));
  const toTheEighth = (value) => {
    if (times(value, 16n).d === 1n) return value;
    return half_up(value, number(compare(size(value), ONE) < 0 ? "1/16" : "1/8"));
  };
  const inMillimetres = (value) => {
    if (compare(size(value), number(10)) < 0) return { value, text: `${decimal_text(value, 1)} mm` };
    return { value, text: `${decimal_text(divide(value, number(10)), 2)} cm` };
  };
  const boughtMetric = (value, slack) => {
    const shown = up(value, number(10), slack);
    const inCentimetres = compare(shown, number(2000)) < 0;
    const text = inCentimetres ? `${decimal_text(divide(shown, number(10)), 0)} cm`
      : `${decimal_text(divide(shown, number(1000)), 2)} m`;
    return { value: shown, text };
  };
  const boughtImperial = (value, slack) => {
    const shown = up(value, number("9/2"), slack);
    return { value: shown, text: `${fraction_text(divide(shown, number(36)))} yd` };
  };
  const areaOf = (value, metric, rounding) => {
    const shown = rounding(value, number(metric ? 10 : "1/8"));
    const text = metric ? `${decimal_text(divide(shown, number(100)), 1)} cm²` : `${fraction_text(shown)} in²`;
    return { value: shown, text };
  };
  const weightOf = (value, metric, bought) => {
    const rounding = bought ? up : half_up;
    if (metric) {
      const shown = rounding(value, number(bought ? 5 : 1));
      const small = compare(size(shown), number(1000)) < 0;
      const text = small ? `${decimal_text(shown, 0)} g` : `${decimal_text(divide(shown, number(1000)), 3)} kg`;
      return { value: shown, text };
    }
    const ounces = rounding(value, number("1/4"));
    if (compare(size(ounces), number(16)) < 0) return { value: ounces, text: `${fraction_text(ounces)} oz` };
    const shown = rounding(value, ONE);
    return { value: shown, text: `${fraction_text(divide(shown, number(16)))} lb` };
  };

  // Roots to 40 digits, as `measure/arithmetic.py` takes them.
  const wholeRoot = (n) => {
    if (n < 2n) return n;
    let x = BigInt(Math.floor(Math.sqrt(Number(n)))) || 1n;
    if (x > 1n << 900n || n > 1n << 1000n) x = 1n << (BigInt(n.toString(2).length + 1) / 2n);
    for (;;) {
      const next = (x + n / x) >> 1n;
      if (next === x || next === x + 1n || next === x - 1n) { x = next; break; }
      x = next;
    }
    while (x * x > n) x -= 1n;
    while ((x + 1n) * (x + 1n) <= n) x += 1n;
    return x;
  };
  const DIGITS = 40;
  const tenTo = (places) => (places >= 0 ? { n: 10n ** BigInt(places), d: 1n } : { n: 1n, d: 10n ** BigInt(-places) });
  const shiftedRoot = (value, places) => {
    const shifted = multiply(times(value, 4n), tenTo(2 * places));
    return (wholeRoot(shifted.n / shifted.d) + 1n) / 2n;
  };
  const squareRoot = (value) => {
    if (value.n < 0n) throw new RangeError("a root of less than nothing");
    const above = wholeRoot(value.n), below = wholeRoot(value.d);
    if (above * above === value.n && below * below === value.d) return [fraction(above, below), true];
    let places = DIGITS;
    while (shiftedRoot(value, places) >= 10n ** BigInt(DIGITS)) places -= 1;
    while (shiftedRoot(value, places) < 10n ** BigInt(DIGITS - 1)) places += 1;
    return [multiply({ n: shiftedRoot(value, places), d: 1n }, tenTo(-places)), false];
  };

  // A fraction as the nearest floating-point number, for drawings.
  const real = ({ n, d }) => {
    if ((n < 0n ? -n : n) < 9007199254740992n && d < 9007199254740992n) return Number(n) / Number(d);
    const whole = n / d;
    return Number(whole) + Number(((n % d) * (1n << 60n)) / d) / 2 ** 60;
  };

  // What nodes are reckoned by; the names are those of the compiler's functions.
  const FUNCTIONS = {
    half_up, up, down, settled, fraction_text, decimal_text, measure_text, number_text,
    printed_value: (value, how) => written(value, how).value,
    printed_text: (value, how) => written(value, how).text,
    stated_text: (value, stated, how, unit) => {
      if (stated.n && unit) return measure_text(divide(value, factor(unit)), unit);
      return unit ? written(value, `${how} False False False False`).text : number_text(value);
    },
    fine_text: (value, system) => {
      if (system === "metric") {
        if (compare(value, number(10)) < 0) return `${decimal_text(value, 2)} mm`;
        return `${decimal_text(divide(value, number(10)), 2)} cm`;
      }
      const ruled = isRuled(value) && value.d !== 3n;
      return `${ruled ? fraction_text(value) : decimal_text(value, 3)} in`;
    },
    root_of: (value) => squareRoot(value)[0],
    root_is_exact: (value) => (squareRoot(value)[1] ? ONE : ZERO),
    whole_part: (value) => ({ n: floor(value), d: 1n }),
    greatest_value: (...of) => of.reduce((a, b) => (compare(b, a) > 0 ? b : a)),
    least_value: (...of) => of.reduce((a, b) => (compare(b, a) < 0 ? b : a)),
    magnitude: size, product: multiply, quotient: divide,
    same_text: (one, other) => (one === other ? ONE : ZERO),
    real, length_of: (text) => text.length,
    times: (a, b) => a * b, over: (a, b) => a / b, least: Math.min, most: Math.max,
  };

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
  const FIRST_MARK = 0x100000;
  // A text in parts: words as they are, and between them those that marks stand for.
  const parts = (values, marked) =>
    marked.split(/([\u{100000}-\u{10fffe}])/u)
      .map((part, place) => (place % 2 ? values.node(part.codePointAt(0) - FIRST_MARK) : part));
  const text = (values, marked) =>
    marked.replace(/[\u{100000}-\u{10fffe}]/gu, (mark) => values.node(mark.codePointAt(0) - FIRST_MARK));

  return { FUNCTIONS, number, compare, measure_text, number_text, divide, factor, taken, read, follow, parts, text, UNITS };
})();

if (typeof module !== "undefined") module.exports = reckoning;

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

if (typeof module !== "undefined") module.exports.settled = drawing.settled;
