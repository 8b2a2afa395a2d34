import { aPatient, aReferralBody, anAssessment } from './entries.js';
import type { Body } from './entries.js';
import type { ServiceProcess } from './service-process.js';

/** What a writer asked for, under a key of its own. */
export interface KeyedWrite {
  readonly key: string;
  readonly path: string;
  readonly body: Body;
}

/** Ids of what the service has acknowledged, by the table in which they must be found. */
export interface Acknowledged {
  readonly patient: Set<string>;
  readonly referral: Set<string>;
  readonly assessment: Set<string>;
}

type Made = { readonly id: string; readonly wasRepeated: boolean };

/**
 * Somebody who registers person after person, each with a referral and a baseline assessment, whatever happens to the
 * service: a request of which the answer never came is sent again, under the same key, to the next process.
 */
export interface PersistentWriter {
  /** Writes until the connection is lost. */
  readonly writeTo: (service: ServiceProcess) => Promise<void>;
  /** Sends what was never answered, and brings the person in hand to the end. */
  readonly finishOn: (service: ServiceProcess) => Promise<void>;
  readonly acknowledged: Acknowledged;
  /** How often the answer was lost after the write had been carried out. */
  readonly lostAnswers: () => number;
}

/** A writer with an access token. @param name makes its keys its own */
export function persistentWriter(name: string, token: string, siteId: string): PersistentWriter {
  const acknowledged: Acknowledged = { patient: new Set(), referral: new Set(), assessment: new Set() };
  let [count, lost] = [0, 0];
  let waiting: KeyedWrite | null = null;
  let next = firstStep;

  function firstStep(): KeyedWrite {
    const patient = { nhsNumber: null, nhsNumberMissingReason: 'not-yet-traced' };
    return { key: `${name}-${(count += 1)}`, path: '/patients', body: aPatient(patient) };
  }

  const step = async (service: ServiceProcess): Promise<void> => {
    const write = (waiting ??= next());
    const { id, wasRepeated } = await send(service, token, write);
    if (wasRepeated) lost += 1;
    waiting = null;
    if (write.path === '/patients') {
      acknowledged.patient.add(id);
      const body = aReferralBody(id, siteId);
      next = () => ({ key: `${write.key}-referral`, path: '/referrals', body });
    } else if (write.path === '/referrals') {
      acknowledged.referral.add(id);
      const path = `/referrals/${id}/assessments`;
      next = () => ({ key: `${write.key}-assessment`, path, body: anAssessment(siteId) });
    } else {
      acknowledged.assessment.add(id);
      next = firstStep;
    }
  };

  return {
    writeTo: async (service) => {
      for (;;) {
        try {
          await step(service);
        } catch (error) {
          // A lost connection; whatever else it is, the service said.
          if (error instanceof TypeError) return;
          throw error;
        }
      }
    },
    finishOn: async (service) => {
      do await step(service);
      while (next !== firstStep);
    },
    acknowledged,
    lostAnswers: () => lost,
  };
}

/** @throws TypeError where no whole answer came; Error where the service refused */
async function send(service: ServiceProcess, token: string, { key, path, body }: KeyedWrite): Promise<Made> {
  const response = await fetch(`${service.url}${path}`, {
    method: 'POST',
    headers: {
      authorization: `Bearer ${token}`,
      'content-type': 'application/json',
      'idempotency-key': key,
    },
    body: JSON.stringify(body),
  });
  const answer = (await response.json()) as { id?: string; type?: string; existingId?: string };
  if (response.status === 201 && answer.id !== undefined) return { id: answer.id, wasRepeated: false };
  if (answer.type === '/problems/answer-not-kept' && answer.existingId !== undefined) {
    return { id: answer.existingId, wasRepeated: true };
  }
  throw new Error(`POST ${path}: ${response.status} ${JSON.stringify(answer)}`);
}
