import { answerOf, type EnterAnswer, type EnterQuestion } from './answer-of.js';

/** Asks a thread of its own; where a browser starts none, the page itself plans. What is not waited for any more is ended. */
export function askToEnter(question: EnterQuestion, told: (answer: EnterAnswer) => void): () => void {
  if (typeof Worker === 'undefined') return askHere(question, told);
  const thread = new Worker(new URL('./enter-thread.ts', import.meta.url), { type: 'module' });
  let instead: (() => void) | null = null;
  thread.onmessage = ({ data }: MessageEvent<EnterAnswer>) => {
    told(data);
    thread.terminate();
  };
  thread.onerror = () => {
    thread.terminate();
    instead = askHere(question, told);
  };
  thread.postMessage(question);
  return () => {
    thread.terminate();
    instead?.();
  };
}

/** After what is on the screen was drawn. */
function askHere(question: EnterQuestion, told: (answer: EnterAnswer) => void): () => void {
  const timer = setTimeout(() => told(answerOf(question)));
  return () => clearTimeout(timer);
}
