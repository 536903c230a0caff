/*
 * What measuring and embedding need to know of a TrueType font, read from its tables. Table layouts and field offsets:
 * the OpenType specification (ISO/IEC 14496-22), chapters head, hhea, hmtx, loca, glyf and cmap.
 */
import type { FaceMetrics, GlyphRow } from "../drawing/typeface.js";
import { InternalError } from "../findings/internal-error.js";

type Tables = ReadonlyMap<string, Buffer>;

function tablesOf(font: Buffer): Tables {
  const count = font.readUInt16BE(4);
  const records = Array.from({ length: count }, (_, index) => 12 + 16 * index);
  return new Map(
    records.map((record) => {
      const start = font.readUInt32BE(record + 8);
      return [
        font.toString("latin1", record, record + 4),
        font.subarray(start, start + font.readUInt32BE(record + 12)),
      ];
    }),
  );
}

function tableOf(tables: Tables, tag: string): Buffer {
  const table = tables.get(tag);
  if (table === undefined) throw new InternalError(`the typeface has no ${tag} table`);
  return table;
}

/** Glyph of each code point, from the format 4 subtable (Unicode's first plane, which is all that we keep). */
function glyphByCodePoint(cmap: Buffer): ReadonlyMap<number, number> {
  const count = cmap.readUInt16BE(2);
  const offsets = Array.from({ length: count }, (_, index) => cmap.readUInt32BE(4 + 8 * index + 4));
  const start = offsets.find((offset) => cmap.readUInt16BE(offset) === 4);
  if (start === undefined) throw new InternalError("the typeface has no format 4 character map");
  return new Map(segmentsOf(cmap.subarray(start)).flatMap((segment) => glyphsOf(segment)));
}

interface Segment {
  readonly first: number;
  readonly last: number;
  readonly glyphAt: (codePoint: number) => number;
}

function segmentsOf(table: Buffer): readonly Segment[] {
  const doubled = table.readUInt16BE(6);
  return Array.from({ length: doubled / 2 }, (_, index) => {
    const end = 14 + 2 * index;
    const first = table.readUInt16BE(end + doubled + 2);
    const delta = table.readUInt16BE(end + 2 * doubled + 2);
    const rangeAt = end + 3 * doubled + 2;
    const range = table.readUInt16BE(rangeAt);
    const glyphAt = (codePoint: number): number => {
      if (range === 0) return (codePoint + delta) & 0xffff;
      const glyph = table.readUInt16BE(rangeAt + range + 2 * (codePoint - first));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    };
    return { first, last: table.readUInt16BE(end), glyphAt };
  });
}

function glyphsOf({ first, last, glyphAt }: Segment): [number, number][] {
  const codePoints = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  return codePoints
    .map((codePoint): [number, number] => [codePoint, glyphAt(codePoint)])
    .filter(([codePoint, glyph]) => glyph !== 0 && codePoint !== 0xffff);
}

/** Lowest and highest ink of a glyph above the baseline, in font units; 0 and 0 where there is none. */
function inkReader(tables: Tables): (glyph: number) => readonly [number, number] {
  const loca = tableOf(tables, "loca");
  const glyf = tableOf(tables, "glyf");
  const long = tableOf(tables, "head").readInt16BE(50) === 1;
  const offsetOf = (glyph: number): number =>
    long ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph);
  return (glyph) => {
    const start = offsetOf(glyph);
    return start === offsetOf(glyph + 1)
      ? [0, 0]
      : [glyf.readInt16BE(start + 4), glyf.readInt16BE(start + 8)];
  };
}

function advanceReader(tables: Tables): (glyph: number) => number {
  const hmtx = tableOf(tables, "hmtx");
  const count = tableOf(tables, "hhea").readUInt16BE(34);
  return (glyph) => hmtx.readUInt16BE(4 * Math.min(glyph, count - 1));
}

/** Metrics of a TrueType font in its own units, with a row for each code point that it can draw, sorted. */
export function readMetrics(font: Buffer, name: string): FaceMetrics {
  const tables = tablesOf(font);
  const head = tableOf(tables, "head");
  const hhea = tableOf(tables, "hhea");
  const inkOf = inkReader(tables);
  const advanceOf = advanceReader(tables);
  const glyphs = glyphByCodePoint(tableOf(tables, "cmap"));
  const rows = [...glyphs].map(
    ([codePoint, glyph]): GlyphRow => [codePoint, glyph, advanceOf(glyph), ...inkOf(glyph)],
  );
  return {
    name,
    byteLength: font.length,
    unitsPerEm: head.readUInt16BE(18),
    // The font's OS/2 table is of a version before sCapHeight: the height of H is what that field would say.
    capHeight: inkOf(glyphs.get(0x48) ?? 0)[1],
    ascent: hhea.readInt16BE(4),
    descent: hhea.readInt16BE(6),
    box: [head.readInt16BE(36), head.readInt16BE(38), head.readInt16BE(40), head.readInt16BE(42)],
    rows: rows.sort((a, b) => a[0] - b[0]),
  };
}
