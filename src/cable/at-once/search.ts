import type { Effort } from "../../effort.js";
import { countBelow } from "../../geometry/ascending.js";
import type { Spot } from "../lanes.js";
import { TURN_COSTS_MM } from "../network.js";
import { type Exit, type Exits, turnsOnto } from "./exits.js";
import { Heap } from "./heap.js";
import { Labels, PORTAL, type Reached, SAME_MM } from "./labels.js";
import { type Meeting, type Network, placedAt, spotAt, tracksThrough } from "./network.js";

/** What it takes to come to a label, next to passing a place on the way along its track. */
const LOOKS_FOR_ONE = 4;

/** So many labels are passed in the time of a look. */
const LABELS_FOR_ONE_LOOK = 8;

/** After so many looks it is first asked whether everything is known that was to be, then after twice as many. */
const FIRST_ASKED = 4096;

/*
 * Least costs through a network, as Dijkstra's algorithm finds them, but by tracks instead of by meetings: what is
 * reached at one place of a track is reached all along it. So a track holds a few labels, and at a meeting it takes one
 * look to see that a turn there is worth nothing.
 */
export class Search {
  private readonly labels: Labels;
  private readonly heap = new Heap();
  /** By track, labels of cables to a surface closed to others that have come out of it again: others stand above them. */
  private readonly strays = new Map<number, number[]>();
  private readonly portalCost: Float64Array;
  private readonly strayPortalCost = new Map<string, number>();
  /** Ways to where the network is come onto, by the label that says so. */
  private readonly starts = new Map<number, readonly Spot[]>();

  /**
   * `closedTo`: by field 0 where all cables may go, else a number of its own for a surface that only cables to it may
   * enter.
   */
  constructor(
    private readonly network: Network,
    private readonly closedTo: readonly number[],
    private readonly effort: Effort,
  ) {
    this.labels = new Labels(network);
    this.portalCost = new Float64Array(network.portals.length).fill(Number.POSITIVE_INFINITY);
  }

  /** Sets out from where the network is reached. */
  startFrom({ exits }: Exits): void {
    for (const exit of exits) {
      const { meeting, cost, way } = exit;
      const [u, v] = tracksThrough(this.network, meeting);
      const tag = this.tagOf(meeting.field);
      const first = this.labels.count;
      if (u >= 0) this.reach(u, meeting.column, cost + turnsOnto(exit, "u"), -1, tag);
      if (v >= 0) this.reach(v, meeting.row, cost + turnsOnto(exit, "v"), -1, tag);
      for (let label = first; label < this.labels.count; label += 1) this.starts.set(label, way);
    }
  }

  /** Looks until the least to all of these is known, or to everywhere. */
  run(goals: readonly Exits[]): void {
    const { heap, labels, effort } = this;
    let looks = 0;
    let askedAt = FIRST_ASKED;
    while (heap.leastKey < Number.POSITIVE_INFINITY) {
      looks += 1;
      effort.spend(LOOKS_FOR_ONE + labels.passed / LABELS_FOR_ONE_LOOK);
      labels.passed = 0;
      if (looks === askedAt) {
        if (goals.every((goal) => (this.leastTo(goal)?.cost ?? Number.POSITIVE_INFINITY) <= heap.leastKey))
          return;
        effort.spend(goals.length);
        askedAt *= 2;
      }
      const label = heap.pop();
      if (labels.isGone(label)) continue;
      if (labels.trackOf(label) === PORTAL) this.passPortal(label);
      else this.goAlong(label);
    }
  }

  /** The spots at which the least way to one of these exits and on to their spot turns; null where none leads there. */
  wayTo(goal: Exits): readonly Spot[] | null {
    const least = this.leastTo(goal);
    if (least === null) return null;
    const { exit, label } = least;
    return [...this.wayToLabel(label), spotAt(this.network.sides, exit.meeting), ...[...exit.way].reverse()];
  }

