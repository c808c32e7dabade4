/** Help texts of the command line. */

const CAUTION = 'An aid to review. Local code, the contract documents and licensed practice govern.';

export const HELP = `lapwright - reviews wall-detail submittals

Usage:
  lapwright review PATH...        review details: files, folders, globs, or - for standard input
  lapwright draw DETAIL           draw a detail as SVG: elevation, sections, layers
  lapwright rules                 list the rules
  lapwright explain RULE          print the page of a rule
  lapwright new KIND              write a commented starting document: detail, product, project, settings
  lapwright help COMMAND          options of a command
  lapwright --version

Exit status: 0 nothing at or above the level chosen with --fail-on, 1 findings, 2 could not run.

${CAUTION}
`;

const TOPICS: Readonly<Record<string, string>> = {
  review: `lapwright review PATH... - review details

PATH is a file (.yaml, .yml, .md), a folder, a glob, or - for standard input. Ignore files are respected.

Options:
  --format NAME      terminal (default), lines, markdown, html, sarif or json; may be given several times
  --output FILE      write the format named just before it to FILE instead of standard output
  --fail-on LEVEL    error (default), warning, note or never: from which level on the exit status is 1
  --upload           SARIF for code scanning: located findings only, within upload limits
  --pack PATH        also run the rules of a folder or an installed package; may be given several times
  --allow-packs      also run the packs that the settings of the library name
  --date YYYY-MM-DD  day of the review, by which accepted deviations end (default: today)
  --skip-others      pass over named files that hold no Lapwright document (for commit hooks)
  --dependents       also review details that use a named product, project or specification

Exit status: 0 nothing at or above --fail-on, 1 findings, 2 could not run.

${CAUTION}
`,
  draw: `lapwright draw DETAIL - draw a detail as SVG, with its dimensions, ways of water and findings

DETAIL is the file that holds the detail.

Options:
  --view NAME        elevation (default), section-head, section-sill, section-jamb, section-base, layers,
                     profile (heat and vapor through the wall) or year (water in the wall by month)
  --detail ID        which detail, when the file holds several
  --opening ID       which opening is cut and dimensioned, when the detail has several (default: the first)
  --month NUMBER     month of the profile, 1 to 12 (default: the one in which most water gathers, else the coldest)
  --output FILE      write to FILE instead of standard output
  --pack PATH        also run the rules of a folder or an installed package; may be given several times
  --allow-packs      also run the packs that the settings of the library name
  --date YYYY-MM-DD  day of the review, by which accepted deviations end (default: today)

Membranes are drawn thicker than they are, in their true order. The drawing fits across a sheet of A4.
Exit status: 0 drawn, 2 could not be drawn.

Not for construction. ${CAUTION}
`,
  rules: `lapwright rules - list the rules

Options:
  --pack PATH        also list the rules of a folder or an installed package
  --format NAME      terminal (default) or json
`,
  explain: `lapwright explain RULE - print the page of a rule

Options:
  --pack PATH        also look in a folder or an installed package
  --markdown         print the page as it is written
`,
  new: `lapwright new KIND [--output FILE] - write a commented starting document

KIND is detail, product, project or settings. Without --output it goes to standard output. An existing file is
never overwritten.
`,
};

/** Help of one command; the general help for anything else. */
export function helpFor(topic: string): string {
  return TOPICS[topic] ?? HELP;
}
