import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Text, Window } from "../../src/drawing/drawing.js";
import { circle, layer, line, PEN, point, rectangle, shifted, text } from "../../src/drawing/pen.js";
import { letters } from "../../src/drawing/tile-marks.js";
import { type Lie, OVERLAP_MM, type Tile, type Tiling, tile } from "../../src/drawing/tiles.js";

const words = { part: (name: string, of: number) => `Part ${name} of ${of}`, join: "Join equal letters." };

const lie = (widthMm: number, heightMm: number): Lie => ({
  widthMm,
  heightMm,
  area: { x: 20, y: 30, widthMm: widthMm - 30, heightMm: heightMm - 50 },
});
const LETTER = [lie(215.9, 279.4), lie(279.4, 215.9)];

const box = (x: number, y: number, widthMm: number, heightMm: number): Window => ({
  x,
  y,
  widthMm,
  heightMm,
});
const hole = (diameterMm: number) => ({
  drawing: [circle(point(0, 0), diameterMm / 2, PEN.cut, { role: "cut", speaker: "TFL" })],
  extent: box(-diameterMm / 2 - 5, -diameterMm / 2 - 5, diameterMm + 10, diameterMm + 10),
});

function tiledOf(
  request: Omit<Parameters<typeof tile>[0], "words">,
): Extract<Tiling<Lie>, { kind: "tiled" }> {
  const tiling = tile({ ...request, words });
  if (tiling.kind !== "tiled") throw new Error("refused");
  return tiling;
}

/** Every leaf with the shift that it is printed at. */
function leaves(
  items: readonly Item[],
  shift = point(0, 0),
): { item: Exclude<Item, { kind: "group" }>; shift: { x: number; y: number } }[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [{ item, shift }];
    const more = item.shift ?? point(0, 0);
    return leaves(item.items, point(shift.x + more.x, shift.y + more.y));
  });
}

const namesOf = (tiles: readonly Tile[]): string[] => tiles.map(({ name }) => name);
const textsOf = (tile: Tile): string[] =>
  leaves(tile.items).flatMap(({ item }) => (item.kind === "text" ? [item.text] : []));

/** Crosses of a tile by letter: the letter stands nearest to its own cross. Page coordinates and drawing coordinates. */
function crossesOf(tile: Tile): Map<string, { x: number; y: number }> {
  const group = tile.items[0];
  const inside = leaves(group?.kind === "group" ? group.items : []).map(({ item }) => item);
  const centres = inside.flatMap((item) =>
    item.kind === "line" && item.stroke.dashMm === undefined && item.from.y === item.to.y
      ? [point((item.from.x + item.to.x) / 2, item.from.y)]
      : [],
  );
  const found = inside.filter((item): item is Text => item.kind === "text");
  return new Map(
    found.map((label) => {
      const distance = (at: { x: number; y: number }) => Math.hypot(at.x - label.at.x, at.y - label.at.y);
      return [label.text, centres.reduce((best, at) => (distance(at) < distance(best) ? at : best))];
    }),
  );
}

describe("a drawing that fits on one page", () => {
  it("is one tile without marks, in the middle of the area", () => {
    const { tiles, grid } = tiledOf({ ...hole(150), lies: LETTER });
    expect(grid).toEqual({ columns: 1, rows: 1 });
    expect(namesOf(tiles)).toEqual(["A1"]);
    expect(leaves(tiles[0]?.items ?? []).map(({ item }) => item.kind)).toEqual(["circle"]);
    expect(tiles[0]?.shift).toEqual(point(20 + 185.9 / 2, 30 + 229.4 / 2));
  });
});

