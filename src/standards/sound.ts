/*
 * Sound in air and the level that rooms are set to.
 */

/** Ice point on the absolute scale, K (exact by definition of the degree Celsius). */
const ICE_POINT_K = 273.15;
/** ISO 9613-1: speed of sound at the reference air temperature of 293.15 K. */
const REFERENCE_SPEED_M_PER_S = 343.2;
const REFERENCE_K = 293.15;

/**
 * Speed of sound in air in m/s, ISO 9613-1: c = 343.2 sqrt(T / 293.15 K). Moisture is left out: at 20 °C half
 * saturated air carries sound 0.2 % faster, 4 µs in a metre's 2.9 ms.
 */
export const speedOfSoundMPerS = (temperatureC: number): number =>
  REFERENCE_SPEED_M_PER_S * Math.sqrt((temperatureC + ICE_POINT_K) / REFERENCE_K);

/** Where the file says nothing; the temperature that ISO 9613-1 refers to. */
export const USUAL_TEMPERATURE_C = 20;

/** SMPTE RP 200: 85 dB(C) for each front channel (read in secondary texts; the document itself was not). */
export const REFERENCE_LEVEL_DB = 85;
/** The same practice: its signal stands 20 dB under full scale, so peaks reach 105 dB. */
export const REFERENCE_HEADROOM_DB = 20;

/** The voltage of data sheets, "2.83 V": the square root of 8, which is 1 W into 8 ohm. */
export const SENSITIVITY_VOLTS = Math.sqrt(8);
/** The distance of data sheets. */
export const SENSITIVITY_DISTANCE_MM = 1000;

/** Delays in samples are at this rate: the one of film and video sound (AES5, from memory). */
export const SAMPLES_PER_S = 48_000;
