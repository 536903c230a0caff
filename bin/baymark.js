#!/usr/bin/env node
const { run } = await import("./built/cli.js").catch((cause) => {
  if (cause?.code !== "ERR_MODULE_NOT_FOUND") throw cause;
  process.stderr.write("baymark is not built yet: run `npm run build` in its folder first\n");
  process.exit(3);
});

process.exitCode = await run(process.argv.slice(2));
