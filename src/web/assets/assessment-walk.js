/* global document, Event, setInterval, performance */
/* Counts shuttles by taps, runs the clock of the rest, and leaves out what the chosen walk test does not record. */
(() => {
  begin();
  // Sent and shown again without leaving the page.
  document.addEventListener('page-shown', begin);

  function begin() {
    const form = document.querySelector('form.sheet');
    if (!form) return;
    const field = (name) => form.elements.namedItem(name);
    const changed = (input) => input.dispatchEvent(new Event('input', { bubbles: true }));
    const element = (name, properties) => Object.assign(document.createElement(name), properties);

    const LEVELS = { 'incremental-shuttle-walk': 12, 'incremental-shuttle-walk-15-level': 15 };
    const RECORDS = {
      'incremental-shuttle-walk': ['distanceM', 'level', 'shuttles'],
      'incremental-shuttle-walk-15-level': ['distanceM', 'level', 'shuttles'],
      'endurance-shuttle-walk': ['timeS', 'speedLevel'],
    };
    const RESULTS = ['distanceM', 'level', 'shuttles', 'timeS', 'speedLevel'];
    const test = field('walkTest');

    /** Level n has n + 2 shuttles. */
    const shuttlesOf = (level) => level + 2;

    for (const { dataset } of form.querySelectorAll('[data-attempt]')) {
      const { attempt } = dataset;
      const show = () => {
        for (const name of RESULTS) {
          const input = field(`${attempt}.${name}`);
          const records = test.value === '' ? RESULTS : (RECORDS[test.value] ?? ['distanceM']);
          // What holds a value stays in sight, whatever test is chosen.
          input.closest('.field').hidden = !records.includes(name) && input.value === '';
        }
      };
      test.addEventListener('change', show);
      show();
    }

    for (const place of form.querySelectorAll('[data-taps]')) {
      const attempt = place.dataset.taps;
      const [level, shuttles] = [field(`${attempt}.level`), field(`${attempt}.shuttles`)];
      const count = element('span', { className: 'number' });
      const at = () => ({ level: Number(level.value) || 1, shuttles: Number(shuttles.value) || 0 });
      const set = (to) => {
        level.value = String(to.level);
        shuttles.value = String(to.shuttles);
        changed(shuttles);
        tell();
      };
      const tell = () => {
        const now = at();
        let total = now.shuttles;
        for (let each = 1; each < now.level; each += 1) total += shuttlesOf(each);
        count.textContent = `Level ${now.level}, ${now.shuttles} of ${shuttlesOf(now.level)} shuttles: ${total * 10}\u00a0m`;
      };
      const tap = element('button', {
        type: 'button',
        className: 'button shuttle',
        textContent: 'One shuttle',
      });
      tap.addEventListener('click', () => {
        const now = at();
        if (now.shuttles < shuttlesOf(now.level)) set({ ...now, shuttles: now.shuttles + 1 });
        else if (now.level < LEVELS[test.value]) set({ level: now.level + 1, shuttles: 1 });
      });
      const back = element('button', { type: 'button', className: 'button', textContent: 'Take one back' });
      back.addEventListener('click', () => {
        const now = at();
        if (now.shuttles > 1 || now.level === 1) set({ ...now, shuttles: Math.max(0, now.shuttles - 1) });
        else set({ level: now.level - 1, shuttles: shuttlesOf(now.level - 1) });
      });
      for (const input of [level, shuttles]) input.addEventListener('input', tell);
      const redraw = () => {
        place.replaceChildren(...(LEVELS[test.value] ? [tap, back, count] : []));
        tell();
      };
      test.addEventListener('change', redraw);
      redraw();
    }

    const timer = form.querySelector('[data-rest-minutes]');
    if (!timer) return;
    const started = field(timer.dataset.restField);
    const lengthMs = Number(timer.dataset.restMinutes) * 60_000;
    /** Milliseconds since 1970: another device goes on from the same moment. */
    const now = () => performance.timeOrigin + performance.now();
    const clock = element('span', { className: 'clock' });
    const over = element('span', { className: 'small' });
    over.setAttribute('role', 'status');
    const begin = element('button', { type: 'button', className: 'button', textContent: 'Start the rest' });
    begin.addEventListener('click', () => {
      started.value = started.value === '' ? String(Math.round(now())) : '';
      changed(started);
      tick();
    });
    const tick = () => {
      const isRunning = started.value !== '';
      begin.textContent = isRunning ? 'Stop the clock' : 'Start the rest';
      // Clocks of two devices differ: never more than the whole rest is left.
      const leftMs = Math.min(lengthMs, Math.max(0, Number(started.value) + lengthMs - now()));
      const leftS = Math.ceil(leftMs / 1000);
      clock.textContent = isRunning ? `${Math.floor(leftS / 60)}:${String(leftS % 60).padStart(2, '0')}` : '';
      const words = isRunning && leftS === 0 ? 'The 30 minutes are over.' : '';
      if (over.textContent !== words) over.textContent = words;
    };
    timer.append(begin, clock, over);
    tick();
    setInterval(tick, 1000);
  }
})();
