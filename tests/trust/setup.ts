import { execFileSync } from "node:child_process";
import { join } from "node:path";

/** Before any of these tests: the program as it is installed, since they start it as people do. */
export default (): void => {
  const root = join(import.meta.dirname, "..", "..");
  execFileSync("npm", ["run", "build"], { cwd: root, stdio: ["ignore", "ignore", "inherit"] });
};
