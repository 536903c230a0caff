/*
 * Loaded before the program (`node --import`): the process kills itself at the n-th call that changes something on
 * the disk, with half of a file written. Plain JavaScript, since it is loaded as it stands.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

const at = Number(process.env.BAYMARK_DIE_AT);
let calls = 0;

for (const name of ["mkdirSync", "writeFileSync", "renameSync", "rmSync"]) {
  const own = fs[name];
  fs[name] = (...typed) => {
    calls += 1;
    if (calls === at) {
      if (name === "writeFileSync") own(typed[0], typed[1].slice(0, typed[1].length / 2));
      process.kill(process.pid, "SIGKILL");
    }
    return own(...typed);
  };
}
syncBuiltinESMExports();
