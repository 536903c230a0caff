import type { checks as english } from "../english/checks.js";

export const checks: typeof english = {
  title: "Listas de revisión",
  use: "Una lista por visita: marque, escriba lo que cambie, firme",
  columns: { done: "Hecho", what: "Qué", found: "Hallado, si no es como el dibujo" },
  visits: {
    beforeBoard: {
      title: "1 Antes de la tablaroca",
      items: [
        "Viguetas y montantes medidos donde van los hoyos; lo que cambie, escrito en las hojas de marcado",
        "Soportes o marcas en el piso en su lugar y contados contra la lista",
        "Cada cable tendido, con su sobra en ambos extremos, amarrado lejos de la herramienta de corte",
        "Una etiqueta en ambos extremos de cada cable, y otra un pie más adentro",
        "Barrenos como en la lista; placas contra clavos donde el borde está a menos de 1 1/4 in",
        "Cables a un pie de la corriente donde van juntos, a escuadra donde se cruzan, nunca en el mismo barreno",
        "Hojas de aviso fijas en sus lugares",
        "Cada claro fotografiado con su etiqueta a la vista",
        "Superficies resistentes al fuego: cajas en su lugar y vistas por la autoridad",
      ],
    },
    afterBoard: {
      title: "2 Después de la tablaroca",
      items: [
        "Hoyos contados contra la lista; ninguno enterrado",
        "Cada hoyo medido en dos sentidos, y desde sus dos paredes",
        "Ninguna vigueta, montante, solera, tubo o cable cortado",
        "Puntas de cable halladas, etiquetas legibles, forro entero",
        "Polvo y migas fuera de los hoyos",
      ],
    },
    trimOut: {
      title: "3 Acabado",
      items: [
        "Cada cable conectado por su etiqueta y su tarjeta, + con + en ambos extremos",
        "Ningún hilo desnudo fuera de la terminal",
        "Bocinas inclinadas giradas según su tira de puntería, luego fijas",
        "Unidades pesadas colgadas de su segundo soporte",
        "Grapas apretadas, marco plano en la tablaroca en todo el borde",
        "Rejillas puestas con la pintura seca",
      ],
    },
    soundCheck: {
      title: "4 Prueba de sonido",
      items: [
        "Cada canal suena en la bocina que lleva su nombre",
        "Polaridad, distancias, retardos y niveles escritos en la hoja de prueba de sonido",
        "Nada vibra ni zumba en un barrido lento",
        "Hojas y fotos entregadas, ajustes guardados",
      ],
    },
  },
  signed: "Fecha, nombre, iniciales:",
  sound: {
    title: "Hoja de prueba de sonido",
    use: "Use en la PRUEBA DE SONIDO, desde el asiento de referencia: escriba lo medido junto a lo esperado",
    how: (seat, target) =>
      `Micrófono en el oído de ${seat}. Los retardos alinean con la bocina más lejana; los ajustes llevan todas a la más suave con un mismo voltaje, según el modelo del informe de escucha; luego ponga cada una al nivel con que mida, como ${target}. Una cifra medida muy distinta es un error en algún lado: hállelo antes de corregirla.`,
    columns: {
      speaker: "Bocina",
      polarity: "+ con +",
      distance: "Distancia",
      delay: "Retardo",
      trim: "Ajuste",
    },
    measured: (id) => `${id}: medido`,
    samples: (count) => `${count} muestras`,
  },
  grilles: {
    title: "Lista de rejillas",
    use: "Para el PINTOR: capas delgadas, secas antes de ponerlas",
    notes:
      "Quite la tela antes de pintar. Rocíe capas delgadas en ángulo; sople los agujeros. Nunca pinte una bocina a través de su rejilla.",
    columns: {
      count: "Cuántas",
      size: "Tamaño (marco)",
      where: "Dónde",
      ids: "Bocinas",
      colour: "Color",
      painted: "Pintada",
      fitted: "Puesta",
    },
  },
};
