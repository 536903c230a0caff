/*
 * What must hold of a room file into which places were written, told from the two texts alone: only `best` became two
 * tapes, only whole loudspeakers came at one place, and every other character is as it was.
 */
import { type Document, isMap, isScalar, isSeq, parseDocument } from "yaml";

function refuse(what: string, shown: string): never {
  throw new Error(`${what}:\n${shown.slice(0, 4000)}`);
}

/** A piece of a text. */
interface Piece {
  readonly from: number;
  readonly to: number;
}

const MARK = "\ufeff";

/** How many places were written and loudspeakers added. */
export function holdsOfFrozen(before: Uint8Array, after: Uint8Array): number {
  const [old, now] = [textOf(before), textOf(after)];
  if (old.startsWith(MARK) !== now.startsWith(MARK)) refuse("another mark at the beginning", now);
  const [was, is] = [documentOf(old), documentOf(now)];
  const [placesBefore, placesAfter] = [placesIn(was), placesIn(is)];
  const given = placesBefore.flatMap((place, index) => {
    const other = placesAfter[index];
    if (other === undefined) refuse("a loudspeaker is gone", now);
    return place.says === other.says ? [] : [{ place, other }];
  });
  for (const { place, other } of given)
    if (place.says !== "best" || !other.isTapes) refuse("something else than `best` was written over", now);
  const outsideBefore = without(
    old,
    given.map(({ place }) => place),
  );
  const outsideAfter = without(
    now,
    given.map(({ other }) => other),
  );
  const added = placesAfter.length - placesBefore.length;
  holdsOfOutside(outsideBefore, outsideAfter, added);
  holdsOfValues(was, is, placesBefore.length);
  return given.length + added;
}

/** As the program reads it: a carriage return alone ends a line. */
const textOf = (bytes: Uint8Array): string =>
  new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);

function documentOf(text: string): Document {
  const document = parseDocument(text.replace(/\r(?!\n)/gu, "\n"), { uniqueKeys: false });
  if (document.errors.length > 0) refuse("no YAML", `${document.errors.join("\n")}\n${text}`);
  return document;
}

interface Place extends Piece {
  readonly says: string;
  readonly isTapes: boolean;
}

/** What stands behind the `at` of each loudspeaker. */
function placesIn(document: Document): readonly Place[] {
  const speakers = isMap(document.contents) ? document.contents.get("speakers") : null;
  if (!isSeq(speakers)) return [];
  return speakers.items.map((speaker): Place => {
    const at = isMap(speaker) ? speaker.get("at", true) : null;
    if (!(isScalar(at) || isMap(at) || isSeq(at)) || !at.range)
      return { from: 0, to: 0, says: "", isTapes: false };
    const [from, to] = at.range;
    const isTapes = isMap(at) && at.items.length === 2 && at.items.every(({ value }) => isScalar(value));
    return { from, to, says: isScalar(at) ? String(at.value).trim() : "more than a text", isTapes };
  });
}

/** The text without these pieces; the end of a block's line is none of it. */
function without(text: string, pieces: readonly Piece[]): string {
  const lastFirst = [...pieces].sort((a, b) => b.from - a.from);
  return lastFirst.reduce((left, { from, to }) => {
    const end = from + left.slice(from, to).trimEnd().length;
    return left.slice(0, from) + left.slice(end);
  }, text);
}

/** All that was there is there, in its order, with at most one piece put in, of so many loudspeakers. */
function holdsOfOutside(before: string, after: string, added: number): void {
  if (added === 0 && before !== after) refuse("changed outside of the places", after);
  let same = 0;
  while (same < before.length && before[same] === after[same]) same += 1;
  if (!after.endsWith(before.slice(same))) refuse("changed in more than one piece", after);
  const piece = after.slice(same, after.length - (before.length - same));
  const areas = piece.match(/["']?\barea["']?:/gu) ?? [];
  if (areas.length !== added) refuse(`${added} loudspeakers in a piece with ${areas.length}`, piece);
}

/** Every value but the places is as it was, and so are those of the loudspeakers that stood there. */
function holdsOfValues(was: Document, is: Document, speakers: number): void {
  const plain = (document: Document): string => {
    const { speakers: all, ...rest } = { speakers: [], ...document.toJS() };
    const first = (all ?? []).slice(0, speakers).map((each: object) => ({ ...each, at: null }));
    return JSON.stringify([rest, first]);
  };
  if (plain(was) !== plain(is)) refuse("other values", plain(is));
}
