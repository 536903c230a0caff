import type { Opening } from "../../job.js";
import type { Aim } from "../../listen/aim.js";

/** An opening whose loudspeaker is tilted and has something to aim at; without an arrow where none is better. */
export type Aimed = Opening & { readonly aim: Aim };

export function isAimed(opening: Opening): opening is Aimed {
  return opening.aim !== null && opening.speaker.model.baffleTiltDeg > 0;
}
