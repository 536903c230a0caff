#!/usr/bin/env node
import { setFlagsFromString } from "node:v8";

// A run ends within a second or two, and at its usual readiness V8 spends a third of that on optimising code that is
// hardly run again (measured with Node 20). Another engine may not know this flag and would say so.
if (process.versions.v8.startsWith("11.")) setFlagsFromString("--interrupt-budget=1000000");

const { run } = await import("./built/cli.js").catch((cause) => {
  if (cause?.code !== "ERR_MODULE_NOT_FOUND") throw cause;
  process.stderr.write("baymark is not built yet: run `npm run build` in its folder first\n");
  process.exit(3);
});

process.exitCode = await run(process.argv.slice(2));
