/**
 * The report as one HTML file: the tree of the Markdown report, made harmless, arranged beside the drawings. Works
 * without scripts and without a network.
 */
import type { Element, ElementContent } from 'hast';
import type { Detail } from '../../model/types.js';
import type { Result } from '../../engine/result.js';
import { oneLine } from '../escape.js';
import { byDetail, type DetailResults } from '../grouping.js';
import { letterOf, PLACES, QUESTIONS, TRANSMITTAL } from '../letter/letter.js';
import { reportTree } from '../markdown-tree.js';
import { CAUTION, suggestedAction, type Review, type ReviewedDetail } from '../report.js';
import { cleanHtml } from './clean.js';
import { detailSection, type DetailPart } from './detail.js';
import { drawingsFor } from './drawings.js';
import { cutAt, element, isElement, text, textOf, type Chapter } from './hast.js';
import { OPEN_NAME, ruleName } from './names.js';
import { overview } from './overview.js';
import { page } from './page.js';

/** The typed detail behind a reviewed one; `undefined` when its document could not be typed. */
export type DetailOf = (detail: ReviewedDetail) => Detail | undefined;

/** Drawings are large: beyond this many details a page would be slow to open. */
const MOST_DRAWN = 100;

/** Chapters of the tree that the page folds away or points at, by their headings. */
const OPEN: readonly string[] = ['What could not be checked', QUESTIONS];
const PASSED = 'What passed';
const RULES = 'Rules used and their sources';
/** Looks of single chapters, by their headings. */
const LOOK: Readonly<Record<string, string>> = { [TRANSMITTAL]: 'transmittal', [PLACES]: 'off-paper' };
/** Said on paper of what is on the screen alone. */
const OFF_PAPER =
  'Not printed: where in the files each comment is corrected, the single results with all their sources and ways of water, drawings that mark no finding, what passed, and the rules with their sources. They stand in this report on the screen.';
const PASSED_OFF_PAPER =
  'Not printed: drawings that mark no finding, what passed, and the rules with their sources. They stand in this report on the screen.';

function drawn(
  group: DetailResults,
  isChosen: boolean,
  detailOf: DetailOf,
  titleOf: (ruleId: string) => string,
): Pick<DetailPart, 'drawings' | 'notDrawn'> {
  if (!isChosen) {
    const message = `Not drawn here: a page holds the drawings of ${MOST_DRAWN} details. Review this detail by itself to see them.`;
    return { drawings: [], notDrawn: [message] };
  }
  const detail = detailOf(group.detail);
  return detail === undefined ? { drawings: [], notDrawn: [] } : drawingsFor(detail, group.findings, titleOf);
}

/** Findings point at the list of rules: each item of it gets the name of its rule. */
function nameRules(body: readonly ElementContent[], nameOf: ReadonlyMap<string, string>): ElementContent[] {
  return body.map((block) =>
    !isElement(block, 'ul')
      ? block
      : {
          ...block,
          children: block.children.map((item) => {
            const id =
              isElement(item, 'li') && item.children[0] !== undefined
                ? nameOf.get(textOf(item.children[0]))
                : undefined;
            return isElement(item, 'li') && id !== undefined ? { ...item, properties: { id } } : item;
          }),
        },
  );
}

function otherSection({ heading, body }: Chapter, number: number, ruleNames: ReadonlyMap<string, string>): Element {
  const title = textOf(heading);
  const name = OPEN.includes(title) ? OPEN_NAME : `part-${number}`;
  const titled = element('h2', { id: `${name}-title` }, ...heading.children);
  const look = LOOK[title];
  const properties = {
    id: name,
    ariaLabelledBy: [`${name}-title`],
    ...(look === undefined ? {} : { className: [look] }),
  };
  if (title !== PASSED && title !== RULES) return element('section', properties, titled, ...body);
  const inside = title === RULES ? nameRules(body, ruleNames) : body;
  return element(
    'section',
    properties,
    element('details', { className: ['fold', 'off-paper'] }, element('summary', {}, titled), ...inside),
  );
}

/**
 * @param detailOf called once for each detail that is drawn
 * @returns a whole HTML document, the same bytes for the same review
 * @see https://html.spec.whatwg.org/
 */
export function printHtml(review: Review, detailOf: DetailOf): string {
  const titles = new Map(review.rules.map((rule) => [rule.id, rule.title]));
  const ruleNames = new Map(review.rules.map((rule, i) => [oneLine(rule.id), ruleName(i + 1)]));
  const used = new Set(review.results.map((r: Result) => r.ruleId));
  const ruleOf: DetailPart['ruleOf'] = (id) => {
    const title = titles.get(id);
    const name = ruleNames.get(oneLine(id));
    return title === undefined || name === undefined || !used.has(id) ? undefined : { name, title };
  };

  const { before, chapters } = cutAt('h2', cleanHtml(reportTree(review)));
  const caution = chapters.pop();
  const all = byDetail(review);
  const letter = chapters.splice(0, letterOf(review, all)?.chapters.length ?? 0);
  const reviewed = new Set(review.details);
  const found = all.filter((g) => g.findings.length > 0);
  // In the order of the drawings, whatever was found in them.
  const groups = all.filter((g) => g.findings.length > 0 || reviewed.has(g.detail));
  // Without findings the tree has one chapter that says so.
  const told = chapters.splice(0, found.length);
  const parts = groups.map((group, i): DetailPart => ({
    number: i + 1,
    group,
    chapter: group.findings.length > 0 ? told[found.indexOf(group)] : undefined,
    ruleOf,
    ...drawn(group, i < MOST_DRAWN, detailOf, (id) => titles.get(id) ?? id),
  }));
  const [title, ...opening] = before;
  const { action } = suggestedAction(review);
  return page({
    title: title === undefined ? '' : textOf(title),
    action: action ?? 'no action suggested',
    version: review.toolVersion,
    parts,
    header: [...(title === undefined ? [] : [title]), ...opening],
    // What is to be done comes before the list of details, as in a letter.
    ...(letter.length === 0 ? { overview: overview(parts) } : { isLetter: true }),
    main: [
      ...letter.map((chapter, i) => otherSection(chapter, i + 1, ruleNames)),
      ...(letter.length === 0 ? [] : [overview(parts)]),
      ...parts.map(detailSection),
      ...chapters.map((chapter, i) => otherSection(chapter, letter.length + i + 1, ruleNames)),
      element('p', { className: ['paper-only'] }, text(letter.length === 0 ? PASSED_OFF_PAPER : OFF_PAPER)),
    ],
    footer: caution === undefined ? [element('p', {}, text(CAUTION))] : [caution.heading, ...caution.body],
  });
}
