/** Reads documents from text, without a file system: for rule pages and for tests of the model and geometry. */
import { reviewDetail } from '../../src/engine/review.js';
import type { Result } from '../../src/engine/result.js';
import type { Rule } from '../../src/engine/rule.js';
import { ruleSettings } from '../../src/engine/settings.js';
import { buildFace } from '../../src/geometry/face.js';
import type { WallFace } from '../../src/geometry/types.js';
import { buildDetail, type Reach } from '../../src/model/detail.js';
import type { Detail } from '../../src/model/types.js';
import { readDocuments } from '../../src/reading/documents.js';
import { sourceFile } from '../../src/reading/source.js';
import type { ReadDocument } from '../../src/reading/types.js';

export interface Page {
  readonly documents: readonly ReadDocument[];
  /** Everything of the page is within reach; a project is the one named, or the only one there is. */
  reach(detail: ReadDocument): Reach;
  detail(id?: string): Detail;
  face(id?: string): WallFace;
}

/** Reads a text as a file of the given name; any problem in it is a failure of the test. */
export async function readPage(text: string, name = 'page.md'): Promise<Page> {
  const { documents, problems } = await readDocuments(sourceFile(name, text), { named: true });
  if (problems.length > 0)
    throw new Error(
      problems
        .map((p) => `${name}: ${p.code}: ${p.message} [${text.slice(p.span.start, p.span.end).slice(0, 60)}]`)
        .join('\n'),
    );
  const of = (kind: string): ReadDocument[] => documents.filter((d) => d.kind === kind);
  const reach = (detail: ReadDocument): Reach => {
    const projects = of('project');
    const named = detail.data['project'];
    const project =
      named === undefined ? (projects.length === 1 ? projects[0] : undefined) : projects.find((p) => p.id === named);
    if (named !== undefined && project === undefined)
      throw new Error(`${name}: no project ${JSON.stringify(named)} on the page`);
    return {
      ...(project === undefined ? {} : { project }),
      products: new Map(of('product').map((d) => [d.id, d])),
      specifications: of('specification'),
    };
  };
  const page: Page = {
    documents,
    reach,
    detail: (id) => {
      const document = of('detail').find((d) => id === undefined || d.id === id);
      if (document === undefined) throw new Error(`${name}: no detail ${id ?? ''}`);
      const { detail, problems: found } = buildDetail(document, reach(document));
      if (detail === undefined) throw new Error(found.map((p) => `${name}: ${p.message}`).join('\n'));
      return detail;
    },
    face: (id) => buildFace(page.detail(id)),
  };
  return page;
}

/** Reviews one detail with the given rules and default settings. */
export function reviewWith(detail: Detail, rules: readonly Rule[]): Result[] {
  const { results, notifications } = reviewDetail(detail, {
    rules,
    settings: ruleSettings(undefined, rules),
    today: '2026-01-15',
  });
  if (notifications.length > 0) throw new Error(notifications.map((n) => n.message).join('\n'));
  return [...results];
}
