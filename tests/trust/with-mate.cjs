"use strict";
const { join } = require("node:path");
const { Worker } = require("node:worker_threads");
const { programFor } = require(join(__dirname, "..", "..", "bin", "load.js"));

/* The program with a mate that runs another script, named by BAYMARK_MATE; with none where that is empty. */
const script = process.env.BAYMARK_MATE;
programFor("print")
  .run(process.argv.slice(2), { startThread: script ? () => new Worker(script) : null })
  .then((code) => {
    process.exitCode = code;
  });
