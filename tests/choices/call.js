// Calls the functions by which pages reckon: reads {script, calls} as JSON, answers with what each gives.
"use strict";

const { script, calls } = JSON.parse(require("fs").readFileSync(0, "utf8"));
const { FUNCTIONS, number } = require(script);

const given = (each) => (typeof each === "string" && each[0] === "=" ? each.slice(1) : number(each));
const shown = (value) => (typeof value === "object" ? `${value.n}/${value.d}` : value);
process.stdout.write(JSON.stringify(calls.map(([name, ...rest]) => shown(FUNCTIONS[name](...rest.map(given))))));
