import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { REGISTRATIONS, renderRegistration } from './catalogue-registration.js';

/*
 * Writes the registration files of the catalogue, so that a new measure, equation, norm or indicator is one definition
 * file. With --check nothing is written and the exit code is 1 when a file is out of date.
 */
const root = process.cwd();
const isCheck = process.argv.includes('--check');
let outdated = 0;
for (const registration of REGISTRATIONS) {
  const rendered = await renderRegistration(registration, root);
  if (rendered === null) continue;
  const path = join(root, rendered.path);
  const present = existsSync(path) ? readFileSync(path, 'utf8') : null;
  if (present === rendered.text) continue;
  if (isCheck) {
    outdated += 1;
    process.stderr.write(`${rendered.path} is out of date: run npm run catalogue\n`);
  } else {
    writeFileSync(path, rendered.text);
    process.stdout.write(`Wrote ${rendered.path}\n`);
  }
}
process.exitCode = outdated > 0 ? 1 : 0;
