import { vi } from 'vitest';

// Hundreds of commands are run here for what they refuse and say. Each would start a thread for its sum and load the model into it
// anew; how threads do that is tested beside them (src/host/modelPool.test.ts, src/cli, test/e2e/commandLine.test.ts).
vi.mock('../../src/cli/askModel.ts', async () => {
  const { modelHere } = await import('../../src/app/sums/modelHere.ts');
  return { askModel: modelHere.ask };
});
