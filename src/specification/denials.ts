/**
 * What turns a limit around: `do not apply below`, `no gap wider than`, `data older than 24 months is returned`. What is
 * allowed only then (`do not apply until it is below`) turns nothing.
 */
import { ORDERS } from './orders.js';

/** "Start no work", "use no sheet": an order that is denied by its object. */
/** "Work stops once the air falls below": as an order to stop it would. */
const STOPPED = String.raw`(?:work|application|installation|painting|coating|spraying|sealing|priming) (?:stops|ceases|halts|(?:is|shall be|will be|must be) (?:stopped|halted|suspended|postponed|delayed)) (?:if|when|whenever|where|once|as soon as)`;
const NO_OBJECT = String.raw`(?<=^\s*|[.,;:]\s|\b(?:and|shall|must)\s)(?:${ORDERS}|start|accept|permit|hang|paint|sand|lift|work)\s+no`;
/** "Stop spraying when": what is interrupted by a condition. */
const INTERRUPTED = String.raw`(?:stop|halt|cease|suspend|discontinue|interrupt|postpone|defer|delay)\b(?=[^.;]*\b(?:if|when|whenever|where|while|should)\b)`;
const FORBIDS = String.raw`do not|must not|shall not|may not|should not|never|(?:under|in) no (?:circumstances?|cases?|event)|at no (?:time|point|place)|nowhere|${INTERRUPTED}|${STOPPED}|neither (?:${ORDERS})|${NO_OBJECT}`;
const PROHIBITION = new RegExp(
  String.raw`(?<![\w-])(?:${FORBIDS}|cannot|not be (?:applied|installed|used|exposed|stored|permitted|allowed)|prohibit(?:ed|s)?|discard|reject|discontinue|stop (?:work|application)|suspend|unacceptable|not (?:acceptable|permitted|allowed)|(?:fails?|falls? short|(?:is|are|be) (?:rejected|refused|returned|discarded)) (?:if|when)|avoid(?:ing)?|prevent(?:ing)?)\b`,
  'i',
);
/** "No pane is to be set within 6 inches of the edge": near is denied, and not what follows from being late. */
const KEPT_AWAY = new RegExp(
  String.raw`(?<![\w-]|\b(?:that|which|if|when) )(?:${FORBIDS}|(?:no|neither|none of) (?:[\w-]+ ){1,4}(?:shall|may|must|is to|are to))\b(?![^.;]*\b(?:that|which|fail|until|unless|but|not)\b)`,
  'i',
);
/** "Depth does not vary by more than": the verb before the words is denied. */
const DENIED = /\b(?:does|do|did|is|are|was|were|has|have|can|could|will|should|must) not\b[^,;:]*$/i;
/** "Keep the gap from exceeding", "prevent the wall from falling below". */
const KEPT_FROM =
  /\b(?:keep|prevent|hold|stop)\b[^,;.]*\bfrom(?: (?:falling|dropping|sinking|rising|climbing|going|becoming|getting|being))?\s*$/i;
/** "Without gaps wider than", "free of voids larger than", "no gap wider than", "nothing lighter than". */
const LACKING = /\b(?:without|free (?:of|from)|no|none|nothing|nor)(?: an?y?)? (?:[\w-]+ ){0,3}$/i;
/** "No member shall show a set greater than", "no reading differs by more than". */
const NONE_DOES =
  /\b(?:no|neither|none of) (?:[\w-]+ ){1,4}(?:shall|may|must|can|will|is|are|shows?|varies|vary|differs?|deflects?|has|have|goes|comes|starts|begins|proceeds|lies|stands|stays|remains)\b[^,;:]*$/i;
/** "Data older than 24 months is returned": what stands behind refuses what is so. */
const REFUSED =
  /^[^.;\d]{0,60}\b(?:(?:is|are|will be|shall be|must be|to be) (?:not (?:to be )?(?:accepted|acceptable|permitted|allowed|used|applied|installed)|(?:cause|reason) to (?:wait|reject|stop|refuse)|unacceptable|prohibited|forbidden|returned|rejected|refused|discarded|(?:(?:considered|deemed|cause for|grounds for) )?(?:an? )?(?:failures?|failed|defects?|defective|rejection))|constitutes? (?:an? )?(?:failure|defect)s?\b|(?:shall|must|may|will|should|can) not be (?:accepted|used|applied|installed|permitted|allowed))\b/i;
/** "Values below 20 psi fail", "sealant older than 9 months goes back". */
const FAILS =
  /^(?!\s*of\b)(?:(?!\b(?:if|when|where|that|which|until|before|and|or|unless|tests?|readings?|results?)\b)[^.;:,\d]){0,40}\b(?:fails?|falls? short|goes? back|disqualif(?:y|ies))\b/i;
/** "Older than 90 days or colder than 50 degrees F are refused": the words behind hold for both. */
const OTHER_LIMIT = /\bor (?:[a-z]+ ){0,3}than (?:minus )?\d[\d.,/-]*(?=\s)/gi;
/** "Older than 1 year: do not use", "wind over 20 mph: stop work". */
const REFUSED_NEXT =
  /^\s?(?:[:,]\s(?:do not|reject|discard)|:\sno (?:work|application|installation|painting|coating|spraying|sealing|priming)|:\s(?:stop|halt|cease|suspend|postpone|defer|delay)(?! (?:and|when|if|at|after)\b))\b/i;
/** "Humidity above 85 percent stops the work". */
const STOPS =
  /^[^.;:,\d]{0,40}\b(?:stops?|halts?|suspends?|delays?|postpones?|rules? out|prevents?) (?:(?:the|all|any|further) )?(?:work|installation|application|painting|coating|spraying|sealing|priming)\b/i;
