/* global window, document, location, Event, fetch, setTimeout, URL, URLSearchParams, FormData, DOMParser, AbortSignal */
// Sends forms without leaving the page, so that what was typed is not lost with the connection or the session.
// Forms with data-sending="whole" are sent one at a time, however often the button is pressed; with "taps" each tap
// waits for the one before it. Without this script browsers send the same forms, and the pages answer alike.
(() => {
  'use strict';

  const RETRY_MS = 3000;
  const TRY_MS = 20_000;
  /** Taps and forms that wait, the one that is on its way first. */
  const waiting = [];
  let isSending = false;

  document.addEventListener('submit', (event) => {
    const form = event.target;
    const { sending } = form.dataset;
    if (sending === undefined) return;
    event.preventDefault();
    if (sending === 'whole' && isSending) return;
    const button = event.submitter;
    waiting.push({
      sending,
      formId: form.id,
      action: button?.getAttribute('formaction') ?? form.getAttribute('action'),
      buttonId: button?.id ?? '',
      field: button?.name ? [button.name, button.value] : null,
      words: button?.dataset.words ?? '',
    });
    if (sending === 'taps') showPressed(button);
    void sendNext();
  });

  window.addEventListener('online', () => void sendNext());
  window.addEventListener('beforeunload', (event) => {
    if (waiting.some(({ sending }) => sending === 'taps')) event.preventDefault();
  });
  window.addEventListener('pageshow', () => {
    isSending = false;
  });

  async function sendNext() {
    const next = waiting[0];
    if (isSending || next === undefined) return;
    isSending = true;
    const form = formOf(next);
    form?.setAttribute('aria-busy', 'true');
    try {
      const response = await fetch(next.action, {
        method: 'POST',
        body: bodyOf(form, next),
        headers: { accept: 'text/html' },
        signal: AbortSignal.timeout(TRY_MS),
      });
      await take(response, next);
    } catch {
      notSent(next, 'lost');
      if (next.sending === 'taps') setTimeout(() => void sendNext(), RETRY_MS);
    } finally {
      isSending = false;
      form?.removeAttribute('aria-busy');
    }
    if (waiting[0] !== next && waiting.length > 0) void sendNext();
  }

  async function take(response, sent) {
    const { pathname } = new URL(response.url);
    const text = await response.text();
    if (response.redirected && pathname.startsWith('/sign-in')) return notSent(sent, 'ended');
    if (response.status >= 500) return notSent(sent, 'failed');
    waiting.shift();
    if (response.redirected && pathname !== location.pathname) {
      location.assign(response.url);
      // Until the other page is there nothing more is sent.
      return new Promise(() => {});
    }
    const answer = new DOMParser().parseFromString(text, 'text/html');
    const dropped = response.ok ? [] : waiting.splice(0);
    if (waiting.length > 0) return keepGoing(sent, answer);
    show(answer, sent);
    if (dropped.length > 0) notice(formOf(sent), 'dropped', dropped);
    return undefined;
  }

  /** More taps wait: what they are sent with is brought up to date, the page is shown when the last has been taken. */
  function keepGoing(sent, answer) {
    const fresh = answer.querySelector(selectorOf(sent));
    for (const input of formOf(sent)?.querySelectorAll('input[type=hidden]') ?? []) {
      const value = fresh?.querySelector(`input[name="${input.name}"]`)?.value;
      if (value !== undefined) input.value = value;
    }
  }

  function show(answer, sent) {
    const fresh = answer.querySelector('main');
    if (fresh === null) return;
    const focusedId = document.activeElement?.id || sent.buttonId;
    document.querySelector('main').replaceWith(document.adoptNode(fresh));
    document.title = answer.title;
    document.dispatchEvent(new Event('page-shown'));
    const alert = document.querySelector('main [role=alert]');
    if (alert !== null) {
      alert.tabIndex = -1;
      alert.focus();
    } else {
      document.getElementById(focusedId)?.focus({ preventScroll: true });
    }
  }

  /** What was not stored stays as it was typed; a tap stays in the queue where it can be sent later. */
  function notSent(sent, kind) {
    const taps = waiting.filter(({ sending }) => sending === 'taps');
    if (sent.sending === 'whole') waiting.shift();
    else if (kind !== 'lost') waiting.splice(0);
    notice(formOf(sent), kind, taps);
  }

  function notice(form, kind, taps) {
    const template = form?.querySelector(`template[data-notice="${kind}"]`);
    if (!template) return;
    form.querySelector('[data-told]')?.remove();
    const told = template.content.firstElementChild.cloneNode(true);
    told.dataset.told = kind;
    told.setAttribute('role', 'alert');
    const list = told.querySelector('[data-waiting]');
    if (list !== null) list.textContent = taps.map(({ words }) => words).join('; ');
    template.parentElement.insertBefore(told, template);
    if (form.dataset.sending === 'whole') told.scrollIntoView({ block: 'nearest' });
  }

  function showPressed(button) {
    const marks = button?.closest('[data-marks]');
    if (!marks) return;
    for (const other of marks.querySelectorAll('[aria-pressed]')) other.setAttribute('aria-pressed', 'false');
    if (button.hasAttribute('aria-pressed')) button.setAttribute('aria-pressed', 'true');
  }

  function bodyOf(form, { field }) {
    const body = new URLSearchParams(new FormData(form));
    if (field !== null) body.append(field[0], field[1]);
    return body;
  }

  function formOf(sent) {
    return document.querySelector(selectorOf(sent));
  }

  function selectorOf({ formId }) {
    return `form#${formId}`;
  }
})();
