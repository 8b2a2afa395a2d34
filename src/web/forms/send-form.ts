/** The script that sends forms without losing what was typed. */
export const SEND_FORM = 'send-form.js';
