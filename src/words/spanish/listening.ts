import type { listening as english } from "../english/listening.js";

export const listening: typeof english = {
  title: "Informe de escucha",
  atSeats: "Lo que oye cada asiento",
  seat: (name) => `Asiento: ${name}`,
  model:
    "Niveles: ley del inverso del cuadrado y un MODELO de la cobertura indicada: un lóbulo suave, -6 dB a la mitad del ángulo de cobertura, igual en toda frecuencia; más allá de ese ángulo solo dice que hay menos. Sin reflexiones del cuarto.",
  delays: (celsius) =>
    `Los retardos alinean cada bocina con la más lejana en ese asiento; aire a ${celsius}, muestras a 48 kHz.`,
  power: "Potencia en la bocina",
  powerFor: (target, headroom, seat) =>
    `Para ${target} y ${headroom} de reserva en ${seat}, una sola bocina.`,
  columns: {
    speaker: "bocina",
    seat: "asiento",
    direction: "azimut / elevación",
    distance: "distancia",
    window: "ventana",
    offAxis: "fuera de eje",
    level: "nivel",
    delay: "retardo",
    samples: "muestras",
    needed: "necesaria",
    stated: "indicada",
    headroom: "reserva que queda",
  },
  inside: "dentro",
  outside: "FUERA",
  byDistance: "solo por distancia",
  unknown: "no se sabe",
};
