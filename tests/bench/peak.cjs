/* Run before a program: writes the most memory that it held, in kB, to the file that is named. */
const { writeFileSync } = require("node:fs");
const { isMainThread } = require("node:worker_threads");

if (isMainThread) {
  process.on("exit", () => writeFileSync(process.env.BAYMARK_PEAK, String(process.resourceUsage().maxRSS)));
}
