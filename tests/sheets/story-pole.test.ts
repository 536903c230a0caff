import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import type { Job } from "../../src/job.js";
import { surfaceNamed } from "../../src/room/room.js";
import { frameArea } from "../../src/sheets/frame.js";
import { surfaceAt } from "../../src/sheets/marking/surface-stage.js";
import { packet } from "../../src/sheets/packet.js";
import { poleOf } from "../../src/sheets/pole/pole.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import { storyPoles } from "../../src/sheets/story-pole.js";
import { MAX_PAGE_SIDE_MM } from "../../src/standards/paper.js";
import { someOf } from "../how-many.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { sloped } from "../rooms/not-boxes.js";
import { ROOMS } from "./marking-rooms.js";
import { letteringFaults } from "./no-collisions.js";
import { type Asked, opened, orderFor, wordsOn } from "./orders.js";

const asked = (one: Job, more: Asked = {}): Order => ({ ...orderFor(one, more), poles: true });
const polesOf = (one: Job, more: Asked = {}): Sheet[] => storyPoles(asked(one, more));

const PAIR: Parts = {
  speakers: [
    { id: "TL", model: "tilted", at: { left: "1 m", front: "2.1 m" } },
    { id: "TR", model: "tilted", at: { right: "1 m", front: "2.1 m" } },
    { id: "WL", model: "upright", on: "left", at: { front: "2.1 m", up: "1.2 m" } },
  ],
};

const SLOPED_PAIR: Parts = {
  speakers: [{ id: "TL", model: "tilted", on: "slope", at: { left: "1 m", front: "2.1 m" } }],
};

const named = (sheets: readonly Sheet[], name: string): Sheet => {
  const sheet = sheets.find((each) => each.name === name);
  if (sheet === undefined) throw new Error(`no ${name} among ${sheets.map((each) => each.name)}`);
  return sheet;
};

const said = ({ pages }: Sheet): string => pages.flatMap(wordsOn).join("\n").replaceAll("\u00a0", " ");

/** Lines straight up and down on a layer, as the drawing has them before windows. */
function linesOn(pages: readonly Body[], layer: string) {
  const within = (items: readonly Item[], on: string | undefined): Item[] =>
    items.flatMap((item) =>
      item.kind === "group"
        ? within(item.items, item.layer ?? on)
        : on === layer && item.kind === "line"
          ? [item]
          : [],
    );
  return pages
    .flatMap((body) => within(body.items, undefined))
    .flatMap((item) => (item.kind === "line" ? [item] : []));
}

describe("under joists at an angle", () => {
  /** 30 degrees from the right front corner: a point lies right sin 30 + front cos 30 from it, square to the joists. */
  const ANGLED: Parts = {
    framing: {
      ceiling: {
        run: "30 deg",
        from: { right: 0, front: 0 },
        at: null,
        first: "500 mm",
        spacing: "600 mm",
      },
    },
    speakers: [
      { id: "TL", model: "tilted", at: { right: "3 m", front: "2.1 m" } },
      { id: "RECT", model: "upright", at: { right: "1 m", front: "4 m" } },
    ],
  };
  const away = (right: number, front: number): number => right / 2 + front * Math.cos(Math.PI / 6);

  it("one more pole lies square to them, with every joist and opening on it", () => {
    const one = job(ANGLED);
    expect(polesOf(one).map(({ name }) => name)).toEqual([
      "pole-ceiling-square",
      "pole-ceiling-right",
      "pole-ceiling-front",
    ]);
    const order = asked(one);
    const pole = poleOf(order, surfaceAt(order, surfaceNamed(one.room, "ceiling"), "bare"), "square");
    expect(pole?.oblique).toBe(0);
    expect(pole?.far.mm).toBeCloseTo(away(4000, 6000), 6);
    for (const { member, centreMm, fromMm } of pole?.members ?? []) {
      expect(centreMm).toBeCloseTo(500 + 600 * (member.number - 1), 6);
      expect(centreMm - fromMm).toBeCloseTo(22.5, 9);
    }
    expect(pole?.members).toHaveLength(12);
    const [first, second] = [...(pole?.openings ?? [])].sort((a, b) => a.centreMm - b.centreMm);
    expect(first?.centreMm).toBeCloseTo(away(3000, 2100), 6);
    expect(first === undefined ? 0 : first.toMm - first.fromMm).toBeCloseTo(200, 9);
    // 180 across and 300 up: square to the joists it is 180 sin 30 + 300 cos 30 long.
    expect(second?.centreMm).toBeCloseTo(away(1000, 4000), 6);
    expect(second === undefined ? 0 : second.toMm - second.fromMm).toBeCloseTo(away(180, 300), 9);
  });

  it("says how it lies, and the others how many joists they leave out", () => {
    const [square, right] = polesOf(job(ANGLED));
    const words = (sheet: Sheet | undefined) => (sheet === undefined ? "" : said(sheet));
    expect(words(square)).toContain("Lies SQUARE TO THE JOISTS");
    expect(words(square)).toContain("0 RIGHT/FRONT CORNER");
    expect(words(right)).toContain("12 members run at an angle");
  });
});

