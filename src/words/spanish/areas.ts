import type { areas as english } from "../english/areas.js";
import { frame } from "./frame.js";

export const areas: typeof english = {
  title: "Qué tan parejo se llenan las zonas",
  count: (count, model, surface) =>
    `${count === 1 ? "1 bocina" : `${count} bocinas`} ${model} en ${frame.surface(surface)}`,
  rows: {
    square: (rows, perRow, rowsAre) => `trazo cuadrado, ${counted(rows, perRow, rowsAre)}`,
    hexagon: (rows, perRow, rowsAre) => `trazo hexagonal, ${counted(rows, perRow, rowsAre)}`,
  },
  along: { u: "las filas van de izquierda a derecha", v: "las filas van de frente a fondo" },
  circle: (coverage, drop, diameter) =>
    `Cobertura ${coverage}, oídos ${drop} más abajo: círculos de ${diameter}, D = 2 (H - h) tan(ángulo / 2).`,
  overlap: {
    "edge-to-edge": (most) => `Borde con borde: separadas a lo más ${most}.`,
    "no-gap": (most) => `Sin huecos entre ellos: separadas a lo más ${most}.`,
    double: (most) => `Dobles: separadas a lo más ${most}.`,
  },
  stated: (most) => `Como dice el archivo: separadas a lo más ${most}.`,
  got: (spacing, row) => `Quedan: ${spacing} en la fila, ${row} de fila a fila; la mitad en las paredes.`,
  columns: { speaker: "bocina", at: "en", moved: "movida", gap: "claro al miembro", bay: "vano" },
  inPlace: "en su lugar",
  nowhere: (at) => `nada está libre cerca de ${at}: ahí no va bocina`,
  level: (least, most, deviation) =>
    `Nivel en los oídos: de ${least} a ${most} de su promedio; desviación estándar ${deviation}.`,
  even: (share, withinDb) => `${share} de la zona queda a no más de ${withinDb} dB del promedio.`,
  mean: (level) => `Promedio ${level} con 2.83 V en cada bocina.`,
  power: (needed, target, headroom) =>
    `${needed} en cada una para un promedio de ${target} y ${headroom} de reserva.`,
  leaves: (stated, headroom) => `Los ${stated} indicados dejan ${headroom} de reserva.`,
  model:
    "Niveles: ley del inverso del cuadrado y un MODELO de la cobertura indicada (un lóbulo suave, -6 dB a la mitad del ángulo, igual en toda frecuencia); se suman las potencias de todas las bocinas de la zona como si no tuvieran relación. Solo sonido directo, sin reflexiones: junto a sus paredes un cuarto real tiene más.",
  sound: {
    how: (ear) =>
      `Un solo nivel en el amplificador, el micrófono a ${ear} del piso justo debajo de cada una: escriba cuánto difiere del promedio de todas. Lo que difiere mucho es un error: su cableado, su derivación, algo que la tapa. Sin retardos: cada quien oye primero la más cercana.`,
    columns: {
      speaker: "Bocina",
      polarity: "+ con +",
      plays: "Suena",
      under: "Debajo, del promedio de la zona",
      measured: "Medido",
    },
  },
  again: "Ya está llena. Para llenar una zona de nuevo, quite primero sus bocinas del archivo.",
  unfilled: {
    "framing-unknown": "sin llenar: no se conoce la estructura de su techo; búsquela y mídala primero",
    "no-tapes":
      "sin llenar: de las paredes desde las que se mide su cielo raso no hay dos que se crucen; uno inclinado se mide desde las que toca, así que lleve su contorno hasta otra",
    "nothing-clear": "sin llenar: nada de ella está libre para este modelo",
    "not-looked-for":
      "sin llenar: el cuarto pide más de lo que se revisa de una vez; escriba lo que ya está lleno con `baymark place --write` y repita, o ponga esta parte del cuarto en un archivo aparte",
  },
  tooMany: (count, most) =>
    `sin llenar: pediría ${count} bocinas, y en el archivo caben ${most}; revise la separación`,
};

const counted = (rows: number, perRow: number, rowsAre: "whole" | "cut"): string =>
  `${rows === 1 ? "1 fila" : `${rows} filas`} de ${rowsAre === "cut" ? "hasta " : ""}${perRow}`;