/** "Film thinner than 12 mils shall be recoated", "closer than 3 inches only with approval": a limit, or a case. */
const PERHAPS_REFUSED =
  /^[^.;:,\d]{0,40}\b(?:(?:shall|must|may|will|should|can)(?: not be [a-z]+| go\b)|(?:(?:shall|must|may|will|should|can)(?: be)?|(?:is|are) to be) (?:reset|recoated|replaced|removed|redone|reinstalled|corrected|(?:taken|cut|raked|torn) (?:out|off|down)|sent back|thrown away)|only (?:with|after|by|as))\b/i;
/** "Primer is not required above 40 degrees": where something applies, whether it is denied or not. */
const EXEMPTS =
  /\b(?:(?:is|are|be) (?:not )?(?:required|needed|necessary|optional)(?! (?:to|that)\b)|need not be \w+)\b[^.;]*$/i;
/** What is found wanting: "where film is less than 20 mils, recoat", "remove coating that tests below 16 psi". */
const REMEDY =
  'add|apply (?:another|a further|a second|more|additional)|recoat|repair|replace|remove|redo|rework|reinstall|correct|retest|report|notify|stop';
/** "Joints narrower than 1/4 inch: widen" says what is done with those, and limits the others only by that. */
const CASE = new RegExp(
  String.raw`^\s?:\s(?:${REMEDY}|enlarge|widen|deepen|thicken|build up|rout|cut|fill|patch)\b`,
  'i',
);
const REMEDY_AHEAD = new RegExp(
  String.raw`(?:^|[.:;,]\s)\s*(?:${REMEDY})\b[^.;]*\b(?:that|which|where|whose|if|when|testing|reading|measuring)\b[^.;]*$`,
  'i',
);
/** "Repair any blister larger than 2 inches"; with what it is repaired has limits of its own. */
const PUT_RIGHT =
  /(?:^|[.:;,]\s)\s*(?:repair|replace|recoat|redo|rework|correct|retest|remove)\b(?![^.;]*\b(?:with|to|using|by|at)\b(?!\s*$))[^.;,]*$/i;
/** "Not more than 3 of 100 readings may be below": a share that is let off. */
const LET_OFF =
  /\b(?:not? more than|at most|up to|only) (?:\d+|one|two|three|four|five|ten)\b[^.;,]{1,60}\b(?:may|can|shall|must|are|is)\b[^,;]*$/i;
const REMEDY_BEHIND = new RegExp(String.raw`^[^.;:\d]{0,40},\s(?:then )?(?:${REMEDY})\b`, 'i');
/** Of several conditions the last one holds the words: "until it is below", "only if it is above". */
const CONDITIONS =
  /\b(?:(only )?(?:if|when|where|whenever|while)|in case|until|unless|provided(?: that)?|as long as|(?:only )?(?:once|after))\b/gi;
/** An order that begins behind a comma is no longer denied. */
const NEXT_ORDER = new RegExp(String.raw`[,;]\s(?:(?:and|but|then)\s)?(?=(?:${ORDERS})\b)`, 'gi');

/** What the text before the words of a limit makes of them. */
export interface Lead {
  /** It is denied, so the words mean the other end. */
  readonly denied: boolean;
  /** To be within the value is denied. */
  readonly keptAway: boolean;
  /** Something is lacking or denied in the same clause. */
  readonly lacking: boolean;
  /** The words say when something is to be done, and may limit nothing. */
  readonly conditional: boolean;
  /** The words may name what is found wanting, and is put right or let off. */
  readonly remedied: boolean;
}

/** The last of the conditions before the words; undefined where there is none. */
function conditionIn(lead: string): 'allowed only then' | 'then' | undefined {
  const last = [...lead.replace(/^.*;/, '').matchAll(CONDITIONS)].at(-1);
  if (last === undefined) return undefined;
  const isOnly = last[1] !== undefined || /^(?:until|unless|provided|as long as|only)/i.test(last[0]);
  if (isOnly) return 'allowed only then';
  return /^(?:once|after)$/i.test(last[0]) ? undefined : 'then';
}

/** @param text of the sentence up to the words of the limit */
export function readLead(text: string): Lead {
  const next = [...text.matchAll(NEXT_ORDER)].at(-1);
  const lead = next === undefined ? text : text.slice(next.index + next[0].length);
  const condition = conditionIn(lead);
  const isExempt = EXEMPTS.test(lead);
  const isAllowed = condition === 'allowed only then' || isExempt;
  return {
    denied: !isAllowed && (PROHIBITION.test(lead) || DENIED.test(lead) || NONE_DOES.test(lead) || KEPT_FROM.test(lead)),
    keptAway: KEPT_AWAY.test(lead),
    lacking: !isAllowed && LACKING.test(lead),
    conditional: condition === 'then' || isExempt,
    remedied: REMEDY_AHEAD.test(lead) || PUT_RIGHT.test(lead) || LET_OFF.test(lead),
  };
}

/** Whether what stands behind the value refuses it. */
export function isRefused(behind: string): boolean {
  const words = behind.slice(0, 160).replace(OTHER_LIMIT, 'or');
  return REFUSED.test(words) || REFUSED_NEXT.test(behind) || STOPS.test(behind) || FAILS.test(words);
}

/** Whether what stands behind the value may refuse it, or may only say what is done then. */
export function mayBeRefused(behind: string, isConditional: boolean): boolean {
  return PERHAPS_REFUSED.test(behind) || (isConditional && REMEDY_BEHIND.test(behind));
}

/** Whether an order behind the value says what is done with the things that the words name. */
export function isCase(behind: string): boolean {
  return CASE.test(behind);
}
