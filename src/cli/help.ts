/** Help texts of the command line. */

const CAUTION = 'An aid to review. Local code, the contract documents and licensed practice govern.';

export const HELP = `lapwright - reviews wall-detail submittals

Usage:
  lapwright review PATH...        review details: files, folders, globs, or - for standard input
  lapwright matrix PATH...        the compliance matrix: a row for each requirement of the specification
  lapwright compare OLD NEW       what became of each finding between two submissions
  lapwright draw DETAIL           draw a detail as SVG: elevation, sections, layers
  lapwright where DETAIL          tell in which climate zones and counties a wall fits: table, CSV, map
  lapwright rules                 list the rules
  lapwright explain RULE          print the page of a rule
  lapwright requirements SECTION  propose requirements from the text of a specification section
  lapwright new KIND              write a commented starting document
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
  matrix: `lapwright matrix PATH... - print the compliance matrix

A row for each requirement of the specifications that apply to the details of PATH: the paragraph, what it asks, what
the details provide and where, and the result. Requirements that no check holds are listed for the reviewer.

Options:
  --format NAME      terminal (default), markdown, html, csv or sarif
  --output FILE      write to FILE instead of standard output; its ending tells the format when none is named
  --pack PATH        also run the rules of a folder or an installed package; may be given several times
  --allow-packs      also run the packs that the settings of the library name
  --date YYYY-MM-DD  day of the review, by which accepted deviations end (default: today)

Exit status: 0 printed, 2 could not run. Whether the details comply is for "lapwright review" to say.

${CAUTION}
`,
  compare: `lapwright compare OLD NEW - what became of each finding between two submissions

OLD and NEW are each one of:
  PATH               a folder or file of documents
  FILE.sarif         a full SARIF file that lapwright review wrote (not with --upload)
  git:REVISION       the documents as they stood at a branch, tag or commit: git:main, git:v1.2, git:HEAD~1

Options:
  --at PATH          which file or folder a git revision means (default: the other side when that is a path of
                     documents, else the current folder)
  --format NAME      terminal (default), markdown, html, json or sarif (with the state of every result)
  --output FILE      write to FILE instead of standard output; its ending tells the format when none is named
  --fail-on WHICH    new (default): findings that were not there before; standing: any finding; or never
  --level LEVEL      error (default), warning or note: from which level on a finding counts for --fail-on
  --pack PATH        also run the rules of a folder or an installed package; may be given several times
  --date YYYY-MM-DD  day of both reviews, by which accepted deviations end (default: today)

Exit status: 0 nothing that --fail-on asks for, 1 findings, 2 could not run. A folder whose name begins with
"git:" is written ./git:NAME. What changed in the documents is told when both sides are documents.

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
  where: `lapwright where DETAIL - tell in which climate zones and counties of the United States a wall fits

DETAIL is the file that holds the detail. Its project gives code, edition and indoor air; its place does not count.
Two answers are given for each place: by the vapor tables of the code, and by twelve months of vapor diffusion at the
nearest weather station. The table answers: fits, fits with conditions, cannot tell, does not fit. The months answer:
fits, fits with conditions, estimate over limit, cannot tell; they permit and refuse nothing.

Options:
  --format NAME      terminal (default), markdown, csv, json, or svg: a map of the counties
  --by NAME          zone or county (default: zone for terminal and markdown, county for the others)
  --answer NAME      table, months or both (default); a map of both shows the worse of the two
  --detail ID        which detail, when the file holds several
  --output FILE      write to FILE instead of standard output; its ending tells the format when none is named

Columns of the CSV by county: detail, fips, county, state, zone, station, station_name, distance_km (from the middle of
the county); table, table_to_confirm, table_reason; months, plane, month (1 to 12, of the greatest water), and in
kg/m2 peak_kg_per_m2, limit_kg_per_m2 and residual_kg_per_m2 (after twelve months); months_reason.
By zone: station is a typical one, and counties, fit, fit_with_conditions, over_limit and cannot_tell count the
counties of the zone by the months of their own stations. The CSV carries no caution; hand on the one below with it.

Exit status: 0 answered, 2 could not be answered.

A typical year is not a design year, and air that leaks is not counted. ${CAUTION}
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
  requirements: `lapwright requirements SECTION - propose requirements from the text of a specification section

SECTION is a file (.md, or plain text such as .txt), or - for standard input. The text is read for values with their
comparators, test methods, submittals and orders of work. Printed is a specification document in which nothing is
confirmed, then a list of what can be meant in more than one way, with line and column, and the counts.

Options:
  --format NAME      yaml (default), markdown or json
  --output FILE      write to FILE instead of standard output; its ending tells the format when none is named
  --section NUMBER   number of the section, when the text does not give it or gives another
  --title WORDS      title of the section, likewise

Confirm each requirement against the section, take out "confirmed: false", and keep the document beside the details.
Exit status: 0 read, 2 could not be read.

${CAUTION}
`,
  new: `lapwright new KIND [--output FILE] - write a commented starting document

KIND is detail, product, project, specification, submittal or settings. Without --output it goes to standard output.
Specification and submittal are Markdown. An existing file is never overwritten.
`,
};

/** Help of one command; `undefined` when there is no such command. */
export function helpFor(topic: string): string | undefined {
  return Object.hasOwn(TOPICS, topic) ? TOPICS[topic] : undefined;
}
