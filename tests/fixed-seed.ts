import fc from "fast-check";

/**
 * The same random cases at every run, so that a red test is one that was changed, not one that was drawn:
 * `BAYMARK_SEED=7 npm test` draws others.
 */
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.BAYMARK_SEED ?? 1) });
