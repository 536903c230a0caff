import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Parts, roomText } from "../rooms/build.js";
import { DEN, type Ran, STUDIO, workFolder } from "./in-folder.js";

const overhead = (id: string, tapes: Parts): Parts => ({ id, model: "tilted", at: tapes });

/** TBR cuts the fourth joist, whose centre is 2400 mm from the front wall. */
const TBL = overhead("TBL", { left: "1 m", front: "2.1 m" });
const PLAIN: Parts = {
  job: { name: "Test room", revision: "B" },
  speakers: [TBL, overhead("TBR", { right: "1 m", front: "2.4 m" })],
};
const MENDED: Parts = {
  job: { name: "Test room", revision: "C" },
  speakers: [TBL, overhead("TBR", { right: "1 m", front: "2.1 m" })],
};
const found = (told: Parts): Parts => ({
  ...PLAIN,
  framing: { ceiling: { found: [{ ...told, by: "J. framing lead", on: "2026-11-18" }] } },
});

/** A folder with the plain room as `old.yaml` and another as `new.yaml`, and a way to type commands there. */
function revised(after: Parts) {
  const { folder, type } = workFolder();
  writeFileSync(join(folder, "old.yaml"), roomText(PLAIN));
  writeFileSync(join(folder, "new.yaml"), roomText(after));
  const compare = (...more: string[]): Promise<Ran> => type("compare", "old.yaml", "new.yaml", ...more);
  return { folder, type, compare };
}

test("what moved, by how much, what that mends; and the command that it names prints those sheets and no others", async () => {
  const { folder, type, compare } = revised(MENDED);
  const { code, out, err } = await compare();
  expect(code).toBe(0);
  expect(err).toBe("");
  expect(out).toContain("Test room: revision B -> revision C");
  expect(out).toContain(`2400 mm -> 2100 mm from FRONT (300 mm (11 13/16") nearer)`);
  expect(out).toContain("TBR  may be cut now");
  expect(out).toMatch(/GONE {2}error: TBR: the opening cuts joist 4/u);
  expect(out).toMatch(/pole-ceiling-front +changed, where it was printed by name/u);
  const [, only = ""] = /baymark print new\.yaml --only (\S+)/u.exec(out) ?? [];
  expect(only.split(",")).toEqual(expect.arrayContaining(["floor", "ceiling", "opening-TBR"]));
  expect(only.split(",")).not.toContain("opening-TBL");
  await type("print", "new.yaml", "--pdf", "--only", only, "-o", "again");
  const contents = JSON.parse(readFileSync(join(folder, "again", "packet.json"), "utf8"));
  const pages: readonly { readonly sheet: string }[] = contents.pages;
  expect(new Set(pages.map(({ sheet }) => sheet))).toEqual(new Set(only.split(",")));
});

test("a room and itself: nothing, and no sheet", async () => {
  const { out, code } = await revised({ ...PLAIN, job: { name: "Test room", revision: "C" } }).compare();
  expect(code).toBe(0);
  expect(out).toContain("nothing is otherwise");
  expect(out).toContain("no sheet: all are drawn as before");
});

test("a joist that was found elsewhere, with who and when; neighbours moved alike together", async () => {
  const one = await revised(found({ member: 7, at: "4210 mm" })).compare();
  expect(one.out).toContain(`ceiling, joist 7  4200 mm -> 4210 mm from FRONT (10 mm (3/8") further)`);
  expect(one.out).toContain("ceiling, joist 7  FOUND by J. framing lead, 2026-11-18");
  expect(one.out).toMatch(/ceiling +changed/u);
  const several = await revised(found({ from: 3, to: 6, shift: "-6 mm" })).compare();
  expect(several.out).toContain(`ceiling, joist 3 to 6  each 6 mm (1/4") nearer to FRONT`);
});

test("in Spanish", async () => {
  const { out } = await revised(MENDED).compare("--language", "es");
  expect(out).toContain("2400 mm -> 2100 mm desde FRENTE");
  expect(out).toContain("Imprimir otra vez");
});

test("for machines: one object, millimetres without rounding", async () => {
  const { out, err } = await revised(MENDED).compare("--json");
  expect(err).toBe("");
  expect(out.trimEnd().split("\n")).toHaveLength(1);
  const told = JSON.parse(out);
  expect(told).toMatchObject({
    baymark: 1,
    old: { file: "old.yaml", revision: "B" },
    new: { file: "new.yaml", revision: "C" },
  });
  expect(told.openings).toContainEqual({ id: "TBR", what: "tape", from: "front", before: 2400, after: 2100 });
  expect(told.findings.gone.map(({ code }: { code: string }) => code)).toContain("opening-cuts-member");
  expect(told.sheets).toContainEqual(
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
