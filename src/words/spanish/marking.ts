import type { Code } from "../../findings/finding.js";
import type { marking as english } from "../english/marking.js";
import { frame } from "./frame.js";

const hook = frame.hook;

const de = (name: string): string => hook(name).replace(/^el /u, "del ").replace(/^la /u, "de la ");

/** Capitals of a wall in a sentence: FRENTE and FONDO take "del". */
const of = (name: string): string =>
  name === "front" || name === "back" ? `del ${frame.wall(name)}` : frame.wall(name);

const ceilingOf = (name: string): string => (name === "ceiling" ? "" : ` ${name.toUpperCase()}`);

const cornerOf = (between: readonly [string, string]): string => between.map(frame.wall).join("/");

const STAGES = {
  bare: "ANTES de la tablaroca de paredes",
  boarded: "DESPUÉS de la tablaroca de paredes",
};

const reason: Readonly<Record<Code, string>> = {
  "opening-cuts-member": "corta la estructura",
  "opening-near-member": "muy cerca de la estructura",
  "clamps-blocked": "las grapas topan",
  "too-deep": "falta fondo",
  "opening-meets-obstruction": "hay algo en el lugar",
  "opening-outside-surface": "pasa del borde",
  "openings-too-close": "muy cerca de otro hoyo",
  "framing-unknown": "estructura desconocida",
  "framing-assumed": "estructura supuesta",
  "straps-unknown": "listones no conocidos",
  "joint-through-opening": "una junta de la tablaroca lo cruza",
  "edge-given-as-centre": "orilla dada como centro",
  "board-out-of-clamp-range": "las grapas no sujetan esta tablaroca",
  "aim-undefined": "sin dirección",
  "aim-past-tilt": "no alcanza a apuntar",
  "rated-assembly": "resistente al fuego, sin caja",
  "needs-second-support": "pide un segundo soporte",
  "channel-missing": "falta un canal",
  "channel-twice": "canal repetido",
  "channel-not-in-layout": "canal ajeno al sistema",
  "outside-window": "dirección fuera de lo permitido",
  "not-placed-yet": "sin posición",
  "pair-not-matched": "el par no se corresponde",
  "computed-not-frozen": "calculado, no fijo",
  "area-not-placed": "zona sin llenar",
  "cable-too-thin": "cable muy delgado",
  "cable-without-way": "sin camino para su cable",
  "cables-not-looked-for": "caminos de cables sin buscar",
  "centres-not-looked-for": "centros libres sin buscar",
  "bored-hole-too-large": "barreno muy grande",
  "engineered-member-bored": "pieza de ingeniería perforada",
  "accept-matches-nothing": "nada aceptado",
};

