/**
 * Measures the built program and prints ratios: times differ between machines and hours, ratios of what is
 * measured in turn in one run hardly do.
 *
 *   npm run bench            (LAPWRIGHT_DIST tries another build)
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { floor } from './floor.mjs';
import { generate } from './generate.mjs';
import { water } from './water.mjs';
import { where } from './where.mjs';

const dist = path.resolve(process.env.LAPWRIGHT_DIST ?? path.join(import.meta.dirname, '../dist'));
const program = path.join(dist, 'lapwright.js');
const floorProgram = path.join(import.meta.dirname, 'floor.mjs');
const { runReview, printLines } = await import(pathToFileURL(path.join(dist, 'index.js')).href);

const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
const print = (text) => process.stdout.write(`${text}\n`);

/** Milliseconds of one process from start to end. */
function processTime(args) {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
  });
  const time = performance.now() - start;
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return time;
}

async function time(run) {
  const start = performance.now();
  await run();
  return performance.now() - start;
}

/** Medians of several things done in turn, so that a busy moment of the machine hits all of them alike. */
async function inTurn(rounds, runs) {
  const times = runs.map(() => []);
  for (let round = 0; round < rounds; round++) {
    for (const [index, run] of runs.entries()) times[index].push(await run());
  }
  return times.map(median);
}

const milliseconds = (value) => `${value.toFixed(value < 100 ? 1 : 0)} ms`;
function row(name, value, against, aim) {
  const ratio = value / against;
  const verdict = aim === undefined ? '' : `   aim: at most ${aim.toFixed(1)}   ${ratio <= aim ? 'met' : 'missed'}`;
  print(`  ${name.padEnd(42)} ${milliseconds(value).padStart(10)}   ${ratio.toFixed(2)} times${verdict}`);
}

async function review(folder) {
  const { review: done } = await runReview({
    inputs: [folder],
    cwd: folder,
    packs: [],
    allowPacks: false,
    today: '2026-01-15',
    skipOthers: false,
    dependents: false,
    failOn: 'never',
  });
  return { text: printLines(done), done };
}

const scratch = mkdtempSync(path.join(tmpdir(), 'lapwright-bench-'));
try {
  for (const [count, rounds] of [
    [100, 9],
    [1000, 3],
  ]) {
    const folder = path.join(scratch, String(count));
    generate(count, folder);
    const { parsed, valid } = floor(folder);
    const { done } = await review(folder);
    const fails = done.results.filter(({ kind }) => kind === 'fail').length;
    print(
      `${count} details: ${parsed} documents (${valid} valid by their schema), ${done.details.length} reviewed, ${done.results.length} results, ${fails} of them findings`,
    );
    if (valid !== parsed || done.details.length !== count)
      throw new Error(
        'The documents to measure with are not what they are meant to be: every one should be valid and every detail reviewed.',
      );
    // Once more, unmeasured: what both need is compiled by now.
    await review(folder);
    floor(folder);
    const [floorMs, reviewMs] = await inTurn(rounds, [
      () => time(() => floor(folder)),
      () => time(() => review(folder)),
    ]);
    print('  in one process, warm');
    row('floor: YAML with positions, and schema', floorMs, floorMs);
    row('whole review', reviewMs, floorMs, 2);
    const [floorProcess, reviewProcess] = await inTurn(Math.max(3, Math.ceil(rounds / 3)), [
      () => processTime([floorProgram, folder]),
      () => processTime([program, 'review', '--format', 'lines', '--fail-on', 'never', folder]),
    ]);
    print('  as a process, from start to end');
    row('floor', floorProcess, floorProcess);
    row('whole review', reviewProcess, floorProcess, 2);
  }

  const empty = path.join(scratch, 'empty.mjs');
  writeFileSync(empty, '');
  const one = path.join(scratch, 'one');
  generate(1, one, 3);
  const [file] = readdirSync(path.join(one, 'details'));
  const [bare, version, single, several] = await inTurn(21, [
    () => processTime([empty]),
    () => processTime([program, '--version']),
    () => processTime([program, 'review', '--format', 'lines', '--fail-on', 'never', path.join(one, 'details', file)]),
    () => processTime([program, 'rules']),
  ]);
  print('start-up');
  row('bare node', bare, bare);
  row('lapwright --version', version, bare, 1.4);
  row('lapwright review of one detail', single, bare, 3);
  row('lapwright rules', several, bare);
  await water(print);
  await where(print, inTurn);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
