"use strict";
const { availableParallelism } = require("node:os");
const { join } = require("node:path");
const { Worker } = require("node:worker_threads");

/* The threads among which a print is shared out. Each reads the program first, then waits for what it is to do. */
const start = () => new Worker(join(__dirname, "crew-member.js"));

/**
 * What starts a thread. The first one comes into being at once: it reads the program while this thread does, and most
 * prints want one; one that nobody asks for keeps nobody waiting, and fails in silence.
 */
function threads() {
  let waiting = availableParallelism() > 1 ? start() : null;
  waiting?.unref();
  waiting?.on("error", () => undefined);
  waiting?.on("exit", () => {
    waiting = null;
  });
  return () => {
    const thread = waiting ?? start();
    waiting = null;
    thread.ref();
    return thread;
  };
}

module.exports = { threads };