describe("which poles there are", () => {
  it("one along each axis of a ceiling, across the joists first, and one along the floor of a wall", () => {
    expect(polesOf(job(PAIR)).map(({ name }) => name)).toEqual([
      "pole-ceiling-front",
      "pole-ceiling-left",
      "pole-wall-left-front",
    ]);
    const along: Parts = {
      ...PAIR,
      framing: { ceiling: { run: "front-back", from: "left", at: ["600 mm", "1.2 m"] } },
    };
    expect(polesOf(job(along))[0]?.name).toBe("pole-ceiling-left");
  });

  it("count from the wall that most governing tapes hook on", () => {
    const back = { speakers: [{ id: "TL", model: "tilted", at: { right: "1 m", back: "2.1 m" } }] };
    const framed = {
      ...back,
      framing: { ceiling: { from: "back", at: ["600 mm", "1.2 m", "1.8 m", "3 m"] } },
    };
    expect(polesOf(job(framed)).map(({ name }) => name)).toEqual(["pole-ceiling-back", "pole-ceiling-right"]);
  });

  it("two of each where openings are cut at two states of the walls", () => {
    const names = polesOf(job({ ...PAIR, stage: { walls: "both" } })).map(({ name }) => name);
    expect(names).toContain("pole-ceiling-front");
    expect(names).toContain("pole-ceiling-front-after");
  });

  it("are in a packet only where they are asked for, or on a roll", () => {
    const sheets = (order: Order) => [...new Set(packet(order).pages.map(({ sheet }) => sheet))];
    const one = job(PAIR);
    expect(sheets(orderFor(one)).filter((name) => name.startsWith("pole"))).toEqual([]);
    expect(sheets(asked(one)).filter((name) => name.startsWith("pole"))).toHaveLength(3);
    expect(sheets(orderFor(one, { paper: "roll-36" })).filter((name) => name.startsWith("pole"))).toEqual([
      "poles",
    ]);
  });

  it("run side by side on one page of a roll, no longer than a page may be, and all names ask for it", () => {
    const [sheet, ...others] = polesOf(job(PAIR), { paper: "roll-914" });
    expect(others).toEqual([]);
    expect(sheet?.alsoNamed).toEqual([
      "pole",
      "pole-ceiling-front",
      "pole-ceiling-left",
      "pole-wall-left-front",
    ]);
    expect(sheet?.pages).toHaveLength(1);
    const [page] = sheet?.pages ?? [];
    expect(page?.heightMm).toBe(914);
    expect(page?.widthMm).toBeLessThanOrEqual(MAX_PAGE_SIDE_MM);
    // 4 m of ceiling in one strip is what the page is as long as; 6 m of it take two.
    expect(page?.widthMm).toBeLessThan(4200);
    const { words } = asked(job(PAIR));
    expect(wordsOn(page as Body)).toContain(
      `${words.poles.title("ceiling", "front")}  ·  ${words.template.tiles.part("A2", 2)}`,
    );
  });

  it("say so where the paper has no room for them", () => {
    const [sheet] = polesOf(job(PAIR), { paper: "5 in x 7 in" });
    expect(sheet?.pages).toHaveLength(1);
    expect(said(sheet as Sheet)).toMatch(/no room for\sa story pole/u);
  });
});

