/** The one tolerance of the house, in mm: exactly at a limit passes, and so does what is nearer to it than this. */
export const EPSILON_MM = 0.01;

/** The same for angles, far below what any tool measures and above the noise of doubles. */
export const EPSILON_DEG = 1e-6;
