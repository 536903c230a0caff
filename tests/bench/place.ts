import { mountedIn } from "../../src/listen/mounted.js";
import { fillAreas } from "../../src/place/cover/fill.js";
import { placeAll } from "../../src/place/place.js";
import type { Room } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";
import { STRAIGHT } from "../rooms/halls.js";

/*
 * How long placing takes: eleven loudspeakers of system 4+7+0 in a den, the first time in a process and when warm, and
 * 400 overhead in a hall under a hundred joists; then areas that are filled evenly, with ever more. Times are of this process's own work as well as by the clock, since a
 * busy machine stretches the clock. Not a test: figures of a machine prove nothing.
 */

const WALL: Readonly<Record<string, string>> = {
  "M+000": "front",
  "M+030": "front",
  "M-030": "front",
  "M+090": "left",
  "M+135": "left",
  "M-090": "right",
  "M-135": "right",
};

const paired = (channel: string): Parts => ({
  id: channel.replace("+", "L").replace("-", "R"),
  channel,
  on: WALL[channel] ?? "ceiling",
  model: channel in WALL ? "upright" : "tilted",
  at: "best",
  ...(channel === "M+000" ? {} : { mirror: channel.replace(/\+/u, "R").replace(/-/u, "L") }),
});

const eleven = (): Room =>
  room({
    layout: "4+7+0",
    speakers: [...Object.keys(WALL), "U+045", "U-045", "U+135", "U-135"].map(paired),
  });

/** In a hundred rows held from the front, or all as they like. */
const hall = (held: boolean): Room =>
  room({
    room: { width: "40 m", length: "60 m", height: "9 m" },
    framing: {
      ceiling: { at: Array.from({ length: 100 }, (_, index) => `${600 * (index + 1)} mm`) },
      left: null,
      right: null,
      front: null,
      back: null,
    },
    seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
    speakers: Array.from({ length: 400 }, (_, index) => ({
      id: `S${index}`,
      channel: ["U+045", "U-045", "U+135", "U-135"][index % 4] ?? "",
      model: "tilted",
      at: "best",
      ...(held ? { hold: { front: `${300 + 600 * Math.floor(index / 4)} mm` } } : {}),
    })),
  });

/** The same hall in part or all of its length, filled evenly. */
const filled = (pattern: string, lengthM: number): Room =>
  room({
    room: { width: "40 m", length: `${lengthM} m`, height: "4 m" },
    framing: {
      ceiling: {
        at: [
          ...Array.from({ length: Math.floor(lengthM / 0.6) }, (_, index) => 600 * (index + 1)),
          1000 * lengthM,
        ]
          .filter((at, index, all) => at !== all[index - 1])
          .map((at) => `${at} mm`),
      },
      left: null,
      right: null,
      front: null,
      back: null,
    },
    models: { straight: { ...STRAIGHT, coverage: "110 deg" } },
    seats: [{ name: "middle", at: { left: "20 m", front: "5 m" }, ear: "1.2 m", reference: true }],
    areas: [{ name: "hall", on: "ceiling", model: "straight", ear: "1.2 m", pattern, spacing: "2.6 m" }],
  });

const placeThem = (one: Room): number => placeAll(one).placed.length;
const fillThem = (one: Room): number =>
  fillAreas(one, mountedIn(one)).reduce(
    (sum, filling) => sum + (filling.kind === "filled" ? filling.places.length : 0),
    0,
  );

function timed(what: string, one: Room, place = placeThem): void {
  const [work, clock] = [process.cpuUsage(), performance.now()];
  const placed = place(one);
  const { user, system } = process.cpuUsage(work);
  const clockMs = performance.now() - clock;
  const workMs = (user + system) / 1000;
  process.stdout.write(
    `${what}: ${workMs.toFixed(0)} ms of work, ${clockMs.toFixed(0)} ms by the clock, ${placed} placed\n`,
  );
}

timed("eleven, the first time", eleven());
for (let round = 0; round < 20; round += 1) placeAll(eleven());
timed("eleven, warm", eleven());
timed("400 in rows", hall(true));
timed("400 free, a hundred for each direction", hall(false));
for (const pattern of ["square", "hexagon"]) {
  for (const lengthM of [15, 30, 60])
    timed(`${pattern}, ${lengthM} m of hall`, filled(pattern, lengthM), fillThem);
}
