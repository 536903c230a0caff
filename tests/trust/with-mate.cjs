"use strict";
const { join } = require("node:path");
const { Worker } = require("node:worker_threads");
const { programFor } = require(join(__dirname, "..", "..", "bin", "load.js"));

/*
 * The program with a mate that runs another script, named by BAYMARK_MATE; with none where that is empty, and with a
 * system that has no thread to give where it is "refused".
 */
const script = process.env.BAYMARK_MATE;
const startThread = () => {
  if (script === "refused") throw new Error("ERR_WORKER_INIT_FAILED");
  return new Worker(script);
};
programFor("print")
  .run(process.argv.slice(2), { startThread: script ? startThread : null })
  .then((code) => {
    process.exitCode = code;
  });
