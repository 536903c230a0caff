#!/usr/bin/env node
"use strict";
const { PROGRAM, programIn, scriptFor } = require("./load.js");

const typed = process.argv.slice(2);

function program() {
  try {
    return programIn(scriptFor(typed[0]));
  } catch (cause) {
    if (cause?.code !== "ENOENT" || cause.path !== PROGRAM) throw cause;
    process.stderr.write("baymark is not built yet: run `npm run build` in its folder first\n");
    process.exit(3);
  }
}

program()
  .run(typed)
  .then((code) => {
    process.exitCode = code;
  });
