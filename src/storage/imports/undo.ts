import type { Executor } from '../connection.js';

const IDS_IN_ONE_STATEMENT = 500;

/** What an import brought in, by kind. */
export interface ImportedIds {
  readonly patients: readonly string[];
  readonly referrals: readonly string[];
  readonly assessments: readonly string[];
  readonly counted: readonly string[];
}

/**
 * Whether anything was built on what an import brought in: a correction, a session, an offer, a draft, an entry of the
 * diary, an acknowledgement, another referral, a merge.
 *
 * @param versions the version at which the import left each of its referrals
 */
export async function isBuiltOn(
  db: Executor,
  { patients, referrals, assessments }: ImportedIds,
  versions: ReadonlyMap<string, number>,
): Promise<boolean> {
  const [imported, importedAssessments] = [new Set(referrals), new Set(assessments)];
  return (
    (await some(patients, async (ids) => {
      const people = await db
        .selectFrom('patient')
        .select(['version', 'merged_into'])
        .where('id', 'in', ids)
        .execute();
      const merges = await db
        .selectFrom('patient_merge')
        .select('id')
        .where('survivor_id', 'in', ids)
        .limit(1)
        .execute();
      const others = await db.selectFrom('referral').select('id').where('patient_id', 'in', ids).execute();
      return (
        merges.length > 0 ||
        people.some((row) => row.version !== 1 || row.merged_into !== null) ||
        others.some((row) => !imported.has(row.id))
      );
    })) ||
    (await some(referrals, async (ids) => {
      const rows = await db
        .selectFrom('referral')
        .select(['id', 'version', 'entered_in_error_at'])
        .where('id', 'in', ids)
        .execute();
      if (rows.some((row) => row.version !== versions.get(row.id) || row.entered_in_error_at !== null))
        return true;
      const tested = await db.selectFrom('assessment').select('id').where('referral_id', 'in', ids).execute();
      return tested.some((row) => !importedAssessments.has(row.id)) || (await hasDependents(db, ids));
    })) ||
    (await some(assessments, async (ids) => {
      const rows = await db.selectFrom('assessment').select('version').where('id', 'in', ids).execute();
      return (await hasAcknowledgementOrDraft(db, ids)) || rows.some((row) => row.version !== 1);
    }))
  );
}

async function hasAcknowledgementOrDraft(db: Executor, assessmentIds: readonly string[]): Promise<boolean> {
  for (const table of ['acknowledgement', 'correction_draft'] as const) {
    const rows = await db
      .selectFrom(table)
      .select('assessment_id')
      .where('assessment_id', 'in', assessmentIds)
      .limit(1)
      .execute();
    if (rows.length > 0) return true;
  }
  return false;
}

async function hasDependents(db: Executor, referralIds: readonly string[]): Promise<boolean> {
  for (const table of ['attendance', 'offer', 'diary_week', 'assessment_draft'] as const) {
    const rows = await db
      .selectFrom(table)
      .select('referral_id')
      .where('referral_id', 'in', referralIds)
      .limit(1)
      .execute();
    if (rows.length > 0) return true;
  }
  return false;
}

/** Takes out of the record what an import brought in; nothing may have been built on it. */
export async function takeOut(
  db: Executor,
  { patients, referrals, assessments, counted }: ImportedIds,
): Promise<void> {
  await each(assessments, async (ids) => {
    const versions = await db.selectFrom('assessment').select('version_id').where('id', 'in', ids).execute();
    const versionIds = versions.map((row) => row.version_id);
    for (const table of ['score', 'questionnaire', 'walk_test', 'sit_to_stand', 'physical_test'] as const) {
      await db.deleteFrom(table).where('assessment_version_id', 'in', versionIds).execute();
    }
    await db.deleteFrom('assessment').where('id', 'in', ids).execute();
  });
  await each(counted, async (ids) => {
    await db.deleteFrom('counted_sessions').where('referral_id', 'in', ids).execute();
  });
  await each(referrals, async (ids) => {
    await db.deleteFrom('referral_version').where('referral_id', 'in', ids).execute();
    await db.deleteFrom('referral').where('id', 'in', ids).execute();
  });
  await each(patients, async (ids) => {
    await db.deleteFrom('patient').where('id', 'in', ids).execute();
  });
}

async function some(
  ids: readonly string[],
  test: (ids: readonly string[]) => Promise<boolean>,
): Promise<boolean> {
  for (let start = 0; start < ids.length; start += IDS_IN_ONE_STATEMENT) {
    if (await test(ids.slice(start, start + IDS_IN_ONE_STATEMENT))) return true;
  }
  return false;
}

async function each(ids: readonly string[], step: (ids: readonly string[]) => Promise<void>): Promise<void> {
  await some(ids, async (part) => {
    await step(part);
    return false;
  });
}
