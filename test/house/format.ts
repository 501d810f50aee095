// `npm run format`: lets Biome format every file and mend what it can mend safely.

import { runScript, toolPath } from './tools.ts';

const outcome = await runScript(toolPath('@biomejs/biome', 'biome'), ['check', '--write'], { show: true });
process.exitCode = outcome.code;
