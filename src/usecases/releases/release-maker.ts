import { done } from '../../domain/refusal/refusal.js';
import type { Outcome } from '../../domain/refusal/refusal.js';
import type { ReleaseForm } from '../../domain/release/kept-release.js';
import type { ProtectedRelease } from '../../domain/release/protected-release.js';
import type { Executor } from '../../storage/connection.js';
import { letOthersWork } from '../../storage/let-others-work.js';
import { draftInput } from './draft-input.js';
import type { ReleaseAsked } from './draft-input.js';
import { draftRelease } from './draft-release.js';
import type { ReleaseDraft } from './draft-release.js';
import { renderRelease } from './render-release.js';

/**
 * Makes releases from the record as it stands at one moment, and keeps nothing. What goes in and what comes out is plain
 * data: it may be made in another thread than that in which requests are answered.
 */
export interface ReleaseMaker {
  /** A release that is counted, protected and attacked. */
  readonly draft: (asked: ReleaseAsked) => Promise<Outcome<ReleaseDraft>>;
  /** Every form of a release. */
  readonly forms: (release: ProtectedRelease) => Promise<Readonly<Record<ReleaseForm, Uint8Array>>>;
}

/**
 * Makes releases in the thread that asks for them.
 *
 * @param reader a connection that only reads: whoever else reads by it waits until what a draft is made from has been read
 */
export function releaseMaker(reader: Executor): ReleaseMaker {
  return {
    draft: async (asked) => {
      const input = await reader.transaction().execute((snapshot) => draftInput(snapshot, asked));
      if (input.kind === 'refused') return input;
      await letOthersWork();
      return done(draftRelease(input.value));
    },
    forms: renderRelease,
  };
}