describe("what stands on a pole", () => {
  it("is along the slope where a ceiling slopes, and of use on the floor only where it is flat", () => {
    const sloping = said(named(polesOf(job({ ...sloped("front"), ...SLOPED_PAIR })), "pole-slope-front"));
    expect(sloping).toContain("the pole lies ALONG THE SLOPE");
    expect(sloping).not.toContain("plumb up");
    // 6000 mm of plan that rise 2000 mm.
    const long = Math.hypot(6000, 2000);
    expect(sloping).toContain(`(≈${Math.round(long)} mm)`);
    expect(said(named(polesOf(job(PAIR)), "pole-ceiling-front"))).toContain("plumb up");
  });

  it("is its surface, how one looks, where zero is and on which faces", () => {
    const sheet = named(polesOf(job(PAIR)), "pole-ceiling-front");
    expect(said(sheet)).toContain(
      "← 0 at the FRONT wall, bare framing · CEILING, LOOKING UP".replaceAll(" · ", "  ·  "),
    );
    expect(sheet.pages[0]?.frame).toMatchObject({ view: "LOOKING UP", scale: "TRUE SCALE 1:1" });
    const wall = named(polesOf(job(PAIR)), "pole-wall-left-front");
    expect(said(wall)).toMatch(/LEFT WALL, FACING the left wall/u);
    expect(wall.pages[0]?.frame?.faces).toBe("Dimensions from FINISHED faces (board on)");
  });

  it("is one figure for openings that share their place, from the same zero as the tape, and a far end that checks", () => {
    const words = said(named(polesOf(job(PAIR)), "pole-ceiling-front"));
    expect(words).toContain("TL  TR  2100 mm");
    expect(words).toContain("0 FRONT");
    expect(words).toContain("(6000 mm) ± 12 mm");
    const across = said(named(polesOf(job(PAIR)), "pole-ceiling-left"));
    expect(across).toContain("TL  1000 mm");
    expect(across).toContain("TR  3000 mm");
  });

  it("is every member with number and centre; on walls the end studs too", () => {
    const words = said(named(polesOf(job(PAIR)), "pole-ceiling-front"));
    for (const number of [1, 2, 3, 9, 10]) expect(words).toContain(`${number} · ${600 * number} mm`);
    const wall = said(named(polesOf(job(PAIR)), "pole-wall-left-front"));
    // Typed from the framing; the wall is cut boarded, so the tape is 12.5 mm shorter.
    expect(wall).toContain("3 · ≈1788 mm");
    expect(wall).toContain("end stud 1");
  });

  it("is drawn with full lines where it was measured, with broken ones and the word where it is assumed", () => {
    const laid: Parts = { ...PAIR, framing: { ceiling: { at: null, first: "600 mm", spacing: "600 mm" } } };
    const lines = (one: Job) => linesOn(named(polesOf(one), "pole-ceiling-front").pages, "framing");
    expect(lines(job(PAIR)).length).toBeGreaterThan(0);
    expect(lines(job(PAIR)).every(({ stroke }) => stroke.dashMm === undefined)).toBe(true);
    expect(lines(job(laid)).every(({ stroke }) => stroke.dashMm !== undefined)).toBe(true);
    expect(said(named(polesOf(job(laid)), "pole-ceiling-front"))).toContain("ASSUMED");
    expect(said(named(polesOf(job(PAIR)), "pole-ceiling-front")).match(/^ASSUMED$/mu)).toBeNull();
  });

  it("is marked and noted where it was found since", () => {
    const found: Parts = {
      ...PAIR,
      framing: {
        ceiling: { found: [{ member: 4, at: "2411 mm", by: "framing lead", on: "2026-11-18" }] },
      },
    };
    const words = said(named(polesOf(job(found)), "pole-ceiling-front"));
    expect(words).toContain("4* · 2411 mm");
    expect(words).toContain("* FOUND there: 4 by framing lead, 2026-11-18.");
  });

  it("is an opening that must not be cut with broken lines, the reason and no figure", () => {
    const wrong: Parts = { speakers: [{ id: "TL", at: { left: "1 m", front: "1.8 m" } }] };
    const sheet = named(polesOf(job(wrong)), "pole-ceiling-front");
    const words = said(sheet);
    expect(words).toContain("DO NOT CUT\ncuts into framing");
    expect(words).not.toMatch(/TL {2}/u);
    const lines = linesOn(sheet.pages, "cut");
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.every(({ stroke }) => stroke.dashMm !== undefined)).toBe(true);
    const right = linesOn(named(polesOf(job(PAIR)), "pole-ceiling-front").pages, "cut");
    expect(right.every(({ stroke }) => stroke.dashMm === undefined)).toBe(true);
  });

  it("is what nobody knows, hatched and said", () => {
    const short: Parts = { ...PAIR, framing: { ceiling: { at: ["600 mm", "1.2 m", "1.8 m", "2.7 m"] } } };
    expect(said(named(polesOf(job(short)), "pole-ceiling-front"))).toContain(
      "FRAMING UNKNOWN past the last member shown.",
    );
    const none: Parts = { ...PAIR, framing: { ceiling: null } };
    expect(said(named(polesOf(job(none)), "pole-ceiling-front"))).toContain("no member is on this pole");
  });

  it("is nothing past its ends", () => {
    const out: Parts = { speakers: [{ id: "TL", at: { left: "1 m", front: "50 mm" } }] };
    const sheet = named(polesOf(job(out), { paper: "roll-36" }), "poles");
    const cuts = opened(sheet.pages[0]?.items ?? []);
    expect(cuts.length).toBeGreaterThan(0);
    // Half of the opening lies in the wall: one edge and the centre are left.
    const upright = linesOn(sheet.pages, "cut").filter(({ from, to }) => from.x === to.x && from.x <= 150);
    expect(upright.map(({ from }) => from.x).sort((a, b) => a - b)).toEqual([50, 150]);
  });
});

