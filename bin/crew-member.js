"use strict";
const { parentPort } = require("node:worker_threads");
const { programFor } = require("./load.js");

/* One of the threads among which a print is shared out. */
const { work } = programFor("print");
parentPort.on("message", (task) => work(task, parentPort));
