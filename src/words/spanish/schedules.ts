import type { Details } from "../details.js";
import type { schedules as english } from "../english/schedules.js";
import { frame } from "./frame.js";
import { marking } from "./marking.js";
import { template } from "./template.js";

export const schedules: typeof english = {
  opening: {
    title: "Lista de hoyos",
    use: {
      bare: "Use con las paredes SIN tablaroca: mida desde los montantes",
      boarded: "Use con las paredes CON tablaroca: mida desde la tablaroca",
    },
    size: "Corte este tamaño",
    done: "Hecho",
    stopped: "NO CORTAR",
    toDo: "Por cortar",
    counted: "Contados, iniciales",
  },
  bracket: {
    title: "Lista de soportes",
    use: "Use en la INSTALACIÓN PREVIA, con la estructura a la vista",
    size: "Tamaño del hoyo",
    done: "Fijo",
    stopped: "NO FIJAR",
    toDo: "Por fijar",
    counted: "Contados, iniciales",
  },
  columns: { speaker: "Hoyo", first: "Centro: primera medida", second: "Centro: segunda medida" },
  tapes:
    "Las dos medidas van al CENTRO del hoyo, a escuadra con la pared nombrada. Solo lápiz: la tinta traspasa la pintura.",
  notPlaced: "SIN POSICIÓN TODAVÍA",
  from: (wall) => `desde ${frame.wall(wall)}`,
  radius: (radius) => `radio ${radius}`,
  details: ({ bay, gaps, depth, arrow }) =>
    [
      bay === null
        ? "Vano: no se sabe."
        : `${template.bayNumber(bay.number)} vano desde ${frame.wall(bay.from)}.`,
      gaps === null ? `${template.gapUnknown}.` : template.gaps(gaps),
      `Profundidad necesaria: ${depth}.`,
      ...(arrow === null ? [] : [`Flecha: ${arrowSaid(arrow)}.`]),
    ].join(" "),
};

function arrowSaid(arrow: NonNullable<Details["arrow"]>): string {
  if (arrow === "straight") return "ninguna, recto";
  return "end" in arrow
    ? marking.arrowInWords(arrow)
    : `${Math.round(arrow.anticlockwiseDeg)}° a la izquierda desde arriba, de frente`;
}
