import { measureImports } from './import-time.js';
import { measureNation } from './national-report.js';
import { measurePages } from './page-time.js';
import { measurePosts } from './post-throughput.js';
import { measureReleases } from './release-utility.js';
import { measureReports } from './report-time.js';
import { renderTable } from './table.js';
import type { Line } from './table.js';
import { openWorkspace } from './workspace.js';
import type { Workspace } from './workspace.js';

/** The whole run is broken off after this long, whatever hangs. */
const LIMIT_MS = 40 * 60_000;

const MEASUREMENTS: readonly ((workspace: Workspace) => Promise<readonly Line[]>)[] = [
  async (workspace) => [await measurePosts(workspace)],
  measurePages,
  measureImports,
  measureReports,
  measureNation,
  measureReleases,
];

const watchdog = setTimeout(() => {
  console.error('The benchmark took longer than forty minutes and was broken off.');
  process.exit(1);
}, LIMIT_MS);
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(1));

const workspace = await openWorkspace();
try {
  const lines: Line[] = [];
  for (const measure of MEASUREMENTS) lines.push(...(await measure(workspace)));
  console.log(renderTable(lines));
} finally {
  workspace.remove();
  clearTimeout(watchdog);
}
