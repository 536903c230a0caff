import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { asksPoles } from "../../src/commands/wanted.js";
import { DEN, workFolder } from "./in-folder.js";

/** Names of the sheets that a packet in a folder says it holds. */
function sheetsIn(folder: string): string[] {
  const contents = JSON.parse(readFileSync(join(folder, "packet.json"), "utf8"));
  const pages: readonly { readonly sheet: string }[] = contents.pages;
  return [...new Set(pages.map(({ sheet }) => sheet))];
}

test("story poles are asked for by kind or by name, and by nothing else", () => {
  expect(asksPoles(["pole"])).toBe(true);
  expect(asksPoles(["cover", "pole-ceiling-front"])).toBe(true);
  expect(asksPoles(["poles"])).toBe(true);
  expect(asksPoles(["ceiling-full", "opening-pole"])).toBe(false);
  expect(asksPoles(null)).toBe(false);
});

test("one pole by its name, on small paper and on a roll", async () => {
  const { folder, type } = workFolder();
  const print = (...more: string[]) => type("print", DEN, "--pdf", "--only", ...more);
  expect((await print("pole-ceiling-front", "-o", "one")).code).toBe(1);
  expect(sheetsIn(join(folder, "one"))).toEqual(["pole-ceiling-front"]);
  expect((await print("poles", "-o", "all")).code).toBe(1);
  expect(sheetsIn(join(folder, "all"))).toHaveLength(5);
  expect((await print("pole-ceiling-front", "--paper", "roll-36", "-o", "roll")).code).toBe(1);
  expect(sheetsIn(join(folder, "roll"))).toEqual(["poles"]);
});
