import type { earPlane as english } from "../english/ear-plane.js";

export const earPlane: typeof english = {
  title: "Direcciones y cobertura a la altura del oído",
  ear: (height) => `oído ${height}`,
  azimuth: (degrees) => `az ${degrees}`,
  elevation: (degrees) => `el ${degrees}`,
  range: (from, to) => `${from} … ${to}`,
  sameEar: "Asientos sin altura: el oído está tan alto como en el de referencia.",
  outside: "FUERA",
  plane: (height) => `plano del oído ${height}`,
  columns: {
    speaker: "bocina",
    azimuth: "azimut",
    elevation: "elevación",
    allowed: "permitido",
    angle: "ángulo de -6 dB",
    footprint: "cobertura en el plano del oído",
  },
  directions: {
    title: "Direcciones",
    figures: "Direcciones: cifras",
    use: (seat) =>
      `Direcciones desde el asiento de referencia (${seat}), mirando a la pared del frente: azimut 0° al frente, + a la IZQUIERDA; elevación + hacia arriba.`,
    windows: "Un punto dentro de su parte gris del anillo: el azimut que permite la norma.",
    rings: (layers) => `Anillos de afuera hacia adentro: ${layers.map((layer) => LAYERS[layer]).join(", ")}.`,
    noLayout: "No se indica disposición, así que nada se dice de lo que permite.",
  },
  coverage: {
    title: {
      ceiling: "Cobertura en el plano del oído: techo",
      wall: "Cobertura en el plano del oído: paredes",
    },
    use: (height) =>
      `Dónde termina la cobertura de cada bocina en el plano a ${height} sobre el piso (el oído del asiento de referencia). Su nombre está en la línea.`,
    model:
      "Un MODELO: el ángulo de -6 dB del fabricante como cono alrededor del eje apuntado, igual en todo su contorno y en toda frecuencia. Sin reflexiones; pasada la línea hay menos, no nada. Las paredes tapan lo que queda detrás; cajones y muebles no.",
    notStated: (ids) => `Sin cobertura indicada, o sin eje conocido: ${ids}.`,
    closed: (long, short) => `${long} × ${short}`,
    open: "abierta",
    missed: "no lo toca",
  },
  side: {
    title: "Vista lateral",
    figures: "Vista lateral: cifras",
    use: (seat) =>
      `El cuarto cortado del frente al fondo por el asiento de referencia (${seat}). Las bocinas de este lado están donde se ven, a escuadra con el corte.`,
    dial: "Los rayos alrededor del asiento se giran hasta el corte: su elevación es la verdadera. Gris: lo que permite la norma.",
    cut: "Líneas con nombre: dónde termina la cobertura de esa bocina EN EL CORTE, no a su lado.",
  },
  key: {
    direction: "dirección",
    overhead: "cobertura, techo",
    wall: "cobertura, pared",
    axis: "eje, hasta el plano",
    aimed: "eje",
    window: "permitido",
    earPlane: "plano del oído",
    inCeiling: "en el techo",
    inWall: "en pared",
  },
};

const LAYERS = { upper: "capa superior", middle: "capa del oído", lower: "capa inferior" };
