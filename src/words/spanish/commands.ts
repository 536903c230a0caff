import type { commands as english } from "../english/commands.js";

export const commands: typeof english = {
  about: "Marca hoyos para bocinas de techo y de pared que caen en un hueco libre.",
  helpTitles: {
    "Usage:": "Uso:",
    "Arguments:": "Argumentos:",
    "Options:": "Opciones:",
    "Commands:": "Comandos:",
    "Global Options:": "Opciones generales:",
  },
  describe: {
    start: "escribe un archivo de cuarto comentado para empezar",
    check: "resuelve y revisa cuartos; hallazgos con línea y columna",
    place: "busca la mejor posición libre de cada bocina que la pide",
    print: "escribe el paquete de cada cuarto: PDF por oficio, SVG por hoja, listas",
    report: "posiciones, direcciones, orientación y hallazgos de un cuarto",
    compare: "decir qué se movió entre dos revisiones de un cuarto y qué hojas imprimir otra vez",
    explain: "qué significa un hallazgo, por qué importa, de dónde sale el límite y cómo arreglarlo",
    ruler: "imprime la página que prueba la escala de una impresora y guarda lo medido",
    help: "cómo se usa un comando",
  },
  argument: {
    file: "archivo de cuarto (YAML)",
    files: "archivos de cuarto (YAML)",
    oldRoom: "archivo del cuarto como era",
    newRoom: "archivo del cuarto como es",
    newFile: "archivo por escribir",
    code: "código de un hallazgo; todos si se omite",
  },
  option: {
    help: "muestra esta ayuda",
    version: "muestra la versión",
    language: "idioma de las palabras: en, es, o los dos como en,es",
    json: "salida para máquinas, un objeto por cuarto",
    write: "escribe en el archivo las posiciones halladas; nada más cambia en él",
    rank: "muestra los mejores lugares de tantos vanos, con lo que cuesta cada uno",
    lock: "deja esta bocina como está: sin otros vanos, sin escribirla (se repite para otra)",
    out: "carpeta del paquete (si no: out/<archivo de cuarto>)",
    strict: "no escribe nada mientras haya un error",
    printer: "corrige para una impresora cuya página de reglas se midió",
    only: "solo estas hojas u oficios: ceiling, opening-TFL, opening, drywall ...",
    paper: "letter, legal, tabloid, A4, A3, arch-d, A1, roll-36, roll-914, o un tamaño: 13 in x 19 in",
    margin: "lo que la impresora deja en blanco en cada orilla, como medida",
    svg: "solo los dibujos SVG",
    pdf: "solo los archivos PDF",
    units: "imperial o metric",
    across: "lo que mide la regla de 100 mm a lo ancho de la página",
    down: "lo que mide la regla de 100 mm a lo alto de la página",
  },
  exitCodes:
    "Códigos de salida: 0 limpio o solo avisos, 1 errores entre los hallazgos, 2 entrada inservible o uso incorrecto, 3 una falla del propio baymark.",
  wrote: (what) => `se escribió ${what}`,
  packetOf: (pages, drawings) => `${pages} páginas, ${drawings} dibujos`,
  roomsDone: (done, of) => `${done} de ${of} cuartos`,
  progress: (room, done, of) => `${room}: ${done} de ${of}`,
  findings: (errors, warnings, notes) =>
    errors + warnings + notes === 0
      ? "sin hallazgos"
      : `${plural(errors, "error", "errores")}, ${plural(warnings, "aviso", "avisos")}, ${plural(notes, "nota", "notas")}`,
  level: { error: "error", warning: "aviso", note: "nota" },
  openings: (count) => plural(count, "hoyo", "hoyos"),
  accepted: (why) => `aceptado: ${why}`,
  explainHint: (code) => `\`baymark explain ${code}\` dice más`,
  stopped: "queda un error: con --strict no se escribió nada",
  cutNone: "las hojas de hoyos con error dicen NO CORTAR",
  explain: {
    meaning: "Qué significa",
    matters: "Por qué importa",
    limit: "De dónde sale el límite",
    fix: "Cómo arreglarlo",
    codes: "Códigos",
  },
  report: {
    speaker: "bocina",
    channel: "canal",
    surface: "en",
    direction: "azimut / elevación",
    distance: "distancia",
    gap: "claro a la vigueta",
    aim: "orientación",
    offAxis: "fuera de eje",
    from: (seat) => `Direcciones desde el asiento de referencia, ${seat}; azimut positivo a la izquierda`,
    straight: "recta",
    unknown: "desconocido",
  },
  ruler: {
    kept: (printer, x, y) =>
      `guardado para la impresora ${printer}: ${x} a lo ancho, ${y} a lo alto; úselo con --printer ${printer}`,
    correction: (printer, x, y) => `Corregido para la impresora ${printer}: x ${x}, y ${y}`,
  },
  failure: {
    notFound: (file) => `${file}: no existe ese archivo; revise el nombre y la carpeta`,
    folderNotFile: (file) => `${file}: es una carpeta; nombre un archivo de cuarto`,
    notAFile: (file) => `${file}: es un dispositivo y nunca termina; nombre un archivo de cuarto`,
    noPermission: (file) => `${file}: no hay permiso para leerlo; revise los permisos del archivo`,
    unreadable: (file, reason) => `${file}: no se puede leer (${reason})`,
    exists: (file) => `${file}: ya existe y no se tocó; nombre otro archivo`,
    unsaid: (reason) =>
      `no se pudo escribir lo que se pidió (${reason}): revise adónde va la salida estándar`,
    unwritable: (file, reason) => `${file}: no se puede escribir (${reason}); no se cambió nada`,
    notOurs: (folder) =>
      `${folder}: tiene otros archivos que no son un paquete, no se tocó; nombre una carpeta nueva o vacía con -o`,
    sameName: (first, second) =>
      `${first} y ${second} escribirían la misma carpeta; imprímalos uno por uno con -o`,
    noOpenings: "ninguna bocina tiene posición todavía, no hay nada que imprimir",
    unknownSheet: (name, near, names) =>
      `--only ${name}: no hay tal hoja ni oficio; ${near === "" ? "hay" : `¿quiso decir \`${near}\`? Hay`} ${names}`,
    unknownCode: (code, near) =>
      `${code}: ningún hallazgo tiene este código${near === "" ? "" : `; ¿quiso decir \`${near}\`?`}`,
    unknownLanguage: (language) => `--language ${language}: escriba en, es o en,es`,
    unknownUnits: (units) => `--units ${units}: escriba imperial o metric`,
    badPaper: (paper, names) => `--paper ${paper}: escriba uno de ${names}, o un tamaño como 13 in x 19 in`,
    badMargin: (margin) => `--margin ${margin}: escriba una medida de 0 a 30 mm, como 6.35 mm o 1/4"`,
    unknownPrinter: (printer) =>
      `--printer ${printer}: no hay nada guardado; imprima la página con \`baymark ruler\`, mídala y escriba \`baymark ruler --printer ${printer} --across 99.5mm --down 100.2mm\``,
    badProfile: (file) => `${file}: no es una lista de impresoras; arréglelo o bórrelo`,
    badMeasured: (typed) => `${typed}: escriba lo que mide la regla de 100 mm, entre 80 mm y 120 mm`,
    bothMeasured: "--across y --down van juntos, con --printer: se miden las dos reglas",
    unseen: (word, codePoint) =>
      `${word}: lleva un carácter que no se ve, ${codePoint}; escríbalo otra vez sin él`,
    emptyWord:
      'una de las palabras escritas está vacía ("") o solo tiene espacios: falta un nombre ahí, o una variable de la consola no tiene ninguno',
    ours: (message) => `falló el propio baymark, lo que usted escribió está bien: ${message}`,
  },
  usage: {
    "commander.unknownOption": (name) => `no hay opción ${name}`,
    "commander.unknownCommand": (name) => `no hay comando ${name}`,
    "commander.missingArgument": (name) => `falta ${name}`,
    "commander.optionMissingArgument": (name) => `${name} necesita un valor después`,
    "commander.excessArguments": () => "demasiados argumentos",
  },
  usageHint: (suggestion) =>
    suggestion === "" ? "`baymark help` muestra lo que se puede escribir" : `¿quiso decir ${suggestion}?`,
};

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