export const marking: typeof english = {
  floor: {
    title: "Marcas en el piso",
    figures: "Marcas en el piso: cifras",
    use: "Con la estructura SIN tablaroca: marque el piso bajo cada hoyo de arriba y súbalo con láser a plomo. El lápiz en el contrapiso dura más que la tablaroca.",
    control: (first, second) =>
      `Líneas de control: los montantes ${de(first)} y ${de(second)}. Enganche ahí cada cinta, a escuadra con la pared.`,
    plumb:
      "Ponga el láser en la marca y tire derecho hacia arriba: el punto es el centro del hoyo. Luego verifique con la hoja del cielo raso.",
    left: "IZQUIERDA y DERECHA son mirando la pared del FRENTE, de pie en el cuarto.",
    aimLine:
      "Línea de rayas: hasta el punto bajo el blanco. La flecha de arriba es paralela a ella (cielo raso plano).",
    columns: { done: "Marcado", opening: "Bajo el hoyo" },
    from: (wall) => `Desde ${hook(wall)}, montantes`,
    count: (marks) => `MARCAS EN EL PISO: ${marks}`,
    markedBy: "Marcó y contó (iniciales):",
  },
  title: {
    ceiling: (name) => `Marcas del cielo raso${ceilingOf(name)}`,
    wall: (name) => `Marcas de la pared ${of(name)}`,
  },
  figures: {
    ceiling: (name) => `Marcas del cielo raso${ceilingOf(name)}: cifras`,
    wall: (name) => `Marcas de la pared ${of(name)}: cifras`,
  },
  full: {
    prove: "Verifique con cinta antes de cortar: el papel estira. MIRE detrás. Nunca corte la estructura.",
    ceiling: (name) => `Marcas del cielo raso${ceilingOf(name)}, tamaño real`,
    wall: (name) => `Marcas de la pared ${of(name)}, tamaño real`,
  },
  staged: {
    ceiling: (name, stage) => `Marcas del cielo raso${ceilingOf(name)}, ${STAGES[stage]}`,
    wall: (name, stage) => `Marcas de la pared ${of(name)}, ${STAGES[stage]}`,
  },
  assumed: "SUPUESTO",
  framingUnknown: "ESTRUCTURA DESCONOCIDA",
  obstruction: (keep, behind) =>
    [keep === null ? null : `deje ${keep}`, behind === null ? null : `está ${behind} detrás`]
      .filter((part) => part !== null)
      .join(", "),
  reason,
  caption: {
    joist: (edges, assumed) => `Viguetas: ${memberFigures(edges, assumed)}`,
    stud: (edges, assumed) => `Montantes: ${memberFigures(edges, assumed)}`,
    strap: (edges, assumed) => `Listones: ${memberFigures(edges, assumed)}`,
    channel: (edges, assumed) => `Canales: ${memberFigures(edges, assumed)}`,
    square: (from) => `A escuadra con ellos desde ${hook(from)}`,
  },
  count: (here, inRoom) => `HOYOS AQUÍ: ${here}.  EN EL CUARTO: ${inRoom}.`,
  steps: {
    square: (first, second, within) =>
      `1 ¿A ESCUADRA? Las dos diagonales, de esquina a esquina: ${first} y ${second}. Si fallan más de ${within}, o más que eso entre sí: ALTO.`,
    shape: (spans, within) =>
      `1 ¿FORMA? De esquina a esquina: ${spans.map(({ from, to, figure }) => `${cornerOf(from)} a ${cornerOf(to)} ${figure}`).join("; ")}. Si falla más de ${within}: ALTO.`,
    squareFound: "Encontró:",
    mark: {
      framing:
        "2 MARQUE cada centro con sus dos cintas, enganchadas en los MONTANTES y a escuadra. Solo lápiz: la tinta traspasa la pintura.",
      finish:
        "2 MARQUE cada centro con sus dos cintas, enganchadas en la TABLAROCA de la pared vecina y a escuadra. Solo lápiz: la tinta traspasa la pintura.",
    },
    slope: "Este cielo raso tiene pendiente: la cinta va SOBRE LA PENDIENTE.",
    check: (within) =>
      `3 VERIFIQUE con la cinta opuesta: solo verifica. Si falla más de ${within}: ALTO, no reparta la diferencia.`,
    look: "4 MIRE antes de cortar: abra un hoyo pequeño, mire y toque: ¿cable, tubo, ducto? NUNCA corte, rebaje ni perfore vigueta, montante, solera o armadura: si toca una, ALTO.",
    cut: (tolerance) =>
      `5 CORTE del lado del desecho, por dentro de la línea; su mitad es el borde terminado. Medida ${tolerance}. Ojos, polvo, escalera.`,
    engineered:
      "Piezas DE INGENIERÍA (viguetas I, armaduras): nunca las corte, rebaje ni perfore; solo su fabricante dice qué se permite.",
    rated: "RESISTENTE AL FUEGO: ningún hoyo sin su caja certificada. Manda el código local.",
    support: "Pesado arriba: un segundo soporte a la estructura.",
    insulation: (kind) => `Aislamiento detrás: ${kind}. Sepárelo de la bocina como diga su fabricante.`,
    counted: "6 CUENTE los hoyos contra el número de arriba. Cortó y contó (iniciales):",
  },
  stop: (call) => `ALTO si algo no es como en esta hoja. Llame a ${call}.`,
  stopBlank: "ALTO si algo no es como en esta hoja. Llame a:",
  findings: "En esta hoja (números como en el dibujo)",
  accepted: (why) => `Aceptado: ${why}`,
  key: {
    measured: "estructura, medida",
    assumed: "estructura, SUPUESTA",
    keep: "no acercarse",
    behind: "detrás de la tablaroca",
    strap: "listón, medido",
    strapAssumed: "listón, SUPUESTO",
    channel: "canal resiliente, medido",
    channelAssumed: "canal resiliente, SUPUESTO",
    joint: "junta de la tablaroca",
    clear: "centro puede moverse dentro de esta línea (solo él)",
    brackets: "Las cifras en ( ) solo verifican. Las cifras corridas cuentan desde 0.",
  },
  moreInTable: (count) =>
    `${count === 1 ? "1 cifra o nombre no cabe" : `${count} cifras o nombres no caben`} en el dibujo: vea la tabla.`,
  card: {
    toCentre: (from) => `DESDE ${hook(from)}`,
    compass: "Radio del compás",
    diameter: "Diámetro",
    sides: (across, up, tolerance) => `${sideSaid(across)}, ${sideSaid(up)}. Cada lado ${tolerance}.`,
    check: (within) => `VERIFIQUE ± ${within}, si no, ALTO, desde`,
    bay: (number, from) => `${number}.º vano desde ${hook(from)}.`,
    slide: "PUEDE MOVERSE (solo este)",
    slideAssumed: "PUEDE MOVERSE (solo este) si la estructura es como SUPUESTA",
    bayUnknown: "Vano: estructura desconocida aquí.",
    aim: (arrow) => `APUNTE: ${arrowInWords(arrow)}.`,
    aimOnSheet: (degrees) => `APUNTE: ${degrees} contra el reloj desde arriba del dibujo.`,
    sight: (wall, figure, from) =>
      `Marca de mira: en ${hook(wall)}, a ${figure} de la esquina con ${hook(from)}.`,
    straight: "APUNTE: nada, recta.",
    undefined: "APUNTE: nada, su blanco queda a escuadra.",
    notAsked: "APUNTE: nada, no se pide.",
    doNotCut: (codes) => `NO CORTAR: ${codes.map((code) => reason[code]).join(", ")}`,
  },
  arrowInWords: (arrow) => arrowInWords(arrow),
};

const sideSaid = ({ figure, from, to }: Parameters<typeof english.card.sides>[0]): string =>
  `${figure} de ${frame.wall(from)} a ${frame.wall(to)}`;

type Arrow = Parameters<typeof english.arrowInWords>[0];

const memberFigures = (edges: boolean, assumed: boolean): string =>
  `número · centro${edges ? " [orilla cercana]" : ""}${assumed ? ". SUPUESTO: anote en la caja lo que encuentre" : ", medido"}`;

const OF_MEMBER = { joist: "de la vigueta", stud: "del montante" } as const;

const arrowInWords = ({ member, end, degrees, toward }: Arrow): string =>
  `desde la punta ${of(end)} ${OF_MEMBER[member]}, ${Math.round(degrees)}° hacia ${hook(toward)}`;
