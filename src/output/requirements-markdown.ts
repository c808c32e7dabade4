/** A reading as a Markdown page: the document as a fenced block, then the questions and the counts. */
import { writeMarkdown } from './write-markdown.js';
import type { RootContent } from 'mdast';
import { lineColumn } from '../reading/source.js';
import { oneLine } from './escape.js';
import { cell, heading, item, joint, list, paragraph, table, words } from './markdown-parts.js';
import { countsText, isCitable, paragraphText, REQUIREMENTS_CAUTION } from './requirements.js';
import type { ReadSpecification } from './requirements.js';
import { documentLines, passedOverText, uncitedText } from './requirements-yaml.js';

/** @returns Markdown with a block that Lapwright reads as a specification */
export function printRequirementsMarkdown(read: ReadSpecification): string {
  const { file, reading, section, title } = read;
  const at = (offset: number): string => {
    const { line, column } = lineColumn(file, offset);
    return `${line}:${column}`;
  };
  const document = documentLines(read);
  const children: RootContent[] = [
    heading(1, words(`Requirements read from section ${section}, ${title}`)),
    paragraph(joint(REQUIREMENTS_CAUTION)),
  ];
  if (document.length > 0)
    children.push({ type: 'code', lang: 'yaml', meta: 'specification', value: document.join('\n') });
  const uncited = [...reading.proposals, ...reading.submittals].filter((one) => !isCitable(one));
  if (uncited.length > 0) {
    children.push(
      heading(2, joint('In paragraphs without a number')),
      list(uncited.map((one) => item(words(`${at(one.span.start)} ${uncitedText(one)}`)))),
    );
  }
  if (reading.questions.length > 0) {
    const head = ['Place', 'Paragraph', 'What', 'Read', 'To ask', 'Printed'].map((name) => cell(joint(name)));
    const rows = reading.questions.map((question) => [
      cell(words(at(question.span.start))),
      cell(words(paragraphText(question))),
      cell(words(question.kind)),
      cell(words(question.read)),
      cell(words(question.ask)),
      cell(words(oneLine(question.values.map(({ text }) => text).join(', ')))),
    ]);
    children.push(heading(2, joint('Questions to ask')), table([head, ...rows]));
  }
  if (reading.passedOver.length > 0) {
    children.push(
      heading(2, joint('Numbers passed over')),
      list(reading.passedOver.map((passed) => item(words(passedOverText(file, passed))))),
    );
  }
  children.push(heading(2, joint('Counts')), paragraph(words(`${countsText(reading)}.`)));
  return writeMarkdown({ type: 'root', children });
}
