import type { Parts } from "./build.js";

/*
 * A hall that asks for more than a run looks through: hundreds of loudspeakers under the narrowest of bays, among as many
 * obstructions as a file may hold, of which no two lie in one line.
 */

const WIDTH_MM = 40_000;
const LENGTH_MM = 60_000;
const NARROW = { at: null, first: "50 mm", spacing: "50 mm", member: { width: "10 mm", depth: "200 mm" } };
const NO_WALLS = { left: null, right: null, front: null, back: null };

/** Places that follow no grid. */
const scattered = (index: number, mostMm: number, byMm: number): number => (index * byMm) % mostMm;

const boxes: readonly Parts[] = Array.from({ length: 250 }, (_, index) => {
  const [left, front] = [scattered(index, 39_000, 7919), scattered(index, 59_000, 27_457)];
  return {
    ...{ name: `box ${index}`, on: "ceiling", corner: { left: `${left} mm`, front: `${front} mm` } },
    opposite: { left: `${left + 150 + (index % 97)} mm`, front: `${front + 150 + (index % 89)} mm` },
  };
});

const hall = (said: Parts): Parts => ({
  room: { width: `${WIDTH_MM} mm`, length: `${LENGTH_MM} mm`, height: "4 m" },
  framing: NO_WALLS,
  seats: [{ name: "middle", at: { left: "20 m", front: "30 m" }, ear: "1.2 m", reference: true }],
  ...said,
});

/** So many cables among the boxes, across joists that stand side by side. */
export const TOO_MANY_WAYS: Parts = hall({
  framing: { ...NO_WALLS, ceiling: NARROW },
  obstructions: boxes,
  equipment: { at: { left: "300 mm", front: "300 mm" }, up: "1 m" },
  speakers: Array.from({ length: 300 }, (_, index) => ({
    id: `S${index}`,
    at: {
      left: `${500 + scattered(index, 39_000, 5003)} mm`,
      front: `${500 + scattered(index, 59_000, 30_011)} mm`,
    },
  })),
});

/** Round ones side by side over the whole ceiling: between four of them lies a little room. */
const rounds: readonly Parts[] = Array.from({ length: 240 }, (_, index) => ({
  ...{ name: `round ${index}`, on: "ceiling", round: "3500 mm" },
  at: {
    left: `${1300 + 2600 * (index % 15)} mm`,
    front: `${1900 + 3750 * Math.floor(index / 15)} mm`,
  },
}));

const MODELS = 40;

/** So many best places among them, of models that are all of another size. */
export const TOO_MANY_PLACES: Parts = hall({
  framing: { ...NO_WALLS, ceiling: { at: null, first: "600 mm", spacing: "600 mm" } },
  obstructions: rounds,
  models: Object.fromEntries(
    Array.from({ length: MODELS }, (_, index) => [
      `size ${index}`,
      {
        opening: { round: `${160 + index} mm` },
        flange: { round: `${190 + index} mm` },
        ...{ depth: "90 mm", clamp_reach: "12 mm" },
      },
    ]),
  ),
  speakers: Array.from({ length: 200 }, (_, index) => ({
    ...{ id: `S${index}`, channel: index % 2 === 0 ? "U+045" : "U-045", at: "best" },
    model: `size ${index % MODELS}`,
  })),
});

/** The same at places that all lie under the rounds, so that each wants to be told another. */
export const TOO_MANY_TO_MOVE: Parts = {
  ...TOO_MANY_PLACES,
  speakers: Array.from({ length: 200 }, (_, index) => ({
    ...{ id: `S${index}`, model: `size ${index % MODELS}` },
    at: {
      left: `${1300 + 2600 * (index % 15)} mm`,
      front: `${1900 + 3750 * Math.floor(index / 15)} mm`,
    },
  })),
};

/** Four areas over each other under the rounds, the first of them in a corner that is soon filled. */
export const TOO_MUCH_TO_FILL: Parts = hall({
  framing: { ...NO_WALLS, ceiling: { at: null, first: "300 mm", spacing: "300 mm" } },
  obstructions: rounds,
  models: { round: { coverage: "90 deg", opening: { round: "120 mm" }, flange: { round: "140 mm" } } },
  areas: ["corner", "second", "third", "fourth"].map((name, index) => ({
    ...{ name, on: "ceiling", model: "round", ear: "1.2 m", spacing: "4.5 m", prefix: `P${index}-` },
    ...(index === 0 ? { corner: { left: "0", front: "0" }, opposite: { left: "3 m", front: "3 m" } } : {}),
  })),
});
