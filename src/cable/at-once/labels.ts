import { type Network, type Side, trackAt } from "./network.js";

/** In place of a track: the label says that a portal is reached. */
export const PORTAL = -1;

/** Costs that differ by no more are the same: what doubles make of sums in another order. */
export const SAME_MM = 1e-9;

/*
 * A window on a lane: the first and the last place of a track, or of what is between two; where and at what cost it is
 * reached before and after what was looked for there; the track.
 */
const LOW = 0;
const HIGH = 1;
const BEFORE_AT = 2;
const BEFORE_COST = 3;
const AFTER_AT = 4;
const AFTER_COST = 5;
const ITS_TRACK = 6;
const WINDOW = 8;
const FAR_MM = 1e9;

/* Figures of a label: what its place costs, and how its track counts that place. */
const COST = 0;
const AT = 1;
const FIGURES = 2;

/* Whole numbers of a label: the labels before and after it on its track, -1 for none; its track and its place. */
const BEFORE = 0;
const AFTER = 1;
const TRACK = 2;
const PLACE = 3;
const LINKS = 4;

/** A cost and the label that it comes from. */
export interface Reached {
  readonly cost: number;
  readonly label: number;
}

/**
 * What is known of the costs along tracks: each label says that a place of a track is reached at a cost, and from there
 * all of the track is, at the cost of what lies between. Those that no other one makes needless stand in order on their
 * track. They are hundreds of thousands, so that they are rows of figures, what is asked for together side by side.
 */
export class Labels {
  count = 0;
  private figures = new Float64Array(1024 * FIGURES);
  private links = new Int32Array(1024 * LINKS);
  /** The label from which it was reached, -1 for the start. */
  private from = new Int32Array(1024);
  /** The surface that it may enter besides those free to all, by its number from 1; 0 where none was entered yet. */
  private tag = new Int32Array(1024);
  /** 1 where another label has made it needless. */
  private gone = new Uint8Array(1024);
  /** Of each track the label that was looked at last, -1 for none: who asks next asks near to it. */
  private readonly recent: Int32Array;
  /** By lane: most who ask do so of the same track as the one before, and of a place between the same two labels. */
  private readonly windows: Float64Array;
  /** How many labels were passed while places were looked for. */
  passed = 0;
  /** The labels at both sides of the place that was looked for last, -1 for none; one at the place itself is after it. */
  private before = -1;
  private after = -1;

  constructor(private readonly network: Network) {
    const { tracks, sides } = network;
    this.recent = new Int32Array(tracks.side.length).fill(-1);
    const lanes = sides.reduce((sum, { acrossMm }) => sum + acrossMm.length, 0);
    // Of no place yet.
    this.windows = new Float64Array(lanes * WINDOW).fill(-1);
  }

  costOf = (label: number): number => this.figures[FIGURES * label + COST] ?? 0;
  placedAt = (label: number): number => this.figures[FIGURES * label + AT] ?? 0;
  trackOf = (label: number): number => this.links[LINKS * label + TRACK] ?? 0;
  placeOf = (label: number): number => this.links[LINKS * label + PLACE] ?? 0;
  nextOf = (label: number, step: 1 | -1): number =>
    this.links[LINKS * label + (step > 0 ? AFTER : BEFORE)] ?? -1;
  fromOf = (label: number): number => this.from[label] ?? -1;
  tagOf = (label: number): number => this.tag[label] ?? 0;
  isGone = (label: number): boolean => this.gone[label] === 1;

  /** The track that passes a place of a lane, where a cost there is less than what is known of it; else -1. */
  newsOn(side: Side, lane: number, place: number, at: number, cost: number): number {
    const { windows } = this;
    const window = WINDOW * (side.lanesBefore + lane);
    if (!(place >= (windows[window + LOW] ?? 0) && place <= (windows[window + HIGH] ?? 0))) {
      this.move(window, side, lane, place, at);
    } else if (!(at > (windows[window + BEFORE_AT] ?? 0) && at <= (windows[window + AFTER_AT] ?? 0))) {
      this.seek(windows[window + ITS_TRACK] ?? 0, at);
      this.show(window);
    }
    const most = cost + SAME_MM;
    return (windows[window + BEFORE_COST] ?? 0) + at - (windows[window + BEFORE_AT] ?? 0) > most &&
      (windows[window + AFTER_COST] ?? 0) + (windows[window + AFTER_AT] ?? 0) - at > most
      ? (windows[window + ITS_TRACK] ?? 0)
      : -1;
  }

  /** The least that is known of a place; null where it is not reached. */
  leastAt(track: number, at: number): Reached | null {
    this.seek(track, at);
    const sides = [this.before, this.after].filter((label) => label >= 0);
    const [one, other] = sides.map((label) => ({
      cost: this.costOf(label) + Math.abs(this.placedAt(label) - at),
      label,
    }));
    if (one === undefined) return null;
    return other !== undefined && other.cost < one.cost ? other : one;
  }

