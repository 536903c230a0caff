"use strict";
const { join } = require("node:path");
const { programIn, scriptFor } = require(join(__dirname, "..", "..", "bin", "load.js"));

/* The program with a mate that runs another script, named by BAYMARK_MATE; with none where that is empty. */
programIn(scriptFor("print"))
  .run(process.argv.slice(2), { crewScript: process.env.BAYMARK_MATE || null })
  .then((code) => {
    process.exitCode = code;
  });
