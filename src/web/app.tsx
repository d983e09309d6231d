import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { Screens } from './screens/Screens.tsx';
import { Shell } from './parts/shell/Shell.tsx';
import { WorkshopProvider, type Workshop } from './state/workshop.tsx';

const cache = new QueryClient({
  defaultOptions: { queries: { retry: 1, staleTime: 5_000 } },
});

/** The whole page over one workshop. */
export const App = ({ workshop }: { readonly workshop: Workshop }) => (
  <QueryClientProvider client={cache}>
    <WorkshopProvider value={workshop}>
      <Shell>
        <Screens />
      </Shell>
    </WorkshopProvider>
  </QueryClientProvider>
);