  /** Puts a label in its place that is news; what it makes needless goes. */
  put(track: number, place: number, at: number, cost: number, from: number, tag: number): number {
    this.seek(track, at);
    const added = this.add(track, place, at, cost, from, tag);
    const { figures, links, gone } = this;
    let { before, after } = this;
    const isNeedless = (other: number): boolean =>
      other >= 0 &&
      cost + Math.abs(at - (figures[FIGURES * other + AT] ?? 0)) <= (figures[FIGURES * other + COST] ?? 0);
    for (; isNeedless(before); before = links[LINKS * before + BEFORE] ?? -1) gone[before] = 1;
    for (; isNeedless(after); after = links[LINKS * after + AFTER] ?? -1) gone[after] = 1;
    links[LINKS * added + BEFORE] = before;
    links[LINKS * added + AFTER] = after;
    if (before >= 0) links[LINKS * before + AFTER] = added;
    if (after >= 0) links[LINKS * after + BEFORE] = added;
    this.recent[track] = added;
    const { tracks, sides } = this.network;
    const window = WINDOW * ((sides[tracks.side[track] ?? 0]?.lanesBefore ?? 0) + (tracks.lane[track] ?? 0));
    if (this.windows[window + ITS_TRACK] !== track) return added;
    this.before = added;
    this.after = after;
    this.show(window);
    return added;
  }

  /** A label that stands in no order. */
  add(track: number, place: number, at: number, cost: number, from: number, tag: number): number {
    const label = this.count;
    if (label === this.from.length) this.grow();
    this.count += 1;
    this.figures[FIGURES * label + COST] = cost;
    this.figures[FIGURES * label + AT] = at;
    this.links[LINKS * label + BEFORE] = -1;
    this.links[LINKS * label + AFTER] = -1;
    this.links[LINKS * label + TRACK] = track;
    this.links[LINKS * label + PLACE] = place;
    this.from[label] = from;
    this.tag[label] = tag;
    return label;
  }

  /** Opens a lane's window on the track that passes a place, or on what shuts it there: nothing is news to that. */
  private move(window: number, side: Side, lane: number, place: number, at: number): void {
    const { windows } = this;
    const { tracks } = this.network;
    const [first, end] = [side.firstTrack[lane] ?? 0, side.firstTrack[lane + 1] ?? 0];
    const track = trackAt(tracks, side, lane, place);
    if (track < end && place >= (tracks.low[track] ?? 0)) {
      windows[window + LOW] = tracks.low[track] ?? 0;
      windows[window + HIGH] = tracks.high[track] ?? 0;
      windows[window + ITS_TRACK] = track;
      this.seek(track, at);
      this.show(window);
      return;
    }
    windows[window + LOW] = track > first ? (tracks.high[track - 1] ?? 0) + 1 : 0;
    windows[window + HIGH] = track < end ? (tracks.low[track] ?? 0) - 1 : side.alongMm.length;
    windows[window + BEFORE_AT] = -FAR_MM;
    windows[window + BEFORE_COST] = Number.NEGATIVE_INFINITY;
    windows[window + AFTER_AT] = FAR_MM;
    windows[window + AFTER_COST] = Number.NEGATIVE_INFINITY;
    windows[window + ITS_TRACK] = -1;
  }

  private show(window: number): void {
    const { windows, figures, before, after } = this;
    windows[window + BEFORE_AT] = before < 0 ? -FAR_MM : (figures[FIGURES * before + AT] ?? 0);
    windows[window + BEFORE_COST] =
      before < 0 ? Number.POSITIVE_INFINITY : (figures[FIGURES * before + COST] ?? 0);
    windows[window + AFTER_AT] = after < 0 ? FAR_MM : (figures[FIGURES * after + AT] ?? 0);
    windows[window + AFTER_COST] =
      after < 0 ? Number.POSITIVE_INFINITY : (figures[FIGURES * after + COST] ?? 0);
  }

  private seek(track: number, at: number): void {
    const { figures, links, recent } = this;
    const start = recent[track] ?? -1;
    let before = start;
    let after = -1;
    if (start >= 0 && (figures[FIGURES * start + AT] ?? 0) >= at) {
      after = start;
      before = links[LINKS * after + BEFORE] ?? -1;
      while (before >= 0 && (figures[FIGURES * before + AT] ?? 0) >= at) {
        after = before;
        before = links[LINKS * after + BEFORE] ?? -1;
        this.passed += 1;
      }
      recent[track] = after;
    } else if (start >= 0) {
      after = links[LINKS * before + AFTER] ?? -1;
      while (after >= 0 && (figures[FIGURES * after + AT] ?? 0) < at) {
        before = after;
        after = links[LINKS * before + AFTER] ?? -1;
        this.passed += 1;
      }
      recent[track] = before;
    }
    this.before = before;
    this.after = after;
  }

  private grow(): void {
    const size = 4 * this.from.length;
    const whole = (old: Int32Array, width = 1): Int32Array<ArrayBuffer> => {
      const grown = new Int32Array(size * width);
      grown.set(old);
      return grown;
    };
    const figures = new Float64Array(size * FIGURES);
    figures.set(this.figures);
    this.figures = figures;
    const gone = new Uint8Array(size);
    gone.set(this.gone);
    this.gone = gone;
    this.links = whole(this.links, LINKS);
    this.from = whole(this.from);
    this.tag = whole(this.tag);
  }
}
