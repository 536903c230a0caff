/**
 * A room of our own that uses every key of format 1 at least once. Beyond one measured wall, one laid-out ceiling and
 * one wall of unknown framing it says nothing special: tests change single lines of it.
 */
export const FULL_ROOM = `baymark: 1
job:
  name: Willow Bend snug
  number: 007
  revision: 1.10
  date: 2026-03-04
units: imperial
call: Office, 555-0117

room:
  width: 13' 4"
  length: 18' 8"
  height: 8' 6"
  measured_to: framing
board: { ceiling: 5/8", walls: 1/2" }
floor: { build_up: 3/4" }
stage: { walls: both }

framing:
  ceiling: { run: left-right, member: 2x8, from: front, first: 15 1/4", spacing: 16", mark: near-edge, cavity: open }
  left:    { member: 2x4, from: front, first: 16", spacing: 16", plates: { below: 1, above: 2, thickness: 1 1/2" }, end_studs: true, found: [{ member: 2, at: 33 1/4", by: framing lead, on: 2026-03-05 }, { from: 4, to: 5, shift: -1/2", by: framing lead, on: 2026-03-06 }] }
  right:   { member: 2x4, from: front, at: [14", 30 1/2", 46"], cavity: 3" }
  front:   { member: { width: 1 1/2", depth: 5 1/2" }, from: left, first: 16", spacing: 24" }

surfaces:
  ceiling: { rated: true, enclosure: true, insulation: mineral wool, second_support: false }

obstructions:
  - { name: return duct, on: ceiling, corner: { left: 2' 2", front: 13' }, opposite: { left: 3' 4", back: 0 }, keep: 2" }
  - { name: recessed light, on: ceiling, at: { right: 6' 8", front: 6' }, round: 6", keep: 6", behind: 1" }
  - { name: outlet, on: front, at: { left: 5', up: 14" }, round: 4" }

models:
  overhead-6:
    opening: { round: 8 1/4" }
    flange: { round: 9 3/8" }
    depth: 6 1/8"
    clamp_reach: 5/8"
    board_range: [3/8", 1 1/4"]
    baffle_tilt: 20 deg
    coverage: 100 deg
    sensitivity: 88 dB
    impedance: 8 ohm
    minimum_impedance: 6.1 ohm
    power: 120 W
    weight: 7 lb
    terminal: spring clip
    strip: 3/8"
    conductors:
      - { colour: red, terminal: "+", sign: "+" }
      - { colour: black, terminal: "-", sign: "-" }
  wall-6:
    opening: { width: 7 7/8", height: 12" }
    flange: { width: 8 7/8", height: 13" }
    depth: 3 5/8"
    clamp_reach: 1/2"
  round-5:
    opening: { round: 6 1/4" }
    flange: { round: 7 1/2" }
    depth: 4 3/4"
    clamp_reach: 9/16"
    coverage: 90 deg

seats:
  - { name: middle, at: { left: 6' 8", front: 9' }, ear: 42", reference: true }
  - { name: left, at: { left: 4', back: 9' 8" }, ear: 42" }

layout: J
speakers:
  - { id: FL, channel: M+030, model: wall-6, on: front, at: { left: 3' 6", up: 42" }, amplifier: A1, cable: { gauge: 14, conductors: 4, length: 32', wiring: doubled, via: [{ on: ceiling, at: { left: 6', front: 2' } }] } }
  - { id: FR, channel: M-030, model: wall-6, on: front, at: { right: 3' 6", down: 60" }, turn: 90 deg, aim: left }
  - { id: TFL, channel: U+045, model: overhead-6, on: ceiling, at: best, mirror: TFR }
  - { id: TFR, channel: U-045, model: overhead-6, on: ceiling, at: best, mirror: TFL }
  - { id: SL, channel: M+090, model: wall-6, on: left, at: best, hold: { up: 48" }, aim: none }
  - { id: SR, channel: M-090, model: wall-6, on: right, at: { front: 10', up: 48" }, aim: { left: 5', front: 9', up: 40" } }
  - { id: TBL, channel: U+135, model: overhead-6, on: ceiling, at: { left: 4', back: 5' }, aim: { at: { left: 5', front: 9' }, up: 40" } }
  - { id: H1, area: alcove, model: round-5, on: ceiling, at: { left: 10', back: 4' } }

equipment: { at: { right: 0, back: 2' }, up: 24" }
cable: { loss: 0.5 dB, loop: 3', spare: 5%, gauges: [16, 14, 12], rack_loop: 6', sizes: [2.5 mm2], wiring: single, temperature: 25 C, spools: [500'], avoid: [{ on: ceiling, corner: { left: 1', front: 2' }, opposite: { left: 3', front: 5' } }] }
checks: { clear: 3/8", tolerance: 4 deg, joint: 3 deg }
accept: [{ code: opening-near-member, speaker: SL, why: "block removed by the carpenter, seen 3-02" }]
labels:
  stock: { page: A4, label: { width: 48 mm, height: 20 mm }, columns: 4, rows: 13, left: 8 mm, top: 15 mm, pitch: { across: 49 mm, down: 20.5 mm }, kind: wrap, printed: 12 mm }
  used: 5
  cable_diameter: 7 mm
print: { paper: letter, languages: [en, es] }
areas:
  - { name: alcove, on: ceiling, model: round-5, corner: { left: 8', back: 6' }, opposite: { right: 0, back: 0 }, pattern: hexagon, spacing: double, ear: 44", prefix: H }
  - { name: rest, on: ceiling, model: round-5, corners: [{ left: 0, front: 0 }, { right: 0, front: 0 }, { left: 0, back: 0 }], pattern: square, spacing: 6' 6", ear: 44", prefix: R }
  - { name: whole, on: ceiling, model: round-5, ear: 44" }
listening: { temperature: 68 F, target: 82 dB, headroom: 18 dB }
`;

/** The full room with one piece of its text changed. Throws where the piece is not there exactly once. */
export function changed(from: string, to: string): string {
  const pieces = FULL_ROOM.split(from);
  if (pieces.length !== 2) throw new Error(`${pieces.length - 1} times in the room: ${from}`);
  return pieces.join(to);
}

/** Line of the full room in which the text stands, and its column there. */
export function placeOf(text: string): { line: number; column: number } {
  const lines = FULL_ROOM.split("\n");
  const index = lines.findIndex((line) => line.includes(text));
  return { line: index + 1, column: (lines[index] ?? "").indexOf(text) + 1 };
}
