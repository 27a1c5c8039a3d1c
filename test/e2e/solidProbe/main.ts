/** Page of a test: writes STEP in a worker and says what came of it. */

const said = document.getElementById('said') as HTMLElement;
const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
worker.addEventListener('message', ({ data }) => {
  said.textContent = JSON.stringify(data);
  said.dataset.done = 'yes';
});
worker.addEventListener('error', ({ message }) => {
  said.textContent = message;
  said.dataset.done = 'yes';
});
// the answer to a page's own try at making code tells whether the policy stands
try {
  new Function('return 1')();
  said.dataset.policy = 'open';
} catch {
  said.dataset.policy = 'closed';
}
