import type { schedules as english } from "../english/schedules.js";
import { frame } from "./frame.js";

export const schedules: typeof english = {
  opening: {
    title: "Lista de aberturas",
    use: {
      bare: "Use con las paredes SIN drywall: mida desde los montantes",
      boarded: "Use con las paredes CON drywall: mida desde el drywall",
    },
    columns: {
      done: "Corte hecho",
      speaker: "Abertura",
      size: "Corte este tamaño",
      first: "Centro: primera medida",
      second: "Centro: segunda medida",
      behind: "Detrás del drywall",
      aim: "Flecha",
    },
    count: {
      surface: (surface, openings, toCut, stopped) =>
        `${frame.surface(surface).toUpperCase()}: ${counted(openings)}. Por cortar: ${toCut}. NO CORTAR: ${stopped}.`,
      room: (openings, toCut, stopped) =>
        `EN EL CUARTO: ${counted(openings)}. Por cortar: ${toCut}. NO CORTAR: ${stopped}.`,
    },
    after: "Cortadas y contadas:",
  },
  bracket: {
    title: "Lista de soportes",
    use: "Use en la INSTALACIÓN PREVIA, con la estructura a la vista",
    columns: {
      done: "Fijo",
      speaker: "Soporte para",
      size: "Abertura en el soporte",
      first: "Centro: primera medida",
      second: "Centro: segunda medida",
      behind: "Estructura",
      depth: "Profundidad",
    },
    count: {
      surface: (surface, openings, toFix, stopped) =>
        `${frame.surface(surface).toUpperCase()}: ${brackets(openings)}. Por fijar: ${toFix}. NO FIJAR: ${stopped}.`,
      room: (openings, toFix, stopped) =>
        `EN EL CUARTO: ${brackets(openings)}. Por fijar: ${toFix}. NO FIJAR: ${stopped}.`,
    },
    after: "Fijos y contados:",
    doNotFix: "NO FIJAR",
  },
  tapesOf:
    "Las medidas van al CENTRO de la abertura, a escuadra con la pared nombrada. Marque solo con lápiz.",
  tolerance: (under, over) => `Permitido en el tamaño: −${under} / +${over}`,
  initials: "Iniciales",
  notPlaced: "SIN POSICIÓN TODAVÍA",
  diameter: (size) => `⌀ ${size}`,
  sides: (width, height) => `${width} × ${height}`,
  acrossAndUp: "ancho × alto",
  radius: (radius) => `radio ${radius}`,
  tape: (wall) => `desde ${frame.wall(wall)}`,
  check: (tape, wall) => `verifique: ${tape} desde ${frame.wall(wall)}`,
  bay: (number, from) => `vano ${number} desde ${frame.wall(from)}`,
  noBay: "vano no conocido",
  gap: (gap) => `espacio ${gap}`,
  gapUnknown: "espacio no conocido",
  cutsBy: (depth) => `corta la estructura ${depth}`,
  gapBefore: (gap) => `un lado ${gap}`,
  gapAfter: (gap) => `otro lado ${gap}`,
  depth: (depth) => `profundidad ${depth}`,
  depthBehindBoard: (depth) => `${depth} detrás de la cara terminada`,
  straight: "ninguna: recto",
  noAim: "ninguna",
  aimUndefined: "ninguna: apunta de frente",
  arrow: (end, degrees, toward) =>
    `desde el extremo ${frame.wall(end)} del miembro, ${degrees} hacia ${frame.wall(toward)}`,
  arrowOnSheet: (degrees) => `${degrees} a la izquierda desde arriba, de frente`,
  model: (model) => `modelo ${model}`,
};

const counted = (openings: number): string => (openings === 1 ? "1 abertura" : `${openings} aberturas`);
const brackets = (openings: number): string => (openings === 1 ? "1 soporte" : `${openings} soportes`);
