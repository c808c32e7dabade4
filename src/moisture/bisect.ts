/**
 * Halves a bracket until its ends are `tolerance` apart.
 *
 * @param holds false at `falseAt` and true at `trueAt`, with one change between them
 * @returns the end at which it holds, so that rounding never turns a failing value into the answer
 * @see Method of bisection
 */
export function bisect(holds: (x: number) => boolean, falseAt: number, trueAt: number, tolerance: number): number {
  let no = falseAt;
  let yes = trueAt;
  while (Math.abs(yes - no) > tolerance) {
    const middle = (no + yes) / 2;
    if (middle === no || middle === yes) break;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
