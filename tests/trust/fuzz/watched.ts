import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Answer, Order } from "./target.js";

/** What became of an order: an answer, or an end that no order may cause. */
export type Outcome =
  | ({ readonly kind: "answer" } & Answer)
  | { readonly kind: "hung" | "died"; readonly how: string };

const TARGET = join(import.meta.dirname, "target.ts");

/** A process that takes orders one after another; one that hangs or dies is replaced for the next. */
export class Watched {
  #child: ChildProcess | null = null;

  #last: Promise<unknown> = Promise.resolve();

  /** Orders wait for one another: a test whose time is over may still be asking when the next one begins. */
  ask(order: Order, mostMs: number): Promise<Outcome> {
    const asked = this.#last.then(() => this.#askNow(order, mostMs));
    this.#last = asked.catch(() => undefined);
    return asked;
  }

  async #askNow(order: Order, mostMs: number): Promise<Outcome> {
    const child = this.#child ?? (await started());
    this.#child = child;
    const outcome = await answered(child, order, mostMs);
    if (outcome.kind !== "answer") this.end();
    return outcome;
  }

  end(): void {
    this.#child?.kill("SIGKILL");
    this.#child = null;
  }
}

async function started(): Promise<ChildProcess> {
  const child = fork(TARGET, {
    execArgv: ["--import", "tsx"],
    stdio: ["ignore", "inherit", "pipe", "ipc"],
    // What a command keeps of printers is not kept in the configuration of whoever runs this.
    env: { ...process.env, BAYMARK_CONFIG: mkdtempSync(join(tmpdir(), "baymark-trust-")) },
  });
  await once(child, "spawn");
  return child;
}

function answered(child: ChildProcess, order: Order, mostMs: number): Promise<Outcome> {
  return new Promise((resolve) => {
    let said = "";
    const hear = (text: Buffer): void => {
      said += text.toString();
    };
    const tell = (outcome: Outcome): void => {
      clearTimeout(limit);
      child.off("message", hearAnswer).off("exit", hearEnd);
      child.stderr?.off("data", hear);
      resolve(outcome);
    };
    const hearAnswer = (answer: Answer): void => tell({ kind: "answer", ...answer });
    const hearEnd = (code: number | null, signal: string | null): void =>
      tell({ kind: "died", how: `${code ?? signal}: ${said.slice(-2000)}` });
    const limit = setTimeout(() => tell({ kind: "hung", how: `no answer in ${mostMs} ms` }), mostMs);
    child.stderr?.on("data", hear);
    child.on("message", hearAnswer).on("exit", hearEnd);
    child.send(order);
  });
}
