import type { ruler as english } from "../english/ruler.js";

export const ruler: typeof english = {
  title: "Escala de impresión",
  paper: (name, size) => `${name}, ${size}`,
  steps: [
    "Imprima al 100 % (tamaño real) en el papel nombrado arriba. Sin ajustar a la página, sin reducir.",
    "Ponga una regla de acero en cada regla larga, cero con cero. Lea dónde cae la última cifra. Apúntela.",
    "Exacta dentro de 0.5 mm en 100 mm, en los dos sentidos: esta impresora imprime bien. Si no, busque la falla abajo; lo que ningún ajuste corrige, guárdelo como perfil de la impresora.",
  ],
  across: "A LO ANCHO",
  down: "A LO LARGO",
  stretch: (lengthMm) => `0 a ${lengthMm} mm, medido:`,
  divided: (by) => `÷ ${by} =`,
  type: "Escríbalo con el nombre de la impresora; luego imprima cada paquete para ella con --printer NAME:",
  command: "baymark ruler --printer NAME --across ... mm --down ... mm",
  square: (diagonal) =>
    `Lados 100 mm, círculo ⌀ 100 mm, las dos diagonales ${diagonal} mm. Si difieren: el papel entró chueco, imprima otra vez.`,
  faults: {
    heading: "100 mm MIDEN",
    meaning: "QUÉ PASÓ",
    fitted: (page, onto) => `una página de ${page} ajustada a ${onto}`,
    between: (least, most) => `${least} a ${most}`,
    shrunk: "el “reducir” o “ajustar al área imprimible” del diálogo",
    unequal: "ancho ≠ largo",
    printer: "la impresora misma: guarde su perfil",
  },
};
