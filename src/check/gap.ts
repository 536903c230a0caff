export type { Gap } from "../place/gaps.js";
