import type { labels as english } from "../english/labels.js";

const COLOURS: typeof english.colours = {
  BK: "negro",
  BN: "café",
  RD: "rojo",
  OG: "naranja",
  YE: "amarillo",
  GN: "verde",
  BU: "azul",
  VT: "violeta",
  GY: "gris",
  WH: "blanco",
  PK: "rosa",
  GD: "dorado",
  TQ: "turquesa",
  SR: "plateado",
};

export const labels: typeof english = {
  computed: (length) => `${length} (calc.)`,
  title: "Etiquetas de cable",
  rackEnd: "LADO DEL RACK",
  speakerEnd: "LADO DE LA BOCINA",
  rack: "RACK",
  amplifier: "AMP",
  gauge: "AWG",
  length: "LARGO",
  test: {
    title: "Etiquetas de cable: página de prueba",
    hold: "Imprima primero esta página en papel común. Póngala contra la hoja de etiquetas, a contraluz: cada contorno cae sobre una etiqueta.",
    moved:
      "Si los contornos no caen sobre las etiquetas: imprima al 100 % y mida las dos reglas antes de gastar una hoja.",
    stock: (columns, rows, width, height) =>
      `Hoja de etiquetas: ${columns} × ${rows} etiquetas de ${width} × ${height}`,
    assumed: "El archivo del cuarto no dice qué etiquetas hay: se SUPONE esta hoja, según el papel.",
    count: (runs, labels, sheets) =>
      `${runs} cables, ${labels} etiquetas, ${sheets === 1 ? "1 hoja" : `${sheets} hojas`} de etiquetas. Imprímalas de labels.pdf.`,
    start: (position) => `La primera etiqueta impresa es la número ${position}, la del contorno grueso.`,
    put: "Dos etiquetas por cable, una en cada punta, a unos 600 mm (2 ft), para no cortarlas al recortar.",
    pageEdge: "Orilla de la hoja de etiquetas",
    leftOff: {
      route: "No cabe en estas etiquetas: desde y hasta.",
      cable: "No cabe en estas etiquetas: desde y hasta, calibre e hilos, largo.",
      allButId:
        "En estas etiquetas no cabe más que la clave: escriba lo demás a mano o use etiquetas más grandes.",
    },
  },
  wrap: {
    around: (least, most) =>
      `Etiquetas envolventes: el diámetro exterior del cable debe ser de ${least} a ${most}. No está dado: mídalo.`,
    laps: (printed, around) =>
      `La parte impresa (${printed}) es más larga que una vuelta al cable (${around}): se encima. Las palabras van en sus primeros ${around}.`,
    shortTail: (tail, around) =>
      `La cola transparente (${tail}) es más corta que una vuelta al cable (${around}): no cubre todo lo impreso.`,
    noCable: (tail, printed) =>
      `La cola transparente (${tail}) es más corta que la parte impresa (${printed}): en ningún cable cubre todo lo impreso.`,
  },
  refused: {
    heading: "SIN ETIQUETAS EN ESTAS HOJAS",
    tooSmall: (id) => `La etiqueta es muy chica para ${id} en letras de 2.5 mm. Use etiquetas más grandes.`,
    flagTooSmall: (flag, id) =>
      `En este cable cada bandera mide ${flag}: muy corta para ${id} en letras de 2.5 mm. Use etiquetas más largas o envolventes.`,
    flagNoDiameter:
      "Las etiquetas de bandera necesitan el diámetro exterior del cable, que no está dado: lo que toma el cable queda en blanco entre las banderas.",
    noPrintedPart: "Las etiquetas envolventes necesitan la altura de su parte impresa, que no está dada.",
  },
  card: {
    title: "Tarjetas de terminales",
    cut: "Recorte las tarjetas y cada una en dos por la línea quebrada: la izquierda queda con la bocina, la derecha en el amplificador.",
    atSpeaker: "EN LA BOCINA",
    atAmplifier: "EN EL AMPLIFICADOR: mismo hilo, mismo signo",
    plus: "MÁS",
    minus: "MENOS",
    conductor: "hilo",
    terminal: "terminal",
    kind: "Tipo de terminal",
    strip: (length) => `Pele ${length}: así de largo`,
    stripNotGiven: "Pele",
    channel: "Canal del amplificador",
    polarity: "Polaridad verificada",
    initials: "Iniciales",
  },
  colours: COLOURS,
  colour: (codes) => codes.map((code) => COLOURS[code]).join(" + "),
};
