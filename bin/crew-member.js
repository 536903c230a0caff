"use strict";
const { parentPort, workerData } = require("node:worker_threads");
const { programFor } = require("./load.js");

/* One of the threads that `print` shares many rooms out among. */
programFor("print").workInCrew(parentPort, workerData);
