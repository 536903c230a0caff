"use strict";
const { parentPort, workerData } = require("node:worker_threads");
const { programIn, scriptFor } = require("./load.js");

/* One of the threads that `print` shares many rooms out among. */
programIn(scriptFor("print")).workInCrew(parentPort, workerData);
