import type { ComplaintPhrases, Kind, Measured, NameOf, YamlSlip } from "../../findings/complaint.js";
import { AREAS_OVER_EACH_OTHER } from "../../standards/house-limits.js";
import type { complaints as english } from "../english/complaints.js";
import { exampleOf } from "../example.js";
import { measureIn } from "../measure.js";
import { listed, quoted } from "../quoted.js";

const { length } = measureIn("metric");

const KINDS: Readonly<Record<Kind, string>> = {
  map: "claves con valores",
  list: "una lista",
  text: "un solo valor",
  nothing: "nada",
};

const written = (kind: Kind, key: string | null): string => {
  const example = exampleOf(kind, key);
  return example === null ? KINDS[kind] : `${KINDS[kind]}, como ${quoted(example)}`;
};

const MEASURED: Readonly<Record<Measured, string>> = {
  length: "una longitud",
  angle: "un ángulo",
  level: "un nivel en dB",
  impedance: "una impedancia",
  power: "una potencia",
  weight: "un peso",
  share: "un porcentaje",
  temperature: "una temperatura",
  "cross-section": "una sección",
};

const NAMES: Readonly<Record<NameOf, readonly [none: string, many: string]>> = {
  wall: ["ninguna pared", "las paredes y cintas son"],
  surface: ["ninguna superficie", "las superficies son"],
  model: ["ningún modelo", "los modelos son"],
  seat: ["ningún asiento", "los asientos y destinos son"],
  speaker: ["ninguna bocina", "las bocinas son"],
  area: ["ninguna zona", "las zonas son"],
  channel: ["ningún canal", "los canales son"],
  layout: ["ninguna disposición", "las disposiciones son"],
  paper: ["ningún papel", "los papeles son"],
  lumber: ["ninguna medida de madera", "las medidas son"],
  stock: ["ninguna hoja de etiquetas", "las hojas son"],
};

const SLIPS: Readonly<Record<YamlSlip, string>> = {
  tab: "esta línea empieza con un tabulador; use espacios",
  "open-quote": "esta comilla no se cierra; ciérrela, o quítela si el valor no la necesita",
  "open-bracket": "este corchete o llave no se cierra; ciérrelo",
  "missing-mark": "falta una coma, o los dos puntos después de una clave",
  indent:
    "esta línea, o la de arriba, empieza en otra columna que sus vecinas; alinéelas igual, con espacios",
  "in-brackets":
    "dentro de corchetes falta una coma antes de este lugar, o un valor con guion o dos puntos necesita comillas",
  "no-colon":
    "después de una clave faltan dos puntos y un espacio, como en `width: 3 m`; o estas líneas no tienen la misma sangría",
  start: "un valor no puede empezar así; póngalo entre comillas",
  colon: "dos puntos y un espacio dentro de un valor empiezan otra clave; ponga el valor entre comillas",
  escape:
    "una barra invertida entre comillas dobles empieza un código, y este no existe; use comillas simples",
  comma:
    "aquí hay algo que no pertenece al valor anterior; ponga el valor entre comillas o revise comas y corchetes",
  "merge-mark":
    "un programa de revisiones dejó aquí dos versiones del archivo; conserve las líneas de una y quite las que empiezan con `<<<<<<<`, `=======` y `>>>>>>>`",
  "odd-space": "aquí hay un carácter que parece un espacio y no lo es; escriba un espacio común en su lugar",
  "round-bracket":
    "los paréntesis no significan nada aquí; escriba { } alrededor de claves con valores, [ ] alrededor de una lista",
  semicolon: "un punto y coma no separa nada aquí; escriba una coma",
  dash: "cada elemento de una lista empieza en su propia línea con un guion y un espacio, como en `- { ... }`",
  "dash-among-keys":
    "un guion empieza un elemento de una lista, y sus vecinas son claves; quite el guion, o empiece cada una con uno",
  other: "esto no se puede leer como YAML; revise comillas, corchetes y sangrías",
};

const CHANNEL =
  "; un canal se nombra por su capa y su ángulo a la izquierda (+) o a la derecha (-), como `M+030`";

const instead = (suggestion: string | null, what: string, choices: readonly string[]): string => {
  if (suggestion !== null) return `; ¿quiso decir ${quoted(suggestion)}?`;
  return choices.length === 0 ? "" : `; ${what}: ${listed(choices, "o")}`;
};

const OF = {
  speakers: "bocinas",
  members: "miembros",
  joints: "juntas",
  corners: "esquinas",
  models: "modelos",
  entries: "elementos",
} as const;

