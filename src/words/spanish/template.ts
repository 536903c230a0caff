import type { template as english } from "../english/template.js";
import { frame } from "./frame.js";

const hook = (from: string): string =>
  from === "floor" || from === "ceiling" ? frame.wall(from) : `pared ${frame.wall(from)}`;

export const template: typeof english = {
  title: (id) => `Abertura ${id}`,
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
    halves: "MEDIO ANCHO × MEDIO ALTO",
    diagonals: "LAS DOS DIAGONALES",
    tolerance: { round: "TOLERANCIA en el diámetro", rectangle: "TOLERANCIA en cada lado" },
  },
  from: (from) => `DESDE ${hook(from)}`,
  toCentre: "al centro",
  bay: (from) => `VANO desde ${hook(from)}`,
  bayNumber: (count) => `${count}.º`,
  bayUnknown: "VANO",
  unknown: "desconocido",
  assumed: "SUPUESTO",
  gaps: (sides) => `Distancia a ${sides}`,
  gapTo: (member, figure) => `${member}: ${figure}`,
  cutsInto: (member, figure) => `${member}: CORTA ${figure}`,
  gapUnknown: "Distancia a la estructura: desconocida",
  wall: (name) => hook(name),
  edge: {
    front: "↑ ESTE LADO HACIA LA PARED DEL FRENTE ↑",
    up: "↑ ARRIBA ↑",
  },
  label: {
    cut: (id) => `${id}: LÍNEA DE CORTE, desecho adentro`,
    short: (id) => id,
    flange: (size) => `marco ${size}, no cortar`,
    aim: (target) => `APUNTAR: ${target}`,
  },
  notes: {
    cut: (across) =>
      `CORTE POR DENTRO DE LA LÍNEA: el borde terminado es el centro de la línea, la hoja del lado del desecho, adentro. Antes de cortar verifique: sobre la línea la cinta debe marcar ${across}. La tolerancia es práctica común.`,
    look: "MIRE PRIMERO: abra un hoyo pequeño y busque cable, tubo y ducto detrás. Nunca corte una vigueta ni un montante: si toca uno, ALTO.",
    rated: "SUPERFICIE RESISTENTE AL FUEGO: corte solo con una caja certificada; manda el código local.",
    support: "PESADO: necesita un segundo soporte a la estructura.",
    check: (tapes, within) => `SOLO VERIFICAR: ${tapes}. Si falla más de ${within}: ALTO.`,
    call: (who) => `Llame a ${who}.`,
    callBlank: "Llame a ____________________",
    done: "CORTADO, revisó ______________",
  },
  more: (count) => `y ${count} más en la hoja de la superficie`,
};
