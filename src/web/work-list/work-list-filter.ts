import { z } from 'zod';
import { DIAGNOSES } from '../../domain/referral/closed-sets.js';
import type { Diagnosis } from '../../domain/referral/closed-sets.js';
import { WORK_GROUPS } from '../../domain/work-list/work-list.js';
import type { WorkGroupId } from '../../domain/work-list/work-list.js';

/** What the work list is narrowed to, as it stands in the address: ids and closed sets, nothing about a person. */
export interface WorkListFilter {
  readonly siteId: string | null;
  readonly clinicianId: string | null;
  readonly diagnosis: Diagnosis | null;
  /** One group, of which more is shown. */
  readonly group: WorkGroupId | null;
}

const id = z.uuid().toLowerCase().nullable().catch(null);

const Query = z.object({
  site: id.default(null),
  clinician: id.default(null),
  diagnosis: z.enum(DIAGNOSES).nullable().catch(null).default(null),
  group: z.enum(WORK_GROUPS).nullable().catch(null).default(null),
});

/** The filter of an address. What it does not know it leaves out, such as the empty choice of a form. */
export function readFilter(query: unknown): WorkListFilter {
  const { site, clinician, diagnosis, group } = Query.parse(query ?? {});
  return { siteId: site, clinicianId: clinician, diagnosis, group };
}

/** The address of a work list. @example addressOf(one group) -> '/work-list?group=triage' */
export function addressOf({ siteId, clinicianId, diagnosis, group }: WorkListFilter): string {
  const parts = { site: siteId, clinician: clinicianId, diagnosis, group };
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(parts)) if (value !== null) query.set(name, value);
  return query.size === 0 ? '/work-list' : `/work-list?${query.toString()}`;
}

/** The address of the same list as a file. @example fileAddressOf(one group) -> '/work-list.csv?group=triage' */
export function fileAddressOf(filter: WorkListFilter): string {
  return addressOf(filter).replace('/work-list', '/work-list.csv');
}

/** Whether anything but the group narrows the list. */
export function isNarrowed({ siteId, clinicianId, diagnosis }: WorkListFilter): boolean {
  return siteId !== null || clinicianId !== null || diagnosis !== null;
}
