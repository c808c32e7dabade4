/** Lapwright as a library: read documents, review a detail, print results. */
export { runReview, withPages, type Run, type RunOptions } from './cli/run.js';
export { buildDetail, type Reach } from './model/detail.js';
export { reviewDetail, type DetailReview, type ReviewOptions } from './engine/review.js';
export { buildFace } from './geometry/face.js';
export { runOfWater, type RunOfWater } from './water/run/run.js';
export { readDocuments } from './reading/documents.js';
export { sourceFile } from './reading/source.js';
export { defineRule, type Rule, type Parameter, type RuleSubject } from './engine/rule.js';
export type { Kind, Level, Outcome, Result, Source } from './engine/result.js';
export type { Detail, Layer, Opening, Penetration, Product, Project, Work } from './model/types.js';
export { parseQuantity, isProblem } from './quantity/parse.js';
export { formatQuantity } from './quantity/format.js';
export type { Quantity, QuantityProblem } from './quantity/types.js';
export { printSarif } from './output/sarif.js';
export { printMarkdown } from './output/markdown.js';
export { printLines } from './output/lines.js';
export { printJson } from './output/json.js';
export type { Review } from './output/report.js';
