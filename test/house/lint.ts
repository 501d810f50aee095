// `npm run lint`: the lint checks alone. The exit code says whether all passed.

import { lintChecks, runChecks } from './checks.ts';

const results = await runChecks(lintChecks);
process.exitCode = results.every((result) => result.problems === '') ? 0 : 1;
