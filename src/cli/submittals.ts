/** Which details a submittal holds, and its review once they are reviewed. */
import type { Fingerprints } from '../engine/finished-result.js';
import type { DetailReview } from '../engine/review.js';
import type { RuleSettings } from '../engine/settings.js';
import { reviewSubmittal, type SubmittalReview } from '../engine/submittal/review-submittal.js';
import type { SubmittalDetail } from '../engine/submittal/subject.js';
import { buildDetail, type Reach } from '../model/detail.js';
import { nearest } from '../model/nearest.js';
import { buildProduct } from '../model/product.js';
import { acceptingRoles } from '../engine/acceptance.js';
import { buildProject } from '../model/project.js';
import { buildSubmittals } from '../model/specification.js';
import { buildSubmittal, type Submittal } from '../model/submittal.js';
import type { Stated } from '../model/types.js';
import type { Library } from '../reading/library.js';
import { isPath } from '../reading/references.js';
import type { ReadDocument } from '../reading/types.js';

/** A submittal with the details it holds. */
export interface HeldDetails {
  readonly submittal: ReadDocument;
  readonly details: readonly ReadDocument[];
  readonly unknown: readonly { readonly word: Stated<string>; readonly nearest: string | undefined }[];
}

const folderOf = (uri: string): string => uri.slice(0, uri.lastIndexOf('/') + 1);

/** Of several details with one id the nearest counts: same file, same folder, anywhere in what was read. */
function byId(library: Library, submittal: ReadDocument, id: string): ReadDocument | undefined {
  const alike = library.documents.filter((d) => d.kind === 'detail' && d.id === id);
  const folder = folderOf(submittal.file.uri);
  return alike.find((d) => d.file === submittal.file) ?? alike.find((d) => folderOf(d.file.uri) === folder) ?? alike[0];
}

/** The details of a submittal: those it names, else those of its file, else those of its folder. */
export function detailsHeld(library: Library, submittal: ReadDocument): HeldDetails {
  const all = library.documents.filter((d) => d.kind === 'detail');
  const words = buildSubmittal(submittal).details;
  if (words.length === 0) {
    const own = all.filter((d) => d.file === submittal.file);
    const folder = folderOf(submittal.file.uri);
    const details = own.length > 0 ? own : all.filter((d) => folderOf(d.file.uri) === folder);
    return { submittal, details, unknown: [] };
  }
  const held = new Set(library.detailsNamed(submittal));
  const unknown: { word: Stated<string>; nearest: string | undefined }[] = [];
  const ids = all.map((d) => d.id);
  for (const word of words) {
    // A path that leads nowhere was told when it was read.
    if (isPath(word.value)) continue;
    const found = byId(library, submittal, word.value);
    if (found === undefined) unknown.push({ word, nearest: nearest(word.value, ids) });
    else held.add(found);
  }
  return { submittal, details: all.filter((d) => held.has(d)), unknown };
}

/** Submittals that were asked for, each with its details. */
export function submittalsAsked(library: Library): HeldDetails[] {
  return library.documents
    .filter((d) => d.kind === 'submittal' && library.reviewed(d))
    .map((d) => detailsHeld(library, d));
}

export interface SubmittalRun {
  readonly library: Library;
  /** Reviews of the details, by their documents. */
  readonly reviews: ReadonlyMap<ReadDocument, DetailReview>;
  readonly settings: RuleSettings;
  readonly fingerprints: Fingerprints;
  readonly ran: ReadonlySet<string>;
  readonly today: string;
}

/** Every submittal that was read, by number; of several revisions the highest. */
function readSubmittals(library: Library): Map<string, Submittal> {
  const byNumber = new Map<string, Submittal>();
  for (const document of library.documents) {
    if (document.kind !== 'submittal') continue;
    const submittal = buildSubmittal(document);
    const known = byNumber.get(submittal.number.value);
    if (known === undefined || known.revision.value < submittal.revision.value)
      byNumber.set(submittal.number.value, submittal);
  }
  return byNumber;
}

/** Reviews one submittal. */
export function reviewHeld({ submittal, details, unknown }: HeldDetails, run: SubmittalRun): SubmittalReview {
  const { library } = run;
  const own = library.reach(submittal);
  // Details with the same references share one reach.
  const reaches: Reach[] = [...new Set([own, ...details.map((d) => library.reach(d))])];
  const specifications = [...new Set(reaches.flatMap((r) => r.specifications))];
  const productDocuments = new Map(reaches.toReversed().flatMap((r) => [...r.products]));
  const typed = buildSubmittal(submittal);
  const projectDocument = reaches.find((r) => r.project !== undefined)?.project;
  const project = projectDocument === undefined ? undefined : buildProject(projectDocument);
  const held = details.flatMap((document): SubmittalDetail[] => {
    const review = run.reviews.get(document);
    if (review === undefined) return [];
    const { detail } = buildDetail(document, library.reach(document), (id) => library.elsewhere('product', id));
    return [{ detail, review }];
  });
  const sectionNumber = ({ data }: ReadDocument): string =>
    typeof data['section'] === 'string' ? data['section'] : '';
  return reviewSubmittal(
    {
      submittal: typed,
      details: held,
      unknown,
      sections: specifications.map((s) => ({
        number: sectionNumber(s),
        title: typeof s.data['title'] === 'string' ? s.data['title'] : '',
      })),
      required: specifications.filter((s) => sectionNumber(s) === typed.section.value).flatMap(buildSubmittals),
      products: new Map([...productDocuments].map(([id, document]) => [id, buildProduct(document)])),
      others: readSubmittals(library),
      acceptingRoles: acceptingRoles(project),
      today: run.today,
    },
    {
      settings: run.settings,
      fingerprints: run.fingerprints,
      ran: run.ran,
      projectTitle: project?.title,
    },
  );
}
