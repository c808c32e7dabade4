/** Which documents a document refers to, and what is wrong with those references as a whole. */
import type { Path, ReadDocument, ReadingProblem, SourceFile } from './types.js';

/** One reference as written. */
export interface Reference {
  readonly from: ReadDocument;
  readonly path: Path;
  readonly text: string;
}

/** A reference whose files were found. */
export interface FoundReference extends Reference {
  /** A pattern takes what is there; it is no one's fault that a document matches it. */
  readonly isGlob: boolean;
  readonly targets: readonly TargetFile[];
}

/** A file that was read because something names it. */
export interface TargetFile {
  readonly file: SourceFile;
  readonly documents: readonly ReadDocument[];
  /** Something in it has a problem, so what is missing from it may be no one else's fault. */
  readonly isFaulty: boolean;
}

/** A word under `details` of a submittal that names files; any other names a detail by its id. */
export function isPath(word: string): boolean {
  return /[/*{[?]|\.(?:ya?ml|json|md|markdown)$/i.test(word);
}

/** The references of a document: `project` of a detail or submittal, `documents` of any kind, files under `details`. */
export function referencesOf(document: ReadDocument, ownFile: readonly ReadDocument[] = []): Reference[] {
  const found: Reference[] = [];
  const { project, documents, details } = document.data;
  const hasProject = document.kind === 'detail' || document.kind === 'submittal';
  if (hasProject && typeof project === 'string' && !ownProject(document, ownFile))
    found.push({ from: document, path: ['project'], text: project });
  if (Array.isArray(documents)) {
    documents.forEach((text: unknown, index) => {
      if (typeof text === 'string') found.push({ from: document, path: ['documents', index], text });
    });
  }
  if (document.kind === 'submittal' && Array.isArray(details)) {
    details.forEach((text: unknown, index) => {
      if (typeof text === 'string' && isPath(text)) found.push({ from: document, path: ['details', index], text });
    });
  }
  return found;
}

/** The project of the same file that a detail names by its id, where it would otherwise name a file. */
export function ownProject(detail: ReadDocument, ownFile: readonly ReadDocument[]): ReadDocument | undefined {
  return ownFile.find((document) => document.kind === 'project' && document.id === detail.data['project']);
}

/** A problem at a reference. */
export function problemAt(reference: Reference, code: ReadingProblem['code'], message: string): ReadingProblem {
  return { code, message, file: reference.from.file, span: reference.from.spanOf(reference.path) };
}

/** What is wrong with a reference whose file was read: it holds no document, or not the one project of a detail. */
export function contentProblem(reference: FoundReference): ReadingProblem | undefined {
  if (reference.isGlob) return undefined;
  for (const { documents, isFaulty } of reference.targets) {
    if (isFaulty) continue;
    if (documents.length === 0) {
      return problemAt(
        reference,
        'unknown-reference',
        `${reference.text} holds no Lapwright document; a document begins with "kind:".`,
      );
    }
    if (reference.path[0] !== 'project') continue;
    const projects = documents.filter(({ kind }) => kind === 'project');
    if (projects.length === 0) {
      const held = documents.map(({ kind, id }) => `${kind} ${id}`).slice(0, 3);
      return problemAt(
        reference,
        'unknown-reference',
        `${reference.text} holds no project (it holds ${held.join(', ')}); name the file of the project.`,
      );
    }
    if (projects.length > 1) {
      const held = projects.map(({ id }) => id).slice(0, 3);
      return problemAt(
        reference,
        'unknown-reference',
        `${reference.text} holds ${projects.length} projects (${held.join(', ')}); keep one in a file that a detail names.`,
      );
    }
  }
  return undefined;
}

/**
 * References that close a circle, each at the reference that closes it.
 *
 * Details are not passed through: nothing is taken from a detail that merely stands in the same file. Patterns are
 * not followed either, nor are the details that a submittal names: it holds them, it does not use them.
 *
 * @param documents in the order of their files; the order decides which reference of a circle is named
 */
export function circleProblems(
  documents: readonly ReadDocument[],
  found: ReadonlyMap<ReadDocument, readonly FoundReference[]>,
): ReadingProblem[] {
  const problems: ReadingProblem[] = [];
  const done = new Set<ReadDocument>();
  const nextOf = (document: ReadDocument): { readonly to: ReadDocument; readonly by: FoundReference }[] =>
    (found.get(document) ?? [])
      .filter(({ isGlob, path }) => !isGlob && path[0] !== 'details')
      .flatMap((by) =>
        by.targets.flatMap(({ documents: held }) =>
          held.filter(({ kind }) => kind !== 'detail').map((to) => ({ to, by })),
        ),
      );

  for (const start of documents) {
    if (start.kind === 'detail' || done.has(start)) continue;
    // Iterative, for a chain of references may be as long as a library has files.
    const way: {
      readonly document: ReadDocument;
      readonly next: ReturnType<typeof nextOf>;
      readonly by?: FoundReference;
    }[] = [{ document: start, next: nextOf(start) }];
    const onWay = new Set([start]);
    for (let step = way.at(-1); step; step = way.at(-1)) {
      const edge = step.next.shift();
      if (!edge) {
        done.add(step.document);
        onWay.delete(step.document);
        way.pop();
      } else if (onWay.has(edge.to)) {
        const circle = way.slice(way.findIndex(({ document }) => document === edge.to));
        problems.push(
          circleProblem(
            edge.by,
            edge.to,
            circle.map(({ document }) => document),
            circle.slice(1).flatMap(({ by }) => (by ? [by] : [])),
          ),
        );
      } else if (!done.has(edge.to)) {
        way.push({ document: edge.to, next: nextOf(edge.to), by: edge.by });
        onWay.add(edge.to);
      }
    }
  }
  return problems;
}

function circleProblem(
  closing: FoundReference,
  first: ReadDocument,
  circle: readonly ReadDocument[],
  others: readonly FoundReference[],
): ReadingProblem {
  const chain = [...circle, first].map(({ file }) => file.uri);
  const message = `This reference closes a circle: ${chain.join(' refers to ')}. Take one of these references out.`;
  const related = others.map(({ from, path, text }) => ({
    message: `${text} is referred to here`,
    file: from.file,
    span: from.spanOf(path),
  }));
  return { ...problemAt(closing, 'circular-reference', message), related };
}
