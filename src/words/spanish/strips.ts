import type { strips as english } from "../english/strips.js";
import { frame } from "./frame.js";

const FACES = { framing: "sin tablaroca", finish: "con tablaroca" };
const RUN = { joist: "de la vigueta", stud: "del montante" };

export const strips: typeof english = {
  aim: {
    title: (id) => `Tira de puntería ${id}`,
    titles: "Tiras de puntería",
    cutOut: "Recorte, pegue en el soporte, gire la bocina hasta que su flecha quede como esta.",
    hold: "IMPRESO HACIA ABAJO, este lado al FRENTE",
    holdWall: "IMPRESO HACIA USTED, este lado ARRIBA",
    run: { joist: "viguetas", stud: "montantes" },
    target: (target) => `APUNTAR A: ${target}`,
    fromRun: (kind, end, toward) =>
      `desde la punta ${frame.wall(end)} ${RUN[kind]} hacia ${frame.wall(toward)}`,
    noRun: "Estructura desconocida: gire por la marca",
    sightAt: (wall, from, faces) =>
      `MARCA en ${frame.hook(wall)} junto al cielo raso, desde su esquina con ${frame.wall(from)} (${FACES[faces]})`,
    sightOn: (edge, from, faces) =>
      `MARCA en ${frame.wall(edge)}, desde su esquina con ${frame.wall(from)} (${FACES[faces]})`,
    noSight: "No hay pared adelante para apuntar",
    offAxis: (degrees) => `Queda a ${degrees} de su eje`,
    noArrow: "SIN FLECHA: el destino queda de frente, ningún giro es mejor que otro.",
  },
  marker: {
    title: (id) => `Hoja de aviso ${id}`,
    here: "AQUÍ SE CORTA UN HOYO",
    keep: "No tape con tablaroca sin cortar. No entierre el cable.",
    notHere: "AQUÍ TODAVÍA NO SE CORTA NADA",
    cable: "CABLE por aquí",
    use: "Fije en el lugar en la instalación previa, antes de la tablaroca, con el cable por el anillo.",
  },
};
