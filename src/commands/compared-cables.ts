import type { Size } from "../cable/gauge.js";
import type { CableChange, HoleChange } from "../compare/cables.js";
import { isNext, type Line, type Saying, tapeRead } from "./saying.js";

/** What is otherwise about one cable. */
export function cableSaid({ words, measure }: Saying, change: CableChange): string {
  const { cable } = words.compare;
  const size = (of: Size | null): string =>
    of === null ? words.cabling.report.unknown : words.cabling.size(of);
  switch (change.what) {
    case "added":
      return cable.added(measure.tape(change.lengthMm));
    case "length":
      return cable.length(tapeRead({ words, measure }, null, change.beforeMm, change.afterMm));
    case "size":
      return cable.size(size(change.before), size(change.after));
    case "conductors":
      return cable.conductors(change.before, change.after);
    default:
      return cable[change.what];
  }
}

/** Members next to each other of which the same is said, on one line. */
export function holeLines(say: Saying, changes: readonly HoleChange[]): readonly Line[] {
  const runs: { first: HoleChange; last: HoleChange; said: string }[] = [];
  for (const change of [...changes].sort(byNumber)) {
    const said = holeSaid(say, change);
    const run = runs.findLast((each) => each.said === said);
    if (run !== undefined && isNext(run.last, change)) run.last = change;
    else runs.push({ first: change, last: change, said });
  }
  return runs.map(({ first, last, said }) => [
    say.words.compare.member.name(first.member, first.member.number, last.member.number),
    said,
  ]);
}

function byNumber({ member: a }: HoleChange, { member: b }: HoleChange): number {
  const [one, other] = [a, b].map(({ surface, kind }) => `${surface} ${kind}`);
  return (one ?? "").localeCompare(other ?? "") || a.number - b.number;
}

function holeSaid({ words, measure }: Saying, change: HoleChange): string {
  const { hole } = words.compare;
  switch (change.what) {
    case "added":
      return hole.added(change.holes, measure.length(change.diameterMm));
    case "gone":
      return hole.gone(change.holes);
    case "bit":
      return hole.bit(measure.length(change.beforeMm), measure.length(change.afterMm));
    case "moved":
      return hole.moved;
  }
}
