import {
  AZIMUTH_COMPARED_TO_DEG,
  SECOND_SUPPORT_FROM_KG,
  USUAL_JOINT_DEG,
  USUAL_TOLERANCE_DEG,
} from "../../standards/house-limits.js";
import type { explain as english } from "../english/explain.js";

export const explain: typeof english = {
  "opening-cuts-member": {
    meaning:
      "la línea de corte entra en una vigueta, un montante, una solera, un bloque, o un listón o canal bajo ellos",
    matters:
      "la sierra debilitaría o cortaría lo que sostiene el cielo raso o la pared. El hoyo de una bocina nunca es un barreno: es mucho más grande que cualquier barreno permitido. El listón o el canal resiliente carga la tablaroca, y su lugar se puede elegir mientras no está puesto (práctica común, sin fuente).",
    limit:
      "distancia 0 del borde del hoyo al borde de la pieza, en el plano de la estructura. Viguetas: International Residential Code R502.8.1 (barreno de un tercio del peralte como máximo, a 2 in de los dos bordes); montantes R602.6; soleras superiores R602.6.1; armaduras, vigas I y madera laminada solo según su fabricante (R502.8.2). El código local manda.",
    fix: "mueva el hoyo al centro libre que indica el hallazgo, o use una bocina más chica. Si la pieza no está donde dice el archivo, mídala y escríbala en `framing`. Nunca la rebaje.",
  },
  "opening-near-member": {
    meaning: "las grapas pueden girar, pero la pieza está más cerca que la distancia pedida",
    matters:
      "la estructura rara vez está justo donde se midió, y la sierra se desvía: sin margen, una grapa puede topar con la pieza.",
    limit:
      'el alcance de las grapas según la hoja del fabricante más `checks: { clear: ... }` del archivo, 1/4" si no se dice nada. Ese 1/4" lo elegimos nosotros; muchos instaladores piden 1 in en total (práctica común).',
    fix: "mueva el hoyo al centro libre que indica el hallazgo, o mida la pieza donde está y acepte el aviso con una razón.",
  },
  "clamps-blocked": {
    meaning: "una pieza está tan cerca del hoyo que las grapas no pueden girar detrás de la tablaroca",
    matters:
      "una grapa que no agarra deja la bocina floja o chueca, y una grapa trabada se rompe al apretarla.",
    limit: "lo que salen las grapas del borde del hoyo: `clamp_reach`, de la hoja del fabricante.",
    fix: "mueva el hoyo al centro libre que indica el hallazgo, o use una bocina que se sujete de otro modo.",
  },
  "too-deep": {
    meaning: "la bocina necesita más fondo detrás de la cara terminada del que hay",
    matters:
      "quedaría salida de la tablaroca o apretaría lo que hay detrás; nadie lo ve antes de cortar el hoyo.",
    limit:
      "`depth` del fabricante contra el hueco (el peralte de la pieza, si `cavity:` no dice otra cosa) más la tablaroca. Medidas reales de la madera: American Softwood Lumber Standard PS 20.",
    fix: "use una bocina menos profunda u otra superficie. Bajo un ático abierto escriba `cavity: open`; si midió el fondo, escríbalo en `cavity:`.",
  },
  "opening-meets-obstruction": {
    meaning: "el hoyo entra en algo de la lista `obstructions`, o se acerca más de lo permitido",
    matters:
      "se cortan, aplastan o sobrecalientan ductos, tubos, cables y lámparas detrás de la tablaroca, o las grapas topan con ellos.",
    limit:
      "lo mayor entre el `keep` del obstáculo y el alcance de las grapas con `checks: { clear: ... }`. Lo que empieza detrás (`behind`) cuenta solo si el aparato es más profundo que eso y la tablaroca. Todo sale del archivo.",
    fix: "mueva el hoyo al centro libre que indica el hallazgo, o haga mover el obstáculo y mídalo otra vez.",
  },
  "opening-outside-surface": {
    meaning: "el aro o el hoyo pasa del borde terminado de su pared o cielo raso",
    matters: "el aro topa con la tablaroca de la pared de al lado, no asienta y la rejilla no entra.",
    limit:
      "el contorno entre caras terminadas, menor que la estructura por la tablaroca de las paredes de al lado. Justo en el borde pasa.",
    fix: "busque primero un error en las medidas; luego mueva el hoyo al centro libre que indica el hallazgo.",
  },
  "openings-too-close": {
    meaning: "dos hoyos están tan juntos que sus aros o sus grapas se tocan",
    matters:
      "se rompe la tira de tablaroca entre los dos, los aros se enciman o las grapas se traban entre sí.",
    limit:
      "los aros no se enciman; entre los hoyos caben las grapas de los dos y `checks: { clear: ... }`. Dos hoyos que se enciman son un error.",
    fix: "mueva uno de los dos al centro libre que indica el hallazgo.",
  },
  "framing-unknown": {
    meaning: "nadie ha dicho dónde están las piezas detrás de este hoyo",
    matters: "una vigueta en el hoyo es el error más frecuente de todos, y el más caro.",
    limit:
      "regla nuestra: lo desconocido nunca se toma por libre. Más allá de la última pieza de una lista `at:` tampoco se conoce.",
    fix: "busque las piezas (estructura a la vista, detector, un hoyito de prueba), mida sus centros desde una pared con nombre y escríbalos en `framing`.",
  },
  "framing-assumed": {
    meaning:
      "los lugares de las piezas, listones o canales salen de una primera marca y una separación; nadie las ha medido",
    matters:
      "los trazos se corren y las viguetas se mueven por los tubos; las hojas imprimen estas piezas como SUPUESTAS.",
    limit: "regla nuestra: solo cuentan como medidos los centros dados uno por uno, en `at:`.",
    fix: "antes de cortar mida las piezas junto a cada hoyo, escriba los centros en `at:` e imprima otra vez.",
  },
  "straps-unknown": {
    meaning:
      "los listones o el canal resiliente se dan solo por su espesor, así que nada se revisa contra ellos",
    matters:
      "un listón cortado deja que la tablaroca se cuelgue junto al hoyo; un canal resiliente cortado o atornillado ya no detiene el sonido.",
    limit: "regla nuestra: lo desconocido nunca se toma por libre. Práctica común, sin fuente.",
    fix: "escriba dónde están: `strapping: { depth: ..., width: ..., from: ..., first: ..., spacing: ... }`, o `at: [...]` como se hallaron. Si alguien mira antes de cada corte, acepte la advertencia con esa razón.",
  },
  "joint-through-opening": {
    meaning: "dos hojas de tablaroca se juntan dentro del hoyo o en su orilla",
    matters:
      "ahí la tablaroca es débil: la orilla se desmorona, la cinta se despega y las grapas jalan disparejo las dos hojas.",
    limit: `toda junta que alcance la orilla del hoyo, según la medida de las hojas y la primera junta que da el archivo. Práctica común, sin fuente. El mejor lugar evita las juntas cuando eso cuesta menos que \`checks: { joint: ... }\`, ${USUAL_JOINT_DEG} grados si no se dice otra cosa (elección nuestra).`,
    fix: "mueva el hoyo al centro que indica el hallazgo, fuera de toda junta, o ponga las hojas de modo que ninguna junta caiga ahí.",
  },
  "edge-given-as-centre": {
    meaning: "la primera pieza se da por su centro, con una medida donde suele estar su borde cercano",
    matters:
      'los carpinteros trazan al borde cercano: 15 1/4" es el borde de una pieza cuyo centro está a 16". Si se toma por centro, todas las piezas quedan corridas medio ancho.',
    limit: "una separación usual menos medio ancho de la pieza (práctica común, sin fuente).",
    fix: "si la medida es al borde, agregue `mark: near-edge`; si es el centro, déjela: la nota se queda y no estorba.",
  },
  "board-out-of-clamp-range": {
    meaning: "la tablaroca es más delgada o más gruesa de lo que sujetan las grapas",
    matters: "las grapas no alcanzan la tablaroca o no cierran: nada sostiene la bocina.",
    limit:
      "`board_range` de la hoja del fabricante, contra el espesor de todas las capas juntas en `board:`.",
    fix: "revise el espesor de la tablaroca; luego use otra bocina o las grapas largas del fabricante.",
  },
  "aim-undefined": {
    meaning: "lo que se apunta está justo enfrente de la bocina: ningún giro es mejor que otro",
    matters: "una flecha en la hoja solo confundiría; la inclinación desvía el sonido hacia donde apunte.",
    limit:
      "menos de 1 grado entre la perpendicular de la superficie y la línea a lo que se apunta; lo elegimos nosotros.",
    fix: "ponga ahí una bocina recta, mueva el hoyo, o dé otro destino en `aim:`.",
  },
  "aim-past-tilt": {
    meaning: "aun girada hacia su destino, la bocina lo deja fuera de su cobertura",
    matters:
      "en el asiento se pierden primero los tonos agudos; girar mal una bocina inclinada cuesta decenas de grados.",
    limit:
      "la mitad de `coverage` de la hoja del fabricante, el ángulo total entre los puntos a 6 dB menos, contra el ángulo entre el eje y la línea al destino.",
    fix: "mueva el hoyo para que el destino quede más cerca del eje, use más inclinación o más cobertura, o dé otro `turn` a una rectangular.",
  },
  "rated-assembly": {
    meaning: "la superficie detiene el fuego o el sonido, y un hoyo lo deshace",
    matters:
      "una pared o un cielo raso resistente al fuego da tiempo para salir. Esta herramienta lo señala; nunca lo certifica.",
    limit:
      "International Residential Code R302.4.2, de memoria: lo que atraviesa una membrana resistente al fuego está aprobado para eso o lleva una caja aprobada; ningún hoyo de bocina es tan chico como las cajas que el código exime. Mandan el código local y la autoridad competente.",
    fix: "ponga una caja aprobada detrás de cada hoyo y escriba `enclosure: true` en la superficie, o use otra superficie.",
  },
  "needs-second-support": {
    meaning: "una bocina pesada en alto se sostiene solo de sus grapas y la tablaroca",
    matters: "la tablaroca se cuelga, se moja y se suelta; lo que cae del cielo raso cae sobre la gente.",
    limit: `${SECOND_SUPPORT_FROM_KG} kg o más; lo elegimos nosotros: ninguna norma exige un segundo soporte en una casa, la buena práctica sí.`,
    fix: "amárrela a una vigueta con su propio alambre o cadena y escriba `second_support: true` en la superficie.",
  },
  "channel-missing": {
    meaning: "el sistema tiene un canal que ninguna bocina del cuarto lleva",
    matters:
      "lo mezclado para ese lugar se oye desde otros, o no se oye; el cable es barato antes de la tablaroca.",
    limit:
      "los diez sistemas de bocinas de ITU-R BS.2051 (edición -2, julio de 2018). Los efectos de baja frecuencia no se cuentan: no necesitan hoyo.",
    fix: "agregue la bocina, o escriba en `layout` el sistema que se quiere. Si va sin hoyo, acepte el aviso con esa razón.",
  },
  "channel-twice": {
    meaning: "dos bocinas llevan el mismo canal",
    matters:
      "casi siempre es un descuido, como izquierda por derecha, y entonces a otro canal le falta la suya; las etiquetas de ambos cables dirían lo mismo.",
    limit: "regla nuestra: una bocina por canal. Los efectos de baja frecuencia no cuentan.",
    fix: "corrija el canal de una. Si dos comparten canal a propósito, acepte el aviso con esa razón.",
  },
  "channel-not-in-layout": {
    meaning: "el canal de la bocina no es del sistema",
    matters: "el sistema no dice dónde va, así que no se puede revisar su dirección.",
    limit: "los diez sistemas de bocinas de ITU-R BS.2051 (edición -2, julio de 2018).",
    fix: "corrija el canal, o escriba en `layout` el sistema que se quiere.",
  },
  "outside-window": {
    meaning:
      "vista desde el asiento de referencia, la bocina queda en otra dirección de la que su canal permite",
    matters:
      "lo mezclado para oírse desde un lugar se oye desde otro; el oído lo nota más al frente, y entre izquierda y derecha.",
    limit: `los rangos de ITU-R BS.2051 (edición -2, julio de 2018). Donde fija un solo valor se permite a cada lado \`checks: { tolerance: ... }\` del archivo, ${USUAL_TOLERANCE_DEG} grados si no dice nada: eso lo elegimos nosotros. El azimut cuenta hacia la izquierda, y no se compara arriba de ${AZIMUTH_COMPARED_TO_DEG} grados de elevación (también elegido por nosotros).`,
    fix: "mueva el hoyo, o escriba `at: best` y se busca el lugar libre más cercano a la dirección de la norma. Si el cuarto no da para más, acepte el aviso con la razón.",
  },
  "not-placed-yet": {
    meaning:
      "el archivo pide la mejor posición con `at: best`, y no hay ninguna, o no se buscó porque el cuarto pide demasiadas entre demasiado",
    matters:
      "no se puede marcar ni cortar nada para esta bocina; sus etiquetas de cable se imprimen de todos modos.",
    limit:
      "libre quiere decir lejos de cada miembro, estorbo, borde y otro hoyo por lo que cada uno pide; cuenta la posición que una cinta puede mostrar. Los efectos de baja frecuencia no tienen dirección en ITU-R BS.2051 para buscarla. Cuánto se revisa de una vez lo elegimos nosotros: cientos de posiciones en un salón, menos donde hay cientos de esquinas y obstáculos.",
    fix: "use una bocina más chica u otra superficie, fije otra medida o ninguna en `hold`, pida menos en `checks: { clear: ... }`, o dé dos medidas en `at`, como `at: { left: 4' 6\", front: 6' }`.",
  },
  "pair-not-matched": {
    meaning: "la bocina no queda donde se refleja su par de `mirror`",
    matters: "un par que no es igual a ambos lados se ve, y se oye desde el asiento en medio.",
    limit:
      "regla nuestra: en el cielo raso y en las paredes del frente y del fondo, la imagen reflejada respecto al asiento de referencia; en las paredes laterales, a la misma distancia de la pared del frente y a la misma altura; exacto salvo lo que redondean las marcas de la cinta.",
    fix: "vea con `baymark place` qué estorba en un solo lado; muévalo, o quite `mirror` y deje que cada una tenga su mejor posición.",
  },
  "computed-not-frozen": {
    meaning: "la posición se calculó al leer el archivo y todavía no está en él",
    matters:
      "lo que cambie en el archivo puede moverla; el papel impreso antes muestra otro lugar que el impreso después.",
    limit: "regla nuestra: las hojas de esas posiciones llevan el sello CALCULADO, NO FIJO.",
    fix: "mire lo que muestra `baymark place`; luego `baymark place --write` escribe las posiciones en el archivo, antes de marcar nada.",
  },
  "area-not-placed": {
    meaning: "una zona de `areas` todavía no tiene bocinas en el archivo",
    matters:
      "ninguno de sus hoyos está en las hojas: quien trabaje con este paquete deja toda la zona sin sonido.",
    limit:
      "regla nuestra: las bocinas que llenan una zona están bajo `speakers`, cada una con su `area`, antes de imprimirse.",
    fix: "mire lo que muestra `baymark place`; luego `baymark place --write` escribe sus bocinas en el archivo. Para llenar una zona de nuevo, quite primero sus bocinas del archivo.",
  },
  "cable-too-thin": {
    meaning: "el cable de un tendido tiene tanta resistencia que en él se pierde más de lo permitido",
    matters:
      "la bocina suena más bajo que sus compañeras, su respuesta sigue a su impedancia, y el alambre se queda con potencia que era para ella.",
    limit:
      "lo que dice `cable: { loss: ... }`; si no se dice nada, 5 % de la impedancia de la carga (0.42 dB), la cifra de las tablas que todos imprimen. Resistencia: ASTM B258 para calibres, máximos de IEC 60228 clase 5 para secciones, coeficiente de temperatura del cobre de IEC 60028; la carga es la `minimum_impedance` del modelo, o su `impedance`.",
    fix: "use un cable más grueso, un camino más corto, o cuatro conductores con `wiring: doubled`; o permita más pérdida.",
  },
  "cable-without-way": {
    meaning: "todo por donde el cable puede ir entre el equipo y la bocina está cerrado",
    matters: "sin camino no hay longitud ni calibre, y en la obra alguien lo adivina.",
    limit:
      "regla nuestra: el cable sube entre montantes, cruza o sigue las viguetas, sube y baja detrás del frente entre cielos de distinta altura (no pasa cumbreras), da vueltas a escuadra, rodea los obstáculos con su distancia `keep`, las zonas `avoid` y los hoyos de otras bocinas.",
    fix: "corrija el obstáculo o la zona `avoid` que lo cierra, o diga a qué profundidad empieza (`behind`), pues el cable pasa por delante de lo que empieza bastante atrás.",
  },
  "cables-not-looked-for": {
    meaning:
      "hallar los caminos de los cables tardaría más de lo que alguien espera, así que no se buscó ninguno",
    matters: "sin camino no hay longitud ni calibre, y no se revisa ningún barreno en la estructura.",
    limit:
      "lo elegimos nosotros, por lo que hay que mirar y nunca por el reloj, para que un archivo tenga una sola respuesta en toda máquina: 500 bocinas en un salón con 250 obstáculos caben de sobra.",
    fix: "ponga partes del cuarto en archivos aparte, quite los obstáculos que quedan tan atrás del frente que el cable pasa por delante (o dígalo con `behind`), y vea si una lista se copió de más. Sin `equipment` no se dice nada de cables.",
  },
  "centres-not-looked-for": {
    meaning:
      "de algunos hoyos que no pueden quedar donde están no se buscó el centro libre más cercano: con todos los demás tardaría más de lo que alguien espera",
    matters: "lo que se dice de esos hoyos vale; solo falta a dónde moverlos.",
    limit:
      "lo elegimos nosotros, por lo que hay que mirar y nunca por el reloj, para que un archivo tenga una sola respuesta en toda máquina: un salón con 400 bocinas, todas sobre viguetas, cabe.",
    fix: "mueva los hoyos que sí tienen centro libre y luego revise otra vez. Si cientos quedan sobre la estructura, vea primero si la primera marca de la estructura es correcta.",
  },
  "bored-hole-too-large": {
    meaning:
      "los cables que pasan juntos por una vigueta o un montante piden un barreno mayor que el que permite el código",
    matters: "una pieza perforada de más carga menos, y un inspector la manda cambiar.",
    limit:
      "International Residential Code, ediciones hasta 2021. Viguetas (R502.8.1, R802.7.1): un tercio del peralte, y 2 in de madera arriba, abajo y entre barrenos. Montantes (R602.6): 40 % del ancho en paredes exteriores o de carga, 60 % en otras (`bearing: false`), con el borde a 5/8 in del borde del montante. El barreno es el que el grupo llena al 53, 31 o 40 % (uno, dos o más cables; NEC capítulo 9, tabla 1, de memoria), al siguiente 1/8 in. Mandan el código local y la autoridad competente.",
    fix: "reparta el grupo en varios barrenos como dice el aviso, dé el diámetro medido del cable (`labels: { cable_diameter: ... }`), o llévelo por otro lado con `via` y `avoid`.",
  },
  "engineered-member-bored": {
    meaning: "el camino pasa por una vigueta I, una armadura, una pieza laminada, una viga o un cargador",
    matters: "una pieza así carga por su forma; un barreno en mal lugar puede romperla.",
    limit:
      "International Residential Code R502.8.2 y R802.7.2: ningún corte, muesca ni barreno salvo por las reglas del fabricante o de un ingeniero. Esta herramienta no las conoce y nunca da por permitido un barreno así.",
    fix: "busque el barreno en la tabla del fabricante y acepte el aviso con lo que ella diga como razón, o lleve el cable a lo largo de las piezas con `via` y `avoid`.",
  },
  "accept-matches-nothing": {
    meaning: "una línea en `accept` habla de un hallazgo que no existe o que no se puede aceptar",
    matters:
      "una aceptación olvidada taparía el próximo hallazgo de su clase; y un error nunca se borra aceptándolo.",
    limit: "regla nuestra: `accept` es para avisos, con una razón cada uno, y no cambia su nivel.",
    fix: "borre la línea, o corrija su `code` o `speaker`; si es un error, arregle la causa.",
  },
};
