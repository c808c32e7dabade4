/** Results and notifications as SARIF objects. */
import type {
  Location,
  Notification as SarifNotification,
  PhysicalLocation,
  Region,
  Result as SarifResult,
  Suppression as SarifSuppression,
  ThreadFlowLocation,
} from 'sarif';
import type { FlowStep, Notification, Result, Source, Suppression } from '../engine/result.js';
import type { Locus, SourceFile, Span } from '../reading/types.js';
import { uriReference } from './escape.js';
import { spanOfLocus } from '../reading/locus.js';
import { logicalPath, placeInFile, placeOfLocus } from './place.js';
import type { Clauses } from './sarif-clauses.js';
import { literal, messageText } from './sarif-message.js';

/** All uris are relative to this base, the root of the library; where it lies on a disk is nobody's business. */
export const BASE = 'LIBRARY';
/** Version of our own fingerprint, so that a later one can stand beside it. */
export const FINGERPRINT = 'lapwrightResult/v1';
/** A snippet is for a glance; the file has the rest. */
const SNIPPET_LIMIT = 200;

export interface ResultContext {
  /** Position of each rule in the driver's list. */
  readonly ruleIndex: ReadonlyMap<string, number>;
  readonly cautions: ReadonlyMap<string, string>;
  /** Position of each file in the run's list. */
  readonly artifactIndex: ReadonlyMap<string, number>;
  /** Only in the full record: clauses, snippets, suppressions and facts as properties. */
  readonly clauses?: Clauses;
}

export function sarifResult(result: Result, context: ResultContext): SarifResult {
  const { clauses } = context;
  const full = clauses !== undefined;
  const ruleIndex = context.ruleIndex.get(result.ruleId);
  const sources = result.sources ?? [];
  const taxa = clauses?.references(sources) ?? [];
  const { suppression } = result;
  return {
    ruleId: result.ruleId,
    ...(ruleIndex === undefined ? {} : { ruleIndex }),
    kind: result.kind,
    // SARIF 3.27.10: a kind other than `fail` has no level.
    level: result.kind === 'fail' ? result.level : 'none',
    message: { text: messageText(result, context.cautions.get(result.ruleId)) },
    locations: [
      {
        physicalLocation: physical(result.file, result.span, context, full),
        logicalLocations: [
          {
            name: lastName(result.at),
            fullyQualifiedName: logicalPath(result.at),
            kind: result.at.path.length === 0 ? 'object' : 'property',
          },
        ],
      },
    ],
    ...(result.related?.length
      ? {
          relatedLocations: result.related.map(({ at, message }, index) => ({
            id: index + 1,
            ...spot(at, context),
            message: { text: literal(message) },
          })),
        }
      : {}),
    ...(result.flow?.length ? { codeFlows: [{ threadFlows: [{ locations: flow(result.flow, context) }] }] } : {}),
    ...(taxa.length > 0 ? { taxa } : {}),
    partialFingerprints: { [FINGERPRINT]: result.fingerprint },
    // SARIF 3.27.23: either every result of a run has this list, empty or not, or none has.
    ...(full ? { suppressions: suppression === undefined ? [] : [sarifSuppression(suppression, context)] } : {}),
    properties: full
      ? {
          detail: result.documentId,
          subject: result.subject,
          required: result.required,
          provided: result.provided,
          correct: result.correct,
          missing: result.missing,
          notes: result.notes,
          sources: sources.map(sourceProperties),
        }
      : { detail: result.documentId },
  };
}

/** Accepted deviations are written in the documents under review, settings included: `inSource`. */
function sarifSuppression(suppression: Suppression, context: ResultContext): SarifSuppression {
  return {
    kind: 'inSource',
    status: 'accepted',
    justification: suppression.justification,
    location: spot(suppression.at, context),
    properties: { acceptedBy: suppression.acceptedBy, until: suppression.until },
  };
}

function flow(steps: readonly FlowStep[], context: ResultContext): ThreadFlowLocation[] {
  return steps.map((step, index) => ({
    location: { ...spot(step.at, context), message: { text: literal(step.message) } },
    nestingLevel: 0,
    executionOrder: index + 1,
    importance: step.essential === true ? 'essential' : 'important',
  }));
}

/** A notification about the review itself, at the file it concerns when there is one. */
export function sarifNotification(notification: Notification, context: ResultContext): SarifNotification {
  const { ruleId, uri, documentId } = notification;
  const index = ruleId === undefined ? undefined : context.ruleIndex.get(ruleId);
  return {
    level: notification.level,
    message: { text: literal(notification.message) },
    ...(ruleId === undefined ? {} : { associatedRule: { id: ruleId, ...(index === undefined ? {} : { index }) } }),
    ...(uri === undefined ? {} : { locations: [{ physicalLocation: { artifactLocation: artifact(uri, context) } }] }),
    ...(documentId === undefined ? {} : { properties: { detail: documentId } }),
  };
}

function spot(at: Locus, context: ResultContext): Location {
  return { physicalLocation: physical(at.document.file, spanOfLocus(at), context, false) };
}

function physical(file: SourceFile, span: Span, context: ResultContext, withSnippet: boolean): PhysicalLocation {
  const { line, column, endLine, endColumn } = placeInFile(file, span);
  const region: Region = { startLine: line, startColumn: column, endLine, endColumn };
  if (withSnippet && span.end > span.start && span.end - span.start <= SNIPPET_LIMIT) {
    region.snippet = { text: file.text.slice(span.start, span.end) };
  }
  return { artifactLocation: artifact(file.uri, context), region };
}

function artifact(uri: string, context: ResultContext): { uri: string; uriBaseId: string; index?: number } {
  const index = context.artifactIndex.get(uri);
  return { uri: uriReference(uri), uriBaseId: BASE, ...(index === undefined ? {} : { index }) };
}

function lastName(at: Locus): string {
  return logicalPath(at).split('/').at(-1) ?? at.document.id;
}

function sourceProperties({ basis, citation, provenance, url, at }: Source): object {
  const place = at === undefined ? undefined : placeOfLocus(at);
  return { basis, citation, provenance, url, ...(place === undefined ? {} : { file: place.uri, line: place.line }) };
}
