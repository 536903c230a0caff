import { block } from "./block.js";
import type { Texts } from "./texts.js";

export const jobSchema = (texts: Texts) =>
  block({
    name: texts.name("Name of the job, printed on every sheet"),
    number: texts.short("Number of the job, read as it is written").optional(),
    revision: texts
      .short("Revision, printed on every sheet so that paper can be matched; A unless said")
      .optional(),
    date: texts.short("Printed as it is given: the sheets never read the clock").optional(),
  }).describe("What the sheets say about the job");
