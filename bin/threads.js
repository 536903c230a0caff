"use strict";
const { availableParallelism } = require("node:os");
const { join } = require("node:path");
const { Worker } = require("node:worker_threads");

/* The threads among which a print is shared out. Each reads the program first, then waits for what it is to do. */
const starterFor = (flags) => () => new Worker(join(__dirname, "crew-member.js"), { workerData: { flags } });

/** A part of a packet is not shared, and help is not printed by threads. */
const isForOne = (word) => /^(--only|--help|-h)(=|$)/u.test(word);

/** Null where the system has none to give: whoever asks later hears of that. */
function ifPossible(start) {
  try {
    return start();
  } catch {
    return null;
  }
}

/**
 * What starts a thread. The first one comes into being at once where it will be wanted: it reads the program while this
 * thread does. One that nobody asks for keeps nobody waiting, and fails in silence.
 */
function threads(typed, flags) {
  const start = starterFor(flags);
  let waiting = availableParallelism() > 1 && !typed.some(isForOne) ? ifPossible(start) : null;
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
