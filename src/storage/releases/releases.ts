import { hash } from 'node:crypto';
import { RELEASE_MODES } from '../../domain/release/policy.js';
import type { IssuedRelease } from '../../domain/release/issued.js';
import { RELEASE_FORMS } from '../../domain/release/kept-release.js';
import type { KeptCounts, ReleaseEntry, ReleaseForm } from '../../domain/release/kept-release.js';
import type { AttackReport } from '../../domain/release/protect-release.js';
import type { Executor } from '../connection.js';
import { memberOf } from '../row-mapping.js';

/** Whose releases are asked for. */
export type ReleaseReader = { readonly teamId: string } | { readonly commissionerId: string };

/** SHA-256, hexadecimal. */
export function digestOf(content: string | Uint8Array): string {
  return hash('sha256', content, 'hex');
}

/** Releases that a reader may know of, newest first. */
export async function listReleases(db: Executor, reader: ReleaseReader): Promise<readonly ReleaseEntry[]> {
  const rows = await entries(db, reader).orderBy('release.number', 'desc').execute();
  return rows.map(entryOf);
}

/** One release; null when absent or not the reader's. */
export async function findRelease(
  db: Executor,
  reader: ReleaseReader,
  number: number,
): Promise<ReleaseEntry | null> {
  const row = await entries(db, reader).where('release.number', '=', number).executeTakeFirst();
  return row === undefined ? null : entryOf(row);
}

/** The canonical text of a release. @throws Error when it is gone, which the record does not allow */
export async function releaseDocument(db: Executor, number: number): Promise<string> {
  const row = await db
    .selectFrom('release')
    .select('document')
    .where('number', '=', number)
    .executeTakeFirstOrThrow();
  return row.document;
}

/** A release in another form, as written on the day; null in a form that nobody wrote then. */
export async function releaseFile(db: Executor, number: number, form: ReleaseForm): Promise<Buffer | null> {
  const row = await db
    .selectFrom('release_file')
    .select('content')
    .where('number', '=', number)
    .where('form', '=', form)
    .executeTakeFirst();
  return row === undefined ? null : Buffer.from(row.content);
}

/** The forms in which a release is kept. */
export async function releaseForms(db: Executor, number: number): Promise<readonly ReleaseForm[]> {
  const rows = await db.selectFrom('release_file').select('form').where('number', '=', number).execute();
  return rows.map(({ form }) => memberOf(RELEASE_FORMS, form));
}

/** The counts behind every release of a team and financial year, in the order of their issue. */
export async function countsOfYear(
  db: Executor,
  teamId: string,
  financialYear: string,
): Promise<readonly KeptCounts[]> {
  const rows = await db
    .selectFrom('release')
    .select(['number', 'counts', 'attack', 'attacked_at'])
    .where('team_id', '=', teamId)
    .where('financial_year', '=', financialYear)
    .orderBy('number')
    .execute();
  return rows.map((row) => ({
    number: row.number,
    issued: JSON.parse(row.counts) as IssuedRelease,
    attack: JSON.parse(row.attack) as AttackReport,
    attackedAt: row.attacked_at,
  }));
}

/** The highest number given so far; 0 before the first. */
export async function lastReleaseNumber(db: Executor): Promise<number> {
  const row = await db
    .selectFrom('release')
    .select((eb) => eb.fn.max('number').as('last'))
    .executeTakeFirst();
  return Number(row?.last ?? 0);
}

/** What is stored of a new release. */
export interface NewRelease {
  readonly number: number;
  readonly teamId: string;
  readonly commissionerId: string;
  readonly financialYear: string;
  readonly period: string;
  readonly corrects: number | null;
  readonly document: string;
  readonly issued: IssuedRelease;
  readonly attack: AttackReport;
  readonly attackedAt: string;
  readonly releasedAt: string;
  readonly releasedBy: string;
  readonly files: Readonly<Partial<Record<ReleaseForm, Uint8Array>>>;
}

/** Stores a release with its files. */
export async function insertRelease(db: Executor, release: NewRelease): Promise<void> {
  const counts = JSON.stringify(release.issued);
  await db
    .insertInto('release')
    .values({
      number: release.number,
      team_id: release.teamId,
      commissioner_id: release.commissionerId,
      financial_year: release.financialYear,
      period: release.period,
      mode: release.issued.policy.mode,
      corrects: release.corrects,
      document: release.document,
      digest: digestOf(release.document),
      counts,
      counts_digest: digestOf(counts),
      attack: JSON.stringify(release.attack),
      attacked_at: release.attackedAt,
      released_at: release.releasedAt,
      released_by: release.releasedBy,
      withdrawn_at: null,
      withdrawn_by: null,
      withdrawal_reason: null,
    })
    .execute();
  for (const [form, content] of Object.entries(release.files)) {
    await db
      .insertInto('release_file')
      .values({ number: release.number, form, content, digest: digestOf(content) })
      .execute();
  }
}

/** Marks a release as withdrawn; it stays as it is. */
export async function withdrawRelease(
  db: Executor,
  number: number,
  withdrawal: { readonly at: string; readonly by: string; readonly reason: string },
): Promise<void> {
  await db
    .updateTable('release')
    .set({
      withdrawn_at: withdrawal.at,
      withdrawn_by: withdrawal.by,
      withdrawal_reason: withdrawal.reason,
    })
    .where('number', '=', number)
    .execute();
}

function entries(db: Executor, reader: ReleaseReader) {
  const all = db
    .selectFrom('release')
    .innerJoin('team', 'team.id', 'release.team_id')
    .innerJoin('commissioner', 'commissioner.id', 'release.commissioner_id')
    .leftJoin('release as correction', 'correction.corrects', 'release.number')
    .select([
      'release.number as number',
      'release.team_id as teamId',
      'team.name as teamName',
      'release.commissioner_id as commissionerId',
      'commissioner.name as commissionerName',
      'release.period as period',
      'release.mode as mode',
      'release.released_at as releasedAt',
      'release.digest as digest',
      'release.corrects as corrects',
      'correction.number as correctedBy',
      'release.withdrawn_at as withdrawnAt',
      'release.withdrawal_reason as withdrawalReason',
    ]);
  return 'teamId' in reader
    ? all.where('release.team_id', '=', reader.teamId)
    : all.where('release.commissioner_id', '=', reader.commissionerId);
}

type EntryRow = Awaited<ReturnType<ReturnType<typeof entries>['execute']>>[number];

function entryOf({ withdrawnAt, withdrawalReason, mode, ...entry }: EntryRow): ReleaseEntry {
  return {
    ...entry,
    mode: memberOf(RELEASE_MODES, mode),
    withdrawn: withdrawnAt === null ? null : { at: withdrawnAt, reason: withdrawalReason ?? '' },
  };
}
