import type { Level } from "../../findings/finding.js";
import type { cover as english } from "../english/cover.js";

const LEVELS: Readonly<Record<Level, string>> = { error: "ERROR", warning: "AVISO", note: "NOTA" };

export const cover: typeof english = {
  title: "Portada",
  facts: {
    file: "Archivo del cuarto",
    fileWas: (name, digits) => `${name} (${digits})`,
    tapes: "Sus medidas parten de",
    faces: { framing: "la estructura", finish: "la cara terminada" },
    system: "Distribución (ITU-R BS.2051)",
    call: "¿No queda? ALTO, llame a",
  },
  stopped: (stopped, of) => `NO CORTAR: ${stopped} de ${of} hoyos`,
  clear: (openings) => `${openings === 1 ? "1 hoyo" : `${openings} hoyos`} por cortar`,
  count: {
    heading: "CONTEO",
    where: "Dónde",
    openings: "Hoyos",
    ids: "Cuáles",
    counted: "Contados, iniciales",
    room: "EN EL CUARTO",
    unplaced: (ids) => `Sin posición todavía, en ninguna hoja de corte: ${ids}`,
  },
  sheets: {
    heading: "HOJAS: el número donde empieza cada una, y sus páginas",
    drywall: (pages) => `CUADRILLA DE TABLAROCA, drywall.pdf: ${pages} p.`,
    installer: (pages) => `INSTALADOR, installer.pdf: ${pages} p.`,
    labels: (pages) => `HOJAS DE ETIQUETAS, labels.pdf: ${pages} p.`,
  },
  findings: {
    heading: "OBSERVACIONES PENDIENTES",
    none: "Ninguna.",
    accepted: (why) => `Aceptado: ${why}`,
    /** How grave one is, and where in the room file. */
    at: (level, line) => `${LEVELS[level]}, línea ${line}`,
  },
  cautionsHeading: "PRECAUCIONES",
  cautions: {
    look: {
      word: "MIRE PRIMERO",
      line: "Detrás de la tablaroca hay cables, tubos y ductos: mire antes de cada corte.",
    },
    structure: {
      word: "NO LA ESTRUCTURA",
      line: "Nunca corte, muesque ni perfore de más una vigueta, un montante, una solera o una viga.",
    },
    engineered: { word: "ARMADURA, VIGA I", line: "Solo según las reglas de su fabricante." },
    rated: {
      word: "FUEGO, SONIDO",
      line: "Un cielo raso o una pared resistente al fuego o al sonido lleva caja listada.",
    },
    power: {
      word: "SIN CORRIENTE",
      line: "Corte la corriente antes de cortar. La red eléctrica es para personas con licencia.",
    },
    amplifier: { word: "AMPLIFICADOR APAGADO", line: "Apagado y desenchufado mientras conecta." },
    ladder: { word: "ESCALERA", line: "De frente a ella, bien apoyado, nunca en el último escalón." },
    dust: { word: "OJOS, POLVO", line: "Lentes y mascarilla: lo que corta arriba le cae encima." },
    oldPaint: {
      word: "PINTURA, YESO VIEJO",
      line: "Puede tener plomo o asbesto: mándelo analizar antes de cortar.",
    },
    weight: {
      word: "PESO ARRIBA",
      line: "Un equipo pesado lleva un segundo soporte, amarrado a la estructura.",
    },
    codes: {
      word: "CÓDIGO LOCAL",
      line: "Los códigos locales y la autoridad competente mandan sobre estas hojas.",
    },
  },
  print: {
    heading: "IMPRIMA Y COMPRUEBE LA ESCALA",
    steps: [
      "Imprima al 100 % (tamaño real). Sin ajustar a la página, sin reducir.",
      "En cada hoja mida con cinta LAS DOS reglas, a lo ancho y a lo largo: 100 mm y 4 in.",
      "Si falla más de 0.5 mm: corte por las cifras, no por el papel. `baymark ruler` imprime la página que halla la falla.",
    ],
  },
  ways: {
    heading: "DOS MANERAS DE TRABAJAR: diga cuál, hoyo por hoyo",
    bracket: {
      word: "CON SOPORTE",
      line: "Instalación previa: soporte según la lista de soportes, hoja de aviso fija en el lugar. Tablaroca: hállelo por las medidas y el conteo, corte por dentro del soporte siguiéndolo.",
    },
    template: {
      word: "SIN SOPORTE",
      line: "Instalación previa: hoja de aviso en el lugar. Tablaroca: centro por las medidas, plantilla contra la tablaroca, tamaño verificado con cinta, luego corte.",
    },
  },
};
