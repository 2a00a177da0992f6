// Makes a machine with nothing but Node ready for `npm start` and `npm test`: installs the libraries of the lock file,
// and with --tests what the tests need beside them: a Chromium, pdftotext for what is printed, and meshio for meshes that are
// written. Imports nothing outside Node. Quick when there is nothing to do.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium } from './find-chromium.mjs';
import { findMeshReader } from './mesh-reader.mjs';
import { hasPdfReader } from './pdf-reader.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const onCi = /^(1|true)$/i.test(process.env.CI ?? '');
const LEAST_NODE = 20;

requireNode();
installLibraries();
if (process.argv.includes('--tests')) {
  provideChromium();
  provideReader('pdftotext', 'poppler-utils', 'the printed report', hasPdfReader);
  provideReader('meshio', 'python3-meshio', 'VTU and STL files', () => findMeshReader() !== undefined);
}

function requireNode() {
  const major = Number.parseInt(process.versions.node, 10);
  if (major < LEAST_NODE) fail(`Node ${process.versions.node} is too old: Flathead needs Node ${LEAST_NODE} or newer.`);
}

/** `npm ci` unless node_modules carries the stamp of this very lock file. The stamp is the last thing written. */
function installLibraries() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  const stamp = `${createHash('sha256').update(lock).digest('hex')} ${process.platform}-${process.arch}`;
  const stampFile = join(root, 'node_modules', '.flathead-stamp');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return;
  console.log('Installing the libraries of package-lock.json (npm ci) ...');
  if (!run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']))
    fail('npm ci failed; its message is above. Without a network, copy node_modules from a machine that has one.');
  writeFileSync(stampFile, stamp);
}

function provideChromium() {
  if (findChromium()) return;
  if (process.env.CHROMIUM_PATH) {
    withoutChromium(`CHROMIUM_PATH is ${process.env.CHROMIUM_PATH}, which is not an executable file.`);
    return;
  }
  if (canInstall()) {
    console.log('Installing Chromium for the browser tests (apt-get) ...');
    if (install('chromium') && findChromium()) return;
    withoutChromium('apt-get could not install chromium; its message is above.');
    return;
  }
  withoutChromium('No Chromium was found.');
}

/** A program that reads what is written, from a package of Debian. */
function provideReader(program, name, written, isHere) {
  if (isHere()) return;
  if (canInstall()) {
    console.log(`Installing ${name} for the tests of ${written} (apt-get) ...`);
    if (install(name) && isHere()) return;
  }
  const reason = `No ${program} was found.`;
  const remedy = `Install ${name}.`;
  if (onCi) fail(`${reason} ${remedy}`);
  console.warn(`${reason} The tests of ${written} will be skipped. ${remedy}`);
}

/** As root on a machine with Debian's packages. Ubuntu's package of that name is a stub for another package system. */
function canInstall() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false;
  const release = existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '';
  return existsSync('/etc/debian_version') && !/^ID="?ubuntu/m.test(release);
}

/** Tries with the package lists at hand, then renews them: they are often missing or out of date. */
function install(name) {
  const options = ['-o', 'DPkg::Lock::Timeout=300'];
  const attempt = () => held('apt-get', [...options, 'install', '-y', '--no-install-recommends', name]);
  if (attempt().status === 0) return true;
  held('apt-get', [...options, 'update']);
  const { status, stdout, stderr } = attempt();
  if (status !== 0) console.error(`${stdout ?? ''}${stderr ?? ''}`.trimEnd().split('\n').slice(-20).join('\n'));
  return status === 0;
}

/** On CI a missing browser is a failure; on a desk the browser tests are skipped, and said to be. */
function withoutChromium(reason) {
  const remedy = 'Install Chromium or Chrome, or set CHROMIUM_PATH to one.';
  if (onCi) fail(`${reason} ${remedy}`);
  console.warn(`${reason} The browser tests will be skipped. ${remedy}`);
}

function run(command, args) {
  const stdio = ['ignore', 'inherit', 'inherit'];
  return spawnSync(command, args, { cwd: root, stdio, shell: process.platform === 'win32' }).status === 0;
}

/** Runs without a word; what the command said is in the result. */
function held(command, args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync(command, args, { stdio: ['ignore', 'pipe', 'pipe'], env, encoding: 'utf8', maxBuffer: 1 << 26 });
}

function fail(message) {
  console.error(message);
  process.exit(1);
}
