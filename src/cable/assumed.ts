import type { Room, Speaker } from "../room/room.js";
import { MOST_SHARE_OF_LOAD, USUAL_GAUGES, USUAL_SPOOL_MM } from "../standards/cable-practice.js";
import { USUAL_TEMPERATURE_C } from "../standards/sound.js";
import { USUAL_LIMIT_DB } from "./gauge.js";
import type { CableRun, Ends } from "./run.js";

/** What the room file leaves open and a figure of the cabling nevertheless rests on, with what was taken instead. */
export type Assumed =
  /** Of the whole cable, by the conductors in it: the bits are chosen by it. */
  | { readonly what: "diameter"; readonly twoMm: number; readonly fourMm: number }
  | { readonly what: "loop" | "rack-loop" | "spools"; readonly lengthMm: number }
  | { readonly what: "spare"; readonly percent: number }
  | { readonly what: "gauges"; readonly gauges: readonly number[] }
  | { readonly what: "loss-limit"; readonly limitDb: number; readonly share: number }
  | { readonly what: "temperature"; readonly celsius: number }
  /** One pair of conductors, or that the load goes no lower than its nominal impedance; to these loudspeakers. */
  | { readonly what: "one-pair" | "nominal-impedance"; readonly speakers: readonly string[] };

interface Computed {
  readonly runs: readonly CableRun[];
  readonly ends: Ends;
  readonly cableMm: { readonly two: number; readonly four: number; readonly basis: "given" | "usual" };
}

/** Everything that was assumed for these runs; nothing that no figure of them rests on. */
export function assumedFor({ cable }: Room, { runs, ends, cableMm }: Computed): readonly Assumed[] {
  const cut = runs.some(({ from }) => from.length === "computed");
  const chosen = runs.some(({ from, size }) => from.size === "computed" && size !== null);
  const lossy = runs.some(({ loss }) => loss !== null);
  const ids = (which: (run: CableRun) => boolean): string[] =>
    runs.filter(which).map(({ speaker }) => speaker.id);
  const onePair = ids(({ from }) => from.conductors === "assumed");
  const nominal = ids(({ speaker, loss }) => loss !== null && isNominal(speaker));
  const found: readonly (Assumed | false)[] = [
    cableMm.basis === "usual" && { what: "diameter", twoMm: cableMm.two, fourMm: cableMm.four },
    cut && cable.loopMm === null && { what: "loop", lengthMm: ends.loopMm },
    cut && cable.loopMm === null && cable.rackLoopMm === null && { what: "rack-loop", lengthMm: ends.rackMm },
    cut && cable.sparePercent === null && { what: "spare", percent: ends.sparePercent },
    chosen && cable.gauges.length + cable.areasMm2.length === 0 && { what: "gauges", gauges: USUAL_GAUGES },
    lossy &&
      cable.lossDb === null && { what: "loss-limit", limitDb: USUAL_LIMIT_DB, share: MOST_SHARE_OF_LOAD },
    lossy && cable.temperatureC === null && { what: "temperature", celsius: USUAL_TEMPERATURE_C },
    onePair.length > 0 && { what: "one-pair", speakers: onePair },
    nominal.length > 0 && { what: "nominal-impedance", speakers: nominal },
    runs.length > 0 && cable.spoolsMm.length === 0 && { what: "spools", lengthMm: USUAL_SPOOL_MM },
  ];
  return runs.length === 0 ? [] : found.filter((each) => each !== false);
}

/** Whether the least impedance of the load is not stated, so that the nominal one stands for it. */
export const isNominal = ({ model }: Speaker): boolean => model.minimumImpedanceOhm === null;
