import { edgeNameOf, pointNameOf } from "../../findings/edge-name.js";
import type { frame as english } from "../english/frame.js";

export const frame: typeof english = {
  number: (number) => `N.º ${number}`,
  revision: (revision) => `Rev. ${revision}`,
  sheet: (number, of) => `Hoja ${number} de ${of}`,
  file: (digits) => `Archivo ${digits}`,
  units: { imperial: "Primero pulgadas, al lado milímetros", metric: "Primero milímetros, al lado pulgadas" },
  front: "FRENTE",
  facing: { away: "Usted mira la pared del FRENTE", behind: "La pared del FRENTE está detrás de usted" },
  up: "ARRIBA",
  printAtFull:
    "Imprima al 100 %, sin ajustar. Mida LAS DOS reglas: 100 mm, 4 in. Si falla más de 0.5 mm: corte solo por las cifras.",
  trueScale: "TAMAÑO REAL 1:1",
  fitted: (ratio) => `ESCALA ${ratio}`,
  notToScale: "SIN ESCALA",
  lookingUp: "MIRANDO HACIA ARRIBA",
  lookingDown: "MIRANDO HACIA ABAJO",
  facingWall: (wall) => `DE CARA A la pared ${SPANISH_OF[wall] ?? wall}`,
  holdOverhead:
    "SOSTENGA ARRIBA, IMPRESO HACIA ABAJO, ESTE LADO HACIA LA PARED DEL FRENTE. No la ponga en el piso.",
  faces: {
    framing: "Medidas desde la ESTRUCTURA (montantes sin tablaroca)",
    finish: "Medidas desde la cara TERMINADA (con tablaroca)",
  },
  wall: (along) => sided(along, wall),
  surface: (name) =>
    name === "ceiling" ? "cielo raso" : isBoxWall(name) ? `pared ${SPANISH_OF[name]}` : name,
  hook: (along) => sided(along, hook),
  /** Layers that a reader of the PDF can switch. */
  layers: {
    cut: "Corte",
    clear: "Zona libre",
    framing: "Estructura",
    obstructions: "Obstáculos",
    dimensions: "Medidas",
    aim: "Orientación",
    notes: "Notas",
  },
  cut: "CORTE",
  doNotCut: "NO CORTAR",
  computedNotFrozen: "CALCULADO, NO FIJO",
};

const SPANISH_WALLS: Readonly<Record<string, string>> = {
  left: "IZQUIERDA",
  right: "DERECHA",
  front: "FRENTE",
  back: "FONDO",
  floor: "PISO",
  ceiling: "CIELO RASO",
};

function wall(name: string): string {
  const point = pointNameOf(name);
  if (point === null) return SPANISH_WALLS[name] ?? name.toUpperCase();
  return `${point.isCorner ? "ESQUINA" : "MARCA"} ${point.walls.map(wall).join("/")}`;
}

function hook(name: string): string {
  if (pointNameOf(name) !== null) return `la ${wall(name)}`;
  if (name === "floor" || name === "ceiling") return `el ${wall(name)}`;
  if (!isBoxWall(name)) return wall(name);
  const takesDel = name === "front" || name === "back";
  return `la pared ${takesDel ? "del " : ""}${wall(name)}`;
}

function sided(along: string, said: (name: string) => string): string {
  const { name, side } = edgeNameOf(along);
  return side === null ? said(name) : `${said(name)}, LADO ${wall(side)}`;
}

const isBoxWall = (name: string): boolean => SPANISH_OF[name] !== undefined;

const SPANISH_OF: Readonly<Record<string, string>> = {
  left: "izquierda",
  right: "derecha",
  front: "del frente",
  back: "del fondo",
};