describe("a drawing that does not", () => {
  it("names tiles by row and column and keeps the circle's centre under every shift to 1e-9 mm", () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 500, noNaN: true }), (diameterMm) => {
        const { tiles } = tiledOf({ ...hole(diameterMm), lies: LETTER, forced: true });
        expect(tiles.length).toBeGreaterThan(1);
        for (const { items, shift } of tiles) {
          for (const { item, shift: printed } of leaves(items)) {
            if (item.kind !== "circle") continue;
            const onPage = point(item.centre.x + printed.x, item.centre.y + printed.y);
            expect(Math.abs(onPage.x - shift.x)).toBeLessThan(1e-9);
            expect(Math.abs(onPage.y - shift.y)).toBeLessThan(1e-9);
            expect(item.radiusMm).toBe(diameterMm / 2);
          }
        }
      }),
    );
  });

  it("shows every point of the extent on some tile, and the overlap on two", () => {
    const request = { ...hole(400), lies: [lie(215.9, 279.4)] };
    const { tiles } = tiledOf(request);
    const shownBy = (x: number, y: number): number =>
      tiles.filter(({ shift, window }) => {
        const at = point(x + shift.x - window.x, y + shift.y - window.y);
        return at.x >= 0 && at.x <= window.widthMm && at.y >= 0 && at.y <= window.heightMm;
      }).length;
    for (let turn = 0; turn < 360; turn += 1) {
      const [x, y] = [200 * Math.cos((turn * Math.PI) / 180), 200 * Math.sin((turn * Math.PI) / 180)];
      expect(shownBy(x, y)).toBeGreaterThan(0);
    }
    const [first, second] = tiles;
    expect((first?.shift.x ?? 0) - (second?.shift.x ?? 0)).toBeCloseTo(
      (first?.window.widthMm ?? 0) - OVERLAP_MM,
      9,
    );
  });

  it("puts crosses at 1/4 and 3/4 of each shared edge, the same letters and the same points on both", () => {
    const { tiles, grid } = tiledOf({ ...hole(300), lies: [lie(215.9, 279.4)] });
    expect(grid).toEqual({ columns: 2, rows: 2 });
    expect(namesOf(tiles)).toEqual(["A1", "A2", "B1", "B2"]);
    const crosses = tiles.map(crossesOf);
    const seen = new Map<string, { x: number; y: number }[]>();
    for (const each of crosses)
      for (const [letter, at] of each) seen.set(letter, [...(seen.get(letter) ?? []), at]);
    expect([...seen.keys()].sort()).toEqual(["A", "B", "C", "D", "E", "F", "G", "H"]);
    for (const [one, other, ...more] of seen.values()) {
      expect(more).toEqual([]);
      expect(other).toEqual(one);
    }
    const [topLeft] = tiles;
    const across = [...(crosses[0]?.values() ?? [])].filter(
      (at) => Math.abs(at.x + (topLeft?.shift.x ?? 0) - 20 - 185.9 + 5) < 1e-9,
    );
    expect(
      across.map(
        (at) => (at.y + (topLeft?.shift.y ?? 0) - (topLeft?.window.y ?? 0)) / (topLeft?.window.heightMm ?? 1),
      ),
    ).toEqual([expect.closeTo(0.25, 9), expect.closeTo(0.75, 9)]);
  });

  it("keeps its letters off the drawing's own words", () => {
    const bare = hole(300);
    const before = tiledOf({ ...bare, lies: [lie(215.9, 279.4)] });
    const [first] = before.tiles;
    const letter = leaves(first?.items ?? []).find(
      ({ item }) => item.kind === "text" && item.text === "A",
    )?.item;
    if (first === undefined || letter?.kind !== "text") throw new Error("no letter");
    const there = text(point(letter.at.x - 8, letter.at.y), "words", { capMm: 2.5 });
    const after = tiledOf({ ...bare, drawing: [...bare.drawing, there], lies: [lie(215.9, 279.4)] });
    const moved = leaves(after.tiles[0]?.items ?? []).find(
      ({ item }) => item.kind === "text" && item.text === "A",
    )?.item;
    expect(moved?.kind === "text" ? moved.at : null).not.toEqual(letter.at);
  });

  it("takes the lie with fewer pages, the first where both need as many", () => {
    const wide = { drawing: [rectangle(box(0, 0, 240, 100))], extent: box(0, 0, 240, 100) };
    expect(tiledOf({ ...wide, lies: LETTER }).lie).toBe(LETTER[1]);
    expect(tiledOf({ ...hole(150), lies: LETTER }).lie).toBe(LETTER[0]);
  });

  it("prints words that an edge would cut only on the tile that shows them whole", () => {
    const label = text(point(0, -40), "TFL", { capMm: 5, anchor: "start" });
    const { tiles } = tiledOf({
      ...hole(235),
      drawing: [...hole(235).drawing, label],
      lies: [lie(215.9, 330)],
    });
    expect(tiles.length).toBe(2);
    expect(tiles.map((each) => textsOf(each).includes("TFL"))).toEqual([false, true]);
  });
});

