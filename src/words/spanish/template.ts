import type { WrittenGap } from "../details.js";
import type { template as english } from "../english/template.js";
import type { WrittenTape } from "../phrases.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";

const hook = (from: string): string =>
  frame.surface(from) === from || from === "floor" || from === "ceiling"
    ? frame.wall(from)
    : `pared ${frame.wall(from)}`;

const tapeFrom = ({ length, from }: WrittenTape): string => `${length} desde ${hook(from)}`;

function gapTo({ member, figure, isCut, toward }: WrittenGap): string {
  const side = toward === null ? "" : ` hacia ${frame.wall(toward)}`;
  return `${isCut ? "CORTA " : ""}${figure} a ${findings.member(member)}${side}`;
}

export const template: typeof english = {
  stage: {
    bare: "ANTES de poner tablaroca en las paredes",
    boarded: "DESPUÉS de poner tablaroca en las paredes",
  },
  title: (id) => `Hoyo ${id}`,
  tiles: {
    part: (name, of) => `Parte ${name} de ${of}`,
    join: "Recorte UNA de dos vecinas por la línea de rayas, póngala sobre la otra con letras iguales juntas, pegue.",
  },
  tooLarge: (columns, rows) =>
    `DEMASIADO GRANDE para este papel: ${columns} x ${rows} hojas. Corte por las cifras, o imprima en papel más grande o en rollo.`,
  noRoom: "En este papel no cabe una plantilla. Corte por las cifras, o imprima en papel más grande.",
  size: {
    round: (diameter) => `hoyo redondo, ${diameter} de lado a lado`,
    rectangle: (width, height) => `hoyo rectangular, ${width} de ancho, ${height} de alto`,
    diameter: "DIÁMETRO",
    radius: "RADIO DEL COMPÁS",
    sides: "ANCHO × ALTO",
    halves: "LA MITAD DE CADA UNO",
    diagonals: "LAS DOS DIAGONALES",
    tolerance: { round: "TOLERANCIA en el diámetro", rectangle: "TOLERANCIA en cada lado" },
  },
  from: (from) => `DESDE ${hook(from)}`,
  bay: (from) => `VANO desde ${hook(from)}`,
  bayNumber: (count) => `${count}.º`,
  bayUnknown: "VANO",
  unknown: "desconocido",
  assumed: "SUPUESTO",
  gaps: (gaps) => `Distancia: ${gaps.map(gapTo).join("; ")}.`,
  gapUnknown: "Distancia a la estructura: desconocida",
  edge: {
    front: "↑ ESTE LADO HACIA LA PARED DEL FRENTE ↑",
    overhead: "SOSTENGA ARRIBA, IMPRESO HACIA ABAJO, no en el piso",
    up: "↑ ARRIBA ↑",
  },
  label: {
    cut: (id) => `${id}: LÍNEA DE CORTE, desecho adentro`,
    flange: (size) => `reborde ${size}`,
    aim: (target) => `APUNTAR: ${target}`,
  },
  notes: {
    cut: (across) =>
      `CORTE POR DENTRO DE LA LÍNEA: borde terminado en el centro de la línea, hoja del lado del desecho, adentro. Sobre la línea la cinta debe marcar ${across}. Tolerancia: práctica común.`,
    look: "MIRE PRIMERO: abra un hoyo pequeño y busque cable, tubo y ducto detrás. Nunca corte una vigueta ni un montante: si toca uno, ALTO.",
    rated: "SUPERFICIE RESISTENTE AL FUEGO: corte solo con una caja certificada; manda el código local.",
    check: (tapes, within, who) =>
      `SOLO VERIFICAR: ${tapes.map(tapeFrom).join(", ")}. Si falla más de ${within}: ALTO, llame a ${who ?? "____________________"}.`,
    done: "CORTADO, revisó ______________",
  },
  alike: {
    title: (area, model) => `Plantilla para todos los hoyos de ${area}, ${model}`,
    count: (count) => `${count} hoyos, todos iguales`,
    tapes: "MEDIDAS de cada uno",
    inSchedule: "lista de hoyos",
    use: "El mismo hoyo para todos estos. Tome las medidas de cada uno de la lista de hoyos o de la hoja del cielo raso, ponga la cruz en su centro y márquelo aquí. La estructura cercana está en la hoja del cielo raso, no aquí.",
  },
  more: (count) => `y ${count} más en la hoja de la superficie`,
};
