import { z } from 'zod';

/** What the address of a page about a referral holds. */
export const Params = z.object({ referralId: z.string() });