describe("no words of a pole meet others or leave the page", () => {
  const BOTH: readonly Asked[] = [
    { paper: "A4", languages: ["en", "es"] },
    { paper: "roll-36", languages: ["en", "es"] },
  ];
  const SMALL: readonly Asked[] = [
    { paper: "letter", languages: ["es"] },
    { paper: "7 in x 10 in", languages: ["en"] },
  ];

  for (const [name, make] of Object.entries(ROOMS).filter(([room]) => room !== "hall")) {
    const isPlain = name !== "studio" && name !== "crowded";
    it.each(someOf(isPlain ? BOTH : [...BOTH, ...SMALL], ({ paper }) => isPlain === (paper === "A4")))(
      `${name} on $paper in $languages`,
      (more) => {
        const order = asked(make(), more);
        const sheets = storyPoles(order);
        expect(sheets.length).toBeGreaterThan(0);
        for (const sheet of sheets) {
          expect(
            sheet.pages.flatMap((body) => letteringFaults(order, body)),
            sheet.name,
          ).toEqual([]);
          for (const body of sheet.pages) {
            if (body.frame === null) throw new Error("no frame");
            const area = frameArea(order, body.frame, body);
            for (const { y, heightMm } of body.items.flatMap((item) => windowsOf(item))) {
              expect(y + heightMm).toBeLessThanOrEqual(area.y + area.heightMm + 1e-6);
            }
          }
        }
      },
    );
  }

  it("a hall too, in parts by the hundred", () => {
    const order = asked(ROOMS.hall?.() ?? job(PAIR), { paper: "A4" });
    const pages = storyPoles(order).flatMap((sheet) => sheet.pages);
    expect(pages.length).toBeGreaterThan(100);
    // Parts of one pole are alike: one in twenty stands for them where there is no time for all.
    const looked = someOf([...pages.entries()], ([index]) => index % 20 === 0).map(([, page]) => page);
    expect(looked.flatMap((body) => letteringFaults(order, body))).toEqual([]);
  });

  function windowsOf(item: Item, shift = 0): { y: number; heightMm: number }[] {
    if (item.kind !== "group") return [];
    const down = shift + (item.shift?.y ?? 0);
    const own =
      item.window === undefined ? [] : [{ y: item.window.y + shift, heightMm: item.window.heightMm }];
    return [...own, ...item.items.flatMap((each) => windowsOf(each, down))];
  }
});
