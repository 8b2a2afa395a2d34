import { COMPLETION_READINGS, SECOND_FACTOR_RULES } from '../../domain/settings/team-settings.js';
import { DESATURATION_DEFINITION_IDS } from '../../domain/safety/desaturation.js';
import { RESTING_LIMITS_IDS } from '../../domain/safety/resting-limits.js';
import { checkSettings } from '../../domain/settings/check-settings.js';
import type { Executor } from '../../storage/connection.js';
import { findCorrectionDraft } from '../../storage/drafts/correction-drafts.js';
import { draftsOfReferral } from '../../storage/drafts/drafts.js';
import { idsOfTeam } from '../../storage/exports/ids-of-team.js';
import { loadReferralFacts } from '../../storage/facts/referral-facts.js';
import {
  assessmentStates,
  patientStates,
  referralStates,
  sessionStates,
  settingsStates,
} from '../../storage/history/version-states.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { releasesToVerify } from '../../storage/releases/releases-to-verify.js';
import { currentSettings } from '../../storage/settings/settings.js';
import { notWritable } from '../not-writable.js';
import { digestFaults } from '../releases/verify-releases.js';
import { faultOfFile } from './open-record-file.js';
import type { RecordFault } from './open-record-file.js';

/**
 * Reads a record that was just stored in the ways in which the service will, so that nothing is kept which it could not
 * show: what JSON holds inside is known to its readers only.
 */
export async function readBack(trx: Executor, teamId: string): Promise<RecordFault | null> {
  const settings = await settingsFault(trx, teamId);
  if (settings !== null) return settings;
  for (const reading of READINGS) {
    for (const id of await idsOfTeam(trx, teamId, reading.table)) {
      if (!(await isReadable(() => reading.read(trx, teamId, id)))) {
        return faultOfFile(`The ${reading.table} ${id} cannot be read as it stands there.`);
      }
      await letOthersWork();
    }
  }
  return releaseFault(trx, teamId);
}

interface Reading {
  readonly table: 'patient' | 'referral' | 'session' | 'assessment';
  readonly read: (trx: Executor, teamId: string, id: string) => Promise<unknown>;
}

const READINGS: readonly Reading[] = [
  { table: 'patient', read: patientStates },
  { table: 'session', read: sessionStates },
  {
    table: 'assessment',
    read: async (trx, teamId, id) => {
      await assessmentStates(trx, teamId, id);
      await findCorrectionDraft(trx, id);
    },
  },
  {
    table: 'referral',
    read: async (trx, teamId, id) => {
      const { settings } = await currentSettings(trx, teamId);
      await loadReferralFacts(trx, teamId, [id], settings);
      await draftsOfReferral(trx, id);
      await referralStates(trx, teamId, id);
    },
  },
];

async function settingsFault(trx: Executor, teamId: string): Promise<RecordFault | null> {
  let isGood = false;
  const isRead = await isReadable(async () => {
    await settingsStates(trx, teamId);
    const { settings } = await currentSettings(trx, teamId);
    const chosen: readonly (readonly [readonly string[], string])[] = [
      [COMPLETION_READINGS, settings.completionReading],
      [SECOND_FACTOR_RULES, settings.leadSecondFactor],
      [RESTING_LIMITS_IDS, settings.restingLimits],
      [DESATURATION_DEFINITION_IDS, settings.desaturationDefinition],
    ];
    isGood =
      checkSettings(settings).length === 0 && chosen.every(([choices, choice]) => choices.includes(choice));
  });
  return isRead && isGood
    ? null
    : faultOfFile('The latest settings are none that a team can choose.', 'settings.csv');
}

async function releaseFault(trx: Executor, teamId: string): Promise<RecordFault | null> {
  let wrong: string | null = null;
  const isRead = await isReadable(async () => {
    for (const release of await releasesToVerify(trx)) {
      const [fault] = release.teamId === teamId ? digestFaults(release) : [];
      if (fault !== undefined) wrong ??= `Of release ${release.number} ${fault}.`;
    }
  });
  if (!isRead) return faultOfFile('The releases cannot be read as they stand there.', 'release.csv');
  return wrong === null ? null : faultOfFile(wrong, 'release.csv');
}

/** What a reader throws at what it does not know; an error of the store itself is no fault of the file. */
async function isReadable(read: () => Promise<unknown>): Promise<boolean> {
  try {
    await read();
    return true;
  } catch (error) {
    if (notWritable(error) !== null) throw error;
    return false;
  }
}
