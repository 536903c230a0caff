import fc from "fast-check";
import { UndirectedGraph } from "graphology";
import dijkstra from "graphology-shortest-path/dijkstra.js";

/*
 * Against a general graph library: a grid of 100 mm over the ceiling and the walls of the plain room, its links by
 * arithmetic of our own, its shortest way by Dijkstra's algorithm of that library. Rack, loudspeaker and the blocks'
 * sides lie on the grid and off the wood, so that the shortest way among ours is the shortest there.
 */

/** Out of a wall and in over a ceiling. */
export const ROUND_CORNER_MM = 170;

export const STEP = 100;
export const HOLE = 1e-3;

export interface Block {
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

interface Sheet {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

const RIGHT: Sheet = { name: "right", widthMm: 6000, heightMm: 2600 };
const FRONT: Sheet = { name: "front", widthMm: 4000, heightMm: 2600 };

export const inWood = (mm: number): boolean => mm % 600 === 0 && mm > 0;
export const key = (name: string, u: number, v: number): string => `${name} ${u} ${v}`;

/** Holes of a step from `low` to `low + STEP` across members every 600 mm, and at the end of the room. */
const woodBetween = (low: number): number => (low > 0 && low % 600 === 0 ? 1 : 0);

export function grid(blocks: readonly Block[]): UndirectedGraph {
  const graph = new UndirectedGraph();
  const link = (a: string, b: string, cost: number): void => {
    graph.mergeNode(a);
    graph.mergeNode(b);
    graph.mergeEdge(a, b, { weight: cost });
  };
  const isFree = (u: number, v: number): boolean =>
    !blocks.some((block) => u > block.u[0] && u < block.u[1] && v > block.v[0] && v < block.v[1]);
  // The ceiling: u from the right wall, v from the back; joists along u at 600 mm from the front, one at the back.
  for (let u = 0; u <= 4000; u += STEP) {
    for (let v = 0; v <= 6000; v += STEP) {
      const along = !inWood(6000 - v) && isFree(u + STEP / 2, v);
      if (u < 4000 && along) link(key("ceiling", u, v), key("ceiling", u + STEP, v), STEP);
      if (v < 6000 && isFree(u, v + STEP / 2)) {
        // A joist at v belongs to the step that begins there.
        const joist = v % 600 === 0 ? 1 : 0;
        link(key("ceiling", u, v), key("ceiling", u, v + STEP), STEP + joist * HOLE);
      }
    }
  }
  // Walls: studs every 600 mm from the front (right wall, u from the front) and from the left (front wall, u from there).
  for (const wall of [RIGHT, FRONT]) {
    for (let u = 0; u <= wall.widthMm; u += STEP) {
      for (let v = 0; v <= wall.heightMm; v += STEP) {
        const across = v > 0 && v < wall.heightMm && u < wall.widthMm;
        const stud = woodBetween(u) + (u === 0 ? 1 : 0);
        if (across) link(key(wall.name, u, v), key(wall.name, u + STEP, v), STEP + stud * HOLE);
        const up = v < wall.heightMm && !inWood(u) && u > 0 && u < wall.widthMm;
        // Two top plates between 2500 and 2600, one bottom plate between 0 and 100.
        const plates = v === wall.heightMm - STEP ? 2 : v === 0 ? 1 : 0;
        if (up) link(key(wall.name, u, v), key(wall.name, u, v + STEP), STEP + plates * HOLE);
      }
    }
  }
  for (let u = 0; u <= 6000; u += STEP) {
    link(key("right", u, 2600), key("ceiling", 0, 6000 - u), ROUND_CORNER_MM);
  }
  for (let u = 0; u <= 4000; u += STEP) {
    link(key("front", u, 2600), key("ceiling", 4000 - u, 6000), ROUND_CORNER_MM);
  }
  return graph;
}

export function costByLibrary(graph: UndirectedGraph, from: string, to: string): number | null {
  if (!graph.hasNode(from) || !graph.hasNode(to)) return null;
  const way = dijkstra.bidirectional(graph, from, to, "weight");
  if (way === null) return null;
  return way.slice(1).reduce((sum, node, index) => {
    const edge = graph.edge(way[index], node);
    return sum + Number(graph.getEdgeAttribute(edge, "weight"));
  }, 0);
}

/** A place on the grid that stands in no wood, counted from where the members are. */
export const place = (mostMm: number) =>
  fc
    .integer({ min: 1, max: mostMm / STEP - 1 })
    .map((steps) => STEP * steps)
    .filter((mm) => !inWood(mm));

export const block = fc
  .record({
    left: place(3600),
    front: place(5200),
    width: fc.integer({ min: 1, max: 12 }),
    length: fc.integer({ min: 1, max: 12 }),
  })
  .map(({ left, front, width, length }) => ({
    left,
    front,
    right: left + width * STEP,
    back: front + length * STEP,
  }))
  .filter(({ right, back }) => right < 4000 && back < 6000 && !inWood(back));
