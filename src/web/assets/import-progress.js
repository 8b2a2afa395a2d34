/* global document, location, fetch, setTimeout */
/* Shows how far a large import has come, and what became of it once it is over. */
(() => {
  const place = document.querySelector('[data-import-progress]');
  const words = place?.querySelector('[data-words]');
  const bar = place?.querySelector('progress');
  if (!words || !bar) return;
  const ASK_AGAIN_MS = 1000;

  const ask = async () => {
    let answer = null;
    try {
      const response = await fetch(place.dataset.importProgress, { credentials: 'same-origin' });
      if (response.redirected) return location.reload();
      if (response.ok) answer = await response.json();
    } catch {
      words.textContent = 'No connection. The work goes on; it is asked for again.';
    }
    if (answer?.isOver) return location.reload();
    if (answer) {
      if (words.textContent !== answer.words) words.textContent = answer.words;
      bar.max = Math.max(1, answer.of);
      bar.value = answer.done;
    }
    setTimeout(() => void ask(), ASK_AGAIN_MS);
  };
  setTimeout(() => void ask(), ASK_AGAIN_MS);
})();
