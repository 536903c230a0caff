import { describe, expect, it } from "vitest";
import type { Job } from "../../src/job.js";
import { writeSvg } from "../../src/output/svg.js";
import { packet } from "../../src/sheets/packet.js";
import { type SheetChange, sheetsToReprint } from "../../src/sheets/reprint.js";
import type { Parts, Value } from "../rooms/build.js";
import { room } from "../rooms/build.js";
import { answer, job } from "../rooms/job.js";
import { type Asked, orderFor } from "./orders.js";

const SPEAKERS: readonly Parts[] = [
  { id: "TL", model: "tilted", at: { left: "1 m", front: "2.1 m" } },
  { id: "TR", model: "tilted", at: { right: "1 m", front: "2.1 m" } },
  { id: "WL", model: "upright", on: "left", at: { front: "2.1 m", up: "1.2 m" } },
];
const PLAIN: Parts = { job: { name: "Test room", revision: "B" }, speakers: SPEAKERS };

const otherwise = (id: string, keys: Parts): Value =>
  SPEAKERS.map((speaker) => (speaker.id === id ? { ...speaker, ...keys } : speaker));

const MOVED: Parts = {
  job: { name: "Test room", revision: "C" },
  speakers: otherwise("TL", { at: { left: "1 m", front: "2120 mm" } }),
};

function changes(before: Job, after: Job, asked: Asked = {}): readonly SheetChange[] {
  return sheetsToReprint(orderFor(before, asked), orderFor(after, asked)).changes;
}

const names = (
  all: readonly SheetChange[],
  isWanted: (change: SheetChange) => boolean = () => true,
): string[] => all.filter(isWanted).map(({ name }) => name);

const inPacket = ({ byName }: SheetChange): boolean => !byName;

describe("sheets that must be printed again", () => {
  it("are none where only revision, date, file and its lines differ", () => {
    const same = answer(room({ ...PLAIN, job: { name: "Test room", revision: "C", date: "2026-11-20" } }));
    const moved: Job = {
      ...same,
      file: "other.yaml",
      fingerprint: "f".repeat(64),
      findings: same.findings.map((finding) => ({ ...finding, line: finding.line + 7 })),
    };
    expect(changes(job(PLAIN), moved)).toEqual([]);
  });

  it("are those that show what moved, and no sheet of another opening or wall", () => {
    const all = changes(job(PLAIN), job(MOVED));
    const packetNames = names(all, inPacket);
    expect(packetNames).toEqual(
      expect.arrayContaining(["floor", "ceiling", "opening-TL", "opening-schedule", "marker-TL"]),
    );
    for (const name of ["opening-TR", "opening-WL", "wall-left", "marker-TR", "terminal-TR"]) {
      expect(packetNames).not.toContain(name);
    }
    expect(names(all, ({ byName }) => byName)).toEqual(["ceiling-full", "pole-ceiling-front"]);
  });

  it("name the pages of the new packet that the old one has nowhere", () => {
    const order = orderFor(job(MOVED));
    const { pages } = packet(order);
    for (const change of changes(job(PLAIN), job(MOVED)).filter(inPacket)) {
      expect(change.pages.length).toBeGreaterThan(0);
      for (const number of change.pages) expect(pages[number - 1]?.sheet, change.name).toBe(change.name);
    }
  });

  it("are new where a loudspeaker came, and to be thrown away where one went", () => {
    const fewer: Parts = { ...PLAIN, speakers: SPEAKERS.slice(1) };
    const came = changes(job(fewer), job(PLAIN));
    expect(came.find(({ name }) => name === "opening-TL")?.what).toBe("new");
    const went = changes(job(PLAIN), job(fewer));
    expect(went.find(({ name }) => name === "opening-TL")).toMatchObject({ what: "gone", pages: [] });
    // Those of the others are drawn as before, whatever their numbers are now.
    expect(names(went)).not.toContain("opening-TR");
  });

  it("are all where the paper is another", () => {
    const other = sheetsToReprint(orderFor(job(PLAIN)), orderFor(job(PLAIN), { paper: "letter" }));
    expect(names(other.changes, inPacket)).toEqual(
      expect.arrayContaining(["cover", "ceiling", "opening-WL"]),
    );
  });

  it("are those with a member that was found since", () => {
    const found: Parts = {
      ...PLAIN,
      framing: {
        ceiling: { found: [{ member: 4, at: "2403 mm", by: "framing lead", on: "2026-11-18" }] },
      },
    };
    const all = changes(job(PLAIN), job(found));
    expect(names(all)).toEqual(
      expect.arrayContaining(["ceiling", "opening-TL", "opening-TR", "ceiling-full", "pole-ceiling-front"]),
    );
    expect(names(all)).not.toContain("opening-WL");
    expect(names(all)).not.toContain("wall-left");
  });
});

describe("drawings as they are written", () => {
  /** What every frame says of the file and the packet, made alike. */
  const leveled = (svg: string): string =>
    svg.replaceAll(/Rev\. [BC]/gu, "Rev. -").replaceAll(/Sheet \d+ of \d+/gu, "Sheet - of -");

  const drawings = (one: Job): Map<string, string> =>
    new Map(
      packet(orderFor(one)).drawings.map(({ sheet, draw }) => [sheet, leveled(writeSvg(draw()))] as const),
    );

  it("are byte for byte the same for every sheet that need not be printed again", () => {
    const [before, after] = [job(PLAIN), job(MOVED)];
    const listed = new Set(names(changes(before, after)));
    const [old, now] = [drawings(before), drawings(after)];
    const compared = [...now].filter(([sheet]) => old.has(sheet) && !sheet.startsWith("aim-"));
    expect(compared.length).toBeGreaterThan(4);
    for (const [sheet, svg] of compared) {
      expect(svg === old.get(sheet), sheet).toBe(!listed.has(sheet));
    }
  });
});
