/**
 * What a detail can use: the documents of its own file, those it refers to, and those the settings refer to, and
 * on from there. It does not depend on which other files are reviewed in the same run.
 */
import { ownProject } from './references.js';
import type { FoundReference, TargetFile } from './references.js';
import type { DocumentKind, ReadDocument, ReadingProblem } from './types.js';

/** Documents within the reach of a detail. */
export interface Reach {
  readonly project?: ReadDocument;
  /** By id; of two with the same id the nearer one, and a `repeated-id` problem. */
  readonly products: ReadonlyMap<string, ReadDocument>;
  /** In the order they are referred to. */
  readonly specifications: readonly ReadDocument[];
}

interface Entry {
  readonly reach: Reach;
  readonly documents: readonly ReadDocument[];
}

/** Finds what details can use; details with the same references share one answer. */
export class Reaches {
  readonly #known = new Map<string, Entry>();
  readonly #numbers = new Map<TargetFile, number>();

  constructor(
    private readonly fileOf: (document: ReadDocument) => TargetFile | undefined,
    private readonly found: ReadonlyMap<ReadDocument, readonly FoundReference[]>,
    private readonly settings: ReadDocument | undefined,
  ) {}

  of(detail: ReadDocument): Reach {
    return this.#entry(detail).reach;
  }

  /**
   * Ids that two documents of one kind share within the reach of a detail, each pair once; and details of one file
   * with the same id.
   */
  repeatedIds(details: readonly ReadDocument[]): ReadingProblem[] {
    const problems: ReadingProblem[] = [];
    const told = new Set<ReadDocument>();
    const groups = new Set<readonly ReadDocument[]>();
    for (const detail of details) {
      groups.add(this.#entry(detail).documents);
      const file = this.fileOf(detail);
      if (file) groups.add(file.documents);
    }
    for (const documents of groups) {
      const firsts = new Map<string, ReadDocument>();
      for (const document of documents) {
        if (document.data['id'] !== document.id) continue; // The id is the name of its file.
        const key = `${document.kind}\0${document.id}`;
        const first = firsts.get(key);
        if (!first) firsts.set(key, document);
        else if (first !== document) {
          const [earlier, later] = inOrder(first, document);
          if (!told.has(later)) problems.push(repeatedId(earlier, later));
          told.add(later);
        }
      }
    }
    return problems;
  }

  #entry(detail: ReadDocument): Entry {
    const own = this.fileOf(detail);
    const references = this.found.get(detail) ?? [];
    const named = references.filter(({ path }) => path[0] === 'project').flatMap(({ targets }) => targets);
    const others = references.filter(({ path }) => path[0] === 'documents').flatMap(({ targets }) => targets);
    const hasOwn = own?.documents.some(({ kind }) => kind !== 'detail') === true;
    // A detail that names its project has that one or, when its file has problems, none.
    const isNamed = typeof detail.data['project'] === 'string';
    const ownNamed = ownProject(detail, own?.documents ?? []);
    const key = `${ownNamed?.id ?? ''}|${isNamed ? 'named' : ''}|${[hasOwn ? [own] : [], named, others]
      .map((files) => files.map((file) => this.#number(file)).join(' '))
      .join('|')}`;
    const known = this.#known.get(key);
    if (known) return known;
    const documents = this.#closure([...(hasOwn ? [own] : []), ...named, ...others, ...this.#targets(this.settings)]);
    const ofKind = (kind: DocumentKind): ReadDocument[] => documents.filter((document) => document.kind === kind);
    const products = new Map<string, ReadDocument>();
    for (const product of ofKind('product')) if (!products.has(product.id)) products.set(product.id, product);
    const project =
      ownNamed ??
      (isNamed ? named.flatMap((file) => file.documents).find(({ kind }) => kind === 'project') : ofKind('project')[0]);
    const entry = {
      documents,
      reach: { products, specifications: ofKind('specification'), ...(project && { project }) },
    };
    this.#known.set(key, entry);
    return entry;
  }

  /** All documents of the files and of those they refer to, nearer ones first, details left out. */
  #closure(files: readonly TargetFile[]): ReadDocument[] {
    const reached = new Set<ReadDocument>();
    const open = [...files];
    for (let at = 0; at < open.length; at++) {
      for (const document of open[at]?.documents ?? []) {
        if (document.kind === 'detail' || reached.has(document)) continue;
        reached.add(document);
        open.push(...this.#targets(document));
      }
    }
    return [...reached];
  }

  #targets(document: ReadDocument | undefined): TargetFile[] {
    return (document ? (this.found.get(document) ?? []) : [])
      .filter(({ path }) => path[0] !== 'details')
      .flatMap(({ targets }) => targets);
  }

  #number(file: TargetFile): number {
    const number = this.#numbers.get(file) ?? this.#numbers.size;
    this.#numbers.set(file, number);
    return number;
  }
}

/** By place, so that the same two documents yield the same problem from whichever detail they are seen. */
function inOrder(a: ReadDocument, b: ReadDocument): readonly [ReadDocument, ReadDocument] {
  const isSwapped = a.file === b.file ? a.spanOf(['id']).start > b.spanOf(['id']).start : a.file.uri > b.file.uri;
  return isSwapped ? [b, a] : [a, b];
}

function repeatedId(first: ReadDocument, second: ReadDocument): ReadingProblem {
  return {
    code: 'repeated-id',
    message: `The ${second.kind} id ${second.id} stands here and in ${first.file.uri}; give one of the two another id.`,
    file: second.file,
    span: second.spanOf(['id']),
    related: [{ message: `${first.id} stands here first`, file: first.file, span: first.spanOf(['id']) }],
  };
}
