import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { DEN, type Ran, STUDIO, workFolder } from "./in-folder.js";

/** A folder with the den as it is and as `later.yaml`, with changes made in its text. */
function revised(...changes: readonly (readonly [from: string, to: string])[]) {
  const { folder, type } = workFolder();
  const text = changes.reduce(
    (room, [from, to]) => {
      expect(room.split(from), from).toHaveLength(2);
      return room.replace(from, to);
    },
    readFileSync(join(folder, DEN), "utf8"),
  );
  writeFileSync(join(folder, "later.yaml"), text);
  return (...more: string[]): Promise<Ran> => type("compare", DEN, "later.yaml", ...more);
}

const MOVED = [`at: { right: 3' 3", front: 15' 8" }`, `at: { right: 3' 3", front: 15' 4" }`] as const;
const REVISION = ["revision: B", "revision: C"] as const;

test("what moved, by how much, what that mends, and how to print what changed", async () => {
  const compare = revised(MOVED, REVISION);
  const { code, out, err } = await compare();
  expect(code).toBe(0);
  expect(err).toBe("");
  expect(out).toContain("Quarry Lane den: revision B -> revision C");
  expect(out).toContain(`15' 8" -> 15' 4" from FRONT (4" (102 mm) nearer)`);
  expect(out).toContain("may be cut now");
  expect(out).toMatch(/GONE {2}error: TBR: the opening cuts joist 12/u);
  const [, only = ""] = /baymark print later\.yaml --only (\S+)/u.exec(out) ?? [];
  expect(only.split(",")).toEqual(expect.arrayContaining(["floor", "ceiling", "opening-TBR"]));
  expect(only.split(",")).not.toContain("opening-TFL");
  expect(out).toMatch(/pole-ceiling-front +changed, where it was printed by name/u);
});

test("the command that it names prints those sheets and no others", async () => {
  const { folder, type } = workFolder();
  const text = readFileSync(join(folder, DEN), "utf8").replace(...MOVED);
  writeFileSync(join(folder, "later.yaml"), text);
  const { out } = await type("compare", DEN, "later.yaml");
  const [, only = ""] = /--only (\S+)/u.exec(out) ?? [];
  await type("print", "later.yaml", "--pdf", "--only", only, "-o", "again");
  const contents = JSON.parse(readFileSync(join(folder, "again", "packet.json"), "utf8"));
  const pages: readonly { readonly sheet: string }[] = contents.pages;
  expect(new Set(pages.map(({ sheet }) => sheet))).toEqual(new Set(only.split(",")));
});

test("a room and itself: nothing, and no sheet", async () => {
  const { out, code } = await revised(REVISION)();
  expect(code).toBe(0);
  expect(out).toContain("nothing is otherwise");
  expect(out).toContain("no sheet: all are drawn as before");
});

test("a joist that was found elsewhere, with who and when", async () => {
  const found = `    found: [{ member: 7, at: 112 1/2", by: J. framing lead, on: 2026-11-18 }]\n`;
  const compare = revised([
    `    from: front\n    at: [16", 32 1/4"`,
    `    from: front\n${found}    at: [16", 32 1/4"`,
  ]);
  const { out } = await compare();
  expect(out).toContain(`ceiling, joist 7  9' 4" -> 9' 4 1/2" from FRONT (1/2" (13 mm) further)`);
  expect(out).toContain("ceiling, joist 7  FOUND by J. framing lead, 2026-11-18");
  expect(out).toMatch(/ceiling +changed/u);
});

test("neighbours moved alike are told together", async () => {
  const found = `    found: [{ from: 3, to: 6, shift: -1/4", by: J., on: 2026-11-18 }]\n`;
  const compare = revised([
    `    from: front\n    at: [16", 32 1/4"`,
    `    from: front\n${found}    at: [16", 32 1/4"`,
  ]);
  const { out } = await compare();
  expect(out).toContain(`ceiling, joist 3 to 6  each 1/4" (6 mm) nearer to FRONT`);
});

test("in Spanish", async () => {
  const { out } = await revised(MOVED)("--language", "es");
  expect(out).toContain(`15' 8" -> 15' 4" desde FRENTE`);
  expect(out).toContain("Imprimir otra vez");
});

test("for machines: one object, millimetres without rounding", async () => {
  const { out, err } = await revised(MOVED, REVISION)("--json");
  expect(err).toBe("");
  expect(out.trimEnd().split("\n")).toHaveLength(1);
  const found = JSON.parse(out);
  expect(found).toMatchObject({
    baymark: 1,
    old: { file: DEN, revision: "B" },
    new: { file: "later.yaml", revision: "C" },
  });
  expect(found.openings).toContainEqual({
    id: "TBR",
    what: "tape",
    from: "front",
    before: 4775.2,
    after: 4673.6,
  });
  expect(found.findings.gone.map(({ code }: { code: string }) => code)).toContain("opening-cuts-member");
  expect(found.sheets).toContainEqual(
    expect.objectContaining({ name: "opening-TBR", what: "changed", by_name: false }),
  );
  expect(out).not.toMatch(/Mm"|Deg"/u);
});

test("a file that cannot be used ends with 2, and what is wrong with either is told", async () => {
  const { folder, type } = workFolder();
  writeFileSync(join(folder, "bad.yaml"), "baymark: 1\nroom: 3\n");
  const { code, out, err } = await type("compare", STUDIO, "bad.yaml");
  expect(code).toBe(2);
  expect(out).toBe("");
  expect(err).toContain("bad.yaml:2");
  const both = await type("compare", "none.yaml", "bad.yaml");
  expect(both.err).toContain("none.yaml");
  expect(both.err).toContain("bad.yaml:2");
  const json = await type("compare", STUDIO, "bad.yaml", "--json");
  expect(json.code).toBe(2);
  expect(JSON.parse(json.out)).toMatchObject({ file: "bad.yaml", fingerprint: null });
});

test("two files are wanted", async () => {
  const { code, err } = await workFolder().type("compare", DEN);
  expect(code).toBe(2);
  expect(err).toMatch(/new/u);
});
