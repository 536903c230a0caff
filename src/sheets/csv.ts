import { stringify } from "csv-stringify/sync";
import type { Leg } from "../cable/route.js";
import { type CableRun, sizeGiven } from "../cable/run.js";
import type { Shape } from "../geometry/shape.js";
import type { Opening } from "../job.js";
import type { Speaker, Tape } from "../room/room.js";
import { feetInches } from "../units/format.js";
import { runFor } from "./cable-of.js";
import type { Order } from "./sheet.js";
import { type Stage, stagesOf, type Tapes, tapesOf } from "./tapes.js";

/*
 * Schedules for a spreadsheet. Names of columns are for machines and stay as they are; millimetres carry every figure
 * that there is, feet and inches beside them read as a tape does. Empty: not given and not computed.
 */

type Row = Readonly<Record<string, string | number | null>>;

/** A loudspeaker in a schedule; without a position it has neither opening nor tapes, and those columns stay empty. */
interface Subject {
  readonly order: Order;
  readonly speaker: Speaker;
  readonly opening: Opening | null;
  readonly tapes: Tapes | null;
}

/** Columns that belong together: the same keys whatever the subject. */
type Columns = (subject: Subject) => Row;

/**
 * One row a subject, as CSV (RFC 4180). Text that a spreadsheet would take for a formula gets an apostrophe in front;
 * numbers, negative ones too, stay numbers. A room without loudspeakers gives an empty text.
 */
function csvOf(subjects: readonly Subject[], columns: readonly Columns[]): string {
  const rows = subjects.map((subject) =>
    Object.fromEntries(columns.flatMap((part) => Object.entries(part(subject)))),
  );
  return stringify(rows, {
    header: rows.length > 0,
    record_delimiter: "windows",
    escape_formulas: true,
  });
}

/** Openings at each of their stages, in the room's order; then what has no position. */
function placed(order: Order, stages: (opening: Opening) => readonly Stage[]): Subject[] {
  const { room, openings } = order.job;
  return room.speakers.flatMap((speaker): Subject[] => {
    const opening = openings.find((each) => each.speaker.id === speaker.id) ?? null;
    if (opening === null) return [{ order, speaker, opening, tapes: null }];
    return stages(opening).map((stage) => ({
      order,
      speaker,
      opening,
      tapes: tapesOf(room, opening, stage),
    }));
  });
}

/** What the board is cut by: a row for each opening and each state of the walls that it is marked at. */
export function openingsCsv(order: Order): string {
  const subjects = placed(order, ({ surface }) => stagesOf(order.job.room, surface));
  const columns = [speaker, status, cut, tapes, bay, gap, depth, aim, findings, position];
  return csvOf(subjects, columns);
}

/** What brackets are fixed by at rough-in, on bare framing. */
export function bracketsCsv(order: Order): string {
  const columns = [speaker, status, cut, tapes, bay, gap, sides, depth, clamps, findings];
  return csvOf(
    placed(order, () => ["bare"]),
    columns,
  );
}

/** A row for each run, from the equipment to the loudspeaker. */
export function cablesCsv(order: Order): string {
  return csvOf(unplaced(order), [speaker, cable, terminals]);
}

/** A row for each grille or cover, by the flange that it lies on. */
export function grillesCsv(order: Order): string {
  return csvOf(unplaced(order), [speaker, grille]);
}

const unplaced = (order: Order): Subject[] =>
  order.job.room.speakers.map((each) => ({ order, speaker: each, opening: null, tapes: null }));

const length = (name: string, mm: number | null): Row => ({
  [`${name}_mm`]: mm,
  [`${name}_ft_in`]: mm === null ? null : feetInches(mm).plain,
});

function shape(name: string, figure: Shape): Row {
  const [diameter, width, height] =
    figure.kind === "round" ? [figure.diameterMm, null, null] : [null, figure.widthMm, figure.heightMm];
  return {
    [`${name}_shape`]: figure.kind,
    ...length(`${name}_diameter`, diameter),
    ...length(`${name}_width`, width),
    ...length(`${name}_height`, height),
  };
}

const speaker: Columns = ({ speaker: { id, channel, area, model, surface } }) => ({
  id,
  channel,
  area,
  model: model.name,
  surface,
});

const status: Columns = ({ opening }) => ({
  placed: opening?.placed ?? null,
  do_not_cut: opening === null ? null : String(opening.mustNotCut),
});

const cut: Columns = ({ speaker: { opening } }) => ({
  ...shape("cut", opening),
  ...length("cut_radius", opening.kind === "round" ? opening.diameterMm / 2 : null),
});

const tape = (name: string, held: Tape | null | undefined): Row => ({
  [`${name}_from`]: held?.from ?? null,
  ...length(name, held?.mm ?? null),
});

