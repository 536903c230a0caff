import { prepareTypefaceWhenStale } from "../src/build/prepare-typeface.js";

/** Before any test: what a build would have prepared. */
export default prepareTypefaceWhenStale;
