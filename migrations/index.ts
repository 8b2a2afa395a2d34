import type { Migration } from 'kysely';
import * as record from './0001_record.js';
import * as physicalTestsAndSafety from './0002_physical_tests_and_safety.js';
import * as auditTrail from './0003_audit_trail.js';
import * as accounts from './0004_accounts.js';
import * as corrections from './0005_corrections.js';
import * as keeping from './0006_keeping.js';
import * as drafts from './0007_drafts.js';
import * as releases from './0008_releases.js';
import * as imports from './0011_imports.js';
import * as retention from './0012_retention.js';
import * as offersInError from './0013_offers_in_error.js';
import * as reportReading from './0014_report_reading.js';
import * as correctionDrafts from './0015_correction_drafts.js';
import * as deletion from './0016_deletion.js';

/** Every migration in the order in which it is applied; a shipped migration is never edited. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001_record': record,
  '0002_physical_tests_and_safety': physicalTestsAndSafety,
  '0003_audit_trail': auditTrail,
  '0004_accounts': accounts,
  '0005_corrections': corrections,
  '0006_keeping': keeping,
  '0007_drafts': drafts,
  '0008_releases': releases,
  '0011_imports': imports,
  '0012_retention': retention,
  '0013_offers_in_error': offersInError,
  '0014_report_reading': reportReading,
  '0015_correction_drafts': correctionDrafts,
  '0016_deletion': deletion,
};
