import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { loadAll } from 'js-yaml';
import type { Location, Log, PhysicalLocation, Result, Run } from 'sarif';
import { describe, expect, it } from 'vitest';
import { DEMO, review, scratch } from '../support/command.js';
import { sarifErrors } from '../support/sarif-schema.js';

/** Changes that break the demo library in many ways: too little, too thin, sealed where water must leave. */
const BREAKING: readonly (readonly [RegExp, string])[] = [
  [/ontoWall: \d+ in/g, 'ontoWall: 1-1/2 in'],
  [/wetFilm: 15 mil/g, 'wetFilm: 5 mil'],
  [/backDam: [^,]+/g, 'backDam: "1/8 in"'],
  [/endDams: \d+ in/g, 'endDams: 1/2 in'],
  [/sill: open/g, 'sill: sealed'],
  [/extends: 1 in/g, 'extends: 1/4 in'],
  [/bondedFaces: 2/g, 'bondedFaces: 3'],
  [/slope: \d+ %,? ?/g, ''],
];
const breakingOf = (text: string): string => BREAKING.reduce((now, [from, to]) => now.replace(from, to), text);

/** A copy of the demo library in which every detail was changed. */
function brokenDemo(): string {
  const folder = scratch({}, DEMO);
  for (const name of detailFiles(folder)) edit(folder, name, breakingOf);
  return folder;
}

function detailFiles(folder: string): string[] {
  return (
    run(DEMO_LOG)
      .artifacts?.flatMap(({ location }) => location?.uri ?? [])
      .filter((uri) => uri.startsWith('details/') && uri.endsWith('.yaml') && folder !== '') ?? []
  );
}

function edit(folder: string, name: string, change: (text: string) => string): void {
  const file = path.join(folder, name);
  const before = readFileSync(file, 'utf8');
  const after = change(before);
  if (after === before) return;
  writeFileSync(file, after);
}

async function sarifText(folder: string, ...more: string[]): Promise<string> {
  const { out, err } = await review(['--format', 'sarif', '--fail-on', 'never', ...more, folder]);
  if (out === '') throw new Error(err);
  return out;
}

const run = (text: string): Run => (JSON.parse(text) as Log).runs[0]!;
const DEMO_LOG = await sarifText(DEMO);
const BROKEN = brokenDemo();
const BROKEN_LOG = await sarifText(BROKEN);
const broken = run(BROKEN_LOG).results ?? [];

describe('the log as a whole', () => {
  it.each<[string, () => Promise<string>]>([
    ['of the demo library', () => Promise.resolve(DEMO_LOG)],
    ['of the demo library with many findings', () => Promise.resolve(BROKEN_LOG)],
    ['of both for upload', () => sarifText(BROKEN, '--upload')],
    [
      'with documents that cannot be read',
      () =>
        sarifText(
          scratch(
            {
              'details/a.yaml': 'kind: detail\nid: [\n',
              'details/b.yaml': '',
              'details/c.yaml': 'kind: detail\nid: C\ntitl: x\n',
            },
            DEMO,
          ),
        ),
    ],
    ['with a pack that cannot be loaded', () => sarifText(DEMO, '--pack', './nowhere')],
  ])('%s is valid by the published schema', async (_name, make) => {
    const log = JSON.parse(await make()) as Log;
    expect(sarifErrors(log)).toBe('');
    expect(log.runs[0]?.columnKind).toBe('utf16CodeUnits');
  });

  it('two runs give the same bytes', async () => {
    expect(await sarifText(BROKEN)).toBe(BROKEN_LOG);
  });

  it('the changes to the demo are found: several rules fail, in every detail', () => {
    const fails = broken.filter(({ kind }) => kind === 'fail');
    expect(new Set(fails.map(({ ruleId }) => ruleId)).size).toBeGreaterThan(3);
    expect(fails.length).toBeGreaterThan(detailFiles(BROKEN).length);
  });

  it('every result has a place, and only a failure has a level', () => {
    for (const result of broken) {
      expect(result.locations, JSON.stringify(result)).toHaveLength(1);
      if (result.kind !== 'fail') expect(result.level).toBe('none');
    }
  });
});

