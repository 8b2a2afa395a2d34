/* global document, location, fetch, addEventListener, setTimeout, clearTimeout, URLSearchParams, FormData, CSS */
/* Saves what is typed of an assessment every few seconds, and shows figures, faults and what is missing next. */
(() => {
  const form = document.querySelector('form.sheet');
  const foot = form?.querySelector('.sheet-foot');
  if (!form || !foot) return;
  const address = foot.dataset.draftAddress;
  const version = form.elements.namedItem('draftVersion');
  const saved = foot.querySelector('[data-saved]');
  const next = foot.querySelector('[data-next]');
  const WAIT_MS = 1500;
  const RETRY_MS = 3000;
  let edits = 0;
  let savedEdits = 0;
  let timer = null;
  let saving = null;
  let isStale = false;

  const say = (text, isLost = false) => {
    if (saved.textContent !== text) saved.textContent = text;
    saved.classList.toggle('is-lost', isLost);
  };
  const link = (text, href) => {
    const a = document.createElement('a');
    a.textContent = text;
    a.href = href;
    return a;
  };
  const button = (text, act) => {
    const b = document.createElement('button');
    b.type = 'button';
    b.className = 'button desk';
    b.textContent = text;
    b.addEventListener('click', act);
    return b;
  };

  const soon = (ms) => {
    clearTimeout(timer);
    timer = setTimeout(() => void save(), ms);
  };

  /** Saves once at a time; gives whether all that is on the page is on the server. */
  const save = async () => {
    if (saving) await saving;
    if (isStale) return false;
    if (savedEdits === edits) return true;
    saving = send().finally(() => (saving = null));
    return saving;
  };

  const send = async () => {
    const upTo = edits;
    let response;
    try {
      response = await fetch(address, {
        method: 'POST',
        body: new URLSearchParams(new FormData(form)),
        credentials: 'same-origin',
        keepalive: document.visibilityState === 'hidden',
      });
    } catch {
      say('No connection. What you typed is on this page only; saving is tried again.', true);
      soon(RETRY_MS);
      return false;
    }
    if (response.redirected || !/json/.test(response.headers.get('content-type') ?? '')) {
      if (response.redirected) return signedOut();
      say('The draft could not be saved; it is tried again. What you typed is on this page.', true);
      soon(RETRY_MS);
      return false;
    }
    const answer = await response.json();
    if (response.status === 409) return stale(answer);
    if (!response.ok) {
      say(answer.words, true);
      return false;
    }
    version.value = String(answer.version);
    savedEdits = Math.max(savedEdits, upTo);
    say(answer.words);
    show(answer);
    if (edits !== savedEdits) soon(WAIT_MS);
    return true;
  };

  const signedOut = () => {
    say('You are signed out. What you typed is on this page. ', true);
    const a = link('Sign in in another tab', `/sign-in?next=${encodeURIComponent(location.pathname)}`);
    a.target = '_blank';
    saved.append(a, ', then go on here.');
    soon(RETRY_MS * 2);
    return false;
  };

  const stale = (answer) => {
    isStale = true;
    say(`${answer.words} `, true);
    saved.append(
      button('Show what is saved', () => {
        savedEdits = edits;
        location.assign(location.pathname);
      }),
      ' ',
      button('Save mine in its place', () => {
        version.value = String(answer.version);
        isStale = false;
        void save();
      }),
    );
    return false;
  };

  const control = (field) => form.querySelector(`[name="${CSS.escape(field)}"]:not([type=hidden])`);
  /** What a message about a field stands in: that of an item, in its questionnaire. */
  const placeOf = (field) =>
    form.querySelector(`[data-field="${field}"]`) ?? control(field)?.closest('.field');

  /** Ties a message to its field for those who hear the page, or takes it away again. */
  const describe = (input, id, isSaid) => {
    if (!input) return;
    const others = (input.getAttribute('aria-describedby') ?? '').split(' ').filter((each) => each !== id);
    const ids = (isSaid ? [...others, id] : others).join(' ').trim();
    if (ids === '') input.removeAttribute('aria-describedby');
    else input.setAttribute('aria-describedby', ids);
  };

  const show = ({ figures, faults, queries, next: missing }) => {
    for (const output of form.querySelectorAll('[data-figures]')) {
      const lines = figures[output.dataset.figures] ?? [];
      output.replaceChildren(
        ...lines.map((text) => Object.assign(document.createElement('span'), { textContent: text })),
      );
    }
    for (const old of form.querySelectorAll('.live')) {
      describe(control(old.dataset.of), old.id, false);
      old.remove();
    }
    const told = new Set();
    for (const { field, message } of faults) {
      const place = placeOf(field);
      if (!place || told.has(field) || place.querySelector('.error:not(.live), .query:not(.live)')) continue;
      told.add(field);
      const line = document.createElement('p');
      line.className = queries.includes(field) ? 'query live' : 'error live';
      line.textContent = message;
      line.dataset.of = field;
      line.id = `live-${field}`;
      place.append(line);
      describe(control(field), line.id, true);
    }
    // Items have an id only where something leads to them.
    if (missing) control(missing.field)?.setAttribute('id', missing.id);
    next.replaceChildren(
      ...(missing ? ['Next: ', link(missing.what, `#${missing.id}`)] : ['Nothing is missing.']),
    );
  };

  form.addEventListener('input', () => {
    edits += 1;
    if (!saving) soon(WAIT_MS);
  });
  addEventListener('online', () => void save());
  // A lid that is closed, another tab, another app.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void save();
  });
  addEventListener('beforeunload', (event) => {
    if (savedEdits !== edits && !form.dataset.leaving) event.preventDefault();
  });
  // A link to a field of a folded step opens it.
  document.addEventListener('click', (event) => {
    const target = event.target.closest?.('a[href^="#"]');
    const field = target && document.getElementById(target.hash.slice(1));
    for (let at = field; at; at = at.parentElement) if (at.tagName === 'DETAILS') at.open = true;
    if (field) {
      event.preventDefault();
      field.scrollIntoView({ block: 'center' });
      field.focus();
    }
  });

  form.addEventListener('submit', (event) => {
    const { submitter } = event;
    if (form.dataset.leaving) {
      event.preventDefault();
      return;
    }
    if (savedEdits === edits && !isStale) {
      form.dataset.leaving = 'yes';
      return;
    }
    // Only what has reached the server is sent on: where it cannot be reached, this page stays.
    event.preventDefault();
    void save().then((isSaved) => {
      if (isSaved) form.requestSubmit(submitter);
    });
  });
  // Back from the page that followed.
  addEventListener('pageshow', (event) => {
    if (event.persisted) delete form.dataset.leaving;
  });
})();
