#!/usr/bin/env node
"use strict";
const { join } = require("node:path");
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
  .run(typed, { crewScript: join(__dirname, "crew-member.js") })
  .then((code) => {
    process.exitCode = code;
  });
