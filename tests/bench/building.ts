import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/*
 * A building of invented rooms, each with four loudspeakers overhead, no two rooms alike: sides, members and places
 * change from room to room by steps that have no common measure. By its number a room is always the same.
 */

const step = (index: number, factor: number, span: number): number => (index * factor) % span;

/** The room file of a room, by its number in the building. */
export function buildingRoom(index: number): string {
  const width = 3600 + step(index, 73, 900);
  const length = 4800 + step(index, 131, 1700);
  const first = 300 + step(index, 17, 110);
  const bay = (count: number): number => first + 400 * count + 200;
  const front = bay(2 + step(index, 1, 2));
  const back = bay(8 + step(index, 1, 3));
  const side = 900 + step(index, 11, 200);
  return `baymark: 1
job: { name: "Tern House room ${index + 1}", number: "TH-${String(index + 1).padStart(3, "0")}", revision: A }
units: metric
room: { width: ${width} mm, length: ${length} mm, height: 2700 mm, measured_to: framing }
board: { ceiling: 15 mm, walls: 12.5 mm }
framing:
  ceiling: { run: left-right, from: front, member: { width: 45 mm, depth: 220 mm }, first: ${first} mm, spacing: 400 mm }
models:
  overhead:
    opening: { round: 210 mm }
    flange: { round: 238 mm }
    depth: 165 mm
    clamp_reach: 16 mm
    baffle_tilt: 25 deg
    coverage: 100 deg
    impedance: 8 ohm
seats:
  - { name: middle, at: { left: ${Math.round(width / 2)} mm, front: ${Math.round(length * 0.6)} mm }, ear: 1150 mm, reference: true }
speakers:
  - { id: FL, channel: U+045, model: overhead, on: ceiling, at: { left: ${side} mm, front: ${front} mm } }
  - { id: FR, channel: U-045, model: overhead, on: ceiling, at: { right: ${side} mm, front: ${front} mm } }
  - { id: BL, channel: U+135, model: overhead, on: ceiling, at: { left: ${side} mm, front: ${back} mm } }
  - { id: BR, channel: U-135, model: overhead, on: ceiling, at: { right: ${side} mm, front: ${back} mm } }
equipment: { at: { right: 0, back: 600 mm }, up: 600 mm }
print: { paper: A4, languages: [en] }
`;
}

/** Writes the first rooms of the building into a folder; their files. */
export function writeBuilding(folder: string, rooms: number): readonly string[] {
  mkdirSync(folder, { recursive: true });
  return Array.from({ length: rooms }, (_, index) => {
    const file = join(folder, `room-${String(index + 1).padStart(3, "0")}.yaml`);
    writeFileSync(file, buildingRoom(index));
    return file;
  });
}
