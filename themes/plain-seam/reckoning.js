// Adds, rounds and prints as the compiler does, with exact fractions, function by function under the
// compiler's names. It knows nothing of sewing, and nothing of pages.
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

  return {
    FUNCTIONS, UNITS, ZERO, ONE, fraction, number, add, multiply, divide, size, compare, times, half_up, factor,
    measure_text, number_text,
  };
})();

if (typeof module !== "undefined") module.exports = reckoning;
