/*
 * The lines of a page as pdf.js reads them from the file: every matrix applied, every curve sampled, in mm on the
 * page with y down. pdf.js keeps coordinates as 32-bit floats, which is 0.0005 mm at the end of a 5080 mm page.
 */
import { OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { openPdf } from "./open-pdf.js";
import type { Point } from "./picture.js";

const MM_PER_POINT = 25.4 / 72;

export interface Drawn {
  readonly points: readonly Point[];
  readonly painted: "stroke" | "fill" | "both";
  /** Width of the pen on paper, in mm. */
  readonly lineMm: number;
  readonly dashed: boolean;
  /** What the document calls the layer that it stands on; null on none. */
  readonly layer: string | null;
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
];

const apply = (m: Matrix, { x, y }: Point): Point => ({
  x: m[0] * x + m[2] * y + m[4],
  y: m[1] * x + m[3] * y + m[5],
});

interface State {
  readonly matrix: Matrix;
  readonly widthUnits: number;
  readonly dashed: boolean;
}

const PAINTED: ReadonlyMap<number, Drawn["painted"]> = new Map([
  [OPS.stroke, "stroke"],
  [OPS.closeStroke, "stroke"],
  [OPS.fill, "fill"],
  [OPS.eoFill, "fill"],
  [OPS.fillStroke, "both"],
  [OPS.eoFillStroke, "both"],
  [OPS.closeFillStroke, "both"],
]);

/** Every path that is painted on a page, in its order. Pages count from 1. */
export async function drawnOn(pdf: Uint8Array, page: number): Promise<Drawn[]> {
  const document = await openPdf(pdf);
  try {
    const sheet = await document.getPage(page);
    const layers = await document.getOptionalContentConfig();
    const nameOf = (id: string): string | null => layers.getGroup(id)?.name ?? null;
    const { fnArray, argsArray } = await sheet.getOperatorList();
    const topMm = (sheet.view[3] ?? Number.NaN) * MM_PER_POINT;
    return follow(fnArray, argsArray, { topMm, nameOf });
  } finally {
    await document.destroy();
  }
}

interface Reading {
  readonly topMm: number;
  readonly nameOf: (id: string) => string | null;
}

function follow(operators: readonly number[], operands: readonly unknown[], reading: Reading): Drawn[] {
  const start: Matrix = [MM_PER_POINT, 0, 0, -MM_PER_POINT, 0, reading.topMm];
  const drawn: Drawn[] = [];
  const saved: State[] = [];
  const open: (string | null)[] = [];
  let state: State = { matrix: start, widthUnits: 1, dashed: false };
  operators.forEach((operator, index) => {
    // What pdf.js gives with each operator is not typed; its shape by operator was read from its source.
    // biome-ignore lint/suspicious/noExplicitAny: see above
    const values = operands[index] as any;
    if (operator === OPS.save) saved.push(state);
    else if (operator === OPS.restore) state = saved.pop() ?? state;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, values) };
    else if (operator === OPS.setLineWidth) state = { ...state, widthUnits: values[0] };
    else if (operator === OPS.setDash) state = { ...state, dashed: values[0].length > 0 };
    else if (operator === OPS.beginMarkedContentProps) open.push(reading.nameOf(values[1]?.id ?? ""));
    else if (operator === OPS.endMarkedContent) open.pop();
    else if (operator === OPS.constructPath) {
      const painted = PAINTED.get(values[0]);
      const path: Float32Array | null = values[1][0];
      if (painted !== undefined && path !== null) {
        const layer = open.findLast((name) => name !== null) ?? null;
        drawn.push({ ...stateOf(state), painted, layer, points: pointsOf(path, state.matrix) });
      }
    }
  });
  return drawn;
}

const stateOf = ({ matrix, widthUnits, dashed }: State) => ({
  dashed,
  lineMm: widthUnits * Math.sqrt(Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2])),
});

/** Numbers by which pdf.js codes the steps of a path, and how many coordinates follow each. */
const COORDINATES = [2, 2, 6, 4, 0];
const CURVE = 2;
const SAMPLES = 16;

function pointsOf(path: Float32Array, matrix: Matrix): Point[] {
  const points: Point[] = [];
  for (let index = 0; index < path.length; ) {
    const kind = path[index] ?? 0;
    const count = COORDINATES[kind] ?? 0;
    const corners = Array.from({ length: count / 2 }, (_, pair) =>
      apply(matrix, { x: path[index + 1 + 2 * pair] ?? 0, y: path[index + 2 + 2 * pair] ?? 0 }),
    );
    const from = points.at(-1);
    if (kind === CURVE && from !== undefined) points.push(...sampled([from, ...corners]));
    else points.push(...corners);
    index += 1 + count;
  }
  return points;
}

function sampled([a, b, c, d]: readonly Point[]): Point[] {
  if (a === undefined || b === undefined || c === undefined || d === undefined) return [];
  return Array.from({ length: SAMPLES }, (_, index) => {
    const t = (index + 1) / SAMPLES;
    const s = 1 - t;
    const mix = (axis: "x" | "y"): number =>
      s ** 3 * a[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t ** 3 * d[axis];
    return { x: mix("x"), y: mix("y") };
  });
}

export interface Extent {
  readonly centre: Point;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Size in x and y of a path, of the middle of its line. */
export function extentOf({ points }: Drawn): Extent {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return {
    centre: { x: (left + right) / 2, y: (top + bottom) / 2 },
    widthMm: right - left,
    heightMm: bottom - top,
  };
}