const phrase: ComplaintPhrases = {
  "file-too-large": ({ bytes, mostBytes }) =>
    `el archivo tiene ${bytes} bytes; uno de cuarto tiene a lo más ${mostBytes}. ¿Es este el archivo?`,
  "not-utf-8": () => "esto no es texto en UTF-8; guarde el archivo como UTF-8",
  "empty-file": () => "este archivo no dice nada; `baymark start` escribe uno para empezar",
  "not-yaml": ({ slip }) => SLIPS[slip],
  "yaml-directive": ({ written }) => `${quoted(written)}: un archivo de cuarto no lleva esa línea; quítela`,
  "several-documents": () =>
    "aquí empieza un segundo documento; un archivo tiene un solo cuarto, quite la línea `---`",
  "nested-too-deep": ({ most }) => `más de ${most} niveles uno dentro de otro; ningún cuarto necesita tantos`,
  "too-much-written": ({ most }) =>
    `el archivo sigue aquí después de ${most} palabras y signos, más de lo que necesita cualquier cuarto. ¿Es el archivo correcto?`,
  "yaml-alias": ({ written }) =>
    `${quoted(written)}: un archivo de cuarto no lleva referencias; escriba aquí el valor completo`,
  "yaml-tag": ({ written }) => `${quoted(written)}: un archivo de cuarto no lleva esas marcas; quítela`,
  "key-not-text": () => "una clave tiene que ser una palabra simple",
  "duplicate-key": ({ key, firstLine }) =>
    `${quoted(key)} ya está en la línea ${firstLine}; deje una de las dos`,
  "not-a-room": ({ found }) =>
    `un archivo de cuarto son claves con valores, y esto es ${KINDS[found]}; empiece con \`baymark: 1\`, o con el archivo que escribe \`baymark start\``,
  "more-complaints": ({ count }) =>
    `hay ${count} más como estos que no se muestran; corrija los primeros y revise otra vez`,

  "unknown-key": ({ key, suggestion, choices }) =>
    `${quoted(key)} no es una clave de aquí${instead(suggestion, "las claves son", choices)}`,
  "missing-key": ({ key }) =>
    `aquí falta ${quoted(key)}; agregue \`${key}: ${key === "baymark" ? "1" : "..."}\``,
  "nothing-written": ({ key }) => `${quoted(key)} no tiene valor; escríbalo o quite la clave`,
  "wrong-kind": ({ wanted, found, key }) =>
    `${key === null ? "" : `${quoted(key)}: `}aquí debe haber ${wanted.map((kind) => written(kind, key)).join(" o ")}, y hay ${KINDS[found]}`,
  "unknown-word": ({ typed, suggestion, choices }) =>
    `${quoted(typed)} no puede ir aquí${instead(suggestion, "escriba", choices)}`,
  "other-format": ({ typed }) =>
    `${quoted(typed)} es un formato que esta versión no lee; escriba \`baymark: 1\``,

  "no-unit": ({ typed, ways }) => `${quoted(typed)} no tiene unidad; escriba ${listed(ways, "o")}`,
  "unknown-unit": ({ typed, unit, ways }) =>
    `${quoted(typed)}: ${quoted(unit)} no es una unidad de aquí; escriba ${listed(ways, "o")}`,
  "not-a-measure": ({ typed, measured, ways }) =>
    `${quoted(typed)} no se puede leer como ${MEASURED[measured]}; escríbalo así: ${listed(ways, "o")}`,
  "comma-in-figure": ({ typed, ways }) =>
    `${quoted(typed)}: una coma se puede leer de dos maneras; escriba ${listed(ways, "o")}`,
  "inches-over-twelve": ({ typed, instead: written }) =>
    `${quoted(typed)}: junto a los pies van menos de 12 pulgadas${written === null ? "" : `; escriba ${quoted(written)} si eso quiso decir`}`,
  "out-of-limits": ({ typed, least, most }) =>
    `${quoted(typed)} no es posible aquí: va de ${least} a ${most}; revise la cifra y su unidad`,
  "not-a-whole-number": ({ typed, least, most }) =>
    `${quoted(typed)} tiene que ser un número entero de ${least} a ${most}, sin unidad`,
  "too-many": ({ of, count, most }) =>
    `${count} ${OF[of]}: a lo más caben ${most}; revise si hay un error al escribir`,
  "too-few": ({ count, least }) =>
    `${count === 0 ? "no hay ninguno" : `solo hay ${count}`}; aquí se espera por lo menos ${least}`,

  "text-empty": () => "este texto está vacío; escriba algo o quite la clave",
  "text-too-long": ({ count, most }) => `este texto tiene ${count} caracteres; en las hojas caben ${most}`,
  "bad-character": ({ reason, codePoint, name }) =>
    `este texto tiene ${codePoint}${name === null ? "" : ` ${name}`}, ${BAD[reason]}; escriba el texto otra vez sin él`,
  "bad-id": ({ typed, slip, most }) =>
    ({
      characters: `${quoted(typed)}: un id lleva solo letras sin acento, cifras, - y _, como \`SL-1\`, porque va en etiquetas y nombres de archivo`,
      "too-long": `${quoted(typed)}: un id tiene a lo más ${most} caracteres, para que quepa en una etiqueta`,
      reserved: `${quoted(typed)} no puede ser un id: algunos sistemas guardan ese nombre para un aparato y rechazan archivos con él`,
    })[slip],
  "name-taken": ({ typed, firstLine }) =>
    `${quoted(typed)} ya se usa en la línea ${firstLine} (las mayúsculas no cuentan); ponga otro nombre a uno de los dos`,
  "name-reserved": ({ typed }) => `${quoted(typed)} ya significa otra cosa en este archivo; dé otro nombre`,

  "unknown-name": ({ of, typed, suggestion, choices }) => {
    const [none, many] = NAMES[of];
    const hint = of === "channel" ? CHANNEL : "";
    const listIt = of === "model" && choices.length === 0 ? "; escriba sus medidas bajo `models`" : "";
    return `no hay ${none} ${quoted(typed)}${listIt}${hint}${instead(suggestion, many, choices)}`;
  },
  "mirrors-itself": ({ typed }) =>
    `${quoted(typed)} no puede ser su propio reflejo; ponga la bocina del otro lado`,
  "reference-seats": ({ count }) =>
    count === 0
      ? "ningún asiento dice `reference: true`; escríbalo en el asiento alrededor del cual se arma la disposición"
      : `${count} asientos dicen \`reference: true\`; la disposición se arma alrededor de uno solo`,
  "outline-with-size": ({ key }) =>
    `${quoted(key)} es la medida de una caja, y este cuarto tiene un \`outline\`; deje uno de los dos`,
  "walls-without-outline": () =>
    "las paredes de una caja son left, front, right y back; los nombres de paredes van con un `outline`",
  "walls-count": ({ corners, walls }) =>
    `un contorno de ${corners} esquinas tiene ${corners} paredes, y se nombran ${walls}; cada una va de su esquina a la siguiente`,
  "heights-count": ({ corners, heights }) =>
    `${corners} esquinas piden ${corners} alturas en el mismo orden, y se dan ${heights}`,
  "walls-cross": ({ first, second }) =>
    `las paredes ${quoted(first)} y ${quoted(second)} se cruzan; las esquinas van en orden alrededor del cuarto`,
  "wall-too-short": ({ wall, lengthMm, leastMm }) =>
    `la pared ${quoted(wall)} mediría ${length(lengthMm)}, y lo mínimo es ${length(leastMm)}; revise sus dos esquinas`,
  "corners-in-line": () =>
    "esta esquina está en línea con la otra, y entre ellas no hay ningún área; dé dos esquinas opuestas",
  "ceiling-no-area": ({ ceiling }) =>
    `las esquinas de ${quoted(ceiling)} no rodean un área; van en orden alrededor de ella`,
  "not-one-plane": ({ ceiling, corner, byMm, mostMm }) =>
    `la esquina ${corner} de ${quoted(ceiling)} queda ${length(byMm)} fuera del plano de las demás, y lo máximo es ${length(mostMm)}; mida otra vez su altura, o dé dos techos que se encuentren`,
  "ceiling-outside": ({ ceiling, byMm }) =>
    `${quoted(ceiling)} pasa ${length(byMm)} de las paredes; revise sus esquinas`,
  "ceilings-overlap": ({ ceiling, other }) =>
    `${quoted(ceiling)} y ${quoted(other)} se enciman en planta; revise sus esquinas`,
  "ceiling-in-pieces": ({ pieces }) =>
    `los techos con nombre dejan ${pieces} partes separadas del techo a \`height\`; nombre todas menos una en \`ceilings\`, para que cada una tenga su hoja`,
  "no-main-ceiling": ({ choices }) =>
    `no queda nada del techo a \`height\`, pues los que tienen nombre cubren el cuarto; use ${listed(choices, "o")}`,

  "tapes-count": ({ given, wanted }) =>
    `este punto se fija con ${wanted} cintas, y ${given.length === 0 ? "no hay ninguna" : `${given.length === 1 ? "solo " : ""}hay ${listed(given, "y")}`}; ${given.length > wanted ? `deje ${wanted}` : "en planta se miden desde dos paredes que se encuentran; en una pared, una es `up` o `down`"}`,
  "tapes-parallel": ({ given }) =>
    `${listed(given, "y")} corren una junto a otra y no fijan un punto; mida desde dos paredes que se encuentran`,
  "tape-not-here": ({ tape, surface, choices }) =>
    `una cinta desde ${quoted(tape)} no fija nada en ${quoted(surface)}; use ${listed(choices, "o")}`,
  "framing-from": ({ from, choices }) =>
    `los miembros que corren así no se cuentan desde ${quoted(from)}; cuéntelos desde ${listed(choices, "o")}`,
  "framing-from-point": ({ from }) =>
    `los miembros en ángulo con las paredes no se pueden contar desde ${quoted(from)}; cuéntelos, a escuadra con ellos mismos, desde una esquina que los deje a todos del mismo lado, como \`from: { right: 0, front: 0 }\``,
  "framing-layout": ({ given }) =>
    `los miembros se dan como \`at\` (hallados uno por uno) o como \`first\` con \`spacing\` (trazados), y aquí hay ${given.length === 0 ? "ninguno" : listed(given, "y")}`,
  "members-out-of-order": ({ typedMm, beforeMm }) =>
    `el miembro a ${length(typedMm)} viene después del que está a ${length(beforeMm)}; van desde la pared indicada, cada uno más lejos que el anterior`,
  "member-outside": ({ byMm }) =>
    `este miembro empieza ${length(byMm)} más allá del final de la superficie; revise la cifra y la pared desde donde se cuenta`,
  "found-no-member": ({ number, count }) =>
    `aquí no hay miembro ${number}: el trazado tiene ${count}, contados desde la pared de la que se mide`,
  "spacing-under-width": ({ spacingMm, widthMm }) =>
    `una separación de ${length(spacingMm)} es menor que el ancho de los miembros, ${length(widthMm)}`,
  "web-over-flange": ({ webMm, flangeMm }) =>
    `un alma de ${length(webMm)} no es más delgada que su patín de ${length(flangeMm)}; revise la hoja del fabricante`,
  "smaller-than-opening": ({ flangeMm, openingMm }) =>
    `el borde, ${length(flangeMm)}, no cubre la abertura, ${length(openingMm)}; vea otra vez la hoja del fabricante`,
  "range-upside-down": ({ leastMm, mostMm }) =>
    `de ${length(leastMm)} a ${length(mostMm)} no es un intervalo; primero va la tablaroca más delgada`,
  "seat-outside": ({ wall }) =>
    `este asiento no está en el cuarto: queda más allá de ${quoted(wall)}; revise las cifras`,
  "labels-off-page": ({ byMm }) =>
    `las etiquetas pasan ${length(byMm)} del borde de su hoja; revise medida, paso y cantidad`,
  "labels-overlap": ({ byMm }) =>
    `las etiquetas quedan ${length(byMm)} una sobre otra; el paso va del borde de una al borde de la siguiente`,
  "taller-than-label": ({ byMm }) =>
    `la parte impresa es ${length(byMm)} más alta que la etiqueta de la que es parte`,
  "area-not-fillable": ({ area, because }) => `${quoted(area)} no se puede llenar: ${NOT_FILLABLE[because]}`,
};

