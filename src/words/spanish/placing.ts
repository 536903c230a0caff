import type { Hindrance } from "../../findings/hindrance.js";
import type { placing as english } from "../english/placing.js";
import { findings } from "./findings.js";
import { frame } from "./frame.js";

export const placing: typeof english = {
  title: (room) => `${room}: mejores lugares libres`,
  from: (seat) => `Direcciones desde el asiento de referencia, ${seat}; azimut positivo hacia la izquierda`,
  nobodyAsks: "ninguna bocina pide su mejor posición con `at: best`",
  bay: (number, from) => `${number}.º vano desde ${frame.hook(from)}`,
  direction: (is, off, preferred) => `${is}, a ${off} de lo preferido ${preferred}`,
  outside: "FUERA DE LO PERMITIDO",
  inTheWay: (things) => `Estorba para algo mejor: ${things.map(hindrance).join("; ")}.`,
  hindrance: (thing) => hindrance(thing),
  asPreferred: "Nada estorba: como se prefiere, a una marca de la cinta.",
  alternative: (rank, bay) => `${rank}.º mejor: ${bay}`,
  apart: { more: (degrees) => `${degrees} más`, less: (degrees) => `${degrees} menos` },
  noOtherBay: "Ningún otro vano está libre.",
  otherBaysNotLookedFor:
    "No se buscaron otros vanos: es demasiado para una vez. Deje con --lock donde están las que quedan bien.",
  frozen: (count, file) =>
    `se ${count === 1 ? "escribió 1 posición" : `escribieron ${count} posiciones`} en ${file}; lo demás quedó como estaba`,
  nothingToWrite: "nada que escribir: no se calculó ninguna posición",
  failure: {
    badRank: (typed, most) => `--rank ${typed}: escriba cuántos vanos mostrar, de 2 a ${most}`,
    unknownLock: (id, near) =>
      `--lock ${id}: ninguna bocina lleva este nombre${near === "" ? "" : `; ¿quiso decir ${near}?`}`,
    changed: (file) => `${file}: cambió mientras se leía, así que no se escribió nada; repita la orden`,
  },
};

function hindrance(thing: Hindrance): string {
  switch (thing.kind) {
    case "member":
      return findings.member(thing.member);
    case "obstruction":
      return thing.name;
    case "edge":
      return `el borde terminado en ${frame.wall(thing.along)}`;
    case "joint":
      return "una junta de la tablaroca, que se evita porque cuesta poco";
    case "unknown":
      return "estructura que nadie ha medido";
    case "neighbour":
      return `el hoyo de ${thing.id}`;
    case "window":
      return `lo permitido en ${{ azimuth: "azimut", elevation: "elevación" }[thing.figure]}`;
    case "hold":
      return `la medida fija desde ${frame.wall(thing.from)}`;
    case "partner":
      return `${hindrance(thing.of)} en su par ${thing.id}`;
    case "line":
      return `la línea que comparte con ${thing.with.join(", ")}`;
  }
}