const tapes: Columns = ({ tapes: held }) => ({
  tapes_touch: held?.touches ?? null,
  ...tape("first", held?.governing[0]),
  ...tape("second", held?.governing[1]),
  ...tape("first_check", held?.checks[0]),
  ...tape("second_check", held?.checks[1]),
});

const bay: Columns = ({ opening }) => ({
  bay: opening?.bay?.number ?? null,
  bay_from: opening?.bay?.from ?? null,
});

const gap: Columns = ({ opening }) => {
  const nearest = opening?.gap ?? null;
  return {
    ...length("gap", nearest?.mm ?? null),
    gap_to: nearest === null ? null : `${nearest.member.kind} ${nearest.member.number}`,
  };
};

const sides: Columns = ({ opening }) => ({
  ...length("gap_before", opening?.sides.before?.mm ?? null),
  ...length("gap_after", opening?.sides.after?.mm ?? null),
});

const depth: Columns = ({ speaker: { model } }) => length("depth_needed", model.depthMm);

const clamps: Columns = ({ speaker: { model } }) => ({
  ...length("clamp_reach", model.clampReachMm),
  ...length("board_least", model.boardRangeMm?.[0] ?? null),
  ...length("board_most", model.boardRangeMm?.[1] ?? null),
});

const aim: Columns = ({ opening }) => {
  const aimed = opening?.aim ?? null;
  return {
    aim_target: aimed?.target ?? null,
    arrow_deg: aimed?.arrowDeg ?? null,
    off_axis_deg: aimed?.offAxisDeg ?? null,
    sight_wall: aimed?.sight?.wall ?? null,
    sight_from: aimed?.sight?.from ?? null,
    ...length("sight", aimed?.sight?.mm ?? null),
  };
};

const findings: Columns = ({ order, speaker: { id, surface } }) => {
  const about = order.job.findings.filter((finding) =>
    finding.speaker === null ? finding.surface === surface : finding.speaker === id,
  );
  const codes = (level: string): string =>
    about
      .filter((finding) => finding.level === level)
      .map(({ code }) => code)
      .join(" ");
  return { errors: codes("error"), warnings: codes("warning") };
};

const position: Columns = ({ opening }) => ({
  u_mm: opening?.centre.u ?? null,
  v_mm: opening?.centre.v ?? null,
  x_mm: opening?.position.x ?? null,
  y_mm: opening?.position.y ?? null,
  z_mm: opening?.position.z ?? null,
});

/** The user's figures where there are any, else what was computed; `length` is only ever the user's. */
const cable: Columns = ({ order, speaker }) => {
  const run = runFor(order, speaker);
  const size = run?.size ?? sizeGiven(speaker);
  const { cable: given } = speaker;
  return {
    amplifier_channel: speaker.amplifierChannel,
    gauge_awg: size?.kind === "gauge" ? size.gauge : null,
    area_mm2: size?.kind === "area" ? size.areaMm2 : null,
    size_from: size === null ? null : sizeGiven(speaker) === null ? "computed" : "given",
    conductors: given.conductors ?? run?.conductors ?? null,
    conductors_from: given.conductors === null ? (run?.from.conductors ?? null) : "given",
    ...diameterOf(order, run),
    ...length("length", given.lengthMm),
    loss_db: run?.loss?.lossDb ?? null,
    damping: run?.loss?.damping ?? null,
    bored_holes: run?.bored ?? null,
    ...length("route", run?.routeMm ?? null),
    ...length("cut_to", run?.lengthMm ?? null),
    way: run === null ? null : run.legs.map(legText).join("; "),
  };
};

/** Of the whole cable: what the bits were chosen by. */
function diameterOf({ job }: Order, run: CableRun | null): Row {
  const cableMm = job.cabling?.cableMm;
  if (run === null || cableMm === undefined) return { cable_diameter_mm: null, cable_diameter_from: null };
  return {
    cable_diameter_mm: run.conductors > 2 ? cableMm.four : cableMm.two,
    cable_diameter_from: cableMm.basis === "given" ? "given" : "assumed",
  };
}

const legText = ({ field, toward, lengthMm }: Leg): string =>
  `${field.surface.name} toward ${toward} ${Math.round(lengthMm)} mm`;

/** Conductors as given: colour, sign and terminal of each. */
const terminals: Columns = ({ speaker: { model } }) => ({
  terminal_kind: model.terminal,
  terminals: model.conductors
    .map(({ colour, sign, terminal }) => `${colour} (${sign}) on ${terminal}`)
    .join("; "),
  ...length("strip", model.stripMm),
});

const grille: Columns = ({ speaker: { flange } }) => ({
  count: 1,
  ...shape("flange", flange),
  colour: null,
});
