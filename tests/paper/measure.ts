/*
 * Measuring a cut line on a picture of a sheet, without knowing how the picture was made: rays across the line find
 * its middle, and a shape is fitted to what they found. Other ink may cross the line or lie beside it.
 */
import { leastSquares } from "./least-squares.js";
import { inkAt, type Picture, type Point } from "./picture.js";

/** Where to look; the answer may lie anywhere within `searchMm` of it. */
interface Looking {
  readonly centre: Point;
  /** To each side of the line that is looked for. */
  readonly searchMm?: number;
  /** Width of the line, to tell it from thinner and thicker ones. */
  readonly lineMm?: number;
}

export interface NearCircle extends Looking {
  readonly radiusMm: number;
}

export interface NearRectangle extends Looking {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Length at each end of a side that is left out, since a corner may be rounded. */
  readonly cornerMm?: number;
}

export interface Measured {
  readonly centre: Point;
  /** In x. */
  readonly widthMm: number;
  /** In y. */
  readonly heightMm: number;
  /** Points of the line that the shape was fitted to. */
  readonly points: number;
  /** Root mean square of what is left between the points and the shape. */
  readonly residualMm: number;
}

const SEARCH_MM = 8;
const CUT_LINE_MM = 0.7;
const STEPS_PER_PIXEL = 2;
/** Ink no darker than this is ground: bare paper, or the faint filling of a clear area, which is 0.05. */
const GROUND = 0.08;

type Ray = (mm: number) => Point;

/**
 * Middles of the stretches of ink of about the line's width that a ray crosses, as distances along it. A stretch that
 * runs out of the picture says nothing.
 */
function crossings(
  picture: Picture,
  ray: Ray,
  { from, to, lineMm }: Record<"from" | "to" | "lineMm", number>,
) {
  const stepMm = 1 / (picture.pixelsPerMm * STEPS_PER_PIXEL);
  const found: number[] = [];
  let [ink, moment] = [0, 0];
  let whole = false;
  for (let mm = from; mm <= to; mm += stepMm) {
    const here = inkAt(picture, ray(mm));
    if (here !== null && here > GROUND) {
      ink += here * stepMm;
      moment += here * stepMm * mm;
    } else {
      if (whole && here !== null && ink > 0.7 * lineMm && ink < 1.4 * lineMm) found.push(moment / ink);
      [ink, moment] = [0, 0];
      whole = here !== null;
    }
  }
  return found;
}

/** The one crossing of a ray; none where there are several, since nobody can say which is the line. */
function theCrossing(
  pictures: readonly Picture[],
  ray: Ray,
  near: number,
  { searchMm = SEARCH_MM, lineMm = CUT_LINE_MM }: Looking,
): Point[] {
  const found = pictures.flatMap((picture) => {
    const here = crossings(picture, ray, { from: near - searchMm, to: near + searchMm, lineMm });
    return here.length === 1 ? here : [];
  });
  return found.map(ray);
}

const RAYS = 360;
const RAYS_TO_A_SIDE = 150;

/** Points on the cut line of a round opening, on one picture or on the tiles of one drawing, moved to where they belong. */
export function pointsOnCircle(pictures: readonly Picture[], near: NearCircle): Point[] {
  return Array.from({ length: RAYS }, (_, index) => (index * 2 * Math.PI) / RAYS).flatMap((angle) => {
    const ray = (mm: number): Point => ({
      x: near.centre.x + mm * Math.cos(angle),
      y: near.centre.y + mm * Math.sin(angle),
    });
    return theCrossing(pictures, ray, near.radiusMm, near);
  });
}

interface Ellipse {
  readonly centre: Point;
  readonly halfX: number;
  readonly halfY: number;
}

/** Terms of an upright ellipse's equation, so that x and y are measured each by itself, or of a circle's. */
const TERMS = {
  ellipse: ({ x, y }: Point): number[] => [x * x, y * y, x, y],
  circle: ({ x, y }: Point): number[] => [x * x + y * y, x, y],
};

/** The shape of least squares through the points, reckoned in shares of the radius that was looked for. */
function ellipseThrough(points: readonly Point[], near: NearCircle, kind: keyof typeof TERMS): Ellipse {
  const { centre, radiusMm } = near;
  const rows = points.map(({ x, y }) =>
    TERMS[kind]({ x: (x - centre.x) / radiusMm, y: (y - centre.y) / radiusMm }),
  );
  const found = leastSquares(
    rows,
    rows.map(() => 1),
  );
  const [a = 0, b = 0, c = 0, d = 0] = kind === "circle" ? [found[0], ...found] : found;
  const middle = { x: -c / (2 * a), y: -d / (2 * b) };
  const size = 1 + a * middle.x ** 2 + b * middle.y ** 2;
  return {
    centre: { x: centre.x + middle.x * radiusMm, y: centre.y + middle.y * radiusMm },
    halfX: radiusMm * Math.sqrt(size / a),
    halfY: radiusMm * Math.sqrt(size / b),
  };
}

