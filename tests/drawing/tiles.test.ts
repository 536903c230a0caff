import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Item, Text, Window } from "../../src/drawing/drawing.js";
import { circle, layer, line, PEN, point, rectangle, shifted, text } from "../../src/drawing/pen.js";
import { textBoxes } from "../../src/drawing/shown.js";
import { textBox } from "../../src/drawing/text.js";
import { letters } from "../../src/drawing/tile-marks.js";
import { jointsOf, type Lie, OVERLAP_MM, type Tile, type Tiling, tile } from "../../src/drawing/tiles.js";

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

/** Paper with 100 x 100 mm to draw on, so that each further part shows 90 mm more; no strip but its map's height. */
const SQUARE: Lie = { widthMm: 140, heightMm: 160, area: box(20, 30, 100, 100) };
const stripMmOf = ({ window }: Tile): number => window.y - SQUARE.area.y;
const squareOf = (drawing: readonly Item[], extent: Window, more: { forced?: boolean } = {}) =>
  tiledOf({ drawing, extent, lies: [SQUARE], ...more });

describe("how many parts there are", () => {
  const wide = (widthMm: number, heightMm = 20) => {
    const extent = box(0, 0, widthMm, heightMm);
    return { drawing: [rectangle(extent)], extent };
  };

  it.each([
    // One shows 100 mm, two 190, three 280, four 370.
    [100, 1],
    [100.001, 2],
    [190, 2],
    [190.001, 3],
    [280, 3],
    [370, 4],
  ])("%d mm wide: %d", (widthMm, columns) => {
    const { drawing, extent } = wide(widthMm);
    expect(squareOf(drawing, extent).grid).toEqual({ columns, rows: 1 });
  });

  it("is no more for the last digit of a sum", () => {
    const { drawing, extent } = wide(100 + 2e-14);
    expect(extent.widthMm).toBeGreaterThan(100);
    expect(squareOf(drawing, extent).grid.columns).toBe(1);
  });

  it("is at most 4 to a side, across and down, unless they are asked for by name", () => {
    const long = (extent: Window) => ({
      drawing: [line(point(0, 0), point(extent.widthMm, extent.heightMm))],
      extent,
      lies: [SQUARE],
      words,
    });
    expect(tile(long(box(0, 0, 20, 500)))).toMatchObject({ kind: "too-large", grid: { columns: 1 } });
    expect(tile(long(box(0, 0, 500, 20)))).toMatchObject({ kind: "too-large", grid: { rows: 1 } });
    expect(tile({ ...long(box(0, 0, 20, 500)), forced: true }).kind).toBe("tiled");
    // Four rows: 4 x 90 + 10, less four times the strip over each.
    const { tiles, grid } = squareOf(long(box(0, 0, 20, 250)).drawing, box(0, 0, 20, 250));
    expect(grid).toEqual({ columns: 1, rows: 4 });
    expect(namesOf(tiles)).toEqual(["A1", "B1", "C1", "D1"]);
  });

  it("is none where the paper shows no more than two parts share", () => {
    const { drawing, extent } = wide(100);
    const just: Lie = { widthMm: 50, heightMm: 160, area: box(20, 30, OVERLAP_MM, 100) };
    expect(tile({ drawing, extent, lies: [just], words, forced: true })).toEqual({
      kind: "too-large",
      grid: null,
    });
    const low: Lie = { ...just, area: box(20, 30, 100, OVERLAP_MM) };
    expect(tile({ drawing, extent, lies: [low], words, forced: true }).kind).toBe("too-large");
  });

  it("is one for each place of the grid where nothing is drawn at all", () => {
    expect(namesOf(squareOf([], box(0, 0, 150, 20)).tiles)).toEqual(["A1", "A2"]);
  });
});

