import highsModule from 'highs';

/** What became of a model: values of its best solution, a proof that there is none, or neither within the limits. */
export type Solved =
  | { readonly status: 'solved'; readonly values: ReadonlyMap<string, number> }
  | { readonly status: 'infeasible' }
  | { readonly status: 'gave-up' };

export interface Solver {
  /** Solves a model in LP format. `seconds` is wall-clock time, a guard only: the limit of nodes comes first as a rule. */
  solve(model: string, options: { readonly seconds: number; readonly seed: number }): Solved;
}

/** Nodes of the search tree after which a model is given up; keeps answers the same on fast and slow computers. */
const MOST_NODES = 400;

/** What is used of the package. Its own types are those of its CommonJS build; imported as a module the loader is the default. */
type LoadHighs = () => Promise<{
  readonly solve: (
    model: string,
    options: Readonly<Record<string, string | number | boolean>>,
  ) => { readonly Status: string; readonly Columns: Readonly<Record<string, { readonly Primal: number }>> };
}>;
const loadHighs = highsModule as unknown as LoadHighs;

let loaded: Promise<Solver> | null = null;

/** HiGHS (Huangfu & Hall 2018, Mathematical Programming Computation 10:119-142), compiled to WebAssembly; loaded once. */
export function loadSolver(): Promise<Solver> {
  loaded ??= load();
  return loaded;
}

async function load(): Promise<Solver> {
  const highs = await loadHighs();
  return {
    solve: (model, { seconds, seed }) => {
      const limits = { time_limit: seconds, mip_max_nodes: MOST_NODES, random_seed: seed };
      const found = highs.solve(model, { output_flag: false, ...limits });
      if (found.Status === 'Infeasible') return { status: 'infeasible' };
      if (found.Status !== 'Optimal') return { status: 'gave-up' };
      const values = Object.entries(found.Columns).map(([name, { Primal }]): [string, number] => [name, Primal]);
      return { status: 'solved', values: new Map(values) };
    },
  };
}
