import { Notice } from './notice.js';

/** What the script that sends a form says when it could not be sent; nothing is seen before. */
export function SendNotices({ sending }: { readonly sending: 'whole' | 'taps' }): JSX.Element {
  return (
    <>
      <template data-notice="lost">
        <Notice kind="warning" title="Not stored: there is no connection">
          {sending === 'whole' ? (
            <p>
              Nothing was stored. What you typed is still here: send it again when the connection is back.
            </p>
          ) : (
            <p>
              Waiting to be stored: <strong data-waiting></strong>. It is sent as soon as the connection is
              back. Keep this page open.
            </p>
          )}
        </Notice>
      </template>
      <template data-notice="ended">
        <Notice kind="warning" title="Not stored: your session has ended">
          <p>
            What you typed is still here.{' '}
            <a href="/sign-in" target="_blank">
              Sign in on another tab
            </a>
            , come back, and send it again.
          </p>
        </Notice>
      </template>
      <template data-notice="failed">
        <Notice kind="warning" title="Not stored: the service failed">
          <p>What you typed is still here. Try again; if it fails again, tell whoever runs the service.</p>
        </Notice>
      </template>
      <template data-notice="dropped">
        <Notice kind="warning" title="Taps that were not stored">
          <p>
            Tapped after it, and not stored either: <strong data-waiting></strong>.
          </p>
        </Notice>
      </template>
    </>
  );
}
