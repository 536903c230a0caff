#!/usr/bin/env node
"use strict";
const { join } = require("node:path");
const { programFor, programOf } = require("./load.js");

const typed = process.argv.slice(2);
const [command] = typed;

function program() {
  try {
    return programFor(command);
  } catch (cause) {
    if (cause?.code !== "ENOENT" || cause.path !== programOf(command)) throw cause;
    process.stderr.write("baymark is not built yet: run `npm run build` in its folder first\n");
    process.exit(3);
  }
}

program()
  .run(typed, { crewScript: join(__dirname, "crew-member.js") })
  .then((code) => {
    process.exitCode = code;
  });
