/** Words about what each seat hears: the report, the listening sheet and the sound-check sheet. */
export const listening = {
  title: "Listening report",
  atSeats: "What each seat hears",
  seat: (name: string) => `Seat: ${name}`,
  model:
    "Levels: inverse square law, and a MODEL of the stated coverage: a smooth lobe, -6 dB at half the coverage angle, alike at every frequency; past that angle it only says that there is less. No reflections of the room.",
  delays: (celsius: string) =>
    `Delays align each loudspeaker with the furthest one at that seat; air at ${celsius}, samples at 48 kHz.`,
  power: "Power at the loudspeaker",
  powerFor: (target: string, headroom: string, seat: string) =>
    `For ${target} and ${headroom} of headroom at ${seat}, one loudspeaker alone.`,
  columns: {
    speaker: "speaker",
    seat: "seat",
    direction: "azimuth / elevation",
    distance: "distance",
    window: "window",
    offAxis: "off axis",
    level: "level",
    delay: "delay",
    samples: "samples",
    needed: "needed",
    stated: "stated",
    headroom: "headroom left",
  },
  inside: "inside",
  outside: "OUTSIDE",
  byDistance: "by distance alone",
  unknown: "not known",
};