  /** The least to one of these exits and on to their spot. */
  private leastTo({ exits }: Exits): (Reached & { readonly exit: Exit }) | null {
    let best: (Reached & { readonly exit: Exit }) | null = null;
    for (const exit of exits) {
      const [u, v] = tracksThrough(this.network, exit.meeting);
      const found = [
        { reached: this.leastAt(u, exit.meeting.column), turns: turnsOnto(exit, "u") },
        { reached: this.leastAt(v, exit.meeting.row), turns: turnsOnto(exit, "v") },
      ];
      for (const { reached, turns } of found) {
        const cost = reached === null ? Number.POSITIVE_INFINITY : reached.cost + turns + exit.cost;
        if (reached !== null && (best === null || cost < best.cost - SAME_MM)) {
          best = { cost, label: reached.label, exit };
        }
      }
    }
    return best;
  }

  private leastAt(track: number, place: number): Reached | null {
    return track < 0 ? null : this.labels.leastAt(track, this.atOf(track, place));
  }

  /** The spots at which the way to a label turns, from the start to its own. */
  private wayToLabel(label: number): readonly Spot[] {
    const way: Spot[] = [];
    let first = label;
    for (let at = label; at >= 0; at = this.labels.fromOf(at)) {
      way.push(spotAt(this.network.sides, this.meetingOf(at)));
      first = at;
    }
    return [...(this.starts.get(first) ?? []), ...way.reverse()];
  }

  private tagOf(field: number): number {
    return this.closedTo[field] ?? 0;
  }

  /** How a track counts a place. */
  private atOf(track: number, place: number): number {
    const { sides, tracks } = this.network;
    const side = sides[tracks.side[track] ?? -1];
    return side === undefined ? 0 : placedAt(side, tracks.lane[track] ?? 0, place);
  }

  private meetingOf(label: number): Meeting {
    const { tracks, portals } = this.network;
    const [track, place] = [this.labels.trackOf(label), this.labels.placeOf(label)];
    if (track === PORTAL) {
      const portal = portals[place];
      if (portal === undefined) throw new RangeError(`no portal ${place}`);
      return portal.meeting;
    }
    const [side, lane] = [tracks.side[track] ?? 0, tracks.lane[track] ?? 0];
    return side % 2 === 0
      ? { field: side >> 1, column: place, row: lane }
      : { field: side >> 1, column: lane, row: place };
  }

  /** Comes onto both tracks of a meeting, by a way on which that is no turn. */
  private enter(meeting: Meeting, cost: number, from: number, tag: number): void {
    const [u, v] = tracksThrough(this.network, meeting);
    if (u >= 0) this.reach(u, meeting.column, cost, from, tag);
    if (v >= 0) this.reach(v, meeting.row, cost, from, tag);
  }

  /** Comes onto a track at a place of it; nothing where that costs no less than what is known. */
  private reach(track: number, place: number, cost: number, from: number, tag: number): void {
    const { sides, tracks } = this.network;
    const side = sides[tracks.side[track] ?? 0];
    if (side === undefined) return;
    const lane = tracks.lane[track] ?? 0;
    const at = placedAt(side, lane, place);
    if (this.labels.newsOn(side, lane, place, at, cost) >= 0) this.note(track, place, at, cost, from, tag);
  }

  /** Right after it was found to be news. */
  private note(track: number, place: number, at: number, cost: number, from: number, tag: number): void {
    const { labels } = this;
    if (tag === this.tagOf((this.network.tracks.side[track] ?? 0) >> 1)) {
      this.heap.push(labels.put(track, place, at, cost, from, tag), cost);
      return;
    }
    const strays = this.strays.get(track) ?? [];
    const isKnown = strays.some(
      (stray) =>
        labels.tagOf(stray) === tag &&
        labels.costOf(stray) + Math.abs(labels.placedAt(stray) - at) <= cost + SAME_MM,
    );
    if (isKnown) return;
    const added = labels.add(track, place, at, cost, from, tag);
    this.strays.set(track, [...strays, added]);
    this.heap.push(added, cost);
  }

