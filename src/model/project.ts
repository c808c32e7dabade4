/** From project and settings documents to their typed parts. */
import { Entry, given } from './entry.js';
import { remembered } from './remembered.js';
import type { Deviation, IndoorDeclared, LimitSource, Precedence, Project } from './types.js';
import type { ReadDocument } from '../reading/types.js';

/** The project of a checked project document. */
export const buildProject = remembered((document: ReadDocument): Project => {
  const e = Entry.root(document);
  const place = e.get('place');
  const code = e.get('code');
  const indoor = e.get('indoor');
  const site = e.get('siteConditions');
  const work = site?.get('temperature');
  return given<Project>({
    at: { document, path: [] },
    id: document.id,
    title: e.word('title')?.value ?? document.id,
    zone: place?.word('zone'),
    county: place?.word('county'),
    state: place?.word('state'),
    station: place?.word('station'),
    code:
      code === undefined
        ? undefined
        : {
            at: code.at,
            title: code.word<'IRC' | 'IBC' | 'NBC'>('title')?.value ?? 'IBC',
            edition: code.count('edition')?.value ?? Number(code.word('edition')?.value),
          },
    heightMm: e.length('height'),
    designPressurePa: e.get('wind')?.quantity('designPressure', 'pressure'),
    indoor:
      indoor === undefined
        ? undefined
        : given<IndoorDeclared>({
            at: indoor.at,
            temperatureC: indoor.quantity('temperature', 'temperature'),
            humidity: indoor.quantity('humidity', 'fraction'),
            humidityClass: indoor.count('humidityClass') as IndoorDeclared['humidityClass'],
          }),
    constructionType: e.word('constructionType'),
    uncoveredS: site?.quantity('uncovered', 'time'),
    workMinC: work?.quantity('min', 'temperature'),
    workMaxC: work?.quantity('max', 'temperature'),
    standards: e.words('standards'),
    precedence: e.has('precedence') ? e.items('precedence').flatMap(buildPrecedence) : undefined,
    acceptingRoles: e.has('acceptingRoles') ? e.words('acceptingRoles') : undefined,
  });
});

function buildPrecedence(e: Entry): Precedence[] {
  const source = e.word<LimitSource>('source');
  const over = e.word<LimitSource>('over');
  return source === undefined || over === undefined ? [] : [{ at: e.at, source: source.value, over: over.value }];
}

/** Declared deviations, from a detail, a submittal or the settings of the library. */
export const buildDeviations = remembered((document: ReadDocument): readonly Deviation[] => {
  const root = Entry.root(document);
  // A submittal answers one section; what it departs from stands there unless it says otherwise.
  const ownSection = document.kind === 'submittal' ? root.word('section')?.value : undefined;
  return root.items('deviations').flatMap((e) => {
    const [rule, paragraph, reason] = [e.word('rule'), e.word('paragraph'), e.word('reason')];
    if ((rule === undefined && paragraph === undefined) || reason === undefined) return [];
    return [
      given<Deviation>({
        at: e.at,
        id: e.word('id')?.value,
        rule,
        paragraph,
        section: paragraph === undefined ? undefined : (e.word('section')?.value ?? ownSection),
        detail: e.word('detail'),
        of: e.word('of'),
        reason,
        effect: e.word('effect'),
        acceptedBy: e.word('acceptedBy'),
        until: e.word('until'),
      }),
    ];
  });
});
