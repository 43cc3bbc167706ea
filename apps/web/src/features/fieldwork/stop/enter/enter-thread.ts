// A thread of its own: the page goes on while it plans.
import { answerOf, type EnterQuestion } from './answer-of.js';

self.onmessage = ({ data }: MessageEvent<EnterQuestion>) => self.postMessage(answerOf(data));
