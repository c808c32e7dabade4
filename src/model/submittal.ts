/** From a submittal document to what it says of itself: number, contents, stamp, deviations, substitutions. */
import { Entry, given } from './entry.js';
import { buildDeviations } from './project.js';
import { remembered } from './remembered.js';
import type { Deviation, Stated, SubmittalItem } from './types.js';
import type { Locus, ReadDocument } from '../reading/types.js';

/** What is sent in for review. */
export interface Submittal {
  readonly at: Locus;
  readonly document: ReadDocument;
  readonly number: Stated<string>;
  readonly section: Stated<string>;
  readonly title: Stated<string>;
  /** 0 when first sent in, also when not stated. */
  readonly revision: Stated<number>;
  readonly date?: Stated<string>; // ISO date
  /** Roles, never names of persons or companies. */
  readonly from?: Stated<string>;
  readonly to?: Stated<string>;
  readonly previous?: { readonly at: Locus; readonly number: string; readonly revision: number };
  readonly contains: readonly SubmittedItem[];
  /** As written: ids, paths and patterns. */
  readonly details: readonly Stated<string>[];
  readonly contractorReview?: {
    readonly at: Locus;
    readonly stamped: boolean;
    readonly by?: Stated<string>;
    readonly date?: Stated<string>;
    readonly coordinated?: Stated<boolean>;
  };
  readonly deviations: readonly Deviation[];
  readonly substitutions: readonly Substitution[];
}

/** One thing that is sent in. */
export interface SubmittedItem {
  readonly at: Locus;
  readonly index: number;
  readonly item: Stated<SubmittalItem>;
  readonly title: Stated<string>;
  /** Paragraphs of the section that ask for it. */
  readonly answers: readonly Stated<string>[];
  /** Ids of products. */
  readonly of: readonly Stated<string>[];
  readonly dated?: Stated<string>; // ISO date
  readonly methods: readonly Stated<string>[];
  /** Number of the submittal it was sent with, when not with this one. */
  readonly sentWith?: Stated<string>;
}

/** A product proposed in place of the one specified. */
export interface Substitution {
  readonly at: Locus;
  readonly id?: string;
  /** Id or name. */
  readonly specified: Stated<string>;
  /** Id. */
  readonly proposed: Stated<string>;
  readonly paragraph?: Stated<string>;
  readonly reason: Stated<string>;
  readonly effect?: Stated<string>;
  readonly cost?: Stated<string>;
  readonly time?: Stated<string>;
  readonly acceptedBy?: Stated<string>;
  readonly until?: Stated<string>; // ISO date
}

/** The submittal of a checked submittal document. */
export const buildSubmittal = remembered((document: ReadDocument): Submittal => {
  const e = Entry.root(document);
  // The schema requires these three; an empty one keeps the type without a guess.
  const needed = (key: string): Stated<string> => e.word(key) ?? { value: '', at: e.at };
  const number = needed('number');
  const previous = e.get('previous');
  const review = e.get('contractorReview');
  return given<Submittal>({
    at: e.at,
    document,
    number,
    section: needed('section'),
    title: needed('title'),
    revision: e.count('revision') ?? { value: 0, at: e.at },
    date: e.word('date'),
    from: e.word('from'),
    to: e.word('to'),
    previous:
      previous === undefined
        ? undefined
        : {
            at: previous.at,
            number: previous.word('number')?.value ?? number.value,
            revision: previous.count('revision')?.value ?? 0,
          },
    contains: e.items('contains').flatMap(buildItem),
    details: e.words('details'),
    contractorReview:
      review === undefined
        ? undefined
        : given<NonNullable<Submittal['contractorReview']>>({
            at: review.at,
            stamped: review.truth('stamped')?.value === true,
            by: review.word('by'),
            date: review.word('date'),
            coordinated: review.truth('coordinated'),
          }),
    deviations: buildDeviations(document),
    substitutions: e.items('substitutions').flatMap(buildSubstitution),
  });
});

function buildItem(e: Entry, index: number): SubmittedItem[] {
  const item = e.word<SubmittalItem>('item');
  const title = e.word('title');
  if (item === undefined || title === undefined) return [];
  return [
    given<SubmittedItem>({
      at: e.at,
      index,
      item,
      title,
      answers: e.words('answers'),
      of: e.words('of'),
      dated: e.word('dated'),
      methods: e.words('methods'),
      sentWith: e.word('sentWith'),
    }),
  ];
}

function buildSubstitution(e: Entry): Substitution[] {
  const [specified, proposed, reason] = [e.word('specified'), e.word('proposed'), e.word('reason')];
  if (specified === undefined || proposed === undefined || reason === undefined) return [];
  return [
    given<Substitution>({
      at: e.at,
      id: e.word('id')?.value,
      specified,
      proposed,
      paragraph: e.word('paragraph'),
      reason,
      effect: e.word('effect'),
      cost: e.word('cost'),
      time: e.word('time'),
      acceptedBy: e.word('acceptedBy'),
      until: e.word('until'),
    }),
  ];
}
