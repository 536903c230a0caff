import { pointNameOf } from "../../findings/edge-name.js";
import type { poles as english, Strip } from "../english/poles.js";
import { frame } from "./frame.js";

function wall(name: string): string {
  if (pointNameOf(name) !== null) return `en ${frame.hook(name)}`;
  if (name === "floor") return "en el PISO";
  return name === "ceiling" ? "en el CIELO RASO" : `en la pared: ${frame.wall(name)}`;
}

const against = (name: string): string =>
  pointNameOf(name) === null ? `la pared: ${frame.wall(name)}` : frame.hook(name);

const FACES: Readonly<Record<Strip["stage"], string>> = {
  bare: "estructura sin tablaroca",
  boarded: "con tablaroca",
};

export const poles: typeof english = {
  titles: "Reglas de medidas",
  title: (surface, from) => `Regla de medidas, ${frame.surface(surface)}, desde ${frame.wall(from)}`,
  strip: ({ surface, from, stage, overhead }) =>
    `← 0 ${wall(from)}, ${FACES[stage]}  ·  ${frame.surface(surface).toUpperCase()}, ${overhead ? frame.lookingUp : frame.facingWall(surface)}`,
  hold: (from) =>
    `EXTREMO CERO CONTRA ${from === null ? "la pared nombrada ahí" : against(from)}. Las marcas llegan a la línea de ABAJO.`,
  use: "Recorte por la línea de abajo. Póngala a lo largo de la línea de control y pase cada marca con escuadra. Solo lápiz.",
  square: "Va A ESCUADRA CON LAS VIGUETAS: lo está cuando las marcas de ellas caen en las viguetas.",
  plumb: "La regla de un cielo raso plano sirve también en el piso: marque ahí y suba a plomo.",
  lines:
    "Línea larga: centro de los hoyos nombrados. Barra: de orilla a orilla. Caja: estructura, número · centro; caja de rayas: SUPUESTO. Hoyo con líneas de rayas: NO CORTAR.",
  prove: (within) =>
    `VERIFIQUE con cinta ya pegada: cada cifra es desde 0. El otro extremo, en ( ), solo verifica; si falla más de ${within}: ALTO.`,
  slope: "Este cielo raso es inclinado: la regla va A LO LARGO DE LA PENDIENTE.",
  oblique: (count) =>
    `${count === 1 ? "1 miembro corre" : `${count} miembros corren`} en ángulo con esta regla y no ${count === 1 ? "está" : "están"} en ella.`,
  unknown: "ESTRUCTURA DESCONOCIDA: ningún miembro está en esta regla.",
  unknownBeyond: "ESTRUCTURA DESCONOCIDA después del último miembro.",
  join: "Recorte UNA de dos vecinas por la línea de rayas, póngala sobre la otra con letras iguales juntas y la línea de abajo seguida, pegue.",
  noRoom: "En este papel no cabe una regla de medidas. Imprímala en papel más grande o en rollo.",
};
