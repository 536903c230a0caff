"use strict";
const { parentPort, workerData } = require("node:worker_threads");
const { programFor, setFlags } = require("./load.js");

/* One of the threads among which a print is shared out. */
const { work } = programFor("print");
setFlags(workerData?.flags ?? []);
parentPort.on("message", (task) => work(task, parentPort));
