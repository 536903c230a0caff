/** A grey picture of a part of a page, with what it takes to speak of its pixels in millimetres. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Row by row from the top left, 0 for paper and 255 for full ink. */
  readonly ink: Uint8Array;
  readonly pixelsPerMm: number;
  /** Where the picture's top left corner lies, in mm. */
  readonly corner: Point;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A part of a page in mm, y down from the top left. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The same picture moved: to join tiles in the drawing's own coordinates. */
export const moved = (picture: Picture, by: Point): Picture => ({
  ...picture,
  corner: { x: picture.corner.x + by.x, y: picture.corner.y + by.y },
});

/** Ink at a point, from 0 to 1, between the four nearest pixels' centres; null outside the picture. */
export function inkAt(picture: Picture, at: Point): number | null {
  const x = (at.x - picture.corner.x) * picture.pixelsPerMm - 0.5;
  const y = (at.y - picture.corner.y) * picture.pixelsPerMm - 0.5;
  const [left, top] = [Math.floor(x), Math.floor(y)];
  if (!(left >= 0 && top >= 0 && left + 1 < picture.widthPx && top + 1 < picture.heightPx)) return null;
  const [across, down] = [x - left, y - top];
  const pixel = (column: number, row: number): number => picture.ink[row * picture.widthPx + column] ?? 0;
  const upper = pixel(left, top) * (1 - across) + pixel(left + 1, top) * across;
  const lower = pixel(left, top + 1) * (1 - across) + pixel(left + 1, top + 1) * across;
  return (upper * (1 - down) + lower * down) / 255;
}
