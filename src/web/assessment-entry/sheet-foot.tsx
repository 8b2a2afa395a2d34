import { londonTime } from '../../domain/calendar/london-time.js';
import type { TypedDraft } from '../../domain/draft/draft.js';
import { attributeText } from '../components/field.js';
import { Button, Form } from '../components/form.js';
import { fieldId } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { DRAFT_VERSION } from './field-names.js';
import type { Missing } from './next-missing.js';

/** Says whose the draft is; the script keeps it up to date. */
export function savedWords({ saved, state }: TypedDraft): string {
  if (saved === null || state !== 'open') return 'Nothing is saved yet.';
  return `Draft saved ${londonTime(saved.at)} by ${saved.byName}.`;
}

interface SheetFootProps {
  readonly draft: TypedDraft;
  /** Path of the sheet; what is typed is saved and checked under it. */
  readonly action: string;
  readonly missing: Missing | null;
  /** What the button says that stores it in the record. */
  readonly recordWords: string;
}

/** The foot of a sheet: what is saved, what is missing, and the two ways to send it. */
export function SheetFoot({ draft, action, missing, recordWords }: SheetFootProps): JSX.Element {
  return (
    <div class="sheet-foot" data-draft-address={attributeText(`${action}/draft`)}>
      <p class="saved" role="status" data-saved safe>
        {savedWords(draft)}
      </p>
      <p class="next" data-next>
        {missing === null ? (
          'Nothing is missing.'
        ) : (
          <>
            {'Next: '}
            <a href={`#${fieldId(missing.field)}`} safe>
              {missing.what}
            </a>
          </>
        )}
      </p>
      <div class="actions">
        <button type="submit" class="button" formaction={`${action}/check`}>
          Save and check
        </button>
        <Button kind="primary">
          <span safe>{recordWords}</span>
        </Button>
      </div>
    </div>
  );
}

/** The version of the draft that the page was made from, in a form that goes on from it. */
export function DraftVersionField({ draft }: { readonly draft: TypedDraft }): JSX.Element {
  return <input type="hidden" name={DRAFT_VERSION} value={String(draft.version)} />;
}

/** Enter in a field checks; only the button at the foot records. */
export function CheckOnEnter({ action }: { readonly action: string }): JSX.Element {
  return (
    <button type="submit" class="visually-hidden" formaction={`${action}/check`} tabindex="-1">
      Check what is typed
    </button>
  );
}

interface DiscardFormProps {
  readonly frame: Frame;
  readonly draft: TypedDraft;
  readonly action: string;
}

/** Throws an open draft away; nothing where there is none. */
export function DiscardForm({ frame, draft, action }: DiscardFormProps): JSX.Element {
  if (draft.state !== 'open') return '';
  return (
    <details class="discard">
      <summary>Throw this draft away</summary>
      <Form frame={frame} action={`${action}/discard`} label="Throw this draft away">
        <p>What was typed is gone then, for everybody. Nothing that was recorded is touched.</p>
        <DraftVersionField draft={draft} />
        <Button kind="grave">Throw the draft away</Button>
      </Form>
    </details>
  );
}
