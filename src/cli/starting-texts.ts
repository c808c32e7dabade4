/** Starting documents around the details: a specification section and a submittal, as Markdown with their blocks. */

export const SPECIFICATION = `# Section 07 27 26 - Fluid-applied membrane air barriers

<!-- The text of the section, numbered as it is cited. "lapwright requirements FILE" proposes requirements from prose. -->

## Part 1 - General

### 1.3 Submittals

A. Product data of each product.

## Part 3 - Execution

### 3.2 Openings

A. Flashing reaches 6 inches minimum onto the wall on all sides.

B. Requirements may stand in a table, under their paragraph:

| Subject  | Property       | Requirement   |
| -------- | -------------- | ------------- |
| sill pan | sill slope     | at least 2 %  |
| sill pan | end dam height | at least 6 in |

\`\`\`yaml specification
kind: specification
section: "07 27 26"
title: Fluid-applied membrane air barriers
requirements:
  - { paragraph: "3.2.A", subject: opening flashing, property: extension onto wall, atLeast: 6 in }
# - { paragraph: "2.2.B", characteristic: elongation, atLeast: 300 %, method: ASTM D412 }   # for the reviewer
submittals:                            # what has to be sent in
  - { paragraph: "1.3.A", item: product data }
\`\`\`
`;

export const SUBMITTAL = `# Submittal 07 27 26-01: openings

<!-- Details may stand in this file too, in blocks that begin with three backticks and "yaml detail". -->

\`\`\`yaml submittal
kind: submittal
number: 07 27 26-01
section: "07 27 26"
title: Openings
revision: 0
# project: project.yaml
date: 2027-01-15
from: contractor
to: architect of record
# details: [details/*.yaml]            # when they stand in other files
contains:
  - { item: shop drawings, title: "Details W-1 to W-4", answers: ["1.3.B"] }
  - { item: product data, title: Product data of the flashing, answers: ["1.3.A"] }
contractorReview: { stamped: true, by: superintendent, date: 2027-01-14, coordinated: true }
# deviations:                          # differences from the section, declared
#   - { id: DEV-1, detail: W-2, paragraph: "3.2.A", reason: Why, effect: What makes up for it }
\`\`\`
`;
