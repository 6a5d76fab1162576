// Reckons pages' data outside a browser: reads {scripts, data, cases} as JSON and answers case by case.
"use strict";

const input = JSON.parse(require("fs").readFileSync(0, "utf8"));
const { number, compare } = require(`${input.scripts}/reckoning.js`);
const { follow, read, taken, parts, text, drawing } = require(`${input.scripts}/following.js`);

const answer = ({ size: name, typed }) => {
  const size = input.data.sizes[name];
  const choices = [];
  for (const [place, [system, written]] of typed.entries()) {
    const offer = size.offers[place];
    const found = read(written, offer, system, input.data.tongue.decimal);
    if (!found.value) return { unread: true };
    const here = found.system === "metric" ? 0 : 1;
    const [least, most] = [offer.least, offer.most].map((end) => number(end[here]));
    if (compare(found.value, least) < 0 || compare(found.value, most) > 0) return { outside: true };
    choices.push(taken(offer, found.system, found.value));
  }
  const { values, way } = follow(size, choices);
  if (!way) return { lost: true };
  const place = size.ways.indexOf(way);
  if (way.broken) return { place, broken: way.broken.map((why) => text(values, why)) };
  const drawn = (ways) => {
    if (!ways.length) return null;
    const found = ways.find((each) => values.holds(each.when));
    return found ? found.of.map((each) => drawing.settled(size.drawings[each], values, text)) : "lost";
  };
  const put = way.put.map((each) => parts(values, each));
  return { place, put, pieces: drawn(way.pieces), steps: way.steps.map(drawn) };
};

process.stdout.write(JSON.stringify(input.cases.map(answer)));
