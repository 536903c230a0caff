import { type compare as english, stretches, type TapeRead } from "../english/compare.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";

const hook = (from: string): string => (from === "floor" ? "el piso" : frame.wall(from));

const readings = ({ from, before, after, by, further }: TapeRead): string =>
  from === null
    ? `se movió ${by}`
    : `${before} -> ${after} desde ${hook(from)} (${by} más ${further ? "lejos" : "cerca"})`;

export const compare: typeof english = {
  revisions: (before, after) => `revisión ${before} -> revisión ${after}`,
  nothing: "nada cambió",
  headings: {
    openings: "Hoyos",
    surfaces: "Paredes y cielos rasos",
    members: "Estructura",
    obstructions: "Obstáculos",
    seats: "Asientos",
    cables: "Cable",
    holes: "Barrenos por hacer",
    findings: "Hallazgos",
    sheets: "Imprimir otra vez",
  },
  added: "nuevo",
  gone: "ya no está",
  opening: {
    added: (surface, tapes) =>
      `nuevo en ${frame.surface(surface)}: ${tapes.map(({ from, length }) => `${length} desde ${hook(from)}`).join(", ")}`,
    gone: (surface) => `ya no está en ${frame.surface(surface)}`,
    surface: (before, after) => `de ${frame.surface(before)} a ${frame.surface(after)}`,
    tape: readings,
    newTape: (from, after) => `ahora ${after} desde ${hook(from)}`,
    channel: (before, after) => `canal ${before} -> ${after}`,
    model: (before, after) => `modelo ${before} -> ${after}`,
    size: (before, after) => `hoyo ${before} -> ${after}`,
    figures: (model) => `otras cifras del modelo ${model}`,
    arrow: (by) => `flecha girada ${by}`,
    arrowNew: "ahora tiene flecha",
    arrowGone: "ya no tiene flecha",
    stopped: "ahora NO CORTAR",
    allowed: "ahora se puede cortar",
  },
  surface: {
    name: (surface) => frame.surface(surface),
    size: (before, after) => `${before} -> ${after}`,
    outline: "otro contorno",
    joints: "juntas de tablaroca en otro lugar",
    board: ({ before, after }) => `tablaroca ${before} -> ${after}`,
    cavity: (before, after) => `hueco ${before ?? "abierto"} -> ${after ?? "abierto"}`,
    framingKnown: "ahora se conoce la estructura",
    framingUnknown: "ahora no se conoce la estructura",
    rated: (is) => (is ? "ahora clasificada contra fuego o sonido" : "ya no clasificada"),
    enclosure: (is) => (is ? "ahora con cajas aprobadas" : "ya sin cajas aprobadas"),
    "second-support": (is) => (is ? "ahora con segundo soporte" : "ya sin segundo soporte"),
    insulation: (before, after) => `aislamiento ${before ?? "ninguno"} -> ${after ?? "ninguno"}`,
  },
  member: {
    name: ({ surface, kind }, first, last) =>
      `${frame.surface(surface)}, ${findings.member({ surface, kind, number: first })}${first === last ? "" : ` a ${last}`}`,
    added: (at) => (at === null ? "nuevo" : `nuevo a ${at}`),
    gone: (at) => (at === null ? "ya no está" : `ya no está a ${at}`),
    at: (length, from) => `${length} desde ${hook(from)}`,
    moved: readings,
    movedAlike: (by, further, from) => `cada uno ${by} más ${further ? "lejos" : "cerca"} de ${hook(from)}`,
    size: (before, after) => `${before} -> ${after}`,
    assumed: "ahora SUPUESTO",
    measured: "ahora medido",
    found: (by, on) => `HALLADO por ${by}, ${on}`,
  },
  obstruction: {
    name: (surface, name) => `${frame.surface(surface)}, ${name}`,
    added: "nuevo",
    gone: "ya no está",
    changed: "se movió, o tiene otro tamaño o distancia",
  },
  seat: {
    added: "nuevo",
    gone: "ya no está",
    reference: "ahora es la referencia",
    fromLeft: readings,
    fromFront: readings,
    ear: ({ before, after }) => `oído ${before} -> ${after}`,
  },
  cable: {
    added: (length) => `ahora tiene camino, cortar a ${length}`,
    gone: "ya no hay cable",
    length: ({ before, after, by, further }) =>
      `cortar a ${before} -> ${after} (${by} más ${further ? "largo" : "corto"})`,
    size: (before, after) => `${before} -> ${after}`,
    conductors: (before, after) => `${before} -> ${after} conductores`,
    way: "va por otro camino",
  },
  hole: {
    added: (count, bit) => `${count === 1 ? "un barreno nuevo" : `${count} barrenos nuevos`}, ${bit}`,
    gone: (count) => (count === 1 ? "un barreno menos" : `${count} barrenos menos`),
    bit: (before, after) => `broca ${before} -> ${after}`,
    moved: "barreno en otro lugar de la pieza",
  },
  finding: {
    added: "NUEVO",
    gone: "YA NO",
    changed: "AHORA",
  },
  sheets: {
    none: "ninguna hoja: todas se dibujan como antes",
    pages: (pages, all) => `página${pages.length === 1 ? "" : "s"} ${stretches(pages)} de ${all}`,
    changed: "cambió",
    new: "nueva",
    gone: "tírela",
    byName: "si se imprimió por su nombre",
    rest: "Las hojas que no están en la lista se dibujan como antes: solo cambian la revisión y los dígitos del archivo en su marco.",
    command: (command) => `Imprímalas con: ${command}`,
  },
};
