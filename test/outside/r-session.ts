import { readFileSync } from 'node:fs';
import { WebR } from 'webr';

/** R running inside this process, with the plain formulas of helpers.R loaded. */
export type RSession = {
  /** Numbers of a vector expression; NA becomes NaN. */
  readonly numbers: (expression: string) => Promise<number[]>;
  readonly close: () => void;
};

export async function startR(): Promise<RSession> {
  const webR = new WebR({ interactive: false });
  await webR.init();
  await webR.evalRVoid(readFileSync(new URL('helpers.R', import.meta.url), 'utf8'));
  await webR.evalRVoid(readFileSync(new URL('robust-and-penalised.R', import.meta.url), 'utf8'));
  return {
    numbers: async (expression) => {
      const values = await webR.evalRRaw(`as.numeric(suppressWarnings(${expression}))`, 'number[]');
      return values.map((value) => value ?? Number.NaN);
    },
    close: () => webR.close(),
  };
}
