/** Name of the hidden field by which a form that is sent twice is known. */
export const FORM_KEY_FIELD = '_key';
