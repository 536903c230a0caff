import { chmodSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { roomText } from "../rooms/build.js";
import { TOO_MANY_PLACES } from "../rooms/too-much.js";
import { DEN, STUDIO, workFolder } from "./in-folder.js";

const asking = (text: string): string =>
  text
    .replace(/id: TFL,(.*?)at: \{[^}]*\}/u, "id: TFL,$1at: best, mirror: TFR")
    .replace(/id: TFR,(.*?)at: \{[^}]*\}/u, "id: TFR,$1at: best, mirror: TFL")
    .replace(/id: SR,(.*?)at: \{[^}]*\}/u, "id: SR,$1at: best, hold: { up: 42 in }");

/** A work folder in which the den asks for three places. */
function denThatAsks() {
  const { folder, type } = workFolder();
  const file = join(folder, DEN);
  const held = (): string => readFileSync(file, "utf8");
  writeFileSync(file, asking(held()));
  return { file, held, type };
}

describe("place", () => {
  test("prints tapes, direction, gaps and what is in the way of each that asks, and writes nothing", async () => {
    const { held, type } = denThatAsks();
    const before = held();
    const { code, out, err } = await type("place", DEN);
    expect(err).toBe("");
    // The den's other slips stand: TBR cuts a joist.
    expect(code).toBe(1);
    expect(held()).toBe(before);
    const blocks = out.split("\n\n").slice(1);
    expect(blocks.map((block) => block.split("  ", 1)[0])).toEqual(["SR", "TFL", "TFR"]);
    for (const block of blocks) {
      expect(block).toMatch(/at: \{ \w+: .*", \w+: .*" \}/u);
      expect(block).toMatch(/-?[\d.]+° \/ -?[\d.]+°, [\d.]+° from the preferred -?\d+° \/ \d+°/u);
      expect(block).toMatch(/Gap: /u);
      expect(block).toMatch(/In the way of better: |Nothing in the way/u);
    }
  });

  test("what it prints is what stands there when typed into the file", async () => {
    const { file, held, type } = denThatAsks();
    const { out } = await type("place", DEN);
    const printed = [...out.matchAll(/^(\w+) {2}.*\n {2}(at: .*)$/gmu)].map(
      ([, id, at]) => [id, at] as const,
    );
    expect(printed).toHaveLength(3);
    for (const [id, at] of printed) {
      writeFileSync(file, held().replace(new RegExp(`(id: ${id},.*?)at: best`, "u"), `$1${at}`));
    }
    const checked = await type("check", DEN);
    for (const id of ["SR", "TFL", "TFR"]) expect(checked.out).not.toContain(`${id}:`);
  });

  test("other bays with what they cost, for given ones too, but for locked ones", async () => {
    const { type } = denThatAsks();
    const { out } = await type("place", DEN, "--rank", "3", "--lock", "C", "--lock", "BL");
    const blockOf = (id: string): string =>
      out.split("\n\n").find((block) => block.startsWith(`${id}  `)) ?? "";
    for (const id of ["FL", "SR", "TFL"]) {
      expect(blockOf(id)).toMatch(/2nd best: \d+\w\w bay from .*: at: \{/u);
      expect(blockOf(id)).toMatch(/3rd best: /u);
      expect(blockOf(id)).toMatch(/[\d.]+° (more|less)/u);
      expect(blockOf(id)).not.toMatch(/4th best/u);
    }
    expect(blockOf("C")).toBe("");
    expect(blockOf("BL")).toBe("");
  });

  test("says so where nobody asks", async () => {
    const { type } = workFolder();
    const { out, code } = await type("place", STUDIO);
    expect(out).toContain("no loudspeaker asks for its best position");
    expect(code).toBe(1);
  });

  test("in Spanish", async () => {
    const { type } = denThatAsks();
    const { out } = await type("place", DEN, "--language", "es");
    expect(out).toMatch(/mejores lugares libres/u);
    expect(out).toMatch(/Estorba para algo mejor: |Nada estorba/u);
  });

  test("says why one has no place, and what lies outside its window", async () => {
    const { file, held, type } = denThatAsks();
    writeFileSync(file, held().replace("mirror: TFL,", "mirror: TFL, hold: { front: 32 1/4 in },"));
    const { out, code } = await type("place", DEN);
    expect(out).toMatch(/TFR: no position: nothing is clear .* \[not-placed-yet\]/u);
    expect(code).toBe(1);
  });
});

describe("place --write", () => {
  test("exchanges `best` for tapes and leaves every other byte", async () => {
    const { held, type } = denThatAsks();
    const before = held();
    const { code, err } = await type("place", DEN, "--write");
    expect(err).toContain(`wrote 3 positions into ${DEN}`);
    expect(code).toBe(1);
    const after = held();
    expect(after.replaceAll(/at: \{[^}]*\}/gu, "at")).toBe(
      before.replaceAll(/at: (?:\{[^}]*\}|best)/gu, "at"),
    );
    expect(after).not.toContain("at: best");
    expect(after).toMatch(/id: SR, .*at: \{ \w+: [^,}]*, up: 3' 6" \}, hold/u);
  });

  test("then the positions are given, and check says the same of them", async () => {
    const { type } = denThatAsks();
    const before = JSON.parse((await type("report", DEN, "--json")).out);
    await type("place", DEN, "--write");
    const after = JSON.parse((await type("report", DEN, "--json")).out);
    const told = (json: { speakers: { id: string; placed: string; position: object; gap: object }[] }) =>
      json.speakers.map(({ id, position, gap }) => ({ id, position, gap }));
    for (const [index, speaker] of told(after).entries()) {
      const was = told(before)[index];
      for (const axis of ["x", "y", "z"]) {
        expect(Reflect.get(speaker.position, axis)).toBeCloseTo(Reflect.get(was?.position ?? {}, axis), 6);
      }
    }
    expect(after.speakers.every(({ placed }: { placed: string }) => placed === "given")).toBe(true);
    expect(after.findings.some(({ code }: { code: string }) => code === "computed-not-frozen")).toBe(false);
    expect(
      before.findings.filter(({ code }: { code: string }) => code === "computed-not-frozen"),
    ).toHaveLength(3);
  });

  test("leaves a locked one asking", async () => {
    const { held, type } = denThatAsks();
    await type("place", DEN, "--write", "--lock", "SR");
    expect(held().match(/at: best/gu)).toHaveLength(1);
    expect(held()).toMatch(/id: SR,.*at: best/u);
  });

  test("a second time there is nothing to write", async () => {
    const { held, type } = denThatAsks();
    await type("place", DEN, "--write");
    const before = held();
    const { err } = await type("place", DEN, "--write");
    expect(err).toContain("nothing to write");
    expect(held()).toBe(before);
  });

  test("keeps line ends, a byte order mark, comments and block style", async () => {
    const { file, held, type } = denThatAsks();
    const block = `  - id: TX # ¿dónde?\n    channel: U+135\n    model: overhead-6\n    on: ceiling\n    at: best   # ⌀ ask\n`;
    const text = `\ufeff${held().replace(/speakers:\n/u, (all) => all + block)}`.replaceAll("\n", "\r\n");
    writeFileSync(file, text);
    await type("place", DEN, "--write");
    const after = held();
    expect(after.replaceAll(/at: \{[^}]*\}/gu, "at")).toBe(text.replaceAll(/at: (?:\{[^}]*\}|best)/gu, "at"));
    expect(after).toMatch(/ {4}at: \{ [^}]* \} {3}# ⌀ ask\r\n/u);
  });
});

