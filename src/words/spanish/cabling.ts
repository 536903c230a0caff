import type { MemberName } from "../../findings/finding.js";
import type { cabling as english } from "../english/cabling.js";
import type { WrittenLeg } from "../way.js";
import { frame } from "./frame.js";

export const cabling: typeof english = {
  size: (size) => (size.kind === "gauge" ? `AWG ${size.gauge}` : `${size.areaMm2} mm²`),
  cable: (size, conductors) =>
    size.kind === "gauge" ? `AWG ${size.gauge}-${conductors}` : `${conductors} × ${size.areaMm2} mm²`,
  cables: (count) => (count === 1 ? "1 cable" : `${count} cables`),
  alike: (members) => (members === 1 ? "" : ` (${members} piezas iguales)`),
  report: {
    title: "Cable",
    none: "no se dio el equipo, así que no se calcula ningún camino",
    columns: {
      speaker: "bocina",
      cut: "cortar a",
      size: "calibre",
      loss: "pérdida",
      load: "de la carga",
      damping: "amortiguamiento",
      bored: "barrenos",
      way: "camino",
    },
    totals: (size, runs, length, spools) =>
      `${size}: ${runs === 1 ? "1 tendido" : `${runs} tendidos`}, ${length}; ${spools}`,
    spools: (count, length) => (count === 1 ? `1 carrete de ${length}` : `${count} carretes de ${length}`),
    tooLong: (speaker, length) => `${speaker}: ${length} es más largo que cualquier carrete`,
    given: "dado",
    unknown: "no se sabe",
  },
  way: (legs) => legs.map(legSaid).join("; "),
  bored: (count) => (count === 1 ? "1 barreno" : `${count} barrenos`),
};

const MEMBERS: Readonly<Record<MemberName["kind"], readonly [one: string, many: string]>> = {
  joist: ["vigueta", "viguetas"],
  stud: ["montante", "montantes"],
  "bottom-plate": ["solera inferior", "soleras inferiores"],
  "top-plate": ["solera superior", "soleras superiores"],
  "end-stud": ["montante de extremo", "montantes de extremo"],
  blocking: ["bloque", "bloques"],
  beam: ["viga", "vigas"],
  header: ["cargador", "cargadores"],
  rim: ["viga de borde", "vigas de borde"],
  sill: ["solera de ventana", "soleras de ventana"],
  "opening-stud": ["montante junto a un vano", "montantes junto a un vano"],
};

const BETWEEN = { joist: "viguetas", stud: "montantes" };

const DIRECTIONS: Readonly<Record<string, string>> = { ceiling: "sube", floor: "baja" };

function legSaid({ surface, toward, length, crossed, between, isOver, unmeasured }: WrittenLeg): string {
  const parts = [
    `${frame.surface(surface)} ${DIRECTIONS[toward] ?? `hacia ${frame.wall(toward)}`} ${length}`,
    ...(between === null ? [] : [`entre ${BETWEEN[between.kind]} ${between.numbers.join(" y ")}`]),
    ...(crossed.length === 0 ? [] : [`a través de ${crossed.map(counted).join(" y ")}`]),
    ...(isOver ? ["sobre las viguetas"] : []),
    ...(unmeasured ? ["por estructura que nadie ha medido"] : []),
  ];
  return parts.join(", ");
}

const counted = ({ kind, count }: WrittenLeg["crossed"][number]): string =>
  `${count} ${MEMBERS[kind][count === 1 ? 0 : 1]}`;