describe("how parts lie to each other", () => {
  /** Three by three: what they cover is 3 x 90 + 10 across, and as much less a strip each down. */
  const extent = box(-30, -20, 250, 200);
  const { tiles, grid } = squareOf([rectangle(extent), line(point(-30, -20), point(220, 180))], extent);
  const stripMm = stripMmOf(tiles[0] as Tile);
  const highMm = 100 - stripMm;
  const at = (name: string): Tile => {
    const found = tiles.find((each) => each.name === name);
    if (found === undefined) throw new Error(name);
    return found;
  };
  /** Where a tile's window lies in the drawing. */
  const seenBy = ({ window, shift }: Tile): Window => ({
    ...window,
    x: window.x - shift.x,
    y: window.y - shift.y,
  });
  /** The dashed lines of a tile, in the drawing's coordinates. */
  const trims = (each: Tile) =>
    leaves(each.items.slice(0, 1)).flatMap(({ item }) =>
      item.kind === "line" && item.stroke.dashMm !== undefined ? [{ from: item.from, to: item.to }] : [],
    );

  it("is under the strip, in the middle of what they cover", () => {
    expect(grid).toEqual({ columns: 3, rows: 3 });
    expect(stripMm).toBeGreaterThan(12);
    for (const { window } of tiles) expect(window).toEqual(box(20, 30 + stripMm, 100, highMm));
    const first = seenBy(at("A1"));
    expect(first.x).toBeCloseTo(-30 - (280 - 250) / 2, 9);
    expect(first.y).toBeCloseTo(-20 - (3 * (highMm - 10) + 10 - 200) / 2, 9);
  });

  it("shares 10 mm, across and down", () => {
    const [first, right, below] = [seenBy(at("A1")), seenBy(at("A2")), seenBy(at("B1"))];
    expect(first.x + 100 - right.x).toBeCloseTo(10, 9);
    expect(right.y).toBe(first.y);
    expect(first.y + highMm - below.y).toBeCloseTo(10, 9);
    expect(below.x).toBe(first.x);
  });

  it("is told as strips, one for each edge that two parts share", () => {
    const drawing = [rectangle(extent), line(point(-30, -20), point(220, 180))];
    const strips = jointsOf({ drawing, extent, lies: [SQUARE], words });
    // Six between columns, six between rows; all of the right-hand and the lower part's edge.
    expect(strips).toHaveLength(12);
    const middle = seenBy(at("B2"));
    const near = (x: number, y: number, widthMm: number, heightMm: number) => ({
      x: expect.closeTo(x, 9),
      y: expect.closeTo(y, 9),
      widthMm: expect.closeTo(widthMm, 9),
      heightMm: expect.closeTo(heightMm, 9),
    });
    expect(strips).toContainEqual(near(middle.x, middle.y, 10, highMm));
    expect(strips).toContainEqual(near(middle.x, middle.y, 100, 10));
    expect(strips).toContainEqual(near(middle.x + 90, middle.y, 10, highMm));
    expect(strips).toContainEqual(near(middle.x, middle.y + highMm - 10, 100, 10));
    // None where the drawing fits on one page, none toward a part that is not printed, none without room.
    expect(jointsOf({ ...hole(80), lies: [SQUARE], words })).toEqual([]);
    const ring = { drawing: [circle(point(0, 0), 280)], extent: box(-280, -280, 560, 560) };
    expect(jointsOf({ ...ring, lies: [lie(215.9, 279.4)], words })).toHaveLength(10);
    const tiny: Lie = { widthMm: 40, heightMm: 60, area: box(20, 30, 8, 8) };
    expect(jointsOf({ ...ring, lies: [tiny], words })).toEqual([]);
  });

  it("is trimmed in the middle of what is shared, along the whole edge", () => {
    const middle = seenBy(at("B2"));
    const [left, right] = [middle.x + 5, middle.x + 100 - 5];
    const [top, bottom] = [middle.y + 5, middle.y + highMm - 5];
    const near = (from: { x: number; y: number }, to: { x: number; y: number }) => ({
      from: { x: expect.closeTo(from.x, 9), y: expect.closeTo(from.y, 9) },
      to: { x: expect.closeTo(to.x, 9), y: expect.closeTo(to.y, 9) },
    });
    const [first, last] = [point(middle.x, middle.y), point(middle.x + 100, middle.y + highMm)];
    const lines = trims(at("B2"));
    expect(lines).toHaveLength(4);
    expect(lines).toEqual(
      expect.arrayContaining([
        near(point(left, first.y), point(left, last.y)),
        near(point(right, first.y), point(right, last.y)),
        near(point(first.x, top), point(last.x, top)),
        near(point(first.x, bottom), point(last.x, bottom)),
      ]),
    );
    expect(trims(at("A1"))).toHaveLength(2);
    expect(trims(at("C2"))).toHaveLength(3);
  });

  it("has each letter on the tile's own side of the line, so that trimming leaves it", () => {
    for (const each of tiles) {
      const { clear, shift } = each;
      const own = leaves(each.items.slice(0, 1)).flatMap(({ item }) =>
        item.kind === "text" ? [textBox(item)] : [],
      );
      expect(own.length).toBeGreaterThan(3);
      for (const letter of own) {
        const x = letter.x + shift.x;
        // 10 mm are shared and 1 mm is air: the trim line is 6 mm further out.
        expect(x).toBeGreaterThanOrEqual(clear.x - 6);
        expect(x + letter.widthMm).toBeLessThanOrEqual(clear.x + clear.widthMm + 6);
        const y = letter.y + shift.y;
        expect(y).toBeGreaterThanOrEqual(clear.y - 6);
        expect(y + letter.heightMm).toBeLessThanOrEqual(clear.y + clear.heightMm + 6);
      }
    }
  });

  it("leaves clear what neither the edge nor a neighbour takes: 1 mm, and 11 mm toward a neighbour", () => {
    const insets = ({ window, clear }: Tile) =>
      [
        clear.x - window.x,
        window.x + window.widthMm - clear.x - clear.widthMm,
        clear.y - window.y,
        window.y + window.heightMm - clear.y - clear.heightMm,
      ].map((mm) => Math.round(mm * 1e6) / 1e6);
    expect(insets(at("A1"))).toEqual([1, 11, 1, 11]);
    expect(insets(at("B2"))).toEqual([11, 11, 11, 11]);
    expect(insets(at("C3"))).toEqual([11, 1, 11, 1]);
  });

  it("is one figure only where parts share an edge: at a corner they do not", () => {
    // Ink in two tiles that only meet at a corner: the other two are kept to hold them together.
    const corners = [circle(point(10, 10), 5), circle(point(140, 130), 5)];
    const { tiles: four } = squareOf(corners, box(0, 0, 150, 140));
    expect(namesOf(four)).toEqual(["A1", "A2", "B1", "B2"]);
  });
});

