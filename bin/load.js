"use strict";
const { existsSync, readFileSync } = require("node:fs");
const { join } = require("node:path");
const { setFlagsFromString } = require("node:v8");
const { Script } = require("node:vm");

/*
 * Loads the program as `npm run build` bundled it. Reading and compiling it takes longer than most of its work, so
 * `check` has a program without the rest, and the build also keeps what V8 compiled while it ran each of these
 * commands; a V8 of another version or with other flags does not take that, and compiles.
 */
const BUILT = join(__dirname, "built");
const REMEMBERED = ["check", "report", "print"];
/** The command whose memory serves all others too: they hardly draw. */
const LIKE_OTHERS = "report";

// A run ends within a second or two, and at its usual readiness V8 spends a third of that on optimising code that is
// hardly run again (measured with Node 20). Another engine may not know these flags and would say so.
if (process.versions.v8.startsWith("11.")) {
  setFlagsFromString("--interrupt-budget=2000000");
  // Little of what is made is kept: marking it in steps beside the work takes a tenth of the time and frees nothing.
  setFlagsFromString("--no-incremental-marking");
}

const memoryOf = (command) => join(BUILT, `${REMEMBERED.includes(command) ? command : LIKE_OTHERS}.v8`);
const programOf = (command) => join(BUILT, command === "check" ? "cli-check.js" : "cli.js");

/** The compiled program; `command` is the first word typed. */
function scriptFor(command) {
  const program = programOf(command);
  const memory = memoryOf(command);
  // The bundle is written in ASCII, which V8 keeps in half the space.
  const source = readFileSync(program, "latin1");
  return new Script(`(function (exports, require, module, __filename, __dirname) {${source}\n})`, {
    filename: program,
    ...(existsSync(memory) ? { cachedData: readFileSync(memory) } : {}),
  });
}

/** What the program for the command exports. */
function programFor(command, script = scriptFor(command)) {
  const program = programOf(command);
  const module = { exports: {} };
  script.runInThisContext()(module.exports, require, module, program, BUILT);
  return module.exports;
}

module.exports = { REMEMBERED, memoryOf, programOf, programFor, scriptFor };
