import type { MemberName } from "../../findings/finding.js";
import type { cabling as english } from "../english/cabling.js";
import type { WrittenAssumption, WrittenLeg } from "../way.js";
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
  schedule: {
    title: "Lista de cables",
    use: "Use ANTES DE LA TABLAROCA: tienda, etiquete ambos extremos, marque",
    lengths: (loop, rack, spare) =>
      `CORTAR A es el camino por la estructura, ${loop} de sobra en la bocina, ${rack} de sobra en el equipo, y ${spare} de todo.`,
    noEquipment: "No se dio el equipo, así que no se calcula ningún camino: escriba lo que se tienda.",
    columns: {
      pulled: "Tendido",
      speaker: "A",
      amplifier: "Canal del amplificador",
      cable: "Cable",
      cut: "Cortar a",
      loss: "Pérdida, de la carga",
      bored: "Barrenos",
    },
    pull: {
      title: "Qué sale de cada carrete, en el orden de tender",
      spool: "Carrete",
      of: "De",
      runs: "Tendidos",
      left: "Queda",
    },
    boring: {
      title: "Barrenos por hacer",
      done: "Hecho",
      members: "Por el centro de",
      bit: "Broca",
      cables: "Cables",
      limit: "Límite",
      ofMembers: (surface, kind, numbers) =>
        `${frame.surface(surface)}: ${MEMBERS[kind][numbers.length === 1 ? 0 : 1]} ${numbers.join(", ")}`,
      allowed: (most) => `a lo más ${most}`,
      tooLarge: (most) => `MUY GRANDE: a lo más ${most}. No perfore, vea los avisos`,
      byMaker: "NO PERFORE salvo como diga su fabricante",
      assumed: (diameters) =>
        `* Para cable de diámetro SUPUESTO: ${diameters}. Mida el cable antes de barrenar.`,
      nailPlate: "PLACAS CONTRA CLAVOS en ambos lados (borde a menos de 1 1/4 in)",
      tie: "FLEJE de acero sobre la solera",
      source:
        "Viguetas IRC R502.8.1 y R802.7.1, montantes R602.6, soleras R602.6.1, placas NEC 300.4: ediciones hasta 2021. Los montantes cuentan como de carga si el archivo no dice otra cosa. Manda su código local. 2 in entre barrenos. Nunca en el mismo barreno que el cable de corriente.",
    },
  },
  plan: {
    title: "Plano de cables",
    figures: "Plano de cables: cifras",
    use: "Caminos de los cables, viguetas a rayas, obstáculos a puntos. Un anillo es una bocina, el cuadro es el equipo; los cables junto a una pared van dentro de ella.",
    rack: "EQUIPO",
    inWall: "En las paredes el cable sube y baja en los puntos marcados.",
  },
  assumed: (list) =>
    `SUPUESTO, porque el archivo del cuarto no lo dice: ${list.map(assumptionSaid).join("; ")}.`,
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
  strap: ["listón", "listones"],
  channel: ["canal", "canales"],
};

const BETWEEN = { joist: "viguetas", stud: "montantes" };

const DIRECTIONS: Readonly<Record<string, string>> = { ceiling: "sube", floor: "baja" };

function legSaid({
  surface,
  toward,
  length,
  crossed,
  between,
  isOver,
  unmeasured,
  step,
}: WrittenLeg): string {
  const parts = [
    ...(step === null ? [] : [`${step.isUp ? "sube" : "baja"} ${step.length} detrás del frente`]),
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

function assumptionSaid({ what, figure }: WrittenAssumption): string {
  return {
    diameter: `cable de ${figure} de diámetro, por el que se eligen las brocas`,
    loop: `${figure} de sobra en la bocina`,
    "rack-loop": `${figure} de sobra en el equipo`,
    spare: `${figure} de reserva`,
    gauges: `calibres a la mano ${figure}`,
    "loss-limit": `pérdida de ${figure} a lo más`,
    temperature: `cobre a ${figure}`,
    "one-pair": `dos conductores a ${figure}`,
    "nominal-impedance": `no menos que la impedancia nominal de ${figure}`,
    spools: `carretes de ${figure}`,
  }[what];
}