describe("what a tile says of itself", () => {
  const request = { ...hole(300), lies: [lie(215.9, 279.4)] };

  it("keeps the part that is left when it is trimmed free of its own marks", () => {
    const [first] = tiledOf(request).tiles;
    if (first === undefined) throw new Error("no tile");
    const { window, clear } = first;
    expect([clear.x - window.x, clear.y - window.y]).toEqual([1, 1]);
    expect(window.x + window.widthMm - clear.x - clear.widthMm).toBeCloseTo(OVERLAP_MM + 1, 9);
    expect(window.y + window.heightMm - clear.y - clear.heightMm).toBeCloseTo(OVERLAP_MM + 1, 9);
  });

  it("leaves the strip as high as its words: less where the page says elsewhere how parts are joined", () => {
    const long = { ...words, join: "Trim one, lay it on the other, letters together. ".repeat(5) };
    const heightOf = (said: typeof words | { part: typeof words.part; join: null }): number => {
      const tiling = tile({ ...request, words: said });
      return tiling.kind === "tiled" ? (tiling.tiles[0]?.window.heightMm ?? 0) : 0;
    };
    expect(heightOf({ ...words, join: null })).toBeGreaterThan(heightOf(long));
    expect(textsOf(tiledOf(request).tiles[3] as Tile)).toEqual(
      expect.arrayContaining(["Part B2 of 4", "Join equal letters.", "A1", "A2", "B1", "B2"]),
    );
  });
});

describe("empty tiles", () => {
  const ring = { drawing: [circle(point(0, 0), 280, PEN.cut)], extent: box(-280, -280, 560, 560) };

  it("are left out where the rest hangs together, with no cross toward them", () => {
    const { tiles, grid } = tiledOf({ ...ring, lies: [lie(215.9, 279.4)] });
    expect(grid).toEqual({ columns: 4, rows: 3 });
    expect(namesOf(tiles)).toEqual(["A1", "A2", "A3", "A4", "B1", "B4", "C1", "C2", "C3", "C4"]);
    expect(crossesOf(tiles[1] as Tile).size).toBe(4);
  });

  it("are kept where something filled, or a word, stands on them", () => {
    const full = { ...ring, drawing: [{ ...ring.drawing[0], fill: { red: 0, green: 0, blue: 0 } } as Item] };
    expect(tiledOf({ ...full, lies: [lie(215.9, 279.4)] }).tiles.length).toBe(12);
    const word = text(point(-90, 0), "word", { capMm: 3 });
    expect(
      namesOf(tiledOf({ ...ring, drawing: [...ring.drawing, word], lies: [lie(215.9, 279.4)] }).tiles),
    ).toContain("B2");
  });

  it("are kept where they hold two parts at their distance", () => {
    const parts = [
      circle(point(0, 0), 20),
      shifted([layer("cut", [circle(point(0, 0), 20)])], point(480, 0)),
    ];
    const { tiles } = tiledOf({ drawing: parts, extent: box(-20, -20, 520, 40), lies: [lie(215.9, 279.4)] });
    expect(namesOf(tiles)).toEqual(["A1", "A2", "A3"]);
  });
});

describe("a drawing over 4 x 4", () => {
  const large = { drawing: [line(point(0, 0), point(3000, 20))], extent: box(0, 0, 3000, 20), lies: LETTER };

  it("is refused with the grid that it would take", () => {
    expect(tile({ ...large, words })).toEqual({ kind: "too-large", grid: { columns: 13, rows: 1 } });
  });

  it("is tiled when forced", () => {
    const { tiles, grid } = tiledOf({ ...large, forced: true });
    expect(grid.columns).toBe(13);
    expect(namesOf(tiles).slice(-2)).toEqual(["A12", "A13"]);
  });

  it("is refused even when forced where the paper is no larger than the overlap", () => {
    const tiny = [{ widthMm: 40, heightMm: 60, area: box(20, 30, 8, 8) }];
    expect(tile({ ...large, lies: tiny, words, forced: true })).toEqual({ kind: "too-large", grid: null });
  });
});

it("counts on in letters past Z", () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(letters)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
});
