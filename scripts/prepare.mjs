/**
 * Runs after an install from the repository (as a commit hook manager does it) and before packing: builds the
 * program. An install of the published package has no sources and needs nothing.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '..');
if (existsSync(path.join(root, 'node_modules', 'esbuild'))) await import('./build.mjs');
