import type { english } from "../english/index.js";
import { areas } from "./areas.js";
import { cabling } from "./cabling.js";
import { checks } from "./checks.js";
import { commands } from "./commands.js";
import { compare } from "./compare.js";
import { complaints } from "./complaints.js";
import { cover } from "./cover.js";
import { earPlane } from "./ear-plane.js";
import { explain } from "./explain.js";
import { findings } from "./findings.js";
import { found } from "./found.js";
import { frame } from "./frame.js";
import { labels } from "./labels.js";
import { listening } from "./listening.js";
import { marking } from "./marking.js";
import { placing } from "./placing.js";
import { poles } from "./poles.js";
import { ruler } from "./ruler.js";
import { schedules } from "./schedules.js";
import { start } from "./start.js";
import { strips } from "./strips.js";
import { template } from "./template.js";

export const spanish: typeof english = {
  compare,
  complaints,
  start,
  findings,
  earPlane,
  explain,
  found,
  frame,
  commands,
  cover,
  marking,
  template,
  strips,
  schedules,
  areas,
  cabling,
  checks,
  labels,
  listening,
  placing,
  poles,
  ruler,
};
