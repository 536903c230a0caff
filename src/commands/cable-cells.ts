import type { Cabling } from "../cable/cabling.js";
import type { CableRun } from "../cable/run.js";
import type { Job } from "../job.js";
import { cutFigure, writtenLeg } from "../sheets/cable-of.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";

/** Length to cut, size, loss, share of the load, damping and holes of one run. */
export function runCells(words: Words, job: Job, run: CableRun): readonly string[] {
  const { cabling } = words;
  const { size, loss, bored, from } = run;
  const { given, unknown } = cabling.report;
  const mark = (basis: "computed" | "given"): string => (basis === "given" ? ` (${given})` : "");
  return [
    run.speaker.id,
    `${cutFigure({ job }, run.lengthMm)}${mark(from.length)}`,
    size === null ? unknown : `${cabling.size(size)}${mark(from.size)}`,
    loss === null ? unknown : `${loss.lossDb.toFixed(2)} dB`,
    loss === null ? unknown : `${(100 * loss.shareOfLoad).toFixed(1)} %`,
    loss === null ? unknown : loss.damping.toFixed(0),
    bored === null ? unknown : String(bored),
  ];
}

/** The way of a run in words, set in under its row. */
export function waysOf(words: Words, job: Job, run: CableRun | undefined): readonly string[] {
  if (run === undefined || run.legs.length === 0) return [];
  const { length } = measureIn(job.room.units);
  return [`    ${words.cabling.way(run.legs.map((leg) => writtenLeg(leg, length)))}`];
}

/** What to buy, by what it is of, and what no spool is long enough for. */
export function planLines(words: Words, job: Job, { plan }: Cabling): readonly string[] {
  const { report: say, cable: name } = words.cabling;
  const written = (mm: number): string => cutFigure({ job }, mm);
  const totals = plan.totals.map(({ size, conductors, runs, lengthMm }) => {
    const same = plan.spools.filter(
      (spool) => JSON.stringify(spool.size) === JSON.stringify(size) && spool.conductors === conductors,
    );
    const lengths = [...new Set(same.map(({ spoolMm }) => spoolMm))];
    const bought = lengths.map((mm) =>
      say.spools(same.filter(({ spoolMm }) => spoolMm === mm).length, written(mm)),
    );
    const title = size === null ? say.unknown : name(size, conductors);
    return say.totals(title, runs, written(lengthMm), bought.join(", "));
  });
  const tooLong = plan.tooLong.map(({ speaker, lengthMm }) => say.tooLong(speaker, written(lengthMm)));
  return [...totals, ...tooLong];
}
