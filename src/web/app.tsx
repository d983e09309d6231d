import { QueryClientProvider, type QueryClient } from '@tanstack/react-query';
import { Router, type RouterProps } from 'wouter';
import { LetInFirst } from './screens/pair/LetInFirst.tsx';
import { Screens } from './screens/Screens.tsx';
import { Shell } from './parts/shell/Shell.tsx';
import { WorkshopProvider, type Workshop } from './state/workshop.tsx';

export interface AppProps {
  readonly workshop: Workshop;
  /** What the server said of lists. */
  readonly cache: QueryClient;
  /** Where addresses stand; absent: in the address itself. */
  readonly places?: Pick<RouterProps, 'hook' | 'searchHook' | 'hrefs'>;
}

/** The whole page over one workshop. */
export const App = ({ workshop, cache, places = {} }: AppProps) => (
  <QueryClientProvider client={cache}>
    <WorkshopProvider value={workshop}>
      <Router {...places}>
        <Shell>
          <LetInFirst>
            <Screens />
          </LetInFirst>
        </Shell>
      </Router>
    </WorkshopProvider>
  </QueryClientProvider>
);
