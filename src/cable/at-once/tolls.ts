import type { Effort } from "../../effort.js";
import { countBelow, countUpTo } from "../../geometry/ascending.js";
import type { Member } from "../../room/room.js";
import { type Axis, type Band, type Field, inOrderOf, meeting, otherAxis, passable } from "../field.js";
import { type Boring, HOLE_COSTS_MM, OWN_HOLE_COSTS_MM } from "../network.js";

/**
 * What cable has to pass along the lanes of one axis of a field, told as it stands at each place of a lane: what lies
 * between two places costs the difference. Lanes are many and members few, so that it is told by steps, from one member
 * to the next, and each place knows its step.
 */
export interface Tolls {
  readonly stepOf: Int32Array;
  readonly lanes: number;
  /** By step, then by lane, in mm. */
  readonly sums: Float64Array;
}

interface Passing {
  readonly field: Field;
  readonly axis: Axis;
  readonly acrossMm: Float64Array;
  readonly alongMm: Float64Array;
  readonly boring: Boring;
  readonly effort: Effort;
}

/** So many figures are added up in the time of a look. */
const FIGURES_FOR_ONE_LOOK = 8;
const BANDS_FOR_ONE_LOOK = 4;

export function tollsOf(passing: Passing): Tolls {
  const { field, axis, acrossMm, alongMm } = passing;
  const bands = passable(field, inOrderOf(field.bands[otherAxis(axis)]).bands, ({ member }) => member);
  const aslant = passable(field, field.aslant, (member) => member);
  // One that runs aslant stands at another place on every lane.
  const steps = aslant.length > 0 ? everyPlace(alongMm) : stepsBetween(bands, alongMm);
  const lanes = acrossMm.length;
  passing.effort.spend(
    (steps.count / FIGURES_FOR_ONE_LOOK + bands.length / BANDS_FOR_ONE_LOOK + aslant.length) * lanes,
  );
  const sums = new Float64Array(steps.count * lanes);
  addBands(passing, bands, steps, sums);
  for (const member of aslant) addAslant(passing, member, sums);
  for (let index = lanes; index < sums.length; index += 1) {
    sums[index] = (sums[index] ?? 0) + (sums[index - lanes] ?? 0);
  }
  return { stepOf: steps.stepOf, lanes, sums };
}

interface Steps {
  readonly count: number;
  readonly stepOf: Int32Array;
  /** The step that follows on a place, for each of the bands: the first after it. */
  readonly stepAfter: (index: number, band: Band) => number;
}

function everyPlace(alongMm: Float64Array): Steps {
  const stepOf = Int32Array.from(alongMm, (_, place) => place);
  return { count: alongMm.length, stepOf, stepAfter: (_, { atMm }) => countUpTo(alongMm, atMm) };
}

/** A step for each place that has passed more bands than the one before; a band at a place comes after it. */
function stepsBetween(bands: readonly Band[], alongMm: Float64Array): Steps {
  const stepOf = new Int32Array(alongMm.length);
  const stepAfter = new Int32Array(bands.length);
  let passed = 0;
  let step = 0;
  for (let place = 0; place < alongMm.length; place += 1) {
    const before = passed;
    for (let band = bands[passed]; band !== undefined && band.atMm < (alongMm[place] ?? 0); ) {
      passed += 1;
      band = bands[passed];
    }
    if (passed > before && place > 0) step += 1;
    for (let index = before; index < passed; index += 1) stepAfter[index] = step;
    stepOf[place] = step;
  }
  for (let index = passed; index < bands.length; index += 1) stepAfter[index] = step + 1;
  return { count: step + 1, stepOf, stepAfter: (index) => stepAfter[index] ?? 0 };
}

function addBands(
  { field, boring, acrossMm }: Passing,
  bands: readonly Band[],
  { count, stepAfter }: Steps,
  sums: Float64Array,
): void {
  bands.forEach((band, index) => {
    const step = stepAfter(index, band);
    if (step === 0 || step >= count) return;
    const end = countUpTo(acrossMm, band.highMm);
    for (let lane = countBelow(acrossMm, band.lowMm); lane < end; lane += 1) {
      const at = step * acrossMm.length + lane;
      sums[at] = (sums[at] ?? 0) + tollMm(boring.unwanted(field, band.member, acrossMm[lane] ?? 0));
    }
  });
}

const tollMm = (unwanted: number): number => HOLE_COSTS_MM + unwanted * OWN_HOLE_COSTS_MM;

function addAslant(
  { field, axis, acrossMm, alongMm, boring }: Passing,
  member: Member,
  sums: Float64Array,
): void {
  acrossMm.forEach((laneMm, lane) => {
    const at = meeting(member, otherAxis(axis), laneMm);
    const step = at === null ? 0 : countUpTo(alongMm, at[axis]);
    if (step === 0 || step >= alongMm.length) return;
    const index = step * acrossMm.length + lane;
    sums[index] = (sums[index] ?? 0) + tollMm(boring.unwanted(field, member, laneMm));
  });
}