const NOT_FILLABLE = {
  "not-a-ceiling": "`on` tiene que nombrar un techo",
  "no-area": "sus esquinas no rodean nada; póngalas en orden alrededor",
  "off-ceiling": "nada de ella queda en ese techo; revise sus esquinas",
  tilted:
    "este modelo va inclinado, y una zona se llena solo con bocinas rectas; use otro, o corrija `baffle_tilt`",
  "no-coverage": "este modelo no tiene `coverage`; cópiela de la hoja del fabricante",
  "too-wide":
    "la `coverage` de este modelo es de 180 deg o más y no forma un círculo; dé `spacing` como medida",
  "ears-too-high": "los oídos no quedan debajo de ese techo; revise `ear` y la altura del cuarto",
  "over-others": `ahí ya hay ${AREAS_OVER_EACH_OTHER} zonas una sobre otra; dé su \`corner\` y \`opposite\`, o sus \`corners\`, donde haya menos`,
} as const;

const BAD = {
  control: "un carácter de control o salto de línea que no se puede imprimir",
  direction: "que cambia la dirección de la escritura",
  invisible: "que no se ve en el papel",
  surrogate: "la mitad de un carácter",
  "right-to-left": "una letra que se escribe de derecha a izquierda, que las hojas no pueden llevar",
  "no-glyph": "que la letra de las hojas no tiene",
} as const;

export const complaints: typeof english = { phrase };