describe("place --json", () => {
  test("one object with how each was placed and where else it could be", async () => {
    const { type } = denThatAsks();
    const { out } = await type("place", DEN, "--json", "--rank", "2");
    expect(out.trimEnd().split("\n")).toHaveLength(1);
    const { speakers } = JSON.parse(out);
    const byId = Object.fromEntries(speakers.map((speaker: { id: string }) => [speaker.id, speaker]));
    expect(byId.TFL.place).toMatchObject({
      at: { left: expect.any(String), front: expect.any(String) },
      tapes: { left: expect.any(Number), front: expect.any(Number) },
      preferred: { azimuth: 45, elevation: 30 },
      off: expect.any(Number),
      between: { before: { mm: expect.any(Number) }, after: { mm: expect.any(Number) } },
      alternatives: [{ rank: 2, more: expect.any(Number), partner: { id: "TFR" } }],
    });
    expect(byId.SR.place.tapes.up).toBe(1066.8);
    expect(byId.SR.place.alternatives[0].bay.number).not.toBe(byId.SR.place.bay.number);
  });

  test("where there is too much to look at it says so of each whose other bays were left out", async () => {
    const { folder, type } = workFolder();
    writeFileSync(join(folder, "hall.yaml"), roomText(TOO_MANY_PLACES));
    const { out: text } = await type("place", "hall.yaml", "--rank", "20");
    const leftOut = text.match(/^ {2}Other bays were not looked for/gmu)?.length ?? 0;
    expect(leftOut).toBeGreaterThan(0);
    const { speakers } = JSON.parse((await type("place", "hall.yaml", "--rank", "20", "--json")).out);
    const places: readonly { alternatives: unknown }[] = speakers.flatMap(
      ({ place }: { place: { alternatives: unknown } | null }) => place ?? [],
    );
    expect(places.filter(({ alternatives }) => alternatives === null)).toHaveLength(leftOut);
    const { out } = await type("place", "hall.yaml");
    expect(out).not.toMatch(/Other bays/u);
  });

  test("of a file that cannot be used the complaints", async () => {
    const { file, type } = denThatAsks();
    writeFileSync(file, "baymark: 2\n");
    const { out, code } = await type("place", DEN, "--json");
    expect(code).toBe(2);
    expect(JSON.parse(out).findings.length).toBeGreaterThan(0);
  });
});

describe("wrong usage", () => {
  test.each([
    [["place"], /missing/u],
    [["place", "nowhere.yaml"], /there is no such file/u],
    [["place", DEN, "--rank", "1"], /--rank 1: type how many bays to show, from 2 to 20/u],
    [["place", DEN, "--rank", "many"], /--rank many/u],
    [["place", DEN, "--rank", "21"], /--rank 21/u],
    [["place", DEN, "--lock", "TFI"], /--lock TFI: no loudspeaker has this id; did you mean TFL\?/u],
  ])("%j", async (typed, said) => {
    const { held, type } = denThatAsks();
    const before = held();
    const { code, err } = await type(...typed, "--write");
    expect(err).toMatch(said);
    expect(code).toBe(2);
    expect(held()).toBe(before);
  });

  // Who may do everything is refused nothing.
  test.skipIf(process.getuid?.() === 0)("a folder that cannot be written to", async () => {
    const { file, held, type } = denThatAsks();
    const before = held();
    chmodSync(join(file, ".."), 0o555);
    const { code, err } = await type("place", DEN, "--write");
    chmodSync(join(file, ".."), 0o755);
    expect(err).toMatch(/cannot be written/u);
    expect(code).toBe(2);
    expect(held()).toBe(before);
  });
});
