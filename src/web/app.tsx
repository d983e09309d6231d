import { QueryClientProvider, type QueryClient } from '@tanstack/react-query';
import { LetInFirst } from './screens/pair/LetInFirst.tsx';
import { Screens } from './screens/Screens.tsx';
import { Shell } from './parts/shell/Shell.tsx';
import { WorkshopProvider, type Workshop } from './state/workshop.tsx';

export interface AppProps {
  readonly workshop: Workshop;
  /** What the server said of lists. */
  readonly cache: QueryClient;
}

/** The whole page over one workshop. */
export const App = ({ workshop, cache }: AppProps) => (
  <QueryClientProvider client={cache}>
    <WorkshopProvider value={workshop}>
      <Shell>
        <LetInFirst>
          <Screens />
        </LetInFirst>
      </Shell>
    </WorkshopProvider>
  </QueryClientProvider>
);
