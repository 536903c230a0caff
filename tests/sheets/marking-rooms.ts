import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Job } from "../../src/job.js";
import { type Parts, roomOf, TRAY_CORNERS, type Value } from "../rooms/build.js";
import { answer, job } from "../rooms/job.js";
import { ANGLED, L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";
import { HARD } from "./orders.js";

/*
 * Rooms that are hard to draw: crowded, tiny, huge, unknown, assumed, rated, cut at two stages.
 */

const example = (name: string): Job =>
  answer(roomOf(readFileSync(join(import.meta.dirname, "..", "..", "examples", `${name}.yaml`), "utf8")));

const overhead = (id: string, left: string, front: string): Parts => ({
  id,
  model: "tilted",
  at: { left, front },
});

/** Sixteen openings on a raster, with ids as long as they may be. */
const crowd: readonly Value[] = [0, 1, 2, 3].flatMap((row) =>
  [0, 1, 2, 3].map((column) =>
    overhead(`OVERHEAD-${row}-${column}`, `${500 + 950 * column} mm`, `${900 + 1250 * row} mm`),
  ),
);

const assumed = (from: string): Parts => ({
  member: "2x4",
  from,
  at: null,
  first: '15 1/4"',
  spacing: '16"',
  mark: "near-edge",
});

export const ROOMS: Readonly<Record<string, () => Job>> = {
  den: () => example("quarry-lane-den"),
  studio: () => example("alder-court-studio"),
  gallery: () => example("osier-row-gallery"),
  loft: () => example("marrow-lane-loft"),
  shop: () => example("tansy-row-shop"),
  "long words": () => job(HARD),
  crowded: () => job({ speakers: crowd }),
  "crowded by obstructions": () =>
    job({
      obstructions: [0, 1, 2, 3, 4].map((index) => ({
        name: `a duct of many words ${index}`,
        on: "ceiling",
        corner: { left: `${400 + index * 700} mm`, front: "200 mm" },
        opposite: { left: `${600 + index * 700} mm`, front: `${2200 + index * 700} mm` },
        keep: "50 mm",
        ...(index % 2 === 0 ? { behind: "60 mm" } : {}),
      })),
      speakers: [overhead("TL", "1 m", "5 m"), overhead("TR", "3 m", "5 m")],
    }),
  "assumed near edges": () =>
    job({
      units: "imperial",
      framing: {
        ceiling: {
          ...assumed("back"),
          run: "left-right",
          member: "2x10",
          strapping: { depth: '3/4"', width: '2 1/2"', from: "right", first: '12"', spacing: '16"' },
        },
        left: {
          ...assumed("front"),
          strapping: {
            kind: "channel",
            depth: '1/2"',
            width: '2 3/4"',
            from: "floor",
            at: ['3"', '27"', '51"', '75"', '100"'],
          },
        },
        right: assumed("back"),
        front: assumed("left"),
        back: assumed("right"),
      },
      speakers: [
        overhead("TL", "1 m", "2 m"),
        { id: "WL", model: "upright", on: "left", at: { front: "2 m", up: "1.2 m" } },
        { id: "WR", model: "upright", on: "right", at: { back: "2 m", down: "1.2 m" } },
        { id: "WB", model: "upright", on: "back", at: { left: "2 m", up: "1.2 m" } },
      ],
    }),
  "joists at an angle": () =>
    job({
      framing: {
        ceiling: {
          run: "30 deg",
          from: { right: 0, front: 0 },
          at: null,
          first: "300 mm",
          spacing: "600 mm",
          found: [{ member: 3, at: "1510 mm", by: "framer", on: "2026-05-02" }],
          strapping: {
            kind: "channel",
            depth: "13 mm",
            width: "70 mm",
            from: { left: 0, front: 0 },
            first: "400 mm",
            spacing: "900 mm",
          },
        },
      },
      speakers: [overhead("TL", "1 m", "2 m"), overhead("TR", "3 m", "2 m"), overhead("TBL", "1 m", "4.4 m")],
    }),
  "unknown framing": () =>
    job({
      framing: { ceiling: null, left: null },
      speakers: [
        overhead("TL", "1 m", "2 m"),
        { id: "WL", model: "upright", on: "left", at: { front: "2 m", up: "1.2 m" } },
      ],
    }),
  tiny: () =>
    job({
      room: { width: "0.9 m", length: "0.8 m", height: "2.2 m" },
      framing: null,
      seats: [{ name: "middle", at: { left: "0.4 m", front: "0.4 m" }, ear: "1.2 m", reference: true }],
      speakers: [overhead("TL", "0.4 m", "0.4 m")],
    }),
  hall: () =>
    job({
      room: { width: "38 m", length: "96 m", height: "9 m" },
      framing: {
        ceiling: { at: null, first: "600 mm", spacing: "600 mm" },
        left: null,
        right: null,
        front: null,
        back: null,
      },
      seats: [{ name: "middle", at: { left: "19 m", front: "40 m" }, ear: "1.2 m", reference: true }],
      speakers: [
        overhead("FAR-LEFT", "1.1 m", "2.3 m"),
        overhead("FAR-RIGHT", "36.7 m", "2.3 m"),
        overhead("BACK-LEFT", "1.1 m", "94 m"),
      ],
    }),
  "rated, two stages": () =>
    job({
      stage: { walls: "both" },
      surfaces: { ceiling: { rated: true, insulation: "mineral wool", second_support: true } },
      call: "Site lead, 555-0142",
      speakers: [
        overhead("TL", "1 m", "2 m"),
        { ...overhead("TR", "", ""), at: { right: "1 m", front: "2 m" } },
        { id: "WL", model: "upright", on: "left", at: { front: "2 m", up: "1.2 m" } },
      ],
    }),
  "an L with a soffit": () =>
    job({
      ...L_WITH_SOFFIT,
      framing: {
        ceiling: { at: null, first: "600 mm", spacing: "600 mm" },
        soffit: { ...joists("front"), first: "400 mm", spacing: "400 mm" },
        left: null,
        right: null,
        front: { at: null, first: "400 mm", spacing: "400 mm" },
        back: null,
      },
      speakers: [
        { ...overhead("TL", "", ""), at: { left: "1600 mm", front: "2 m" } },
        { ...overhead("TR", "", ""), at: { right: "900 mm", front: "2 m" } },
        { ...overhead("LEG", "", ""), at: { end: "900 mm", back: "1500 mm" } },
        { ...overhead("ON-SOFFIT", "", ""), on: "soffit", at: { left: "400 mm", front: "2 m" } },
        { id: "WF", model: "upright", on: "front", at: { left: "1 m", down: "1.2 m" } },
        { id: "WS", model: "upright", on: "step", at: { end: "1 m", up: "1.2 m" } },
      ],
    }),
  "under a slope, before and after board": () =>
    job({
      ...sloped("front"),
      stage: { walls: "both" },
      framing: {
        ceiling: null,
        slope: { ...joists("left"), run: "front-back", first: "600 mm", spacing: "600 mm" },
        left: { at: null, first: "600 mm", spacing: "600 mm" },
        right: null,
        front: null,
        back: null,
      },
      speakers: [
        { ...overhead("TL", "", ""), on: "slope", at: { left: "900 mm", front: "2 m" } },
        { ...overhead("TR", "", ""), on: "slope", at: { right: "900 mm", front: "2 m" } },
        { id: "WL", model: "upright", on: "left", at: { front: "3300 mm", down: "1.2 m" } },
      ],
    }),
  "a tray in the middle": () =>
    job({
      room: {
        ceilings: [
          {
            name: "tray",
            corners: TRAY_CORNERS,
            height: "2800 mm",
          },
        ],
      },
      framing: { tray: { ...joists("front"), first: "600 mm", spacing: "600 mm" } },
      speakers: [
        overhead("TL", "500 mm", "2700 mm"),
        overhead("TB", "2 m", "5100 mm"),
        { ...overhead("IN-TRAY", "", ""), on: "tray", at: { left: "2 m", front: "2700 mm" } },
      ],
    }),
  "walls and joists at an angle": () =>
    job({
      ...ANGLED,
      framing: {
        ceiling: { ...joists("slant"), run: "along", at: null, first: "500 mm", spacing: "500 mm" },
        left: null,
        right: null,
        front: null,
        back: null,
      },
      speakers: [
        { ...overhead("TL", "", ""), at: { slant: "750 mm", back: "3 m" } },
        { ...overhead("TR", "", ""), at: { right: "900 mm", front: "2 m" } },
        { id: "WS", model: "upright", on: "slant", at: { back: "2 m", up: "1.2 m" } },
      ],
    }),
};

const joists = (from: string): Parts => ({
  run: "left-right",
  member: { width: "45 mm", depth: "220 mm" },
  from,
});