/** Parses every YAML document of a file with another library than the program uses. */
function documentsIn(file: string): unknown[] {
  const text = readFileSync(file, 'utf8');
  if (!file.endsWith('.md')) return loadAll(text);
  return [...text.matchAll(/^```yaml [a-z-]+\n([\s\S]*?)^```/gm)].flatMap((match) => loadAll(match[1] ?? ''));
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** The value that a logical location such as `W-3/work/pan/ontoWall` names. */
function valueAt(documents: readonly unknown[], fullyQualifiedName: string): unknown {
  const [id, ...names] = fullyQualifiedName.split('/');
  let value: unknown =
    documents.find((document) => isRecord(document) && document['id'] === id) ??
    documents.find((document) => isRecord(document) && document['id'] === undefined);
  for (const name of names) {
    if (Array.isArray(value))
      value = value.find((entry) => isRecord(entry) && entry['id'] === name) ?? (value as unknown[])[Number(name)];
    else value = isRecord(value) ? value[name] : undefined;
  }
  return value;
}

/** The text of a region, cut out of the file on the disk by lines and columns alone. */
function cut(
  folder: string,
  { artifactLocation, region }: PhysicalLocation,
): { readonly text: string; readonly before: string; readonly after: string } {
  const lines = readFileSync(path.join(folder, decodeURI(artifactLocation?.uri ?? '')), 'utf8').split('\n');
  const { startLine = 0, startColumn = 0, endLine = 0, endColumn = 0 } = region ?? {};
  const kept = lines.slice(startLine - 1, endLine);
  const first = kept[0] ?? '';
  const last = kept.at(-1) ?? '';
  const text = [...kept.slice(0, -1), last.slice(0, endColumn - 1)].join('\n').slice(startColumn - 1);
  return { text, before: first.slice(0, startColumn - 1), after: last.slice(endColumn - 1) };
}

/** Parses a region by itself; what stands before it on its first line becomes indentation, as in the file. */
const parsed = (text: string, before: string): unknown => loadAll(' '.repeat(before.length) + text)[0];

/** Whether the region is the name of an entry: a colon follows. */
const isKey = (text: string, after: string): boolean => !text.includes(':') && after.trimStart().startsWith(':');

describe('positions', () => {
  const located = broken.map((result) => ({ result, location: result.locations?.[0] as Location }));

  it('each region is exactly the value that its logical location names, as another YAML parser reads it', () => {
    let scalars = 0;
    for (const { result, location } of located) {
      const physical = location.physicalLocation as PhysicalLocation;
      const name = location.logicalLocations?.[0]?.fullyQualifiedName ?? '';
      const about = `${String(result.ruleId)} at ${name}`;
      const { text, before, after } = cut(BROKEN, physical);
      expect(text, about).toBe(text.trim());
      const value = valueAt(documentsIn(path.join(BROKEN, physical.artifactLocation?.uri ?? '')), name);
      expect(value, about).not.toBeUndefined();
      if (!isRecord(value)) {
        // As written, with its quotes when it has them; or one word of it, which the message then names.
        const isWord = String(value).includes(text) && result.message.text?.includes(`"${text}"`) === true;
        if (!isWord) expect([String(value), JSON.stringify(value), `'${String(value)}'`], about).toContain(text);
        scalars += 1;
      } else if (isKey(text, after)) {
        expect(name.split('/').at(-1), about).toBe(text);
      } else if (before.endsWith('```yaml ')) {
        expect(name, about).not.toContain('/');
      } else {
        // A map is pointed at by its one entry that names it: `id: pan`, or `kind: detail` for a document.
        const [[key, own] = []] = Object.entries(parsed(text, before) as object) as [string, unknown][];
        expect(Object.keys(value), about).toContain(key);
        expect(own, about).toEqual(value[key ?? '']);
        if ('id' in value && name.includes('/')) expect(key, about).toBe('id');
      }
    }
    expect(scalars).toBeGreaterThan(located.length / 10);
  });

  it('a failure that tells what was provided as it is written points at those words', () => {
    const told = located.filter(({ result }) => {
      const provided = (result.properties as { provided?: string } | undefined)?.provided;
      return result.kind === 'fail' && provided === '1-1/2 in' && result.ruleId === 'extension/onto-wall';
    });
    expect(told.length).toBeGreaterThan(5);
    for (const { location } of told) {
      expect(cut(BROKEN, location.physicalLocation as PhysicalLocation)).toMatchObject({
        text: '1-1/2 in',
        before: expect.stringMatching(/(?:ontoWall|pastJambs): $/) as string,
      });
    }
  });

  it('snippets are the text of their regions', () => {
    const withSnippet = located.filter(({ location }) => location.physicalLocation?.region?.snippet !== undefined);
    expect(withSnippet.length).toBeGreaterThan(broken.length / 2);
    for (const { location } of withSnippet) {
      expect(cut(BROKEN, location.physicalLocation as PhysicalLocation).text).toBe(
        location.physicalLocation?.region?.snippet?.text,
      );
    }
  });

  it('related places, steps of paths and acceptances begin and end at whole values', () => {
    const others = broken.flatMap((result) => [
      ...(result.relatedLocations ?? []),
      ...(result.codeFlows ?? []).flatMap(({ threadFlows }) =>
        threadFlows.flatMap(({ locations }) => locations.flatMap(({ location }) => location ?? [])),
      ),
      ...(result.suppressions ?? []).flatMap(({ location }) => location ?? []),
    ]);
    expect(others.length).toBeGreaterThan(0);
    for (const { physicalLocation } of others) {
      const { text, before, after } = cut(BROKEN, physicalLocation as PhysicalLocation);
      expect(text).not.toBe('');
      expect(text).toBe(text.trim());
      expect(before).toMatch(/(?:^|[\s[{,])$/);
      expect(after).toMatch(/^(?:$|[\s\]},:])/);
      expect(() => parsed(text, before)).not.toThrow();
    }
  });
});

/** Findings and passes by fingerprint: what must outlive an edit elsewhere. */
const keysOf = (results: readonly Result[]): string[] =>
  results
    .map(
      ({ ruleId, partialFingerprints }) => `${String(ruleId)} ${String(partialFingerprints?.['lapwrightResult/v1'])}`,
    )
    .sort();
const keysAfter = async (change: (folder: string) => void): Promise<string[]> => {
  const folder = brokenDemo();
  change(folder);
  return keysOf(run(await sarifText(folder)).results ?? []);
};
const EXTRA = '  - { id: an-unrelated-look, hold: film readings, by: installer, accept: every coat looked at }\n';
const FIRST = 'details/W-1-flanged-window.yaml';

describe('fingerprints', () => {
  const before = keysOf(broken);

  it('are those of one result each', () => {
    expect(new Set(before).size).toBe(before.length);
    expect(before.length).toBe(broken.length);
  });

  it('outlive inserted lines and comments', async () => {
    expect(
      await keysAfter((folder) => {
        for (const name of detailFiles(folder))
          edit(folder, name, (text) => `# A remark.\n\n${text.replace(/\nwork:/, '\n\n# Another.\n\nwork:')}`);
      }),
    ).toEqual(before);
  });

  it('outlive entries in another order', async () => {
    expect(
      await keysAfter((folder) => {
        for (const name of detailFiles(folder)) {
          // `id: X` goes behind the title, and the documents of the product files change places.
          edit(folder, name, (text) => text.replace(/^(id: .*\n)(title: .*\n)/m, '$2$1'));
        }
        for (const name of ['products/membranes.yaml', 'products/accessories.yaml']) {
          edit(folder, name, (text) =>
            text
              .split(/^---\n/m)
              .map((part) => part.replace(/\n*$/, '\n'))
              .reverse()
              .join('---\n'),
          );
        }
      }),
    ).toEqual(before);
  });

  it('outlive a new step that shifts all the others', async () => {
    const after = await keysAfter((folder) =>
      edit(folder, FIRST, (text) => text.replace(/^work:.*\n/m, (line) => line + EXTRA)),
    );
    expect(before.filter((key) => !after.includes(key))).toEqual([]);
  });

  it('outlive another name of the file', async () => {
    expect(
      await keysAfter((folder) => renameSync(path.join(folder, FIRST), path.join(folder, 'details/another-name.yaml'))),
    ).toEqual(before);
  });

  it('change with the value that was found wrong, and only there', async () => {
    const after = await keysAfter((folder) =>
      edit(folder, FIRST, (text) => text.replace(/(id: jambs.*?ontoWall: )1-1\/2 in/, '$11-1/4 in')),
    );
    const gone = before.filter((key) => !after.includes(key));
    expect(gone.length).toBeGreaterThan(0);
    expect(gone.length).toBeLessThan(before.length / 10);
    expect(gone.some((key) => key.startsWith('extension/onto-wall '))).toBe(true);
  });
});