/** Distance from an ellipse that is nearly a circle, along the ray from its centre. */
function offEllipse(point: Point, { centre, halfX, halfY }: Ellipse): number {
  const [x, y] = [point.x - centre.x, point.y - centre.y];
  return Math.hypot(x, y) * (1 - 1 / Math.hypot(x / halfX, y / halfY));
}

/** A point further off than this is not of the line: other ink of the same width beside it. */
const STRAY_MM = 0.15;
const LEAST_POINTS = 40;
const ROUNDS = 12;

/**
 * What fits the points that lie on it: fitted to all, then again and again without those that are far off, as far as
 * `STRAY_MM`. Throws where too few are left to speak of a line.
 */
function fitMost<Found, Shape>(
  found: readonly Found[],
  shapeOf: (points: readonly Found[]) => Shape,
  offBy: (point: Found, shape: Shape) => number,
): { shape: Shape; points: number; residualMm: number } {
  let points = enough(found);
  let shape = shapeOf(points);
  for (let round = 0; round < ROUNDS; round++) {
    const off = (point: Found): number => Math.abs(offBy(point, shape));
    const limit = Math.max(STRAY_MM, 2 * median(points.map(off)));
    const kept = enough(found.filter((point) => off(point) <= limit));
    if (limit === STRAY_MM && kept.length === points.length) break;
    points = kept;
    shape = shapeOf(points);
  }
  const squares = points.map((point) => offBy(point, shape) ** 2);
  const residualMm = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  return { shape, points: points.length, residualMm };
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function enough<Found>(points: readonly Found[]): readonly Found[] {
  if (points.length < LEAST_POINTS) throw new Error(`only ${points.length} points of a cut line were found`);
  return points;
}

/** The round cut line that is found near a place, x and y each by itself; throws where there is none. */
export const measureCircle = (pictures: readonly Picture[], near: NearCircle): Measured =>
  measureRound(pictures, near, "ellipse");

/** The same where only a part of the line is to be seen, as on one tile: taken as a true circle. */
export const measureArc = (pictures: readonly Picture[], near: NearCircle): Measured =>
  measureRound(pictures, near, "circle");

function measureRound(pictures: readonly Picture[], near: NearCircle, kind: keyof typeof TERMS): Measured {
  const { shape, ...rest } = fitMost(
    pointsOnCircle(pictures, near),
    (points) => ellipseThrough(points, near, kind),
    offEllipse,
  );
  return { centre: shape.centre, widthMm: 2 * shape.halfX, heightMm: 2 * shape.halfY, ...rest };
}

interface Side {
  /** Where the side crosses the middle of the shape, and what its points miss it by. */
  readonly at: number;
  readonly points: number;
  readonly residualMm: number;
}

interface SideSearch {
  /** True for a side that runs down the page. */
  readonly upright: boolean;
  /** +1 for the right and lower side. */
  readonly sign: 1 | -1;
}

function measureSide(pictures: readonly Picture[], near: NearRectangle, { upright, sign }: SideSearch): Side {
  const { centre, cornerMm = 15 } = near;
  const [reach, long] = upright ? [near.widthMm / 2, near.heightMm] : [near.heightMm / 2, near.widthMm];
  const along = Array.from(
    { length: RAYS_TO_A_SIDE },
    (_, index) => (index / (RAYS_TO_A_SIDE - 1) - 0.5) * (long - 2 * cornerMm),
  );
  const points = along.flatMap((offset) => {
    const ray = (mm: number): Point =>
      upright
        ? { x: centre.x + sign * mm, y: centre.y + offset }
        : { x: centre.x + offset, y: centre.y + sign * mm };
    return theCrossing(pictures, ray, reach, near).map(({ x, y }) => (upright ? [y, x] : [x, y]));
  });
  return fitSide(points, upright ? centre.y : centre.x);
}

/** A straight line through pairs of place along and place across, and where it passes `middle`. */
function fitSide(found: readonly number[][], middle: number): Side {
  const { shape, ...rest } = fitMost(
    found,
    (points) => {
      const [at = 0, slope = 0] = leastSquares(
        points.map(([along = 0]) => [1, (along - middle) / 100]),
        points.map(([, across = 0]) => across),
      );
      return { at, slope };
    },
    ([along = 0, across = 0], { at, slope }) => across - at - (slope * (along - middle)) / 100,
  );
  return { at: shape.at, ...rest };
}

/** The rectangular cut line that is found near a place; throws where there is none. */
export function measureRectangle(pictures: readonly Picture[], near: NearRectangle): Measured {
  const side = (upright: boolean, sign: 1 | -1): Side => measureSide(pictures, near, { upright, sign });
  const sides = { left: side(true, -1), right: side(true, 1), top: side(false, -1), bottom: side(false, 1) };
  const { left, right, top, bottom } = sides;
  return {
    centre: { x: (left.at + right.at) / 2, y: (top.at + bottom.at) / 2 },
    widthMm: right.at - left.at,
    heightMm: bottom.at - top.at,
    points: left.points + right.points + top.points + bottom.points,
    residualMm: Math.max(...Object.values(sides).map((each) => each.residualMm)),
  };
}
