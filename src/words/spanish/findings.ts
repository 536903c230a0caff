import type { MemberName, OtherWay } from "../../findings/finding.js";
import type { findings as english } from "../english/findings.js";
import type { Measure } from "../measure.js";
import type { Phrases, WrittenTape } from "../phrases.js";
import { cabling } from "./cabling.js";
import { frame } from "./frame.js";

const MEMBERS: Readonly<Record<MemberName["kind"], string>> = {
  joist: "vigueta",
  stud: "montante",
  "bottom-plate": "solera inferior",
  "top-plate": "solera superior",
  "end-stud": "montante de extremo",
  blocking: "bloque",
  beam: "viga",
  header: "cargador",
  rim: "viga de borde",
  sill: "solera de ventana",
  "opening-stud": "montante junto a la puerta o ventana",
  strap: "listón",
  channel: "canal",
};

const member = ({ kind, number }: MemberName): string => `${MEMBERS[kind]} ${number}`;

const phrase: Phrases = {
  "opening-cuts-member": (cut, measure) =>
    "others" in cut
      ? `el hoyo corta también otras piezas; cuántas más: ${cut.others}`
      : `el hoyo corta ${member(cut.member)} por ${measure.length(cut.byMm)}`,
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
    if ("others" in met) {
      return `el hoyo entra en otros obstáculos o queda muy cerca de ellos; cuántos más: ${met.others}`;
    }
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
    if ("others" in close) {
      const overlapping = close.errors === 0 ? "" : `; hoyos que se enciman: ${close.errors}`;
      return `también está muy cerca de otros; cuántos más: ${close.others}${overlapping}`;
    }
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
    `${frame.surface(assumed.surface)}: ${{ members: "estructura supuesta", strap: "listones supuestos", channel: "canales supuestos" }[assumed.of]}, no medida: primer centro a ${measure.length(assumed.firstMm)} desde ${frame.wall(assumed.from)}, luego cada ${measure.length(assumed.spacingMm)}`,
  "straps-unknown": (straps, measure) =>
    `${frame.surface(straps.surface)}: listones o canales de ${measure.length(straps.depthMm)} sostienen la tablaroca y nadie ha dicho dónde están: un hoyo puede cortar uno`,
  "joint-through-opening": (through, measure) =>
    `el hoyo cae sobre una junta de la tablaroca (${through.joint === "long" ? "entre los lados largos de dos hojas" : "entre las puntas de dos hojas"}), a ${measure.length(through.offCentreMm)} de su centro`,
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
    if (asked.because === "not-looked-for") {
      return "no se buscó su mejor posición: el cuarto pide más de lo que se revisa de una vez; `baymark place --write` escribe las que sí se hallan, luego revise otra vez para las demás, o dé dos medidas en `at`";
    }
    const where = frame.surface(asked.surface);
    if (asked.because === "no-tapes") {
      return `sin posición: de las paredes desde las que se mide (${where}) no hay dos que se crucen; un cielo raso inclinado se mide desde las que toca, así que lleve su contorno hasta otra`;
    }
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
  "cable-too-thin": (thin, measure) => {
    const enough = thin.enough === null ? "ninguno a la mano basta" : `${cabling.size(thin.enough)} bastaría`;
    return `${cabling.size(thin.size)} pierde ${thin.lossDb.toFixed(2)} dB en ${measure.length(thin.lengthMm)}; se permite ${thin.limitDb.toFixed(2)} dB: ${enough}`;
  },
  "cable-without-way": () =>
    "no hay camino para su cable: todo está cerrado entre el equipo y ella; nombre puntos en `via`, o libere el camino",
  "cables-not-looked-for": ({ cables }) =>
    `no se buscó camino para ninguno de los ${cables} cables: entre tantas esquinas, miembros y obstáculos piden más de lo que se revisa de una vez; ponga partes del cuarto en archivos aparte, o quite lo que ningún cable rodea`,
  "bored-hole-too-large": (hole, measure) => {
    const [is, most] = measure.lengths(hole.holeMm, hole.mostMm);
    const allowed = hole.mostMm > 0 ? `lo más es ${most}` : "no puede tener ninguno";
    return `${frame.surface(hole.member.surface)}: ${cabling.cables(hole.cables)} por ${member(hole.member)} piden un barreno de ${is}, y ${allowed}${cabling.alike(hole.members)}. ${otherWay(hole.another, measure)}`;
  },
  "engineered-member-bored": (hole) =>
    `${frame.surface(hole.member.surface)}: el cable pasa por ${member(hole.member)}, que no se perfora salvo como digan su fabricante o un ingeniero${cabling.alike(hole.members)}`,
  "centres-not-looked-for": ({ openings }) =>
    `ya no se buscó el centro libre más cercano de ${openings === 1 ? "1 hoyo" : `${openings} hoyos`}: es demasiado para una vez; mueva los que sí lo tienen y revise otra vez`,
  "area-not-placed": (asked) =>
    `${asked.area} todavía no está llena, así que no se imprime ninguno de sus hoyos: \`baymark place --write\` coloca sus bocinas`,
  "accept-matches-nothing": (accept) =>
    accept.because === "not-a-warning"
      ? `\`accept: ${accept.accepted}\` no cambia nada: solo se puede aceptar un aviso, y este no lo es`
      : `\`accept: ${accept.accepted}\` no cambia nada: no hay tal hallazgo`,
};

function otherWay(another: OtherWay | null, measure: Measure): string {
  if (another === null) return "No se halló otro camino: lleve el cable por otro lado con `via`";
  return another.kind === "parted"
    ? `En su lugar: ${another.holes} barrenos de ${measure.length(another.eachMm)}, separados ${measure.length(another.apartMm)} o más`
    : `En su lugar: otro camino que no perfora ninguna, a lo más ${measure.length(another.longerMm)} más largo`;
}

const tape = ({ length, from }: WrittenTape): string => `${length} desde ${frame.wall(from)}`;

export const findings: typeof english = {
  phrase,
  member,
  nearestClear: (tapes) => `centro libre más cercano: ${tapes.map(tape).join(", ")}`,
};
