import { subtract } from "../geometry/vector.js";
import type { Job, Opening } from "../job.js";
import { type Heading, headingOf } from "../listen/direction.js";
import type { OtherBays, Place } from "../place/alternatives.js";
import { type Bay, bayOf } from "../place/bay.js";
import { type Against, againstStandard } from "../place/best/asked.js";
import { atTexts } from "../place-json.js";
import type { Tape } from "../room/room.js";
import { writtenGaps } from "../sheets/gaps.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";
import type { Terminal } from "./terminal.js";

/** How the best places read on a terminal, nothing where nobody asks: of each loudspeaker its tapes, its direction, its gaps, what is in the way. */
export function placesTold(
  terminal: Terminal,
  words: Words,
  told: { readonly job: Job; readonly alternatives: ReadonlyMap<string, OtherBays> },
): string {
  const { job, alternatives } = told;
  const { bold } = terminal.colours;
  const shown = job.openings.filter(
    ({ placed, speaker }) => placed === "best" || alternatives.has(speaker.id),
  );
  if (shown.length === 0) return "";
  const title = [bold(words.placing.title(job.room.job.name)), words.placing.from(job.room.reference.name)];
  const blocks = shown.map((opening) => [
    ...openingTold(terminal, words, job, opening),
    ...alternativesTold(words, job, opening, alternatives.get(opening.speaker.id)),
  ]);
  return `${[title, ...blocks].map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function openingTold({ colours }: Terminal, words: Words, job: Job, opening: Opening): readonly string[] {
  const { speaker, tapes, bay, placed } = opening;
  const { bold } = colours;
  const against = againstStandard(job.room, opening);
  const gaps = writtenGaps(opening, measureIn(job.room.units).length);
  return [
    [bold(speaker.id), speaker.channel, words.frame.surface(speaker.surface), ...bayTold(words, bay)].join(
      "  ",
    ),
    `  ${atTold(job, tapes)}`,
    ...(against === null ? [] : [`  ${directionTold(words, opening.direction, against)}`]),
    `  ${gaps === null ? `${words.template.gapUnknown}.` : words.template.gaps(gaps)}`,
    ...(placed === "best" ? [`  ${hindrancesTold(words, job, opening)}`] : []),
  ];
}

const bayTold = (words: Words, bay: Bay | null): readonly string[] =>
  bay === null ? [] : [words.placing.bay(bay.number, bay.from)];

/** As it may be typed into the room file. */
const atTold = ({ room }: Job, tapes: readonly Tape[]): string =>
  `at: { ${atTexts(tapes, room.units)
    .map(([key, text]) => `${key}: ${text}`)
    .join(", ")} }`;

const degreesTold = (deg: number): string => `${Number(deg.toFixed(1)) + 0}°`;

const headingTold = ({ azimuthDeg, elevationDeg }: Heading): string =>
  `${degreesTold(azimuthDeg)} / ${degreesTold(elevationDeg)}`;

function directionTold({ placing }: Words, is: Heading, { preferred, cost }: Against): string {
  const direction = placing.direction(headingTold(is), degreesTold(cost.offDeg), headingTold(preferred));
  return cost.breaches === 0 ? direction : `${direction}; ${placing.outside}`;
}

function hindrancesTold({ placing }: Words, job: Job, { speaker }: Opening): string {
  const placed = job.placing.placed.find(({ mounted }) => mounted.speaker.id === speaker.id);
  const things = placed?.inTheWay ?? [];
  return things.length === 0 ? placing.asPreferred : placing.inTheWay(things);
}

function alternativesTold(
  words: Words,
  job: Job,
  opening: Opening,
  alternatives: OtherBays | undefined,
): readonly string[] {
  if (alternatives === undefined) return [];
  if (alternatives === null) return [`  ${words.placing.otherBaysNotLookedFor}`];
  if (alternatives.length === 0) return [`  ${words.placing.noOtherBay}`];
  const against = againstStandard(job.room, opening);
  return alternatives.flatMap(({ places }, index) => {
    const own = places.find(({ mounted }) => mounted.speaker.id === opening.speaker.id);
    return own === undefined ? [] : alternativeTold(words, job, own, { rank: index + 2, against });
  });
}

interface Ranked {
  readonly rank: number;
  readonly against: Against | null;
}

function alternativeTold(words: Words, job: Job, place: Place, { rank, against }: Ranked): readonly string[] {
  const { placing } = words;
  const [bay = ""] = bayTold(words, bayOf(place.mounted));
  const heading = headingOf(subtract(place.mounted.position, job.room.reference.ear));
  const moreDeg = against === null ? 0 : place.cost.offDeg - against.cost.offDeg;
  const more = placing.apart[moreDeg < 0 ? "less" : "more"](degreesTold(Math.abs(moreDeg)));
  return [
    `  ${placing.alternative(rank, bay)}: ${atTold(job, place.tapes)}`,
    `    ${directionTold(words, heading, place)}; ${more}`,
  ];
}
