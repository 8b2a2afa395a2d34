import type { PropsWithChildren } from '@kitajs/html';
import { CSRF_FIELD } from '../csrf.js';
import { FORM_KEY_FIELD } from '../forms/form-key-field.js';
import { fieldId } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { Frame } from '../frame.js';
import { NoticeShape } from './notice.js';
import { SendNotices } from './send-notices.js';

type FormProps = PropsWithChildren<{
  readonly frame: Frame;
  /** Path that the form is sent to. */
  readonly action: string;
  readonly class?: string;
  /** For browsers, where a page has several forms. */
  readonly label?: string;
  /**
   * The script of `send-form.ts` sends it, so that nothing typed is lost with the connection or the session: as it is, or
   * as one of several taps that wait for each other. Without the script the browser sends it.
   */
  readonly sending?: 'whole' | 'taps';
  /** Needed where a page has several forms that the script sends. */
  readonly id?: string;
}>;

/**
 * A form that is sent by POST; it carries the token and the key of the page it stands on. A browser fills in only what a
 * field names, such as `username`: nothing of one person stands ready in the form of another.
 */
export function Form({
  frame,
  action,
  class: className,
  label,
  sending,
  id,
  children,
}: FormProps): JSX.Element {
  return (
    <form
      method="post"
      action={action}
      class={className}
      aria-label={label}
      data-sending={sending}
      id={id ?? (sending === undefined ? undefined : 'form')}
      autocomplete="off"
      novalidate
    >
      <input type="hidden" name={CSRF_FIELD} value={frame.csrfToken} />
      <input type="hidden" name={FORM_KEY_FIELD} value={frame.pageKey} />
      {sending === undefined ? '' : <SendNotices sending={sending} />}
      {children}
    </form>
  );
}

/** A list of what is wrong, above the form, each with a link to its field. Nothing when nothing is wrong. */
export function ErrorSummary({
  errors,
  title = 'Nothing was stored: please mend this first',
}: {
  readonly errors: FormErrors;
  readonly title?: string;
}): JSX.Element {
  if (errors.length === 0) return '';
  return (
    <section class="notice errors" role="alert" aria-labelledby="error-summary">
      <NoticeShape kind="warning" />
      <div>
        <h2 class="title" id="error-summary" safe>
          {title}
        </h2>
        <ul>
          {errors.map(({ field, message }) =>
            field === '' ? (
              <li safe>{message}</li>
            ) : (
              <li>
                <a href={`#${fieldId(field)}`} safe>
                  {message}
                </a>
              </li>
            ),
          )}
        </ul>
      </div>
    </section>
  );
}

type ButtonProps = PropsWithChildren<{
  /** One primary button a form; a grave one does what cannot be undone easily. */
  readonly kind?: 'primary' | 'plain' | 'grave';
  /** For rows of tables. */
  readonly isSmall?: boolean;
  readonly name?: string;
  readonly value?: string;
}>;

/** A button that sends its form. */
export function Button({ kind = 'plain', isSmall = false, name, value, children }: ButtonProps): JSX.Element {
  const className = ['button', kind === 'plain' ? [] : [kind], isSmall ? ['desk'] : []].flat().join(' ');
  return (
    <button type="submit" class={className} name={name} value={value}>
      {children}
    </button>
  );
}
