// Runs a script of this project under Node 24 or newer: `node main/hosts/launch/with-node.js <script> [arguments]`.
// Plain JavaScript that Node 18 can run, because it is what an older Node meets first.
//
// The running Node is used when it is new enough and strips types (some distributions build Node without that); else
// the one packaged as the dev dependency `node`. npm is told to run no install scripts (.npmrc), so that package is
// empty after `npm ci`, and its own install script is run here, once, when it is first needed.

import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { constants } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const oldestMajor = 24;
const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
const packageFolder = path.join(root, 'node_modules', 'node');
const packagedNode = path.join(packageFolder, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
const commandFolder = path.join(root, 'node_modules', '.bin');
const describeNode = '[process.version, String(Boolean(process.features.typescript))].join(" ")';

/** Ends the program with one sentence on standard error and exit code 1. */
function giveUp(sentence) {
  console.error(`plumbline: ${sentence}`);
  process.exit(1);
}

/** Whether a Node of this version ('v24.1.0') and ability to strip types can run the project. */
function isUsable(version, stripsTypes) {
  return Number(version.slice(1).split('.')[0]) >= oldestMajor && stripsTypes;
}

/** What the Node at this path says of itself, e.g. 'v24.1.0 true'; empty where it does not start. */
function askNode(executable) {
  const answer = spawnSync(executable, ['-p', describeNode], { encoding: 'utf8', windowsHide: true });
  return answer.status === 0 ? answer.stdout.trim() : '';
}

function isUsableExecutable(executable) {
  const [version, stripsTypes] = askNode(executable).split(' ');
  return Boolean(version) && isUsable(version, stripsTypes === 'true');
}

/** Lets `npx` find the packaged Node too, as npm would have; a convenience, so nothing is lost where it cannot be done. */
function linkCommand() {
  try {
    symlinkSync(path.relative(commandFolder, packagedNode), path.join(commandFolder, 'node'));
  } catch {
    // There already, or a file system without links.
  }
}

/** Runs the install script that npm was told to skip; its output goes to standard error only if it fails. */
function installPackagedNode() {
  const wanted = JSON.parse(readFileSync(path.join(packageFolder, 'package.json'), 'utf8')).version;
  console.error(`plumbline: fetching Node ${wanted} once, because ${process.version} here cannot run this program.`);
  const result = spawnSync(process.execPath, ['installArchSpecificPackage.js'], {
    cwd: packageFolder,
    encoding: 'utf8',
    windowsHide: true,
    env: { ...process.env, npm_config_audit: 'false', npm_config_fund: 'false' },
  });
  if (isUsableExecutable(packagedNode)) linkCommand();
  else console.error(`${result.stdout ?? ''}${result.stderr ?? ''}`);
}

/** The path of a Node that can run the project; ends the program in words where there is none. */
function findNode() {
  if (isUsable(process.version, Boolean(process.features.typescript))) return process.execPath;
  if (!existsSync(path.join(packageFolder, 'package.json'))) {
    giveUp(
      `Node ${oldestMajor} or newer is needed and this is ${process.version}; run "npm ci" first, which brings one.`,
    );
  }
  if (!isUsableExecutable(packagedNode)) installPackagedNode();
  if (!isUsableExecutable(packagedNode)) {
    giveUp(
      `Node ${oldestMajor} or newer is needed, this is ${process.version}, and the packaged one could not be installed ` +
        `for ${process.platform} ${process.arch}; install Node ${oldestMajor} yourself (nodejs.org) and try again.`,
    );
  }
  return packagedNode;
}

/** Starts the script and hands on signals and the way it ended. */
function run(node, args) {
  const pathKey = Object.keys(process.env).find((key) => key.toUpperCase() === 'PATH') ?? 'PATH';
  const searchPath = [path.dirname(node), process.env[pathKey]].filter(Boolean).join(path.delimiter);
  const child = spawn(node, args, { stdio: 'inherit', env: { ...process.env, [pathKey]: searchPath } });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    // A terminal's Ctrl-C reaches the child by itself; twice would read as "stop at once".
    process.on(signal, () => (signal === 'SIGINT' && process.stdin.isTTY) || child.kill(signal));
  }
  child.on('error', (error) => giveUp(`${node} could not be started: ${error.message}.`));
  child.on('exit', (code, signal) => process.exit(code ?? 128 + (constants.signals[signal] ?? 0)));
}

const args = process.argv.slice(2);
if (args.length === 0) giveUp('say which script to run, for example: npm run with-node -- test/run.ts');
run(findNode(), args);
