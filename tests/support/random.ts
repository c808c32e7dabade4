/**
 * What properties draw. A build must not fail by chance, so a run draws the same values each time; `npm run
 * test:search` draws others, to look for what those do not show. fast-check prints the seed of what it finds.
 */
import fc from 'fast-check';

const SEED = 20_261_125;

if (process.env.MODE !== 'search') fc.configureGlobal({ seed: SEED });
