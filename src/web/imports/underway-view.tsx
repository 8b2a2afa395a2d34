import type { ImportUnderway } from '../../usecases/imports/view-import.js';
import { ButtonLink } from '../components/parts.js';
import type { Frame } from '../frame.js';
import { Page } from '../page.js';

/** How often a browser without the script asks again. */
const ASK_AGAIN_S = 3;

/** A large import that is being worked on: how far it has come. The page asks again by itself until that is over. */
export function UnderwayView({
  frame,
  underway,
}: {
  readonly frame: Frame;
  readonly underway: ImportUnderway;
}): JSX.Element {
  const { fileName, id, step, done, of } = underway;
  return (
    <Page
      frame={frame}
      title={`Import of ${fileName}`}
      scripts={['import-progress.js']}
      askAgainS={ASK_AGAIN_S}
    >
      <h1 safe>{`Import of ${fileName}`}</h1>
      <div data-import-progress={`/imports/${id}/progress`}>
        <p aria-live="polite" data-words safe>
          {progressWords(underway)}
        </p>
        <progress
          class="how-far"
          max={String(Math.max(1, of))}
          value={String(done)}
          aria-label="How far it has come"
        />
      </div>
      <p class="muted">
        {step === 'judging'
          ? 'Nothing is written yet. You can leave this page and come back to it.'
          : 'Either all of it comes in or nothing. People stand in lists as they come in; reports, releases and exports wait until it is whole. You can leave this page and come back to it.'}
      </p>
      <p>
        <ButtonLink href={`/imports/${id}`}>Look again</ButtonLink>
      </p>
    </Page>
  );
}

/** How far an import has come, in words. */
export function progressWords({ step, done, of }: ImportUnderway): string {
  if (of === 0) return 'The file is being read.';
  const what = step === 'judging' ? 'The rows are being judged' : 'The rows are being brought in';
  return `${what}: ${Math.floor((done / of) * 100)} % (${done} of ${of} referrals).`;
}
