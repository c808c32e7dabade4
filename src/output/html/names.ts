/** Names inside the page. They are numbers, so that nothing a document says becomes part of one. */
export const detailName = (detail: number): string => `detail-${detail}`;
export const findingName = (detail: number, finding: number): string => `${detailName(detail)}-finding-${finding}`;
export const viewName = (detail: number, view: number): string => `${detailName(detail)}-view-${view}`;
export const markName = (detail: number, view: number, finding: number): string =>
  `${viewName(detail, view)}-mark-${finding}`;
export const ruleName = (rule: number): string => `rule-${rule}`;
/** Class of everything in the drawings that belongs to a finding. */
export const classOfFinding = (detail: number, finding: number): string => `of-${findingName(detail, finding)}`;
/** The list of what could not be checked. */
export const OPEN_NAME = 'open-questions';
