/** Name of the hidden field that says which version of a record the form was filled in from. */
export const VERSION_FIELD = 'version';

/** The version of the record that a form changes. */
export function VersionField({ version }: { readonly version: number }): JSX.Element {
  return <input type="hidden" name={VERSION_FIELD} value={String(version)} />;
}