  /** Along its track both ways as far as no other label knows better, turning where that is worth something. */
  private goAlong(label: number): void {
    const { labels } = this;
    const { tracks, portalsOn } = this.network;
    const track = labels.trackOf(label);
    const low = this.goOneWay(label, -1, tracks.low[track] ?? 0);
    const high = this.goOneWay(label, 1, tracks.high[track] ?? 0);
    const on = portalsOn.get(track);
    if (on === undefined) return;
    for (let index = countBelow(on.places, low); index < on.places.length; index += 1) {
      const place = on.places[index] ?? 0;
      if (place > high) break;
      const cost = labels.costOf(label) + Math.abs(this.atOf(track, place) - labels.placedAt(label));
      this.reachPortal(on.portals[index] ?? 0, cost, label, labels.tagOf(label));
    }
  }

  /** Gives back the last place up to which the label is the one that counts. */
  private goOneWay(label: number, step: 1 | -1, end: number): number {
    const { labels, network, effort } = this;
    const track = labels.trackOf(label);
    const place = labels.placeOf(label);
    const number = network.tracks.side[track] ?? 0;
    const [side, other] = [network.sides[number], network.sides[number ^ 1]];
    if (side === undefined || other === undefined) return place;
    const lane = network.tracks.lane[track] ?? 0;
    const laneMm = side.acrossMm[lane] ?? 0;
    const { alongMm } = side;
    const { stepOf, sums, lanes } = side.tolls;
    const otherSums = other.tolls.sums;
    const otherRow = (other.tolls.stepOf[lane] ?? 0) * other.tolls.lanes;
    const [own, cost, tag] = [labels.placedAt(label), labels.costOf(label), labels.tagOf(label)];
    const next = labels.nextOf(label, step);
    const [nextPlace, nextCost, nextAt] =
      next < 0 ? [-1, 0, 0] : [labels.placeOf(next), labels.costOf(next), labels.placedAt(next)];
    for (let there = place; ; there += step) {
      const at = (alongMm[there] ?? 0) + (sums[(stepOf[there] ?? 0) * lanes + lane] ?? 0);
      const reached = cost + Math.abs(at - own);
      if (next >= 0 && (there === nextPlace || nextCost + Math.abs(nextAt - at) <= reached)) {
        effort.spend(Math.abs(there - place));
        return there - step;
      }
      const crossedAt = laneMm + (otherSums[otherRow + there] ?? 0);
      const turned = reached + TURN_COSTS_MM;
      const crossed = labels.newsOn(other, there, lane, crossedAt, turned);
      if (crossed >= 0) this.note(crossed, lane, crossedAt, turned, label, tag);
      if (there === end) {
        effort.spend(Math.abs(there - place));
        return there;
      }
    }
  }

  private reachPortal(portal: number, cost: number, from: number, tag: number): void {
    const meeting = this.network.portals[portal]?.meeting;
    if (meeting === undefined) return;
    const most = cost + SAME_MM;
    if ((this.portalCost[portal] ?? 0) <= most) return;
    if (tag === this.tagOf(meeting.field)) this.portalCost[portal] = cost;
    else {
      const key = `${portal} ${tag}`;
      if ((this.strayPortalCost.get(key) ?? Number.POSITIVE_INFINITY) <= most) return;
      this.strayPortalCost.set(key, cost);
    }
    this.heap.push(this.labels.add(PORTAL, portal, 0, cost, from, tag), cost);
  }

  /** To the surfaces beyond it; where it was come to from one of them, onto its own. */
  private passPortal(label: number): void {
    const { labels } = this;
    const portal = this.network.portals[labels.placeOf(label)];
    if (portal === undefined) return;
    const [cost, tag, from] = [labels.costOf(label), labels.tagOf(label), labels.fromOf(label)];
    if (from >= 0 && labels.trackOf(from) === PORTAL) this.enter(portal.meeting, cost, label, tag);
    for (const { to, costMm } of portal.ways) {
      const beyond = this.tagOf(this.network.portals[to]?.meeting.field ?? 0);
      if (beyond !== 0 && tag !== 0 && beyond !== tag) continue;
      this.reachPortal(to, cost + costMm, label, beyond === 0 ? tag : beyond);
    }
  }
}
