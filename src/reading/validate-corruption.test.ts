import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DOCUMENT_KINDS, type DocumentKind, type Path } from './types.js';
import { validateDocument } from './validate.js';

type Tree = Record<string | number, unknown>;

/** The whole-document example of each schema, so that what is corrupted was right before. */
const documents = Object.fromEntries(
  DOCUMENT_KINDS.map((kind) => {
    const schema = JSON.parse(readFileSync(new URL(`../../schemas/${kind}.schema.json`, import.meta.url), 'utf8')) as {
      examples: Tree[];
    };
    return [kind, schema.examples[0] as Tree];
  }),
) as Record<DocumentKind, Tree>;

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const steps = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [
    ...(path.length > 0 ? [path] : []),
    ...steps.flatMap((step) => pathsOf((value as Tree)[step], [...path, step])),
  ];
}

const place = fc.constantFrom(
  ...DOCUMENT_KINDS.flatMap((kind) => pathsOf(documents[kind]).map((path) => ({ kind, path }))),
);

/** A copy in which the entry at `path` was changed by `change`. */
function corrupted(kind: DocumentKind, path: Path, change: (parent: Tree, step: string | number) => void): Tree {
  const copy = structuredClone(documents[kind]);
  const parent = path.slice(0, -1).reduce<Tree>((tree, step) => tree[step] as Tree, copy);
  change(parent, path.at(-1) as string | number);
  return copy;
}

function isAtOrAbove(found: Path, path: Path): boolean {
  return found.length <= path.length && found.every((step, index) => step === path[index]);
}

describe('one corrupted field in a valid document', () => {
  it('starts from documents that are valid', () => {
    for (const kind of DOCUMENT_KINDS) expect(validateDocument(kind, documents[kind]), kind).toEqual([]);
  });

  it('left empty gives exactly one problem, at that field', () => {
    fc.assert(
      fc.property(place, ({ kind, path }) => {
        const problems = validateDocument(
          kind,
          corrupted(kind, path, (parent, step) => (parent[step] = null)),
        );
        expect(problems.map((problem) => problem.path)).toEqual([path]);
      }),
      { numRuns: 400 },
    );
  });

  it('of another shape gives problems at, above or inside that field only, each a sentence', () => {
    const wrong = fc.oneof(
      fc.constant([[[]]]),
      fc.constant({ surprise: { inside: true } }),
      fc.constant('x'.repeat(2001)),
      fc.constant(-1e308),
    );
    fc.assert(
      fc.property(place, wrong, ({ kind, path }, value) => {
        const problems = validateDocument(
          kind,
          corrupted(kind, path, (parent, step) => (parent[step] = value)),
        );
        expect(problems.length).toBeGreaterThan(0);
        for (const problem of problems) {
          expect(isAtOrAbove(problem.path, path) || isAtOrAbove(path, problem.path), problem.path.join('/')).toBe(true);
          expect(problem.message).toMatch(/^["A-Z][^\u0000\n]+[.?\]}\w]$/);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('under an unknown key gives a problem at that key or above it', () => {
    fc.assert(
      fc.property(place, fc.stringMatching(/^[a-z]{1,8}XQ$/), ({ kind, path }, key) => {
        fc.pre(
          typeof path.at(-1) === 'string' &&
            !path.some((step) => step === 'rules' || step === 'sources' || step === 'lapsOnto'),
        );
        const data = corrupted(kind, path, (parent, step) => {
          parent[key] = parent[step];
          Reflect.deleteProperty(parent, step);
        });
        const renamed = [...path.slice(0, -1), key];
        const problems = validateDocument(kind, data);
        expect(problems.some((problem) => isAtOrAbove(problem.path, renamed))).toBe(true);
      }),
      { numRuns: 400 },
    );
  });
});
