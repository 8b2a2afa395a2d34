import { z } from 'zod';

/** How a version of a record came to be. */
export const VersionOriginShown = z
  .strictObject({
    version: z.int(),
    changedAt: z.string().describe('UTC'),
    changedBy: z
      .strictObject({ accountId: z.string(), name: z.string() })
      .nullable()
      .describe('Null for a first version from before its author was kept'),
    reason: z.string().nullable().describe('Null for the first version'),
  })
  .meta({ id: 'VersionOrigin' });
