"use strict";
const { closeSync, existsSync, fstatSync, openSync, readSync, statSync } = require("node:fs");
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

/**
 * Another engine may not know these flags and would say so. V8 takes what it remembers only under the flags that it was
 * written under, and a thread that comes into being sets some of them anew for all: so they are set when it is taken.
 */
function setFlags(flags = FLAGS) {
  if (!process.versions.v8.startsWith("11.")) return;
  for (const flag of flags) setFlagsFromString(flag);
}

const FLAGS = [
  // A run ends within a second or two, and at its usual readiness V8 spends a third of that on optimising code that is
  // hardly run again (measured with Node 20).
  "--interrupt-budget=2000000",
  // Little of what is made is kept: marking it in steps beside the work takes a tenth of the time and frees nothing.
  "--no-incremental-marking",
  // What is new keeps to the room that it begins with, a megabyte in the first thread and so many in others: to touch
  // more memory for the first time takes longer than to tidy up more often (by a tenth of a print, measured).
  "--semi-space-growth-factor=1",
  "--min-semi-space-size=4",
  // So little at a time is not shared out: waking another thread for it takes longer (4 % of a print, measured).
  "--no-parallel-scavenge",
];

// For threads that are about to come into being.
setFlags();

/** A room file from so many bytes on is worked on for half a second and more, and so are so many rooms. */
const LARGE_BYTES = 50_000;
const MANY_ROOMS = 8;

// What is set for a short run makes a long one longer: with more room the largest files are answered in four fifths of
// the time, and a building is printed in nineteen twentieths (measured with Node 20).
const FLAGS_FOR_MANY = ["--semi-space-growth-factor=4"];
const FLAGS_FOR_LARGE = ["--interrupt-budget=700000", ...FLAGS_FOR_MANY];

/** What is also to be set for the files that were typed, once the program is taken. */
function flagsFor(typed) {
  const sizes = typed.filter((word) => !word.startsWith("-")).map(sizeOf);
  if (sizes.some((size) => size >= LARGE_BYTES)) return FLAGS_FOR_LARGE;
  return sizes.filter((size) => size > 0).length >= MANY_ROOMS ? FLAGS_FOR_MANY : [];
}

/** 0 of a word that is no file, such as the command's, or of one that cannot be asked for its size. */
function sizeOf(word) {
  try {
    return statSync(word, { throwIfNoEntry: false })?.size ?? 0;
  } catch {
    return 0;
  }
}

const memoryOf = (command) => join(BUILT, `${REMEMBERED.includes(command) ? command : LIKE_OTHERS}.v8`);
const programOf = (command) => join(BUILT, command === "check" ? "cli-check.js" : "cli.js");

/** The compiled program; `command` is the first word typed. */
function scriptFor(command) {
  const program = programOf(command);
  const memory = memoryOf(command);
  const paths = existsSync(memory) ? [program, memory] : [program];
  const [source, cachedData] = readEach(paths, (bytes, index) =>
    // The bundle is written in ASCII, which V8 keeps in half the space.
    index === 0 ? bytes.latin1Slice() : bytes,
  );
  setFlags();
  return new Script(source, { filename: program, ...(cachedData === undefined ? {} : { cachedData }) });
}

/**
 * What `take` makes of each file, through the same bytes: it may keep those of the last. Megabytes are not touched for
 * the first time where some were before (a fifth of the reading, measured).
 */
function readEach(paths, take) {
  const files = paths.map((path) => openSync(path));
  const sizes = files.map((file) => fstatSync(file).size);
  const bytes = Buffer.allocUnsafeSlow(Math.max(...sizes));
  return files.map((file, index) => {
    const own = bytes.subarray(0, sizes[index]);
    for (let at = 0; at < own.length; ) {
      const read = readSync(file, own, at, own.length - at, null);
      if (read === 0) throw new Error(`${paths[index]} has become shorter`);
      at += read;
    }
    closeSync(file);
    return take(own, index);
  });
}

/** What the program for the command exports. */
function programFor(command, script = scriptFor(command)) {
  const program = programOf(command);
  const module = { exports: {} };
  script.runInThisContext()(module.exports, require, module, program, BUILT);
  return module.exports;
}

module.exports = { REMEMBERED, setFlags, flagsFor, memoryOf, programOf, programFor, scriptFor };
