#!/usr/bin/env node
"use strict";
const { flagsFor, programFor, programOf, setFlags } = require("./load.js");

const typed = process.argv.slice(2);
const [command] = typed;
const flags = flagsFor(typed);

// What only a print needs is not even read for the others.
const startThread = command === "print" ? require("./threads.js").threads(typed, flags) : null;

function program() {
  try {
    return programFor(command);
  } catch (cause) {
    if (cause?.code !== "ENOENT" || cause.path !== programOf(command)) throw cause;
    process.stderr.write("baymark is not built yet: run `npm run build` in its folder first\n");
    process.exit(3);
  }
}

/** Nothing that was said waits to go out, as it may where a pipe is slow on some systems. */
const isAllSaid = () => process.stdout.writableLength + process.stderr.writableLength === 0;

const { run } = program();
setFlags(flags);
run(typed, { startThread }).then((code) => {
  process.exitCode = code;
  // Threads may take longer to end than the rest: nobody needs to see that. By then a stream that fails has said so.
  if (startThread !== null) setImmediate(() => isAllSaid() && process.exit());
});
