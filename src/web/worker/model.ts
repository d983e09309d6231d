/// <reference lib="webworker" />
import { fitStudy } from '../../core/cutmodel/fitStudy.ts';
import { modelCalls } from './modelCalls.ts';
import { serveCalls } from './serveCalls.ts';
import { warmStudy } from './warmStudy.ts';

declare const self: DedicatedWorkerGlobalScope;

// The first fit is slow until the engine has seen the code run: that time is spent before anyone taps.
const warmUp = setTimeout(() => void fitStudy(warmStudy), 50);
self.addEventListener('message', () => clearTimeout(warmUp), { once: true });

serveCalls(modelCalls);
