/**
 * What it costs to answer for every zone and county, as a multiple of the bare solver: the very years of water that the
 * answer asked for, computed again with nothing around them.
 */
import { Buffer } from 'node:buffer';
import path from 'node:path';
import { build } from 'esbuild';

const root = path.resolve(import.meta.dirname, '..');
const SOLVER = path.join(root, 'src/moisture/condensation.ts');

/** Stands between the judge of a wall and the solver, and keeps what was asked when told to. */
const RECORDED = `
  import { yearOfWater as solve } from ${JSON.stringify(SOLVER)};
  export * from ${JSON.stringify(SOLVER)};
  export const record = { calls: undefined };
  export function yearOfWater(...asked) {
    record.calls?.push(asked);
    return solve(...asked);
  }
`;
const recording = {
  name: 'recording',
  setup(build) {
    build.onResolve({ filter: /\/condensation\.js$|^recorded$/ }, ({ importer, path: asked }) =>
      asked === 'recorded' || importer.endsWith('judge.ts') ? { path: 'recorded', namespace: 'recorded' } : undefined,
    );
    build.onLoad({ filter: /.*/, namespace: 'recorded' }, () => ({ contents: RECORDED, resolveDir: root }));
  },
};

async function program() {
  const { outputFiles } = await build({
    stdin: {
      contents: `
        export { record } from 'recorded';
        export { yearOfWater } from ${JSON.stringify(SOLVER)};
        export { whereFits } from './src/where/where.js';
        export { BUILT_IN_RULES } from './generated/rules.js';
        export { ruleSettings } from './src/engine/settings.js';
        export { runReview } from './src/cli/run.js';
      `,
      resolveDir: root,
      loader: 'ts',
    },
    absWorkingDir: root,
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    alias: { yaml: path.join(root, 'node_modules/yaml/browser/index.js') },
    plugins: [recording],
    logLevel: 'error',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

/** Prints one line for each detail; `inTurn` gives medians of things done in turn. */
export async function where(print, inTurn, rounds = 7) {
  const { record, yearOfWater, whereFits, BUILT_IN_RULES, ruleSettings, runReview } = await program();
  print('Where a wall fits, all zones and counties for one detail (warm):');
  for (const file of ['fixtures/where/P-1-painted-board.yaml', 'fixtures/demo/details/W-1-flanged-window.yaml']) {
    const run = await runReview({
      inputs: [file],
      cwd: root,
      packs: [],
      allowPacks: false,
      today: '2026-01-15',
      skipOthers: false,
      dependents: false,
    });
    const detail = run.detailOf(run.review.details[0]);
    const asked = { rules: BUILT_IN_RULES, settings: ruleSettings(undefined, BUILT_IN_RULES) };
    record.calls = [];
    whereFits(detail, asked);
    const calls = record.calls;
    record.calls = undefined;
    const timed = (work) => () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    };
    const [whole, bare] = await inTurn(rounds, [
      timed(() => whereFits(detail, asked)),
      timed(() => calls.forEach((call) => yearOfWater(...call))),
    ]);
    print(
      `  ${detail.id}: ${whole.toFixed(0)} ms, ${(whole / bare).toFixed(2)} times the ${calls.length} years of water in it alone (${bare.toFixed(0)} ms)`,
    );
  }
}
