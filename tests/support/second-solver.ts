import * as highs from 'highs';

/** As much of the second solver as the tests use; its own types describe another form of the module. */
interface SecondSolver {
  readonly solve: (problem: string) => { readonly Status: string; readonly ObjectiveValue: number };
}

/** Loads the solver that checks ours. */
export async function loadSecondSolver(): Promise<SecondSolver> {
  const load = highs.default as unknown as () => Promise<SecondSolver>;
  return load();
}
