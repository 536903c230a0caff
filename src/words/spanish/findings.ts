import type { MemberName } from "../../findings/finding.js";
import type { findings as english } from "../english/findings.js";
import type { Phrases, WrittenTape } from "../phrases.js";
import { frame } from "./frame.js";

const MEMBERS: Readonly<Record<MemberName["kind"], string>> = {
  joist: "vigueta",
  stud: "montante",
  "bottom-plate": "solera inferior",
  "top-plate": "solera superior",
  "end-stud": "montante de extremo",
  blocking: "bloque",
};

const member = ({ kind, number }: MemberName): string => `${MEMBERS[kind]} ${number}`;

const phrase: Phrases = {
  "opening-cuts-member": (cut, measure) =>
    `el hoyo corta ${member(cut.member)} por ${measure.length(cut.byMm)}`,
  "opening-near-member": (near, measure) => {
    const [gap, wanted] = measure.lengths(near.gapMm, near.wantedMm);
    return `el hoyo está a ${gap} de ${member(near.member)}; se piden ${wanted}`;
  },
  "clamps-blocked": (blocked, measure) => {
    const [gap, reach] = measure.lengths(blocked.gapMm, blocked.reachMm);
    return `las grapas salen ${reach} y no pueden girar: ${member(blocked.member)} está a ${gap} del hoyo`;
  },
  "too-deep": (deep, measure) => {
    const [needed, available] = measure.lengths(deep.neededMm, deep.availableMm);
    const cavity = measure.length(deep.memberDepthMm);
    return `necesita ${needed} detrás de la cara terminada y hay ${available}: hueco ${cavity}, tablaroca ${measure.length(deep.boardMm)}`;
  },
  "opening-meets-obstruction": (met, measure) => {
    const behind =
      met.behindMm === null ? "" : ` (${measure.length(met.behindMm)} detrás de la cara de la estructura)`;
    const name = `${met.obstruction}${behind}`;
    const [distance, wanted] = measure.lengths(met.distanceMm, met.wantedMm);
    if (met.distanceMm < 0) return `el hoyo entra ${measure.length(-met.distanceMm)} en ${name}`;
    return `el hoyo está a ${distance} de ${name}; deje ${wanted}`;
  },
  "opening-outside-surface": (outside, measure) =>
    `pasa ${measure.length(outside.byMm)} del borde terminado en ${frame.wall(outside.edge)}`,
  "openings-too-close": (close, measure) => {
    const [between, other] = {
      openings: ["el hoyo", "el"],
      flanges: ["el aro", "el"],
    }[close.edges];
    if (close.distanceMm < 0) {
      return `${between} se encima con ${other} de ${close.other} por ${measure.length(-close.distanceMm)}`;
    }
    const [distance, wanted] = measure.lengths(close.distanceMm, close.wantedMm);
    return `${between} está a ${distance} d${other} de ${close.other}; se piden ${wanted}`;
  },
  "framing-unknown": (unknown) =>
    unknown.beyondMeasured
      ? `está más allá de la última pieza medida (${frame.surface(unknown.surface)}): no se sabe qué hay ahí`
      : `no se conoce la estructura (${frame.surface(unknown.surface)}): búsquela y mídala antes de cortar`,
  "framing-assumed": (assumed, measure) =>
    `${frame.surface(assumed.surface)}: estructura supuesta, no medida: primer centro a ${measure.length(assumed.firstMm)} desde ${frame.wall(assumed.from)}, luego cada ${measure.length(assumed.spacingMm)}`,
  "edge-given-as-centre": (edge, measure) =>
    `${frame.surface(edge.surface)}: el primer centro se dio como ${measure.length(edge.givenMm)}, donde suele estar el borde cercano; su centro sería ${measure.length(edge.centreIfEdgeMm)}`,
  "board-out-of-clamp-range": (board, measure) =>
    `la tablaroca mide ${measure.length(board.boardMm)} de espesor; las grapas sujetan de ${measure.length(board.leastMm)} a ${measure.length(board.mostMm)}`,
  "aim-undefined": (aim) =>
    `queda de frente a ${aim.target}: ningún giro es mejor que otro, por eso no se imprime flecha`,
  "aim-past-tilt": (aim, measure) => {
    const [offAxis, limit] = measure.angles(aim.offAxisDeg, aim.limitDeg);
    return `${aim.target} queda a ${offAxis} de su eje; su cobertura llega a ${limit}`;
  },
  "rated-assembly": (rated) =>
    rated.enclosure
      ? `${frame.surface(rated.surface)}: resistente al fuego o al sonido: cada hoyo necesita antes su caja aprobada`
      : `${frame.surface(rated.surface)}: resistente al fuego o al sonido y sin caja aprobada: no se corta ningún hoyo`,
  "needs-second-support": (support, measure) =>
    `pesa ${measure.weight(support.weightKg)} en alto: cuélguela de un segundo soporte, no solo de las grapas y la tablaroca`,
  "channel-missing": (missing) => `${missing.layout} tiene ${missing.channel}, y ninguna bocina lo lleva`,
  "channel-twice": (twice) => `su canal ${twice.channel} ya es el de ${twice.other}`,
  "channel-not-in-layout": (stray) => `su canal ${stray.channel} no es de ${stray.layout}`,
  "outside-window": (outside, measure) => {
    const [is, nearest] = measure.angles(outside.isDeg, outside.nearestDeg);
    const figure = { azimuth: "el azimut", elevation: "la elevación" }[outside.figure];
    const tolerance =
      outside.toleranceDeg === 0 ? "" : `, ya con ${measure.angle(outside.toleranceDeg)} de tolerancia`;
    return `${figure} ${is} queda ${measure.angle(outside.byDeg)} fuera de lo permitido a ${outside.channel}; lo más cercano permitido es ${nearest}${tolerance}`;
  },
  "not-placed-yet": (asked) => {
    if (asked.because === "no-direction") {
      return "pide la mejor posición, y los efectos de baja frecuencia no tienen dirección para buscarla: dé dos medidas en `at`";
    }
    const where = frame.surface(asked.surface);
    return asked.isHeld
      ? `sin posición: no hay lugar libre (${where}) en las medidas que fija \`hold\``
      : `sin posición: no hay lugar libre para ella (${where})`;
  },
  "pair-not-matched": (pair) => {
    const reason = {
      surfaces: "sus superficies no tienen lugares que se correspondan",
      "partner-taken": `${pair.other} hace par con otra`,
      "partner-nowhere": `${pair.other} no tiene posición`,
      "nothing-clear": "no hay dos lugares que se correspondan y estén libres",
    }[pair.because];
    return `no hace par con ${pair.other}: ${reason}`;
  },
  "computed-not-frozen": () =>
    "posición calculada, no fija: puede moverse con lo que cambie en el archivo; `baymark place --write` la escribe en él",
  "accept-matches-nothing": (accept) =>
    accept.because === "not-a-warning"
      ? `\`accept: ${accept.accepted}\` no cambia nada: solo se puede aceptar un aviso, y este no lo es`
      : `\`accept: ${accept.accepted}\` no cambia nada: no hay tal hallazgo`,
};

const tape = ({ length, from }: WrittenTape): string => `${length} desde ${frame.wall(from)}`;

export const findings: typeof english = {
  phrase,
  member,
  nearestClear: (tapes) => `centro libre más cercano: ${tapes.map(tape).join(", ")}`,
};
