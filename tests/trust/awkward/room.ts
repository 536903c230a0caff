import fc from "fast-check";
import { stringify } from "yaml";
import type { Parts } from "../../rooms/build.js";
import { type AreasChoice, areasChoice, areasOf, MOST_BESIDE_AREAS } from "./areas.js";
import { type BoardChoice, boardChoice, boardOf } from "./board.js";
import { type CablesChoice, cableOf, cablesChoice, equipmentOf } from "./cables.js";
import { type CeilingsChoice, ceilingsChoice, ceilingsOf } from "./ceilings.js";
import { centred, leastFirst, listOf, scattered } from "./choice.js";
import { type FramingChoice, framingChoice, framingOf } from "./framing.js";
import { type LoudspeakersChoice, loudspeakersChoice, loudspeakersOf, modelsOf } from "./loudspeakers.js";
import { type ObstructionsChoice, obstructionsChoice, obstructionsOf } from "./obstructions.js";
import { type Plan, type PlanChoice, planChoice, planOf } from "./plan.js";

/*
 * Rooms as large and as awkward as the file's format allows, that can be used all the same.
 */

export interface RoomChoice {
  readonly plan: PlanChoice;
  readonly ceilings: CeilingsChoice;
  readonly framing: FramingChoice;
  readonly board: BoardChoice;
  readonly obstructions: ObstructionsChoice;
  readonly loudspeakers: LoudspeakersChoice;
  readonly cables: CablesChoice;
  readonly areas: AreasChoice;
  readonly seats: number;
}

export const roomChoice: fc.Arbitrary<RoomChoice> = fc.record({
  plan: planChoice,
  ceilings: ceilingsChoice,
  framing: framingChoice,
  board: boardChoice,
  obstructions: obstructionsChoice,
  loudspeakers: loudspeakersChoice,
  cables: cablesChoice,
  areas: areasChoice,
  seats: leastFirst(1, 1, 8, 50),
});

/** The room file of that choice. */
export function textOf(choice: RoomChoice): string {
  const plan = planOf(choice.plan);
  const ceilings = ceilingsOf(choice.ceilings, plan);
  const areas = areasOf(choice.areas, plan, ceilings);
  const loudspeakers = beside(areas, choice.loudspeakers);
  const cable = cableOf(choice.cables, plan, loudspeakers.count);
  const speakers = loudspeakersOf(loudspeakers, plan, ceilings);
  const file = {
    ...{ baymark: 1, job: { name: "Awkward" }, units: "metric" },
    room: { ...plan.room, ...(ceilings.length > 0 ? { ceilings: ceilings.map(({ parts }) => parts) } : {}) },
    board: boardOf(choice.board, plan),
    framing: framingOf(choice.framing, plan, ceilings),
    obstructions: obstructionsOf(choice.obstructions, plan),
    models: modelsOf(loudspeakers),
    seats: seatsOf(choice.seats, plan),
    ...equipmentOf(choice.cables, plan),
    ...(areas.length > 0 ? { areas } : {}),
    speakers: speakers.map((one, index) => ({ ...one, ...cable(index) })),
  };
  return stringify(file, { aliasDuplicateObjects: false });
}

const beside = (areas: readonly Parts[], choice: LoudspeakersChoice): LoudspeakersChoice =>
  areas.length === 0 ? choice : { ...choice, count: Math.min(choice.count, MOST_BESIDE_AREAS) };

const seatsOf = (count: number, plan: Plan): readonly Parts[] => {
  const field = centred(plan.core, 0.5);
  return listOf(count, (index) => ({
    ...{ name: `seat ${index}`, at: plan.tapes(scattered(field, index)) },
    ...{ ear: "1.2 m", reference: index === 0 },
  }));
};