describe("what a part shows of a drawing in groups", () => {
  const extent = box(0, 0, 180, 60);
  const ink = (x: number): Item => circle(point(x, 0), 2);
  const whole = (items: readonly Item[]): Item[][] =>
    squareOf([rectangle(extent), ...items], extent).tiles.map(({ items: [first] }) =>
      first?.kind === "group" ? [...first.items] : [],
    );
  /** All but the frame round the drawing and the marks of the tile. */
  const groupsOn = (items: readonly Item[] | undefined) =>
    (items ?? []).filter(
      (item) => item.kind !== "rectangle" && (item.kind !== "group" || item.layer === undefined),
    );

  it("is the group with what of it falls there, and no empty one", () => {
    // The first part shows up to 95 mm of it, the second from 85 mm.
    const group = shifted([ink(0), ink(130), ink(60)], point(30, 30));
    const [first, second] = whole([group]).map(groupsOn);
    expect(first).toEqual([{ ...group, items: [ink(0), ink(60)] }]);
    expect(second).toEqual([{ ...group, items: [ink(130), ink(60)] }]);
    const [left, right] = whole([shifted([ink(0)], point(30, 30))]).map(groupsOn);
    expect([left?.length, right]).toEqual([1, []]);
  });

  it("is nothing where the group's own window shows nothing", () => {
    const seen = { ...shifted([ink(0), ink(130)], point(30, 30)), window: box(0, 0, 60, 60) } as Item;
    const [first, second] = whole([seen]).map(groupsOn);
    expect(first).toEqual([{ ...seen, items: [ink(0)] }]);
    expect(second).toEqual([]);
  });

  it("is a word of a group only where it stands whole, or, too long for any part, wherever it falls", () => {
    const word = (said: string, x: number) => text(point(x, 0), said, { capMm: 5 });
    const { widthMm } = textBox(word("TFL", 0));
    // Cut by the first part's edge at 95 mm; the second part, from 85 mm, shows it whole.
    const cut = whole([shifted([word("TFL", 95 - widthMm / 2 - 30)], point(30, 30))]).map(groupsOn);
    expect(cut.map((groups) => groups.length)).toEqual([0, 1]);
    const long = "a name that is longer than any part of the paper is wide".toUpperCase();
    const everywhere = whole([shifted([word(long, 0)], point(2, 30))]).map(groupsOn);
    expect(everywhere.map((groups) => groups.length)).toEqual([1, 1]);
  });
});

it("boxes of words are where their groups are shifted to, group in group", () => {
  const word = text(point(3, 4), "TFL", { capMm: 5 });
  const own = textBox(word);
  const inTwo = shifted([line(point(0, 0), point(1, 1)), shifted([word], point(10, 20))], point(100, 200));
  expect(textBoxes([inTwo, word])).toEqual([{ ...own, x: own.x + 110, y: own.y + 220 }, own]);
  expect(textBoxes([{ kind: "group", items: [word] }], point(7, 9))).toEqual([
    { ...own, x: own.x + 7, y: own.y + 9 },
  ]);
});

it("counts on in letters past Z", () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(letters)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
});
