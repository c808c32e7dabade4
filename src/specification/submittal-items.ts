/** What a section asks to be submitted: the groups of federal guides, labelled paragraphs and sentences with "submit". */
import type { Span } from '../reading/types.js';
import type { OutlineNode } from './outline.js';
import { sourceSpan } from './prose.js';
import { sentencesOf } from './sentences.js';

export type SubmittalItem =
  | 'product data'
  | 'shop drawings'
  | 'samples'
  | 'certificates'
  | 'test reports'
  | 'qualifications'
  | 'mock-up'
  | 'field quality plan'
  | 'manufacturer instructions'
  | 'compatibility statement'
  | 'warranty'
  | 'schedule'
  | 'closeout';

export interface Submittal {
  readonly number?: string;
  readonly item: SubmittalItem;
  /** Of what: the words of the section. */
  readonly of?: string;
  readonly text: string;
  readonly span: Span;
}

/** The more particular first: "certified test reports" are reports, "test reports of compatibility" statements. */
const ITEMS: readonly (readonly [SubmittalItem, RegExp])[] = [
  ['mock-up', /\bmock-?ups?\b/i],
  ['compatibility statement', /\bcompatib/i],
  ['shop drawings', /\bshop drawings?\b|\bcoordination drawings?\b/i],
  [
    'field quality plan',
    /\b(?:quality (?:control|assurance) (?:plan|program|manual)|field quality|testing (?:and inspection )?plan)\b/i,
  ],
  ['test reports', /\breports?\b|\btest (?:results?|data)\b|\btests?\b/i],
  ['warranty', /\bwarrant(?:y|ies)\b|\bguarantees?\b/i],
  ['qualifications', /\bqualif|\baccredit|\bexperience\b|\bcertified (?:installers?|applicators?)/i],
  ['certificates', /\bcertificat(?:es?|ions?)\b|\bcertif/i],
  ['manufacturer instructions', /\binstructions?\b|\binstallation (?:guides?|manuals?)\b|\bsafety data sheets?\b/i],
  ['closeout', /\bclose-?out\b|\bmaintenance data\b|\boperation and maintenance\b|\brecord documents?\b/i],
  ['samples', /\bsamples?\b/i],
  ['schedule', /\bschedules?\b/i],
  ['product data', /\bproduct data\b|\btechnical data\b|\bdata sheets?\b|\bproduct literature\b|\bcatalog/i],
];

const GROUPS: Readonly<Record<string, SubmittalItem>> = {
  '02': 'shop drawings',
  '03': 'product data',
  '04': 'samples',
  '06': 'test reports',
  '07': 'certificates',
  '08': 'manufacturer instructions',
  '11': 'closeout',
};

function itemIn(words: string): SubmittalItem | undefined {
  return ITEMS.find(([, pattern]) => pattern.test(words))?.[0];
}

const GROUP = /^SD-(\d\d)\b/;
const CODE = /;\s*[GS]\b.*$|\[.*$/;
const SUBMIT =
  /^(?:also,?\s+)?(?:the contractor (?:shall|must) )?(?:submit|furnish copies of|provide submittals? of)\b/i;

/** Reads the submittals of the nodes, in the order of the text. */
export class SubmittalReader {
  readonly found: Submittal[] = [];
  /** Number, item and what it is of: a thing that is asked for twice in one paragraph is asked for once. */
  readonly #known = new Set<string>();
  /** Paragraphs that are entries of such a list, and hold no requirements of other kinds. */
  readonly entries = new Set<OutlineNode>();
  #group: string | undefined;

  read(node: OutlineNode, titles: readonly string[]): void {
    if (node.type !== 'paragraph') {
      this.#group = undefined;
      return;
    }
    const { text } = node.prose;
    const group = GROUP.exec(text)?.[1];
    if (group !== undefined) {
      this.#group = group;
      this.entries.add(node);
      return;
    }
    if (this.#group !== undefined) {
      const name = text.replace(CODE, '').trim();
      if (name.length > 0 && name.length < 120 && !/[.:]$/.test(name)) {
        this.entries.add(node);
        const item =
          this.#group === '02' || this.#group === '08' ? GROUPS[this.#group] : (itemIn(name) ?? GROUPS[this.#group]);
        if (item !== undefined) this.#add(node, 0, text.length, item, ofWhat(name));
        return;
      }
      this.#group = undefined;
    }
    this.#sentences(node, titles);
  }

  #sentences(node: OutlineNode, titles: readonly string[]): void {
    const { text } = node.prose;
    const isList = titles.some((title) => /\bsubmittals?\b/i.test(title));
    for (const { start, end } of sentencesOf(node.prose)) {
      const sentence = text.slice(start, end);
      const label = /^([A-Za-z][^:.]{2,80}):/.exec(sentence)?.[1];
      const labelled =
        label !== undefined && (isList || SUBMIT.test(sentence.slice(label.length + 1).trim()))
          ? itemIn(label)
          : undefined;
      // "Submit documentation" is named by the title it stands under.
      const byTitle = /^submit documentation\b/i.test(sentence) ? itemIn(titles.at(-1) ?? '') : undefined;
      const named = labelled ?? byTitle ?? (SUBMIT.test(sentence) ? itemIn(sentence.slice(0, 160)) : undefined);
      // "Product data for each type of sealant." in a list of submittals needs no verb.
      const item =
        named ??
        (isList && start === 0 && text.length < 200 && /^[A-Z][\w'"= /-]+(?: for\b|$|[.,])/.test(sentence)
          ? itemIn(sentence.slice(0, 60))
          : undefined);
      if (item !== undefined) this.#add(node, start, end, item, subjectIn(label ?? sentence));
    }
  }

  #add(node: OutlineNode, start: number, end: number, item: SubmittalItem, of: string | undefined): void {
    const what = of?.trim() ?? '';
    const key = JSON.stringify([node.number, item, what]);
    if (this.#known.has(key)) return;
    this.#known.add(key);
    this.found.push({
      ...(node.number !== undefined && { number: node.number }),
      item,
      ...(what !== '' && { of: what }),
      text: node.prose.text.slice(start, end),
      span: sourceSpan(node.prose, start, end),
    });
  }
}

/** `for wall assemblies tested ...` -> wall assemblies. */
function subjectIn(words: string): string | undefined {
  return /\b(?:for|of) ((?:each |all )?[\w' -]{3,60}?)(?=$|[,.:;]| (?:is|are|was|were|that|which|showing|indicating|including|verifying|tested|and|in|to|for|by|with)\b)/i.exec(
    words,
  )?.[1];
}

/** `Qualifications of Installer` -> Installer; `Air Barrier Shop Drawings` -> Air Barrier. */
function ofWhat(name: string): string {
  const behind = /^[\w ]*\b(?:of|for) (?:the )?(.+)$/i.exec(name)?.[1];
  return (
    behind ??
    name.replace(
      /\s*\b(?:shop drawings?|product data|samples?|certificates?|test reports?|printed instructions|manufacturer's (?:printed )?instructions)$/i,
      '',
    )
  );
}
