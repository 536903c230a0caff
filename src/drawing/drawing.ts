/*
 * The display list: what stands on a page, in millimetres on the page, x to the right and y DOWN from the top left
 * corner. Sheets make these, the back ends in src/output write them; neither knows the other.
 */

export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

/** Ink: a grey or a colour that only repeats what line style already says. 0 is black, 1 is white. */
export type Ink = { readonly red: number; readonly green: number; readonly blue: number };

export const BLACK: Ink = { red: 0, green: 0, blue: 0 };
export const WHITE: Ink = { red: 1, green: 1, blue: 1 };
export const grey = (level: number): Ink => ({ red: level, green: level, blue: level });

export interface Stroke {
  readonly widthMm: number;
  readonly ink: Ink;
  /** Lengths of dash and gap in mm; absent for a full line. */
  readonly dashMm?: readonly number[];
  /** How far into its dashes the line begins, in mm; absent for 0. So that lines over each other fall dash on dash. */
  readonly dashFromMm?: number;
}

/** Layers that a viewer can switch, and named groups in SVG. */
export type Layer = "cut" | "clear" | "framing" | "obstructions" | "dimensions" | "aim" | "notes";

/** What a mark is to the trade; written as class and data-speaker in SVG. */
export interface Mark {
  readonly role: "cut" | "mark" | "aim" | "clear";
  readonly speaker: string;
}

export type Face = "regular" | "bold";
export type Anchor = "start" | "middle" | "end";

export interface Text {
  readonly kind: "text";
  /** The point on the baseline that `anchor` speaks of. */
  readonly at: PagePoint;
  readonly text: string;
  /** Height of a capital letter, in mm: what a standard for lettering means by height. */
  readonly capMm: number;
  readonly face: Face;
  readonly anchor: Anchor;
  readonly ink: Ink;
  /** Degrees clockwise on the page about `at` (y is down); absent for 0. */
  readonly turnDeg?: number;
}

export type PathStep = { readonly to: "move" | "line"; readonly at: PagePoint } | { readonly to: "close" };

export type Item =
  | {
      readonly kind: "line";
      readonly from: PagePoint;
      readonly to: PagePoint;
      readonly stroke: Stroke;
      readonly mark?: Mark;
    }
  | {
      readonly kind: "path";
      readonly steps: readonly PathStep[];
      readonly stroke?: Stroke;
      readonly fill?: Ink;
      readonly mark?: Mark;
    }
  | {
      readonly kind: "circle";
      readonly centre: PagePoint;
      readonly radiusMm: number;
      readonly stroke?: Stroke;
      readonly fill?: Ink;
      readonly mark?: Mark;
    }
  | {
      readonly kind: "rectangle";
      readonly corner: PagePoint;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly cornerRadiusMm?: number;
      readonly stroke?: Stroke;
      readonly fill?: Ink;
      readonly mark?: Mark;
    }
  | Text
  | Group;

/** Items that share a layer, a shift on the page, or a window outside which nothing is drawn. */
export interface Group {
  readonly kind: "group";
  readonly layer?: Layer;
  /** Added to every coordinate inside; never a scale: millimetres stay millimetres. */
  readonly shift?: PagePoint;
  /** In the coordinates outside the shift. */
  readonly window?: Window;
  readonly items: readonly Item[];
}

export interface Window {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A page as paper: its size is exact and never over 5080 mm a side. */
export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Title for bookmarks and the SVG's title element. */
  readonly title: string;
  readonly language: string;
  readonly items: readonly Item[];
}
